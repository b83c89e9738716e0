import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Place } from '../diagnostics/place.js';

/**
 * What the YAML parser stumbled over, in words about the line at hand.
 * The parser's own reasons name its grammar; the writer needs to know which character to change.
 */
export function explainYamlError(reason: string, place: Place): Diagnostic {
  const [message, ...hints] = explain(reason, place);
  return { code: 'intake.yaml', severity: 'error', place, message, hints };
}

function explain(reason: string, { source, column }: Place): readonly [string, ...string[]] {
  const word = /^\s*(?:- )?\s*(?:\{ *)?([A-Za-z][\w-]*):\s*(.*)$/.exec(source);
  const name = word?.[1] ?? 'note';
  const value = word?.[2] ?? '';
  if (/^ *\t/.test(source) || /tab characters/.test(reason)) {
    return ['this line is moved in with a tab, and YAML takes only spaces', 'replace the tab by two spaces'];
  }
  if (/non-printable/.test(reason)) {
    return [
      'there is a character here that can’t be shown',
      'take it out; copying from another program often brings it',
    ];
  }
  if (/unknown .*tag|tag/.test(reason)) {
    return ['a value that begins with ! is a tag to YAML', `put it in quotes:  ${name}: "${value}"`];
  }
  if (/^["']/.test(value) && /indentation|expected|comma/.test(reason)) {
    const quote = value.charAt(0);
    const closed = value.indexOf(quote, 1);
    return closed > 0
      ? [
          'a value that begins with a quote must end with it, and more follows here',
          `take the first quote away, or wrap it all in the other kind:  ${name}: ${quote === '"' ? `'${value}'` : `"${value}"`}`,
        ]
      : [`the quote that opens here is never closed`, `end the value with ${quote}`];
  }
  if (/: /.test(value) && /indentation of a mapping entry/.test(reason)) {
    return [
      'there is a second colon in this line, and YAML takes it for another word',
      `put the text in quotes:  ${name}: "${value.replaceAll('"', '\\"')}"`,
    ];
  }
  if (/^[@`%&*]/.test(value)) {
    return [
      `a value can’t begin with ${value.charAt(0)} unless it is in quotes`,
      `write  ${name}: "${value}"`,
    ];
  }
  if (/comma between flow/.test(reason)) {
    return [
      'a comma is missing in this list, or a bracket is not closed',
      'write  [first, second]  and  { word: value, word: value }',
    ];
  }
  if (
    /deficient indentation|end of the stream|unexpected end/.test(reason) &&
    /^\s*[[{]|[[{][^\]}]*$/.test(source)
  ) {
    return [
      'a bracket that was opened is not closed before this',
      'close it with ] or } ; each that is opened needs its own',
    ];
  }
  if (/deficient indentation/.test(reason)) {
    return [
      'a quote or bracket that was opened above is not closed before this line',
      'close it at the end of its own line',
    ];
  }
  if (/indentation|end of the stream|multiline key|block mapping/.test(reason)) {
    return /:/.test(source)
      ? [
          'this line does not line up with the lines around it',
          `words of one group begin in one column; this one begins in column ${Math.max(1, source.search(/\S/) + 1)}`,
        ]
      : [
          'there is no colon after the word in this line',
          `write  ${source.trim().split(' ')[0] ?? name}: value`,
        ];
  }
  if (/nest|depth/i.test(reason))
    return ['brackets or groups are nested deeper than any fact stands', 'take the extra brackets out'];
  if (/complex keys/.test(reason))
    return ['a word before a colon must be plain text', 'take the brackets and the question mark out'];
  return [
    `this can’t be read as YAML at column ${column} (${reason})`,
    'put text with unusual characters in quotes',
  ];
}
