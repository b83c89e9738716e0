/** `sillplate build` and `sillplate check`. */
import path from 'node:path';
import { recoverAll } from './archive/replace-folder.js';
import { buildHouse, checkHouseFolder, type HouseResult, type MadeEdition, PUBLISHED } from './build.js';
import { buildBeside } from './build-beside.js';
import type { HouseMade } from './build-worker.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import {
  countSeverities,
  type Located,
  locate,
  printGaps,
  printReport,
  type ReportFormat,
  visible,
} from './diagnostics/report.js';
import { findHouses, type HouseFolder, shownPath } from './find-houses.js';
import type { HouseOrder } from './house-order.js';
import { listYaml } from './intake/read-facts.js';
import { type Stale, whyStale } from './made-from.js';
import type { EditionName } from './packet/packet.js';
import type { Progress, Terminal } from './terminal.js';

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
  /** Make only the houses that a build would make otherwise than they lie there. */
  readonly stale?: true;
  /** Write nothing; list what would be made. */
  readonly list?: true;
  /** Houses made at once. */
  readonly jobs?: number;
}

export async function checkCommand(
  wanted: readonly string[],
  options: CheckOptions,
  terminal: Terminal,
): Promise<number> {
  const walked = await checkAll(wanted, options, terminal);
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
  const { houses, diagnostics } = await findHouses(options.content, wanted);
  const lost = locate(diagnostics, NOWHERE);
  const orders = houses.map((house) => orderOf(house, options));
  const meant = options.stale === true ? await stale(orders) : orders.map((order) => ({ order }));
  if (options.list === true) return listHouses(meant, lost, options, terminal);
  if (options.stale === true) await clearBehind(orders, meant, options);
  const text = options.format === 'text';
  // For people each house is told as it ends, and not kept.
  const kept = [...lost];
  let status = statusOf(lost);
  const shown: Shown = { first: undefined, notes: false };
  if (text && lost.length > 0) terminal.out(`${printReport(lost, 'text', terminal.colour)}\n`);
  const progress = terminal.progress('sillplate');
  try {
    for await (const one of makeAll(
      meant.map(({ order }) => order),
      options.jobs ?? 1,
      progress,
    )) {
      status = Math.max(status, statusOf(one.located));
      if (text) tellMade(one, terminal, shown);
      else kept.push(...one.located);
    }
  } finally {
    progress.stop();
  }
  if (text) terminal.out(closing(shown, orders.length - meant.length, meant.length, options));
  else terminal.out(printReport(kept, options.format, false));
  return status;
}

const orderOf = (
  { folder, shown }: HouseFolder,
  options: CheckOptions & Partial<Pick<BuildOptions, 'edition' | 'paper'>>,
): HouseOrder => ({
  folder,
  shown,
  asOf: options.asOf,
  today: options.today,
  editions: options.edition ?? PUBLISHED,
  paper: options.paper ?? 'letter',
  out: path.resolve(options.out),
  outShown: shownPath(options.out),
});

const nameOf = ({ folder }: HouseOrder): string => path.basename(path.resolve(folder));

/** The same order, followed on a progress line. */
const followed = (order: HouseOrder, progress: Progress): HouseOrder => {
  const name = nameOf(order);
  progress.step(name);
  return {
    ...order,
    onStep: (step) => progress.step(`${name}, ${step}`),
    onPhoto: (photo, done, all) => progress.photo(name, photo, done, all),
  };
};

interface Meant {
  readonly order: HouseOrder;
  readonly why?: Stale;
}

/** The houses that a build would make otherwise than they lie there. */
async function stale(orders: readonly HouseOrder[]): Promise<Meant[]> {
  const found: Meant[] = [];
  for (const order of orders) {
    const why = await whyStale(order);
    if (why !== undefined) found.push({ order, why });
  }
  return found;
}

/** What a killed run left of houses that lie there ready: nobody else comes by to clear it. Whether it can be is for the next build to tell. */
async function clearBehind(
  orders: readonly HouseOrder[],
  meant: readonly Meant[],
  { out }: BuildOptions,
): Promise<void> {
  const again = new Set(meant.map(({ order }) => order));
  const ready = orders.filter((order) => !again.has(order)).map(nameOf);
  await recoverAll(path.resolve(out), ready).catch(() => undefined);
}

/** What would be made, for people and for programs that spread the houses over machines. Writes nothing. */
async function listHouses(
  meant: readonly Meant[],
  lost: readonly Located[],
  { format }: BuildOptions,
  terminal: Terminal,
): Promise<number> {
  const rows: { house: string; folder: string; why: Stale | null }[] = [];
  const located = [...lost];
  for (const { order, why } of meant) {
    const there = await listYaml(order.folder, order.shown);
    if ('diagnostics' in there) located.push(...locate(there.diagnostics, NOWHERE));
    else
      rows.push({ house: nameOf(order), folder: order.shown, why: why ?? (await whyStale(order)) ?? null });
  }
  if (located.length > 0) terminal.error(printReport(located, 'text', terminal.colour));
  if (format === 'json') terminal.out(`${JSON.stringify(rows, undefined, 1)}\n`);
  else
    for (const { house, folder, why } of rows)
      terminal.out(`${visible(house)}  ${visible(folder)}  ${why ?? 'up to date'}\n`);
  return statusOf(located);
}

interface HouseEnded extends HouseMade {
  readonly name: string;
}

/** Makes the houses, one after another or several at once; gives what came of each in their order. */
async function* makeAll(
  orders: readonly HouseOrder[],
  jobs: number,
  progress: Progress,
): AsyncGenerator<HouseEnded> {
  if (jobs > 1 && orders.length > 1) {
    let done = 0;
    const step = (): void => progress.step(`${++done} of ${orders.length} houses`);
    let at = 0;
    for await (const one of buildBeside(orders, jobs, step))
      yield { ...one, name: nameOf(orders[at++] as HouseOrder) };
    return;
  }
  for (const order of orders) {
    const { located, made } = await buildHouse(followed(order, progress));
    yield { located, made, name: nameOf(order) };
  }
}

/** What the closing line needs of the houses that went by. */
interface Shown {
  first: MadeEdition | undefined;
  notes: boolean;
}

function tellMade({ name, located, made }: HouseEnded, terminal: Terminal, shown: Shown): void {
  // Notes are what `check` is for; a build says only what makes the packet false or thin.
  const told = located.filter(({ diagnostic }) => diagnostic.severity !== 'note');
  if (told.length > 0) terminal.out(`${printReport(told, 'text', terminal.colour)}\n`);
  terminal.out(`${name}: ${made.length === 0 ? `no packet made, ${summary(located)}` : summary(located)}\n`);
  for (const one of made) terminal.out(`  ${line(one)}\n`);
  shown.first ??= made.find(({ edition }) => edition === 'buyer') ?? made[0];
  shown.notes ||= countSeverities(located).note > 0;
}

interface Walked extends HouseResult {
  readonly name: string;
}

/** Looks at the houses one after another; what is wrong with the content folder itself comes first. */
async function checkAll(
  wanted: readonly string[],
  options: CheckOptions,
  terminal: Terminal,
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
    for (const house of houses) {
      const order = orderOf(house, options);
      walked.push({ ...(await checkHouseFolder(followed(order, progress))), name: nameOf(order) });
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

function closing({ first, notes }: Shown, fresh: number, stale: number, { asOf }: BuildOptions): string {
  const passed = fresh === 0 ? '' : `${fresh} ${fresh === 1 ? 'house is' : 'houses are'} up to date.\n`;
  if (first === undefined)
    return fresh > 0 && stale === 0
      ? passed
      : `\n${passed}Nothing was written; what was there before is as it was.\n`;
  return `\n${passed}As of ${asOf}. Open ${first.page} in a browser.\n${notes ? 'To see the notes, with what is still missing:  sillplate check\n' : ''}`;
}
