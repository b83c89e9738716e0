/** "Radiators on every floor", "heat pumps serve all levels": heat and cooling, by the levels for which the folder has them. */
import { literally } from '../../../facts/literally.js';
import type { ClaimCase } from '../claims/claim-case.js';
import { factsOf } from '../items/item-words.js';
import type { Judgement } from '../items/known.js';

const CLIMATE =
  /^(hvac|heating|cooling|furnace|boiler|radiator|air-conditioner|heat-pump|mini-split|floor-heat)$/;

const EVERYWHERE =
  /^[^.;:!?\n]{0,40}?\b((on|at|for|to|of|across|in|serv\w+|reach\w*|heat\w*|cool\w*|condition\w*) (all|every|each|both|the whole|the entire|all of the|all three|all two|the rest of the) ?(three |two |four )?(levels?|floors?|stor(y|ies|eys?)|house|home|rooms?)|through-?out|thru-?out|top to bottom|everywhere|(the )?(whole|entire) (house|home)|house-?wide|t\/o)\b/i;
const WHOLE_AHEAD = /\b(whole|entire)[\s-](house|home)\W+(\w+\W+){0,2}$/i;
const STOREY = /\b(main|first|second|third|fourth|upper|lower|ground|top|upstairs|attic|half)\b/i;
const EXCEPT = /\b(except|but|other than|apart from|not|only|save)\b/i;

/** Levels of the house that no unit of the kind reaches, where the folder says for which levels they are. */
export function missesLevel(one: ClaimCase): Judgement | undefined {
  const { known, phrase, found, sentence } = one;
  if (!CLIMATE.test(phrase.thing) || phrase.negated) return undefined;
  const behind = EVERYWHERE.exec(sentence.text.slice(phrase.to, phrase.to + 80));
  const ahead = sentence.text.slice(Math.max(0, phrase.from - 30), phrase.from);
  if ((behind === null && !WHOLE_AHEAD.test(ahead)) || EXCEPT.test(behind?.[0] ?? '')) return undefined;
  const systems = found.filter(({ kind }) => kind === 'system');
  const { levels, rooms } = known.house;
  // A wing that is listed as a level of its own is no storey.
  const above = levels.filter((level) => level.grade === 'above' && STOREY.test(level.name));
  if (systems.length === 0 || above.length < 2) return undefined;
  const reached = new Set<string>();
  for (const { words, where } of systems) {
    for (const { id, name } of above) {
      const [first = ''] = name.toLowerCase().split(/[\s-]/);
      if (
        first !== '' &&
        new RegExp(`\\b${literally(first)}\\b[^;.]*\\b(level|floor|stor|and)`, 'i').test(words)
      )
        reached.add(id);
    }
    // Where a machine stands says nothing of what it serves; a radiator stands where it heats.
    if (phrase.thing === 'radiator')
      for (const id of where) reached.add(rooms.find((room) => room.id === id)?.level ?? id);
  }
  const left = above.filter(({ id }) => !reached.has(id));
  if (left.length === 0 || left.length === above.length) return undefined;
  if (systems.some(({ words }) => /\b(whole|entire|all|every|throughout)\b/i.test(words))) return undefined;
  // A unit of which the folder does not say what it serves may serve the rest.
  if (
    systems.some(({ words }) => !/\b(level|floor|stor(y|ey|ies|eys)|room|upstairs|downstairs)\b/i.test(words))
  )
    return undefined;
  return {
    verdict: 'wider',
    rule: 'all.levels',
    because: `the folder tells of none on ${left.map(({ name }) => name.toLowerCase()).join(' and ')}`,
    facts: factsOf(systems, 3),
  };
}
