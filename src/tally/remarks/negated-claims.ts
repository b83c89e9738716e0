/** "No carpet", "not a garage": what is denied, held against what there is. */
import { absent } from './absent-things.js';
import { attributesOfKind, type ClaimCase, type Told } from './claim-case.js';
import { factsOf } from './item-words.js';
import { sortByClass } from './judge-class.js';
import { judgeConvey } from './judge-conveys.js';
import { judgeDues } from './judge-dues.js';
import { judgePermit } from './judge-people.js';
import type { Judgement } from './known.js';

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

const OUTRIGHT = /\b(none|anywhere|at all|whatsoever|inside or out|of any kind)\b/i;

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
  if (phrase.thing === 'flood-zone')
    return [
      {
        judgement: {
          verdict: 'no-fact',
          rule: 'flood-zone',
          because: 'the folder says nothing of it; the federal flood map does',
          facts: [],
        },
        attributes: [],
      },
    ];
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
  const senses = attributesOfKind(one, 'class').flatMap((kind) => kind.senses);
  const sorted = sortByClass(found, senses);
  const there = senses.length > 0 ? sorted.fits : found.filter(({ what }) => !/^none\b/i.test(what));
  const denial = (verdict: Judgement['verdict'], because: string, facts: Judgement['facts'] = []): Told[] => [
    { judgement: { verdict, rule: 'not-there', because, facts }, attributes: [] },
  ];
  if (there.length > 0) return denial('contradicted', 'the folder tells of it', factsOf(there, 3));
  if (absent(one) !== undefined || found.length > there.length)
    return denial('backed', 'the folder tells of another kind', factsOf(found, 2));
  return denial('no-fact', 'the folder tells of none, and does not say that there is none');
}
