/** What is said not to be wrong, held against what the folder lists and answers. */
import { nameOfPlace } from '../../../facts/place-name.js';
import { remarkWords } from '../../tables/remarks.js';
import { sensesIn } from '../items/item-meaning.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { belongsTo, thing } from '../words/taxonomy.js';

/** Topics of which a question that is not denied says enough: "Are pets allowed? Two to a house." */
const ASKED = /^(pets|claims|pests|asbestos)$/;

/** A question after something that happened or not: what answers it, and is no denial, says that it did. */
const ASKS_WHETHER = /^\W*(has|have|had|did|does|do|is there|are there|was|were|any)\b/i;

const ASKS_AFTER: Readonly<Record<string, RegExp>> = {
  water:
    /\b((water|rain|moisture|snow-?melt)\b.*\b(come|came|comes|coming|get|got|gets|enter\w*|run|ran|reach\w*|in|into|inside|stand|stood)|flood(ed|s|ing)?(?! (zone|plain|map|insur))|leak\w*|damp|wet|seep\w*)\b/i,
  cracks: /\b(crack|settl|shift|mov(e|ed|ement)|sink|sunk|heave)/i,
};

const OF_ANYTHING = { topic: 'any' };

/** Kinds of trouble that name their own thing: a grounded outlet is one of the outlets, whatever stands before. */
const OF_OWN_THING = /^(ungrounded|unlabelled)$/;

/** Holds "no known issues", "never flooded", "works" against what the folder says is not mended. */
export function judgeCondition(
  known: Known,
  id: string,
  things: readonly string[],
  /** Rooms in which it is said to be so. */
  rooms: readonly string[] = [],
): Judgement {
  const rule = `condition.${id}`;
  const table = remarkWords();
  const [{ topic } = OF_ANYTHING] = table.conditions.filter((one) => one.id === id);
  const { [topic]: words = '.' } = table.topics;
  const pattern = new RegExp(words, 'i');
  const denial = new RegExp(table.denials, 'i');
  const { house } = known;
  const about = (words: string, where: string | undefined): boolean => {
    const named = things.filter((one) => one !== 'house' && one !== 'system');
    if (named.length === 0 && rooms.length === 0) return true;
    const senses = sensesIn(`${words}. ${where === undefined ? '' : nameOfPlace(house, where)}`).flatMap(
      (sense) => (sense.tag === 'thing' ? [sense.id] : []),
    );
    const there = senses.filter((one) => thing(one).room !== undefined);
    const isThere = (one: string): boolean =>
      rooms.some((room) => belongsTo(one, room) || belongsTo(room, one));
    if (rooms.length > 0 && there.length > 0 && !there.some(isThere)) return false;
    if (named.length === 0 || OF_OWN_THING.test(topic)) return true;
    const level =
      where === undefined ? undefined : (house.rooms.find((room) => room.id === where)?.level ?? where);
    const below = house.levels.some((one) => one.id === level && one.grade === 'below');
    return named.some(
      (one) =>
        (one === 'basement' && below) ||
        senses.some((other) => belongsTo(other, one) || belongsTo(one, other)),
    );
  };
  const against: FactSaid[] = [
    ...house.conditions.flatMap((one, index) =>
      pattern.test(topic === 'any' ? one.what : `${one.what} ${one.note ?? ''}`) && about(one.what, one.where)
        ? [
            {
              path: ['conditions', index],
              words: `known and not mended: ${one.what}`,
              evidence: one.evidence,
            },
          ]
        : [],
    ),
    ...(topic === 'any' || topic === 'dead'
      ? []
      : house.answers.flatMap((one, index) => {
          const { value } = one.answer;
          if (value === undefined || !pattern.test(`${one.ask} ${value}`) || denial.test(value)) return [];
          const happened = ASKS_WHETHER.test(one.ask) && ASKS_AFTER[topic]?.test(one.ask) === true;
          return (pattern.test(value) || happened || (ASKED.test(topic) && pattern.test(one.ask))) &&
            about(`${one.ask} ${value}`, undefined)
            ? [{ path: ['answers', index], words: `${one.ask} ${value}`, evidence: one.answer.evidence }]
            : [];
        })),
    ...(topic === 'lead' && house.lead?.known.value !== undefined && !denial.test(house.lead.known.value)
      ? [
          {
            path: ['lead', 'known'],
            words: `lead: ${house.lead.known.value}`,
            evidence: house.lead.known.evidence,
          },
        ]
      : []),
  ];
  if (against.length > 0)
    return {
      verdict: 'contradicted',
      rule,
      because: 'the folder lists what speaks against it',
      facts: against.slice(0, 5),
    };
  const denied = house.answers.flatMap((one, index) => {
    const { value } = one.answer;
    return topic !== 'any' && value !== undefined && pattern.test(one.ask) && denial.test(value)
      ? [{ path: ['answers', index], words: `${one.ask} ${value}`, evidence: one.answer.evidence }]
      : [];
  });
  if (denied.length > 0)
    return { verdict: 'backed', rule, because: 'an answer in the folder says so', facts: denied };
  return {
    verdict: 'no-fact',
    rule,
    because:
      topic === 'any'
        ? 'that the folder lists none is no proof that there is none'
        : 'the folder says nothing of it',
    facts: [],
  };
}
