/** `sillplate photos`: which photos there are, what they may be of, and pairs to accept into the facts. */
import path from 'node:path';
import { type Accepted, acceptPairs, type PlacedLine, type Sentence } from './accept-pairs.js';
import { dropLeftOfFacts } from './archive/replace-file.js';
import { asWritten } from './as-written.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { NOWHERE } from './diagnostics/place.js';
import { type Located, locate, printReport, visible } from './diagnostics/report.js';
import { valueAt } from './facts/explain-issue.js';
import type { House } from './facts/house.js';
import { nearestWord } from './facts/nearest-word.js';
import { typedInYaml } from './facts/typed-in-yaml.js';
import { findHouses, type HouseFolder } from './find-houses.js';
import { camerasOf } from './house-photos.js';
import { type HouseOnDisk, type ReadHouse, readHouse } from './intake/read-house.js';
import { type ListedHouse, photoRecord, photoText } from './photo-list.js';
import { checkPhotoDates } from './tally/photo-dates.js';
import { checkPhotoPlaces } from './tally/photo-places.js';
import { type PairProposal, proposePhotos } from './tally/photo-proposals.js';
import type { SeenPhoto } from './tally/photo-seen.js';
import type { Terminal } from './terminal.js';

export interface PhotosOptions {
  readonly content: string;
  /** YYYY-MM-DD that consent dates are compared with. */
  readonly asOf: string;
  readonly format: 'text' | 'json';
  /** Ids of work whose proposed pairs are written into the facts; `all` for every one. */
  readonly accept?: readonly string[];
}

export async function photosCommand(
  wanted: readonly string[],
  options: PhotosOptions,
  terminal: Terminal,
): Promise<number> {
  const { houses, diagnostics } = await findHouses(options.content, wanted);
  const lost = locate(diagnostics, NOWHERE);
  if (options.accept !== undefined && lost.length === 0 && houses.length !== 1)
    return usage(severalHouses(houses, options.accept), terminal);
  let looked = await lookAll(houses, options, terminal);
  const [only] = looked;
  let accepted: AcceptedHere | undefined;
  if (options.accept !== undefined && only?.listed !== undefined) {
    await dropLeftOfFacts(only.folder);
    const chosen = choose(only.listed, options.accept);
    const hiding = hidingWork(only, only.listed.house, options.accept);
    if (hiding.length > 0 && ('code' in chosen || (isAll(options.accept) && chosen.pairs.length === 0))) {
      // It may well be there: the mistake is what is to be told.
      terminal.error(printReport([...hiding, ...alone(unreadWork(options.accept))], 'text', terminal.colour));
      return 1;
    }
    if ('code' in chosen) return usage(chosen, terminal);
    accepted = {
      ...(await acceptPairs(only.folder, only.shown, only.read, chosen.pairs, only.photos)),
      told: chosen.told,
    };
    // What was written may have mended a mistake, and a photo that is named now is looked at more closely.
    if (accepted.written.length > 0) looked = await lookAll([only], options, terminal);
  }
  const all = [
    ...lost,
    ...looked.flatMap(({ located }) => located),
    ...locate(accepted?.diagnostics ?? [], NOWHERE),
  ];
  if (options.format === 'json') terminal.out(asJson(looked, lost, accepted));
  else terminal.out(asText(looked, lost, accepted, terminal.colour));
  return all.some(({ diagnostic }) => diagnostic.severity === 'error') ? 1 : 0;
}

interface LookedAt extends HouseFolder {
  readonly read: ReadHouse;
  /** Undefined if too little of the facts could be read. */
  readonly listed: ListedHouse | undefined;
  readonly photos: readonly SeenPhoto[];
  readonly located: readonly Located[];
}

/** What was written, and what is to be said of work for which there was nothing to write. */
type AcceptedHere = Accepted & { readonly told: readonly string[] };

async function lookAll(
  houses: readonly HouseFolder[],
  options: PhotosOptions,
  terminal: Terminal,
): Promise<LookedAt[]> {
  const progress = terminal.progress('sillplate');
  try {
    const looked = [];
    for (const house of houses) {
      progress.step(path.basename(path.resolve(house.folder)));
      looked.push(await lookAt(house, options));
    }
    return looked;
  } finally {
    progress.stop();
  }
}

async function lookAt({ folder, shown }: HouseFolder, options: PhotosOptions): Promise<LookedAt> {
  const read = await readHouse(folder, shown, { everyPhoto: true });
  const { found } = read;
  if (found === undefined)
    return {
      folder,
      shown,
      read,
      listed: undefined,
      photos: [],
      located: locate(read.diagnostics, read.places),
    };
  const photos = seenPhotos(found);
  const name = found.folder;
  const typed = options.content === 'content' && shown === `content/${name}` ? name : shown;
  const diagnostics = [...read.diagnostics, ...asWritten(read, photoFindings(found))];
  return {
    folder,
    shown,
    read,
    photos,
    listed: { name, typed, house: found.house, proposals: proposePhotos(found.house, photos, options.asOf) },
    located: locate(diagnostics, read.places),
  };
}

function seenPhotos({ photos, unnamed }: HouseOnDisk): SeenPhoto[] {
  const named = [...photos].map(([id, file]) => ({ id, file }));
  return [...named, ...unnamed.map((file) => ({ id: undefined, file }))].map(({ id, file }) => ({
    id,
    name: file.name,
    width: file.width,
    height: file.height,
    takenAt: file.camera.takenAt,
    spot: file.camera.spot,
  }));
}

function photoFindings(found: HouseOnDisk): Diagnostic[] {
  const cameras = camerasOf(found);
  return [...checkPhotoDates(found.house, cameras), ...checkPhotoPlaces(found.house, cameras)];
}

// ------------------------------------------------------------------ accepting

interface Chosen {
  readonly pairs: readonly PairProposal[];
  readonly told: readonly string[];
}

function choose({ typed, house, proposals }: ListedHouse, accept: readonly string[]): Chosen | Diagnostic {
  const { pairs } = proposals;
  if (isAll(accept))
    return { pairs, told: pairs.length === 0 ? ['nothing is proposed, so nothing was written'] : [] };
  const unknown = accept.find((id) => !house.work.some((item) => item.id === id));
  if (unknown !== undefined) return unknownWork(unknown, typed, house, pairs);
  const wanted = [...new Set(accept)];
  return {
    pairs: pairs.filter(({ item }) => wanted.includes(item.id)),
    told: wanted.filter((id) => !pairs.some(({ item }) => item.id === id)).map((id) => nothingFor(house, id)),
  };
}

const isAll = (accept: readonly string[]): boolean => accept.length === 1 && accept[0] === 'all';

/** Mistakes that keep the wanted work from being known: its own, and those of the list or file that it may stand in. */
function hidingWork({ located, read }: LookedAt, house: House, accept: readonly string[]): Located[] {
  const list = valueAt(read.spec, ['work']);
  const isHidden = (position: string | number | undefined): boolean => {
    const id = String(valueAt(list, [position ?? -1, 'id']));
    return isAll(accept) || (accept.includes(id) && !house.work.some((item) => item.id === id));
  };
  return located.filter(({ diagnostic: { code, severity, path: at = [] } }) => {
    if (severity !== 'error') return false;
    if (at[0] === undefined) return code.startsWith('intake.');
    return at[0] === 'work' && (at.length === 1 || isHidden(at[1]));
  });
}

const unreadWork = (accept: readonly string[]): Diagnostic => ({
  code: 'archive.facts',
  severity: 'error',
  message: isAll(accept)
    ? 'no pair fits what could be read of work:, so nothing was written'
    : `${accept.map((id) => `“${id}”`).join(', ')} could not be found in what could be read of work:, so nothing was written`,
  hints: ['mend the mistake above, then type the same command again'],
});

function nothingFor(house: House, id: string): string {
  const { before, after } = house.work.find((item) => item.id === id)?.photos ?? {};
  if (before !== undefined && after !== undefined)
    return `${id} has its photos already (before ${before}, after ${after}); nothing was written for it`;
  return `no photo fits ${id} by its time; nothing was written for it`;
}

function unknownWork(id: string, typed: string, house: House, pairs: readonly PairProposal[]): Diagnostic {
  const known = house.work.map((item) => item.id);
  const near = nearestWord(id, [...known, 'all']);
  const proposed = pairs.map(({ item }) => item.id);
  return {
    code: 'cli.usage',
    severity: 'error',
    message: `no item under work: has the id “${id}”, so nothing was written`,
    hints: [
      ...(near === undefined ? [] : [`perhaps  --accept ${near}`]),
      proposed.length === 0
        ? `type  sillplate photos ${typed}  to see what is proposed; now it is nothing`
        : `pairs are proposed for ${proposed.slice(0, 12).join(', ')}${proposed.length > 12 ? ', …' : ''}`,
    ],
  };
}

function severalHouses(houses: readonly HouseFolder[], accept: readonly string[]): Diagnostic {
  const first = houses[0]?.shown ?? 'my-house';
  return {
    code: 'cli.usage',
    severity: 'error',
    message: `--accept writes into one house, and ${houses.length === 0 ? 'none is' : `${houses.length} are`} meant here`,
    hints: [`name the house:  sillplate photos ${first} --accept ${accept.join(',')}`],
  };
}

/** What was typed can't be followed. */
function usage(diagnostic: Diagnostic, terminal: Terminal): number {
  terminal.error(printReport(alone(diagnostic), 'text', terminal.colour));
  return 2;
}

const alone = (diagnostic: Diagnostic): Located[] => locate([diagnostic], NOWHERE);

// ------------------------------------------------------------------ telling

/** Findings about photos. What the list itself tells is left out, and so is what `check` is for. */
const isOfPhotos = ({ diagnostic: { code, path: at } }: Located): boolean =>
  code !== 'intake.unused-photo' &&
  (code === 'intake.photo' ||
    code.startsWith('tally.photo-') ||
    (code.startsWith('intake.') && at?.[0] === 'photos'));

function asText(
  looked: readonly LookedAt[],
  lost: readonly Located[],
  accepted: AcceptedHere | undefined,
  colour: boolean,
): string {
  const parts = lost.length === 0 ? [] : [printReport(lost, 'text', colour)];
  for (const { listed, located } of looked) {
    const told = listed === undefined ? located : located.filter(isOfPhotos);
    if (told.length > 0) parts.push(printReport(told, 'text', colour));
    if (listed !== undefined && accepted === undefined) parts.push(photoText(listed));
    const others = located.filter((one) => one.diagnostic.severity === 'error' && !told.includes(one)).length;
    if (others > 0 && listed !== undefined)
      parts.push(
        `The facts have ${others === 1 ? 'a mistake' : `${others} mistakes`} besides; to see ${others === 1 ? 'it' : 'them'}:  sillplate check ${listed.typed}\n`,
      );
  }
  if (accepted !== undefined) parts.push(acceptedText(accepted, looked[0]?.listed?.typed ?? '', colour));
  return parts.join('\n');
}

function acceptedText(
  { written, byHand, sentences, diagnostics, told }: AcceptedHere,
  typed: string,
  colour: boolean,
): string {
  const files = written.map(
    ({ file, copy, added }) =>
      `${visible(file)} is written; what it was lies in ${visible(copy)}\n${placedText(added)}`,
  );
  const report = diagnostics.length === 0 ? [] : [printReport(locate(diagnostics, NOWHERE), 'text', colour)];
  const lines = byHand.length === 0 ? [] : [`To be typed by hand:\n${placedText(byHand)}`];
  const rest = told.length === 0 ? [] : [told.map((line) => `${visible(line)}\n`).join('')];
  const words = wordsText(
    written.some(({ remarked }) => remarked),
    sentences,
  );
  const next = written.length === 0 ? [] : [`Then:  sillplate check ${typed}\n`];
  return [...files, ...report, ...lines, ...rest, ...words, ...next].join('\n');
}

/** What is to be done so that new photos are shown. */
function wordsText(remarked: boolean, sentences: readonly Sentence[]): string[] {
  const look = 'A photo without words is left out: look at each picture, correct its';
  const proposed = sentences.map(
    ({ id, alt }) => `  ${visible(id)}\n    alt: ${visible(typedInYaml(alt, true))}\n`,
  );
  return [
    ...(remarked ? [`${look} line  # alt:  and take the first # away.\n`] : []),
    ...(proposed.length === 0
      ? []
      : [
          `${look} sentence and write it into the brackets of its entry, behind a comma:\n${proposed.join('')}`,
        ]),
  ];
}

/** Lines below the places they stand at; each place said once. */
function placedText(lines: readonly PlacedLine[]): string {
  let last = '';
  return lines
    .map(({ place, line }) => {
      const head = place === last ? '' : `  ${visible(place)}\n`;
      last = place;
      return `${head}    ${visible(line)}\n`;
    })
    .join('');
}

function asJson(
  looked: readonly LookedAt[],
  lost: readonly Located[],
  accepted: AcceptedHere | undefined,
): string {
  const messages = (list: readonly Located[]): unknown => JSON.parse(printReport(list, 'json', false));
  const record = {
    houses: looked.flatMap(({ listed, located }) =>
      listed === undefined
        ? []
        : [{ ...photoRecord(listed), messages: messages(located.filter(isOfPhotos)) }],
    ),
    messages: messages([
      ...lost,
      ...looked.flatMap(({ listed, located }) => (listed === undefined ? located : [])),
      ...locate(accepted?.diagnostics ?? [], NOWHERE),
    ]),
    ...(accepted === undefined
      ? {}
      : {
          written: accepted.written.map(({ file, copy, added }) => ({ file, copy, added })),
          byHand: accepted.byHand,
          sentences: accepted.sentences,
          told: accepted.told,
        }),
  };
  return `${JSON.stringify(record, null, 2)}\n`;
}
