/** Words told before and behind what differs, so that it is recognised. */
const AROUND = 6;

/** Of two texts the words that differ, with a few around them; a sign tells where something was left out. */
export function whereTheyDiffer(one: string, other: string): [string, string] {
  const [a, b] = [one.split(/\s+/u), other.split(/\s+/u)];
  const shorter = Math.min(a.length, b.length);
  let begin = 0;
  while (begin < shorter && a[begin] === b[begin]) begin++;
  let end = 0;
  while (end < shorter - begin && a.at(-1 - end) === b.at(-1 - end)) end++;
  const cut = (words: readonly string[]): string => {
    const [from, to] = [Math.max(0, begin - AROUND), Math.min(words.length, words.length - end + AROUND)];
    return `${from > 0 ? '… ' : ''}${words.slice(from, to).join(' ')}${to < words.length ? ' …' : ''}`;
  };
  return [cut(a), cut(b)];
}
