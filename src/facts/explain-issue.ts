/** A zod issue, said the way a tired person can act on. */
import type { z } from 'zod';
import type { Code } from '../diagnostics/codes.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { type FactPath, printFactPath } from '../diagnostics/fact-path.js';
import { describedAt, isRequired, wordsAt } from './field-at.js';
import { nearestWord } from './nearest-word.js';

type Issue = z.core.$ZodIssue;

/** One problem, with the path to cut away so that the rest can be checked. */
export interface Explained {
  readonly diagnostic: Diagnostic;
  readonly cut: FactPath;
  /** The value is absent: its parent has to go instead. */
  readonly absent: boolean;
  /** Path of the word that was meant by an unknown one; that it is missing needs not be told besides. */
  readonly meant?: FactPath | undefined;
}

/** The characters someone typed for the value at a path, if they can be had. */
export type Written = (path: FactPath) => string | undefined;

export function explainIssue(issue: Issue, raw: unknown, written: Written): Explained[] {
  return settle(issue, [], raw).flatMap(({ issue: leaf, path }) => explainLeaf(leaf, path, raw, written));
}

/**
 * A field with several forms fails in all of them. Keep the form that the writer was after: for a mapping
 * the branch that looked inside it, else the branch whose reader had something to say.
 */
function settle(issue: Issue, above: FactPath, raw: unknown): { issue: Issue; path: FactPath }[] {
  const path: FactPath = [...above, ...(issue.path as (string | number)[])];
  if (issue.code !== 'invalid_union') return [{ issue, path }];
  const branches = issue.errors.map((errors) => errors.flatMap((inner) => settle(inner, path, raw)));
  const value = valueAt(raw, path);
  const score = (branch: { issue: Issue; path: FactPath }[]): number => {
    if (isMapping(value)) {
      return branch.some((leaf) => leaf.path.length > path.length || leaf.issue.code === 'unrecognized_keys')
        ? 2
        : 0;
    }
    if (Array.isArray(value)) return branch.some((leaf) => leaf.path.length > path.length) ? 2 : 0;
    return branch.some((leaf) => leaf.issue.code === 'custom')
      ? 2
      : branch.some((leaf) => leaf.issue.code === 'invalid_value')
        ? 1
        : 0;
  };
  let best = branches[0] ?? [];
  for (const branch of branches) if (score(branch) > score(best)) best = branch;
  // No branch got further than "wrong kind": say that once, of the field itself.
  if (best.length === 0 || (score(best) === 0 && best.every((leaf) => leaf.path.length === path.length))) {
    return [
      {
        issue: {
          code: 'invalid_type',
          expected: 'string',
          path: [],
          message: '',
          input: value,
        } as unknown as Issue,
        path,
      },
    ];
  }
  return best;
}

/** A rectangle is four numbers deep in two lists; what is wrong with one of them says nothing by itself. */
const RECTANGLE = 'a rectangle is left, top, width and height, each a part of the picture from 0 to 1';
const RECTANGLE_HINT = 'write for example  hide: [[0.1, 0.2, 0.3, 0.1]]  (0.5 is half the picture)';

function explainLeaf(issue: Issue, path: FactPath, raw: unknown, written: Written): Explained[] {
  const value = valueAt(raw, path);
  const name = String(path.at(-1) ?? 'house');
  const field = describedAt(path);
  const one = (
    code: Code,
    message: string,
    hints: readonly string[],
    absent = false,
    at: FactPath = path,
  ): Explained[] => [{ diagnostic: { code, severity: 'error', path: at, message, hints }, cut: at, absent }];

  const hide = path.indexOf('hide');
  if (path[0] === 'photos' && hide === 2 && issue.code !== 'custom')
    return one('facts.kind', RECTANGLE, [RECTANGLE_HINT], false, path.slice(0, 4));
  if (issue.code === 'unrecognized_keys') return unknownWords(issue.keys, path, raw, written);
  if (value === undefined) {
    return one(
      'facts.missing',
      `“${name}” is missing${field.about ? `: ${lowerFirst(field.about)}` : ''}`,
      [howToAdd(name, path, field)],
      true,
    );
  }
  if (value === null) {
    const note = written(path) ?? '';
    // "# to be asked" is meant as a note; "#1 Quarry Road" is not.
    if (/^#[^\s#]/u.test(note))
      return one(
        'facts.quotes',
        `“${name}” has no value, since YAML takes what stands behind a # for a note`,
        [`if it belongs to it, put it in quotes:  ${name}: ${JSON.stringify(note)}`],
      );
    return one('facts.missing', `“${name}” has no value`, [
      `write  ${name}: ${field.example ?? '…'}${isRequired(path) ? '' : '  or take the word out'}`,
    ]);
  }
  if (issue.code === 'custom') {
    const params = (issue.params ?? {}) as { code?: Code; hint?: string };
    return one(params.code ?? 'facts.kind', issue.message, params.hint === undefined ? [] : [params.hint]);
  }
  if (field.takesText && (typeof value === 'number' || typeof value === 'boolean')) {
    const typed = written(path) ?? String(value);
    const became =
      typed === String(value)
        ? `a ${typeof value === 'number' ? 'number' : 'yes or no'}`
        : `the number ${value}`;
    return one('facts.quotes', `“${name}” is text, and YAML reads ${typed} as ${became}`, [
      `put it in quotes:  ${name}: "${typed}"`,
    ]);
  }
  if (Array.isArray(value) && issue.code === 'too_big')
    return one(
      'facts.too-long',
      `“${name}” has ${value.length} items, and at most ${issue.maximum} are read`,
      ['leave out what is not needed'],
    );
  if (Array.isArray(value) && issue.code === 'too_small')
    return one('facts.kind', `“${name}” needs at least ${issue.minimum} items, and has ${value.length}`, [
      field.about ? `write ${lowerFirst(field.about)}` : wantedForm(path),
    ]);
  if (field.kind === 'zip')
    return one('facts.kind', `${describe(value)} is no ZIP code`, [
      `write five digits in quotes, for example  ${name}: ${field.example ?? '"44999"'}`,
    ]);
  if (field.kind === 'state') {
    return one('facts.kind', `${describe(value)} is no state`, [
      `write two capital letters, for example  ${name}: OH`,
    ]);
  }
  if (field.choices.length > 0 && !isMapping(value) && !Array.isArray(value)) {
    const near = nearestWord(String(value), field.choices) ?? meantNotKnown(String(value), field.choices);
    return one('facts.choice', `“${name}” can’t be “${String(value)}”`, [
      ...(near === undefined ? [] : [`perhaps  ${name}: ${near}`]),
      `write one of: ${field.choices.join(', ')}`,
    ]);
  }
  return one(
    'facts.kind',
    `“${name}” takes ${withArticle(field.kind ?? kindOfSchema(path))}, and here is ${describe(value)}`,
    [field.example === undefined ? wantedForm(path) : `write it like this:  ${name}: ${field.example}`],
  );
}

/** What people write for something they don't know. */
const meantNotKnown = (value: string, choices: readonly string[]): string | undefined =>
  /^(unknown|unsure|not sure|don[’']?t know|n\/?a|none|\?+|-+)$/i.test(value)
    ? choices.find((choice) => /^not[- ]known$/.test(choice))
    : undefined;

/** Unknown words of one group; a text that a comma has cut in two is told as that, once. */
function unknownWords(
  keys: readonly string[],
  parent: FactPath,
  raw: unknown,
  written: Written,
): Explained[] {
  const cut = cutByComma(keys, parent, raw, written);
  return [...cut.found, ...keys.filter((key) => !cut.keys.has(key)).map((key) => unknownWord(key, parent))];
}

/** Inside braces a comma ends a value: `{ area: 1,410 sq ft }` is an area of 1 and a word "410 sq ft". */
function cutByComma(keys: readonly string[], parent: FactPath, raw: unknown, written: Written) {
  const group = valueAt(raw, parent);
  const found: Explained[] = [];
  const taken = new Set<string>();
  if (!isMapping(group) || written(parent) !== '{') return { found, keys: taken };
  const words = Object.keys(group);
  words.forEach((word, index) => {
    const value = group[word];
    if (keys.includes(word) || value === null || typeof value === 'object') return;
    const tail: string[] = [];
    for (const next of words.slice(index + 1)) {
      if (!keys.includes(next) || group[next] !== null) break;
      tail.push(next);
    }
    if (tail.length === 0) return;
    const path = [...parent, word];
    const start = written(path) ?? String(value);
    // 1,410 was typed without a blank behind its comma, "handrail, cellar stair" with one.
    const whole = tail.reduce(
      (text, next) => `${text}${/\d$/.test(text) && /^\d{3}/.test(next) ? ',' : ', '}${next}`,
      start,
    );
    for (const next of tail) taken.add(next);
    const diagnostic: Diagnostic = {
      code: 'facts.quotes',
      severity: 'error',
      path,
      message: `between { and } a comma ends the value, so “${word}” is only “${start}” here`,
      hints: [`put the whole of it in quotes:  ${word}: ${JSON.stringify(whole)}`],
    };
    for (const cut of [word, ...tail]) found.push({ diagnostic, cut: [...parent, cut], absent: false });
  });
  return { found, keys: taken };
}

function unknownWord(key: string, parent: FactPath): Explained {
  const words = wordsAt(parent);
  const near = nearestWord(key, words);
  const where = parent.length === 0 ? 'at the top' : `in ${printFactPath(parent)}`;
  return {
    diagnostic: {
      code: 'facts.unknown-word',
      severity: 'error',
      path: [...parent, key],
      onWord: true,
      message: `there is no word “${key}” ${where}`,
      hints: [
        ...(near === undefined ? [] : [`perhaps  ${near}:`]),
        ...(words.length === 0 ? ['take it out'] : [`words known here: ${words.join(', ')}`]),
      ],
    },
    cut: [...parent, key],
    absent: false,
    meant: near === undefined ? undefined : [...parent, near],
  };
}

function howToAdd(name: string, path: FactPath, field: ReturnType<typeof describedAt>): string {
  if (field.choices.length > 0 && field.kind === 'choice')
    return `add a line  ${name}: ${field.example ?? field.choices[0]}  (or one of: ${oneOf(field.choices)})`;
  if (field.example !== undefined) return `add a line  ${name}: ${field.example}`;
  const needed = wordsAt(path).filter((word) => isRequired([...path, word]));
  return needed.length === 0
    ? `add a line  ${name}: …`
    : `add a line  ${name}:  and below it, two spaces further in,  ${needed.map((word) => `${word}:`).join(' ')}`;
}

function kindOfSchema(path: FactPath): string {
  const words = wordsAt(path);
  return words.length > 0 ? `words of its own (${words.slice(0, 4).join(', ')}, …)` : 'a list';
}

function wantedForm(path: FactPath): string {
  const words = wordsAt(path);
  return words.length > 0
    ? `write  ${words[0]}: …  below it, two spaces further in`
    : 'write one item a line, each after a hyphen and a space';
}

function withArticle(kind: string): string {
  if (/^(text|money|yes|words|rectangles|length or)/.test(kind)) return kind === 'text' ? 'text' : kind;
  return /^a list|^one /.test(kind) ? kind : `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`;
}

function describe(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (isMapping(value)) return 'a group of words';
  return typeof value === 'string'
    ? `“${value.length > 60 ? `${value.slice(0, 57)}…` : value}”`
    : String(value);
}

const oneOf = (choices: readonly string[]): string =>
  choices.length > 6 ? `${choices.slice(0, 6).join(' | ')} | …` : choices.join(' | ');
const lowerFirst = (sentence: string): string =>
  sentence.charAt(0).toLowerCase() + sentence.slice(1).replace(/\.$/, '');
const isMapping = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export function valueAt(raw: unknown, path: FactPath): unknown {
  let value = raw;
  for (const part of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = Object.hasOwn(value, part) ? (value as Record<string | number, unknown>)[part] : undefined;
  }
  return value;
}
