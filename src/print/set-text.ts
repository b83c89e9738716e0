/**
 * Text into lines: chunks for the line breaker, and lines of spans from its answer.
 *
 * Takes rich text, a style and a measure; gives lines whose words are placed. Starts at `setText`.
 */
import type { Rich } from '../packet/packet.js';
import { bound } from './bindings.js';
import type { Span } from './box.js';
import type { Letters } from './letters.js';
import { normaliseText } from './letters.js';
import type { Chunk, LineBreaker } from './lines.js';
import type { TypeStyle } from './type-styles.js';
import { styleForManner } from './type-styles.js';

/** One line, not yet placed on a page. */
export interface SetLine {
  readonly widthPt: number;
  readonly text: string;
  readonly spans: readonly Span[];
}

/** What setting needs: letters, a breaker, and someone to tell about characters that no face has. */
export interface Typesetter {
  readonly letters: Letters;
  readonly breakLines: LineBreaker;
  /** Whether a link's target is on paper; a link to what is only on screen is plain text here. */
  readonly hasTarget: (id: string) => boolean;
  readonly reportMissing: (character: string) => void;
}

interface Fragment {
  readonly text: string;
  readonly style: TypeStyle;
  readonly to: string | undefined;
  readonly widthPt: number;
  /** A blank inside a chunk, that ends a line only where the chunk is wider than the measure. */
  readonly bound?: boolean;
}

interface TextChunk extends Chunk {
  readonly fragments: readonly Fragment[];
}

/** A line may end here inside a word: after a hyphen, dash or slash between words, never in 2026-06-20 or OH-EL-14. */
const INNER_BREAKS =
  /(?<=\p{Ll}{2}-)(?=\p{Ll}{2})|(?<=[\p{L}\p{N}][–—])(?=\p{L})|(?<=\p{L}{2}\/)(?=\p{L}{2})/u;

/** Where an overlong word is rather parted, if it must be. */
const SOFT_SPOT = /[-–—/\\._@?&=,:;]/u;

const PLAIN_SPELLING: readonly (readonly [RegExp, string])[] = [
  [/\u00A0/gu, ' '],
  [/\u2011/gu, '-'],
];

/** The width of a text on one line, in points. Blanks are not stretched. */
export function widthOf(setter: Typesetter, style: TypeStyle, text: string): number {
  const blank = setter.letters.blank(style.face);
  let units = 0;
  text.split(' ').forEach((word, i) => {
    if (i > 0) units += blank;
    if (word === '') return;
    const shaped = setter.letters.shape(style.face, style.figures, word);
    for (const character of shaped.missing) setter.reportMissing(character);
    units += shaped.width;
  });
  return (units * style.sizePt) / 1000;
}

function fragmentOf(setter: Typesetter, text: string, style: TypeStyle, to: string | undefined): Fragment {
  let plain = text;
  for (const [from, into] of PLAIN_SPELLING) plain = plain.replace(from, into);
  return { text: plain, style, to, widthPt: widthOf(setter, style, plain) };
}

/** Cuts rich text at blanks and inner break points. */
function chunksOf(setter: Typesetter, rich: Rich, base: TypeStyle): TextChunk[] {
  const chunks: TextChunk[] = [];
  let open: Fragment[] = [];
  /** The word so far, and a blank after it that waits for the next word to say whether a line may end there. */
  let word = '';
  let blank: Fragment | undefined;
  const close = (gapPt: number): void => {
    if (open.length === 0) return;
    chunks.push(chunkOf(open, gapPt));
    open = [];
  };
  const words = wordsAhead(rich);
  let wordsBegun = 0;
  const begin = (): void => {
    const after = words[wordsBegun++] ?? '';
    if (blank !== undefined && bound(word, after)) open.push({ ...blank, bound: true });
    else if (blank !== undefined) close(blank.widthPt);
    word = after;
    blank = undefined;
  };
  let between = true;
  for (const run of rich) {
    const style = styleForManner(base, run.manner);
    const to = run.to !== undefined && setter.hasTarget(run.to) ? run.to : undefined;
    for (const token of normaliseText(run.text).split(/( +)/u)) {
      if (token === '') continue;
      if (token.startsWith(' ')) {
        // Blanks at a text's beginning open no chunk, and several in a row count once.
        if (open.length > 0) blank ??= fragmentOf(setter, ' ', style, to);
        between = true;
        continue;
      }
      if (between) begin();
      between = false;
      token.split(INNER_BREAKS).forEach((piece, i) => {
        if (i > 0) close(0);
        open.push(fragmentOf(setter, piece, style, to));
      });
    }
  }
  // A blank at the end counts where a longer text goes on behind it.
  close(blank?.widthPt ?? 0);
  return chunks;
}

function chunkOf(fragments: readonly Fragment[], gapPt: number): TextChunk {
  return { fragments, gapPt, widthPt: fragments.reduce((sum, part) => sum + part.widthPt, 0) };
}

/** The words of a rich text whole, also where their manner changes inside. */
function wordsAhead(rich: Rich): string[] {
  return normaliseText(rich.map((run) => run.text).join(''))
    .split(/ +/u)
    .filter((word) => word !== '');
}

/** Chunks that fit the measure: bound blanks of a chunk that is too wide give way before its words do. */
function fittingChunks(setter: Typesetter, chunk: TextChunk, measurePt: number): TextChunk[] {
  if (chunk.widthPt <= measurePt) return [chunk];
  const parts: TextChunk[] = [];
  let open: Fragment[] = [];
  for (const fragment of chunk.fragments) {
    if (fragment.bound === true) {
      parts.push(chunkOf(open, fragment.widthPt));
      open = [];
    } else open.push(fragment);
  }
  parts.push(chunkOf(open, chunk.gapPt));
  return parts.flatMap((part) => (part.widthPt > measurePt ? partChunk(setter, part, measurePt) : [part]));
}

/** Parts a chunk that is wider than the measure, without adding a hyphen that was never written. */
function partChunk(setter: Typesetter, chunk: TextChunk, measurePt: number): TextChunk[] {
  const parts: TextChunk[] = [];
  let open: Fragment[] = [];
  let width = 0;
  const close = (gapPt: number): void => {
    if (open.length > 0) parts.push({ fragments: open, gapPt, widthPt: width });
    open = [];
    width = 0;
  };
  for (const fragment of chunk.fragments) {
    let rest = [...fragment.text];
    while (rest.length > 0) {
      const fit = fittingLength(setter, rest, fragment.style, measurePt - width);
      if (fit === 0 && width > 0) {
        close(0);
        continue;
      }
      const take = Math.max(1, fit);
      const piece = fragmentOf(setter, rest.slice(0, take).join(''), fragment.style, fragment.to);
      open.push(piece);
      width += piece.widthPt;
      rest = rest.slice(take);
      if (rest.length > 0) close(0);
    }
  }
  close(chunk.gapPt);
  return parts;
}

/** How many characters go into a width, rather ending at a soft spot in the last third. */
function fittingLength(
  setter: Typesetter,
  characters: readonly string[],
  style: TypeStyle,
  widthPt: number,
): number {
  let count = 0;
  let used = 0;
  for (const character of characters) {
    used += widthOf(setter, style, character);
    if (used > widthPt) break;
    count++;
  }
  if (count === characters.length) return count;
  for (let at = count; at > (count * 2) / 3; at--) {
    if (SOFT_SPOT.test(characters[at - 1] ?? '')) return at;
  }
  return count;
}

/** Joins what stands together on a line into as few spans as manners allow. */
function lineOf(setter: Typesetter, chunks: readonly TextChunk[], last: boolean): SetLine {
  const spans: Span[] = [];
  let x = 0;
  chunks.forEach((chunk, i) => {
    const endsLine = i === chunks.length - 1;
    chunk.fragments.forEach((fragment, j) => {
      const endsChunk = j === chunk.fragments.length - 1;
      const blank = endsChunk && chunk.gapPt > 0 && !(endsLine && last) ? ' ' : '';
      appendSpan(spans, fragment, x, blank);
      x += fragment.widthPt;
      if (endsChunk && !endsLine) x += chunk.gapPt;
    });
  });
  for (const [i, span] of spans.entries()) {
    const next = spans[i + 1];
    const width =
      next === undefined
        ? x - span.xPt
        : next.xPt - span.xPt - (span.text.endsWith(' ') ? blankPt(setter, span) : 0);
    spans[i] = { ...span, widthPt: width };
  }
  return { widthPt: x, text: spans.map((span) => span.text).join(''), spans };
}

function blankPt(setter: Typesetter, span: Span): number {
  return (setter.letters.blank(span.face) * span.sizePt) / 1000;
}

function appendSpan(spans: Span[], fragment: Fragment, xPt: number, blank: string): void {
  const { face, sizePt, ink, figures } = fragment.style;
  const before = spans.at(-1);
  const link =
    fragment.to === undefined ? {} : { to: fragment.to, underlined: fragment.style.quiet !== true };
  const shown = fragment.to === undefined || fragment.style.quiet === true ? ink : 'accent';
  const alike =
    before !== undefined &&
    before.face === face &&
    before.ink === shown &&
    before.figures === figures &&
    before.to === fragment.to;
  if (before !== undefined && alike) {
    spans[spans.length - 1] = { ...before, text: before.text + fragment.text + blank };
  } else {
    spans.push({ xPt, widthPt: 0, text: fragment.text + blank, face, sizePt, ink: shown, figures, ...link });
  }
}

/** Sets a rich text in a measure. No text gives no lines. */
export function setText(setter: Typesetter, rich: Rich, style: TypeStyle, measurePt: number): SetLine[] {
  const chunks = chunksOf(setter, rich, style).flatMap((chunk) => fittingChunks(setter, chunk, measurePt));
  const ranges = setter.breakLines(chunks, measurePt);
  return ranges.map((range, i) =>
    lineOf(setter, chunks.slice(range.from, range.to), i === ranges.length - 1),
  );
}

/** How wide a text would be on one line, and its widest unbreakable part. For sizing columns. */
export function extentOf(
  setter: Typesetter,
  rich: Rich,
  style: TypeStyle,
): { readonly naturalPt: number; readonly narrowestPt: number } {
  let natural = 0;
  let narrowest = 0;
  const chunks = chunksOf(setter, rich, style);
  chunks.forEach((chunk, i) => {
    natural += chunk.widthPt + (i < chunks.length - 1 ? chunk.gapPt : 0);
    narrowest = Math.max(narrowest, chunk.widthPt);
  });
  return { naturalPt: natural, narrowestPt: narrowest };
}
