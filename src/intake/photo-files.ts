/**
 * The photos of a house: those that the facts name and, where they are asked for, all the others that lie there.
 *
 * A photo that can't be shown is left out with a warning and the others go on; it is an error only where a fact
 * rests on it, or where the name leads out of the folder.
 */
import { constants } from 'node:fs';
import { access } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House, Photo } from '../facts/house.js';
import { nearestWord } from '../facts/nearest-word.js';
import { photosReliedOn } from '../facts/photos-relied-on.js';
import { absentFile, listing } from './documents.js';
import { fewAtOnce } from './few-at-once.js';
import { isHeicName, isPicture, lookAtPhoto, type PhotoFile, type PhotoRemark } from './look-at-photo.js';
import { safePath } from './safe-path.js';

/** Photos held at once while they are looked at. */
const AT_ONCE = 3;

export interface FoundPhotos {
  /** By the photo's id in the facts. */
  readonly files: ReadonlyMap<string, PhotoFile>;
  /** Those that no fact names, by name; empty unless they were asked for. */
  readonly unnamed: readonly PhotoFile[];
  readonly diagnostics: readonly Diagnostic[];
}

/** `everyPhoto`: also look at those that no fact names. */
export async function findPhotos(
  folder: string,
  shown: string,
  house: House,
  everyPhoto = false,
): Promise<FoundPhotos> {
  const photosFolder = path.join(folder, 'photos');
  const shownFolder = path.posix.join(shown, 'photos');
  if (await isClosed(photosFolder))
    return {
      files: new Map(),
      unnamed: [],
      diagnostics: [
        {
          code: 'intake.no-file',
          severity: 'error',
          file: shownFolder,
          message: `${shownFolder}/ can’t be read: you may not`,
          hints: [`check who may read  ${shownFolder}/  and what lies in it`],
        },
      ],
    };
  const inFolder = await listing(photosFolder);
  const reliedOn = photosReliedOn(house);
  const files = new Map<string, PhotoFile>();
  const used = new Set<string>();
  const diagnostics: Diagnostic[] = [];
  const all = await fewAtOnce(Object.entries(house.photos), AT_ONCE, ([id, photo]) =>
    namedPhoto(id, photo, photosFolder, inFolder, lackOf(id, reliedOn)),
  );
  for (const { file, names, diagnostics: said } of all) {
    for (const name of names) used.add(name);
    diagnostics.push(...said);
    if (file !== undefined) files.set(file.id, file);
  }
  diagnostics.push(...shownTwice(house, files), ...twins(inFolder.filter(isPicture), shownFolder));
  const rest = inFolder.filter((file) => isPicture(file) && !used.has(file));
  if (rest.length > 0) diagnostics.push(notNamed(rest, shownFolder));
  const unnamed: PhotoFile[] = [];
  const others = await fewAtOnce(everyPhoto ? rest : [], AT_ONCE, (name) =>
    lookAtUnnamed(photosFolder, name),
  );
  for (const looked of others) {
    if ('file' in looked) unnamed.push(looked.file);
    else diagnostics.push({ code: 'intake.photo', severity: 'note', file: shownFolder, ...looked.trouble });
  }
  return { files, unnamed, diagnostics };
}

const isClosed = (folder: string): Promise<boolean> =>
  access(folder, constants.R_OK | constants.X_OK).then(
    () => false,
    (thrown: NodeJS.ErrnoException) => ['EACCES', 'EPERM'].includes(thrown.code ?? ''),
  );

/** What a fact rests on has to be there; any other photo can be missing from a packet that is true all the same. */
export const lackOf = (id: string, reliedOn: ReadonlySet<string>): 'error' | 'warning' =>
  reliedOn.has(id) ? 'error' : 'warning';

interface NamedPhoto {
  readonly file?: PhotoFile;
  /** The files that the entry speaks for, as they are spelt in the folder. */
  readonly names: readonly string[];
  readonly diagnostics: readonly Diagnostic[];
}

async function namedPhoto(
  id: string,
  photo: Photo,
  folder: string,
  inFolder: readonly string[],
  lack: 'error' | 'warning',
): Promise<NamedPhoto> {
  const named = photo.file === undefined ? picturesNamed(id, inFolder) : [];
  const where: FactPath = photo.file === undefined ? ['photos', id] : ['photos', id, 'file'];
  const written = photo.file === undefined ? named[0] : path.posix.normalize(photo.file);
  if (written === undefined) return { names: [], diagnostics: [leftOut(noPhoto(where, id, inFolder), lack)] };
  const name = inFolder.find((file) => sameName(file, written)) ?? written;
  const names = [name, ...named];
  const safe = await safePath(folder, name);
  if (!safe.ok) {
    const absent = absentFile(where, 'photos', name, safe.why, inFolder);
    return { names, diagnostics: [safe.why === 'outside' ? absent : leftOut(absent, lack)] };
  }
  const looked = await lookAtPhoto({ id, name, original: safe.absolute, huge: photo.huge });
  if ('trouble' in looked) return { names, diagnostics: [leftOut(about(where, looked.trouble), lack)] };
  const readable = named.filter((file) => !isHeicName(file));
  return {
    file: looked.file,
    names,
    diagnostics: [
      ...(readable.length > 1 ? [severalPhotos(where, id, readable)] : []),
      ...(readable.length === 1 && named.length > 1 ? [takenForOriginal(where)] : []),
      ...looked.notes.map((note): Diagnostic => ({ ...about(where, note), severity: 'note' })),
    ],
  };
}

/** Letters with marks are stored in two ways, composed and not; a name means the same either way. */
const sameName = (one: string, other: string): boolean => one.normalize('NFC') === other.normalize('NFC');

/** The pictures of that name; a phone's HEIC original comes after its copy in another format. */
function picturesNamed(id: string, inFolder: readonly string[]): string[] {
  const named = inFolder.filter((file) => sameName(path.parse(file).name, id) && isPicture(file));
  return [...named.filter((file) => !isHeicName(file)), ...named.filter(isHeicName)];
}

async function lookAtUnnamed(folder: string, name: string) {
  const safe = await safePath(folder, name);
  if (!safe.ok) {
    const message =
      safe.why === 'outside'
        ? `photos/${name} leads out of the house folder`
        : `photos/${name} is no plain file`;
    if (safe.why === 'closed')
      return {
        trouble: { message: `photos/${name} can’t be read: you may not`, hints: ['check who may read it'] },
      };
    return { trouble: { message, hints: ['put the picture itself into photos/'] } };
  }
  // No entry under photos: has a star in its file's name, so the two kinds of id can't meet.
  return lookAtPhoto({ id: `*/${name}`, name, original: safe.absolute, huge: false });
}

/** What is said of a photo that can't be shown, with what follows from it. */
export const leftOut = (one: Omit<Diagnostic, 'severity'>, lack: 'error' | 'warning'): Diagnostic => ({
  ...one,
  severity: lack,
  message: `${one.message}; ${lack === 'error' ? 'a fact rests on it' : 'it is left out'}`,
});

/** A remark on the photo of an entry, with its place. */
export const about = (where: FactPath, remark: PhotoRemark): Omit<Diagnostic, 'severity'> => ({
  code: 'intake.photo',
  path: where,
  ...(where.length === 2 ? { onWord: true } : {}),
  ...remark,
});

function severalPhotos(where: FactPath, id: string, readable: readonly string[]): Diagnostic {
  return {
    ...about(where, {
      message: `${readable.length} pictures in photos/ are named ${id} (${readable.join(', ')}); ${readable[0]} is shown`,
      hints: readable.map((file) => `say which one it is:  file: ${file}`),
    }),
    severity: 'warning',
  };
}

/** A phone's export lays a JPEG beside its HEIC original. Without names, so that all such photos are told in one message. */
const takenForOriginal = (where: FactPath): Diagnostic => ({
  ...about(where, {
    message:
      'a HEIC file of the same name lies beside the photo that is shown, and is taken for its original',
    hints: ['if it is another picture, give it an entry of its own with  file:  and its name'],
  }),
  severity: 'note',
});

/** An entry without `file:` may be any kind of picture, so only its name is asked for. */
function noPhoto(where: FactPath, id: string, inFolder: readonly string[]): Omit<Diagnostic, 'severity'> {
  const near = nearestWord(
    // A key is the name without its ending.
    isPicture(id) ? path.parse(id).name : id,
    inFolder.filter(isPicture).map((file) => path.parse(file).name),
  );
  return {
    code: 'intake.no-file',
    path: where,
    onWord: true,
    message: `there is no picture named ${id} in photos/ (${id}.jpg, ${id}.heic, …)`,
    hints: [
      ...(near === undefined ? [] : [`perhaps  ${near}:`]),
      'put it into photos/, or check the spelling (capital and small letters count)',
    ],
  };
}

/** One picture under two names: what one of them keeps back, the other would show. */
function shownTwice(house: House, files: ReadonlyMap<string, PhotoFile>): Diagnostic[] {
  const first = new Map<string, string>();
  return [...files].flatMap(([id, file]): Diagnostic[] => {
    const earlier = first.get(file.content);
    if (earlier === undefined) {
      first.set(file.content, id);
      return [];
    }
    const [one, other] = [house.photos[earlier], house.photos[id]];
    if (one === undefined || other === undefined || sameSecrecy(one, other)) return [];
    return [
      {
        code: 'intake.photo-twice',
        severity: 'error',
        path: ['photos', id],
        onWord: true,
        message: `${id} is the same picture as ${earlier}, and one of the two would show what the other keeps back`,
        hints: [`give both the same  hide:, private:  and  not-before:`, 'or take one of the two out'],
      },
    ];
  });
}

const sameSecrecy = (one: Photo, other: Photo): boolean =>
  one.private === other.private &&
  one['not-before']?.written === other['not-before']?.written &&
  JSON.stringify(one.hide) === JSON.stringify(other.hide);

/** Two names that differ only in capital letters are one name on many disks, and one of the two is lost on the way there. */
function twins(pictures: readonly string[], folder: string): Diagnostic[] {
  const bySmall = new Map<string, string[]>();
  for (const file of pictures) {
    const small = file.normalize('NFC').toLowerCase();
    bySmall.set(small, [...(bySmall.get(small) ?? []), file]);
  }
  return [...bySmall.values()]
    .filter((files) => files.length > 1)
    .map((files) => ({
      code: 'intake.photo',
      severity: 'warning',
      file: folder,
      message: `${files.join(' and ')} differ only in capital letters or in how marks over letters are stored; a Mac or Windows disk, or a stick, can hold only one of them`,
      hints: [`give one of them another name, and write that name in the facts`],
    }));
}

function notNamed(files: readonly string[], folder: string): Diagnostic {
  const first = path.parse(files[0] ?? '').name;
  const shown = files.slice(0, 5).join(', ') + (files.length > 5 ? ` and ${files.length - 5} more` : '');
  return {
    code: 'intake.unused-photo',
    severity: 'note',
    file: folder,
    message:
      files.length === 1
        ? `one photo is named by no fact: ${shown}`
        : `${files.length} photos are named by no fact: ${shown}`,
    hints: [`to show one, add it under photos:, for example  ${first}: { shows: kitchen, alt: … }`],
  };
}
