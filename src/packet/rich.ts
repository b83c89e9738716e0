import { capital, listWords } from '../tally/area-words.js';
import type { Rich, Run } from './packet.js';

/** Plain words. */
export const say = (text: string): Run => ({ text });
export const strong = (text: string): Run => ({ text, manner: 'strong' });
export const soft = (text: string): Run => ({ text, manner: 'soft' });
export const link = (text: string, to: string): Run => ({ text, to });

/** Runs and strings become one text; empty and absent ones are left out. */
export function rich(...parts: readonly (Run | string | undefined | false)[]): Rich {
  return parts.flatMap((part) =>
    part === undefined || part === false || part === '' ? [] : [typeof part === 'string' ? say(part) : part],
  );
}

/** "a", "a and b", "a, b and c". */
export const inWords = listWords;

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
