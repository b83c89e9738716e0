import { attributesOfKind, type ClaimCase, type Told } from './claim-case.js';
import { judgeCondition } from './judge-conditions.js';
import { judgeConvey } from './judge-conveys.js';
import { judgePermit } from './judge-people.js';
import { placeClaim } from './place-claims.js';
import { thing } from './taxonomy.js';

const NOT_WORTH_TELLING = /^(work|system|house|lot|living-area|water-supply|sewer|storage)$/;

const SAYING = /^(newness|class|number|permit|who|convey)$/;

/** What is left to say of a thing of which the folder tells nothing. */
export function nothingKnown(one: ClaimCase): Told[] {
  const { known, phrase, attributes, places, told } = one;
  if (told.length > 0) return [];
  const placed = placeClaim(known, phrase, places);
  if (placed !== undefined) return [{ judgement: placed, attributes: [] }];
  const [convey] = attributesOfKind(one, 'convey');
  if (convey !== undefined) {
    const id = convey.negated && convey.id === 'stays' ? 'goes' : convey.id;
    return [
      {
        judgement: judgeConvey(known, [], {
          id,
          things: [phrase.thing],
          words: one.sentence.text.slice(phrase.from, phrase.to),
          all: false,
        }),
        attributes: [convey],
      },
    ];
  }
  // "permitted addition": the finding that there is no permit may be all that the folder says of a thing.
  const [permit] = attributesOfKind(one, 'permit');
  if (permit !== undefined) {
    const words = one.sentence.text.slice(phrase.from, phrase.to).toLowerCase();
    const judgement = judgePermit(known, [], { all: false, thing: phrase.thing, words });
    if (judgement.verdict !== 'no-fact') return [{ judgement, attributes: [permit] }];
  }
  const [condition] = attributesOfKind(one, 'condition');
  if (condition !== undefined)
    return [{ judgement: judgeCondition(known, condition.id, [phrase.thing]), attributes: [condition] }];
  if (NOT_WORTH_TELLING.test(phrase.thing)) return [];
  const saying = attributes.filter(({ kind }) => SAYING.test(kind));
  if (saying.length === 0 && !thing(phrase.thing).feature) return [];
  return [
    {
      judgement: {
        verdict: 'no-fact',
        rule: 'not-told',
        because: `the folder tells of no ${thing(phrase.thing).label}${places.length > 0 ? ' there' : ''}`,
        facts: [],
      },
      attributes: saying.filter(({ before }) => before).slice(0, 1),
    },
  ];
}
