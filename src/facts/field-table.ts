import { houseJsonSchema, type SchemaNode } from './json-schema.js';

interface Row {
  readonly word: string;
  readonly what: string;
  readonly kind: string;
  readonly example: string;
}

/** Words that mean the same wherever they stand: told once, above the tables. */
const EVERYWHERE = ['from', 'evidence', 'note'] as const;

/** Words with the same words below them in two places: told under the top-level word they belong to. */
const TOLD_UNDER: Readonly<Record<string, string>> = { finishes: 'rooms', warranty: 'systems' };

/**
 * The README's tables, one for each top-level word, made from the same schema that checks what is written.
 * Markdown, ending in a line feed.
 */
export function fieldTable(): string {
  const schema = houseJsonSchema();
  const words = Object.entries(schema.properties ?? {});
  return `${[everywhere(schema), ...words.map(([word, node]) => section(word, node))].join('\n\n')}\n`;
}

function everywhere(schema: SchemaNode): string {
  const holder = schema.properties?.systems?.items?.properties ?? {};
  const rows = EVERYWHERE.flatMap((word) => {
    const node = holder[word];
    return node === undefined ? [] : rowsOf(word, node, [], 'systems');
  });
  return [
    '**Bold** words are needed. A kind marked ◦ may also be `not known`, or be written long: `{ is: …, from: …, evidence: […], note: …, was: …, corrected: … }`,',
    'where `was` keeps what stood there before a correction. These words may stand beside most others:',
    '',
    table(rows),
  ].join('\n');
}

function section(word: string, node: SchemaNode): string {
  const about = node.description ?? '';
  const { holder, form } = inside(node);
  const head = `#### \`${word}\`\n\n${about}${form === '' ? '' : ` ${form}`}`;
  if (holder === undefined) {
    const item = node.items ?? node;
    return `${head} Each is: ${kindOf(item)}${item.example === undefined ? '' : `, for example ${code(item.example)}`}.`;
  }
  return `${head}\n\n${table(fieldRows(holder, '', word))}`;
}

/** The node that has the words: the thing itself, an item of a list, an entry by name. */
function inside(node: SchemaNode): { holder: SchemaNode | undefined; form: string } {
  if (node.items?.properties !== undefined) return { holder: node.items, form: 'A list.' };
  if (typeof node.additionalProperties === 'object' && node.additionalProperties.properties !== undefined)
    return { holder: node.additionalProperties, form: 'By name.' };
  if (node.properties !== undefined) return { holder: node, form: '' };
  return { holder: undefined, form: node.items === undefined ? '' : 'A list.' };
}

function fieldRows(holder: SchemaNode, before: string, top: string): Row[] {
  return Object.entries(holder.properties ?? {}).flatMap(([word, node]) =>
    (EVERYWHERE as readonly string[]).includes(word)
      ? []
      : rowsOf(`${before}${word}`, node, holder.required ?? [], top),
  );
}

/** A word's own row, and below it the rows of what it holds. A list of things whose words were told is not told again. */
function rowsOf(word: string, node: SchemaNode, required: readonly string[], top: string): Row[] {
  const short = word.split('.').at(-1)?.replace('[]', '') ?? word;
  const own: Row = {
    word: required.includes(short) ? `**${code(word)}**` : code(word),
    what: node.description ?? '',
    kind: kindOf(node),
    example: node.example === undefined ? '' : code(node.example),
  };
  if (node.fact === true) return [own];
  const held = heldBy(node);
  if (held === undefined) return [own];
  const elsewhere = TOLD_UNDER[short];
  if (elsewhere !== undefined && elsewhere !== top)
    return [{ ...own, kind: `${own.kind}, as under ${code(elsewhere)}` }];
  return [own, ...fieldRows(held.node, `${word}${held.list ? '[]' : ''}.`, top)];
}

/** What a word holds, if that has words of its own; of several forms the one that does. */
function heldBy(node: SchemaNode): { node: SchemaNode; list: boolean } | undefined {
  if (node.properties !== undefined) return { node, list: false };
  if (node.items?.properties !== undefined) return { node: node.items, list: true };
  for (const branch of node.anyOf ?? []) {
    const held = heldBy(branch);
    if (held !== undefined) return held;
  }
  return undefined;
}

function kindOf(node: SchemaNode): string {
  const choices = choicesOf(node);
  const one = choices.length > 0 && node.kind === 'choice' ? choices.map(code).join(', ') : plainKind(node);
  return node.fact === true ? `${one} ◦` : one;
}

function plainKind(node: SchemaNode): string {
  if (node.kind !== undefined) return node.kind;
  if (node.items !== undefined || node.prefixItems !== undefined)
    return node.items?.properties === undefined ? `list of ${node.items?.kind ?? 'values'}` : 'list';
  if (node.properties !== undefined) return 'words below';
  const branches = (node.anyOf ?? []).map(plainKind);
  return [...new Set(branches)].join(' or ') || String(node.type ?? '');
}

const choicesOf = (node: SchemaNode): readonly string[] =>
  node.enum ?? (node.anyOf ?? []).flatMap((branch) => choicesOf(branch));

/** A code span. An example with quotes keeps them: they are part of what is typed. */
const code = (text: string): string => `\`${text}\``;

const cell = (text: string): string => text.replaceAll('|', '\\|').replace(/\s+/g, ' ');

function table(rows: readonly Row[]): string {
  return [
    '| word | what | kind | example |',
    '|---|---|---|---|',
    ...rows.map((row) => `| ${[row.word, row.what, row.kind, row.example].map(cell).join(' | ')} |`),
  ].join('\n');
}
