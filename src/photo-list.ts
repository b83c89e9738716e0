/** What `sillplate photos` says of a house's photos, as text for a screen and as data. */
import { columnsOf, cutColumns } from './diagnostics/columns.js';
import { visible } from './diagnostics/report.js';
import { printDate } from './facts/date.js';
import type { House } from './facts/house.js';
import { typedInYaml } from './facts/typed-in-yaml.js';
import { proposeAlt, workOf } from './tally/photo-alt.js';
import type { PairProposal, PhotoProposals, ProposedHalf } from './tally/photo-proposals.js';
import { dayOfSeen, entryOf, type SeenPhoto } from './tally/photo-seen.js';

export interface ListedHouse {
  /** Name of the folder. */
  readonly name: string;
  /** What to type for it. */
  readonly typed: string;
  readonly house: House;
  readonly proposals: PhotoProposals;
}

export function photoText(listed: ListedHouse): string {
  const { proposals } = listed;
  if (proposals.inOrder.length === 0) return `${listed.name}: there is no photo in photos/\n`;
  const sections = [
    counts(listed),
    inOrder(listed),
    bursts(proposals),
    faraway(proposals),
    withoutWords(listed),
    pairs(listed),
  ];
  return sections.filter((section) => section !== '').join('\n');
}

function counts({ name, proposals }: ListedHouse): string {
  const { inOrder: all, withoutTime, held, bursts: rows, far, withoutWords: silent } = proposals;
  const unnamed = all.filter(({ id }) => id === undefined).length;
  const more = [
    ...(withoutTime.length === 0 ? [] : [`${withoutTime.length} without the time`]),
    ...(held.size === 0 ? [] : [`${held.size} held back`]),
    ...(silent.length === 0 ? [] : [`${silent.length} without words`]),
    ...(rows.length === 0 ? [] : [plural(rows.length, 'burst')]),
    ...(far.size === 0 ? [] : [`${far.size} probably not of this house`]),
  ];
  const first = `${name}: ${plural(all.length, 'photo')}, ${all.length - unnamed} named by the facts, ${unnamed} by none\n`;
  return more.length === 0 ? first : `${first}  ${more.join(' · ')}\n`;
}

/** One row: its time, its name, its stage, what it shows, and what else there is to know. */
type Row = readonly string[];

/** A row, and lines that stand farther in below it. */
interface ListedRow {
  readonly row: Row;
  readonly below: readonly string[];
}

const MOST_ROWS = 3;
const NAME_COLUMNS = 28;
/** Photos of one day that no fact names: up to so many, all names are said, since they are what one types. */
const MOST_NAMES = 60;
/** Of a line of names, without its indentation. */
const LINE_COLUMNS = 80;

/** By day; many photos of one day that no fact names share a row. */
function inOrder({ typed, house, proposals }: ListedHouse): string {
  const days = new Map<string, SeenPhoto[]>();
  for (const photo of proposals.inOrder) {
    const known = dayOfSeen(house, photo);
    const day = known === undefined ? 'time not known' : printDate(known.date);
    days.set(day, [...(days.get(day) ?? []), photo]);
  }
  const rows = [...days].map(([day, photos]) => ({ day, rows: dayRows(house, proposals, photos) }));
  const widths = widthsOf(rows.flatMap((one) => one.rows.map(({ row }) => row)));
  const lines = rows.flatMap((one) => [
    `  ${one.day}`,
    ...one.rows.flatMap(({ row, below }) => [
      `    ${lineUp(row, widths)}`,
      ...below.map((line) => `        ${line}`),
    ]),
  ]);
  const cut = [...days.values()].some((photos) => unnamedOf(photos).length > MOST_NAMES);
  const rest = cut ? `To see all names:  sillplate photos ${typed} --format json\n` : '';
  return `In the order they were taken; the times are the camera’s:\n${lines.join('\n')}\n${rest}`;
}

const unnamedOf = (photos: readonly SeenPhoto[]): SeenPhoto[] => photos.filter(({ id }) => id === undefined);

function dayRows(house: House, proposals: PhotoProposals, photos: readonly SeenPhoto[]): ListedRow[] {
  const unnamed = unnamedOf(photos);
  const together = unnamed.length > MOST_ROWS;
  return photos.flatMap((photo): ListedRow[] => {
    if (photo.id !== undefined || !together)
      return [{ row: rowOf(house, proposals, photo), below: wholeName(photo) }];
    return photo === unnamed[0] ? [groupOf(unnamed, photo)] : [];
  });
}

function groupOf(unnamed: readonly SeenPhoto[], first: SeenPhoto): ListedRow {
  const last = unnamed.at(-1) ?? first;
  const count = `${unnamed.length} that no fact names:`;
  if (unnamed.length > MOST_NAMES)
    return {
      row: [span(first, last), `${count} ${shortName(first.name)} to ${shortName(last.name)}`],
      below: [],
    };
  return { row: [span(first, last), count], below: inLines(unnamed.map(({ name }) => visible(name))) };
}

/** A name that its row cuts short, where it is the only word for the photo. */
function wholeName({ id, name }: SeenPhoto): string[] {
  const whole = visible(name);
  return id !== undefined || shortName(name) === whole ? [] : [`its whole name: ${whole}`];
}

/** Names hold blanks and commas, so a dot stands between them. */
function inLines(names: readonly string[]): string[] {
  const lines: string[] = [];
  for (const name of names) {
    const line = lines.at(-1);
    const longer = line === undefined ? name : `${line} · ${name}`;
    if (line === undefined || columnsOf(longer) > LINE_COLUMNS) lines.push(name);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

function span(first: SeenPhoto, last: SeenPhoto): string {
  const [from, to] = [timeOf(first), timeOf(last)];
  return from === to ? from : `${from}–${to}`;
}

const timeOf = ({ takenAt }: SeenPhoto): string => takenAt?.slice(11, 16) ?? '';

function rowOf(house: House, proposals: PhotoProposals, photo: SeenPhoto): Row {
  const entry = entryOf(house, photo);
  const standing = standingOf(house, proposals, photo).join(', ');
  if (entry === undefined) return [timeOf(photo), shortName(photo.name), '', 'no fact names it', standing];
  const time = dayOfSeen(house, photo)?.takenAt?.slice(11, 16) ?? '';
  return [time, shortName(photo.name), entry.when ?? '', visible(entry.shows), standing];
}

/** What it is used for, and what keeps it back. */
function standingOf(house: House, proposals: PhotoProposals, photo: SeenPhoto): string[] {
  const used = (['before', 'after'] as const).flatMap((slot) => {
    const items = house.work.filter(({ photos }) => photo.id !== undefined && photos?.[slot] === photo.id);
    return items.length === 0 ? [] : [`${slot} ${items.map(({ id }) => id).join(' and ')}`];
  });
  const held = proposals.held.get(photo.name);
  return [
    ...used,
    ...(held === undefined ? [] : [held]),
    ...(proposals.far.has(photo.name) ? ['probably another house'] : []),
    ...(proposals.withoutWords.includes(photo) ? ['no words'] : []),
  ];
}

function bursts({ bursts: rows }: PhotoProposals): string {
  if (rows.length === 0) return '';
  const lines = rows.map(({ photos, best }) => {
    const [first, last] = [photos[0] ?? best, photos.at(-1) ?? best];
    return `  ${shortName(first.name)} to ${shortName(last.name)}: ${photos.length} photos; look at ${shortName(best.name)} first\n`;
  });
  return `Bursts, taken in one go (the middle one is mostly the steadiest):\n${lines.join('')}`;
}

function faraway({ far }: PhotoProposals): string {
  if (far.size === 0) return '';
  const names = new Map<string, string[]>();
  for (const [name, words] of far) names.set(words, [...(names.get(words) ?? []), shortName(name)]);
  const lines = [...names].map(([words, list]) => `  ${words} from the others: ${list.join(', ')}\n`);
  return `Probably not of this house:\n${lines.join('')}`;
}

function withoutWords({ house, proposals }: ListedHouse): string {
  const silent = proposals.withoutWords.flatMap((photo) => {
    const entry = entryOf(house, photo);
    return entry === undefined || photo.id === undefined
      ? []
      : [
          `  ${visible(photo.id)}:\n    alt: ${visible(typedInYaml(proposeAlt(house, entry, workOf(house, photo.id))))}\n`,
        ];
  });
  return silent.length === 0
    ? ''
    : `Without words for those who can’t see them, and so left out. Proposals from the facts; look at each picture and correct its sentence before you write it under photos:\n${silent.join('')}`;
}

function pairs({ typed, proposals }: ListedHouse): string {
  const found = proposals.pairs;
  if (found.length === 0) return 'No pair is proposed: all work has its photos, or none fits by its time.\n';
  const lines = found.map(pairText);
  const ids = found.map(({ item }) => item.id);
  const first = `sillplate photos ${typed} --accept ${ids[0]}`;
  const all = `sillplate photos ${typed} --accept all`;
  return `Proposed pairs. Look at the pictures before you accept one:\n${lines.join('')}
To write one into your file, with a copy of what it was:  ${first}
${ids.length > 1 ? `To write several, put commas between them; for all:  ${all}\n` : ''}`;
}

function pairText({ item, before, after }: PairProposal): string {
  const done = item.done === undefined ? '' : `, done ${item.done.written}`;
  const lines = (['before', 'after'] as const).flatMap((slot) => {
    const half = slot === 'before' ? before : after;
    if (half !== undefined) return [`    ${slot.padEnd(6)}  ${halfText(half)}\n`];
    const there = item.photos?.[slot];
    return [`    ${slot.padEnd(6)}  ${there === undefined ? 'none fits' : `${there} (there already)`}\n`];
  });
  return `  ${item.id}: ${visible(item.what)}${visible(done)}\n${lines.join('')}`;
}

const halfText = ({ photo, reason, held }: ProposedHalf): string =>
  `${shortName(photo.name)}: ${visible(reason)}${held === undefined ? '' : `; held back (${held})`}`;

function shortName(name: string): string {
  const shown = visible(name);
  if (columnsOf(shown) <= NAME_COLUMNS) return shown;
  return `${cutColumns(shown, NAME_COLUMNS - 12, 'start')}…${cutColumns(shown, 10, 'end')}`;
}

/** A cell that is the last of its row is not counted: nothing stands behind it. */
function widthsOf(rows: readonly Row[]): number[] {
  const widths: number[] = [];
  for (const row of rows)
    for (const [at, cell] of withoutTail(row).slice(0, -1).entries())
      widths[at] = Math.max(widths[at] ?? 0, columnsOf(cell));
  return widths;
}

const withoutTail = (row: Row): Row => row.slice(0, row.findLastIndex((cell) => cell !== '') + 1);

const lineUp = (row: Row, widths: readonly number[]): string =>
  withoutTail(row)
    .map((cell, at, all) => (at === all.length - 1 ? cell : padColumns(cell, widths[at] ?? 0)))
    .join('  ');

const padColumns = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - columnsOf(text)));

const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

/** The same as data. Where a photo was taken is not in it. */
export function photoRecord({ name, house, proposals }: ListedHouse): object {
  const half = (one: ProposedHalf | undefined) =>
    one === undefined
      ? null
      : {
          photo: one.photo.name,
          reason: one.reason,
          others: one.others.map((other) => other.name),
          otherWork: one.otherWork,
          held: one.held ?? null,
        };
  return {
    house: name,
    photos: proposals.inOrder.map((photo) => {
      const entry = entryOf(house, photo);
      return {
        name: photo.name,
        id: photo.id ?? null,
        takenAt: photo.takenAt ?? null,
        taken: entry?.taken?.written ?? null,
        shows: entry?.shows ?? null,
        when: entry?.when ?? null,
        where: entry?.where ?? null,
        standing: standingOf(house, proposals, photo),
      };
    }),
    bursts: proposals.bursts.map(({ photos, best }) => ({
      photos: photos.map((photo) => photo.name),
      lookFirst: best.name,
    })),
    far: [...proposals.far].map(([photo, distance]) => ({ photo, distance })),
    withoutWords: proposals.withoutWords.flatMap((photo) => {
      const entry = entryOf(house, photo);
      return entry === undefined || photo.id === undefined
        ? []
        : [{ id: photo.id, proposedAlt: proposeAlt(house, entry, workOf(house, photo.id)) }];
    }),
    pairs: proposals.pairs.map(({ item, before, after }) => ({
      work: item.id,
      what: item.what,
      before: half(before),
      after: half(after),
    })),
  };
}
