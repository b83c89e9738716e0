/**
 * A house that has every word the schema knows, made by walking the schema: a new word is in it by itself. Its values are
 * the examples of the schema, so it means nothing; what it is for is that a text can be put into every place that takes one.
 */

import type { HouseSpec } from '../../src/facts/house.js';
import { houseJsonSchema, type SchemaNode } from '../../src/facts/json-schema.js';

/**
 * What is to stand in a field, by the field's path (`rooms[].finishes[].what`) and its kind: `text` for whatever takes any
 * text, else as the schema calls it. Undefined leaves the example.
 */
export type TextFor = (field: string, kind: string) => string | undefined;

/** Paths of all words that hold a value, as in `systems[].label.serial`. Long forms of facts are told as `….from`. */
export function fieldPaths(): string[] {
  const found = new Set<string>();
  visit(houseJsonSchema(), '', (path) => found.add(path));
  return [...found];
}

/** Paths of the words that take any text at all. */
export function textFields(): string[] {
  const found = new Set<string>();
  visit(houseJsonSchema(), '', (path, node) => {
    if (takesText(node)) found.add(path);
  });
  return [...found];
}

/** No list of choices, no pattern, and no reader of dates, lengths, money or ids behind it. */
const READ = [
  'id',
  'wall',
  'date',
  'length',
  'size',
  'step',
  'area',
  'money',
  'quantity',
  'web address',
  'number',
  'count',
];
const takesText = (node: SchemaNode): boolean =>
  ([node.type].flat().includes('string') ||
    (node.anyOf ?? []).some((one) => takesText({ ...one, kind: one.kind ?? node.kind ?? '' }))) &&
  node.enum === undefined &&
  node.const === undefined &&
  (node as { pattern?: string }).pattern === undefined &&
  !READ.includes(node.kind ?? '') &&
  !(node.kind ?? '').startsWith('yes');

function visit(node: SchemaNode, path: string, leaf: (path: string, node: SchemaNode) => void): void {
  if (node.fact === true) {
    const { is, long } = formsOf(node);
    leaf(path, { ...is, kind: node.kind ?? '' });
    for (const [word, inner] of Object.entries(long.properties ?? {}))
      if (word !== 'is') visit(inner, `${path}.${word}`, leaf);
    return;
  }
  const held = heldForms(node);
  if (held.length === 0) {
    leaf(path, node);
    return;
  }
  for (const form of held) {
    for (const [word, inner] of Object.entries(form.properties ?? {}))
      visit(inner, path === '' ? word : `${path}.${word}`, leaf);
    if (form.items !== undefined) visit(form.items, `${path}[]`, leaf);
    if (typeof form.additionalProperties === 'object') visit(form.additionalProperties, `${path}{}`, leaf);
  }
}

/** Of several forms those that hold something; rectangles are a value of their own. */
function heldForms(node: SchemaNode): SchemaNode[] {
  if (node.kind === 'rectangles') return [];
  if (
    node.properties !== undefined ||
    node.items !== undefined ||
    typeof node.additionalProperties === 'object'
  )
    return [node];
  return (node.anyOf ?? []).flatMap(heldForms);
}

function formsOf(node: SchemaNode): { is: SchemaNode; long: SchemaNode } {
  const forms = (node.anyOf ?? []).flatMap((one) => (one.anyOf === undefined ? [one] : one.anyOf));
  const long = forms.find((one) => one.properties?.is !== undefined);
  if (long === undefined) throw new Error(`a fact without a long form: ${node.description}`);
  const is = forms.find((one) => one.properties === undefined && one.const === undefined);
  return { is: is ?? {}, long };
}

/** Ids that must lead somewhere, by the end of their path. */
const IDS: readonly (readonly [RegExp, string])[] = [
  [/^people\[\]\.id$|\.firm$|payees\[\]\.person$|^(work|systems)\[\]\.by$/, 'hired'],
  [/\.by$/, 'owner'],
  [/^levels\[\]\.id$|rooms\[\]\.level$/, 'main'],
  [/^rooms\[\]\.id$|\.where(\[\])?$/, 'kitchen'],
  [/^structures\[\]\.id$/, 'garage'],
  [/^stairs\[\]\.id$/, 'stair'],
  [/^systems\[\]\.id$|care\[\]\.for$|work\[\]\.systems\[\]$/, 'heater'],
  [/^work\[\]\.id$/, 'deed'],
  [/^permits\[\]\.id$|\.permit$/, 'permit'],
  [/\.evidence\[\]$|^documents\[\]\.id$|\.manual$|\.reports\[\]$/, 'paper'],
  [/photos\.(before|after|during\[\])$|conditions\[\]\.photos\[\]$/, 'photo'],
  [/given\[\]\.duty$/, 'us-lead-pamphlet'],
];

/** Words that would contradict another one of the same thing, or take its place; none of them holds a text. */
const LEFT_OUT =
  /\.(outline|at|walls|at-7-ft|at-5-ft|work|finished|inside-seen|hide|not-before|private|huge|floor|bath|replace-by)$|(systems|finishes)\[\]\.kept$|^photos\{\}\.file$/;

const CHOICES: Readonly<Record<string, unknown>> = {
  'house.built': 1948,
  'house.address.show': 'full',
  'documents[].kind': 'report',
  'photos{}.when': 'after',
  'money.role': 'dealer',
  'rooms[].ceiling': "8'",
};

/** The house, with a text in each place that takes one. `photo` is the file name, without its ending, of its one photo. */
export function everyWord(textFor: TextFor, photo = 'photo'): HouseSpec {
  const make = (node: SchemaNode, path: string): unknown => {
    if (CHOICES[path] !== undefined && node.fact !== true) return CHOICES[path];
    if (node.fact === true) {
      const { is, long } = formsOf(node);
      const inner = make({ ...is, kind: node.kind ?? '', example: node.example ?? '' }, path);
      const rest = Object.entries(long.properties ?? {}).filter(([word]) => word !== 'is');
      return {
        is: CHOICES[path] ?? inner,
        ...Object.fromEntries(kept(rest, path).map(([word, one]) => [word, make(one, `${path}.${word}`)])),
      };
    }
    const [form] = heldForms(node);
    if (form?.properties !== undefined)
      return Object.fromEntries(
        kept(Object.entries(form.properties), path).map(([word, one]) => [
          word,
          make(one, path === '' ? word : `${path}.${word}`),
        ]),
      );
    if (form?.items !== undefined) return [make(form.items, `${path}[]`)];
    if (typeof form?.additionalProperties === 'object')
      return { [photo]: make(form.additionalProperties, `${path}{}`) };
    const text = textFor(path, takesText(node) ? 'text' : (node.kind ?? ''));
    if (text !== undefined) return text;
    if (node.kind === 'id') {
      const known = IDS.find(([end]) => end.test(path))?.[1];
      return known === 'photo' ? photo : (known ?? 'owner');
    }
    return asYaml(node.example ?? node.enum?.[0] ?? 'words');
  };
  return make(houseJsonSchema(), '') as HouseSpec;
}

const kept = (words: [string, SchemaNode][], path: string): [string, SchemaNode][] =>
  words.filter(([word]) => !LEFT_OUT.test(path === '' ? word : `${path}.${word}`));

/** An example as YAML would give it. */
function asYaml(example: string): unknown {
  if (/^".*"$/s.test(example)) return example.slice(1, -1);
  return /^\d+$/.test(example) ? Number(example) : example;
}
