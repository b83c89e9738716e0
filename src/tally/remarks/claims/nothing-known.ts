import { factsOf } from '../items/item-words.js';
import type { Judgement } from '../items/known.js';
import { itemsFor } from '../items/pick-items.js';
import { judgeCondition } from '../judge/judge-conditions.js';
import { judgeConvey } from '../judge/judge-conveys.js';
import { judgePermit } from '../judge/judge-permits.js';
import { sinceLast } from '../words/cut-at.js';
import { thing } from '../words/taxonomy.js';
import { attributesOfKind, type ClaimCase, type Told } from './claim-case.js';
import { placeClaim } from './place-claims.js';

const NOT_WORTH_TELLING = /^(work|system|house|lot|living-area|water-supply|sewer|storage)$/;

const SAYING = /^(newness|class|number|permit|who|convey)$/;

/** "The addition made a second living area and was built with permits": of the subject of the sentence. */
function permitOfSubject({ known, phrase, sentence }: ClaimCase): Judgement | undefined {
  const before = sentence.text.slice(0, phrase.from);
  const start = Math.max(before.lastIndexOf('. '), before.lastIndexOf('\n')) + 1;
  const subject = sentence.phrases.find(
    ({ from, to, place }) => from >= start && to <= phrase.from && !place,
  );
  const joined = AND_WAS.test(sentence.text.slice(phrase.to, phrase.to + 60));
  if (subject === undefined || !joined) return undefined;
  const judgement = judgePermit(known, itemsFor(known, subject.thing), {
    all: false,
    thing: subject.thing,
    words: sentence.text.slice(subject.from, subject.to).toLowerCase(),
  });
  return judgement.verdict === 'no-fact' ? undefined : judgement;
}

const CHANGED = /\b(new|changed|replaced|put in|swapped|fresh|installed)\b/i;

/** "New furnace filter": a part that the account of some work says was changed. */
function partChanged(one: ClaimCase): Told | undefined {
  const { known, phrase, sentence } = one;
  const [word] = attributesOfKind(one, 'newness').filter(
    ({ id, negated }) => /^(new|replaced)$/.test(id) && !negated,
  );
  if (phrase.thing !== 'part' || word === undefined) return undefined;
  const names = sentence.text.slice(phrase.from, phrase.to).toLowerCase().split(/\s+/);
  const part = sinceLast(sentence.text.slice(phrase.from, phrase.to).toLowerCase(), /\s/).replace(/s$/, '');
  const told = known.items.filter(({ kind, words, what }) => {
    const clause = words
      .toLowerCase()
      .split(/[,;.]/)
      .find((one) => one.includes(part));
    return (
      kind === 'work' &&
      clause !== undefined &&
      CHANGED.test(clause) &&
      names.slice(0, -1).every((name) => `${what} ${words}`.toLowerCase().includes(name))
    );
  });
  if (told.length === 0) return undefined;
  return {
    judgement: {
      verdict: 'backed',
      rule: `newness.${word.id}`,
      because: 'the folder says that it was changed',
      facts: factsOf(told, 2),
    },
    attributes: [word],
  };
}

const AND_WAS = /^[^.;\n]*\band (was|were|is|are|has been|have been)\b/;

/** What is left to say of a thing of which the folder tells nothing. */
export function nothingKnown(one: ClaimCase): Told[] {
  const { known, phrase, attributes, places, told } = one;
  const [ofWork] = attributesOfKind(one, 'permit');
  const subjects = ofWork === undefined ? undefined : permitOfSubject(one);
  if (ofWork !== undefined && subjects !== undefined && told.length > 0)
    return [{ judgement: subjects, attributes: [ofWork] }];
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
    if (subjects !== undefined) return [{ judgement: subjects, attributes: [permit] }];
  }
  const [condition] = attributesOfKind(one, 'condition');
  if (condition !== undefined)
    return [{ judgement: judgeCondition(known, condition.id, [phrase.thing]), attributes: [condition] }];
  if (NOT_WORTH_TELLING.test(phrase.thing)) return [];
  const changed = partChanged(one);
  if (changed !== undefined) return [changed];
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
