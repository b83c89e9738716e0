import { capital, listWords } from '../tally/area-words.js';
import type { Rich, Run } from './packet.js';

/** Plain words. */
export const say = (text: string): Run => ({ text });
export const strong = (text: string): Run => ({ text, manner: 'strong' });
export const soft = (text: string): Run => ({ text, manner: 'soft' });
export const link = (text: string, to: string): Run => ({ text, to });
/** Letter for letter as it was written. */
export const verbatim = (text: string): Run => ({ text, verbatim: true });

/** What a reader sees of it. */
export const plainText = (rich: Rich): string => rich.map((run) => run.text).join('');

/** Runs and strings become one text; empty and absent ones are left out. */
export function rich(...parts: readonly (Run | string | undefined | false)[]): Rich {
  return parts.flatMap((part) =>
    part === undefined || part === false || part === '' ? [] : [typeof part === 'string' ? say(part) : part],
  );
}

/** "a", "a and b", "a, b and c". */
export const inWords = listWords;

/** The same of runs, each with its manner and where it leads. */
export const runsInWords = (runs: readonly Run[]): Run[] =>
  runs.flatMap((run, index) => {
    const between = index === runs.length - 1 ? ' and ' : ', ';
    return index === 0 ? [run] : [say(between), run];
  });

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** Small numbers in words, as in running text. */
const numberWord = (n: number): string => NUMBERS[n] ?? String(n);

/** "one bedroom", "three bedrooms". */
export const counted = (n: number, one: string, many = `${one}s`): string =>
  `${numberWord(n)} ${n === 1 ? one : many}`;

export const upperFirst = capital;

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Ends a sentence that a writer may or may not have ended. */
export const fullStop = (text: string): string =>
  /[.!?…]["”’)]?$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
