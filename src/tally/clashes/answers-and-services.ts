/** “Septic tank.”, where the house is said to be on the public sewer; the same of water, and of dues. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { type ClashSources, clashOf } from './clash.js';
import { ASSOCIATION } from './sale-words.js';

type Kind = 'public' | 'own';

interface Service {
  readonly word: 'sewer' | 'water';
  /** Questions that ask which of the two it is. */
  readonly asks: RegExp;
  /** What a value says, or an answer at its beginning. */
  readonly kinds: Readonly<Record<Kind, RegExp>>;
  /** Words of each kind, anywhere. */
  readonly loose: readonly RegExp[];
  readonly names: Readonly<Record<Kind, string>>;
}

/** “It is on a …”, “we have our own …”. */
const BEGIN = `^(?:(?:it|the house|this house|we)(?:[’']s| is| are| has| have)? )?(?:connected to |hooked up to |served by |on |from )?(?:(?:a|an|the|its|our|own|private|shared|drilled|dug|town|city|municipal) )*`;
const begin = (words: string): RegExp => new RegExp(`${BEGIN}(?:${words})`, 'i');

const SERVICES: readonly Service[] = [
  {
    word: 'sewer',
    asks: /^(?=.*\b(sewer|septic)\b)(?=.*(\bor\b|\bon (a |the )?(public |city |town )?(sewer|septic)|connected|what kind|^(sewer|septic)\b|is there a septic|have a septic|where does .*go))/i,
    kinds: {
      public: begin(String.raw`(?:public|municipal|city|town)\b|sewer(?! (?:line|pipe|lateral))\b`),
      own: begin(String.raw`septic\b|cesspool\b`),
    },
    loose: [/\b(septic|cesspool)\b/i, /\b(sewer|public|municipal|city|town)\b/i],
    names: { public: 'the public sewer', own: 'a septic tank' },
  },
  {
    word: 'water',
    asks: /^(?=.*\bwater\b)(?=.*(\bwell\b|\b(public|city|town|municipal)\b|\bcome from\b|\bsource\b|\bsupply\b))(?!.*\b(cellar|basement|heater|pressure|test(ed)?|bill|cost)\b)/i,
    kinds: {
      public: begin(String.raw`(?:public|municipal|city|town)\b`),
      own: begin(String.raw`well\b(?! (?:below|above|under|within))|spring\b`),
    },
    loose: [/\b(well|spring)\b/i, /\b(public|municipal|city|town)\b/i],
    names: { public: 'public water', own: 'a well of its own' },
  },
];

/** Told of another time. */
const ELSE =
  /\b(until|before|formerly|once|was|were|used to|earlier|old|abandoned|removed|unused|since|both)\b/i;

export function answersAndServices({ house }: ClashSources): Diagnostic[] {
  return house.answers.flatMap(({ ask, answer }, index): Diagnostic[] =>
    SERVICES.flatMap((service): Diagnostic[] => {
      const { word, asks, names } = service;
      const stated = house.house[word]?.value;
      const [sentence = ''] = (answer.value ?? '').split(/(?<=[.;])\s/);
      if (stated === undefined || !asks.test(ask.trim()) || ELSE.test(sentence) || ELSE.test(stated))
        return [];
      const [said, known] = [kindOf(sentence, service), kindOf(stated, service)];
      if (said === undefined || known === undefined || said === known) return [];
      return [
        clashOf({
          severity: 'error',
          path: ['answers', index, 'answer'],
          beside: ['house', word],
          message: `“${ask}” is answered with “${answer.value}”, and  ${word}:  is “${stated}”`,
          hints: [
            `if it is ${names[known]}, correct the answer`,
            `if the answer is right, correct  ${word}:  under house:`,
          ],
        }),
      ];
    }),
  );
}

/** Words that name both kinds, wherever they stand, are of neither for sure. */
function kindOf(words: string, { kinds, loose }: Service): Kind | undefined {
  if (loose.every((pattern) => pattern.test(words))) return undefined;
  return kinds.own.test(words.trim()) ? 'own' : kinds.public.test(words.trim()) ? 'public' : undefined;
}

const ASKS_DUES = /^(are|is) there .*\b(dues|association|hoa)\b/i;
/** Asks of some dues only, or of something else of the association’s. */
const SOME_DUES =
  /\b(unpaid|overdue|owed|behind|arrears|late|special|extra|pending|planned|increases?|lawsuits?|violations?|rules?|other dues)\b/i;

/** “None” to the question of dues, beside a list of dues. */
export function answersAndDues({ house }: ClashSources): Diagnostic[] {
  return house.answers.flatMap(({ ask, answer }, index): Diagnostic[] => {
    // Who says that there are none of an association’s may well pay a district.
    const at = house.dues.findIndex(({ to }) => !ASSOCIATION.test(ask) || ASSOCIATION.test(to));
    const due = house.dues[at];
    if (due === undefined) return [];
    const none =
      ASKS_DUES.test(ask.trim()) && !SOME_DUES.test(ask) && /^\W*(no|none)\W*$/i.test(answer.value ?? '');
    if (!none) return [];
    return [
      clashOf({
        severity: 'error',
        path: ['answers', index, 'answer'],
        beside: ['dues', at, 'to'],
        message: `“${ask}” is answered with “${answer.value}”, and dues to ${due.to} are listed`,
        hints: ['take the answer out, or correct it', 'if none are paid, take out  dues:'],
      }),
    ];
  });
}
