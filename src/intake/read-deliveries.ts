/**
 * What lies in a house's `deliveries/`: who was given which packet, and what it said.
 *
 * The folder may have come by mail, or been mended by hand. So sizes are bounded, no link is followed, names are held
 * against the program's own form, and what a packet said is taken only if it still has the digest it was given with. A
 * delivery that can't be relied on is named in a warning and left out: it never keeps a packet from being made.
 */
import { createHash } from 'node:crypto';
import { lstat, readdir } from 'node:fs/promises';
import path from 'node:path';
import { DELIVERIES, LARGEST_MANIFEST, MANIFEST } from '../diagnostics/delivery-names.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place } from '../diagnostics/place.js';
import { DELIVERY_NAME, type DeliveryRecord, readDeliveryRecord } from '../facts/delivery.js';
import { openPlain } from './read-plain-file.js';
import { readYaml } from './yaml.js';

export interface DeliveryOnDisk {
  /** Name of its folder. */
  readonly name: string;
  /** The folder. */
  readonly folder: string;
  /** The same as the writer would type it. */
  readonly shown: string;
  readonly record: DeliveryRecord;
  /** `facts.json` as it was given. */
  readonly facts: string;
  /** SHA-256 of its manifest, by which a delivery names the one that holds its PDF. */
  readonly manifest: string;
  /** SHA-256 of its PDF as it was given; undefined where another delivery holds it. */
  readonly pdf: string | undefined;
  /** Of the digest in `delivery.yaml`, where messages on what was delivered point that stand in no other line. */
  readonly place: Place | undefined;
}

export interface ReadDeliveries {
  /** In the order they were given. */
  readonly deliveries: readonly DeliveryOnDisk[];
  /** Warnings: those that were left out. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Bytes that no such file exceeds, and how many deliveries are read. */
const MOST = { record: 64_000, manifest: LARGEST_MANIFEST, facts: 16_000_000, deliveries: 1000 } as const;

/** Why one can't be relied on, and what to do. */
interface Damage {
  readonly file: string;
  readonly what: string;
  readonly hint: string;
  readonly place?: Place | undefined;
}

class Damaged extends Error {
  readonly damage: Damage;
  constructor(damage: Damage) {
    super(damage.what);
    this.damage = damage;
  }
}

const COPY = 'take that folder from a copy of the house, for example from a bag of  sillplate archive';

/** `folder` is the house's, `shown` the same as the writer would type it. Never throws for what lies there. */
export async function readDeliveries(folder: string, shown: string): Promise<ReadDeliveries> {
  const home = path.join(folder, DELIVERIES);
  const homeShown = path.posix.join(shown, DELIVERIES);
  const diagnostics: Diagnostic[] = [];
  const found: DeliveryOnDisk[] = [];
  const names = await namesIn(home);
  if ('what' in names) return { deliveries: [], diagnostics: [told({ ...names, file: homeShown })] };
  if (names.more > 0)
    diagnostics.push(
      told({
        file: homeShown,
        what: `holds ${names.more + MOST.deliveries} deliveries; the newest ${MOST.deliveries} are looked at`,
        hint: 'move the oldest into another folder of your own',
      }),
    );
  for (const name of names.names) {
    const one = path.join(home, name);
    const oneShown = path.posix.join(homeShown, name);
    try {
      found.push(await readOne(one, oneShown, name));
    } catch (thrown) {
      if (!(thrown instanceof Damaged)) throw thrown;
      diagnostics.push(told(thrown.damage));
    }
  }
  return { deliveries: found.sort(inOrder), diagnostics };
}

const inOrder = (a: DeliveryOnDisk, b: DeliveryOnDisk): number =>
  a.record.number - b.record.number || (a.name < b.name ? -1 : 1);

type Listing = { readonly names: readonly string[]; readonly more: number } | Omit<Damage, 'file'>;

async function namesIn(home: string): Promise<Listing> {
  try {
    const is = await lstat(home);
    if (is.isSymbolicLink())
      return {
        what: 'is a link, and deliveries are not followed elsewhere',
        hint: 'put the folder itself there',
      };
    if (!is.isDirectory())
      return {
        what: 'is a file, and deliveries lie in a folder of that name',
        hint: 'give the file another name',
      };
    // What begins with a dot is a lock, or was left half-made by a program that was killed.
    const names = (await readdir(home)).filter((name) => !name.startsWith('.')).sort();
    return { names: names.slice(-MOST.deliveries), more: Math.max(0, names.length - MOST.deliveries) };
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code === undefined) throw thrown;
    if (code === 'ENOENT' || code === 'ENOTDIR') return { names: [], more: 0 };
    return { what: `can’t be read (${code})`, hint: 'check who may read it' };
  }
}

async function readOne(folder: string, shown: string, name: string): Promise<DeliveryOnDisk> {
  const damaged = (file: string, what: string, hint = COPY, place?: Place): Damaged =>
    new Damaged({ file: file === '' ? shown : path.posix.join(shown, file), what, hint, place });
  const is = await lstat(folder).catch(() => undefined);
  if (is?.isSymbolicLink()) throw damaged('', 'is a link, and deliveries are not followed elsewhere');
  if (is?.isDirectory() !== true || !DELIVERY_NAME.test(name))
    throw damaged(
      '',
      'is no delivery of this program',
      'move it out of deliveries/, which the program keeps; what it wrote there bears names like 2026-06-12-buyer-7f3a91c2',
    );
  const read = async (file: string, most: number): Promise<Buffer> => {
    const bytes = await bytesOf(path.join(folder, file), most);
    if (typeof bytes === 'string') throw damaged(file, bytes);
    return bytes;
  };
  const listed = await read(MANIFEST, MOST.manifest);
  const manifest = listed.toString('utf8');
  const asGiven = async (file: string, most: number): Promise<string> => {
    const bytes = await read(file, most);
    if (digestIn(manifest, file) !== sha256(bytes))
      throw damaged(file, `is not what was given: its digest is another one than in ${MANIFEST}`);
    return bytes.toString('utf8');
  };
  const text = await asGiven('delivery.yaml', MOST.record);
  const file = path.posix.join(shown, 'delivery.yaml');
  const yaml = readYaml(text, file);
  const checked = readDeliveryRecord(yaml.data);
  if (yaml.diagnostics.length > 0 || 'word' in checked) {
    const word = 'word' in checked ? checked.word : 'number';
    const place = yaml.diagnostics[0]?.place ?? yaml.placeOf([word]) ?? yaml.placeOf([word], true);
    throw damaged(
      'delivery.yaml',
      `tells no delivery: “${word}” is missing or is not what it should be`,
      COPY,
      place,
    );
  }
  const facts = await asGiven('facts.json', MOST.facts);
  const { record } = checked;
  return {
    name,
    folder,
    shown,
    record,
    facts,
    manifest: sha256(listed),
    pdf: digestIn(manifest, record.pdf),
    place: yaml.placeOf(['digest']),
  };
}

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** The digest that a manifest gives for a file at the top of the folder. */
function digestIn(manifest: string, file: string): string | undefined {
  for (const line of manifest.split('\n'))
    if (line.slice(64) === `  ${file}`) return line.slice(0, 64).toLowerCase();
  return undefined;
}

/** A plain file's bytes, or why there are none. A link is not followed, also if it was put there a moment ago. */
async function bytesOf(file: string, most: number): Promise<Buffer | string> {
  try {
    const before = await lstat(file);
    if (before.isSymbolicLink()) return 'is a link, and deliveries are not followed elsewhere';
    if (!before.isFile()) return 'is no plain file';
    const handle = await openPlain(file, { noLink: true });
    try {
      const { size } = await handle.stat();
      if (size > most) return `is larger than any such file (${(size / 1e6).toFixed(1)} MB)`;
      const buffer = Buffer.alloc(size);
      const { bytesRead } = await handle.read(buffer, 0, size, 0);
      return buffer.subarray(0, bytesRead);
    } finally {
      await handle.close();
    }
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code === undefined) throw thrown;
    return code === 'ENOENT' ? 'is missing' : `can’t be read (${code})`;
  }
}

const told = ({ file, what, hint, place }: Damage): Diagnostic => ({
  code: 'intake.delivery',
  severity: 'warning',
  ...(place === undefined ? { file } : { place }),
  message: `${file.slice(Math.max(0, file.lastIndexOf(`${DELIVERIES}/`)))} ${what}; nothing is said of what was delivered there`,
  hints: [hint],
});
