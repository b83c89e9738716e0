/**
 * The whole walk, on one page: a house folder is read, worked out, composed for each edition, rendered twice
 * and put in place.
 *
 * One house is one unit of work: what comes out depends on its folder, the as-of date and the program's
 * version, and on nothing else. Nothing is archived while an error stands.
 */
import path from 'node:path';
import { ChangedWhileRead } from './archive/file-digest.js';
import { listTree } from './archive/list-tree.js';
import { placeTrouble } from './archive/output-place.js';
import { recover, replaceFolder } from './archive/replace-folder.js';
import type { FileToWrite } from './archive/write-tree.js';
import { changedSince, changedTrouble, mustBeAsRead } from './as-it-was-read.js';
import { asWritten } from './as-written.js';
import {
  changesFor,
  changesSinceAll,
  readDelivered,
  type SinceDelivery,
  warnOfDelivered,
} from './delivered.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { diskTrouble } from './diagnostics/disk-trouble.js';
import { NOWHERE } from './diagnostics/place.js';
import { type Located, locate, printReport } from './diagnostics/report.js';
import { findHouses, typedHouse } from './find-houses.js';
import type { HouseOrder } from './house-order.js';
import {
  camerasOf,
  developFor,
  earlyPhotos,
  onDisk,
  originals,
  type Plates,
  photoTrouble,
  platesFor,
  platesOnDisk,
  undrawnPapers,
} from './house-photos.js';
import { type ReadHouse, readHouse } from './intake/read-house.js';
import { type FactsBefore, factsBefore, MADE_FROM, madeFromFile } from './made-from.js';
import { missingGlyphs } from './missing-glyphs.js';
import type { ChangesSince } from './packet/changes-since.js';
import { composePacket, contextOf } from './packet/compose.js';
import type { EditionName, Packet, Pictures, WorkbookExport } from './packet/packet.js';
import type { PaperName } from './print/paper.js';
import type { Printed } from './print/render-print.js';
import { deriveTally, type Tally } from './tally/tally.js';
import { tooLong } from './too-long.js';
import { version } from './version.js';
import { renderWeb } from './web/render-web.js';

export type { HouseOrder } from './house-order.js';

export const EDITION_NAMES: readonly EditionName[] = ['agent', 'visit', 'buyer', 'care', 'file'];

export interface MadeEdition {
  readonly edition: EditionName;
  readonly title: string;
  readonly page: string;
  readonly pdf: string;
  readonly sheets: number;
  readonly digest: string;
}

export interface HouseResult {
  readonly located: readonly Located[];
  /** Empty if an error stands. */
  readonly made: readonly MadeEdition[];
  readonly tally: Tally | undefined;
}

/** A house read, worked out and composed, with its pictures: everything but the rendering. */
export interface ComposedHouse {
  readonly packets: readonly Packet[];
  /** The pictures of one of its packets: in the sizes that this packet asks for, whatever else is made beside it. */
  readonly picturesOf: (packet: Packet) => Pictures;
  /** What changed since each delivery that precedes the as-of date; nothing where an error stands. */
  readonly since: readonly SinceDelivery[];
  readonly diagnostics: Diagnostic[];
  readonly tally: Tally | undefined;
  readonly read: ReadHouse;
  /** Pages of receipts, where the house file is made. */
  readonly plates: Plates;
  /** An error stands, and nothing may be archived. */
  readonly failed: boolean;
  readonly locate: () => Located[];
}

/** Reads a house and works everything out, without writing anything but the photo cache. */
export async function composeHouse(order: HouseOrder): Promise<ComposedHouse> {
  const { read, tally, diagnostics } = await understand(order);
  let plates: Plates = new Map();
  const finish = (
    packets: readonly Packet[],
    picturesOf: ComposedHouse['picturesOf'],
    since: ComposedHouse['since'] = [],
  ): ComposedHouse => ({
    packets,
    picturesOf,
    since,
    plates,
    diagnostics,
    tally,
    read,
    failed: tally === undefined || hasErrors(diagnostics),
    locate: () => locate(diagnostics, read.places),
  });
  const { found } = read;
  if (found === undefined || tally === undefined) return finish([], () => new Map());
  diagnostics.push(...earlyPhotos(found.house, order));
  try {
    if (!hasErrors(diagnostics)) plates = await platesFor(order, found);
    diagnostics.push(...asWritten(read, undrawnPapers(plates, found.house)));
  } catch (thrown) {
    if (!isRefusal(thrown)) throw thrown;
    diagnostics.push(diskTrouble(thrown, order.outShown));
  }
  const { delivered, diagnostics: damaged } = await readDelivered(order.folder, order.shown);
  diagnostics.push(...damaged);
  const tallies = new Map([[order.asOf, tally]]);
  const tallyFor = (asOf: string): Tally => {
    const made = tallies.get(asOf) ?? deriveTally(found.house, asOf, camerasOf(found), found.ledger).tally;
    tallies.set(asOf, made);
    return made;
  };
  let { photos, unnamed } = found;
  for (;;) {
    const compose = (edition: EditionName, asOf: string, changes: readonly ChangesSince[]): Packet =>
      composePacket({
        folder: order.named ?? found.folder,
        house: found.house,
        tally: tallyFor(asOf),
        edition,
        photos: new Map([...photos].map(([id, file]) => [id, onDisk(file)])),
        unnamed: unnamed.map(onDisk),
        plates: platesOnDisk(plates),
        changes,
        program: `sillplate ${version()}`,
      });
    const broken = hasErrors(diagnostics);
    // Of the house file the sheets and all photos are read only where it is made.
    const held = delivered.filter(({ edition }) => edition !== 'file' || order.editions.includes('file'));
    const since = broken
      ? []
      : changesSinceAll(held, order.asOf, found.house, (edition, asOf) => compose(edition, asOf, []));
    const packets = broken
      ? []
      : order.editions.map((edition) => compose(edition, order.asOf, changesFor(edition, since)));
    const developed = await developFor(order, { ...found, photos, unnamed }, packets, plates);
    diagnostics.push(...photoTrouble(order, developed.failed, found.house), ...developed.diagnostics);
    // Where nothing was composed, all photos were looked at, and a second look would find no more.
    if (packets.length === 0 || developed.failed.size === 0 || developed.diagnostics.length > 0) {
      diagnostics.push(...asWritten(read, warnOfDelivered(since, found.house, typedHouse(order.shown))));
      // A hundred small files of rules, which no other command waits for.
      const { ownWords } = await import('./remarks-own-words.js');
      diagnostics.push(...ownWords(packets, found.house, tally, read));
      return finish(packets, developed.picturesOf, since);
    }
    // Photos that only their decoder found broken: once more without them, since others may take their place.
    photos = new Map([...photos].filter(([id]) => !developed.failed.has(id)));
    unnamed = unnamed.filter(({ id }) => !developed.failed.has(id));
  }
}

/** The system refused to read or write. */
const isRefusal = (thrown: unknown): boolean => (thrown as NodeJS.ErrnoException).syscall !== undefined;

/** Reads a house and works everything out; writes no packet. */
export async function checkHouseFolder(order: HouseOrder): Promise<HouseResult> {
  const composed = await composeHouse({ ...order, everyPhoto: true, ledger: true });
  composed.diagnostics.push(...(await draftTrouble(order, composed)));
  return { located: composed.locate(), made: [], tally: composed.tally };
}

/** What is said of the draft of its listing text. Nothing is held against facts with errors. */
async function draftTrouble(
  { folder, shown }: HouseOrder,
  { read, tally, failed }: ComposedHouse,
): Promise<Diagnostic[]> {
  const { found } = read;
  if (failed || found === undefined || tally === undefined) return [];
  const { remarksInCheck } = await import('./remarks-in-check.js');
  const photos = new Map([...found.photos].map(([id, file]) => [id, onDisk(file)]));
  const context = () =>
    contextOf({ folder: found.folder, house: found.house, tally, edition: 'file', photos });
  return remarksInCheck({ folder, shown, typed: typedHouse(shown), read, tally, context });
}

/** Reads a house, makes the wanted editions and puts them in place in one step. */
export async function buildHouse(order: HouseOrder): Promise<HouseResult> {
  const nothing = (trouble: Diagnostic): HouseResult => ({
    located: locate([trouble], NOWHERE),
    made: [],
    tally: undefined,
  });
  const unfit = await preparePlace(order);
  if (unfit !== undefined) return nothing(unfit);
  for (let tries = 1; ; tries++) {
    const before = await factsBefore(order.folder);
    try {
      return await makeHouse(order, before);
    } catch (thrown) {
      const changed = await changedFileOf(thrown, order, before);
      if (changed === undefined && !isTakenAway(thrown, order)) throw thrown;
      if (tries < TRIES) continue;
      return nothing(
        changed === undefined
          ? diskTrouble(thrown, order.outShown)
          : changedTrouble(changed, 'no packet was made'),
      );
    }
  }
}

/** The cache may be deleted, and the house's files changed, while a build runs: it begins again with what is there. */
const TRIES = 3;

/** As the writer would type it, if what was thrown comes of a file of the facts that was changed meanwhile. */
async function changedFileOf(
  thrown: unknown,
  { folder, shown }: HouseOrder,
  before: FactsBefore | undefined,
): Promise<string | undefined> {
  const home = path.resolve(folder);
  if (thrown instanceof ChangedWhileRead && thrown.file.startsWith(home + path.sep))
    return path.posix.join(shown, ...path.relative(home, thrown.file).split(path.sep));
  if (!(thrown instanceof ChangedWhileRead) && !isRefusal(thrown)) return undefined;
  const changed = await changedSince(folder, before?.seen);
  return changed === undefined ? undefined : path.posix.join(shown, changed);
}

export function isTakenAway(thrown: unknown, { out, folder }: HouseOrder): boolean {
  const { code, path: at } = thrown as NodeJS.ErrnoException;
  return (
    code === 'ENOENT' &&
    at !== undefined &&
    [out, path.resolve(folder)].some((home) => at.startsWith(home + path.sep))
  );
}

async function makeHouse(order: HouseOrder, before: FactsBefore | undefined): Promise<HouseResult> {
  const rendered = await renderHouse(order);
  const { composed, files, made } = rendered;
  const { diagnostics, read, tally } = composed;
  const failed = (): HouseResult => ({ located: composed.locate(), made: [], tally });
  if (composed.failed || read.found === undefined) {
    // The mistakes may be those of a file that was only half there.
    await mustBeAsRead(order.folder, before?.seen);
    return failed();
  }
  const trouble = await putInPlace(order, read.found.folder, files, before);
  if (trouble !== undefined) {
    diagnostics.push(trouble);
    return failed();
  }
  return { located: composed.locate(), made, tally };
}

export interface RenderedHouse {
  readonly composed: ComposedHouse;
  /** Paths begin with the edition's name. None where an error stands. */
  readonly files: readonly FileToWrite[];
  readonly made: readonly MadeEdition[];
}

/** Makes the wanted editions as files, and writes none of them. */
export async function renderHouse(order: HouseOrder): Promise<RenderedHouse> {
  const composed = await composeHouse(order);
  const { packets, diagnostics, read } = composed;
  if (composed.failed || read.found === undefined) return { composed, files: [], made: [] };
  const files: FileToWrite[] = [];
  const made: MadeEdition[] = [];
  const missing: string[] = [];
  for (const packet of packets) {
    order.onStep?.(packet.edition.title.toLowerCase());
    const rendered = await renderEdition(packet, composed.picturesOf(packet), order, read, composed.plates);
    missing.push(...rendered.missing);
    files.push(...rendered.files);
    made.push(rendered.made);
    diagnostics.push(...tooLong(packet, rendered.made.sheets, read.spec));
  }
  diagnostics.push(...missingGlyphs(missing, packets, read.spec));
  return { composed, files, made };
}

interface Understood {
  readonly read: ReadHouse;
  readonly tally: Tally | undefined;
  readonly diagnostics: Diagnostic[];
}

async function understand(order: HouseOrder): Promise<Understood> {
  const isFile = order.editions.includes('file');
  const read = await readHouse(order.folder, order.shown, {
    everyPhoto: isFile,
    ledger: isFile || order.ledger === true,
  });
  const diagnostics = [...read.diagnostics];
  if (read.found === undefined) return { read, tally: undefined, diagnostics };
  const { tally, diagnostics: derived } = deriveTally(
    read.found.house,
    order.asOf,
    camerasOf(read.found),
    read.found.ledger,
  );
  diagnostics.push(...asWritten(read, derived));
  return { read, tally, diagnostics };
}

const hasErrors = (diagnostics: readonly Diagnostic[]): boolean =>
  diagnostics.some((one) => one.severity === 'error');

export const pdfNameOf = (packet: Packet): string => `${packet.house.folder}-${packet.edition.name}.pdf`;

export const renderPages = renderWeb;
/** The sheets of a packet. What prints is loaded when something is printed: `check` and `photos` need not wait for it. */
export async function renderPdf(packet: Packet, pictures: Pictures, paper: PaperName): Promise<Printed> {
  const { renderPrint } = await import('./print/render-print.js');
  return renderPrint(packet, pictures, paper);
}

/** What packs workbooks is loaded when one is packed. */
async function workbookBytes({ workbook }: WorkbookExport): Promise<Uint8Array> {
  const { workbookBytes: pack } = await import('./archive/write-workbook.js');
  return pack(workbook());
}

async function renderEdition(
  packet: Packet,
  pictures: Pictures,
  order: HouseOrder,
  read: ReadHouse,
  plates: Plates,
) {
  const { name } = packet.edition;
  const pdf = pdfNameOf(packet);
  const sheets = await renderPdf(packet, pictures, order.paper);
  const pages = await renderWeb(packet, pictures, { file: pdf, pages: sheets.pages });
  const inside = (file: string): string => `${name}/${file}`;
  const files: FileToWrite[] = [
    ...pages.map((file) => ({ ...file, path: inside(file.path) })),
    { path: inside(pdf), bytes: sheets.bytes },
    ...(await Promise.all(
      packet.exports.map(async (one): Promise<FileToWrite> => {
        const at = inside(one.file);
        return 'text' in one ? { path: at, text: one.text } : { path: at, bytes: await workbookBytes(one) };
      }),
    )),
    ...originals(packet, read.found, plates).map((file) => ({ ...file, path: inside(file.path) })),
  ];
  const at = (file: string): string => path.posix.join(order.outShown, packet.house.folder, name, file);
  return {
    files,
    missing: sheets.missing,
    made: {
      edition: name,
      title: packet.edition.title,
      page: at('index.html'),
      pdf: at(pdf),
      sheets: sheets.pages,
      digest: packet.digest,
    },
  };
}

/** The house's folder is replaced in one step; editions that were not asked for go over into it as they were. */
async function putInPlace(
  order: HouseOrder,
  house: string,
  files: readonly FileToWrite[],
  before: FactsBefore | undefined,
): Promise<Diagnostic | undefined> {
  const shown = path.posix.join(order.outShown, house);
  const others = EDITION_NAMES.filter((edition) => !order.editions.includes(edition));
  // Asked for when no other build of this house can put anything in place.
  const all = async (): Promise<FileToWrite[]> => {
    const kept = await Promise.all(others.map((edition) => listTree(path.join(order.out, house), edition)));
    return [...files, ...kept.flat(), await madeFromFile(order, house, before)];
  };
  try {
    return await replaceFolder(order.out, house, all, shown, () => mustBeAsRead(order.folder, before?.seen));
  } catch (thrown) {
    if (isTakenAway(thrown, order)) throw thrown;
    return diskTrouble(thrown, shown);
  }
}

/** Before anything is written: what a killed run left goes back, and the place must be fit for packets. */
async function preparePlace(order: HouseOrder): Promise<Diagnostic | undefined> {
  const house = path.basename(path.resolve(order.folder));
  const shown = path.posix.join(order.outShown, house);
  try {
    await recover(order.out, house);
    return await placeTrouble(
      path.join(order.out, house),
      order.folder,
      [...EDITION_NAMES, MADE_FROM],
      shown,
    );
  } catch (thrown) {
    return diskTrouble(thrown, shown);
  }
}

/** The editions that are made unless others are asked for. The house file is never published and made on request. */
export const PUBLISHED: readonly EditionName[] = ['agent', 'visit', 'buyer', 'care'];

/** What `.eleventy.js` needs to make the pages with Eleventy's own command. Throws, with the report, if a house has an error. */
export async function packetsForEleventy(options: { readonly content: string; readonly asOf: string }) {
  const { houses } = await findHouses(options.content, []);
  const entries = [];
  for (const house of houses) {
    const out = path.resolve('out');
    const order = {
      ...house,
      asOf: options.asOf,
      editions: PUBLISHED,
      out,
      outShown: 'out',
      paper: 'letter',
    } as const;
    const composed = await composeHouse(order);
    if (composed.failed) {
      const errors = composed.locate().filter(({ diagnostic }) => diagnostic.severity === 'error');
      throw new Error(`${house.shown} can’t be shown:\n\n${printReport(errors, 'text', false)}`);
    }
    for (const packet of composed.packets)
      entries.push({ packet, pictures: composed.picturesOf(packet), paper: undefined });
  }
  return entries;
}
