/** The two tag files that say what a bag is: `bagit.txt` and `bag-info.txt` (RFC 8493, 2.1.1 and 2.2.2). */

export const BAGIT_TXT = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';

export interface Declaration {
  readonly version: string;
  /** As `TextDecoder` names it. */
  readonly encoding: string;
  /** Version 1.0: `%25` is read, and every manifest lists every file. */
  readonly isOne: boolean;
}

/** Versions whose bags are laid out as those of 1.0. */
const VERSIONS = ['0.93', '0.94', '0.95', '0.96', '0.97', '1.0'];

/** What the bytes of `bagit.txt` declare; a text says why they declare nothing. */
export function readDeclaration(bytes: Uint8Array): Declaration | string {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf)
    return 'begins with a byte-order mark, which the standard forbids';
  const text = decodeText(bytes, 'utf-8');
  if (text === undefined) return 'is not UTF-8 text';
  const lines = text.split(/\r\n|\r|\n/u);
  if (lines.at(-1) === '') lines.pop();
  if (lines.length !== 2) return 'does not have two lines';
  const version = /^BagIt-Version: (\d+\.\d+)$/u.exec(lines[0] ?? '')?.[1];
  if (version === undefined) return 'does not begin with  BagIt-Version: 1.0';
  if (!VERSIONS.includes(version)) return `declares version ${version}, which this program does not know`;
  const encoding = /^Tag-File-Character-Encoding: (\S+)$/u.exec(lines[1] ?? '')?.[1];
  if (encoding === undefined) return 'does not say  Tag-File-Character-Encoding: UTF-8';
  if (decodeText(new Uint8Array(), encoding) === undefined)
    return `declares the encoding ${encoding}, which this program does not know`;
  return { version, encoding, isOne: version === '1.0' };
}

/** Undefined where the bytes are no text in that encoding, or there is no such encoding. */
export function decodeText(bytes: Uint8Array, encoding: string): string | undefined {
  try {
    const isUtf16 = /^utf-?16$/iu.test(encoding);
    const bigEnd = isUtf16 && bytes[0] === 0xfe && bytes[1] === 0xff;
    return new TextDecoder(bigEnd ? 'utf-16be' : encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** A label and its text; labels may come again. */
export type InfoLine = readonly [label: string, text: string];

export function printBagInfo(lines: readonly InfoLine[]): string {
  // A line end in a text would begin another label.
  return lines.map(([label, text]) => `${label}: ${text.replace(/\s+/gu, ' ').trim()}\n`).join('');
}

/** Labels in their order, texts that go on over several lines put together; and the lines that are neither. */
export function readBagInfo(text: string): { readonly lines: InfoLine[]; readonly faults: number[] } {
  const lines: [string, string][] = [];
  const faults: number[] = [];
  for (const [index, line] of text.split(/\r\n|\r|\n/u).entries()) {
    if (line === '') continue;
    const last = lines.at(-1);
    const found = /^([^:\s][^:]*?)[ \t]*:[ \t]*(.*)$/u.exec(line);
    if (/^[ \t]/u.test(line) && last !== undefined) last[1] += ` ${line.trim()}`;
    else if (found !== null) lines.push([found[1] ?? '', found[2] ?? '']);
    else faults.push(index + 1);
  }
  return { lines, faults };
}

/** Texts of a label, however its letters are cased. */
export const textsOf = (lines: readonly InfoLine[], label: string): string[] =>
  lines.filter(([name]) => name.toLowerCase() === label.toLowerCase()).map(([, text]) => text);
