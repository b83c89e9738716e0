/** Where a fact stands in the house: words and list positions from the top. */
export type FactPath = readonly (string | number)[];

const PLAIN = /^[A-Za-z0-9_-]+$/;

/** `['systems', 0, 'installed']` becomes `systems[0].installed`. */
export function printFactPath(path: FactPath): string {
  let out = '';
  for (const part of path) {
    if (typeof part === 'number') out += `[${part}]`;
    else if (PLAIN.test(part)) out += out === '' ? part : `.${part}`;
    else out += `[${JSON.stringify(part)}]`;
  }
  return out === '' ? 'the whole file' : out;
}
