/**
 * Which photos may be the ones before and after a piece of work, by the time they were taken.
 *
 * Takes the checked facts and what the camera wrote. Gives proposals, each with its reason; a person looks at the
 * pictures and says yes. Nothing is ever paired by itself. Start reading at `proposePhotos`.
 */
import { Temporal } from 'temporal-polyfill';
import { compareText } from '../facts/compare-text.js';
import type { House, WorkItem } from '../facts/house.js';
import { photosReliedOn } from '../facts/photos-relied-on.js';
import { type Burst, findBursts } from './photo-bursts.js';
import { heldBack } from './photo-consent.js';
import { inTimeOrder, isOneDay } from './photo-days.js';
import { farPhotos } from './photo-places.js';
import { dayOfSeen, entryOf, type SeenPhoto } from './photo-seen.js';

export type Slot = 'before' | 'after';

/** One photo for one side of a pair. */
export interface ProposedHalf {
  readonly photo: SeenPhoto;
  /** Why, in plain words. */
  readonly reason: string;
  /** Other photos that fit as well, nearest first. */
  readonly others: readonly SeenPhoto[];
  /** Ids of other work that could claim this photo. */
  readonly otherWork: readonly string[];
  /** Why it would be kept out of the editions all the same. */
  readonly held: string | undefined;
}

export interface PairProposal {
  /** Its position under `work:` in the checked house. */
  readonly index: number;
  readonly item: WorkItem;
  readonly before: ProposedHalf | undefined;
  readonly after: ProposedHalf | undefined;
}

export interface PhotoProposals {
  /** In the order they were taken, as in the packet; those without a time last. */
  readonly inOrder: readonly SeenPhoto[];
  readonly pairs: readonly PairProposal[];
  readonly bursts: readonly Burst[];
  /** Neither the facts nor the camera say anything of when they were taken. */
  readonly withoutTime: readonly SeenPhoto[];
  /** Name → how far from the others, in coarse words. */
  readonly far: ReadonlyMap<string, string>;
  /** Name → why it is kept out of every edition but the house file. */
  readonly held: ReadonlyMap<string, string>;
  /** Named, to be shown, and without words. */
  readonly withoutWords: readonly SeenPhoto[];
}

/** `asOf` (YYYY-MM-DD) is the day that consent dates are compared with. */
export function proposePhotos(house: House, photos: readonly SeenPhoto[], asOf: string): PhotoProposals {
  const inOrder = sortByTime(house, photos);
  const cameras = new Map(inOrder.map(({ name, takenAt, spot }) => [name, { takenAt, spot }]));
  const far = farPhotos(house, cameras);
  const held = new Map(
    inOrder.flatMap((photo): [string, string][] => {
      const why = heldWords(house, photo, asOf);
      return why === undefined ? [] : [[photo.name, why]];
    }),
  );
  const bursts = findBursts(house, inOrder);
  return {
    inOrder,
    bursts,
    far,
    held,
    pairs: proposePairs(house, candidates(house, inOrder, bursts, far), held),
    withoutTime: inOrder.filter((photo) => dayOfSeen(house, photo) === undefined),
    withoutWords: inOrder.filter((photo) => {
      const entry = entryOf(house, photo);
      return entry !== undefined && !entry.private && entry.alt === undefined;
    }),
  };
}

/** As the contact sheet has them: those that the facts name in the facts' order, the others by name; then by time. */
function sortByTime(house: House, photos: readonly SeenPhoto[]): SeenPhoto[] {
  const places = new Map(Object.keys(house.photos).map((id, place) => [id, place]));
  const placeOf = ({ id }: SeenPhoto): number => places.get(id ?? '') ?? places.size;
  const asListed = [...photos].sort((a, b) => placeOf(a) - placeOf(b) || compareText(a.name, b.name));
  return inTimeOrder(
    asListed.map((photo) => ({
      photo,
      name: photo.name,
      taken: entryOf(house, photo)?.taken,
      takenAt: photo.takenAt,
    })),
  ).map(({ photo }) => photo);
}

function heldWords(house: House, photo: SeenPhoto, asOf: string): string | undefined {
  const entry = entryOf(house, photo);
  const held = entry === undefined ? undefined : heldBack(entry, asOf);
  return held?.why === 'not-before' ? `not before ${held.until.written}` : held?.why;
}

interface Moment {
  readonly day: string;
  /** HH:MM:SS; undefined where only the day is known. */
  readonly time: string | undefined;
}

/** Undefined where neither the facts nor the camera name one day. */
function momentOf(house: House, photo: SeenPhoto): Moment | undefined {
  const known = dayOfSeen(house, photo);
  const day = known !== undefined && isOneDay(known.date) ? known.date.earliest : undefined;
  return day === undefined ? undefined : { day, time: known?.takenAt?.slice(11) };
}

interface Candidate {
  readonly photo: SeenPhoto;
  readonly moment: Moment;
}

/** Photos that may still become half of a pair: not in one yet, of this house, and one of each burst. */
function candidates(
  house: House,
  inOrder: readonly SeenPhoto[],
  bursts: readonly Burst[],
  far: ReadonlyMap<string, string>,
): Candidate[] {
  const used = new Set(
    house.work.flatMap(({ photos }) => [photos?.before, photos?.after, ...(photos?.during ?? [])]),
  );
  const spare = new Set(
    bursts.flatMap(({ photos, best }) =>
      photos.filter((photo) => photo !== best && photo.id === undefined).map(({ name }) => name),
    ),
  );
  // A photo of what was left as found, which a fact rests on or a condition shows, is of that.
  const relied = new Set([...photosReliedOn(house), ...house.conditions.flatMap((one) => one.photos)]);
  for (const id of relied) if (house.photos[id]?.when === 'as-found') used.add(id);
  return inOrder.flatMap((photo) => {
    const moment = momentOf(house, photo);
    const out =
      moment === undefined ||
      far.has(photo.name) ||
      spare.has(photo.name) ||
      (photo.id !== undefined && used.has(photo.id));
    return out ? [] : [{ photo, moment }];
  });
}

/** A photo and a side of a pair it fits. */
interface Claim extends Candidate {
  readonly index: number;
  readonly item: WorkItem;
  readonly slot: Slot;
  /** Whole days from the work. */
  readonly days: number;
  /** Its entry names the place of the work. */
  readonly samePlace: boolean;
  /** Its entry says before or after, as wanted. */
  readonly saidSo: boolean;
}

/**
 * How far from the work a photo of it is looked for. Common practice, no source: half a year where the facts agree
 * with it, and a month where nothing but the time speaks for it.
 */
const MOST_DAYS = { told: 183, untold: 31 } as const;
const MOST_OTHERS = 3;

function proposePairs(
  house: House,
  photos: readonly Candidate[],
  held: ReadonlyMap<string, string>,
): PairProposal[] {
  const claims = house.work
    .flatMap((item, index) =>
      (['before', 'after'] as const)
        .filter((slot) => item.photos?.[slot] === undefined)
        .flatMap((slot) => photos.flatMap((photo) => claim(house, item, index, slot, photo))),
    )
    .sort(bestFirst);
  const taken = new Map<string, Claim>();
  const filled = new Map<string, Claim>();
  for (const one of claims) {
    const side = sideOf(one);
    if (taken.has(one.photo.name) || filled.has(side)) continue;
    taken.set(one.photo.name, one);
    filled.set(side, one);
  }
  const half = (index: number, slot: Slot): ProposedHalf | undefined => {
    const won = filled.get(sideOf({ index, slot }));
    if (won === undefined) return undefined;
    const others = claims.filter((one) => sideOf(one) === sideOf(won) && one.photo.name !== won.photo.name);
    const otherWork = claims
      .filter((one) => one.photo.name === won.photo.name && one.index !== index)
      .map((one) => one.item.id);
    const ids = [...new Set(otherWork)];
    return {
      photo: won.photo,
      reason: reasonOf(won, others, ids),
      others: others.slice(0, MOST_OTHERS).map(({ photo }) => photo),
      otherWork: ids,
      held: held.get(won.photo.name),
    };
  };
  return house.work.flatMap((item, index) => {
    const before = half(index, 'before');
    const after = half(index, 'after');
    return before === undefined && after === undefined ? [] : [{ index, item, before, after }];
  });
}

const sideOf = ({ index, slot }: Pick<Claim, 'index' | 'slot'>): string => `${index} ${slot}`;

function claim(house: House, item: WorkItem, index: number, slot: Slot, one: Candidate): Claim[] {
  const { when, where } = entryOf(house, one.photo) ?? {};
  // What the facts say of a photo goes before what its time would allow.
  const contradicts =
    slot === 'before'
      ? !['before', 'as-found'].includes(when ?? 'before')
      : when !== undefined && when !== 'after';
  if (contradicts) return [];
  const samePlace = where !== undefined && item.where.includes(where);
  if (where !== undefined && item.where.length > 0 && !samePlace) return [];
  const saidSo = when === slot;
  const days = slot === 'before' ? daysBefore(item, one.moment, saidSo) : daysAfter(item, one.moment, saidSo);
  return days === undefined || days > MOST_DAYS[samePlace || saidSo ? 'told' : 'untold']
    ? []
    : [{ ...one, index, item, slot, days, samePlace, saidSo }];
}

/** Whole days before the work began; undefined if it was, or may have been, taken later. */
function daysBefore(item: WorkItem, { day }: Moment, saidSo: boolean): number | undefined {
  const { earliest, latest } = item.started ?? item.done ?? {};
  if (item.done === undefined || earliest === undefined || latest === undefined) return undefined;
  if (day < earliest) return daysFrom(day, earliest);
  // On the day itself, or within what the date leaves open, only the facts can say that it was before.
  return day <= latest && (saidSo || (item.started !== undefined && earliest === latest)) ? 0 : undefined;
}

/** Whole days after the work was done; undefined if it was, or may have been, taken earlier. */
function daysAfter({ done }: WorkItem, { day }: Moment, saidSo: boolean): number | undefined {
  if (done?.earliest === undefined || done.latest === undefined) return undefined;
  if (day >= done.latest) return daysFrom(done.latest, day);
  return day >= done.earliest && saidSo ? 0 : undefined;
}

const daysFrom = (from: string, to: string): number =>
  Temporal.PlainDate.from(from).until(to, { largestUnit: 'days' }).days;

/** Where the facts agree with the place and the side, then the nearest in time. */
function bestFirst(a: Claim, b: Claim): number {
  return (
    Number(b.samePlace) - Number(a.samePlace) ||
    Number(b.saidSo) - Number(a.saidSo) ||
    a.days - b.days ||
    nearerTime(a, b) ||
    a.index - b.index ||
    compareText(a.photo.name, b.photo.name)
  );
}

/** Of one day: the last photo before the work, the first one after it. */
function nearerTime(a: Claim, b: Claim): number {
  if (a.slot !== b.slot || a.moment.day !== b.moment.day) return 0;
  const order = compareText(a.moment.time ?? '', b.moment.time ?? '');
  return a.slot === 'before' ? -order : order;
}

function reasonOf(won: Claim, others: readonly Claim[], otherWork: readonly string[]): string {
  const agrees = [
    ...(won.samePlace ? ['its entry names the same place'] : []),
    ...(won.saidSo ? [`its entry says “${won.slot}”`] : []),
  ];
  const names = others.map(({ photo }) => photo.name);
  const fits = [
    ...(names.length === 0 ? [] : [`${first(names)} would fit, too`]),
    ...(otherWork.length === 0 ? [] : [`also possible for ${first(otherWork)}`]),
  ];
  const alone = agrees.length === 0 && fits.length > 0 ? ['only its time speaks for it'] : [];
  return [whenWords(won), ...agrees, ...alone, ...(fits.length === 0 ? ['nothing else fits'] : fits)].join(
    '; ',
  );
}

function first(names: readonly string[]): string {
  const more = names.length - MOST_OTHERS;
  return `${names.slice(0, MOST_OTHERS).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function whenWords({ slot, days, item }: Claim): string {
  const count = `${days} ${days === 1 ? 'day' : 'days'}`;
  const began = item.started === undefined ? 'it was done' : 'the work began';
  const exact = (slot === 'after' ? item.done : (item.started ?? item.done))?.precision === 'day';
  if (slot === 'before')
    return days > 0
      ? `taken ${count} before ${began}`
      : `taken ${exact ? 'on the day' : 'about when'} ${began}`;
  return days > 0
    ? `taken ${count} after it was done`
    : `taken ${exact ? 'on the day' : 'about when'} it was done`;
}
