/** How closely and when a rule was read, in words that are printed beside it. */
import { isoDate } from './date-words.js';
import { fullStop, upperFirst } from './rich.js';

/** As part of a sentence. */
export const HOW_READ = {
  publisher: 'read in the publisher’s text',
  quoted: 'read where others quote it',
  paraphrased: 'read where others describe it',
  'from memory': 'from memory, read nowhere: check it before you rely on it',
} as const;

/** How it was read, behind the words above: that it is from memory is said already. */
export const readingWords = (how: string): string => {
  const rest = how.replace(/^From memory[.,;:]\s*/u, '').trim();
  return rest.charAt(0).toUpperCase() + rest.slice(1);
};

interface Reading {
  readonly read: keyof typeof HOW_READ;
  /** YYYY-MM-DD. */
  readonly on: string;
}

/** "last read 25 November 2026". What is from memory was read on no day, and has the one on which it was written down. */
export const lastReadWords = ({ read, on }: Reading): string =>
  `${read === 'from memory' ? 'written down' : 'last read'} ${isoDate(on)}`;

/** All three in sentences of their own: how closely, how, and when. */
export const readingSentences = ({ read, how, on }: Reading & { readonly how: string }): string =>
  [HOW_READ[read], readingWords(how), lastReadWords({ read, on })]
    .filter((words) => words !== '')
    .map((words) => fullStop(upperFirst(words)))
    .join(' ');
