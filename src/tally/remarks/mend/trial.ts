/** Words put into a draft on trial: their sentence is read again with them, and with what was mended behind them. */
import type { House } from '../../../facts/house.js';
import { checkRemarks } from '../check-remarks.js';
import type { Finding, Known } from '../items/known.js';
import { stretchOf } from '../words/stretch-of.js';
import { sentencesOf, tokenize } from '../words/token.js';
import { asStands } from './as-stands.js';
import type { Stretch } from './stretch.js';

export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly put: string;
}

export const isWrong = ({ verdict }: Finding): boolean => verdict === 'contradicted' || verdict === 'wider';

const MOST_TRIED = 5;
/** Characters around a stretch: a sentence without an end is not read whole again for each of its claims. */
const MOST_AROUND = 500;

export class Trial {
  readonly #text: string;
  readonly #house: House;
  readonly #tally: Known['tally'];
  readonly #sentences: readonly Pick<Edit, 'from' | 'to'>[];
  /** In the order of the text; the last ones were made first. */
  readonly #edits: Edit[] = [];

  constructor(text: string, house: House, tally: Known['tally']) {
    this.#text = text;
    this.#house = house;
    this.#tally = tally;
    const tokens = tokenize(text);
    this.#sentences = sentencesOf(text, tokens).map(([first, end]) => stretchOf(tokens.slice(first, end)));
  }

  /**
   * The first of the words that goes into the sentence, is not marked again and brings no other mark; it is put in.
   * `left`: how many claims of a part of the text are still to be mended. `most`: characters more than the stretch has.
   */
  take(
    stretch: Stretch,
    words: readonly string[],
    left: (from: number, to: number) => number,
    most: number,
  ): Edit | undefined {
    const tried = [...new Set(words)].slice(0, MOST_TRIED);
    if (tried.length === 0) return undefined;
    const [start, end] = this.#around(stretch.from, stretch.to);
    const before = left(start, end);
    for (const word of tried) {
      const edit = asStands(stretch, word, most);
      if (edit === undefined || edit.put === this.#text.slice(edit.from, edit.to)) continue;
      const read = this.#read(start, end, edit);
      const from = edit.from - start;
      const wrong = checkRemarks(read, this.#house, this.#tally).filter(isWrong);
      const touches = wrong.some((one) => one.from < from + edit.put.length && from < one.to);
      if (touches || wrong.length >= before) continue;
      this.#edits.unshift(edit);
      return edit;
    }
    return undefined;
  }

  /** A part of the draft with the words in it; nothing before them was mended yet. */
  #read(start: number, end: number, edit: Edit): string {
    let words = '';
    let at = start;
    for (const { from, to, put } of [edit, ...this.#edits]) {
      if (to > end) break;
      words += this.#text.slice(at, from) + put;
      at = to;
    }
    return words + this.#text.slice(at, end);
  }

  /** The sentence of a stretch, with the one before where "it" stands for what that one spoke of. */
  #around(from: number, to: number): [number, number] {
    let [before, start, end] = [0, 0, 0];
    for (const sentence of this.#sentences) {
      if (sentence.from <= from) [before, start] = [start, sentence.from];
      end = sentence.to;
      if (end >= to) break;
    }
    const begin = SPOKEN_OF.test(this.#text.slice(start, start + 12)) ? before : start;
    return [
      from - begin > MOST_AROUND ? this.#blankBehind(from - MOST_AROUND) : begin,
      end - to > MOST_AROUND ? this.#blankBehind(to + MOST_AROUND) : end,
    ];
  }

  #blankBehind(at: number): number {
    const blank = this.#text.indexOf(' ', at);
    return blank < 0 || blank > at + 40 ? at : blank;
  }
}

/** Begins a sentence about what the one before spoke of. */
const SPOKEN_OF = /^(?:it|they|both|these|those|all|each|this|that|the whole)\b/i;
