/** "The rest of the windows", "the other doors": of a thing that was changed in part, the part that was left. */
import type { ClaimCase } from '../claims/claim-case.js';
import type { Phrase } from '../sentence/phrase.js';
import { factsOf } from './item-words.js';
import type { Item } from './items.js';
import type { Judgement } from './known.js';

const REST =
  /\b(?:rest|remainder|balance|others?|remaining)\b(?: (?:of|in|the|its|all|these|those|old|original|\w+(?=\W+$))){0,4}\W*$/i;

const REST_INSIDE = /^(?:all )?(?:the )?(?:rest of|remaining|other)\b/i;

const isOfRest = ({ from, to }: Phrase, text: string): boolean =>
  REST_INSIDE.test(text.slice(from, to)) || REST.test(text.slice(Math.max(0, from - 32), from));

/** The facts that the rest of a thing means: what was left as found, where the folder tells of both. */
export function restOf(phrase: Phrase, text: string, items: readonly Item[]): readonly Item[] {
  if (!isOfRest(phrase, text)) return items;
  const kept = items.filter((item) => item.kept && item.kind !== 'work');
  return kept.length > 0 && kept.length < items.length ? kept : items;
}

const DEED = /^(replaced|new|updated|newer|remade)$/;

const GOES_ON =
  /^[\s,]*(?:(?:a|one|two|the|some|few|just|followed|came|were|was|next|done|too|also|as well|soon|in|by|(?:19|20)\d\d|year|years|months?|later|after|following|spring|summer|fall|autumn|winter)[\s,]*)+(?:[.;!\n]|$)/i;

/** "They replaced four windows and the rest a year later": the deed is that of the first part. */
export function deedOfRest(one: ClaimCase): Judgement | undefined {
  const { phrase, sentence, found } = one;
  const { text, phrases } = sentence;
  if (!isOfRest(phrase, text) || phrase.attributes.some(({ kind }) => kind === 'newness' || kind === 'class'))
    return undefined;
  const behind = text.slice(phrase.to, phrase.to + 60);
  if (!GOES_ON.test(behind)) return undefined;
  const before = phrases.findLast(
    (other) =>
      other.thing === phrase.thing &&
      other.at < phrase.at &&
      !/[.!?\n]/.test(text.slice(other.to, phrase.from)) &&
      other.attributes.some((word) => word.kind === 'newness' && DEED.test(word.id) && !word.negated),
  );
  const left = found.filter(({ kind }) => kind !== 'identity');
  if (before === undefined || left.length === 0 || !left.every(({ kept }) => kept)) return undefined;
  return {
    verdict: 'contradicted',
    rule: 'newness.replaced',
    because: 'the folder says that the rest was left as found',
    facts: factsOf(left, 3),
  };
}
