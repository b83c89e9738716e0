/** Proposed pairs of photos are written into the house's own files, each beside a copy of what it was. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { replaceFile } from './archive/replace-file.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { checkHouse } from './facts/check-house.js';
import { checkReferences } from './facts/check-references.js';
import { valueAt } from './facts/explain-issue.js';
import { isId } from './facts/field-kinds.js';
import type { House } from './facts/house.js';
import { typedInYaml } from './facts/typed-in-yaml.js';
import { type Addition, editYaml, lineToType, type Put } from './intake/edit-yaml.js';
import type { ReadHouse } from './intake/read-house.js';
import { readYaml } from './intake/yaml.js';
import { proposeAlt } from './tally/photo-alt.js';
import type { PairProposal, Slot } from './tally/photo-proposals.js';
import type { SeenPhoto } from './tally/photo-seen.js';

/** A line of YAML as the file holds it, and where it stands: "under photos:". */
export interface PlacedLine {
  readonly place: string;
  readonly line: string;
}

/** What a photo may show, in words. */
export interface Sentence {
  /** Id of the photo. */
  readonly id: string;
  readonly alt: string;
}

interface WrittenFile {
  /** As the writer would type it. */
  readonly file: string;
  /** Where what was there lies now. */
  readonly copy: string;
  readonly added: readonly PlacedLine[];
  /** Photos were entered with their proposed sentence as a comment. */
  readonly remarked: boolean;
}

export interface Accepted {
  readonly written: readonly WrittenFile[];
  /** Where nothing could be written: what to type by hand, and where. */
  readonly byHand: readonly PlacedLine[];
  /** Sentences for new entries in brackets, where no comment could hold them. */
  readonly sentences: readonly Sentence[];
  readonly diagnostics: readonly Diagnostic[];
}

/** A word that goes into a file. */
interface Planned {
  readonly addition: Addition;
  readonly place: string;
  /** Proposed for the photo that is entered. */
  readonly alt?: string;
}

/** What goes into one file. */
interface FileEdit {
  readonly name: string;
  readonly additions: Planned[];
}

const NOTHING: Accepted = { written: [], byHand: [], sentences: [], diagnostics: [] };

/** Words of a piece of work that its photos stand behind, where they are there. */
const BEHIND = ['id', 'what', 'did', 'how', 'where', 'why', 'started', 'done', 'by', 'permit'];

/** `photos`: all that lie in the folder. Nothing is written unless all of it can be. */
export async function acceptPairs(
  folder: string,
  shown: string,
  read: ReadHouse,
  pairs: readonly PairProposal[],
  photos: readonly SeenPhoto[],
): Promise<Accepted> {
  const house = read.found?.house;
  if (house === undefined || pairs.length === 0) return NOTHING;
  const planned = plan(house, read, pairs, photos);
  const made = [];
  for (const edit of planned) {
    const file = path.posix.join(shown, edit.name);
    const was = await readFile(path.join(folder, edit.name)).catch(() => undefined);
    const text = was === undefined ? undefined : decoded(was);
    // Positions in the list of work hold only for the text they were read from.
    if (was === undefined || text === undefined || !isAsRead(text, read))
      return { ...NOTHING, diagnostics: [changed(file)] };
    const edited = editYaml(
      text,
      edit.additions.map(({ addition }) => addition),
    );
    if (!edited.ok) return refuse(file, `${file} ${edited.why}`, planned);
    made.push({ edit, file, was, text: edited.text, put: edited.put });
  }
  const trouble = newError(
    read,
    made.map(({ text }) => text),
  );
  if (trouble !== undefined)
    return refuse(shown, `with these pairs the facts would have a mistake (${trouble})`, planned);
  const written: WrittenFile[] = [];
  const sentences: Sentence[] = [];
  for (const { edit, file, was, text, put } of made) {
    const done = await replaceFile(folder, edit.name, was, new TextEncoder().encode(text), {
      shown: file,
      reason: 'before-photos',
    });
    if (!done.ok) return { ...NOTHING, written, sentences, diagnostics: [done.diagnostic] };
    written.push({
      file,
      copy: path.posix.join(shown, done.copy),
      added: linesAsWritten(edit, put),
      remarked: put.some(({ remarked }) => remarked),
    });
    sentences.push(...sentencesOf(edit.additions.filter((_, n) => put[n]?.remarked === false)));
  }
  return { ...NOTHING, written, sentences };
}

function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Whether the top-level words of a file still say what they said when the house was read. */
const isAsRead = (text: string, { spec }: ReadHouse): boolean =>
  Object.entries(readYaml(text, '').data).every(
    ([word, value]) => JSON.stringify(value) === JSON.stringify(spec[word]),
  );

/** The photos' file first: entries that no work names yet do no harm, should the second file fail. */
function plan(
  house: House,
  read: ReadHouse,
  pairs: readonly PairProposal[],
  photos: readonly SeenPhoto[],
): FileEdit[] {
  const workFile = fileOf(read, 'work');
  const hasPhotos = Object.hasOwn(read.spec, 'photos');
  const entries: FileEdit = { name: hasPhotos ? fileOf(read, 'photos') : workFile, additions: [] };
  const links: FileEdit = entries.name === workFile ? entries : { name: workFile, additions: [] };
  const taken = idsOfPapers(read.spec);
  const work: Planned[] = [];
  for (const pair of pairs) {
    const ids: Partial<Record<Slot, string>> = {};
    for (const slot of ['before', 'after'] as const) {
      const photo = pair[slot]?.photo;
      if (photo === undefined) continue;
      ids[slot] = photo.id ?? freeIdOf(photo, taken);
      taken.add(ids[slot]);
      if (photo.id === undefined)
        entries.additions.push(entryFor(house, pair, slot, photo, ids[slot], photos));
    }
    work.push(...linksFor(read, pair, ids));
  }
  if (!hasPhotos && entries.additions.length > 0)
    entries.additions.unshift({
      addition: { into: [], word: 'photos', value: null },
      place: 'at the end of the file',
    });
  links.additions.push(...work);
  return [...new Set([entries, links])].filter(({ additions }) => additions.length > 0);
}

/** The file that holds a top-level word, by its name in the folder. */
function fileOf(read: ReadHouse, word: string): string {
  const found = read.places.find([word], true);
  const file = found === undefined ? 'house.yaml' : 'place' in found ? found.place.file : found.file;
  return path.posix.basename(file);
}

/** `photos` of a piece of work: as a whole, or word by word beside what is there. */
function linksFor(
  read: ReadHouse,
  { index, item }: PairProposal,
  ids: Partial<Record<Slot, string>>,
): Planned[] {
  // Positions of what was written: an item that failed its check is in the file all the same.
  const [, position = index] = read.writtenPath(['work', index]);
  const at = ['work', position];
  const words = Object.entries(ids);
  if (valueAt(read.spec, [...at, 'photos']) === undefined && !hasWord(read, at)) {
    const addition: Addition = { into: at, word: 'photos', value: Object.fromEntries(words), behind: BEHIND };
    return [{ addition, place: `in ${item.id} under work:` }];
  }
  return words.map(([word, id]) => ({
    addition: {
      into: [...at, 'photos'],
      word,
      value: id,
      form: 'lines',
      ...(word === 'before' ? { first: true as const } : {}),
    },
    place: `in the photos: of ${item.id} under work:`,
  }));
}

function hasWord(read: ReadHouse, at: readonly (string | number)[]): boolean {
  const item = valueAt(read.spec, at);
  return typeof item === 'object' && item !== null && Object.hasOwn(item, 'photos');
}

function entryFor(
  house: House,
  { item }: PairProposal,
  slot: Slot,
  photo: SeenPhoto,
  id: string,
  photos: readonly SeenPhoto[],
): Planned {
  const [where, ...more] = item.where;
  const inOnePlace = where !== undefined && more.length === 0 ? where : undefined;
  const value = {
    ...(needsFile(photo, id, photos) ? { file: photo.name } : {}),
    shows: item.what,
    when: slot,
    ...(inOnePlace === undefined ? {} : { where: inOnePlace }),
  };
  const alt = proposeAlt(house, { shows: item.what, when: slot, where: inOnePlace }, item);
  const addition: Addition = {
    into: ['photos'],
    word: id,
    value,
    form: 'lines',
    remark: `alt: ${typedInYaml(alt)}  # a proposal; look at the picture, correct the sentence and take the first # away`,
  };
  return { addition, place: 'under photos:', alt };
}

const stemOf = (name: string): string => path.posix.parse(name).name;

/** The id alone finds the file, unless it is another word or two files share it. */
const needsFile = (photo: SeenPhoto, id: string, photos: readonly SeenPhoto[]): boolean =>
  id !== stemOf(photo.name) ||
  photos.some(
    ({ name }) => name !== photo.name && stemOf(name).toLowerCase() === stemOf(photo.name).toLowerCase(),
  );

/** The file's name without its ending where that can be an id; else what can be kept of it. */
function freeIdOf({ name }: SeenPhoto, taken: ReadonlySet<string>): string {
  const stem = stemOf(name);
  const plain = isId(stem)
    ? stem
    : stem
        .normalize('NFKD')
        .replace(/\p{M}/gu, '')
        .replace(/[^A-Za-z0-9_-]+/g, '-')
        .replace(/^[-_]+|[-_]+$/g, '') || 'photo';
  let free = plain;
  for (let count = 2; taken.has(free); count++) free = `${plain}-${count}`;
  return free;
}

/** Photos share their ids with documents and permits. */
function idsOfPapers(spec: Readonly<Record<string, unknown>>): Set<string> {
  const lists = ['documents', 'permits'].flatMap((word) => {
    const list = valueAt(spec, [word]);
    return Array.isArray(list) ? list.map((item: unknown) => String(valueAt(item, ['id']))) : [];
  });
  const photos = valueAt(spec, ['photos']);
  return new Set([...lists, ...(typeof photos === 'object' && photos !== null ? Object.keys(photos) : [])]);
}

/** What the facts would say that they don't say now; a last look before anything is written. */
function newError(read: ReadHouse, texts: readonly string[]): string | undefined {
  const next = Object.assign({}, read.spec, ...texts.map((text) => readYaml(text, '').data));
  const known = new Set(errorsOf(read.spec).map(({ key }) => key));
  return errorsOf(next).find(({ key }) => !known.has(key))?.message;
}

/** Each with a key that tells it from the same mistake elsewhere. */
function errorsOf(spec: Readonly<Record<string, unknown>>): { message: string; key: string }[] {
  const { house, diagnostics } = checkHouse(spec);
  return [...diagnostics, ...(house === undefined ? [] : checkReferences(house, spec))]
    .filter(({ severity }) => severity === 'error')
    .map(({ message, path: at }) => ({ message, key: JSON.stringify([at, message]) }));
}

const linesAsWritten = ({ additions }: FileEdit, put: readonly Put[]): PlacedLine[] =>
  additions.flatMap(({ place }, n) => (put[n]?.lines ?? []).map((line) => ({ place, line })));

const linesToType = ({ additions }: FileEdit): PlacedLine[] =>
  additions.map(({ addition, place }) => ({ place, line: lineToType(addition) }));

const sentencesOf = (additions: readonly Planned[]): Sentence[] =>
  additions.flatMap(({ addition, alt }) => (alt === undefined ? [] : [{ id: addition.word, alt }]));

const refuse = (file: string, why: string, edits: readonly FileEdit[]): Accepted => ({
  ...NOTHING,
  byHand: edits.flatMap(linesToType),
  sentences: edits.flatMap(({ additions }) => sentencesOf(additions)),
  diagnostics: [
    {
      code: 'archive.facts',
      severity: 'error',
      file,
      message: `${why}, so nothing was written`,
      hints: ['mend it, then type the same command again', 'type the lines below by hand'],
    },
  ],
});

/** Nothing is to be mended, and lines for what the file was may not fit what it is. */
const changed = (file: string): Diagnostic => ({
  code: 'archive.facts',
  severity: 'error',
  file,
  message: `${file} was changed by another program while this one was at work, so nothing was written`,
  hints: ['type the same command again'],
});
