import type { Place } from '../diagnostics/place.js';

/** Characters of a text from `start` up to, but without, `end`. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Answers in which line and column a span stands. */
export function lineIndex(text: string, file: string): (span: Span) => Place {
  const starts = [0];
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) starts.push(i + 1);
  // One string for all spots of a line, however long it is.
  let last = { begin: -1, source: '' };
  return (span) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? 0) <= span.start) low = middle;
      else high = middle - 1;
    }
    const begin = starts[low] ?? 0;
    const next = starts[low + 1] ?? text.length + 1;
    if (last.begin !== begin) last = { begin, source: text.slice(begin, next - 1).replace(/\r$/, '') };
    const { source } = last;
    const column = span.start - begin + 1;
    return {
      file,
      line: low + 1,
      column,
      length: Math.max(1, Math.min(span.end - span.start, source.length - column + 1)),
      source,
    };
  };
}
