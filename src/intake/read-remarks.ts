/**
 * A draft of listing remarks becomes text: from a file outside a house folder, from the file that a house names, or from
 * what was typed. What is no text, too big or acts on a terminal is refused, with what to do.
 */
import { stat } from 'node:fs/promises';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place } from '../diagnostics/place.js';
import { isUtf16 } from './is-utf16.js';
import { lineIndex, type Span } from './line-index.js';
import { readGivenFile } from './read-plain-file.js';
import { safePath } from './safe-path.js';

export interface RemarksText {
  /** As it stands in the file, but for a byte-order mark. */
  readonly text: string;
  /** The file as its writer would type it; undefined for what was typed. */
  readonly file: string | undefined;
  /** Line and column of some of its characters. */
  readonly placeOf: (span: Span) => Place;
}

export type ReadRemarks = RemarksText | { readonly trouble: Diagnostic };

/** No listing service takes a twentieth of it. Bytes. */
export const MOST_REMARKS = 100_000;

/** A file that was named on the command line. `shown` is its name with forward slashes. */
export async function readRemarksFile(file: string, shown: string): Promise<ReadRemarks> {
  try {
    const { size } = await stat(file);
    if (size > MOST_REMARKS) return refused(tooBig(shown, size));
    return textOf(await readGivenFile(file, MOST_REMARKS), shown);
  } catch (thrown) {
    return refused(cannotRead(shown, thrown));
  }
}

/** The file that a house folder has its draft in; `file` is how messages name it. */
export async function readRemarksOf(folder: string, name: string, file: string): Promise<ReadRemarks> {
  const safe = await safePath(folder, name);
  if (safe.ok) return readRemarksFile(safe.absolute, file);
  if (safe.why === 'outside')
    return refused({
      code: 'intake.outside',
      severity: 'error',
      file,
      message: `${file} leads out of the house folder`,
      hints: ['put the draft itself into the folder, and write its name below  listing:  remarks:'],
    });
  if (safe.why === 'no-file')
    return refused({
      code: 'intake.no-file',
      severity: 'error',
      file,
      message: `${file} is no plain file`,
      hints: ['put a text file there'],
    });
  return refused(cannotRead(file, { code: 'ENOENT' }));
}

/** `file`: undefined for what was typed or piped. */
export function textOf(bytes: Uint8Array, file: string | undefined): ReadRemarks {
  const shown = file ?? TYPED;
  if (bytes.length > MOST_REMARKS) return refused(tooBig(shown));
  if (isUtf16(bytes))
    return refused({
      code: 'intake.encoding',
      severity: 'error',
      ...(file === undefined ? {} : { file }),
      message: `${shown} is written in UTF-16, not in UTF-8`,
      hints: ['save it again as plain text in UTF-8'],
    });
  const text = decoded(bytes);
  if (text === undefined) {
    const loose = new TextDecoder('utf-8').decode(bytes);
    const at = Math.max(0, loose.indexOf('\uFFFD'));
    return refused({
      code: 'intake.encoding',
      severity: 'error',
      place: lineIndex(loose, shown)({ start: at, end: at + 1 }),
      message: `${shown} is not UTF-8 text; here is the first character that can’t be read`,
      hints: ['save it again as plain text in UTF-8; a word processor’s own file is none'],
    });
  }
  const placeOf = lineIndex(text, shown);
  const control = CONTROL.exec(text);
  if (control !== null)
    return refused({
      code: 'facts.sign',
      severity: 'error',
      place: placeOf({ start: control.index, end: control.index + 1 }),
      message: `there is a control character in ${shown} (U+${hex(control[0])}), which no listing service takes`,
      hints: ['take it out, or save it again as plain text'],
    });
  if (text.trim() === '')
    return refused({
      code: 'intake.empty',
      severity: 'error',
      ...(file === undefined ? {} : { file }),
      message: `there is nothing in ${shown}`,
      hints: ['write the draft of the listing text into it, as you would send it'],
    });
  return { text, file, placeOf };
}

const TYPED = 'what was typed';

// Tabs and line breaks are what a text has; all others of the kind a terminal may act on.
const CONTROL = /[^\P{Cc}\t\n\r]/u;

const hex = (sign: string): string => (sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');

function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

const refused = (trouble: Diagnostic): ReadRemarks => ({ trouble });

/** `size` in bytes, where it is known. */
/** "130 thousand", "1 million", "2.4 million" */
const thousands = (size: number): string =>
  size < 999_500
    ? `${Math.ceil(size / 1000)} thousand`
    : `${String(Math.round(size / 100_000) / 10)} million`;

const tooBig = (shown: string, size?: number): Diagnostic => ({
  code: 'intake.too-big',
  severity: 'error',
  file: shown,
  message: `${shown} ${size === undefined ? 'goes on' : `has ${thousands(size)} characters`}; a draft of a listing text is taken up to ${MOST_REMARKS / 1000} thousand characters`,
  hints: ['check that it is the right file'],
});

function cannotRead(shown: string, thrown: unknown): Diagnostic {
  const code = (thrown as NodeJS.ErrnoException).code;
  const say = (message: string, ...hints: string[]): Diagnostic => ({
    code: 'intake.no-file',
    severity: 'error',
    file: shown,
    message,
    hints,
  });
  if (code === 'ENOENT' || code === 'ENOTDIR')
    return say(`there is no file ${shown}`, 'write the draft of the listing text into it, as plain text');
  if (code === 'EISDIR') return say(`${shown} is a folder`, 'name the file with the draft');
  if (code === 'ENOTFILE')
    return say(
      `${shown} is no plain file`,
      'name a text file, or pipe the draft in:  sillplate remarks - my-house < draft.txt',
    );
  return say(`${shown} can’t be read (${code ?? 'unknown reason'})`, 'check who may read it');
}
