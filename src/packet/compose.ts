/**
 * A house, what was worked out about it and an edition become one `Packet`.
 *
 * Takes a house, a tally and an edition's name. Gives the packet. Never knows HTML, PDF or YAML, and takes words
 * only from what the edition may know (`edition-house.ts`). Start reading at `composePacket`.
 */
import type { House } from '../facts/house.js';
import type { Tally } from '../tally/tally.js';
import { careCalendar } from './calendar.js';
import type { ChangesSince } from './changes-since.js';
import { type Context, contextFor, type PhotoOnDisk, type PlatesOnDisk } from './context.js';
import { isoDate } from './date-words.js';
import { digestOf } from './digest.js';
import { houseFor } from './edition-house.js';
import { factsExport } from './facts-file.js';
import { ledgerExports } from './ledger-exports.js';
import { listingExports } from './listing-fields.js';
import { mapRich } from './map-rich.js';
import type { Block, EditionName, Packet, PacketExport, PacketPhoto, Run, Section } from './packet.js';
import { sectionsWithProperSigns, withProperSigns } from './proper-signs.js';
import {
  improvementsByTrade,
  sheetAges,
  sheetPhotos,
  sheetSize,
  sheetTerms,
  updateClasses,
} from './sections/agent.js';
import { careSchedule, equipment, finishRecord, warrantySection } from './sections/care.js';
import { withChanges } from './sections/changes.js';
import { contactSheet } from './sections/contact-sheet.js';
import { costs } from './sections/costs.js';
import { duties } from './sections/duties.js';
import { forTheOwner } from './sections/for-the-owner.js';
import { howOld } from './sections/how-old.js';
import { inShort, keyFacts } from './sections/in-short.js';
import { keepUntil } from './sections/keep-until.js';
import { leftAsFound } from './sections/left-as-found.js';
import { lessons } from './sections/lessons.js';
import { milesAndHours } from './sections/miles-and-hours.js';
import { moneyRules } from './sections/money-rules.js';
import { notices, STANDING } from './sections/notices.js';
import { papers } from './sections/papers.js';
import { payees } from './sections/payees.js';
import { photosByRoom } from './sections/photos-by-room.js';
import { questions } from './sections/questions.js';
import { withReceipt } from './sections/receipt.js';
import { paperPath, receipts } from './sections/receipts.js';
import { roomsAndFinishes } from './sections/rooms.js';
import { safety } from './sections/safety.js';
import { sizeSection } from './sections/size.js';
import { taxSheets } from './sections/tax-sheets.js';
import { visitSections } from './sections/visit.js';
import { whatWasDone } from './sections/what-was-done.js';
import { anchorsOf } from './words-of.js';

export interface ComposeOrder {
  readonly folder: string;
  readonly house: House;
  readonly tally: Tally;
  readonly edition: EditionName;
  /** Those that the facts name, by their id. */
  readonly photos: ReadonlyMap<string, PhotoOnDisk>;
  /** Those that lie beside them and that no fact names; only the house file shows them. */
  readonly unnamed?: readonly PhotoOnDisk[];
  /** Receipts and invoices as pictures, by the document's id; only the house file shows them. */
  readonly plates?: ReadonlyMap<string, PlatesOnDisk>;
  /** What the house tells otherwise than packets that were given: of this edition; for the house file, of all. */
  readonly changes?: readonly ChangesSince[];
  /** The program's name and version, told in the packet's data and counted in no digest. */
  readonly program?: string;
}

/** What the sections of an edition may look at. */
export function contextOf(order: ComposeOrder): Context {
  return contextFor(
    order.folder,
    order.house,
    houseFor(order.house, order.edition, order.tally.asOf),
    order.tally,
    order.edition,
    order.photos,
    order.unnamed ?? [],
    order.plates ?? new Map(),
  );
}

export function composePacket(order: ComposeOrder): Packet {
  const context = contextOf(order);
  const { house, rules } = context;
  const sections = sectionsWithProperSigns(
    onlyLiveLinks(eachPhotoOnce(sectionsOf(context, order.changes ?? []))),
  );
  const draft: Omit<Packet, 'digest'> = {
    house: {
      folder: order.folder,
      name: withProperSigns(house.house.name).text,
      place: withProperSigns(placeOf(context)).text,
    },
    edition: { name: order.edition, title: rules.title, reader: rules.reader },
    asOf: order.tally.asOf,
    asOfText: isoDate(order.tally.asOf),
    arrangement: rules.arrangement,
    // The sheet of two sides has them in a table, with their marks.
    keyFacts: rules.arrangement === 'two-sides' ? [] : keyFacts(context),
    sections,
    photos: photosShown(context, sections),
    originals: originalsIn(sections),
    ...papersIn(context),
    exports: exportsOf(context),
    standing: STANDING,
  };
  const packet: Packet = { ...draft, digest: digestOf(draft) };
  return { ...packet, exports: [...packet.exports, factsExport(packet, order.program ?? 'sillplate')] };
}

function sectionsOf(context: Context, changes: readonly ChangesSince[]): Section[] {
  const make: Record<EditionName, () => Section[]> = {
    agent: () => {
      const short = inShort(context);
      const blocks = [...short.blocks.filter((block) => block.kind !== 'photo'), ...sheetPhotos(context)];
      return withReceipt(context, [
        { ...short, blocks },
        improvementsByTrade(context),
        sheetAges(context),
        updateClasses(context),
        sheetSize(context),
        sheetTerms(context),
      ]);
    },
    visit: () => visitSections(context),
    buyer: () => withReceipt(context, buyerSections(context)),
    care: () =>
      withReceipt(context, [
        careSchedule(context),
        finishRecord(context),
        equipment(context),
        warrantySection(context),
        safety(context),
      ]),
    file: () => [
      ...buyerSections(context),
      duties(context),
      ...moneySections(context),
      contactSheet(context),
      forTheOwner(context),
    ],
  };
  return withChanges(context, changes, make[context.edition]());
}

const buyerSections = (context: Context): Section[] => [
  inShort(context),
  whatWasDone(context),
  howOld(context),
  roomsAndFinishes(context),
  sizeSection(context),
  safety(context),
  leftAsFound(context),
  ...[photosByRoom(context)].filter((section) => section !== undefined),
  papers(context),
  questions(context),
  notices(context),
];

/** What was paid and what it is asked for by. The context of every other edition holds no money. */
function moneySections(context: Context): Section[] {
  const { money } = context;
  if (money === undefined) return [];
  return [
    costs(context, money),
    receipts(context, money),
    taxSheets(money),
    payees(money),
    milesAndHours(context, money),
    keepUntil(money),
    lessons(money),
    moneyRules(money),
  ];
}

function placeOf({ house, edition }: Context): string {
  const { address } = house.house;
  const town = `${address.city}, ${address.state}${address.zip === undefined ? '' : ` ${address.zip}`}`;
  if (address.street !== undefined) return `${address.street}, ${town}`;
  return edition !== 'care' && address.show === 'street-withheld' ? `${town} · street withheld` : town;
}

function exportsOf(context: Context): PacketExport[] {
  if (context.edition === 'agent' || context.edition === 'buyer') return listingExports(context);
  if (context.edition === 'care') return [careCalendar(context)].filter((one) => one !== undefined);
  if (context.edition === 'file' && context.money !== undefined)
    return ledgerExports({ ...context, money: context.money, asOf: context.tally.asOf });
  return [];
}

/** Photos in order of first use, each once. */
function photosShown(context: Context, sections: readonly Section[]): PacketPhoto[] {
  const uses = new Map<string, PacketPhoto['use']>();
  const show = (id: string, use: PacketPhoto['use']): void => {
    uses.set(id, uses.get(id) === 'full' ? 'full' : use);
  };
  for (const block of sections.flatMap((section) => section.blocks)) {
    if (block.kind === 'photo') show(block.photo, 'full');
    if (block.kind === 'table' && block.plate !== undefined) show(block.plate.photo, 'full');
    if (block.kind === 'pair') for (const id of [block.before, block.after]) show(id, 'full');
    if (block.kind === 'photos')
      for (const one of block.photos) show(one.photo, block.form === 'contact' ? 'contact' : 'full');
  }
  const plates = [...context.plates.values()].flatMap(({ pages }) => pages);
  return [...uses].map(([id, use]) => {
    const photo = context.house.photos[id];
    const file =
      context.photos.get(id) ??
      context.unnamed.find((one) => one.id === id) ??
      plates.find((one) => one.id === id);
    return {
      id,
      // The house file also shows photos that nobody has put into words yet.
      alt: withProperSigns(photo?.alt ?? photo?.shows ?? file?.name ?? '').text,
      content: `${file?.content ?? ''}${JSON.stringify(photo?.hide ?? [])}`,
      use,
    };
  });
}

/** Nothing where there is none, so that the digest of every other edition is what it was. */
const papersIn = ({ plates }: Context): Pick<Packet, 'papers'> =>
  plates.size === 0
    ? {}
    : { papers: [...plates].map(([document, { file }]) => ({ document, path: paperPath(file) })) };

function originalsIn(sections: readonly Section[]): Packet['originals'] {
  return sections
    .flatMap((section) => section.blocks)
    .flatMap((block) => (block.kind === 'photos' && block.form === 'contact' ? block.photos : []))
    .flatMap(({ photo, original }) => (original === undefined ? [] : [{ photo, path: original.path }]));
}

/**
 * A photo can earn a place twice (a room's and a condition's). Within one section it is shown once; in another it
 * is shown again, but its anchor belongs to the first, so that ids stay unique and links lead to one place.
 */
function eachPhotoOnce(sections: readonly Section[]): Section[] {
  const anchors = new Map<string, number>();
  const unique = (id: string): string => {
    const times = (anchors.get(id) ?? 0) + 1;
    anchors.set(id, times);
    return times === 1 ? id : `${id}-${times}`;
  };
  return sections.map((section) => {
    const shown = new Set<string>();
    // Pairs say more than single photos: what a pair of the section shows, no single photo shows again.
    for (const block of section.blocks) if (block.kind === 'pair') shown.add(block.before).add(block.after);
    const first = (photo: string): boolean => !shown.has(photo) && shown.add(photo) !== undefined;
    const pairs = new Set<string>();
    const blocks = section.blocks.flatMap((block): Block[] => {
      if (block.kind === 'photos') {
        const photos = block.photos
          .filter((one) => first(one.photo))
          .map((one) => ({ ...one, id: unique(one.id) }));
        return photos.length === 0 ? [] : [{ ...block, id: unique(block.id), photos }];
      }
      if (block.kind === 'photo') return first(block.photo) ? [{ ...block, id: unique(block.id) }] : [];
      if (block.kind !== 'pair') return [block];
      const pair = `${block.before} ${block.after}`;
      if (pairs.has(pair)) return [];
      pairs.add(pair);
      return [{ ...block, id: unique(block.id) }];
    });
    return { ...section, blocks };
  });
}

/** An edition that leaves a paper or photo out also leaves out the way to it. */
function onlyLiveLinks(sections: readonly Section[]): Section[] {
  const anchors = anchorsOf({ sections } as Packet);
  const isLive = ({ to }: Run): boolean => to === undefined || anchors.has(to);
  const unlinked = ({ to: _dead, ...run }: Run): Run => run;
  return sections.map((section) =>
    mapRich(section, (rich) =>
      rich.every(isLive) ? rich : rich.map((run) => (isLive(run) ? run : unlinked(run))),
    ),
  );
}
