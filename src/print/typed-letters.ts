/**
 * What a person may type into a field, and the codes it is written with: WinAnsiEncoding (ISO 32000-1, annex D.2), the
 * letters of Western Europe in one byte each. Programs that fill in forms know it.
 */

/** Codes 0x80 to 0x9F; a blank where the encoding has none. */
const UPPER = '€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ';

/** Code → code point, in ascending order. */
export const TYPED_LETTERS: ReadonlyMap<number, number> = new Map(
  Array.from({ length: 0x100 - 0x20 }, (_, i): [number, number] => [i + 0x20, codePointOf(i + 0x20)]).filter(
    ([code, codePoint]) => code === 0x20 || codePoint !== 0x20,
  ),
);

function codePointOf(code: number): number {
  if (code === 0x7f) return 0x20;
  if (code < 0x80 || code > 0x9f) return code;
  return UPPER.charCodeAt(code - 0x80);
}
