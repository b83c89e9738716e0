/** The underlined stretch of a claim, cut into what it says and of what, so that other words can stand in its place. */
import { sinceLast, untilFirst } from '../words/cut-at.js';
import { tokenize } from '../words/token.js';
import { has, type Unit, unitsOf } from '../words/units.js';

export interface Stretch {
  /** UTF-16 offsets in the draft. */
  readonly from: number;
  readonly to: number;
  /** The draft's words. */
  readonly says: string;
  /** What stands before and behind it in its sentence. */
  readonly ahead: string;
  readonly behind: string;
  readonly units: readonly Unit[];
}

export function stretchOf(text: string, from: number, to: number): Stretch {
  const says = text.slice(from, to);
  const tokens = tokenize(says);
  return {
    from,
    to,
    says,
    ahead: sinceLast(text.slice(Math.max(0, from - 80), from), /[.!?\n;]/),
    behind: untilFirst(text.slice(to, to + 80), /[.!?\n;]/),
    units: unitsOf(tokens, 0, tokens.length),
  };
}

const STRENGTHENS =
  /(?:\b(?:all|brand|completely|totally|entirely|fully|newly|freshly|recently|professionally|tastefully|beautifully|gorgeously|every|over|nearly|almost|approx\.?|approximately|about|around|up to|more than|less than|under|at least|just|close to|well)[\s-]+)+$/i;
const THROUGHOUT =
  /^\s+(?:(?:in (?:19|20)\d\d )?(?:from top to bottom|top to bottom|from head to toe|inside and out|to the studs|throughout(?! the)))\b/i;
/** "two-car | garage" */
const SHELTER_BEHIND = /^[\s-]+(?:(?:attached|detached|att\.?|det\.?|attd)\s+)?(?:garage|carport|gar)\b/i;
/** "laundry | on the main level" */
const PLACE_BEHIND =
  /^\s+(?:is\s+)?(?:located\s+)?(?:on|in|at)\s+(?:the\s+)?(?:[\w-]+\s+)?(?:level|floor|basement|cellar|garage|house|story|storey|kitchen|hall)\b/i;
const MOST_BEHIND = 40;

/** A claim with its thing, and with the words that make it whole: "new" of "all new electric range". */
export function widened(text: string, from: number, to: number, rule: string): readonly [number, number] {
  let [start, end] = [from, to];
  const lone = /^[\p{L}-]+(?: [\p{L}-]+)?$/u.test(text.slice(from, to));
  if (lone && /^(newness\.|permit$|date\.)/.test(rule)) end = endOfThing(text, from, to);
  if (rule.startsWith('date.') && /^\W*(?:19|20)?\d\d\W*$/.test(text.slice(from, to)))
    end = endOfThing(text, from, to);
  if (/^(newness\.|size\.|count\.|date\.age|permit$)/.test(rule)) {
    const strength = STRENGTHENS.exec(text.slice(Math.max(0, from - 40), from));
    if (strength !== null) start -= strength[0].length;
    const whole = THROUGHOUT.exec(text.slice(end, end + 40));
    if (whole !== null) end += whole[0].length;
  }
  if (rule === 'count.cars') end += SHELTER_BEHIND.exec(text.slice(end, end + 30))?.[0].length ?? 0;
  if (rule === 'place') end += PLACE_BEHIND.exec(text.slice(end, end + 40))?.[0].length ?? 0;
  if (rule === 'size.lot') {
    // "over a quarter acre": the size of the lot, with what leads to it.
    const hedged =
      /\b(?:(?:over|nearly|almost|about|just|under|well|close to|larger than|bigger than|more than)\s+)+an?\s+$/i.exec(
        text.slice(Math.max(0, start - 30), start),
      );
    if (hedged !== null) start -= hedged[0].length;
  }
  // The end of a word is no place to stop.
  end += text.slice(end, end + 20).search(/[^\p{L}\p{N}]|$/u);
  if (rule === 'permit') {
    // "All work\r\npermitted"
    const all = /\b(?:all|every)\s+(?:[\p{L}-]+\s+){0,2}(?:(?:was|were|is|are|done)\s+)?$/iu.exec(
      text.slice(Math.max(0, start - 40), start),
    );
    if (all !== null) start -= all[0].length;
  }
  return [start, end];
}

/** Where the thing ends that a lone word stands before: "new | electric range". */
function endOfThing(text: string, from: number, to: number): number {
  const behind = /^[ ][^.,;:!?()\n/&]*/.exec(text.slice(to, to + MOST_BEHIND))?.[0] ?? '';
  const tokens = tokenize(behind);
  const units = unitsOf(tokens, 0, tokens.length);
  let end = 0;
  for (const unit of units) {
    if (has(unit, 'thing')) end = unit.to;
    else if (
      end > 0 ||
      !(
        has(unit, 'class') ||
        /^(?:rating|year)$/.test(unit.number?.kind ?? '') ||
        (unit.senses.length === 0 && ADJECTIVE.test(unit.word))
      )
    )
      break;
  }
  // A word that follows its thing says nothing of the next one: "with drywall new and roof".
  const says = tokenize(text.slice(from, to));
  const own = unitsOf(says, 0, says.length);
  return end > 0 && !own.some((unit) => has(unit, 'thing')) ? to + end : to;
}

const ADJECTIVE = /^(?!and$|or$|with$|in$|on$|to$|for$|by$|of$|the$|a$|is$|are$|was$|has$)[a-z-]{3,}$/;

/** Parts of a claim about age or a deed: the words that make it, what stands before them, and what behind. */
export interface Parts {
  /** The word itself, without what strengthens it. */
  readonly word: string;
  readonly before: string;
  readonly behind: string;
  /** It stands before its thing. */
  readonly attributive: boolean;
}

const LEADS =
  /(?:\b(?:all|brand|completely|totally|entirely|fully|just|newly|freshly|recently|practically|professionally|tastefully|beautifully|gorgeously|extensively)[\s-]*)+$/i;

/** An entry that holds them: "fully rewired". */
const OWN_LEADS =
  /^(?:(?:all|brand|completely|totally|entirely|fully|just|newly|freshly|recently|practically|professionally)[\s-]+)+(?=\p{L})/iu;

export function partsAt({ says }: Stretch, at: readonly [number, number]): Parts {
  const lead = LEADS.exec(says.slice(0, at[0]));
  const before = says.slice(0, at[0] - (lead?.[0].length ?? 0)).trimEnd();
  const behind = says.slice(at[1]).trim();
  const word = says.slice(at[0], at[1]).replace(OWN_LEADS, '');
  return {
    word,
    before,
    behind,
    attributive:
      /^(?:the|a|an|its)?$/i.test(before) &&
      /^[\p{L}\d]/u.test(behind) &&
      !/^(?:in|for|as|by|and|to|from|with|last|this|since|from|throughout|top)\b/i.test(behind),
  };
}

/** Where the word about age or a deed stands. */
export function newnessIn({ units }: Stretch): readonly [number, number] | undefined {
  const first = units.find((unit) => has(unit, 'newness'));
  if (first === undefined) return undefined;
  return [first.from, first.to];
}
