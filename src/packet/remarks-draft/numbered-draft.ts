/** A draft with a number behind each phrase, and what each number stands for: how the owner looks it over. */
import { plainText } from '../rich.js';
import type { DraftPhrase, RemarksDraft } from './draft-remarks.js';

export interface NumberedDraft {
  /** "House built in 1948 [1] on a 0.21-acre lot [2]." */
  readonly text: string;
  /** "[1] When it was built. Documented: record (county-card)", in the order of the numbers. */
  readonly traces: readonly string[];
}

/** The same fact has one number, however often it is told. */
export function numberedDraft({ text, phrases }: Pick<RemarksDraft, 'text' | 'phrases'>): NumberedDraft {
  const numbers = new Map<string, number>();
  const traces: string[] = [];
  let numbered = '';
  let at = 0;
  for (const phrase of phrases) {
    const key = JSON.stringify(phrase.path);
    let number = numbers.get(key);
    if (number === undefined) {
      number = numbers.size + 1;
      numbers.set(key, number);
      traces.push(traceOf(number, phrase));
    }
    numbered += `${text.slice(at, phrase.to)} [${number}]`;
    at = phrase.to;
  }
  return { text: numbered + text.slice(at), traces };
}

function traceOf(number: number, { fact, mark, evidence }: DraftPhrase): string {
  const detail = plainText(mark.detail);
  const papers = evidence.length === 0 ? '' : ` (${evidence.join(', ')})`;
  return `[${number}] ${fact}. ${mark.word}${detail === '' ? '' : `: ${detail}`}${papers}`;
}
