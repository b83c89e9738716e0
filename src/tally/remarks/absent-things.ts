/** Things that the folder excludes by telling of another, by an answer, or by a list in which they are not. */
import type { FactPath } from '../../diagnostics/fact-path.js';
import { nameOf } from '../../facts/place-name.js';
import { remarkWords } from '../tables/remarks.js';
import type { ClaimCase } from './claim-case.js';
import { sensesIn } from './item-meaning.js';
import type { Judgement, Known } from './known.js';
import { belongsTo, thing } from './taxonomy.js';

/** Things that the folder excludes by telling of another: a garage where it has a carport, septic where it has a sewer. */
export function absent(one: ClaimCase): Judgement | undefined {
  const { known, phrase } = one;
  return (
    otherSupply(known, phrase.thing) ??
    otherHeat(known, phrase.thing) ??
    otherShelter(known, phrase.thing) ??
    deniedByAnswer(one) ??
    notListed(one)
  );
}

export const no = (
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

function otherSupply({ house }: Known, id: string): Judgement | undefined {
  const { sewer, water, foundation } = house.house;
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
  if (!/^(furnace|boiler|heat-pump|radiator)$/.test(id)) return undefined;
  const heats = house.systems.filter((system) =>
    sensesIn(system.is).some((sense) => sense.tag === 'thing' && belongsTo(sense.id, 'heating')),
  );
  const named = heats.some((system) =>
    sensesIn(`${system.is} ${system.name ?? ''}`).some((sense) => sense.tag === 'thing' && sense.id === id),
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

function otherShelter({ house }: Known, id: string): Judgement | undefined {
  const parking = house.house.parking?.value ?? '';
  const has = (kind: string): boolean =>
    house.structures.some(({ is }) => is === kind) || new RegExp(`(?<!no )\\b${kind}`, 'i').test(parking);
  const other = id === 'garage' ? 'carport' : id === 'carport' ? 'garage' : undefined;
  if (other === undefined || has(id) || !has(other)) return undefined;
  return no(
    `the folder tells of a ${other}, not of a ${id}`,
    ['house', 'parking'],
    `parking: ${parking === '' ? other : parking}`,
    other,
  );
}

/** "Is there a pool? No." */
function deniedByAnswer({ known, phrase, found }: ClaimCase): Judgement | undefined {
  if (found.length > 0) return undefined;
  const denial = new RegExp(remarkWords().denials, 'i');
  const index = known.house.answers.findIndex(
    ({ ask, answer }) =>
      /^\W*(is|are|does|do|has|have) (there|the house|it)\b/i.test(ask) &&
      answer.value !== undefined &&
      denial.test(answer.value) &&
      sensesIn(ask).some((sense) => sense.tag === 'thing' && sense.id === phrase.thing),
  );
  const answer = known.house.answers[index];
  return answer === undefined
    ? undefined
    : no(
        'an answer in the folder says that there is none',
        ['answers', index],
        `${answer.ask} ${answer.answer.value ?? ''}`,
        undefined,
        answer.answer.evidence,
      );
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
