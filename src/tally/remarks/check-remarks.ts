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
  const names = ownNames(text, house);
  let spoken: Spoken | undefined;
  for (const [first, end] of sentencesOf(text, tokens)) {
    const read = readSentence({ known, text, tokens, names }, first, end, spoken);
    findings.push(...read.findings);
    spoken = read.spoken;
  }
  return findings;
}

/** Where the text names the house, its street or its town: "Dry Lake Wells" has no well. */
function ownNames(text: string, { house }: House): (readonly [number, number])[] {
  const { address } = house;
  const street = address.street?.replace(/^[\d\s-]+/, '');
  const names = [house.name, street, address.city, address.county].filter(
    (name) => name !== undefined && name.length > 3,
  );
  const lower = text.toLowerCase();
  return names.flatMap((name) => {
    const word = (name ?? '').toLowerCase();
    const found: (readonly [number, number])[] = [];
    for (let at = lower.indexOf(word); at >= 0; at = lower.indexOf(word, at + word.length))
      found.push([at, at + word.length]);
    return found;
  });
}
