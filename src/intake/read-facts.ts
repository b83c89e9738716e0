/** The YAML files of a house folder, merged by top-level word, with the place of every fact. */
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { Place, PlaceBook } from '../diagnostics/place.js';
import { valueAt } from '../facts/explain-issue.js';
import { nearestWord } from '../facts/nearest-word.js';
import { isUtf16 } from './is-utf16.js';
import { lineIndex } from './line-index.js';
import { readPlainFile } from './read-plain-file.js';
import { safePath } from './safe-path.js';
import { readYaml, type YamlFile } from './yaml.js';

export interface WrittenFacts {
  readonly spec: Readonly<Record<string, unknown>>;
  readonly places: PlaceBook;
  readonly written: (path: FactPath) => string | undefined;
  /** Top-level words that could not be read: nothing that rests on them is reported. */
  readonly broken: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

/** A house with a thousand rooms stays far below this. */
const MAX_BYTES = 2_000_000;

/** `shown` is the folder as the writer would type it. */
export async function readFacts(
  folder: string,
  shown: string,
): Promise<WrittenFacts | { diagnostics: Diagnostic[] }> {
  const listed = await listYaml(folder, shown);
  if ('diagnostics' in listed) return listed;
  const diagnostics: Diagnostic[] = [];
  const files: YamlFile[] = [];
  const names: string[] = [];
  for (const name of listed.names) {
    const file = path.posix.join(shown, name);
    const read = await readText(folder, name, file);
    if ('diagnostic' in read) {
      diagnostics.push(read.diagnostic);
      continue;
    }
    const yaml = readYaml(read.text, file);
    diagnostics.push(...yaml.diagnostics);
    files.push(yaml);
    names.push(file);
  }
  const { spec, homes } = merge(files, names, diagnostics);
  const broken = files.flatMap((file) => file.broken);
  if (Object.keys(spec).length === 0 && diagnostics.length === 0)
    diagnostics.push(nothingWritten(names[0] ?? shown));
  // A file that was not read at all may hold any word.
  if (names.length < listed.names.length) broken.push('*');
  const fileOf = new Map(files.map((file, index) => [file, names[index] ?? shown]));
  const places: PlaceBook = {
    find: (wanted, word) => {
      const home = homes.get(String(wanted[0])) ?? files[0];
      return home === undefined ? undefined : findPlace(wanted, word, home, fileOf.get(home) ?? shown);
    },
  };
  return {
    spec,
    places,
    written: (wanted) => homes.get(String(wanted[0]))?.written(wanted),
    broken,
    diagnostics,
  };
}

/** The files that hold facts, `house.yaml` first; or what is wrong with the folder. */
export async function listYaml(
  folder: string,
  shown: string,
): Promise<{ names: string[] } | { diagnostics: Diagnostic[] }> {
  let entries: string[];
  try {
    entries = await readdir(folder);
  } catch (thrown) {
    return { diagnostics: [await cannotOpen(folder, shown, thrown)] };
  }
  // house.yaml first: where a fact is absent from all files, that is where to add it.
  const names = entries
    .filter((name) => /\.ya?ml$/i.test(name) && !name.startsWith('.'))
    .sort((a, b) => Number(b === 'house.yaml') - Number(a === 'house.yaml') || (a < b ? -1 : 1));
  if (names.length === 0) {
    return {
      diagnostics: [
        {
          code: 'intake.empty',
          severity: 'error',
          file: shown,
          message: `there is no house.yaml in ${shown}`,
          hints: [
            entries.length === 0
              ? `type  sillplate new ${shown}  to begin one`
              : 'write one that begins with  house: ; to see how, type  sillplate new  with the name of a new folder',
          ],
        },
      ],
    };
  }
  return { names };
}

async function cannotOpen(folder: string, shown: string, thrown: unknown): Promise<Diagnostic> {
  const code = (thrown as NodeJS.ErrnoException).code;
  const say = (message: string, ...hints: string[]): Diagnostic => ({
    code: 'intake.no-folder',
    severity: 'error',
    file: shown,
    message,
    hints,
  });
  if (code === 'ENOTDIR')
    return say(`${shown} is a file, and a house is a folder`, 'name the folder that holds house.yaml');
  if (code !== 'ENOENT')
    return say(`${shown} can’t be opened (${code ?? 'unknown reason'})`, 'check who may read it');
  const near = nearestWord(path.basename(folder), await foldersIn(path.dirname(path.resolve(folder))));
  return say(
    `there is no folder ${shown}`,
    ...(near === undefined ? [] : [`perhaps  ${path.posix.join(path.posix.dirname(shown), near)}`]),
    `check the spelling, or type  sillplate new ${shown}  to begin one`,
  );
}

async function foldersIn(folder: string): Promise<string[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    return entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  } catch {
    return [];
  }
}

async function readText(
  folder: string,
  name: string,
  file: string,
): Promise<{ text: string } | { diagnostic: Diagnostic }> {
  const fail = (code: Diagnostic['code'], message: string, hint: string) => ({
    diagnostic: { code, severity: 'error' as const, file, message, hints: [hint] },
  });
  const safe = await safePath(folder, name);
  if (!safe.ok) {
    if (safe.why === 'closed')
      return fail('intake.no-file', `${file} can’t be read: you may not`, 'check who may read it');
    return safe.why === 'outside'
      ? fail(
          'intake.outside',
          `${file} is a link that leads out of the house folder`,
          'put the file itself into the folder',
        )
      : fail('intake.no-file', `${file} is no plain file`, 'put a text file there, or take it out');
  }
  try {
    const { size } = await stat(safe.absolute);
    if (size > MAX_BYTES) {
      return fail(
        'intake.too-big',
        `${file} has ${(size / 1e6).toFixed(1)} million characters; the facts of a house fit in ${MAX_BYTES / 1e6} million`,
        'check that it is the right file',
      );
    }
    const bytes = await readPlainFile(safe.absolute);
    if (isUtf16(bytes))
      return fail(
        'intake.encoding',
        `${file} is written in UTF-16, not in UTF-8`,
        'save it again as UTF-8 in your editor; where one asks for an encoding, it is not the one called Unicode',
      );
    const text = decodeUtf8(bytes);
    return text === undefined ? { diagnostic: notUtf8(bytes, file) } : { text };
  } catch (thrown) {
    return fail(
      'intake.no-file',
      `${file} can’t be read (${(thrown as NodeJS.ErrnoException).code ?? 'unknown reason'})`,
      'check who may read it',
    );
  }
}

function decodeUtf8(bytes: Buffer): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Points at the first character that is none. */
function notUtf8(bytes: Buffer, file: string): Diagnostic {
  const text = bytes.toString('utf8');
  const at = Math.max(0, text.indexOf('\uFFFD'));
  return {
    code: 'intake.encoding',
    severity: 'error',
    place: lineIndex(text, file)({ start: at, end: at + 1 }),
    message: 'this file is not UTF-8 text; here is the first character that can’t be read',
    hints: ['save it again as UTF-8 in your editor'],
  };
}

function merge(files: readonly YamlFile[], names: readonly string[], diagnostics: Diagnostic[]) {
  const spec = new Map<string, unknown>();
  const homes = new Map<string, YamlFile>();
  files.forEach((file, index) => {
    for (const [word, value] of Object.entries(file.data)) {
      const earlier = homes.get(word);
      if (earlier === undefined) {
        spec.set(word, value);
        homes.set(word, file);
        continue;
      }
      const place = file.placeOf([word], true);
      diagnostics.push({
        code: 'intake.two-files',
        severity: 'error',
        path: [word],
        ...(place === undefined ? { file: names[index] ?? '' } : { place }),
        message: `“${word}” stands in two files; it is already in ${earlier.placeOf([word], true)?.file ?? 'another'}`,
        hints: [`move all of  ${word}:  into one file`],
      });
    }
  });
  // From entries, so that a word like __proto__ stays a word.
  return { spec: Object.fromEntries(spec), homes };
}

function nothingWritten(file: string): Diagnostic {
  return {
    code: 'intake.empty',
    severity: 'error',
    file,
    message: `${file} has no facts in it`,
    hints: ['begin with  house:  or type  sillplate new  with the name of a new folder to see how'],
  };
}

/** The place of a fact; for an absent one the nearest line above it that exists, else only the file. */
function findPlace(
  wanted: FactPath,
  word: boolean,
  home: YamlFile,
  file: string,
): { place: Place; near: boolean } | { file: string } {
  const key = home.placeOf(wanted, true);
  const value = home.placeOf(wanted);
  // A list or group is shown at its word; a bracket or its first line alone would say little.
  const atWord = word || typeof valueAt(home.data, wanted) === 'object';
  const exact = atWord ? (key ?? value) : (value ?? key);
  if (exact !== undefined) return { place: exact, near: false };
  for (let depth = wanted.length - 1; depth > 0; depth--) {
    const above = wanted.slice(0, depth);
    const place = home.placeOf(above, true) ?? home.placeOf(above);
    if (place !== undefined) return { place, near: true };
  }
  return { file };
}
