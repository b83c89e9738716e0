/**
 * Which room may reach for what: the table of DEVELOPERS.md, and the rules beside it.
 *
 * Takes source texts by path; gives findings in words. Imports are read by TypeScript's own parser, so that
 * a comment, a string or a line break can't hide one.
 */
import path from 'node:path';
import ts from 'typescript';

/** Room → rooms it may import from. */
export type RoomTable = ReadonlyMap<string, ReadonlySet<string>>;

export interface Rules {
  readonly rooms: RoomTable;
  /** npm package → files that may import it (`*` stands for one part of a path), and why only these. */
  readonly homes: Readonly<Record<string, { readonly files: readonly string[]; readonly why: string }>>;
  /** Node's own modules, in the same way. Only rooms are held to it; the front door may use what it needs. */
  readonly machine: Readonly<Record<string, { readonly files: readonly string[]; readonly why: string }>>;
  /** What a room may not ask for → files that may, and why. */
  readonly asks: Readonly<Record<Ask, { readonly files: readonly string[]; readonly why: string }>>;
}

/** What makes output depend on more than its input, or speaks past the diagnostics. */
export const ASKS = [
  'Date.now',
  'new Date()',
  'Date()',
  'Math.random',
  'randomUUID',
  'randomBytes',
  'performance.now',
  'fetch()',
  'process.env',
  'process.cwd',
  'console',
] as const;
export type Ask = (typeof ASKS)[number];

const HEAD = ['room', 'takes', 'gives', 'never', 'may import'];
const NOTHING = '–';

/** The table of rooms in a Markdown text. Throws where there is none: a check that sees nothing must fail. */
export function readRoomTable(markdown: string): RoomTable {
  const rows = markdown.split(/\r?\n/u).map((line) => {
    const cells = line.trim().split('|');
    return cells.length < 3 ? [] : cells.slice(1, -1).map((cell) => cell.trim());
  });
  const head = rows.findIndex((cells) => cells.join('|') === HEAD.join('|'));
  if (head < 0) throw new Error(`there is no table headed ${HEAD.join(' | ')}`);
  const table = new Map<string, ReadonlySet<string>>();
  for (const cells of rows.slice(head + 2)) {
    if (cells.length === 0) break;
    const [room = '', , , , may = ''] = cells;
    const rooms = may === NOTHING ? [] : may.split(',').map((name) => name.trim());
    table.set(room.replaceAll('`', ''), new Set(rooms));
  }
  if (table.size === 0) throw new Error('the table of rooms has no rows');
  for (const [room, may] of table)
    for (const other of may)
      if (!table.has(other)) throw new Error(`${room} may import ${other}, which is no room of the table`);
  return table;
}

/** Everything that breaks a rule, one sentence each, sorted. `files`: path from the project's root → text. */
export function findBreaches(files: ReadonlyMap<string, string>, rules: Rules): string[] {
  const sources = [...files].filter(([file]) => /^src\/.*\.[cm]?tsx?$/u.test(file));
  if (sources.length === 0) return ['no source file was seen'];
  const seen = new Set(sources.map(([file]) => roomOf(file)));
  return [
    ...[...rules.rooms.keys()]
      .filter((room) => !seen.has(room))
      .map((room) => `${room}: a room without files`),
    ...sources.flatMap(([file, text]) => breachesOf(file, text, rules)),
  ].sort();
}

/** The room a file lies in; undefined for those on the walk itself, at the top of `src/`. */
function roomOf(file: string): string | undefined {
  const parts = file.split('/');
  return parts[0] === 'src' && parts.length > 2 ? parts[1] : undefined;
}

function breachesOf(file: string, text: string, rules: Rules): string[] {
  const room = roomOf(file);
  const found: string[] = nameBreaches(file, room, rules.rooms);
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  for (const name of importsOf(source)) {
    const breach = importBreach(file, room, name, rules);
    if (breach !== undefined) found.push(breach);
  }
  if (room === undefined) return found;
  for (const ask of asksOf(source)) {
    const home = rules.asks[ask];
    if (!matches(file, home.files)) found.push(`${file} asks for ${ask}: ${home.why}`);
  }
  return found;
}

function nameBreaches(file: string, room: string | undefined, rooms: RoomTable): string[] {
  const found: string[] = [];
  if (room !== undefined && !rooms.has(room)) found.push(`${file} lies in ${room}, which is no room`);
  const drawer = file.split('/').find((part) => /^(index|utils?|helpers?|misc|common)(\.|$)/u.test(part));
  if (drawer !== undefined) found.push(`${file}: ${drawer} is a drawer, not a name`);
  return found;
}

function importBreach(
  file: string,
  room: string | undefined,
  name: string,
  rules: Rules,
): string | undefined {
  if (name === COMPUTED) return `${file} imports something whose name is worked out as it runs`;
  if (name.startsWith('.')) return localBreach(file, room, name, rules.rooms);
  if (name.startsWith('node:')) {
    const home = rules.machine[name.split('/')[0] ?? name];
    if (room === undefined || (home !== undefined && matches(file, home.files))) return undefined;
    return `${file} imports ${name}: ${home?.why ?? 'no room needs it'}`;
  }
  const parts = name.split('/');
  const module = name.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] ?? name);
  const home = rules.homes[module];
  if (home === undefined) return `${file} imports ${module}, which has no home`;
  return matches(file, home.files) ? undefined : `${file} imports ${module}: ${home.why}`;
}

function localBreach(
  file: string,
  room: string | undefined,
  name: string,
  rooms: RoomTable,
): string | undefined {
  const target = path.posix.join(path.posix.dirname(file), name);
  if (!target.startsWith('src/')) return `${file} imports ${target}, outside src/`;
  if (room === undefined) return undefined;
  const other = roomOf(target);
  if (other === room) return undefined;
  if (other === undefined) return `${file} imports ${target}: a room does not know the walk`;
  return rooms.get(room)?.has(other) === true ? undefined : `${room} may not import ${other}: ${file}`;
}

/** `*` is anything within one part of a path, `**` anything at all. */
function matches(file: string, patterns: readonly string[]): boolean {
  return patterns.some((pattern) => {
    const form = pattern
      .split('**')
      .map((part) => part.replace(/[.+?^${}()|[\]\\]/gu, '\\$&').replaceAll('*', '[^/]*'))
      .join('.*');
    return new RegExp(`^${form}$`, 'u').test(file);
  });
}

const COMPUTED = '(computed)';

/** Every module a file names: import, export from, import(), require(), import types and `import x = require`. */
function importsOf(source: ts.SourceFile): string[] {
  const names: string[] = [];
  const add = (node: ts.Node | undefined): void => {
    names.push(node !== undefined && ts.isStringLiteralLike(node) ? node.text : COMPUTED);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier);
    else if (ts.isExportDeclaration(node) && node.moduleSpecifier !== undefined) add(node.moduleSpecifier);
    else if (ts.isExternalModuleReference(node)) add(node.expression);
    else if (ts.isImportTypeNode(node))
      add(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined);
    else if (ts.isCallExpression(node) && isImportCall(node)) add(node.arguments[0]);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return names;
}

const isImportCall = (node: ts.CallExpression): boolean =>
  node.expression.kind === ts.SyntaxKind.ImportKeyword ||
  (ts.isIdentifier(node.expression) && node.expression.text === 'require');

/** What a file asks the machine for, each once. */
function asksOf(source: ts.SourceFile): Ask[] {
  const found = new Set<Ask>();
  const visit = (node: ts.Node): void => {
    const ask = askOf(node);
    if (ask !== undefined) found.add(ask);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return [...found];
}

function askOf(node: ts.Node): Ask | undefined {
  if (ts.isNewExpression(node))
    return node.expression.getText() === 'Date' && (node.arguments?.length ?? 0) === 0
      ? 'new Date()'
      : undefined;
  if (ts.isCallExpression(node)) {
    const called = node.expression.getText();
    if (called === 'Date') return 'Date()';
    if (/^(globalThis\.)?fetch$/u.test(called)) return 'fetch()';
    const random = /(^|\.)(randomUUID|randomBytes)$/u.exec(called)?.[2];
    return random as Ask | undefined;
  }
  if (!ts.isPropertyAccessExpression(node)) return undefined;
  const whole = node.getText().replace(/^globalThis\./u, '');
  if (/^console\./u.test(whole)) return 'console';
  return ASKS.find((ask) => ask === whole);
}
