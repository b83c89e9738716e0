/**
 * Diagnostics become lines on a screen, JSON records or CI annotations.
 *
 * Takes located diagnostics; gives text. Puts them in file order, says one cause once, and never lets a
 * character from a file act on the terminal.
 */

import { columnsOf, cutColumns } from './columns.js';
import type { Diagnostic, Severity } from './diagnostic.js';
import { printFactPath } from './fact-path.js';
import type { Place, PlaceBook } from './place.js';

/** A diagnostic with its spot in a file. */
export interface Located {
  readonly diagnostic: Diagnostic;
  readonly place: Place | undefined;
  /** The fact is absent; `place` is the nearest line there is. */
  readonly near: boolean;
  /** Where the other of two facts stands; undefined where there is none, or where it stands on no line. */
  readonly beside?: Place | undefined;
  /** Further places with the same cause. */
  readonly also: readonly Place[];
}

export type ReportFormat = 'text' | 'json' | 'github';

export function locate(diagnostics: readonly Diagnostic[], places: PlaceBook): Located[] {
  const located = diagnostics.map((diagnostic): Located => {
    const other = placeBeside(diagnostic, places);
    return { ...placed(diagnostic, places), ...(other === undefined ? {} : { beside: other }) };
  });
  return oncePerCause(located.sort(inFileOrder));
}

function placed(diagnostic: Diagnostic, places: PlaceBook): Located {
  if (diagnostic.place !== undefined) return { diagnostic, place: diagnostic.place, near: false, also: [] };
  const found =
    diagnostic.path === undefined ? undefined : places.find(diagnostic.path, diagnostic.onWord === true);
  if (found === undefined || 'place' in found)
    return { diagnostic, place: found?.place, near: found?.near ?? false, also: [] };
  return { diagnostic: { file: found.file, ...diagnostic }, place: undefined, near: false, also: [] };
}

/** The line of the other fact. Near it would be another fact's line, and say nothing. */
function placeBeside({ beside }: Diagnostic, places: PlaceBook): Place | undefined {
  const found = beside === undefined ? undefined : places.find(beside, false);
  return found !== undefined && 'place' in found && !found.near ? found.place : undefined;
}

const RANK: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** By file, line and column; what has no line comes after what has one. */
function inFileOrder(a: Located, b: Located): number {
  const file = (l: Located): string => l.place?.file ?? l.diagnostic.file ?? '\uffff';
  if (file(a) !== file(b)) return file(a) < file(b) ? -1 : 1;
  const line = (l: Located): number => l.place?.line ?? Number.MAX_SAFE_INTEGER;
  if (line(a) !== line(b)) return line(a) - line(b);
  const column = (a.place?.column ?? 0) - (b.place?.column ?? 0);
  return column !== 0 ? column : RANK[a.diagnostic.severity] - RANK[b.diagnostic.severity];
}

/** The same words about several facts are one cause: said once, with the other places behind it. */
function oncePerCause(located: readonly Located[]): Located[] {
  const groups = new Map<string, Located & { also: Place[] }>();
  for (const item of located) {
    const { code, message, file, beside } = item.diagnostic;
    const key = JSON.stringify([code, message, item.place?.file ?? file, beside]);
    const first = groups.get(key);
    if (first === undefined) groups.set(key, { ...item, also: [] });
    else if (item.place !== undefined) first.also.push(item.place);
  }
  return [...groups.values()];
}

/** The path as the report names it. */
const factOf = (diagnostic: Diagnostic): string | undefined =>
  diagnostic.path === undefined || diagnostic.path.length === 0 ? undefined : printFactPath(diagnostic.path);

export function printReport(located: readonly Located[], format: ReportFormat, colour: boolean): string {
  if (format === 'json') return `${JSON.stringify(located.map(record), null, 2)}\n`;
  if (format === 'github') return located.map((item) => `${annotation(item)}\n`).join('');
  return located.map((item) => `${screen(item, colour)}\n`).join('\n');
}

function record({ diagnostic, place, near, beside, also }: Located): object {
  return {
    code: diagnostic.code,
    severity: diagnostic.severity,
    file: place?.file ?? diagnostic.file ?? null,
    line: place?.line ?? null,
    column: place?.column ?? null,
    near,
    fact: factOf(diagnostic) ?? null,
    message: diagnostic.message,
    ...(diagnostic.beside === undefined
      ? {}
      : {
          beside: {
            fact: printFactPath(diagnostic.beside),
            file: beside?.file ?? null,
            line: beside?.line ?? null,
            column: beside?.column ?? null,
          },
        }),
    do: ways(diagnostic),
    also: also.map(({ file, line, column }) => ({ file, line, column })),
  };
}

/** The hints as alternatives; a room may have begun a later one with "or" itself. */
const ways = (diagnostic: Diagnostic): string[] =>
  diagnostic.hints.map((hint) => hint.replace(/^or\b,? */, ''));

/** GitHub's workflow command; its own escapes keep a message from becoming another command. */
function annotation({ diagnostic, place, beside, also }: Located): string {
  const kind = diagnostic.severity === 'note' ? 'notice' : diagnostic.severity;
  const data = (text: string): string =>
    text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
  const lines = [
    diagnostic.message,
    ...besideWords(diagnostic, beside),
    ...(also.length === 0 ? [] : [alsoWords(also)]),
    ...ways(diagnostic).map((way, index) => `${index === 0 ? 'do' : 'or'}: ${way}`),
  ].map(visible);
  const property = (text: string): string => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
  const file = place?.file ?? diagnostic.file;
  const properties = [
    ...(file === undefined ? [] : [`file=${property(visible(file))}`]),
    ...(place === undefined ? [] : [`line=${place.line}`, `col=${place.column}`]),
    `title=${property(visible([diagnostic.code, factOf(diagnostic)].filter(Boolean).join(' ')))}`,
  ];
  return `::${kind} ${properties.join(',')}::${data(lines.join('\n'))}`;
}

/** "beside it: house.yaml:12:14  house.built", on one line. */
function besideWords({ beside }: Diagnostic, place: Place | undefined): string[] {
  if (beside === undefined || place === undefined) return [];
  return [`beside it: ${place.file}:${place.line}:${place.column}  ${printFactPath(beside)}`];
}

function alsoWords(also: readonly Place[]): string {
  const lines = [...new Set(also.map(({ line }) => line))];
  const shown = lines.slice(0, 6).join(', ');
  const more = lines.length > 6 ? ` and ${lines.length - 6} more` : '';
  return `also on ${lines.length === 1 ? 'line' : 'lines'} ${shown}${more}`;
}

const PAINT: Record<Severity | 'soft' | 'strong', string> = {
  error: '31;1',
  warning: '33;1',
  note: '36',
  soft: '2',
  strong: '1',
};

function screen(item: Located, colour: boolean): string {
  const paint = (style: keyof typeof PAINT, text: string): string =>
    colour ? `\u001b[${PAINT[style]}m${text}\u001b[0m` : text;
  const { diagnostic, place, near, beside, also } = item;
  const where = place === undefined ? diagnostic.file : `${place.file}:${place.line}:${place.column}`;
  const head = [
    `${paint(diagnostic.severity, diagnostic.severity)} ${diagnostic.code}`,
    ...(where === undefined ? [] : [`${near ? 'near ' : ''}${visible(where)}`]),
    ...(factOf(diagnostic) === undefined ? [] : [paint('strong', visible(factOf(diagnostic) ?? ''))]),
  ].join('  ');
  const lines = [head];
  if (place === undefined) lines.push(`  ${visible(diagnostic.message)}`);
  else lines.push(...excerpt(place, near, diagnostic.message, paint));
  if (also.length > 0) {
    lines.push(paint('soft', `  ${alsoWords(also)}`));
  }
  if (beside !== undefined) {
    lines.push(...besideWords(diagnostic, beside).map((words) => `  ${visible(words)}`));
    lines.push(...excerpt(beside, true, '', paint).slice(0, 1));
  }
  ways(diagnostic).forEach((hint, index) => {
    lines.push(`  ${index === 0 ? 'do:' : 'or:'} ${visible(hint)}`);
  });
  return lines.join('\n');
}

/** What the folder lacks, most asked-for first: two lines each, since nothing that stands there is wrong. */
export function printGaps(gaps: readonly Located[]): string {
  const sorted = [...gaps].sort((a, b) => (a.diagnostic.rank ?? 0) - (b.diagnostic.rank ?? 0));
  const lines = sorted.map(({ diagnostic, place, also }, index) => {
    const at =
      place === undefined
        ? ''
        : `  ${visible(place.file)}:${place.line}${also.map((other) => `, ${other.line}`).join('')}`;
    return `${String(index + 1).padStart(3)}. ${visible(diagnostic.message)}${at}\n     do: ${visible(diagnostic.hints[0] ?? '')}\n`;
  });
  return `Still missing, most asked-for first (the packet says “not known”):\n${lines.join('')}`;
}

const EXCERPT = 96;
/** Signs of a line on either side of a spot that can be seen in its excerpt; most take a column, some two and some none. */
const AROUND = 10 * EXCERPT;

function excerpt(
  place: Place,
  near: boolean,
  message: string,
  paint: (style: 'soft', text: string) => string,
): string[] {
  const number = String(place.line);
  const gutter = ' '.repeat(number.length);
  const { shown, before, marked } = around(place);
  const marks = near ? '' : '^'.repeat(marked);
  return [
    `  ${paint('soft', `${number} |`)} ${shown}`,
    near
      ? `  ${paint('soft', `${gutter} |`)} ${visible(message)}`
      : `  ${paint('soft', `${gutter} |`)} ${' '.repeat(before)}${marks} ${visible(message)}`,
  ];
}

/** A very long line is shown around the spot. `before` and `marked` are columns of the screen. */
function around(place: Place): { shown: string; before: number; marked: number } {
  // A file may be one line of a million signs, with a thousand spots in it.
  const at = place.column - 1;
  const end = at + Math.min(place.length, AROUND);
  const ahead = visible(place.source.slice(Math.max(0, at - AROUND), at));
  const spot = visible(place.source.slice(at, end));
  const behind = visible(place.source.slice(end, end + AROUND));
  const long = columnsOf(ahead) > EXCERPT - 20;
  const start = long ? `…${cutColumns(ahead, 40, 'end')}` : ahead;
  const rest = cutColumns(spot + behind, EXCERPT - columnsOf(start), 'start');
  const before = columnsOf(start);
  return {
    shown: `${start}${rest}${rest.length < spot.length + behind.length ? '…' : ''}`,
    before,
    marked: Math.max(1, Math.min(columnsOf(spot), EXCERPT - before)),
  };
}

/** Control, direction and other invisible characters can't act on a terminal: each becomes one visible sign. */
export function visible(text: string): string {
  return text.replace(/\t/g, ' ').replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\u2028\u2029]/gu, '\u00b7');
}

export function countSeverities(located: readonly Located[]): Record<Severity, number> {
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { diagnostic, also } of located) counts[diagnostic.severity] += 1 + also.length;
  return counts;
}
