/** Pairs of paths that some systems take for one: they differ in case, or in how an accent is written. */
export function alikeNames(paths: Iterable<string>): [string, string][] {
  const first = new Map<string, string>();
  const pairs: [string, string][] = [];
  for (const path of paths) {
    const plain = path.normalize('NFC').toLowerCase();
    const earlier = first.get(plain);
    if (earlier === undefined) first.set(plain, path);
    else pairs.push([earlier, path]);
  }
  return pairs;
}
