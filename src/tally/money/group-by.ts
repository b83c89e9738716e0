/** A list, gathered by a key, in order of first appearance. */
export function groupBy<T, K>(list: Iterable<T>, key: (one: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const one of list) {
    const at = key(one);
    const group = groups.get(at);
    if (group === undefined) groups.set(at, [one]);
    else group.push(one);
  }
  return groups;
}
