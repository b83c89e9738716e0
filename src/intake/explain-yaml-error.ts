import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place } from '../diagnostics/place.js';
import { typedInYaml } from '../facts/typed-in-yaml.js';
import type { Span } from './line-index.js';
import { type Marks, marksBefore } from './open-marks.js';

/** A spot to point at, what is so there, and what to type. */
type Explained = readonly [span: Span, message: string, ...hints: string[]];

interface Trouble {
  readonly reason: string;
  /** Where the parser gave up, in characters from the start of the text. */
  readonly at: number;
  readonly text: string;
  /** The line it gave up in. */
  readonly line: Line;
  readonly marks: Marks;
  /** Of `line` in the file, from 1. */
  readonly lineNumber: number;
}

interface Line {
  readonly start: number;
  readonly source: string;
}

/**
 * What the YAML parser stumbled over, in words about the line at hand.
 * The parser's own reasons name its grammar; the writer needs to know which character to change, and that one
 * often stands in an earlier line.
 */
export function explainYamlError(
  reason: string,
  at: number,
  text: string,
  place: (span: Span) => Place,
): Diagnostic {
  const line = lineAt(text, at);
  const lineNumber = place({ start: line.start, end: line.start + 1 }).line;
  const trouble: Trouble = { reason, at, text, line, lineNumber, marks: marksBefore(text, at) };
  for (const explain of EXPLANATIONS) {
    const found = explain(trouble);
    if (found === undefined) continue;
    const [span, message, ...hints] = found;
    return { code: 'intake.yaml', severity: 'error', place: place(span), message, hints };
  }
  return {
    code: 'intake.yaml',
    severity: 'error',
    place: place({ start: at, end: at + 1 }),
    message: `this can’t be read as YAML (${reason})`,
    hints: ['put text with unusual characters in quotes'],
  };
}

const EXPLANATIONS: readonly ((trouble: Trouble) => Explained | undefined)[] = [
  tab,
  invisible,
  tag,
  backslash,
  openQuote,
  textAfterQuote,
  openBracket,
  closingBracket,
  reservedSign,
  listBehindColon,
  secondColon,
  noColon,
  comma,
  depth,
  complexWord,
  notLinedUp,
];

function tab({ reason, at, text, line }: Trouble): Explained | undefined {
  const indent = /^ *(\t+)/.exec(line.source);
  const hint = 'replace the tab by two spaces';
  if (indent !== null || /tab characters/.test(reason)) {
    const start = line.start + Math.max(0, line.source.indexOf('\t'));
    return [
      { start, end: start + (indent?.[1]?.length ?? 1) },
      'this line is moved in with a tab, and YAML takes only spaces',
      hint,
    ];
  }
  if (text[at - 1] !== '\t') return undefined;
  return [{ start: at - 1, end: at }, 'there is a tab here, and YAML takes only spaces between values', hint];
}

function invisible({ reason, at }: Trouble): Explained | undefined {
  if (!/non-printable|null byte/.test(reason)) return undefined;
  return [
    { start: at, end: at + 1 },
    'there is a character here that can’t be shown',
    'take it out; copying from another program often brings it',
  ];
}

function tag(trouble: Trouble): Explained | undefined {
  if (!/\btag\b/.test(trouble.reason)) return undefined;
  const { name, value, start } = wordAndValue(trouble.line);
  if (!value.startsWith('!')) {
    const spot = { start: trouble.at, end: trouble.at + 1 };
    return [spot, 'a value that begins with ! is a tag to YAML', 'put it in quotes'];
  }
  return [
    { start, end: start + (value.split(' ')[0]?.length ?? 1) },
    'a value that begins with ! is a tag to YAML',
    `put it in quotes:  ${name}: ${typedInYaml(value)}`,
  ];
}

/** Nothing closes the quote, or only a later line does, by opening its own. */
function openQuote({ text, at, marks }: Trouble): Explained | undefined {
  const { open, lastQuoted } = marks;
  const late =
    lastQuoted !== undefined &&
    /^\s*$/.test(text.slice(lastQuoted.end, at)) &&
    text.slice(lastQuoted.start, lastQuoted.end).includes('\n');
  const start = open?.kind === 'quote' ? open.start : late ? lastQuoted.start : undefined;
  if (start === undefined) return undefined;
  const { name, value } = wordAndValue(lineAt(text, start));
  const quote = text[start] ?? '"';
  const inner = value.slice(1).trim();
  const close = `close it at the end of its own line:  ${name}: ${value.trim()}${quote}`;
  const span = { start, end: start + 1 };
  const said = late
    ? 'the quote that opens here is closed only in a later line'
    : 'the quote that opens here is never closed';
  if (!value.startsWith(quote)) return [span, said, 'close it at the end of its own line'];
  // In 'twas the mark is an apostrophe.
  return quote === "'"
    ? [span, said, close, `if it belongs to the text:  ${name}: ${JSON.stringify(value.trim())}`]
    : inner.includes(quote)
      ? [span, said, 'close it at the end of its own line']
      : [span, said, close];
}

function textAfterQuote({ text, at, line, marks, reason }: Trouble): Explained | undefined {
  const quoted = marks.lastQuoted;
  if (quoted === undefined || quoted.start < line.start || !/indentation|comma|expected/.test(reason))
    return undefined;
  // The parser stops behind the quote, or at the colon that follows what stands behind it.
  if (!/^[^,\]}\n]*$/.test(text.slice(quoted.end, at))) return undefined;
  const quote = text[quoted.start] ?? '"';
  const name = wordBefore(text.slice(line.start, quoted.start));
  const rest = line.source.slice(quoted.start - line.start);
  const inBrackets = marks.open?.kind === 'bracket';
  const whole = (inBrackets ? (/^[^,}\]\n]*(?=[,}\]])/.exec(rest)?.[0] ?? rest) : rest).trim();
  const meant = whole.length > 1 && whole.endsWith(quote) ? whole.slice(1, -1) : whole;
  return [
    { start: quoted.end, end: quoted.start + whole.length },
    'a value that begins with a quote ends with the next one, and more follows here',
    `write  ${name === undefined ? '' : `${name}: `}${typedInYaml(meant, inBrackets)}`,
  ];
}

/** The word whose colon ends a text. */
function wordBefore(text: string): string | undefined {
  const before = text.trimEnd();
  if (!before.endsWith(':')) return undefined;
  let start = before.length - 1;
  while (start > 0 && /[\w-]/.test(before[start - 1] ?? '')) start--;
  return /[A-Za-z].*/.exec(before.slice(start, -1))?.[0];
}

function openBracket({ reason, text, line, lineNumber, marks: { open } }: Trouble): Explained | undefined {
  if (open?.kind !== 'bracket') return undefined;
  // A comma that seems to be missing in a later line: the bracket should have been closed before.
  if (open.start >= line.start && !/deficient|end of the stream|unexpected end/.test(reason))
    return undefined;
  const closing = text[open.start] === '[' ? ']' : '}';
  return [
    { start: open.start, end: open.start + 1 },
    open.start < line.start
      ? `the bracket that opens here is not closed before line ${lineNumber}`
      : 'the bracket that opens here is never closed',
    `close it with  ${closing}  at the end of its list; each that is opened needs its own`,
  ];
}

function closingBracket({ text, at, marks, reason }: Trouble): Explained | undefined {
  if (marks.open !== undefined || !/[\]}]/.test(text[at] ?? '') || !/indentation|expected/.test(reason))
    return undefined;
  return [
    { start: at, end: at + 1 },
    'this bracket closes nothing',
    'take it out, or put the text in quotes',
  ];
}

function reservedSign({ line, reason }: Trouble): Explained | undefined {
  const { name, value, start } = wordAndValue(line);
  if (!/^[@`%&*|>]/.test(value) || !/indentation|expected|alias|anchor|token|character/.test(reason))
    return undefined;
  return [
    { start, end: start + 1 },
    `a value can’t begin with ${value.charAt(0)} unless it is in quotes`,
    `write  ${name}: ${typedInYaml(value)}`,
  ];
}

function secondColon({ line, at, reason }: Trouble): Explained | undefined {
  const { name, value, start } = wordAndValue(line);
  const colon = /:(?=\s|$)/.exec(value);
  if (colon === null || !/indentation of a mapping entry|block mapping|implicit key/.test(reason))
    return undefined;
  if (at < start) return undefined;
  return [
    { start: start + colon.index, end: start + colon.index + 1 },
    'there is a second colon in this line, and YAML takes it for another word',
    `put the text in quotes:  ${name}: ${typedInYaml(value.trim())}`,
  ];
}

function listBehindColon({ line, reason }: Trouble): Explained | undefined {
  const { name, value, start } = wordAndValue(line);
  if (!value.startsWith('- ') || !/indentation/.test(reason)) return undefined;
  return [
    { start, end: start + 1 },
    'a list of hyphens begins in the line after its word',
    `put it in the next line, moved in by two spaces, or in quotes:  ${name}: ${typedInYaml(value)}`,
  ];
}

/** The parser stops at the next colon it meets; the line without one stands before it. */
function noColon({ text, line, reason }: Trouble): Explained | undefined {
  if (!/block mapping entry|implicit key|end of the stream/.test(reason)) return undefined;
  const before = lineBefore(text, line.start);
  for (const one of [line, ...(before === undefined ? [] : [before])]) {
    const words = /^(\s*(?:- +)?)([A-Za-z][\w-]*)(:?)(.*)$/.exec(one.source);
    if (words === null || /:(\s|$)/.test(one.source)) continue;
    const [, indent = '', word = '', colon = '', rest = ''] = words;
    const start = one.start + indent.length;
    return colon === ':'
      ? [
          { start, end: start + word.length + 1 },
          'there is no space after the colon',
          `write  ${word}: ${rest.trim()}`.trimEnd(),
        ]
      : [
          { start, end: start + word.length },
          'there is no colon after the word in this line',
          `write  ${word}: ${rest.trim()}`.trimEnd(),
        ];
  }
  return undefined;
}

function comma({ reason, at }: Trouble): Explained | undefined {
  if (!/comma|flow/.test(reason)) return undefined;
  return [
    { start: at, end: at + 1 },
    'a comma is missing before this, or a bracket is not closed',
    'write  [first, second]  and  { word: value, word: value }',
  ];
}

function backslash({ reason, text, at }: Trouble): Explained | undefined {
  if (!/escape|hexadecimal/.test(reason)) return undefined;
  const start = text[at] === '\\' ? at : Math.max(0, at - 1);
  return [
    { start, end: start + 2 },
    'a backslash between double quotes changes the letter behind it',
    'write it twice  \\\\  or put single quotes around the text',
  ];
}

function depth({ reason, at }: Trouble): Explained | undefined {
  if (!/nest|depth/i.test(reason)) return undefined;
  return [
    { start: at, end: at + 1 },
    'brackets or groups are nested deeper than any fact stands',
    'take the extra brackets out',
  ];
}

function complexWord({ reason, at }: Trouble): Explained | undefined {
  if (!/complex keys/.test(reason)) return undefined;
  return [
    { start: at, end: at + 1 },
    'a word before a colon must be plain text',
    'take the brackets and the question mark out',
  ];
}

function notLinedUp({ reason, text, line }: Trouble): Explained | undefined {
  if (!/indentation|end of the stream|multiline key|block mapping/.test(reason)) return undefined;
  const column = Math.max(0, line.source.search(/\S/));
  const start = line.start + column;
  const before = lineBefore(text, line.start);
  // After "- " the word itself is what the next line lines up with.
  const above = before === undefined ? undefined : /^(\s*(?:- +)*)/.exec(before.source)?.[1]?.length;
  const own = `this line begins in column ${column + 1}`;
  return [
    { start, end: start + Math.max(1, /^\S+/.exec(line.source.slice(column))?.[0].length ?? 1) },
    'this line does not line up with the lines around it',
    above === undefined || above === column
      ? `words of one group begin in one column; ${own}`
      : `words of one group begin in one column; ${own}, the line above in column ${above + 1}`,
  ];
}

function lineAt(text: string, at: number): Line {
  const start = text.lastIndexOf('\n', at - 1) + 1;
  const end = text.indexOf('\n', start);
  return { start, source: text.slice(start, end < 0 ? text.length : end).replace(/\r$/, '') };
}

/** The nearest line above that holds more than blanks and comments. */
function lineBefore(text: string, start: number): Line | undefined {
  for (let at = start - 1; at >= 0; ) {
    const line = lineAt(text, at);
    if (/^\s*[^\s#]/.test(line.source)) return line;
    at = line.start - 1;
  }
  return undefined;
}

/** The first word of a line and what stands behind its colon. */
function wordAndValue({ source, start }: Line): { name: string; value: string; start: number } {
  const word = /^(\s*(?:- +)*(?:\{ *)?([A-Za-z][\w-]*):\s*)(.*)$/.exec(source);
  return { name: word?.[2] ?? 'note', value: word?.[3] ?? '', start: start + (word?.[1]?.length ?? 0) };
}
