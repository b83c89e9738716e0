/**
 * Whether a bag is whole: every file that is changed, missing or too many is named.
 *
 * Takes a source; gives what was found. Follows RFC 8493, section 3: complete, and every digest right. Fetches
 * nothing, follows no link, unpacks nothing to the disk.
 */
import type { Diagnostic, Severity } from '../diagnostics/diagnostic.js';
import { alikeNames } from './alike-names.js';
import { type Declaration, decodeText, readBagInfo, readDeclaration, textsOf } from './bag-info.js';
import { MOST_ENTRIES } from './bag-limits.js';
import {
  type Algorithm,
  decodePath,
  isAlgorithm,
  type ManifestEntry,
  parseManifest,
  pathFault,
  WEAK,
} from './bag-manifest.js';
import {
  type BagListing,
  type BagSource,
  BagUnreadable,
  type Digested,
  isDigests,
  NAME_IT,
  NO_BAGIT,
} from './bag-source.js';

export interface BagReport {
  /** `no-bag`: it can't be read as one. */
  readonly verdict: 'whole' | 'differs' | 'no-bag';
  readonly diagnostics: readonly Diagnostic[];
  /** Files below `data/`, and their bytes. */
  readonly files: number;
  readonly bytes: number;
  /** By which the files below `data/` were checked. */
  readonly algorithms: readonly Algorithm[];
  /** What `bag-info.txt` calls it, and when it was made; undefined where that is not said. */
  readonly identifier: string | undefined;
  readonly date: string | undefined;
}

/** `shown`: the bag as the writer types it. Never throws for what is in a bag. */
export async function verifyBag(
  source: BagSource,
  shown: string,
  onBytes?: (n: number) => void,
): Promise<BagReport> {
  const found: Diagnostic[] = [];
  try {
    return await new Inspection(source, await source.list(), shown, found).run(onBytes);
  } catch (thrown) {
    if (!(thrown instanceof BagUnreadable)) throw thrown;
    const report = unreadable(shown, thrown);
    return { ...report, diagnostics: [...report.diagnostics, ...found] };
  }
}

/** The report on what can't be read as a bag. */
export const unreadable = (shown: string, { message, hints }: BagUnreadable): BagReport => ({
  verdict: 'no-bag',
  diagnostics: [
    {
      code: 'archive.bag',
      severity: 'error',
      file: shown,
      message: `${shown} ${message}`,
      hints: [...hints],
    },
  ],
  files: 0,
  bytes: 0,
  algorithms: [],
  identifier: undefined,
  date: undefined,
});

const COPY = 'take it from another copy of the bag, and verify that one';
const ASK = 'take another copy of the bag, or ask for it again from where it came';

/** More things than these are not listed one by one: each takes memory, and a list may have 100,000 lines. */
const MOST_SAID = 10_000;

/** Up to the most there may be. */
function linesOf(bytes: Uint8Array): number {
  let lines = 0;
  // Both bytes of a line’s end may stand there, and are one.
  for (let at = 0; at < bytes.length && lines <= MOST_ENTRIES; at++)
    if (bytes[at] === 10 || (bytes[at] === 13 && bytes[at + 1] !== 10)) lines += 1;
  return lines;
}

interface Listed {
  readonly manifest: string;
  readonly algorithm: Algorithm;
  /** Path → digest; the paths are those of files that are there, where one is. */
  readonly digests: ReadonlyMap<string, string>;
}

class Inspection {
  readonly #source: BagSource;
  readonly #listing: BagListing;
  readonly #shown: string;
  readonly #found: Diagnostic[];
  /** Normalised path → the path that is there. */
  readonly #normal: ReadonlyMap<string, string>;

  constructor(source: BagSource, listing: BagListing, shown: string, found: Diagnostic[]) {
    this.#found = found;
    this.#source = source;
    this.#listing = listing;
    this.#shown = shown;
    this.#normal = new Map([...listing.files.keys()].map((path) => [path.normalize('NFC'), path]));
  }

  async run(onBytes?: (n: number) => void): Promise<BagReport> {
    const declared = this.#declaration();
    for (const { path, what, hint } of this.#listing.odd) this.#say('error', `${path} ${what}`, hint);
    for (const [one, other] of alikeNames(this.#listing.files.keys()))
      this.#say(
        'warning',
        `${other} and ${one} have one name on some systems, where only one of them can be unpacked`,
        'unpack the bag on a system that tells them apart',
      );
    const payload = this.#manifests('manifest', declared);
    if (payload.length === 0)
      throw new BagUnreadable(
        [...this.#listing.files.keys()].some((path) => /^manifest-[^/]+\.txt$/u.test(path))
          ? 'has manifests, but none in a way this program can check'
          : 'has no manifest, so nothing in it can be checked',
        ASK,
      );
    const tags = this.#manifests('tagmanifest', declared);
    const lines = this.#bagInfo(declared);
    this.#compareLists(payload, tags, declared, textsOf(lines, 'Bag-Software-Agent'));
    this.#oxum(lines);
    this.#fetch(declared, payload);
    await this.#compareDigests([...payload, ...tags], onBytes);
    this.#hollow(payload);
    const inData = [...this.#listing.files].filter(([path]) => isPayload(path));
    return {
      verdict: this.#found.some((one) => one.severity === 'error') ? 'differs' : 'whole',
      diagnostics: this.#found,
      files: inData.length,
      bytes: inData.reduce((sum, [, size]) => sum + size, 0),
      algorithms: payload.map((one) => one.algorithm),
      identifier: textsOf(lines, 'External-Identifier')[0],
      date: textsOf(lines, 'Bagging-Date')[0],
    };
  }

  #say(severity: Severity, message: string, ...hints: readonly string[]): void {
    const one = { code: 'archive.bag', severity, file: this.#shown } as const;
    if (this.#found.length < MOST_SAID) this.#found.push({ ...one, message, hints });
    else if (!this.#isMore.has(severity)) {
      // One of each kind, so that what is no longer listed still counts.
      this.#isMore.add(severity);
      this.#found.push({
        ...one,
        message: `more things ${severity === 'error' ? 'differ' : 'are odd'}, and are not listed: the first 10,000 are`,
        hints: [ASK],
      });
    }
  }

  readonly #isMore = new Set<Severity>();

  #declaration(): Declaration {
    const bytes = this.#listing.tags.get('bagit.txt');
    if (bytes === undefined) throw new BagUnreadable(NO_BAGIT, NAME_IT);
    const declared = readDeclaration(bytes);
    if (typeof declared === 'string') throw new BagUnreadable(`has a bagit.txt that ${declared}`, ASK);
    return declared;
  }

  #text(name: string, encoding: string): string | undefined {
    const bytes = this.#listing.tags.get(name);
    if (bytes === undefined) return undefined;
    if (linesOf(bytes) > MOST_ENTRIES)
      throw new BagUnreadable(`has a ${name} of more than 100,000 lines, and no bag has as many`, ASK);
    const text = decodeText(bytes, encoding);
    if (text === undefined) this.#say('error', `${name} is not ${encoding} text`, COPY);
    return text;
  }

  #manifests(kind: 'manifest' | 'tagmanifest', declared: Declaration): Listed[] {
    const found: Listed[] = [];
    for (const name of [...this.#listing.tags.keys()].sort()) {
      const algorithm = new RegExp(`^${kind}-([^/]+)\\.txt$`, 'u').exec(name)?.[1];
      if (algorithm === undefined) continue;
      if (!isAlgorithm(algorithm)) {
        this.#say(
          'warning',
          `${name} is made by ${algorithm}, which this program does not know, and is left out`,
          'verify the bag with a program that knows it, too',
        );
        continue;
      }
      if (WEAK.includes(algorithm))
        this.#say(
          'warning',
          `${name} is made by ${algorithm}, which finds accidents, but not what was changed on purpose`,
          'make a new bag of it some day, with sha256 or sha512',
        );
      const text = this.#text(name, declared.encoding);
      if (text === undefined) continue;
      const { entries, faults } = parseManifest(text, algorithm, declared.isOne);
      for (const { line, what } of faults) this.#say('error', `line ${line} of ${name} ${what}`, ASK);
      found.push({ manifest: name, algorithm, digests: this.#listed(name, entries) });
    }
    return found;
  }

  #listed(name: string, entries: readonly ManifestEntry[]): Map<string, string> {
    const digests = new Map<string, string>();
    const spelled = new Map<string, string>();
    for (const entry of entries) {
      const path = this.#there(name, entry);
      const earlier = digests.get(path);
      if (entry.dotted)
        this.#say(
          'warning',
          `line ${entry.line} of ${name} begins its path with ./`,
          'nothing: it was found',
        );
      if (earlier === undefined) {
        digests.set(path, entry.digest);
        spelled.set(path, entry.path);
      } else if (earlier === entry.digest && spelled.get(path) !== entry.path)
        this.#say(
          'warning',
          `${name} lists ${path} twice, with its accents written in two ways`,
          'nothing: both mean one file here',
        );
      else
        this.#say(
          'error',
          `${name} lists ${path} twice${earlier === entry.digest ? '' : ', with different digests'}`,
          ASK,
        );
    }
    return digests;
  }

  /** The file that an entry means: others write names without escapes, or accents another way. */
  #there(manifest: string, { path, raw, line }: ManifestEntry): string {
    if (this.#listing.files.has(path)) return path;
    if (raw !== path && this.#listing.files.has(raw)) {
      this.#say(
        'warning',
        `line ${line} of ${manifest} writes ${raw} without the escapes of the standard`,
        'nothing: it was found',
      );
      return raw;
    }
    const normal = this.#normal.get(path.normalize('NFC'));
    if (normal === undefined) return path;
    this.#say(
      'warning',
      `${normal} is listed in ${manifest} with its accents written another way`,
      'nothing: it was found; some systems write accents anew when they copy',
    );
    return normal;
  }

  #bagInfo(declared: Declaration): ReturnType<typeof readBagInfo>['lines'] {
    const text =
      this.#text('bag-info.txt', declared.encoding) ?? this.#text('package-info.txt', declared.encoding);
    if (text === undefined) return [];
    const { lines, faults } = readBagInfo(text);
    for (const line of faults)
      this.#say('warning', `line ${line} of bag-info.txt is no label and text`, 'nothing: it is passed over');
    return lines;
  }

  #compareLists(
    payload: readonly Listed[],
    tags: readonly Listed[],
    declared: Declaration,
    agents: readonly string[],
  ): void {
    for (const { manifest, digests } of payload)
      for (const path of digests.keys())
        if (!isPayload(path))
          this.#say('error', `${manifest} lists ${path}, which lies outside of data/`, ASK);
    for (const { manifest, digests } of tags)
      for (const path of digests.keys())
        if (isPayload(path) || /^tagmanifest-[^/]+\.txt$/u.test(path))
          this.#say('error', `${manifest} lists ${path}, which no tag manifest may list`, ASK);
    const all = new Set(payload.flatMap(({ digests }) => [...digests.keys()]));
    for (const path of this.#listing.files.keys())
      if (isPayload(path) && !all.has(path))
        this.#say('error', `${path} was added: no manifest lists it`, 'move it out of the bag');
    if (declared.isOne) for (const path of all) this.#inEvery(path, payload);
    this.#tagLists(payload, tags, agents);
  }

  /** From version 1.0 on, every manifest lists every file. */
  #inEvery(path: string, payload: readonly Listed[]): void {
    const without = payload.filter(({ digests }) => !digests.has(path)).map(({ manifest }) => manifest);
    const within = payload.filter(({ digests }) => digests.has(path)).map(({ manifest }) => manifest);
    if (without.length > 0)
      this.#say(
        'error',
        `${path} is listed in ${within.join(' and ')}, but not in ${without.join(' and ')}`,
        ASK,
      );
  }

  /** The standard lets tag files be added. This program lists each of its own, so one too many was added since. */
  #tagLists(payload: readonly Listed[], tags: readonly Listed[], agents: readonly string[]): void {
    const ours = agents.some((agent) => agent.startsWith('sillplate '));
    if (tags.length === 0) {
      if (ours) this.#say('error', 'tagmanifest-sha256.txt is missing', ASK);
      return;
    }
    const all = new Set(tags.flatMap(({ digests }) => [...digests.keys()]));
    for (const { manifest } of payload)
      if (!all.has(manifest)) this.#say(ours ? 'error' : 'warning', `no tag manifest lists ${manifest}`, ASK);
    for (const path of this.#listing.files.keys()) {
      if (isPayload(path) || all.has(path) || /^(tag)?manifest-[^/]+\.txt$/u.test(path)) continue;
      if (ours) this.#say('error', `${path} was added: no tag manifest lists it`, 'move it out of the bag');
      else
        this.#say(
          'warning',
          `${path} is in no tag manifest, which the standard allows`,
          'look at it before you trust it',
        );
    }
  }

  /** The standard allows it, and nobody wants it of an archive. */
  #hollow(payload: readonly Listed[]): void {
    const isHollow = ![...this.#listing.files.keys()].some(isPayload);
    if (isHollow && payload.every(({ digests }) => digests.size === 0))
      this.#say(
        'warning',
        'it holds nothing: no file lies below data/, and its manifest lists none',
        'look for another copy of the bag, or for the bag before it',
      );
  }

  #oxum(lines: ReturnType<typeof readBagInfo>['lines']): void {
    const said = textsOf(lines, 'Payload-Oxum');
    if (said.length > 1) this.#say('error', 'bag-info.txt says Payload-Oxum more than once', ASK);
    const oxum = said[0];
    if (oxum === undefined) return;
    const inData = [...this.#listing.files].filter(([path]) => isPayload(path));
    const bytes = inData.reduce((sum, [, size]) => sum + size, 0);
    const found = /^(\d+)\.(\d+)$/u.exec(oxum);
    if (found === null)
      this.#say('error', `bag-info.txt has a Payload-Oxum that can’t be read: ${oxum}`, ASK);
    else if (Number(found[1]) !== bytes || Number(found[2]) !== inData.length)
      this.#say(
        'error',
        `Payload-Oxum in bag-info.txt says ${found[1]} bytes in ${found[2]} files, and data/ holds ${bytes} bytes in ${inData.length} files`,
        'look at the files named here as changed, missing or added',
      );
  }

  #fetch(declared: Declaration, payload: readonly Listed[]): void {
    const text = this.#text('fetch.txt', declared.encoding);
    if (text === undefined) return;
    for (const [index, line] of text.split(/\r\n|\r|\n/u).entries()) {
      if (line.trim() === '') continue;
      const found = /^\S+[ \t]+(?:\d+|-)[ \t]+(.+)$/u.exec(line);
      const path = found === null ? undefined : decodePath(found[1] ?? '', declared.isOne);
      const wrong = path === undefined ? undefined : pathFault(path);
      const at = `line ${index + 1} of fetch.txt`;
      if (path === undefined) this.#say('error', `${at} is no address, size and path`, ASK);
      else if (wrong !== undefined) this.#say('error', `${at} names a path that ${wrong}`, ASK);
      else if (!isPayload(path)) this.#say('error', `${at} names ${path}, which lies outside of data/`, ASK);
      else if (!this.#listing.files.has(path))
        this.#say(
          'error',
          `${path} is to be fetched from elsewhere (fetch.txt), and was not: this program fetches nothing`,
          'fetch it yourself if you trust the address, and verify again',
        );
      else if (!payload.some(({ digests }) => digests.has(path)))
        this.#say('error', `${at} names ${path}, which no manifest lists`, ASK);
    }
    this.#fetched = new Set(
      text.split(/\r\n|\r|\n/u).flatMap((line) => {
        const path = /^\S+[ \t]+(?:\d+|-)[ \t]+(.+)$/u.exec(line)?.[1];
        return path === undefined ? [] : [decodePath(path, declared.isOne)];
      }),
    );
  }

  #fetched: ReadonlySet<string> = new Set();

  async #compareDigests(lists: readonly Listed[], onBytes?: (n: number) => void): Promise<void> {
    const wanted = new Map<string, Set<Algorithm>>();
    const missing = new Set<string>();
    for (const { algorithm, digests } of lists)
      for (const path of digests.keys()) {
        if (!this.#listing.files.has(path)) missing.add(path);
        else wanted.set(path, (wanted.get(path) ?? new Set()).add(algorithm));
      }
    const odd = new Set(this.#listing.odd.map(({ path }) => path));
    for (const path of missing)
      if (!this.#fetched.has(path) && !odd.has(path)) this.#say('error', `${path} is missing`, COPY);
    const found = await this.#source.digest(wanted, onBytes);
    for (const path of wanted.keys()) this.#compareFile(path, found.get(path), lists);
  }

  #compareFile(path: string, digested: Digested | undefined, lists: readonly Listed[]): void {
    if (digested === undefined) {
      this.#say(
        'error',
        `${path} is no longer there`,
        'verify again, when no other program works on the bag',
      );
      return;
    }
    if (!isDigests(digested)) {
      this.#say('error', `${path} ${digested.trouble}`, COPY);
      return;
    }
    const right: string[] = [];
    const wrong: string[] = [];
    for (const { manifest, algorithm, digests } of lists) {
      const said = digests.get(path);
      if (said !== undefined) (said === digested.get(algorithm) ? right : wrong).push(manifest);
    }
    if (wrong.length === 0) return;
    this.#say(
      'error',
      right.length === 0
        ? `${path} was changed: it is not what ${wrong.join(' and ')} ${wrong.length === 1 ? 'says' : 'say'}`
        : `${path} is what ${right.join(' and ')} says, and not what ${wrong.join(' and ')} says: one of them was changed`,
      COPY,
    );
  }
}

const isPayload = (path: string): boolean => path.startsWith('data/');
