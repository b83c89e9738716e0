/** One phrase on its way to findings: what it says, which facts it means, and what was told of it so far. */
import type { Item } from '../items/items.js';
import type { Judgement, Known } from '../items/known.js';
import type { PlaceMeant } from '../items/places.js';
import type { Attribute, Phrase } from '../sentence/phrase.js';
import { untilFirst } from '../words/cut-at.js';
import type { NumberSense } from '../words/numbers.js';

/** A judgement with the attributes that it is about; none: about the thing itself. */
export interface Told {
  readonly judgement: Judgement;
  readonly attributes: readonly Attribute[];
}

/** The sentence around a phrase. */
export interface SentenceWords {
  readonly text: string;
  readonly phrases: readonly Phrase[];
  /** The last thing of the sentence before. */
  readonly spoken?: string;
  /** The room or structure that was spoken of last, and what it means here. */
  context: { readonly thing: string; readonly place: PlaceMeant; readonly to?: number } | undefined;
}

export interface ClaimCase {
  readonly known: Known;
  readonly phrase: Phrase;
  readonly sentence: SentenceWords;
  readonly attributes: readonly Attribute[];
  readonly places: readonly PlaceMeant[];
  /** The facts of the thing, where the phrase says it is. */
  readonly found: readonly Item[];
  /** Of these, those that the kinds of the phrase leave. */
  items: readonly Item[];
  readonly told: Told[];
}

export type AttributeOf<K extends Attribute['kind']> = Extract<Attribute, { kind: K }>;

export const attributesOfKind = <K extends Attribute['kind']>(
  { attributes }: Pick<ClaimCase, 'attributes'>,
  kind: K,
): AttributeOf<K>[] => attributes.filter((one): one is AttributeOf<K> => one.kind === kind);

export function tell(one: ClaimCase, judgement: Judgement | undefined, ...about: readonly Attribute[]): void {
  if (judgement !== undefined) one.told.push({ judgement, attributes: about });
}

export type Moment = Extract<NumberSense, { kind: 'year' | 'age' | 'within' | 'ago' }>;

export const isDate = (number: NumberSense): number is Moment =>
  number.kind === 'year' || number.kind === 'age' || number.kind === 'within' || number.kind === 'ago';

/** The words behind a phrase, up to the next phrase or the end of its clause. */
export function wordsBehind({ phrase, sentence }: ClaimCase, most = 60): string {
  const next = nextPhrase(sentence, phrase.to, true);
  const to = Math.min(phrase.to + most, next?.from ?? sentence.text.length);
  return untilFirst(sentence.text.slice(phrase.to, to), /[.;!\n]/);
}

/** The first phrase that begins behind `to`, by halves: a list may be long. */
export function nextPhrase({ phrases }: SentenceWords, to: number, skipPlaces = false): Phrase | undefined {
  let [low, high] = [0, phrases.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const phrase = phrases[middle];
    if (phrase !== undefined && phrase.from > to) high = middle;
    else low = middle + 1;
  }
  while (skipPlaces && phrases[low]?.place === true) low++;
  return phrases[low];
}
