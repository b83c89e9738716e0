/**
 * What is said to be the only one: "the electrician only came for the panel", "only the deck lacks a final",
 * "neither bath was left as it was". Held against all the others that the folder tells of.
 */
import { nameOf } from '../../../facts/place-name.js';
import { sensesIn } from '../items/item-meaning.js';
import { factsOf } from '../items/item-words.js';
import type { Judgement, Known } from '../items/known.js';
import { isOfTrade } from '../judge/judge-people.js';
import { permitFact } from '../judge/judge-permits.js';
import { belongsTo, thing } from '../words/taxonomy.js';
import { matches, type SetPhrase } from './set-phrases.js';

export const onlyRead = (known: Known, sentence: string): SetPhrase[] =>
  /\b(only|just|solely|neither|no|not|none)\b/i.test(sentence)
    ? [...onlyTrade(known, sentence), ...onlyPermit(known, sentence), ...noneLeft(known, sentence)]
    : [];

const span = ({ index, 0: words }: RegExpExecArray, judgement: Judgement): SetPhrase => ({
  from: index,
  to: index + words.trimEnd().length,
  judgement,
});

const thingsIn = (words: string): string[] =>
  sensesIn(words).flatMap((sense) =>
    sense.tag === 'thing' && !/^(house|work|system)$/.test(sense.id) ? [sense.id] : [],
  );

const isOneOf = (things: readonly string[], said: readonly string[]): boolean =>
  things.some((one) => said.some((other) => belongsTo(one, other) || belongsTo(other, one)));

const ONLY_TRADE =
  /\b(?:the |a |an |our )?([a-z]+(?: [a-z]+)?) (?:was |were )?(?:only|just|solely) (?:(?:came|come|called|hired|needed|brought|used|did|touched|worked|here|there|out|in|on hand)\W+){0,3}(?:for |on |to (?:do|put in|change|install|replace) )?(?:the |a |an )?([^.;:!?\n]{3,50})/gi;

/** "Plumber only for the water heater", where the folder names the plumber for other things as well. */
function onlyTrade(known: Known, sentence: string): SetPhrase[] {
  return matches(ONLY_TRADE, sentence).flatMap((found) => {
    const [, who = '', what = ''] = found;
    const trade = sensesIn(who).find((sense) => sense.tag === 'trade')?.id;
    const said = thingsIn(what);
    if (trade === undefined || said.length === 0) return [];
    const theirs = known.items.filter(
      ({ who, kept }) => who.kind === 'hired' && !kept && isOfTrade(who.person, trade),
    );
    const others = theirs.filter(({ things }) => things.length > 0 && !isOneOf(things, said));
    if (others.length === 0) return [];
    return [
      span(found, {
        verdict: 'contradicted',
        rule: 'who.only',
        because: 'the folder names the same trade for other things too',
        facts: factsOf(others, 3),
      }),
    ];
  });
}

const ONLY_PERMIT =
  /\bonly (?:the |one (?:thing|item|permit)[, ]+(?:the )?)?([a-z][a-z ]{2,30}?) (?:(?:still )?(?:lacks|lacked|misses|is missing|needs|awaits|is waiting (?:for|on)|is without|has no|was done without|never got)|permit (?:is|was|remains) (?:still )?open)(?: (?:a|an|its|the|final|closed))*(?: (?:permits?|finals?|final inspection|inspection|sign-?off|approval|paperwork))?/gi;

/** "The only permit still open is for the deck." */
const ONLY_OPEN =
  /\bonly (?:(?:open|outstanding|unclosed|missing|expired) permit|permit (?:that is |that's )?(?:still |left )?(?:open|outstanding|missing)|(?:thing|work|item|project|job) (?:without|lacking|missing) a permit) (?:is|was) (?:for |on |that of )?(?:the |its )?([a-z][a-z ]{2,30})/gi;

/** "Only the deck lacks a final", where another permit is open, or another work has none. */
function onlyPermit(known: Known, sentence: string): SetPhrase[] {
  return [...matches(ONLY_PERMIT, sentence), ...matches(ONLY_OPEN, sentence)].flatMap((found) => {
    if (!/permit|final|inspection|sign|approval|paperwork/i.test(found[0])) return [];
    const [, what = ''] = found;
    const said = thingsIn(what);
    const bad = known.house.permits.filter(({ state }) => state !== 'final' && state !== 'not-known');
    const others = bad.filter((permit) => !isOneOf(thingsIn(permit.what), said));
    if (said.length === 0 || others.length === 0) return [];
    return [
      span(found, {
        verdict: 'contradicted',
        rule: 'permit',
        because: 'the folder lists another permit that is not closed, or other work without one',
        facts: others.slice(0, 3).map((permit) => permitFact(known, permit)),
      }),
    ];
  });
}

const NONE_LEFT =
  /\b(?:neither|no|not (?:one|a single)|none of (?:the|its|our))(?: of (?:the|its|our))? ((?:[a-z]+ )?[a-z]+?)s?(?: (?:was|were|is|are|has|have|been|got|here|in|the|house|home)){0,6} (?:left (?:as (?:it|they) (?:was|were)|as[- ]is|alone|untouched|original|behind|out|undone|unfinished)|untouched|overlooked|skipped|unrenovated|unremodell?ed|in original condition|original)\b/gi;

/** "Neither bath was left alone", where all the finishes of one are as they were found. */
function noneLeft({ house, items }: Known, sentence: string): SetPhrase[] {
  return matches(NONE_LEFT, sentence).flatMap((found) => {
    const [, what = ''] = found;
    const uses = thingsIn(what).map((id) => thing(id).room);
    const any = /^(room|surface|corner|space|inch)/i.test(what);
    const left = house.rooms.filter(({ id, use }) => {
      const own = items.filter(({ kind, where }) => kind === 'finish' && where.includes(id));
      return (any || uses.includes(use)) && own.length > 1 && own.every(({ kept }) => kept);
    });
    if (left.length === 0) return [];
    return [
      span(found, {
        verdict: 'contradicted',
        rule: 'newness.untouched',
        because: 'the folder says of one that it was left as found',
        facts: left.slice(0, 3).map((room) => ({
          path: ['rooms', house.rooms.indexOf(room)],
          words: `${nameOf(room)}: left as found`,
          evidence: [],
        })),
      }),
    ];
  });
}
