/** Things that the folder excludes by telling of another, by an answer, or by a list in which they are not. */
import type { FactPath } from '../../../diagnostics/fact-path.js';
import { nameOf } from '../../../facts/place-name.js';
import { remarkWords } from '../../tables/remarks.js';
import { sensesIn } from '../items/item-meaning.js';
import type { Judgement, Known } from '../items/known.js';
import { hasShelter, lacksShelter } from '../items/shelters.js';
import { type ToldAnswer, toldAnswers } from '../judge/told-answers.js';
import { sinceLast } from '../words/cut-at.js';
import { belongsTo, thing } from '../words/taxonomy.js';
import type { ClaimCase } from './claim-case.js';
import { septicOfBefore, wellBesideSupply } from './former-supplies.js';

/** Things that the folder excludes by telling of another: a garage where it has a carport, septic where it has a sewer. */
export function absent(one: ClaimCase): Judgement | undefined {
  const { known, phrase } = one;
  return (
    supplyBeside(one) ??
    otherSupply(one) ??
    noDucts(known, phrase.thing) ??
    otherHeat(known, phrase.thing) ??
    otherShelter(known, phrase.thing) ??
    deniedByAnswer(one) ??
    notListed(one)
  );
}

const no = (
  because: string,
  path: FactPath,
  words: string,
  instead?: string,
  evidence: readonly string[] = [],
): Judgement => ({
  verdict: 'contradicted',
  rule: 'other-kind',
  because,
  facts: [{ path, words, evidence }],
  instead,
});

/** "Not on septic anymore", where the folder tells of the old tank. */
function supplyBeside({ known, phrase, sentence }: ClaimCase): Judgement | undefined {
  const sewer = known.house.house.sewer?.value;
  if (phrase.thing !== 'septic' || sewer === undefined || /septic/i.test(sewer)) return undefined;
  const fact = septicOfBefore(known, clauseAround(sentence.text, phrase.from, phrase.to));
  return fact === undefined
    ? undefined
    : { verdict: 'backed', rule: 'other-kind', because: 'the folder says so', facts: [fact] };
}

/** Characters on either side of a thing that may tell of former days. */
const NEAR = 90;

/** The sentence around, and the next one where it goes on with "all of that", "it". */
const clauseAround = (text: string, from: number, to: number): string =>
  `${sinceLast(text.slice(Math.max(0, from - NEAR), from), /[.;!?\n]/)}${GOES_ON.exec(text.slice(from, to + NEAR))?.[0]}`;

const GOES_ON =
  /^[^.;!?\n]*(?:\. (?:(?:all|both|none) of (?:that|it|them|this)|that|it|they|those|these)\b[^.;!?\n]*)?/i;

/** New ducts where all that heats or cools has none: mini-splits, window units, radiators. */
function noDucts({ items }: Known, id: string): Judgement | undefined {
  if (
    id !== 'duct' ||
    items.some(({ words, label }) =>
      /\bduct(?!less)|furnace|forced|central|air handler/i.test(`${label} ${words}`),
    )
  )
    return undefined;
  const units = items.filter(
    ({ kind, things }) =>
      kind === 'system' && things.some((one) => DUCTLESS.test(one) && belongsTo(one, 'hvac')),
  );
  const [first] = units;
  const rest = items.some(
    (item) =>
      item.kind === 'system' &&
      !units.includes(item) &&
      item.things.some((one) => belongsTo(one, 'hvac') && one !== 'thermostat'),
  );
  return first === undefined || rest
    ? undefined
    : no(
        `the folder tells of ${first.what}, which has none`,
        first.path,
        first.label,
        first.label,
        first.evidence,
      );
}

const DUCTLESS = /^(mini-split|boiler|radiator|baseboard)$/;

function otherSupply({ known, phrase, sentence }: ClaimCase): Judgement | undefined {
  const { house } = known;
  const id = phrase.thing;
  const { sewer, water, foundation } = house.house;
  const clause = clauseAround(sentence.text, phrase.from, phrase.to);
  if (id === 'well' && wellBesideSupply(known, clause) !== undefined) return undefined;
  if (id === 'septic' && sewer?.value !== undefined && !/septic/i.test(sewer.value))
    return no(
      `the folder says ${sewer.value} sewer`,
      ['house', 'sewer'],
      `sewer: ${sewer.value}`,
      `${sewer.value} sewer`,
      sewer.evidence,
    );
  if (id === 'well' && water?.value !== undefined && !/well/i.test(water.value))
    return no(
      `the folder says ${water.value} water`,
      ['house', 'water'],
      `water: ${water.value}`,
      `${water.value} water`,
      water.evidence,
    );
  const below = house.levels.some(({ grade }) => grade === 'below');
  if (
    id !== 'basement' ||
    house.levels.length === 0 ||
    below ||
    foundation?.value === undefined ||
    /basement|cellar/i.test(foundation.value)
  )
    return undefined;
  return no(
    `the folder says ${foundation.value}, and no level below ground`,
    ['house', 'foundation'],
    `foundation: ${foundation.value}`,
    foundation.value,
    foundation.evidence,
  );
}

/** A furnace where the folder tells of a boiler. */
function otherHeat({ house }: Known, id: string): Judgement | undefined {
  if (!/^(furnace|boiler|heat-pump|radiator|mini-split|evaporative-cooler)$/.test(id)) return undefined;
  const wide = /^(mini-split|evaporative-cooler)$/.test(id) ? 'cooling' : 'heating';
  const heats = house.systems.filter((system) =>
    sensesIn(system.is).some((sense) => sense.tag === 'thing' && belongsTo(sense.id, wide)),
  );
  const named = heats.some((system) =>
    sensesIn(`${system.is} ${system.name ?? ''} ${system.serves ?? ''} ${system.note ?? ''}`).some(
      (sense) => sense.tag === 'thing' && sense.id === id,
    ),
  );
  const [first] = heats;
  if (first === undefined || named) return undefined;
  return no(
    `the folder tells of ${first.is}`,
    ['systems', house.systems.indexOf(first)],
    `heating: ${heats.map(({ is }) => is).join('; ')}`,
    first.is,
  );
}

/** A garage, a carport or a drive of which the folder's words about parking know nothing. */
function otherShelter({ house }: Known, id: string): Judgement | undefined {
  if (id !== 'garage' && id !== 'carport' && id !== 'driveway') return undefined;
  const parking = house.house.parking?.value ?? '';
  const other = id === 'garage' ? 'carport' : id === 'carport' ? 'garage' : undefined;
  const instead = other !== undefined && hasShelter(house, other) ? other : undefined;
  if (hasShelter(house, id) || !(lacksShelter(house, id) || instead !== undefined)) return undefined;
  return no(
    instead === undefined
      ? `the folder says how cars are parked, and tells of no ${id}`
      : `the folder tells of a ${instead}, not of a ${id}`,
    ['house', 'parking'],
    `parking: ${parking === '' ? instead : parking}`,
    instead ?? parking,
  );
}

/** "Is there a pool? No." */
function deniedByAnswer({ known, phrase, found }: ClaimCase): Judgement | undefined {
  if (found.length > 0) return undefined;
  const denial = new RegExp(remarkWords().denials, 'i');
  const inWords = deniedInWords(known, phrase.thing);
  if (inWords !== undefined) return inWords;
  const answer = toldAnswers(known).find(
    ({ ask, value }) =>
      /^\W*(is|are|does|do|has|have) (there|the house|it)\b/i.test(ask) &&
      denial.test(value) &&
      sensesIn(ask).some((sense) => sense.tag === 'thing' && sense.id === phrase.thing),
  );
  return answer === undefined ? undefined : deniedBy(answer);
}

const deniedBy = ({ fact: { path, words, evidence } }: ToldAnswer): Judgement =>
  no('an answer in the folder says that there is none', path, words, undefined, evidence);

const NONE_OF =
  /\b(?:no|nor|neither|without|not any|never (?:had|been))\b(.*?)(?=\b(?:no|nor)\b|[.,:;—]|$)/gi;

/** "No pool and no hot tub": an answer that says so of more than it was asked. */
function deniedInWords(known: Known, id: string): Judgement | undefined {
  for (const answer of toldAnswers(known))
    for (const [, words = ''] of answer.value.matchAll(NONE_OF)) {
      const [first] = sensesIn(words).filter(({ tag }) => tag === 'thing');
      // "No smoking" denies no alarm.
      if (first?.id === id && !(id === 'alarm' && !/alarm|detector/i.test(words))) return deniedBy(answer);
    }
  return undefined;
}

const PRIMARY = /primary|master|owner|suite|private|principal/i;

/** Rooms and structures of which a folder that lists its rooms would list each. */
const LISTED_IF_THERE = /^(family|sunroom|deck|fireplace|carport|pool|primary-bath)$/;

/** A den or a family room may go by another name in the folder. */
const BY_ANOTHER_NAME = /\b(den|family room|sitting room|snug)\b/;

const FEW_ROOMS = 6;

function notListed({ known, phrase, found, sentence }: ClaimCase): Judgement | undefined {
  const { house } = known;
  if (
    !LISTED_IF_THERE.test(phrase.thing) ||
    found.length > 0 ||
    phrase.place ||
    house.rooms.length < FEW_ROOMS
  )
    return undefined;
  const words = sentence.text.slice(phrase.from, phrase.to).toLowerCase().replace(/s$/, '');
  if (
    phrase.thing === 'primary-bath' &&
    house.rooms.some((room) => room.use === 'bath' && PRIMARY.test(nameOf(room)))
  )
    return undefined;
  const told = [
    ...[...house.rooms, ...house.structures].map(
      (one) => `${nameOf(one)} ${one.note ?? ''} ${'is' in one ? one.is : one.use}`,
    ),
    ...known.items.map((item) => `${item.label} ${item.words}`),
    ...house.conveys.map(({ what }) => what),
    ...house.conditions.map(({ what }) => what),
  ]
    .join(' ')
    .toLowerCase();
  if (
    BY_ANOTHER_NAME.test(words) ||
    told.includes(words) ||
    (phrase.thing !== 'primary-bath' &&
      sensesIn(told).some((sense) => sense.tag === 'thing' && belongsTo(sense.id, phrase.thing)))
  )
    return undefined;
  return no(
    `the folder lists its rooms, and no ${thing(phrase.thing).label} among them`,
    ['rooms'],
    `${house.rooms.length} rooms: ${house.rooms.slice(0, 8).map(nameOf).join(', ')}`,
  );
}
