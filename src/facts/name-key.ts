/** Whether two names are one: of a payee, a person, a vehicle. */

/**
 * What a name is without that which makes no difference: capitals, signs, and how many blanks. `Smith, Co.`,
 * `SMITH  CO` and `Smith-Co` share one key; so do `O’Brien` and `OBrien`. Letters and digits of every script count,
 * with their marks, and so does where one word ends: `Some Body` is not `Somebody`. A name of signs alone is its own
 * key.
 *
 * For comparing only: it is never printed.
 */
export function nameKey(name: string): string {
  const plain = name
    .normalize('NFKC')
    .toLowerCase()
    .normalize('NFKC')
    .replace(/\p{Cf}/gu, '')
    .replace(/\s+/g, ' ')
    .trim();
  const words = plain
    // These stand within a word or shorten it; every other sign parts two words.
    .replace(/['’ʼ]|(?<!\p{N})\.|\.(?!\p{N})/gu, '')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, ' ')
    .trim();
  return words === '' ? plain : words;
}
