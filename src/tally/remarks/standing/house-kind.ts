/** "Detached Victorian", "no shared walls", "townhouse", "condo": how the house stands to its neighbours. */
import type { Identity } from '../../../facts/house.js';
import type { Judgement, Known } from '../items/known.js';
import { matches, type SetPhrase } from './set-phrases.js';

const HOUSE =
  '(?:homes?|houses?|residences?|dwellings?|property|victorian|craftsman|tudor|colonial|bungalow|ranch|cape|brownstone|single[- ]family|sfr|sfh)';

/** It stands by itself. */
const ALONE = new RegExp(
  `\\b(?<!semi[- ])(?:fully )?(?:detached|free[- ]?standing|stand[- ]?alone)(?=,? (?:(?!studio|guest|in-law|garage|office|workshop|carport|shed)[\\w'’-]+,? ){0,3}${HOUSE}\\b(?! (?:office|gym|studio|theater|theatre|school|workshop|bar)))|\\bsingle[- ]family detached\\b|\\b(?:no|without|zero) (?:shared|common|party|adjoining) walls?\\b|\\bshar(?:es|ing) no walls?\\b|\\b(?:type|style|kind|structure|property type)\\s*[:=]\\s*(?:single[- ]family )?detached\\b`,
  'gi',
);

/** It shares a wall, or is one of several under a roof. */
const JOINED =
  /\b(?:town ?(?:house|home)|row ?(?:house|home)|semi[- ]detached|(?:half of a |one side of a )?duplex|condo(?:minium)?|end[- ]unit|corner unit|middle unit|twin home|co-?op apartment)s?\b|\battached (?=(?:[\w'’-]+ ){0,2}(?:homes?|houses?|residence|dwelling)\b)|\b(?:type|style|kind|structure|property type)\s*[:=]\s*(?:single[- ]family )?attached\b/gi;

/** It was built elsewhere and brought. */
const BROUGHT = /\b(?:manufactured|mobile) (?:home|house)s?\b|\b(?:single|double|triple)[- ]?wide\b/gi;

const NOT_SAID =
  /\b(?:no|not|not an?|never|isn['’]t|without|unlike|instead of|rather than|than an?|better than|nearby|next door|neighbou?r\w*|alternative to|tired of|forget|skip|beats?|like an?|or|former(?:ly)?|once|could be|potential)\W+(?:\w+\W+){0,2}$/i;
const NOT_SAID_BEHIND =
  /^[\s-]*(?:style|like|living|alternative|feel|prices?|pricing|fees?|dues|developments?|next door|association|community|complex|of the|nearby|down|across|potential|conversion|owners?)\b/i;

const STANDS: Readonly<Record<Identity['kind'], string>> = {
  detached: 'detached house',
  attached: 'attached house',
  'apartment-style': 'apartment',
  manufactured: 'manufactured home',
};

export function houseKind({ house }: Known, sentence: string): SetPhrase[] {
  const { kind } = house.house;
  const judgement: Judgement = {
    verdict: 'contradicted',
    rule: 'house.kind',
    because: `the folder says ${STANDS[kind]}`,
    facts: [{ path: ['house', 'kind'], words: `kind: ${kind}`, evidence: [] }],
  };
  const isJoined = kind === 'attached' || kind === 'apartment-style';
  const wrong: readonly (readonly [RegExp, boolean])[] = [
    [ALONE, isJoined],
    // What an attached house is called is left open.
    [JOINED, kind === 'detached'],
    [BROUGHT, kind !== 'manufactured'],
  ];
  return wrong.flatMap(([pattern, isWrong]) =>
    !isWrong
      ? []
      : matches(pattern, sentence).flatMap(({ index, 0: words }) => {
          const end = index + words.trimEnd().length;
          return NOT_SAID.test(sentence.slice(Math.max(0, index - 32), index)) ||
            NOT_SAID_BEHIND.test(sentence.slice(end))
            ? []
            : [{ from: index, to: end, judgement }];
        }),
  );
}
