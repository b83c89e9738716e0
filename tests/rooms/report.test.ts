import { describe, expect, it } from 'vitest';
import { columnsOf, cutColumns } from '../../src/diagnostics/columns.js';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { withoutKnockOns } from '../../src/diagnostics/knock-on.js';
import type { Place } from '../../src/diagnostics/place.js';
import { countSeverities, locate, printReport, visible } from '../../src/diagnostics/report.js';

const NOWHERE = { find: () => undefined };
const place = (line: number, source: string, column = 1, length = 1, file = 'a.yaml'): Place => ({
  file,
  line,
  column,
  length,
  source,
});
const error = (message: string, more: Partial<Diagnostic> = {}): Diagnostic => ({
  code: 'facts.kind',
  severity: 'error',
  message,
  hints: [],
  ...more,
});
const report = (...list: Diagnostic[]): string => printReport(locate(list, NOWHERE), 'text', false);

describe('the order of a report', () => {
  it('is by file, line and column; what has no line comes last in its file', () => {
    const told = report(
      error('in b', { place: place(1, 'x', 1, 1, 'b.yaml') }),
      error('of the file', { file: 'a.yaml' }),
      error('later', { place: place(9, 'x') }),
      error('right', { place: place(2, 'xxxx', 3) }),
      error('left', { place: place(2, 'xxxx', 1) }),
    );
    expect(told.match(/left|right|later|of the file|in b/g)).toEqual([
      'left',
      'right',
      'later',
      'of the file',
      'in b',
    ]);
  });

  it('says one cause once, counts each, and names the lines', () => {
    const list = locate(
      [5, 3, 4, 4].map((line) => error('same', { place: place(line, 'x', line) })),
      NOWHERE,
    );
    expect(countSeverities(list)).toEqual({ error: 4, warning: 0, note: 0 });
    const told = printReport(list, 'text', false);
    expect(told.match(/same/g)).toHaveLength(1);
    expect(told).toContain('a.yaml:3:3');
    expect(told).toContain('  also on lines 4, 5\n');
  });
});

describe('the excerpt', () => {
  /** The characters of the shown line that the carets stand under. */
  function under(told: string): string {
    const [, shown = '', carets = ''] = told.split('\n');
    const start = columnsOf(carets.slice(0, carets.indexOf('^')));
    const width = (/\^+/.exec(carets)?.[0] ?? '').length;
    let column = 0;
    let marked = '';
    for (const sign of shown) {
      if (column >= start && column < start + width) marked += sign;
      column += columnsOf(sign);
    }
    return marked;
  }
  const at = (source: string, value: string): string => {
    const found = source.indexOf(value);
    return under(report(error('here', { place: place(12, source, found + 1, value.length) })));
  };

  it.each([
    ['a short line', 'kind: detatched', 'detatched'],
    ['quotes', 'date: "2026-02-30"', '"2026-02-30"'],
    ['tabs before it', 'a:\tb:\tvalue', 'value'],
    ['signs of two columns before it', '{ what: "床がきしむ", wher: hall }', 'wher'],
    ['signs of two columns in it', 'what: 床がきしむ', '床がきしむ'],
    ['pictures before it', '{ what: "🏠🏠", wher: hall }', 'wher'],
    ['accents set apart', '{ what: "cafe\u0301", wher: hall }', 'wher'],
    ['far right in a long line', `${'x'.repeat(300)} value ${'y'.repeat(300)}`, 'value'],
    ['pictures in a long line', `${'🏠'.repeat(200)} value ${'🏠'.repeat(200)}`, 'value'],
  ])('points at the value: %s', (_name, source, value) => expect(at(source, value)).toBe(value));

  it('keeps a long line and its carets within a screen', () => {
    for (const source of ['x'.repeat(5000), '床'.repeat(5000), `${'y'.repeat(2000)}${'x'.repeat(3000)}`]) {
      const told = report(error('here', { place: place(1, source, 2001, 3000) }));
      for (const line of told.split('\n')) expect(columnsOf(line)).toBeLessThan(120);
    }
  });

  it('never shows half a sign', () => {
    for (let column = 1; column < 400; column += 7)
      expect(report(error('here', { place: place(1, '🏠'.repeat(200), column) }))).toMatch(/^[^\uFFFD]*$/u);
    expect(cutColumns('ab床', 3, 'start')).toBe('ab');
    expect(cutColumns('床ab', 3, 'end')).toBe('ab');
  });

  it('says where a fact would belong that is not there', () => {
    const near = locate([error('missing', { path: ['house', 'name'] })], {
      find: () => ({ place: place(1, 'house:'), near: true }),
    });
    expect(printReport(near, 'text', false)).toBe(
      'error facts.kind  near a.yaml:1:1  house.name\n  1 | house:\n    | missing\n',
    );
    const file = locate([error('missing', { path: ['house'] })], { find: () => ({ file: 'a.yaml' }) });
    expect(printReport(file, 'text', false)).toBe('error facts.kind  a.yaml  house\n  missing\n');
  });
});

describe('hints', () => {
  it('are one way and its alternatives, whether or not a room wrote the or', () => {
    expect(
      report(
        error('x', { hints: ['this', 'that', 'or the other', 'or, if all fails, sleep', 'order a new one'] }),
      ),
    ).toBe(
      'error facts.kind\n  x\n  do: this\n  or: that\n  or: the other\n  or: if all fails, sleep\n  or: order a new one\n',
    );
  });
});

describe('characters of a file', () => {
  it('can’t act on a terminal', () => {
    expect(visible('a\u001b[31mb\u0007c\u202ed\u2028e\u200bf\tg')).toBe('a·[31mb·c·d·e·f g');
    const told = report(
      error('\u001b]0;x\u0007', { place: place(1, '\u001b[2J', 1, 1, '\u001b[1m.yaml'), hints: ['\u001b'] }),
    );
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what it looks for
    expect(told).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
  });

  it('colour only what the program says itself', () => {
    const told = printReport(
      locate([error('message', { place: place(1, 'source') })], NOWHERE),
      'text',
      true,
    );
    expect(told).toContain('\u001b[31;1merror\u001b[0m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what it takes out
    expect(told.replace(/\u001b\[[\d;]*m/g, '')).toBe(
      report(error('message', { place: place(1, 'source') })),
    );
  });
});

describe('what follows from an error', () => {
  const derived: Diagnostic[] = [
    { code: 'tally.outline', severity: 'error', path: ['levels', 0, 'outline'], message: 'open', hints: [] },
    { code: 'tally.overlap', severity: 'error', path: ['rooms', 3, 'at'], message: 'over', hints: [] },
    {
      code: 'tally.record-differs',
      severity: 'note',
      path: ['record', 'area'],
      message: 'differs',
      hints: [],
    },
    { code: 'tally.lead', severity: 'warning', path: ['work', 2], message: 'lead', hints: [] },
    { code: 'tally.gap', severity: 'note', path: ['systems'], message: 'gap', hints: [] },
  ];
  const left = (...errors: Diagnostic[]): string[] =>
    withoutKnockOns(derived, errors).map(({ message }) => message);

  it.each([
    ['a step of an outline', ['levels', 0, 'outline', 1], ['over', 'lead']],
    ['the whole list above it', ['levels'], ['over', 'lead']],
    ['another level', ['levels', 1, 'ceiling'], ['open', 'over', 'lead']],
    ['the year it was built', ['house', 'built'], ['open', 'over']],
    ['the place of a room', ['rooms', 3, 'at', 0], ['open']],
    ['a colour of another room', ['rooms', 1, 'finishes', 0, 'colour'], ['open', 'over']],
    ['a person', ['people', 0, 'name'], ['open', 'over']],
    ['something far away', ['answers', 0], ['open', 'over', 'lead']],
  ])('%s', (_name, path, messages) => expect(left(error('x', { path }))).toEqual(messages));

  it('a file that was not read leaves nothing to say about the rest', () =>
    expect(left({ code: 'intake.encoding', severity: 'error', message: 'x', hints: [] })).toEqual([]));

  it('a warning cuts nothing away; an error of the tally only what rests on it', () =>
    expect(left({ ...error('x', { path: ['levels'] }), severity: 'warning' })).toEqual([
      'open',
      'over',
      'lead',
      'gap',
    ]));
});
