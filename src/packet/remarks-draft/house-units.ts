/** The house as a whole: kind, year, rooms, size, lot, what stands on it, what it is connected to. */

import { SQUARE_FOOT } from '../../facts/floor-area.js';
import type { Room, Structure } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { groupThousands } from '../../facts/written-number.js';
import type { AreaClass } from '../../tally/area.js';
import { backed, backedFact, type DraftRules, evidenceOfLevel } from './backing.js';
import { type Backing, type DraftUnit, joining, type Piece } from './draft-unit.js';
import { unpermitted, unpermittedStructure } from './permit-words.js';
import { inYear, yearWords } from './when.js';

const STOREYS: Record<string, string> = {
  one: 'one-story',
  'one-and-a-half': 'story-and-a-half',
  two: 'two-story',
  'two-and-a-half': 'two-and-a-half-story',
  three: 'three-story',
  'split-level': 'split-level',
};

export const houseUnits = (rules: DraftRules): DraftUnit[] => [
  ...shape(rules),
  ...rooms(rules),
  ...size(rules),
  ...lot(rules),
  ...grounds(rules),
  ...utilities(rules),
  ...groundAndWalls(rules),
  ...association(rules),
  ...stays(rules),
];

/** "built in 1948", "story-and-a-half": the year and the storeys, each with what is behind it. */
function shape(rules: DraftRules): DraftUnit[] {
  const { house } = rules.context.house;
  const built = backedFact(rules, house.built, 'When it was built', ['house', 'built']);
  const units: DraftUnit[] = [];
  if (built !== undefined && inYear(built.value) !== undefined)
    units.push({
      sentence: 'house',
      part: 'built',
      rank: 1,
      pieces: [{ text: `built ${inYear(built.value)}`, backing: built.backing }],
    });
  const above = rules.context.house.levels.filter((level) => level.grade === 'above');
  const storeys = house.storeys === undefined ? undefined : STOREYS[house.storeys];
  const shown = shownTogether(
    rules,
    above.map(({ id }) => evidenceOfLevel(rules, id)),
    'Storeys above the ground',
    ['house', 'storeys'],
  );
  if (storeys !== undefined && shown !== undefined)
    units.push({ sentence: 'house', part: 'storeys', rank: 2, pieces: [{ text: storeys, backing: shown }] });
  return units;
}

/** Several things that are counted: all of them have to be shown. */
function shownTogether(
  rules: DraftRules,
  papers: readonly (readonly string[])[],
  fact: string,
  path: Backing['path'],
): Backing | undefined {
  if (papers.length === 0) return undefined;
  const evidence = papers.every((list) => list.length > 0) ? [...new Set(papers.flat())] : [];
  return backed(rules, { evidence }, fact, path);
}

const BATHS = [
  ['full', 'full bath'],
  ['three-quarter', 'three-quarter bath'],
  ['half', 'half bath'],
] as const;

function rooms(rules: DraftRules): DraftUnit[] {
  const { house } = rules.context;
  const units: DraftUnit[] = [];
  const count = (list: readonly Room[], noun: string): Piece[] => {
    const shown = shownTogether(
      rules,
      list.map((room) => (room.evidence.length > 0 ? room.evidence : evidenceOfLevel(rules, room.level))),
      `Rooms: ${noun}`,
      ['rooms', house.rooms.indexOf(list[0] as Room)],
    );
    return shown === undefined
      ? []
      : [{ text: `${list.length} ${noun}${list.length === 1 ? '' : 's'}`, backing: shown }];
  };
  const bedrooms = house.rooms.filter((room) => room.use === 'bedroom');
  if (bedrooms.length > 0) {
    const pieces = count(bedrooms, 'bedroom');
    if (pieces.length > 0) units.push({ sentence: 'house', part: 'rooms', rank: 3, pieces });
  }
  // A bath of no stated kind may be any, so that no count of baths would be true.
  if (house.rooms.some((room) => room.use === 'bath' && room.bath === undefined)) return units;
  for (const [kind, noun] of BATHS) {
    const list = house.rooms.filter((room) => room.use === 'bath' && room.bath === kind);
    if (list.length === 0) continue;
    const pieces = count(list, noun);
    const asides = list.map((room) => unpermitted(rules, room.id, 'it'));
    if (pieces.length === 0 || asides.includes(undefined)) continue;
    const aside = asides.flatMap((one) => one ?? []);
    units.push({
      sentence: 'house',
      part: 'rooms',
      rank: 4,
      pieces: [...pieces, ...inBrackets(aside)],
    });
  }
  return units;
}

function size(rules: DraftRules): DraftUnit[] {
  const { house, tally } = rules.context;
  const { measured } = house;
  if (measured === undefined) return [];
  const figure = (name: AreaClass): number => tally.areas.byClass[name].squareFeet;
  const backing = backed(rules, measured, 'Size, as measured', ['measured']);
  if (backing === undefined || figure('above-finished') === 0) return [];
  const year = yearWords(measured.date);
  const who = measured.by === 'owner' ? ' by the owner' : '';
  const text = [
    `${groupThousands(figure('above-finished'))} sq ft finished above grade`,
    tally.areas.estimate ? ' (an estimate)' : '',
    `, measured${who}${year === undefined ? '' : ` in ${year}`}`,
  ].join('');
  const units: DraftUnit[] = [{ sentence: 'size', part: 'above', rank: 5, pieces: [{ text, backing }] }];
  if (figure('below-finished') > 0)
    units.push({
      sentence: 'size',
      part: 'below',
      rank: 25,
      pieces: [{ text: `${groupThousands(figure('below-finished'))} sq ft finished below grade`, backing }],
    });
  return units;
}

function lot(rules: DraftRules): DraftUnit[] {
  const fact = backedFact(rules, rules.context.house.house.lot, 'Size of the lot', ['house', 'lot']);
  if (fact === undefined) return [];
  const acres = /^([\d.,/ ]+?)\s*(acres?|ac\.?)$/i.exec(fact.value.written)?.[1];
  const squareFeet = (2n * fact.value.area + SQUARE_FOOT) / (2n * SQUARE_FOOT);
  const text = acres === undefined ? `${groupThousands(squareFeet)} sq ft lot` : `${acres}-acre lot`;
  return [{ sentence: 'house', part: 'lot', rank: 6, pieces: [{ text, backing: fact.backing }] }];
}

/** A structure that was measured stands on the sheet of readings. */
const evidenceOfStructure = ({ context }: DraftRules, structure: Structure): readonly string[] => {
  if (structure.evidence.length > 0) return structure.evidence;
  return structure.size === undefined ? [] : (context.house.measured?.evidence ?? []);
};

function grounds(rules: DraftRules): DraftUnit[] {
  const { house } = rules.context;
  const units: DraftUnit[] = [];
  if (house.pool !== undefined) {
    const evidence = [...new Set(house.pool.barriers.flatMap((one) => one.evidence))];
    const backing = backed(rules, { evidence }, 'The pool, by what stands around it', ['pool']);
    const aside = unpermittedStructure(rules, ['pool', 'swimming pool']);
    if (backing !== undefined && aside !== undefined)
      units.push(withHouse({ text: 'a pool', backing }, 13, aside));
  }
  for (const [index, one] of house.structures.entries()) {
    const name =
      one.is === 'garage' ? `${one.attached ? 'attached' : 'detached'} garage` : nameOf(one).toLowerCase();
    const backing = backed(
      rules,
      { from: one.from, evidence: evidenceOfStructure(rules, one) },
      `Structure: ${nameOf(one).toLowerCase()}`,
      ['structures', index],
    );
    const aside = unpermittedStructure(rules, [one.is, nameOf(one).toLowerCase()]);
    if (backing === undefined || aside === undefined) continue;
    if (one.is === 'garage' || one.is === 'carport')
      units.push(withHouse({ text: `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`, backing }, 12, aside));
    else
      units.push({ sentence: 'grounds', rank: 34, pieces: [{ text: name, backing }, ...inBrackets(aside)] });
  }
  return units;
}

/** What a buyer asks first is told in the first sentence: a sentence "Pool." is none. */
const withHouse = (piece: Piece, rank: number, aside: readonly Piece[]): DraftUnit => ({
  sentence: 'house',
  part: 'besides',
  rank,
  pieces: [piece, ...inBrackets(aside)],
});

const inBrackets = (aside: readonly Piece[]): Piece[] =>
  aside.length === 0 ? [] : [joining(' ('), ...aside.slice(0, 1), joining(')')];

/** "Public water and sewer"; "private well water, septic sewer". */
function utilities(rules: DraftRules): DraftUnit[] {
  const { house } = rules.context.house;
  const told = (['water', 'sewer'] as const).flatMap((word) => {
    const fact = backedFact(rules, house[word], word === 'water' ? 'Water' : 'Waste water', ['house', word]);
    return fact === undefined ? [] : [{ word, value: fact.value.toLowerCase(), backing: fact.backing }];
  });
  const [water, sewer] = told;
  const unit = (pieces: readonly Piece[]): DraftUnit => ({ sentence: 'utilities', rank: 22, pieces });
  if (water !== undefined && water.value === sewer?.value)
    return [
      unit([
        { text: `${water.value} water`, backing: water.backing },
        joining(' and '),
        { text: 'sewer', backing: sewer.backing },
      ]),
    ];
  return told.map(({ word, value, backing }) => unit([{ text: `${value} ${word}`, backing }]));
}

/** What the outside has for trim would be taken for the trim of rooms. */
const TRIM = /,[^,]*\btrim\b[^,]*/i;

function groundAndWalls(rules: DraftRules): DraftUnit[] {
  const { house } = rules.context.house;
  return (['foundation', 'exterior', 'construction'] as const).flatMap((word): DraftUnit[] => {
    const fact = backedFact(rules, house[word], `The house’s ${word}`, ['house', word]);
    if (fact === undefined) return [];
    return [
      {
        sentence: 'ground-and-walls',
        part: word,
        rank: word === 'foundation' ? 24 : 36,
        pieces: [
          joining(word === 'construction' ? 'built of ' : `${word}: `),
          { text: fact.value.replace(TRIM, ''), backing: fact.backing },
        ],
      },
    ];
  });
}

function association(rules: DraftRules): DraftUnit[] {
  for (const [index, due] of rules.context.house.dues.entries()) {
    const backing = backed(rules, due, 'Dues of an association or district', ['dues', index]);
    if (backing !== undefined)
      return [{ sentence: 'association', rank: 23, pieces: [{ text: 'association dues apply', backing }] }];
  }
  return [];
}

/** What stays is the owner's word in most folders, and then told only where that was asked for. */
function stays(rules: DraftRules): DraftUnit[] {
  return rules.context.house.conveys.flatMap((one, index): DraftUnit[] => {
    if (one.stays !== 'yes') return [];
    const backing = backed(rules, { evidence: [] }, `Stays: ${one.what}`, ['conveys', index]);
    if (backing === undefined) return [];
    return [{ sentence: 'stays', rank: 21, pieces: [{ text: one.what.toLowerCase(), backing }] }];
  });
}
