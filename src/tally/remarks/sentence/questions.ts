/**
 * "Q: And baths? A: Two full." A question with its answer is read as the statement that the two make: the words of the
 * text in another order, with glue between them. Questions that nobody answers are left to the ordinary reading.
 */

/** Words of the text, or glue. */
interface Piece {
  readonly words: string;
  /** Where they stand in the text; undefined for glue. */
  readonly from: number | undefined;
}

export interface Asked {
  /** All of question and answer. */
  readonly from: number;
  readonly to: number;
  readonly pieces: readonly Piece[];
}

/** A question of one line, and what follows it up to a stop; both are bounded, for the sake of speed. */
const PAIR =
  /(Q(?:uestion)?\s?[:.)]\s*)?([^.!?\n;]{2,120})\?\s*(A(?:nswer)?\s?[:.)]\s*)?([^?\n]{1,200}?)(?=[.!](?:\s|$)|\n|$|\s*\bQ\s?[:.)]|;)/gi;
const YES_OR_NO =
  /^(yes|yep|yup|yeah|sure|absolutely|of course|correct|no|nope|none|never|nah|not|nothing|it (does|is|has)|they (do|are)|n\/a)\b/i;
const HOW_MANY = /^(?:and |but |so )?(?:how many|number of)\s+/i;
const HOW_OLD =
  /^(?:and |but |so )?(?:how old (?:is|are|was|were)|(?:what is |what's )?(?:the )?age of|what year (?:is|was|were|are)|when (?:was|were|did)|how new (?:is|are))\s+/i;
const ASKS_TRUTH = /^(?:and |but |so )?(any|is|are|was|were|does|do|did|has|have|had|can|will)\b/i;
const WHAT_STAYS =
  /^(?:and |but |so )?(?:what|which (?:appliances|items|things))(?:'s| is| are| does| do)?\s+(stays?|conveys?|included|goes|leaving|excluded|not included)\b/i;
const WHO_DID = /^(?:and |but |so )?who\s+(?:\w+\s+)/i;
const WHAT_ELSE = /^(?:and |but |so )?(?:what|which|where|why|how|who|when)\b/i;
const AND = /^(?:and|but|so)\s+(?:the |its )?/i;

/** All answered questions of a text, in its order. */
export function askedIn(text: string): Asked[] {
  if (!text.includes('?')) return [];
  const found: Asked[] = [];
  for (const match of text.matchAll(PAIR)) {
    const [whole, mark = '', asked = '', answerMark, said = ''] = match;
    const start = match.index + mark.length;
    const answerAt = match.index + whole.length - said.length;
    const lead = asked.length - asked.trimStart().length;
    const question = asked.trim();
    const read = statement(question, start + lead, said, answerAt, answerMark !== undefined);
    if (read !== undefined) found.push({ from: match.index, to: match.index + whole.length, ...read });
  }
  return found;
}

type Statement = Pick<Asked, 'pieces'>;

function statement(
  question: string,
  at: number,
  said: string,
  answerAt: number,
  marked: boolean,
): Statement | undefined {
  const behind = (opener: RegExp): Piece => {
    const words = question.replace(opener, '');
    return { words, from: at + question.length - words.length };
  };
  const answer: Piece = { words: said, from: answerAt };
  const tell = (...pieces: readonly Piece[]): Statement => ({ pieces });
  // A yes or a no is told by questions-answered.ts.
  if (YES_OR_NO.test(said)) return undefined;
  if (HOW_MANY.test(question))
    return COUNT.test(said) ? tell(...countOf(said, answerAt, behind(HOW_MANY))) : undefined;
  if (HOW_OLD.test(question)) return tell(behind(HOW_OLD), glue(' '), ...ageOf(said, answerAt));
  const whatStays = WHAT_STAYS.exec(question);
  if (whatStays !== null) return tell(answer, glue(` ${whatStays[1]}`));
  if (ASKS_TRUTH.test(question)) return undefined;
  if (WHO_DID.test(question)) return marked ? tell(behind(WHO_DID), glue(' by '), answer) : undefined;
  if (!marked) return undefined;
  if (WHAT_ELSE.test(question)) return tell(answer);
  // "Septic or sewer?" leaves it to the answer.
  if (/\bor\b/i.test(question)) return tell(answer);
  const thing = behind(AND);
  return (COUNT.test(said) && /s$/i.test(thing.words)) || UNITS.test(said)
    ? tell(...countOf(said, answerAt, thing))
    : tell(thing, glue(': '), answer);
}

const UNITS = /^(?:\d|one|two|three|four|five|six) (?:units?|systems?|zones?|of them)\b/i;
const COUNT =
  /^(?:just |only )?(?:\d+(?:\.\d+)?|one|two|three|four|five|six|seven|eight|nine|ten)(?:[\s-]+(?:and[\s-]+a[\s-]+half|full|half|1\/2))?\b/i;

const YEARS = /^\W*(?:[a-z]+\s+){0,2}[\w-]+\s+(?:years?|yrs?|months?)\b(?!\s+(?:old|ago|young))/i;

/** "Seven years" is an age: "seven years old". */
function ageOf(said: string, at: number): readonly Piece[] {
  const length = YEARS.exec(said)?.[0].length;
  if (length === undefined) return [{ words: said, from: at }];
  return [
    { words: said.slice(0, length), from: at },
    glue(' old'),
    { words: said.slice(length), from: at + length },
  ];
}

/** "Three, two down and one up": the count, the thing, and what else is said. */
function countOf(said: string, at: number, thing: Piece): readonly Piece[] {
  const length = said.length - said.replace(COUNT, '').length;
  // "HVAC? Two units, both 2021": the units are the things that were asked for.
  const skip = UNITS.exec(said)?.[0].length;
  const rest = skip === undefined ? [] : [{ words: said.slice(skip), from: at + skip }];
  return [{ words: said.slice(0, length), from: at }, glue(' '), thing, ...rest];
}

const glue = (words: string): Piece => ({ words, from: undefined });

/** The statement as a text, and where a stretch of it stands in the draft. */
export function statementOf({ pieces, from, to }: Asked): {
  readonly text: string;
  readonly spanOf: (start: number, end: number) => readonly [number, number];
} {
  let text = '';
  const placed = pieces.map((piece) => {
    const own = text.length;
    text += piece.words;
    return { ...piece, own };
  });
  const spanOf = (start: number, end: number): readonly [number, number] => {
    let [low, high] = [Number.POSITIVE_INFINITY, -1];
    for (const { words, from: stood, own } of placed) {
      const [first, last] = [Math.max(start, own), Math.min(end, own + words.length)];
      if (stood === undefined || first >= last) continue;
      low = Math.min(low, stood + first - own);
      high = Math.max(high, stood + last - own);
    }
    return high < 0 ? [from, to] : [low, high];
  };
  return { text, spanOf };
}
