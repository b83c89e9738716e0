/** Things that are named as a feature, of which the folder tells less: a hatch, a fence around the pool, an opener that is dead. */

import { nameOf } from '../../../facts/place-name.js';
import { factsOf } from '../items/item-words.js';
import type { FactSaid, Judgement } from '../items/known.js';
import { sinceLast, untilFirst } from '../words/cut-at.js';
import type { ClaimCase } from './claim-case.js';

const WALK_OUT = /\bwalk[\s-]?outs?\b/i;
/** Words of a folder by which a level opens to the ground outside. */
const OPENS_OUT =
  /\bwalk[\s-]?outs?\b|\b(sliding|glass|french|patio|outside|exterior|back|rear) doors?\b|\bdoors? (out|to the (yard|outside|garden|patio|drive|back))|\bopens? (out|on)?to\b|\bat grade\b/i;
const HATCH = /\b(hatch|bulkhead|areaway|storm doors)\b/i;

/** "Walk-out basement", where the folder tells of no door to the outside. */
export function walksOut({ known, phrase, sentence }: ClaimCase): Judgement | undefined {
  const said = sentence.text.slice(Math.max(0, phrase.from - 9), phrase.to);
  if (phrase.thing !== 'basement' || !WALK_OUT.test(said)) return undefined;
  const { levels, house, rooms } = known.house;
  const below = new Set(levels.filter(({ grade }) => grade !== 'above').map(({ id }) => id));
  const told: FactSaid[] = [
    ...levels.flatMap(({ id, name, note }, index) =>
      below.has(id)
        ? [
            {
              path: ['levels', index],
              words: [nameOf({ id, name }), note].filter(Boolean).join(': '),
              evidence: [],
            },
          ]
        : [],
    ),
    ...rooms.flatMap(({ level, name, note }, index) =>
      below.has(level)
        ? [{ path: ['rooms', index], words: [name, note].filter(Boolean).join(' '), evidence: [] }]
        : [],
    ),
    { path: ['house', 'foundation'], words: house.foundation?.value ?? '', evidence: [] },
    ...known.items
      .filter(({ where, kind }) => kind !== 'finish' && where.some((id) => below.has(id)))
      .map(({ path, label, words }) => ({ path, words: `${label} ${words}`, evidence: [] })),
  ];
  if (told.some(({ words }) => OPENS_OUT.test(words)) || below.size === 0) return undefined;
  const hatch = told.filter(({ words }) => HATCH.test(words));
  return {
    verdict: hatch.length > 0 ? 'contradicted' : 'no-fact',
    rule: 'there',
    because:
      hatch.length > 0 ? 'the folder tells of a hatch' : 'the folder tells of no door from it to the outside',
    facts: hatch.slice(0, 2),
  };
}

const OF_THE_LOT =
  /\b(all (a)?round|perimeter|whole|entire|yards?|lot|property|privacy|three sides|four sides)\b/i;

/** "Fully fenced", where the folder tells of a fence at the pool alone. */
export function fencesPoolOnly({ phrase, sentence, found }: ClaimCase): Judgement | undefined {
  if (phrase.thing !== 'fence' || found.length === 0) return undefined;
  const near = sentence.text.slice(Math.max(0, phrase.from - 30), phrase.to + 24);
  const said = sentence.text.slice(phrase.from, phrase.to);
  if (/\b(pool|gate|barrier)/i.test(near) || !(/\bfenced\b/i.test(said) || OF_THE_LOT.test(near)))
    return undefined;
  if (!found.every(({ things }) => things.includes('pool-fence'))) return undefined;
  return {
    verdict: 'no-fact',
    rule: 'not-told',
    because: 'the folder tells of a fence at the pool only',
    facts: factsOf(found, 2),
  };
}

const AS_FEATURE =
  /\b(with|w\/|has|have|includ(?:es|ing)|plus|and|features?|featuring|offers?)\s+(?:an?\s+|its\s+)?(?:[\w-]+\s+){0,2}$/i;
const DEAD =
  /\b(does not (run|work|start|turn|open|close|heat|cool|light)|not working|no longer works|out of order|broken|seized|dead)\b/i;
const SAID_SO =
  /\b(not|no|non|dead|broken|needs?|repair|fix|as[\s-]is|old|inoperable|out of|un\w+|never|doesn|isn|quit|retired|room|space|potential)\b/i;

/** "Garage with opener", of one that does not run. */
export function deadFeature({ phrase, sentence, found }: ClaimCase): Judgement | undefined {
  const systems = found.filter(({ kind }) => kind === 'system');
  if (systems.length === 0 || !systems.every(({ words }) => DEAD.test(words))) return undefined;
  const { text } = sentence;
  const ahead = sinceLast(text.slice(Math.max(0, phrase.from - 40), phrase.from), /[.;!?\n]/);
  const behind = untilFirst(text.slice(phrase.to, phrase.to + 40), /[.;!?\n]/);
  if (!AS_FEATURE.test(ahead) || SAID_SO.test(`${ahead} ${behind}`)) return undefined;
  return {
    verdict: 'wider',
    rule: 'condition.out-of-use',
    because: 'the folder says that it does not work',
    facts: factsOf(systems, 2),
  };
}
