/** "Goes: nothing", "no exclusions", "everything stays": held against what the folder lists as going. */
import type { Judgement, Known } from '../items/known.js';
import { matches, type SetPhrase } from './set-phrases.js';

const NOTHING_GOES =
  /\b(?:(?:goes|going|leaves|leaving|excluded|exclusions?|excludes|not included|does not (?:convey|stay)|reserved|reservations?|seller(?:s)? (?:keeps?|takes?|taking))\s*[:=–—-]\s*(?:nothing|none|no(?:ne)? at all|nil|n\/a|zero)|no (?:exclusions?|reserved items|exceptions to (?:what|the) \w+)|(?:nothing|not a thing) (?:is |are |was )?(?:goes|leaves|excluded|reserved|going|held back|taken|leaving|to be removed|coming off)|(?:the )?(?:sellers?|owners?|we) (?:are |is |'re )?(?:taking|leaving with|removing|keeping|take|keep|takes|keeps) nothing|everything (?:you see |in the house |inside |here )?(?:stays|conveys|remains|is included|goes with)|all (?:fixtures|light fixtures|appliances and fixtures) (?:stay|convey|remain|are included))\b/gi;

const LIMITED = /\b(but|except|other than|save|apart from|excluding|minus|less)\b/i;

export function leavesNothing({ house }: Known, sentence: string): SetPhrase[] {
  const found = matches(NOTHING_GOES, sentence);
  if (found.length === 0) return [];
  const goes = [
    ...house.conveys.flatMap(({ what, stays }, index) =>
      stays === 'no' ? [{ path: ['conveys', index], words: `${what}: goes`, evidence: [] }] : [],
    ),
    ...house.systems.flatMap(({ is, name, conveys }, index) =>
      conveys === 'no' ? [{ path: ['systems', index], words: `${name ?? is}: goes`, evidence: [] }] : [],
    ),
  ];
  if (goes.length === 0) return [];
  return found.flatMap(({ index, 0: words }) => {
    const ahead = /^all fixtures|^all light|^everything/i.test(words)
      ? sentence.slice(index + words.length, index + words.length + 24)
      : '';
    if (LIMITED.test(ahead)) return [];
    const judgement: Judgement = {
      verdict: 'contradicted',
      rule: 'conveys.goes',
      because: 'the folder lists what goes',
      facts: goes.slice(0, 3),
    };
    return [{ from: index, to: index + words.length, judgement }];
  });
}
