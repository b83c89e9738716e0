/**
 * Which blanks never end a line: inside a date, between a number and its unit, between "page" and its number.
 *
 * A bound blank stays an ordinary one in the file; only the line breaker passes over it.
 */

const MONTH = /^(?:January|February|March|April|May|June|July|August|September|October|November|December)\b/u;
const MONTH_ALONE = new RegExp(`${MONTH.source}$`, 'u');
const DAY = /^[(“]?(?:[1-9]|[12]\d|3[01])$/u;
const YEAR = /^\d{4}(?:\D|$)/u;
/** A number, also with primes, fractions, signs or a bracket before it. */
const NUMBER = /^[(“~≈+−-]*(?:\d[\d.,/]*[¼½¾⅛⅜⅝⅞⅓⅔]?|[¼½¾⅛⅜⅝⅞⅓⅔])[′″'"’”]*$/u;
const FEET = /^[(“]?\d+[′'’]$/u;
const INCHES = /^\d*[\d¼½¾⅛⅜⅝⅞][¼½¾⅛⅜⅝⅞]*[″"”]/u;
const UNIT =
  /^(?:%|°[CF]?|sq|ft|in|mi|lb|oz|m|m²|cm|mm|ml|gal|gallons?|quarts?|amps?|A|V|volts?|W|kW|watts?|kWh|btu|Btu|BTU|cfm|gpm|psi|years?|months?|weeks?|days?|hours?|coats?|acres?|windows?|risers?|more)(?:[.,;:)·/]|$)/u;
const COUNTED = /^[(“]?(?:[Pp]ages?|[Ss]heets?|[Nn]o\.|[Nn]umber|[Rr]eceipt|[Ll]ine|[Ss]ection|§)$/u;
/** A paper's kind and its number: permit PL-26-0182. */
const PAPER = /^[(“]?(?:[Pp]ermit|[Ii]nvoice|[Ll]icence|[Cc]ode|[Ll]ot)$/u;
const PAPER_NUMBER = /^[A-Z]{1,4}(?:-[A-Z]{1,3})?-?\d/u;
/** What there are several of in a house. */
const NUMBERED =
  /^[(“]?(?:[Bb]ed|[Bb]ath)?(?:[Rr]ooms?|[Bb]eds?|[Bb]aths?|[Uu]nit|[Ll]evel|[Ff]loor|[Cc]loset|[Gg]arage|[Pp]hoto)$/u;
const SHORT_NUMBER = /^[(]?\d{1,4}[.,;:)]*$/u;
/** What a line never begins with. */
const HANGING = /^(?:[·×=+–—]|%)$/u;

/** True where the blank between two words of a text never ends a line. */
export function bound(before: string, after: string): boolean {
  if (HANGING.test(after)) return true;
  if (before === '×' || before === '≈') return true;
  if (DAY.test(before) && MONTH.test(after)) return true;
  if (MONTH_ALONE.test(before) && YEAR.test(after)) return true;
  if (NUMBER.test(before) && UNIT.test(after)) return true;
  if (before === 'sq' && /^(?:ft|in|m)\b/u.test(after)) return true;
  if (before === 'ft' && /^line\b/u.test(after)) return true;
  if (FEET.test(before) && INCHES.test(after)) return true;
  // A source's letter and what it says: "d 18". A span: "15 to 18".
  if (/^[a-h]$/u.test(before) && NUMBER.test(after)) return true;
  if (NUMBER.test(before) && after === 'to') return true;
  if (before === 'to' && NUMBER.test(after)) return true;
  if (NUMBERED.test(before) && SHORT_NUMBER.test(after)) return true;
  if (PAPER.test(before) && PAPER_NUMBER.test(after)) return true;
  return COUNTED.test(before) && SHORT_NUMBER.test(after);
}
