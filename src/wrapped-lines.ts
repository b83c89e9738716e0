/** Lines of a report, as wide as the terminal allows. */
import { columnsOf } from './diagnostics/columns.js';
import { visible } from './diagnostics/report.js';

/** Columns of a line at most: more are hard to read, whatever the terminal has. */
const WIDEST = 96;
/** Fewer hold no label and its words. */
const NARROWEST = 40;

/** Columns of a line for a terminal of so many: what it would break itself would part marks from their words. */
export const lineWidth = (columns: number | undefined): number =>
  Math.min(WIDEST, Math.max(NARROWEST, columns ?? WIDEST));

/** A command is never broken, so that it can be copied: where it does not fit behind its words it has a line. */
export function commandLines(words: string, command: string, width: number): string[] {
  const line = `${words}  ${command}`;
  return columnsOf(line) <= width ? [line] : [...wrapped(words, '', width), `  ${command}`];
}

/** Lines of at most so many columns; `hang` goes before those after the first, behind the indent. */
export function wrapped(text: string, indent: string, width: number, hang = ''): string[] {
  const lines: string[] = [];
  let line = '';
  const room = (): number => width - indent.length - (lines.length === 0 ? 0 : hang.length);
  const [head = '', rest] = hang === '' ? ['', text] : [text.slice(0, hang.length), text.slice(hang.length)];
  for (const word of visible(rest).split(' ')) {
    if (word === '') continue;
    const longer = line === '' ? word : `${line} ${word}`;
    const used = columnsOf(longer) + (lines.length === 0 ? head.length : 0);
    if (line !== '' && used > room()) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  return lines.map((one, index) => `${indent}${index === 0 ? head : hang}${one}`);
}
