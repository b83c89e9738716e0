/** What has at least one. */
export type Group<T> = [first: T, ...more: T[]];

/** A list, gathered by a key, in order of first appearance. */
export function groupBy<T, K>(list: Iterable<T>, key: (one: T) => K): Map<K, Group<T>> {
  const groups = new Map<K, Group<T>>();
  for (const one of list) {
    const at = key(one);
    const group = groups.get(at);
    if (group === undefined) groups.set(at, [one]);
    else group.push(one);
  }
  return groups;
}
