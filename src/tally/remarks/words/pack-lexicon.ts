/** The words of the tables cut into tokens and sorted: what the lexicon looks up. Done when the program is built. */
import { fillLexicon } from './fill-lexicon.js';
import type { PackedLexicon, Sense } from './lexicon.js';
import { tokenize } from './token.js';

export function packLexicon(): PackedLexicon {
  const byWords = new Map<string, { readonly norms: readonly string[]; readonly senses: Sense[] }>();
  fillLexicon((words, sense) => {
    const norms = tokenize(words)
      .map((token) => token.norm)
      .filter((norm) => norm !== '-');
    const key = norms.join(' ');
    const same = byWords.get(key);
    if (same === undefined) byWords.set(key, { norms, senses: [sense] });
    else if (
      !same.senses.some((one) => one.tag === sense.tag && one.id === sense.id && one.group === sense.group)
    )
      same.senses.push(sense);
  });
  return packed(byWords.values());
}

/** The longest entries of a first word come first, and what several entries mean is written once. */
function packed(
  entries: Iterable<{ readonly norms: readonly string[]; readonly senses: readonly Sense[] }>,
): PackedLexicon {
  const meanings = new Map<string, number>();
  const firsts = new Map<string, (readonly [rest: readonly string[], senses: number])[]>();
  for (const { norms, senses } of entries) {
    const [first = '', ...rest] = norms;
    const meaning = JSON.stringify(senses);
    const place = meanings.get(meaning) ?? meanings.size;
    meanings.set(meaning, place);
    const list = firsts.get(first);
    if (list === undefined) firsts.set(first, [[rest, place]]);
    else list.push([rest, place]);
  }
  return {
    senses: [...meanings.keys()].map((meaning) => JSON.parse(meaning)),
    firsts: [...firsts].map(([first, list]) => [
      first,
      list.sort(([a], [b]) => b.length - a.length).map(([rest, place]) => [rest.join(' '), place]),
    ]),
  };
}
