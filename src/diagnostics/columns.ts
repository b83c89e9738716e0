/** How many columns of a screen a text takes: East Asian and picture signs take two, combining ones none. */

/** Ranges that Unicode's East Asian Width calls wide or fullwidth (UAX #11), by whole blocks: enough to aim a caret. */
const WIDE =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\uA4CF\uA960-\uA97F\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u{1F300}-\u{1F64F}\u{1F680}-\u{1F6FF}\u{1F900}-\u{1F9FF}\u{20000}-\u{3FFFD}]/u;
const COMBINING = /\p{M}/u;

const columns = (sign: string): number => (COMBINING.test(sign) ? 0 : WIDE.test(sign) ? 2 : 1);

export function columnsOf(text: string): number {
  let sum = 0;
  for (const sign of text) sum += columns(sign);
  return sum;
}

/** As much of one end of a text as fits into so many columns; never half a sign. */
export function cutColumns(text: string, most: number, end: 'start' | 'end'): string {
  const signs = [...text];
  if (end === 'end') signs.reverse();
  const kept: string[] = [];
  let sum = 0;
  for (const sign of signs) {
    sum += columns(sign);
    if (sum > most) break;
    kept.push(sign);
  }
  if (end === 'end') kept.reverse();
  return kept.join('');
}
