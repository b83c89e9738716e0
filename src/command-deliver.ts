/**
 * `sillplate deliver` freezes a packet for somebody; `sillplate deliveries` lists who was given what, whether it still
 * lies there as it was given, and what is told otherwise by now.
 */
import path from 'node:path';
import { ChangedWhileRead } from './archive/file-digest.js';
import type { FolderSeen } from './archive/folder-digest.js';
import { lookAtDelivery } from './archive/verify-delivery.js';
import {
  DeliveriesElsewhere,
  type DeliveryWritten,
  deliveryNames,
  writeDelivery,
} from './archive/write-delivery.js';
import type { FileToWrite } from './archive/write-tree.js';
import { lookAtFacts, mustBeAsRead } from './as-it-was-read.js';
import { composeHouse, isTakenAway, pdfNameOf, type RenderedHouse, renderHouse } from './build.js';
import { changesTold } from './changes-told.js';
import { type DeliveredOnDisk, readDelivered, type SinceDelivery } from './delivered.js';
import { deliveryTrouble } from './delivery-trouble.js';
import { DELIVERIES } from './diagnostics/delivery-names.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { diskTrouble } from './diagnostics/disk-trouble.js';
import { NOWHERE } from './diagnostics/place.js';
import { type Located, locate, printReport, visible } from './diagnostics/report.js';
import {
  type DeliveryRecord,
  isDeliveryName,
  isDeliveryNote,
  MOST_RECIPIENTS,
  printDeliveryRecord,
  recipientKey,
} from './facts/delivery.js';
import { findHouses, type HouseFolder, quoted, shownPath, typedHouse } from './find-houses.js';
import type { HouseOrder } from './house-order.js';
import { nothingChanged } from './packet/changes-since.js';
import { isoDate } from './packet/date-words.js';
import { EDITIONS } from './packet/edition-house.js';
import { FACTS_NAME } from './packet/facts-file.js';
import type { EditionName } from './packet/packet.js';
import type { Terminal } from './terminal.js';
import { version } from './version.js';

export interface DeliverOptions extends Omit<ListOptions, 'format'> {
  readonly edition?: EditionName;
  readonly to?: readonly string[];
  readonly note?: string;
  /** YYYY-MM-DD it is handed over; left out: today. */
  readonly on?: string;
  /** YYYY-MM-DD here and now. */
  readonly today: string;
  readonly paper: 'letter' | 'a4';
  readonly private?: true;
  readonly dryRun?: true;
}

export interface ListOptions {
  readonly content: string;
  readonly out: string;
  /** YYYY-MM-DD that ages are counted to. */
  readonly asOf: string;
  readonly format: 'text' | 'json';
}

/** Exit status 0: delivered, or shown · 1: the record or the disk stands in the way · 2: the command line. */
export async function deliverCommand(
  wanted: string | undefined,
  options: DeliverOptions,
  terminal: Terminal,
): Promise<number> {
  // With nothing that a delivery needs it lists what was delivered; with a part of it, it asks for the rest.
  const { edition, to, note, on, dryRun, private: isPrivate } = options;
  if ([edition, to, note, on, dryRun, isPrivate].every((one) => one === undefined))
    return deliveriesCommand(wanted === undefined ? [] : [wanted], { ...options, format: 'text' }, terminal);
  const unfit = usageTrouble(wanted, options);
  if (unfit !== undefined) return refuse(terminal, [unfit], 2);
  const { houses, diagnostics } = await findHouses(options.content, wanted === undefined ? [] : [wanted]);
  if (diagnostics.length > 0) return refuse(terminal, diagnostics, 1);
  const [house] = houses;
  if (house === undefined || houses.length > 1) return refuse(terminal, [whichHouse(houses, options)], 2);
  // `usageTrouble` asked for both.
  const wish: Wish = { house, edition: options.edition ?? 'buyer', to: eachOnce(options.to ?? []), options };
  return options.dryRun === true ? showChanges(wish, terminal) : deliver(wish, terminal);
}

/** What is to be delivered to whom. */
interface Wish {
  readonly house: HouseFolder;
  readonly edition: EditionName;
  readonly to: readonly string[];
  readonly options: DeliverOptions;
}

function refuse(terminal: Terminal, diagnostics: readonly Diagnostic[], status: 1 | 2): number {
  terminal.error(printReport(locate(diagnostics, NOWHERE), 'text', terminal.colour));
  return status;
}

const usage = (message: string, ...hints: readonly string[]): Diagnostic => ({
  code: 'cli.usage',
  severity: 'error',
  message,
  hints,
});

function usageTrouble(wanted: string | undefined, options: DeliverOptions): Diagnostic | undefined {
  const { edition, to = [], note } = options;
  const typed = `sillplate deliver ${wanted ?? 'my-house'}`;
  if (edition === undefined)
    return usage(
      'it is not said which packet is delivered',
      `add it:  ${typed} --edition buyer --to ${quoted(to[0] ?? '…')}`,
    );
  if (to.length === 0)
    return usage(
      'it is not said who gets the packet',
      `name them:  ${typed} --edition ${edition} --to "buyer’s agent"`,
      'to see what was delivered, type  sillplate deliveries',
    );
  const odd = to.find((name) => !isDeliveryName(name));
  if (odd !== undefined)
    return usage(
      odd.trim() === ''
        ? 'a recipient without a name can’t be told from another'
        : 'a recipient’s name is too long, or has a character that can’t be printed',
      'write up to 200 characters in one line, for example  --to "J. Cole, buyer’s agent"',
    );
  if (to.length > MOST_RECIPIENTS)
    return usage(
      `one packet is delivered to ${MOST_RECIPIENTS} people at most`,
      'name the rest in a second delivery',
    );
  if (note !== undefined && !isDeliveryNote(note))
    return usage(
      'the note is too long, or has a character that can’t be printed',
      'write up to 2,000 characters of plain text',
    );
  if (edition === 'file' && options.private !== true)
    return usage(
      'the house file holds what was paid, to whom, and all private papers, and is for you alone',
      'to give it to your tax preparer all the same, add  --private',
      'for a buyer or an agent, write  --edition buyer  or  --edition agent',
    );
  return undefined;
}

const whichHouse = (houses: readonly HouseFolder[], options: DeliverOptions): Diagnostic =>
  usage(
    'there are several houses, and it is not said whose packet is delivered',
    ...houses
      .slice(0, 3)
      .map(
        ({ shown }) =>
          `name it:  sillplate deliver ${typedHouse(shown)} --edition ${options.edition} --to ${quoted(options.to?.[0] ?? '…')}`,
      ),
  );

/** One person named twice is one. */
const eachOnce = (names: readonly string[]): string[] =>
  [...new Map([...names].reverse().map((name) => [recipientKey(name), name.trim()])).values()].reverse();

function orderOf({ house, edition, options }: Wish, terminal: Terminal): HouseOrder & { stop: () => void } {
  const name = path.basename(path.resolve(house.folder));
  const progress = terminal.progress(`sillplate: ${name}`);
  return {
    ...house,
    asOf: options.asOf,
    editions: [edition],
    out: path.resolve(options.out),
    outShown: shownPath(options.out),
    paper: options.paper,
    onStep: progress.step,
    onPhoto: (photo, done, all) => progress.photo(name, photo, done, all),
    stop: progress.stop,
  };
}

/** Other deliveries may be written while the packet is made, which then is not the one that follows them. */
const TRIES = 3;

/** What came of one try. */
type Attempt =
  /** An error stands. */
  | { readonly kind: 'failed'; readonly rendered: RenderedHouse }
  | {
      readonly kind: 'refused';
      readonly rendered: RenderedHouse | undefined;
      readonly trouble: Diagnostic;
      /** It may go well the next time. */
      readonly again: boolean;
    }
  | {
      readonly kind: 'written';
      readonly rendered: RenderedHouse;
      readonly record: DeliveryRecord;
      readonly written: Extract<DeliveryWritten, { kind: 'written' }>;
    };

async function deliver(wish: Wish, terminal: Terminal): Promise<number> {
  for (let tries = 1; ; tries++) {
    const order = orderOf(wish, terminal);
    const made = await attempt(wish, order).finally(order.stop);
    if (made.kind === 'refused' && made.again && tries < TRIES) continue;
    return tellAttempt(wish, made, terminal);
  }
}

function tellAttempt(wish: Wish, made: Attempt, terminal: Terminal): number {
  const { shown } = wish.house;
  if (made.rendered !== undefined)
    tellProblems(made.rendered.composed.locate(), made.kind === 'failed', terminal);
  switch (made.kind) {
    case 'failed':
      terminal.error(
        `${visible(shown)}: nothing was delivered; for all there is to mend, type  sillplate check ${visible(typedHouse(shown))}\n`,
      );
      return 1;
    case 'refused':
      return refuse(terminal, [made.trouble], 1);
    case 'written':
      terminal.out(asDelivered(wish, made.rendered, made.record, made.written));
      return 0;
  }
}

async function attempt(wish: Wish, order: HouseOrder): Promise<Attempt> {
  const { house } = wish;
  const before = await lookAtFacts(house.folder);
  let rendered: RenderedHouse | undefined;
  try {
    const seen = await deliveryNames(house.folder);
    rendered = await renderHouse(order);
    if (rendered.composed.failed || rendered.made.length === 0) {
      // The mistakes may be those of a file that was only half there.
      await mustBeAsRead(house.folder, before);
      return { kind: 'failed', rendered };
    }
    const { delivered } = await readDelivered(house.folder, house.shown);
    const number = Math.max(seen.length, ...delivered.map((one) => one.number)) + 1;
    const record = recordOf(wish, rendered, number);
    const written = await freeze(wish, rendered, record, { seen, before }, delivered);
    if (written.kind === 'written') return { kind: 'written', rendered, record, written };
    return { kind: 'refused', rendered, trouble: busy(deliveriesOf(house)), again: true };
  } catch (thrown) {
    // A picture of the cache, or a photo, was changed or taken away meanwhile: it is made again.
    const again = thrown instanceof ChangedWhileRead || isTakenAway(thrown, order);
    return { kind: 'refused', rendered, trouble: troubleOf(thrown, order, rendered !== undefined), again };
  }
}

const deliveriesOf = ({ shown }: HouseFolder): string => path.posix.join(shown, DELIVERIES);

/** Says what stood in the way where it stood: the house, the output with its cache, or `deliveries`. */
function troubleOf(thrown: unknown, order: HouseOrder, isMade: boolean): Diagnostic {
  const shown = deliveriesOf(order);
  if (thrown instanceof DeliveriesElsewhere) return elsewhere(shown);
  if (thrown instanceof ChangedWhileRead) return restless(shownIn(order, thrown.file) ?? thrown.file);
  const { code, path: at } = thrown as NodeJS.ErrnoException;
  const place = at === undefined ? undefined : shownIn(order, at);
  const isIn = (folder: string): boolean => place === folder || place?.startsWith(`${folder}/`) === true;
  if (isIn(shown)) return deliveryTrouble(thrown, shown);
  if (isIn(order.outShown)) return diskTrouble(thrown, order.outShown);
  if (place !== undefined && code !== undefined) return unread(place, code);
  return isMade ? deliveryTrouble(thrown, shown) : diskTrouble(thrown, order.outShown);
}

/** A file of the house or of the output as its owner would type it; undefined for any other. */
function shownIn({ folder, shown, out, outShown }: HouseOrder, file: string): string | undefined {
  const at = path.resolve(file);
  for (const [home, typed] of [
    [out, outShown],
    [path.resolve(folder), shown],
  ] as const)
    if (at === home || at.startsWith(home + path.sep))
      return path.posix.join(typed, ...path.relative(home, at).split(path.sep));
  return undefined;
}

/** The owner is about to mend what somebody was told: that is not said again. */
function tellProblems(located: readonly Located[], failed: boolean, terminal: Terminal): void {
  const told = located.filter(
    ({ diagnostic: { severity, code } }) =>
      severity === 'error' || (!failed && severity === 'warning' && code !== 'packet.delivered'),
  );
  if (told.length > 0) terminal.error(`${printReport(told, 'text', terminal.colour)}\n`);
}

function recordOf(
  { edition, to, options }: Wish,
  { composed }: RenderedHouse,
  number: number,
): DeliveryRecord {
  const [packet] = composed.packets;
  if (packet === undefined) throw new Error('nothing was made');
  return {
    number,
    to: [...to],
    house: packet.house.folder,
    edition,
    title: packet.edition.title,
    'as-of': options.asOf,
    given: options.on ?? options.today,
    digest: packet.digest,
    program: `sillplate ${version()}`,
    pdf: pdfNameOf(packet),
    ...(options.note === undefined ? {} : { note: options.note }),
  };
}

function freeze(
  { house, edition }: Wish,
  { files }: RenderedHouse,
  record: DeliveryRecord,
  { seen, before }: { readonly seen: readonly string[]; readonly before: FolderSeen | undefined },
  delivered: readonly DeliveredOnDisk[],
): Promise<DeliveryWritten> {
  const pages = files.map((file) => ({ ...file, path: file.path.replace(`${edition}/`, 'pages/') }));
  const top = (name: string): FileToWrite => {
    const found = pages.find((file) => file.path === `pages/${name}`);
    if (found === undefined) throw new Error(`an edition without ${name}`);
    return { ...found, path: name };
  };
  return writeDelivery({
    folder: house.folder,
    seen,
    name: `${record.given}-${edition}-${record.digest.replaceAll(' ', '').slice(0, 8)}`,
    record: (same) =>
      printDeliveryRecord(
        same === undefined ? record : { ...record, 'same-as': same.name, 'same-manifest': same.manifest },
      ),
    facts: top(FACTS_NAME),
    rest: [top(record.pdf), ...pages],
    maybeSame: delivered
      .filter(({ on }) => on.record.digest === record.digest && on.record.edition === edition)
      .filter(({ on }) => on.record['same-as'] === undefined)
      .map(({ name }) => name),
    mayStill: () => mustBeAsRead(house.folder, before),
  });
}

const busy = (shown: string): Diagnostic => ({
  code: 'archive.delivery',
  severity: 'error',
  file: shown,
  message: `other deliveries were written to ${shown} all the while, so this one was not made`,
  hints: ['wait until no other program delivers, and type the same command again'],
});

const restless = (file: string): Diagnostic => ({
  code: 'archive.delivery',
  severity: 'error',
  file,
  message: `nothing was delivered: ${file} was changed each time it was read`,
  hints: ['wait until no other program writes to it, and type the same command again'],
});

const unread = (file: string, code: string): Diagnostic => ({
  code: 'archive.delivery',
  severity: 'error',
  file,
  message: `nothing was delivered: ${file} can’t be read: the system says ${code}`,
  hints: ['check who may read it, and type the same command again'],
});

const elsewhere = (shown: string): Diagnostic => ({
  code: 'archive.delivery',
  severity: 'error',
  file: shown,
  message: `${shown} is a link that leads elsewhere, and what was delivered stays with its house`,
  hints: ['put the folder itself in its place'],
});

function asDelivered(
  { house, edition, to }: Wish,
  { composed, made }: RenderedHouse,
  record: DeliveryRecord,
  written: Extract<DeliveryWritten, { kind: 'written' }>,
): string {
  const home = path.posix.join(deliveriesOf(house), written.name);
  const bytes = path.posix.join(deliveriesOf(house), written.sameAs ?? written.name);
  const sheets = made[0]?.sheets ?? 0;
  const since = lastTo(composed.since, edition, to);
  return [
    `${visible(house.shown)}: the ${record.title.toLowerCase()} is frozen as given to ${visible(to.join(' and '))} on ${isoDate(record.given)}\n`,
    `  ${visible(home)}\n`,
    `  as of ${record['as-of']}, digest ${record.digest}, ${written.files} files\n`,
    written.sameAs === undefined
      ? ''
      : `  It is what was delivered before, byte for byte: PDF and pages lie in ${visible(bytes)}\n`,
    `  Hand over  ${visible(path.posix.join(bytes, record.pdf))}  (${sheets} ${sheets === 1 ? 'sheet' : 'sheets'}),\n`,
    `  or the whole folder  ${visible(path.posix.join(bytes, 'pages'))}  with its index.html.\n`,
    edition === 'file' ? '  It is private: it holds what was paid, to whom, and the receipts.\n' : '',
    ...since.map((one) => `\n${changesTold(one)}`),
  ].join('');
}

/** Of each recipient the last delivery of this edition, each delivery once. */
function lastTo(
  since: readonly SinceDelivery[],
  edition: EditionName,
  to: readonly string[],
): SinceDelivery[] {
  const last = to.flatMap((person) => {
    const own = since.filter(
      ({ delivered }) =>
        delivered.edition === edition &&
        delivered.to.some((one) => recipientKey(one) === recipientKey(person)),
    );
    return own.at(-1) ?? [];
  });
  return [...new Set(last)];
}

async function showChanges(wish: Wish, terminal: Terminal): Promise<number> {
  const order = orderOf(wish, terminal);
  const composed = await composeHouse(order).finally(order.stop);
  tellProblems(composed.locate(), composed.failed, terminal);
  const [packet] = composed.packets;
  if (composed.failed || packet === undefined) return 1;
  const { edition, to, house } = wish;
  const since = lastTo(composed.since, edition, to);
  const fresh = to.filter(
    (person) =>
      !since.some(({ delivered }) => delivered.to.some((one) => recipientKey(one) === recipientKey(person))),
  );
  terminal.out(
    [
      `${visible(house.shown)}: nothing was written; this is what a delivery would bring\n`,
      `  ${packet.edition.title}, as of ${packet.asOf}, digest ${packet.digest}\n`,
      ...fresh.map(
        (person) => `  ${visible(person)} has been given no ${packet.edition.title.toLowerCase()} yet\n`,
      ),
      ...since.map((one) => `\n${changesTold(one)}`),
    ].join(''),
  );
  return 0;
}

/** Exit status 0: listed, and all is whole · 1: something is damaged, or the record has errors · 2: the command line. */
export async function deliveriesCommand(
  wanted: readonly string[],
  options: ListOptions,
  terminal: Terminal,
): Promise<number> {
  const { houses, diagnostics } = await findHouses(options.content, wanted);
  const located: Located[] = locate(diagnostics, NOWHERE);
  const listed: Listed[] = [];
  for (const house of houses) {
    const one = await listHouse(house, options, terminal);
    listed.push(one);
    located.push(...one.located);
  }
  if (options.format === 'json') terminal.out(listAsJson(listed, located));
  else {
    if (located.length > 0) terminal.error(`${printReport(located, 'text', terminal.colour)}\n`);
    for (const one of listed) terminal.out(listAsText(one));
  }
  const damaged = listed.some(({ entries }) => entries.some(({ differs }) => differs.length > 0));
  const wrong = located.some(
    ({ diagnostic }) => diagnostic.severity === 'error' || diagnostic.code === 'intake.delivery',
  );
  return damaged || wrong ? 1 : 0;
}

interface Listed {
  readonly house: HouseFolder;
  readonly located: readonly Located[];
  /** In the order they were given. */
  readonly entries: readonly {
    readonly delivered: DeliveredOnDisk;
    /** What of its files is not as it was given. */
    readonly differs: readonly string[];
    /** Undefined where it can't be said: the record has errors, or the delivery lies after the as-of date. */
    readonly since: SinceDelivery | undefined;
  }[];
}

async function listHouse(house: HouseFolder, options: ListOptions, terminal: Terminal): Promise<Listed> {
  const { delivered, diagnostics } = await readDelivered(house.folder, house.shown);
  const editions = [...new Set(delivered.map(({ edition }) => edition))];
  if (editions.length === 0) return { house, located: locate(diagnostics, NOWHERE), entries: [] };
  const name = path.basename(path.resolve(house.folder));
  const progress = terminal.progress(`sillplate: ${name}`);
  const composed = await composeHouse({
    ...house,
    asOf: options.asOf,
    editions,
    out: path.resolve(options.out),
    outShown: shownPath(options.out),
    paper: 'letter',
    onPhoto: (photo, done, all) => progress.photo(name, photo, done, all),
  }).finally(progress.stop);
  const entries = [];
  for (const one of delivered)
    entries.push({
      delivered: one,
      differs: await differsIn(one, delivered),
      since: composed.since.find(
        (each) => each.delivered.number === one.number && each.delivered.name === one.name,
      ),
    });
  // Errors keep anything from being compared; all else is what `check` is for.
  const located = composed
    .locate()
    .filter(({ diagnostic: { severity, code } }) => severity === 'error' || code === 'intake.delivery');
  return { house, located, entries };
}

/** Its own files, and those of the delivery that holds its pages. */
async function differsIn(
  { on }: DeliveredOnDisk,
  all: readonly DeliveredOnDisk[],
): Promise<readonly string[]> {
  const { differs } = await lookAtDelivery(on.folder);
  const name = on.record['same-as'];
  if (name === undefined) return differs;
  const first = all.find((one) => one.name === name);
  if (first === undefined)
    return [...differs, `${name}, which holds its PDF and pages, is missing or damaged`];
  const look = await lookAtDelivery(first.on.folder);
  if (look.manifest !== on.record['same-manifest'])
    return [...differs, `${name}, which holds its PDF and pages, is another one now`];
  return [...differs, ...look.differs.map((what) => `${name}/${what}`)];
}

/** Files named for each delivery; of more, how many they are. */
const MOST_FILES = 5;

function listAsText({ house, entries, located }: Listed): string {
  if (entries.length === 0 && located.length > 0)
    return `${visible(house.shown)}: what was delivered can’t be read, see above\n`;
  if (entries.length === 0)
    return `${visible(house.shown)}: nothing was delivered yet\n  to freeze a packet as it is handed over, type  sillplate deliver ${visible(typedHouse(house.shown))} --edition buyer --to "buyer’s agent"\n`;
  const lines = entries.map(({ delivered, differs, since }) => {
    const { on, to, given, edition, said, note } = delivered;
    const more = differs.length - MOST_FILES;
    return [
      `\n  ${isoDate(given)}  ${EDITIONS[edition].title}, as of ${said.asOf}, digest ${said.digest}\n`,
      `    to ${visible(to.join(', '))}${note === undefined ? '' : ` (${visible(note)})`}\n`,
      `    ${visible(path.posix.join(deliveriesOf(house), on.name))}: ${differs.length === 0 ? 'whole' : 'not as it was given'}\n`,
      ...differs.slice(0, MOST_FILES).map((what) => `      ${visible(what)}\n`),
      more > 0 ? `      and ${more} more\n` : '',
      since === undefined
        ? ''
        : nothingChanged(since)
          ? '    what it says is told the same now\n'
          : changesTold(since, '    '),
    ].join('');
  });
  return `${visible(house.shown)}: ${entries.length === 1 ? 'one delivery' : `${entries.length} deliveries`}\n${lines.join('')}`;
}

function listAsJson(listed: readonly Listed[], located: readonly Located[]): string {
  const deliveries = listed.flatMap(({ house, entries }) =>
    entries.map(({ delivered: { on, to, given, edition, said, note }, differs, since }) => ({
      house: house.shown,
      folder: on.name,
      to,
      given,
      edition,
      asOf: said.asOf,
      digest: said.digest,
      note: note ?? null,
      whole: differs.length === 0,
      differs,
      changes:
        since === undefined
          ? null
          : {
              corrected: since.corrections.map(({ words, before, printed }) => ({
                fact: words,
                was: before,
                is: printed,
              })),
              told: since.told.map(({ id, section, about, oldWords, is }) => ({
                id,
                section,
                about,
                was: oldWords,
                is,
              })),
              added: since.added.map(({ fact: { id, section, about, says } }) => ({
                id,
                section,
                about,
                says,
              })),
              gone: since.gone.map(({ id, section, about, says }) => ({ id, section, about, says })),
            },
    })),
  );
  const problems: unknown = JSON.parse(printReport(located, 'json', false));
  return `${JSON.stringify({ deliveries, problems }, null, 2)}\n`;
}
