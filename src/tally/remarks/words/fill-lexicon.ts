/** The words of the tables, each with what it may mean, in the order in which the tables give them. */
import { remarkClasses, remarkThings, remarkWords } from '../../tables/remarks.js';
import type { Sense } from './lexicon.js';

export function fillLexicon(add: (words: string, sense: Sense) => void): void {
  const each = (words: readonly string[], sense: Sense): void => {
    for (const word of words) add(word, sense);
  };
  for (const { id, words } of remarkThings()) each(words, { tag: 'thing', id });
  const things = new Set(remarkThings().flatMap(({ words }) => words));
  for (const [group, { members }] of Object.entries(remarkClasses().groups))
    for (const [id, { words, head }] of Object.entries(members)) {
      // "tile roof" is read as "tile" of a "roof"; as one entry it would hide the roof.
      const apart = words.filter(
        (word) =>
          things.has(word) ||
          !words.some((other) => word.startsWith(`${other} `) && things.has(word.slice(other.length + 1))),
      );
      each(apart, { tag: 'class', id, group, ...(head === undefined ? {} : { head }) });
    }
  const said = remarkWords();
  const grouped = (
    tag: Exclude<Sense['tag'], 'class'>,
    table: Readonly<Record<string, readonly string[]>>,
  ): void => {
    for (const [id, words] of Object.entries(table)) each(words, { tag, id });
  };
  const plain = (tag: Exclude<Sense['tag'], 'class'>, words: readonly string[]): void =>
    each(words, { tag, id: tag });
  grouped('newness', said.newness);
  plain('all', said.all);
  plain('both', said.both);
  plain('some', said.some);
  plain('negation', said.negation);
  grouped('hedge', said.hedge);
  plain('maybe-ahead', said.maybe.ahead);
  plain('maybe-behind', said.maybe.behind);
  plain('unlike', said.maybe.unlike);
  plain('elsewhere', said.elsewhere.ahead);
  plain('elsewhere-noun', said.elsewhere.nouns);
  plain('opinion', said.opinion);
  grouped('who', said.who);
  grouped('trade', said.trades);
  plain('permit', said.permit);
  plain('unpermitted', said.unpermitted);
  plain('inspected', said.inspected);
  grouped('convey', said.convey);
  for (const { id, words } of said.conditions) each(words, { tag: 'condition', id });
  grouped('place', said.places);
  grouped('unit', said.units);
  grouped('storeys', said.storeys);
  plain('preposition', said.prepositions);
  plain('determiner', said.determiners);
  plain('copula', said.copulas);
  plain('verb', said.verbs);
}
