/** A sheet of two sides that came out longer is traced back to the longest of the texts that it shows. */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { printFactPath } from './diagnostics/fact-path.js';
import { groupThousands } from './facts/written-number.js';
import type { Packet } from './packet/packet.js';
import { printedBlocks, wordsOf } from './packet/words-of.js';
import { textsIn } from './texts-in.js';

/** Shorter texts than this make no sheet too long by themselves; characters. */
const LONG = 60;

/** How many facts are named. */
const NAMED = 3;

/** `pages` is what the packet took on paper; `spec` is what was written. Nothing for other packets than a leaf's. */
export function tooLong(packet: Packet, pages: number, spec: unknown): Diagnostic[] {
  if (packet.arrangement !== 'two-sides' || pages <= 2) return [];
  const shown = lettersOf(
    [packet.house.name, ...packet.sections.flatMap(printedBlocks).flatMap(wordsOf)].join('\n'),
  );
  const longest = textsIn(spec)
    .filter(({ text }) => text.length >= LONG && shown.includes(lettersOf(text)))
    .sort((a, b) => b.text.length - a.text.length)
    .slice(0, NAMED);
  const [first, ...others] = longest;
  const size = (text: string): string => `${groupThousands(text.length)} characters`;
  return [
    {
      code: 'print.too-long',
      severity: 'warning',
      ...(first === undefined ? {} : { path: first.path }),
      message: `the ${packet.edition.title.toLowerCase()} takes ${pages} pages, and a leaf has two sides${first === undefined ? '' : `; this is the longest text on it (${size(first.text)})`}`,
      hints: [
        'say it in a few words here, and the rest in a  note:  or  how:  , which this sheet leaves out',
        ...others.map(({ path, text }) => `then shorten ${printFactPath(path)} (${size(text)})`),
      ],
    },
  ];
}

/** A text as far as no full stop, capital or kind of quotation mark changes it. */
const lettersOf = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');
