/** English words and their plurals as one, for the search and for phrases in advertisements. Imports nothing: it goes into the pages. */

const IRREGULAR: Readonly<Record<string, string>> = { children: 'child', wives: 'wife' };

/** The singular of an English word, as far as its ending tells: the same for a word and its plural, and no more. */
export function stemOf(word: string): string {
  const known = IRREGULAR[word];
  if (known !== undefined) return known;
  if (word.length < 4 || /(ss|us|is)$/u.test(word)) return word;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(ss|x|ch|sh|z)es$/u.test(word)) return word.slice(0, -2);
  return word.endsWith('s') ? word.slice(0, -1) : word;
}
