/**
 * A draft of listing remarks, held against the facts of the house.
 *
 * Takes plain English text, a checked house and what was worked out of it. Gives findings in the order of the text, each
 * with the exact characters, a verdict, the facts behind it and words that would be true. No model and no network: the
 * words are data (`tables/remarks-*.yaml`), the rules are the `judge-*.ts` files. Start reading at `readSentence`.
 */
import type { House } from '../../facts/house.js';
import type { Tally } from '../tally.js';
import { type Finding, knownOf } from './known.js';
import { readSentence, type Spoken } from './read-sentence.js';
import { sentencesOf, tokenize } from './token.js';

export function checkRemarks(
  text: string,
  house: House,
  tally: Pick<Tally, 'areas' | 'ages' | 'asOf'>,
): Finding[] {
  const known = knownOf(house, tally);
  const tokens = tokenize(text);
  const findings: Finding[] = [];
  let spoken: Spoken | undefined;
  for (const [first, end] of sentencesOf(text, tokens)) {
    const read = readSentence(known, text, tokens, first, end, spoken);
    findings.push(...read.findings);
    spoken = read.spoken;
  }
  return findings;
}
