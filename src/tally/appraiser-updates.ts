/**
 * A suggestion for the appraiser: how far the kitchen and the bathrooms were updated, and when, in the words of
 * the appraisal forms, with the facts that led to it.
 *
 * Structure changed, fixtures moved or a major part new suggests "remodeled"; other parts new or refreshed
 * "updated"; nothing recorded in fifteen years "not updated". Repairs, cleaning, servicing and safety work alone
 * are upkeep. The appraiser alone decides; no condition or quality rating is ever given.
 */

import { ageSpan } from '../facts/age.js';
import { printDate } from '../facts/date.js';
import type { Finish, House, Room } from '../facts/house.js';
import { nameOf } from '../facts/place-name.js';
import { type Deed, type Improvement, type ImprovementSource, PUT_IN } from './improvements.js';
import { systemName } from './system-name.js';
import { timeFrameOf, updateWords } from './tables/updates.js';

type UpdateWord = 'not updated' | 'updated' | 'remodeled';

export interface UpdateSuggestion {
  /** `updates-kitchen`, `updates-bath-1`: by room; `updates-bathrooms` for all of them together. */
  readonly id: string;
  readonly of: 'kitchen' | 'bathroom' | 'all bathrooms';
  /** "Kitchen", "Hall bath", "Bathrooms". */
  readonly name: string;
  /** Ids of the rooms. */
  readonly rooms: readonly string[];
  readonly word: UpdateWord;
  /** Other levels the facts allow: dates that may lie before the look-back, bathrooms that differ. */
  readonly alsoPossible: readonly UpdateWord[];
  /** The form's wording: one, or several where the date is a span that reaches over a boundary. */
  readonly timeFrames: readonly string[];
  /** What led to it, a short text each; what made the level first. */
  readonly facts: readonly string[];
  /** To be printed with it, always. */
  readonly decides: string;
}

export const APPRAISER_DECIDES =
  'Sorted from the owner’s list as a suggestion; the appraiser alone decides the level of work and the time frame.';

/** `asOf` is YYYY-MM-DD. Work whose whole date lies after it isn't done yet and counts for nothing. */
export function deriveUpdates(
  house: House,
  improvements: readonly Improvement[],
  asOf: string,
): UpdateSuggestion[] {
  const suggest = (rooms: readonly Room[], id: string, of: UpdateSuggestion['of'], name: string) => {
    const changes = rooms.flatMap((room) => changesOf(room, improvements, asOf));
    // A room's name stands before its facts only where there are several rooms.
    const named = changes.map(({ room, ...change }) => ({
      ...change,
      words: rooms.length === 1 ? change.words : `${room}: ${change.words}`,
    }));
    return { id, of, name, rooms: rooms.map((room) => room.id), ...weigh(named) };
  };
  const kitchens = house.rooms.filter((room) => room.use === 'kitchen');
  const baths = house.rooms.filter((room) => room.use === 'bath');
  const one = (of: 'kitchen' | 'bathroom') => (room: Room) =>
    suggest([room], `updates-${room.id}`, of, nameOf(room));
  const bathrooms = baths.map(one('bathroom'));
  return [
    ...kitchens.map(one('kitchen')),
    ...bathrooms,
    ...(baths.length === 0
      ? []
      : [together(suggest(baths, 'updates-bathrooms', 'all bathrooms', 'Bathrooms'), bathrooms)]),
  ];
}

/** The form has one line for all bathrooms; how differing ones are summed was not read, so both are shown. */
function together(all: UpdateSuggestion, each: readonly UpdateSuggestion[]): UpdateSuggestion {
  const words = each.flatMap((one) => [one.word, ...one.alsoPossible]);
  if (each.every((one) => one.word === all.word)) return all;
  return {
    ...all,
    alsoPossible: WORDS.filter(
      (word) => word !== all.word && (words.includes(word) || all.alsoPossible.includes(word)),
    ),
    facts: [
      ...all.facts,
      `The bathrooms differ: ${each.map((one) => `${one.name}, ${one.word}`).join('; ')}`,
    ],
  };
}

const WORDS: readonly UpdateWord[] = ['not updated', 'updated', 'remodeled'];

/** One thing done to a room, with what it suggests. */
interface Change {
  readonly level: 'updated' | 'remodeled';
  readonly words: string;
  /** Completed whole years since it ended; undefined if the date isn't known. */
  readonly years: { readonly youngest: number; readonly oldest: number } | undefined;
}

function changesOf(
  room: Room,
  improvements: readonly Improvement[],
  asOf: string,
): (Change & { readonly room: string })[] {
  const done = improvements.filter((one) => one.where.includes(room.id));
  // A finish of an earlier owner, left as found but dated, was looked back on by the form too.
  const earlier = room.finishes.flatMap((item) =>
    item.kept && item.done !== undefined
      ? [
          {
            did: item.did ?? 'new',
            done: item.done,
            safety: false,
            source: { kind: 'finish', item, home: room },
          } as const,
        ]
      : [],
  );
  return [...done, ...earlier].flatMap((one) => {
    const span = one.done === undefined ? undefined : ageSpan(one.done, asOf);
    const level = levelOf(room, one);
    if (span?.future || level === undefined) return [];
    const years = span && { youngest: span.youngest?.years ?? 0, oldest: span.oldest?.years ?? BEYOND };
    return [{ room: nameOf(room), level, words: changeWords(room, one), years }];
  });
}

/** Stands for "any number of years": one more than the form looks back is enough. */
const BEYOND = Number.POSITIVE_INFINITY;

type Done = Pick<Improvement, 'did' | 'done' | 'safety' | 'source'>;

const UPKEEP: readonly Deed[] = ['repaired', 'cleaned', 'serviced', 'removed', 'moved'];

function levelOf(room: Room, one: Done): Change['level'] | undefined {
  if (isStructural(one.source) || movesFixtures(one) || isMajorPart(room, one)) return 'remodeled';
  return one.safety || UPKEEP.includes(one.did) ? undefined : 'updated';
}

const isStructural = (source: ImprovementSource): boolean => source.kind === 'work' && source.item.structural;

const FIXTURE = /\b(sink|bathtub|tub|shower|toilet|range|stove|cooktop|dishwasher|washer)\b/;

function movesFixtures({ source, did }: Done): boolean {
  if (source.kind === 'work' && source.item['fixtures-moved']) return true;
  return did === 'moved' && FIXTURE.test(partWords(source));
}

/** Fittings of a major part, and paint on it: new ones make no major part new. */
const FITTING =
  /\b(head|valve|faucet|spout|drain|trim|curtain|rod|glass|doors?|drawers?|fronts?|hardware|knobs?|pulls?|hinges?|paint|stain|caulk|grout|lights?|fan|mirror|bar)\b/;
const SOFT_TILE = /vinyl|carpet|ceiling|cork|asphalt/;

/** Tile is a major part of a bathroom; in a kitchen a tiled backsplash or floor is a part like others. */
function isMajorPart(room: Room, { source, did }: Done): boolean {
  if (!PUT_IN.includes(did)) return false;
  const words = partWords(source);
  if (FITTING.test(words)) return false;
  if (/\bcabinets\b|\b(bath)?tub\b|\bshower\b/.test(words)) return true;
  return room.use === 'bath' && /\btiles?\b/.test(words) && !SOFT_TILE.test(words);
}

/** What the thing is, in lower case: the surface and its material, or the words of the work. */
function partWords(source: ImprovementSource): string {
  if (source.kind === 'finish') return `${source.item.on} ${source.item.what}`.toLowerCase();
  return (source.kind === 'work' ? source.item.what : source.item.is).toLowerCase();
}

function changeWords(room: Room, one: Done): string {
  const { source, did, done } = one;
  const what =
    source.kind === 'finish'
      ? finishWords(source.item)
      : source.kind === 'work'
        ? source.item.what
        : systemName(source.item);
  return [
    `${what}, ${did}`,
    ...(isStructural(source) ? ['structure changed'] : []),
    ...(movesFixtures(one) ? ['plumbing or gas fixtures moved'] : []),
    ...(isMajorPart(room, one) ? ['a major part'] : []),
    done === undefined ? 'date not known' : printDate(done),
  ].join(', ');
}

const finishWords = (finish: Finish): string =>
  finish.what.toLowerCase().includes(finish.on) ? finish.what : `${finish.on}, ${finish.what}`;

type Weighed = Omit<UpdateSuggestion, 'id' | 'of' | 'name' | 'rooms'>;

function weigh(changes: readonly Change[]): Weighed {
  const { lookBackYears, nothing } = updateWords().timeFrames;
  const within = changes.filter((one) => one.years === undefined || one.years.youngest <= lookBackYears);
  const surely = within.filter((one) => one.years === undefined || one.years.oldest <= lookBackYears);
  const word = furthest(within);
  const least = furthest(surely);
  const made = within.filter((one) => one.level === word);
  return {
    word,
    alsoPossible: WORDS.filter((other) => other !== word && other === least),
    timeFrames: made.length === 0 ? [nothing] : timeFramesOf(made, lookBackYears),
    facts: factsOf(changes, within, lookBackYears),
    decides: APPRAISER_DECIDES,
  };
}

const furthest = (changes: readonly Change[]): UpdateWord =>
  changes.some((one) => one.level === 'remodeled')
    ? 'remodeled'
    : changes.length > 0
      ? 'updated'
      : 'not updated';

/** Counted from the latest of the work that made the level. Undated work counts only where all of it is. */
function timeFramesOf(made: readonly Change[], lookBackYears: number): string[] {
  const dated = made.flatMap((one) => one.years ?? []);
  if (dated.length === 0) return [updateWords().timeFrames.unknown];
  const youngest = Math.min(...dated.map((one) => one.youngest));
  const oldest = Math.min(...dated.map((one) => one.oldest), lookBackYears + 1);
  const found = new Set<string>();
  for (let years = youngest; years <= oldest; years++)
    found.add(timeFrameOf(years) ?? `more than ${lookBackYears} years ago`);
  return [...found];
}

function factsOf(changes: readonly Change[], within: readonly Change[], lookBackYears: number): string[] {
  const facts = (['remodeled', 'updated'] as const).flatMap((level) =>
    within.filter((one) => one.level === level).map((one) => one.words),
  );
  const before = changes.filter((one) => !within.includes(one));
  if (within.length === 0)
    facts.push(`No such work of the last ${lookBackYears} years is recorded in the house folder`);
  facts.push(...before.map((one) => `${one.words}; more than ${lookBackYears} years back, not counted`));
  if (within.some((one) => one.years === undefined) && within.some((one) => one.years !== undefined))
    facts.push('The time frame counts dated work only; what has no date may be later');
  return facts;
}
