/** "Vaulted ceilings" where the folder gives a level one flat height. */
import { FOOT } from '../../../facts/length.js';
import { nameOf } from '../../../facts/place-name.js';
import type { Judgement } from '../items/known.js';
import { isKindOf } from '../words/taxonomy.js';
import { attributesOfKind, type ClaimCase } from './claim-case.js';

const SLOPED = /vault|cathedral|slop|pitch|gable|beam|loft|a-frame/i;

export function ceilingIsFlat(one: ClaimCase): Judgement | undefined {
  const { known, phrase, places, sentence } = one;
  const said = attributesOfKind(one, 'class').some(({ senses }) =>
    senses.some(({ group, id }) => group === 'ceiling-shape' && isKindOf(group, id, 'vaulted')),
  );
  if (phrase.thing !== 'ceiling' || !said) return undefined;
  const { house } = known;
  const near = places.length > 0 ? places : sentence.context === undefined ? [] : [sentence.context.place];
  const ids = new Set(near.flatMap((place) => place.ids));
  const named = house.rooms.filter(({ id }) => ids.has(id));
  const rooms = named.length > 0 ? named : house.rooms.filter(({ heated }) => heated);
  const levels = house.levels.filter(
    ({ id, grade }) => grade === 'above' && rooms.some(({ level }) => level === id),
  );
  const heights = [...levels, ...rooms].flatMap((place) => {
    const { ceiling } = place;
    return ceiling === undefined ? [] : [{ place, ceiling }];
  });
  const flat = heights.flatMap(({ place, ceiling }) =>
    'units' in ceiling
      ? [{ path: ['levels'], words: `${nameOf(place)}: ${Math.round((ceiling.units / FOOT) * 10) / 10} ft` }]
      : [],
  );
  const isFlat =
    heights.length > 0 &&
    flat.length === heights.length &&
    levels.every(({ ceiling }) => ceiling !== undefined) &&
    ![...levels, ...rooms].some(({ note }) => SLOPED.test(note ?? '')) &&
    !one.found.some(({ words }) => SLOPED.test(words));
  if (!isFlat) return undefined;
  return {
    verdict: 'contradicted',
    rule: 'kind.ceiling-shape',
    because: 'the folder gives one flat height for it',
    facts: flat.slice(0, 3).map((fact) => ({ ...fact, evidence: [] })),
  };
}
