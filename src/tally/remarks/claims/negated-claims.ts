/** "No carpet", "not a garage": what is denied, held against what there is. */

import { nameOfPlace } from '../../../facts/place-name.js';
import { factsOf } from '../items/item-words.js';
import type { Judgement } from '../items/known.js';
import { placeMeant } from '../items/places.js';
import { sortByClass } from '../judge/judge-class.js';
import { judgeCondition } from '../judge/judge-conditions.js';
import { judgeConvey } from '../judge/judge-conveys.js';
import { judgeDues } from '../judge/judge-dues.js';
import { judgePermit } from '../judge/judge-permits.js';
import { thing } from '../words/taxonomy.js';
import { absent } from './absent-things.js';
import { attributesOfKind, type ClaimCase, type Told } from './claim-case.js';
import { deniedDeed } from './denied-deeds.js';
import { leftOpen } from './open-questions.js';

export const reversed = (judgement: Judgement): Judgement =>
  judgement.verdict === 'contradicted'
    ? { ...judgement, verdict: 'backed', because: 'the folder says so' }
    : judgement.verdict === 'backed'
      ? { ...judgement, verdict: 'contradicted', because: 'the folder names a permit' }
      : judgement;

/** Things whose denial says nothing that a folder could hold: "no work to do", "no light". */
const DENIED_IN_VAIN =
  /^(work|system|house|lot|paint|water-supply|sewer|light|wall|step|storage|drive|driveway)$/;

/** Denied only where the sentence says so of all there is: "cooling: none", "no steps anywhere". */
const DENIED_OUTRIGHT = /^(heating|cooling|stair|porch-steps|floor)$/;

const OUTRIGHT = /\b(none|anywhere|at all|whatsoever|inside or out|of any kind|left|remains?|remaining)\b/i;

/** "no carpet", "without a garage". */
export function negatedClaim(one: ClaimCase): Told[] {
  const { known, phrase, sentence } = one;
  const { text } = sentence;
  const permits = attributesOfKind(one, 'permit');
  const words = text.slice(phrase.from, phrase.to);
  const old =
    attributesOfKind(one, 'newness').some(({ id }) => id === 'old' || id === 'original') ||
    /\bold\b/i.test(words);
  const found = old ? one.found.filter(({ kept }) => kept) : one.found;
  if (permits.length > 0) {
    const judgement = judgePermit(known, found, {
      all: false,
      thing: phrase.thing,
      words: words.toLowerCase(),
    });
    return [{ judgement: reversed(judgement), attributes: permits }];
  }
  if (phrase.thing === 'association')
    return [{ judgement: judgeDues(known, undefined, true), attributes: [] }];
  const room = deniedRoom(one);
  if (room !== undefined) return room;
  for (const word of attributesOfKind(one, 'newness')) {
    const judgement = phrase.thing === 'paint' ? deniedDeed(one, word) : undefined;
    if (judgement !== undefined) return [{ judgement, attributes: [word] }];
  }
  const outright = OUTRIGHT.test(text.slice(phrase.from, phrase.to + 24));
  if (
    DENIED_IN_VAIN.test(phrase.thing) ||
    (DENIED_OUTRIGHT.test(phrase.thing) && !outright && attributesOfKind(one, 'class').length === 0)
  )
    return [];
  if (attributesOfKind(one, 'number').length > 0) return [];
  const conveys = attributesOfKind(one, 'convey');
  if (conveys.length > 0) {
    const claim = { id: 'goes', things: [phrase.thing], words, all: false };
    return [{ judgement: judgeConvey(known, found, claim), attributes: conveys }];
  }
  const [works] = attributesOfKind(one, 'condition').filter(({ id, before }) => before && id === 'works');
  if (works !== undefined) {
    const judgement = judgeCondition(known, works.id, [phrase.thing]);
    return judgement.verdict === 'no-fact' ? [] : [{ judgement: reversed(judgement), attributes: [works] }];
  }
  const senses = attributesOfKind(one, 'class').flatMap((kind) => kind.senses);
  const sorted = sortByClass(found, senses);
  const there = senses.length > 0 ? sorted.fits : found.filter(({ what }) => !/^none\b/i.test(what));
  const denial = (verdict: Judgement['verdict'], because: string, facts: Judgement['facts'] = []): Told[] => [
    { judgement: { verdict, rule: 'not-there', because, facts }, attributes: [] },
  ];
  const open = there.length > 0 || senses.length === 0 ? undefined : leftOpen(known, phrase.thing, senses);
  if (open !== undefined) return [{ judgement: open, attributes: [] }];
  if (there.length > 0) return denial('contradicted', 'the folder tells of it', factsOf(there, 3));
  if (absent(one) !== undefined || found.length > there.length)
    return denial('backed', 'the folder tells of another kind', factsOf(found, 2));
  return denial('no-fact', 'the folder tells of none, and does not say that there is none');
}

/** "Cellar: unfinished, no bath": a room that is denied of a place is looked for there. */
function deniedRoom({ known, phrase, places }: ClaimCase): Told[] | undefined {
  const ids = places.flatMap((place) => place.ids);
  if (thing(phrase.thing).room === undefined || ids.length === 0) return undefined;
  const rooms = placeMeant(known.house, phrase.thing).ids.filter((id) => ids.includes(id));
  return [
    {
      judgement: {
        verdict: rooms.length > 0 ? 'contradicted' : 'backed',
        rule: 'not-there',
        because: rooms.length > 0 ? 'the folder tells of one there' : 'the folder lists none there',
        facts: rooms.slice(0, 3).map((id) => ({
          path: ['rooms', known.house.rooms.findIndex((one) => one.id === id)],
          words: nameOfPlace(known.house, id),
          evidence: [],
        })),
      },
      attributes: [],
    },
  ];
}
