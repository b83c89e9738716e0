/** How many columns of a screen a text takes: East Asian and picture signs take two, combining ones none. */

/** Ranges that Unicode's East Asian Width calls wide or fullwidth (UAX #11), by whole blocks: enough to aim a caret. */
const WIDE =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\uA4CF\uA960-\uA97F\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u231A\u231B\u23E9-\u23EC\u23F0\u23F3\u25FD\u25FE\u2614\u2615\u2648-\u2653\u267F\u2693\u26A1\u26AA\u26AB\u26BD\u26BE\u26C4\u26C5\u26CE\u26D4\u26EA\u26F2\u26F3\u26F5\u26FA\u26FD\u2705\u270A\u270B\u2728\u274C\u274E\u2753-\u2755\u2757\u2795-\u2797\u27B0\u27BF\u2B1B\u2B1C\u2B50\u2B55\u{1F300}-\u{1F64F}\u{1F680}-\u{1F6FF}\u{1F900}-\u{1F9FF}\u{1FA70}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;
/** Asks for the picture of the sign before it. */
const PICTURE = '\uFE0F';
const PICTOGRAPH = /\p{Extended_Pictographic}/u;
const COMBINING = /\p{M}/u;

const columns = (sign: string): number => (COMBINING.test(sign) ? 0 : WIDE.test(sign) ? 2 : 1);

export function columnsOf(text: string): number {
  let sum = 0;
  let before = '';
  for (const sign of text) {
    sum += columns(sign);
    // A heart of ink becomes a picture by the sign behind it, and takes a picture's width.
    if (sign === PICTURE && columns(before) === 1 && PICTOGRAPH.test(before)) sum += 1;
    before = sign;
  }
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
