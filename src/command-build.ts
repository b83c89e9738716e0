/** `sillplate build` and `sillplate check`. */
import path from 'node:path';
import { buildHouse, checkHouseFolder, type HouseResult, type MadeEdition, PUBLISHED } from './build.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import {
  countSeverities,
  type Located,
  locate,
  printGaps,
  printReport,
  type ReportFormat,
} from './diagnostics/report.js';
import { findHouses, shownPath } from './find-houses.js';
import type { EditionName } from './packet/packet.js';
import type { Terminal } from './terminal.js';

export interface CheckOptions {
  readonly content: string;
  readonly asOf: string;
  readonly today: string;
  readonly out: string;
  readonly format: ReportFormat;
}

export interface BuildOptions extends CheckOptions {
  readonly edition?: readonly EditionName[];
  readonly paper: 'letter' | 'a4';
}

export async function checkCommand(
  wanted: readonly string[],
  options: CheckOptions,
  terminal: Terminal,
): Promise<number> {
  const walked = await walk(wanted, options, terminal, (order) =>
    checkHouseFolder({ ...order, editions: PUBLISHED, paper: 'letter' }),
  );
  const located = walked.flatMap(({ located: list }) => list);
  if (options.format !== 'text') {
    terminal.out(printReport(located, options.format, false));
    return statusOf(located);
  }
  for (const [index, one] of walked.entries()) {
    if (index > 0) terminal.out('\n');
    const gaps = one.located.filter(isGap);
    const rest = one.located.filter((item) => !isGap(item));
    if (rest.length > 0) terminal.out(`${printReport(rest, 'text', terminal.colour)}\n`);
    terminal.out(`${one.name}: ${summary(one.located)}\n`);
    if (gaps.length > 0) terminal.out(`\n${printGaps(gaps)}\n`);
  }
  return statusOf(located);
}

const isGap = ({ diagnostic }: Located): boolean =>
  diagnostic.code === 'tally.gap' && diagnostic.severity === 'note';

export async function buildCommand(
  wanted: readonly string[],
  options: BuildOptions,
  terminal: Terminal,
): Promise<number> {
  const editions = options.edition ?? PUBLISHED;
  const walked = await walk(wanted, options, terminal, (order) =>
    buildHouse({ ...order, editions, paper: options.paper }),
  );
  const located = walked.flatMap(({ located: list }) => list);
  if (options.format !== 'text') {
    terminal.out(printReport(located, options.format, false));
    return statusOf(located);
  }
  for (const one of walked) {
    // Notes are what `check` is for; a build says only what makes the packet false or thin.
    const told = one.located.filter(({ diagnostic }) => diagnostic.severity !== 'note');
    if (told.length > 0) terminal.out(`${printReport(told, 'text', terminal.colour)}\n`);
    terminal.out(
      `${one.name}: ${one.made.length === 0 ? `no packet made, ${summary(one.located)}` : summary(one.located)}\n`,
    );
    for (const made of one.made) terminal.out(`  ${line(made)}\n`);
  }
  terminal.out(closing(walked, options));
  return statusOf(located);
}

interface Walked extends HouseResult {
  readonly name: string;
}

async function walk(
  wanted: readonly string[],
  options: CheckOptions,
  terminal: Terminal,
  visit: (order: {
    folder: string;
    shown: string;
    asOf: string;
    today: string;
    out: string;
    outShown: string;
    onStep: (step: string) => void;
    onPhoto: (photo: string, done: number, all: number) => void;
  }) => Promise<HouseResult>,
): Promise<Walked[]> {
  const { houses, diagnostics } = await findHouses(options.content, wanted);
  const walked: Walked[] =
    diagnostics.length === 0
      ? []
      : [
          {
            name: shownPath(options.content),
            located: locate(diagnostics satisfies Diagnostic[], NOWHERE),
            made: [],
            tally: undefined,
          },
        ];
  const progress = terminal.progress('sillplate');
  try {
    for (const { folder, shown } of houses) {
      const name = path.basename(path.resolve(folder));
      progress.step(name);
      const result = await visit({
        folder,
        shown,
        asOf: options.asOf,
        today: options.today,
        out: path.resolve(options.out),
        outShown: shownPath(options.out),
        onStep: (step) => progress.step(`${name}, ${step}`),
        onPhoto: (photo, done, all) => progress.photo(name, photo, done, all),
      });
      walked.push({ ...result, name });
    }
  } finally {
    progress.stop();
  }
  return walked;
}

const statusOf = (located: readonly Located[]): number =>
  located.some(({ diagnostic }) => diagnostic.severity === 'error') ? 1 : 0;

function summary(located: readonly Located[]): string {
  const counts = countSeverities(located);
  const part = (n: number, word: string): string[] => (n === 0 ? [] : [`${n} ${word}${n === 1 ? '' : 's'}`]);
  const parts = [
    ...part(counts.error, 'error'),
    ...part(counts.warning, 'warning'),
    ...part(counts.note, 'note'),
  ];
  return parts.length === 0 ? 'nothing to report' : parts.join(', ');
}

function line(made: MadeEdition): string {
  return `${made.title.padEnd(20)} ${made.page}\n  ${''.padEnd(20)} ${made.pdf}  (${made.sheets} ${made.sheets === 1 ? 'sheet' : 'sheets'}, digest ${made.digest})`;
}

function closing(walked: readonly Walked[], options: BuildOptions): string {
  const first =
    walked.find((one) => one.made.length > 0)?.made.find((made) => made.edition === 'buyer') ??
    walked.find((one) => one.made.length > 0)?.made[0];
  if (first === undefined) return '\nNothing was written; what was there before is as it was.\n';
  const notes = walked.some((one) => countSeverities(one.located).note > 0);
  return `\nAs of ${options.asOf}. Open ${first.page} in a browser.\n${notes ? 'To see the notes, with what is still missing:  sillplate check\n' : ''}`;
}
