import { type HouseDate, printDate } from '../../facts/date.js';
import type { House } from '../../facts/house.js';
import { groupThousands } from '../../facts/written-number.js';
import { AREA_CLASS_NAMES } from '../../tally/area.js';
import { toldByThemselves } from '../../tally/improvements.js';
import { ASKED_FIRST, ageWords, whenWords } from '../age-words.js';
import { type Context, photoAnchor } from '../context.js';
import { onDate } from '../date-words.js';
import { evidenceOf, markOf, markOfFact, markOfSeveral } from '../marks.js';
import type { Block, EvidenceMark, KeyFact, Section } from '../packet.js';
import { counted, inWords, lowerFirst, rich, strong, upperFirst } from '../rich.js';
import { squareMetres } from '../square-metres.js';

/** What a reader has to know if they read nothing else. */
export function inShort(context: Context): Section {
  return {
    id: 'in-short',
    title: 'In short',
    blocks: [
      lead(context),
      // Early, so that it stands on the first sheet: what follows may go on over the sheet's edge, a photo can't.
      frontPhoto(context),
      size(context),
      ...lot(context),
      ...systems(context),
      ...done(context),
      ...leftOut(context),
    ].filter((block) => block !== undefined),
  };
}

const STOREY_WORDS: Record<string, string> = {
  one: 'one-storey',
  'one-and-a-half': 'storey-and-a-half',
  two: 'two-storey',
  'two-and-a-half': 'two-and-a-half-storey',
  three: 'three-storey',
  'split-level': 'split-level',
};

export function lead(context: Context): Block {
  const { house } = context;
  const { built, storeys, kind, bought, listed, foundation } = house.house;
  const shape = [
    kind === 'detached' ? undefined : kind,
    storeys === undefined ? undefined : STOREY_WORDS[storeys],
    'house',
  ]
    .filter(Boolean)
    .join(' ');
  const year = builtWords(built.value);
  const below = belowGrade(house);
  const garages = house.structures
    .filter((one) => one.is === 'garage')
    .map((one) => (one.attached ? 'an attached garage' : 'a detached garage'));
  const pool = house.pool === undefined ? [] : ['a pool'];
  const with_ = inWords([...below, ...garages, ...pool]);
  const span =
    // A visitor asks about the house, not about its owner's plans.
    bought === undefined || context.edition === 'visit'
      ? ''
      : ` Bought ${onDate(bought)}${listed === undefined ? '' : `, offered ${onDate(listed)}`}.`;
  const ground = foundation?.value === undefined ? '' : ` Foundation: ${foundation.value}.`;
  return {
    kind: 'statement',
    id: 'short-lead',
    size: 'lead',
    text: rich(
      `${upperFirst(withArticle(shape))}${year}${with_ === '' ? '' : `${year.startsWith(',') ? ',' : ''} with ${with_}`}. ${upperFirst(roomsInWords(house))}.${span}${ground}`,
    ),
    // The sentence says more than the year: rooms and days rest on the owner's word.
    mark: markOfSeveral(context, [
      { from: built.from, evidence: built.evidence, known: built.value !== undefined },
      ...(foundation?.value === undefined ? [] : [{ evidence: foundation.evidence, known: true }]),
      { evidence: [], known: true },
    ]),
  };
}

/** " of 1948", ", built between 1970 and 1985". */
function builtWords(built: HouseDate | undefined): string {
  if (built === undefined) return ', when built is not known';
  return built.precision === 'span' ? `, built ${onDate(built)}` : ` of ${printDate(built)}`;
}

/** "a cellar" where a level's name says so; of others no more is known than that they lie below grade. */
function belowGrade(house: House): string[] {
  const names = house.levels.filter((level) => level.grade === 'below').map((level) => level.name);
  const called = names.filter((name) => /cellar|basement/i.test(name));
  const others = names.length - called.length;
  return [
    ...called.map((name) => withArticle(lowerFirst(name.replace(/^(the|an?) /i, '')))),
    ...(others === 0
      ? []
      : [others === 1 ? 'a level below grade' : counted(others, 'level', 'levels below grade')]),
  ];
}

const withArticle = (words: string): string => `${/^(?!one)[aeiou]/i.test(words) ? 'an' : 'a'} ${words}`;

export interface RoomCounts {
  readonly bedrooms: number;
  readonly fullBaths: number;
  readonly threeQuarterBaths: number;
  readonly halfBaths: number;
}

export function countRooms(house: House): RoomCounts {
  const baths = (kind: 'full' | 'three-quarter' | 'half'): number =>
    house.rooms.filter((room) => room.use === 'bath' && room.bath === kind).length;
  return {
    bedrooms: house.rooms.filter((room) => room.use === 'bedroom').length,
    fullBaths: baths('full'),
    threeQuarterBaths: baths('three-quarter'),
    halfBaths: baths('half'),
  };
}

function roomsInWords(house: House): string {
  const { bedrooms, fullBaths, threeQuarterBaths, halfBaths } = countRooms(house);
  const parts = [
    bedrooms > 0 && counted(bedrooms, 'bedroom'),
    fullBaths > 0 && counted(fullBaths, 'full bath'),
    threeQuarterBaths > 0 && counted(threeQuarterBaths, 'three-quarter bath'),
    halfBaths > 0 && counted(halfBaths, 'half bath'),
  ].filter((part) => part !== false);
  return parts.length === 0 ? 'its rooms are not described' : inWords(parts);
}

function size(context: Context): Block {
  const { areas } = context.tally;
  const above = areas.byClass['above-finished'];
  const others = (['below-finished', 'non-standard', 'disconnected', 'unfinished'] as const)
    .filter((name) => areas.byClass[name].area > 0n)
    .map((name) => `${lowerFirst(AREA_CLASS_NAMES[name])} ${groupThousands(areas.byClass[name].squareFeet)}`);
  const record =
    areas.record === undefined ? '' : ` The public record says ${groupThousands(areas.record.squareFeet)}.`;
  const known = above.area > 0n;
  return {
    kind: 'statement',
    id: 'short-size',
    size: 'body',
    text: known
      ? rich(
          strong(
            `${groupThousands(above.squareFeet)} square feet${squareMetres(above)} finished above grade`,
          ),
          areas.estimate ? ', an estimate.' : '.',
          others.length === 0 ? undefined : ` Apart from that, in square feet: ${inWords(others)}.`,
          record,
        )
      : rich(strong('The size is not known.'), ' No level is described well enough to work it out.', record),
    mark: sizeMark(context),
  };
}

/** How the size is known: who measured it and when. */
export function sizeMark(context: Context): EvidenceMark {
  const { measured } = context.house;
  const known = context.tally.areas.byClass['above-finished'].area > 0n;
  return known && measured !== undefined
    ? markOf(context, { ...measured, how: measuredWords(context, measured) })
    : markOf(context, { evidence: [] }, known);
}

/** Who measured and when; the owner is named by "Owner’s statement" already. */
function measuredWords(context: Context, { by, date }: NonNullable<House['measured']>): string | undefined {
  const named = context.house.people.find((one) => one.id === by)?.name;
  const hired = context.whole.people.some((one) => one.id === by);
  const who = by === 'owner' ? undefined : `by ${named ?? (hired ? 'a person who was hired' : by)}`;
  const when = date === undefined ? undefined : onDate(date);
  const words = [who, when].filter((part) => part !== undefined).join(' ');
  return words === '' ? undefined : `measured ${words}`;
}

function lot(context: Context): Block[] {
  const fact = context.house.house.lot;
  if (fact === undefined) return [];
  const corrected =
    fact.was === undefined
      ? ''
      : ` An earlier figure, ${fact.was}, was corrected${fact.corrected === undefined ? '' : ` ${onDate(fact.corrected)}`}.`;
  return [
    {
      kind: 'statement',
      id: 'short-lot',
      size: 'body',
      text: rich(
        fact.value === undefined ? 'The size of the lot is not known.' : `The lot is ${fact.value.written}.`,
        corrected,
      ),
      mark: markOfFact(context, fact),
    },
  ];
}

function systems(context: Context): Block[] {
  const asked = ASKED_FIRST.flatMap((pattern) =>
    context.tally.ages.filter((age) => pattern.test(age.system.is)).slice(0, 1),
  );
  if (asked.length === 0) return [];
  const sentence = asked.map((age) => `${lowerFirst(age.system.name ?? age.system.is)} ${ageWords(age)}`);
  return [
    {
      kind: 'statement',
      id: 'short-systems',
      size: 'body',
      text: rich(strong('How old: '), `${sentence.join('; ')}.`),
      mark: markOfSeveral(
        context,
        asked.map((age) => ({
          evidence: age.fact?.evidence ?? (age.basis === 'label' ? age.system.evidence : []),
          known: whenWords(age) !== undefined && age.date !== undefined,
        })),
      ),
    },
  ];
}

export function done(context: Context): Block[] {
  const improvements = toldByThemselves(context.tally.improvements);
  if (improvements.length === 0) return [];
  const own = improvements.filter((one) => one.who.kind === 'owner' || one.who.kind === 'family').length;
  const hired = improvements.filter((one) => one.who.kind === 'hired').length;
  const unknown = improvements.length - own - hired;
  // That none is written down is no finding, so it isn't said here.
  const conditions = context.house.conditions.length;
  const by = [
    own > 0 && `${own} by the owner or family`,
    hired > 0 && `${hired} by people who were hired`,
    unknown > 0 && `${unknown} by whom is not known`,
  ].filter((part) => part !== false);
  return [
    {
      kind: 'statement',
      id: 'short-done',
      size: 'body',
      text: rich(
        strong(improvements.length === 1 ? 'One thing was done' : `${improvements.length} things were done`),
        `: ${inWords(by)}.`,
        conditions === 0
          ? undefined
          : ` ${upperFirst(counted(conditions, 'known condition was', 'known conditions were'))} left as found.`,
      ),
      mark: markOfSeveral(
        context,
        improvements.map((one) => evidenceOf(context, one.source.item)),
      ),
    },
  ];
}

function leftOut(context: Context): Block[] {
  const unknown = context.tally.ages.filter((age) => age.date === undefined).length;
  if (unknown === 0) return [];
  return [
    {
      kind: 'paragraph',
      id: 'short-unknown',
      size: 'small',
      text: rich(
        `The age of ${counted(unknown, 'system or appliance', 'systems and appliances')} is not known. Where this packet says “not known”, nobody could say; it never means “no”.`,
      ),
    },
  ];
}

/** How writers name the photo of the street side. */
export const SHOWS_FRONT = /\bfront of the house\b|^(the )?front\b|from the street/i;

/** The first photo after the work that shows the front, if there is one. */
export function frontPhoto(context: Context): Block | undefined {
  const front = Object.entries(context.house.photos).find(
    ([id, photo]) => context.photos.has(id) && photo.when !== 'before' && SHOWS_FRONT.test(photo.shows),
  );
  return front === undefined
    ? undefined
    : {
        kind: 'photo',
        id: photoAnchor(context, front[0]),
        photo: front[0],
        caption: rich(upperFirst(front[1].shows)),
      };
}

export function keyFacts(context: Context): KeyFact[] {
  const { house, tally } = context;
  const { bedrooms, fullBaths, threeQuarterBaths, halfBaths } = countRooms(house);
  const baths = [
    fullBaths > 0 && `${fullBaths} full`,
    threeQuarterBaths > 0 && `${threeQuarterBaths} three-quarter`,
    halfBaths > 0 && `${halfBaths} half`,
  ]
    .filter(Boolean)
    .join(', ');
  const above = tally.areas.byClass['above-finished'];
  const fact = (id: string, label: string, value: string | undefined, otherwise: string): KeyFact => ({
    id,
    label,
    value: value ?? otherwise,
    known: value !== undefined,
  });
  const { value: built } = house.house.built;
  const size =
    above.area === 0n
      ? undefined
      : `${groupThousands(above.squareFeet)} sq ft${squareMetres(above)}${tally.areas.estimate ? ', estimate' : ''}`;
  return [
    fact('key-built', 'Built', built === undefined ? undefined : printDate(built), 'not known'),
    fact('key-size', 'Finished above grade', size, 'not known'),
    fact('key-bedrooms', 'Bedrooms', bedrooms === 0 ? undefined : String(bedrooms), 'not described'),
    fact('key-baths', 'Baths', baths === '' ? undefined : baths, 'not described'),
  ];
}
