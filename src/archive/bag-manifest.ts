/**
 * Manifests of a bag, as text: which file has which digest (RFC 8493, 2.1.3 and 2.2.1).
 *
 * Takes and gives text; touches no disk.
 */
import { LONGEST_PATH } from './bag-limits.js';

/** By the names that a manifest's own name uses. */
const ALGORITHMS = ['md5', 'sha1', 'sha224', 'sha256', 'sha384', 'sha512'] as const;
export type Algorithm = (typeof ALGORITHMS)[number];

/** Two files with one digest can be made on purpose: such a digest finds accidents, and no intent. */
export const WEAK: readonly Algorithm[] = ['md5', 'sha1'];

const HEX_DIGITS: Readonly<Record<Algorithm, number>> = {
  md5: 32,
  sha1: 40,
  sha224: 56,
  sha256: 64,
  sha384: 96,
  sha512: 128,
};

export const isAlgorithm = (name: string): name is Algorithm => Object.hasOwn(HEX_DIGITS, name);

/** Line ends would break a manifest, and the sign that stands for them must stand for itself. */
export function encodePath(path: string): string {
  return path.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

/** `percent`: whether `%25` is a percent sign, as from version 1.0 on. */
export function decodePath(text: string, percent: boolean): string {
  return text.replace(percent ? /%(0a|0d|25)/giu : /%(0a|0d)/giu, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}

/** Bytewise, so that every system sorts alike. */
export const inByteOrder = (a: string, b: string): number => Buffer.compare(Buffer.from(a), Buffer.from(b));

/** `path → digest in hex`, in the order of the paths’ bytes. */
export function printManifest(digests: ReadonlyMap<string, string>): string {
  return [...digests]
    .sort(([a], [b]) => inByteOrder(a, b))
    .map(([path, digest]) => `${digest}  ${encodePath(path)}\n`)
    .join('');
}

export interface ManifestEntry {
  /** From the bag's folder, with forward slashes. */
  readonly path: string;
  /** As it stands, before its escapes are read: other programs write names without them. */
  readonly raw: string;
  /** Lower case. */
  readonly digest: string;
  readonly line: number;
  /** It began with `./`, which tools write and the standard does not. */
  readonly dotted: boolean;
}

interface ManifestFault {
  readonly line: number;
  /** What is so, to stand behind "line 3 of manifest-sha256.txt". */
  readonly what: string;
}

export interface Manifest {
  readonly entries: readonly ManifestEntry[];
  readonly faults: readonly ManifestFault[];
}

/** Reads a manifest. Lines end with LF, CR or both; empty lines are passed over. */
export function parseManifest(text: string, algorithm: Algorithm, percent: boolean): Manifest {
  const entries: ManifestEntry[] = [];
  const faults: ManifestFault[] = [];
  for (const [index, line] of text.split(/\r\n|\r|\n/u).entries()) {
    if (line.trim() === '') continue;
    const found = /^(\S+)[ \t]+(.+)$/u.exec(line);
    const number = index + 1;
    if (found === null) {
      faults.push({ line: number, what: 'is no digest and path' });
      continue;
    }
    const [, digest = '', rest = ''] = found;
    // `md5sum -b` puts an asterisk before the name.
    const named = rest.startsWith('*') ? rest.slice(1) : rest;
    const dotted = named.startsWith('./');
    const raw = dotted ? named.slice(2) : named;
    const path = decodePath(raw, percent);
    const wrong = pathFault(path);
    if (wrong !== undefined) faults.push({ line: number, what: `names a path that ${wrong}` });
    else if (!/^[0-9a-f]+$/iu.test(digest) || digest.length !== HEX_DIGITS[algorithm])
      faults.push({ line: number, what: `has no ${algorithm} digest for ${path}` });
    else entries.push({ path, raw, digest: digest.toLowerCase(), line: number, dotted });
  }
  return { entries, faults };
}

/** Why a path may not stand in a bag, to follow "a path that"; undefined if it may. */
export function pathFault(path: string): string | undefined {
  if (path === '') return 'is empty';
  if (path.length > LONGEST_PATH) return 'is longer than any system opens';
  if (path.includes('\0')) return 'has a character that no file name can have';
  if (path.startsWith('/')) return 'begins at the root of the disk';
  if (path.startsWith('~')) return 'begins in somebody’s home folder';
  if (/^[A-Za-z]:/u.test(path)) return 'begins with a drive letter';
  if (path.includes('\\')) return 'has a backslash, which some systems read as a folder';
  const parts = path.split('/');
  if (parts.includes('..')) return 'climbs out of the bag';
  if (parts.includes('.') || parts.slice(0, -1).includes('') || parts.at(-1) === '')
    return 'has an empty part';
  return undefined;
}
