/** What a sentence names, with what it says of each: the words of the reading. */
import type { ClassSense } from '../words/lexicon.js';
import type { NumberSense } from '../words/numbers.js';
import type { Unit } from '../words/units.js';

export type Attribute = {
  /** Of the unit that it stands in. */
  readonly from: number;
  readonly to: number;
  /** Stands before its thing, with nothing but other attributes between. */
  readonly before: boolean;
  /** Taken over from another member of a list. */
  readonly shared: boolean;
  /** Of a likeness: "like new", "new-looking". */
  readonly unlike: boolean;
  readonly negated: boolean;
} & (
  | { readonly kind: 'newness'; readonly id: string; readonly word: string }
  | { readonly kind: 'class'; readonly senses: readonly ClassSense[]; readonly word: string }
  | { readonly kind: 'all' }
  | { readonly kind: 'both' }
  | { readonly kind: 'some' }
  | { readonly kind: 'permit' }
  | { readonly kind: 'unpermitted' }
  | { readonly kind: 'inspected' }
  | { readonly kind: 'number'; readonly number: NumberSense; readonly hedge: string | undefined }
  | { readonly kind: 'who'; readonly id: string; readonly trade: string | undefined }
  | { readonly kind: 'convey'; readonly id: string }
  | { readonly kind: 'condition'; readonly id: string }
  | { readonly kind: 'place'; readonly id: string }
  | { readonly kind: 'word'; readonly word: string }
);

export interface Phrase {
  readonly thing: string;
  readonly from: number;
  readonly to: number;
  readonly aside: Unit['aside'];
  readonly attributes: readonly Attribute[];
  /** Things that name where: "in the kitchen", "kitchen cabinets". */
  readonly rooms: readonly {
    readonly thing: string;
    readonly from: number;
    readonly to: number;
    readonly ordinal?: number;
    readonly qualifiers?: readonly string[];
    /** "upstairs bedroom" */
    readonly level?: string;
  }[];
  /** "no carpet", "without a garage". */
  readonly negated: boolean;
  /** Its thing is only meant by a kind: "slates", "granite". */
  readonly bare: boolean;
  /** All that a bare word may mean. */
  readonly bareSenses: readonly ClassSense[];
  /** It says where another thing is: "in the kitchen", and what a list goes on with. */
  readonly place: boolean;
  /** Unit index of the head. */
  readonly at: number;
}

export interface Head {
  readonly at: number;
  readonly thing: string;
  start: number;
  end: number;
  readonly adjuncts: number[];
  /** Where it is: prepositional. */
  readonly place: boolean;
}

export interface Draft {
  phrase: { -readonly [K in keyof Phrase]: Phrase[K] };
  readonly head: Head;
}

export interface SentencePhrases {
  readonly phrases: readonly Phrase[];
  /** What is said before a colon or at the beginning, of nothing named there. */
  readonly loose: readonly Attribute[];
}
