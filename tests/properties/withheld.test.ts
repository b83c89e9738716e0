/**
 * Nothing that is withheld from an audience occurs anywhere in its output.
 *
 * Canaries are planted in every field an edition must not show, in the owner's sheets, in file names and in
 * the originals' metadata; then every byte of every output file is searched: as it is, unpacked, as text,
 * as metadata, and in the file's own name.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildHouse, EDITION_NAMES } from '../../src/build.js';
import type { HouseSpec } from '../../src/facts/house.js';
import type { EditionName } from '../../src/packet/packet.js';
import { decoded } from '../rooms/rendered-sample.js';
import { textsIn } from '../tools/every-byte.js';
import { typed } from '../tools/gallery.js';
import { photoWithSecrets, SECRETS } from '../tools/photo-with-secrets.js';
import { plantCanaries } from './canaries.js';
import { houseOf, MADE_AS_OF, madeSpec } from './made-house.js';

const noTool = ['pdftotext', 'exiftool'].filter((tool) => spawnSync(tool, ['-v']).error !== undefined);
const without = noTool.length === 0 ? '' : ` (skipped: ${noTool.join(' and ')} not on this machine)`;

/** One house for each way of showing the address. */
const SPECS: readonly HouseSpec[] = (['full', 'street-withheld', 'city-only'] as const).map((show, i) => {
  const [spec] = fc.sample(madeSpec, { seed: 7301 + i, numRuns: 1 });
  if (spec === undefined) throw new Error('no house was made');
  return { ...spec, house: { ...spec.house, address: { ...spec.house.address, show } } };
});

/** What only the house file's money pages say. */
const MONEY = [
  'costs.payee',
  'costs.what',
  'miles.to',
  'hours.what',
  'money.held-up',
  'deliveries.to',
  'deliveries.note',
];
const ofWhere = (canaries: readonly { text: string; where: string }[], where: string): string[] =>
  canaries.filter((one) => one.where === where).map(({ text }) => text);

/** With what phones put behind the picture: a second one (a depth map, a film) and words, and a comment before it. */
async function talkative(id: string): Promise<Buffer> {
  const [first, second] = [await photoWithSecrets(id), await photoWithSecrets(`${id} again`)];
  const words = Buffer.from(`\0\0\0\x18ftypmp42 ${BEHIND}`);
  const comment = Buffer.from(`\xff\xfe\0${String.fromCharCode(BEHIND.length + 2)}${BEHIND}`, 'latin1');
  return Buffer.concat([first.subarray(0, 2), comment, first.subarray(2), second, words]);
}
const BEHIND = 'QZBEHINDXJ';

interface Built {
  readonly planted: ReturnType<typeof plantCanaries>;
  /** Path below the edition's folder, and the file's bytes. */
  readonly files: Readonly<Record<EditionName, ReadonlyMap<string, Buffer>>>;
  readonly folder: string;
}

async function built(spec: HouseSpec): Promise<Built> {
  const planted = plantCanaries(spec);
  houseOf(planted.spec);
  const root = mkdtempSync(path.join(tmpdir(), 'withheld-'));
  const folder = path.join(root, 'content', 'made-house');
  for (const part of ['documents', 'photos']) mkdirSync(path.join(folder, part), { recursive: true });
  writeFileSync(path.join(folder, 'house.yaml'), JSON.stringify(planted.spec, null, 1));
  for (const [file, text] of Object.entries(planted.files)) {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), text);
  }
  for (const [id, photo] of Object.entries(planted.spec.photos ?? {}))
    writeFileSync(path.join(folder, 'photos', photo.file ?? `${id}.jpg`), await talkative(id));
  writeFileSync(path.join(folder, 'photos', planted.unnamed), await talkative('unnamed'));
  const out = path.join(root, 'out');
  await deliverEarlier(planted, folder, out);
  const { located, made } = await buildHouse({
    folder,
    shown: 'content/made-house',
    asOf: MADE_AS_OF,
    editions: EDITION_NAMES,
    out,
    outShown: 'out',
    paper: 'letter',
  });
  expect(
    located.filter(({ diagnostic }) => diagnostic.severity === 'error'),
    'the made house builds',
  ).toEqual([]);
  expect(made).toHaveLength(EDITION_NAMES.length);
  const house = path.join(out, 'made-house');
  const files = Object.fromEntries(
    EDITION_NAMES.map((edition) => [edition, filesBelow(path.join(house, edition))]),
  ) as Record<EditionName, Map<string, Buffer>>;
  return { planted, files, folder: house };
}

/**
 * Every edition was given to somebody when the private papers and photos were still told and a thing had other words: the
 * packets of now list what changed since, and say neither.
 */
async function deliverEarlier(planted: Built['planted'], folder: string, out: string): Promise<void> {
  const house = path.join(folder, 'house.yaml');
  const now = readFileSync(house, 'utf8');
  const then = JSON.parse(now) as HouseSpec;
  for (const paper of then.documents ?? []) paper.private = false;
  for (const photo of Object.values(then.photos ?? {})) {
    photo.private = false;
    delete photo['not-before'];
  }
  for (const item of then.work ?? []) item.what = `${item.what}, as it was called`;
  writeFileSync(house, JSON.stringify(then));
  const { to, note } = planted.delivered;
  for (const edition of EDITION_NAMES) {
    const words = ['deliver', folder, '--edition', edition, '--to', to, '--note', note, '--out', out];
    const days = ['--as-of', MADE_AS_OF, '--on', MADE_AS_OF, '--private'];
    const { said, status } = await typed([...words, ...days]);
    expect(status, said).toBe(0);
  }
  writeFileSync(house, now);
}

function filesBelow(folder: string): Map<string, Buffer> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return new Map(
    entries.map((one) => {
      const file = path.join(one.parentPath, one.name);
      return [path.relative(folder, file), readFileSync(file)];
    }),
  );
}

/** A file's bytes and whatever a reader of its kind gets out of it. */
function readings(file: string, name: string, bytes: Buffer): Buffer[] {
  const all = [bytes, Buffer.from(name)];
  // The house file's own copies: a planted receipt is no PDF, whatever it is called.
  if (name.startsWith(`papers${path.sep}`)) return all;
  if (name.endsWith('.html')) all.push(Buffer.from(decoded(bytes.toString('utf8').replace(/<[^>]*>/gu, ''))));
  if (name.endsWith('.pdf'))
    all.push(execFileSync('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-'], { maxBuffer: 2 ** 26 }));
  if (/\.(pdf|jpe?g|png|svg|avif)$/u.test(name))
    all.push(execFileSync('exiftool', ['-a', '-u', '-G1', '-ee', file], { maxBuffer: 2 ** 26 }));
  return all;
}

describe.skipIf(noTool.length > 0)(`what an edition may not say${without}`, () => {
  it.each(SPECS)('is nowhere in it: house %#', async (spec) => {
    const { planted, files, folder } = await built(spec);
    for (const edition of EDITION_NAMES) {
      const withheld = planted.canaries.filter((canary) => canary.keptFrom.includes(edition));
      const texts = withheld.map((canary) => canary.text);
      const found: string[] = [];
      const told = new Set<string>();
      let sung = 0;
      for (const [name, bytes] of files[edition]) {
        // What ships with the program is the same for every house.
        if (/\.woff2$/u.test(name)) continue;
        const file = path.join(folder, edition, name);
        for (const reading of readings(file, name, bytes)) {
          // The house file's own copies are the originals.
          const tags = name.startsWith(`originals${path.sep}`) ? [] : [...SECRETS, BEHIND];
          if (edition === 'file')
            for (const text of textsIn(
              reading,
              MONEY.flatMap((where) => ofWhere(planted.canaries, where)),
            ))
              told.add(text);
          for (const text of textsIn(reading, [...texts, ...tags])) {
            const where = withheld.find((canary) => canary.text === text)?.where ?? 'metadata of an original';
            found.push(`${edition}/${name}: ${where}`);
          }
          if (textsIn(reading, [planted.sung]).length > 0) sung += 1;
        }
      }
      expect([...new Set(found)]).toEqual([]);
      // What was paid, driven and worked stands in the house file, so that the search for it can find something.
      if (edition === 'file') expect(told.size).toBe(MONEY.length);
      if (edition === 'buyer') expect([...files[edition].keys()]).toContain('changes.html');
      expect([...files[edition].keys()].filter((name) => /deliver(y|ies)\./u.test(name))).toEqual(
        edition === 'file' ? ['deliveries.html'] : [],
      );
      const originals = [...files[edition].keys()].filter((name) => name.startsWith('originals'));
      expect(originals.length > 0).toBe(edition === 'file');
      const papers = [...files[edition].keys()].filter((name) => name.startsWith(`papers${path.sep}`));
      expect(papers.length > 0).toBe(edition === 'file');
      // What the search box finds is one of the files that were searched, as it is and unpacked from its signs.
      expect(files[edition].has('search-data.js')).toBe(['buyer', 'care', 'file'].includes(edition));
      // The house's name is in every page, in the PDF's bytes and in its text: the search finds what is there.
      const pages = [...files[edition].keys()].filter((name) => name.endsWith('.html')).length;
      expect(sung).toBeGreaterThanOrEqual(2 * pages + 2);
    }
    const published = EDITION_NAMES.filter((name) => name !== 'file');
    expect(published.every((name) => planted.canaries.some((one) => one.keptFrom.includes(name)))).toBe(true);
  });
});
