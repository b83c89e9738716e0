/** All photos of the folder, in the order they were taken, with what becomes of each. The house file's alone. */
import { printDate } from '../../facts/date.js';
import type { Photo } from '../../facts/house.js';
import { type Context, inTimeOrder, type PhotoOnDisk, photoAnchor, takenWhen } from '../context.js';
import { isoDate } from '../date-words.js';
import { mayLeaveFile } from '../edition-house.js';
import type { Block, PhotosBlock, Section } from '../packet.js';
import { rich, strong, upperFirst } from '../rich.js';

/** A photo with its entry under `photos:`, if it has one. */
type OnSheet = PhotoOnDisk & { readonly entry: Photo | undefined; readonly taken: Photo['taken'] };

/** More than these are told apart by month. */
const ONE_SHEET = 24;

export function contactSheet(context: Context): Section {
  const named = Object.entries(context.house.photos).flatMap(([id, entry]): OnSheet[] => {
    const file = context.photos.get(id);
    return file === undefined ? [] : [{ ...file, entry, taken: entry.taken }];
  });
  const others = context.unnamed.map((file): OnSheet => ({ ...file, entry: undefined, taken: undefined }));
  const photos = inTimeOrder([...named, ...others]);
  return { id: 'contact-sheet', title: 'Contact sheet', blocks: [intro(photos), ...sheets(context, photos)] };
}

function intro(photos: readonly OnSheet[]): Block {
  const text =
    photos.length === 0
      ? 'No photo lies in the folder.'
      : `${photos.length === 1 ? 'One photo lies' : `${photos.length} photos lie`} in the folder, in the order of the camera’s clock. The pictures are covered where the facts say so; the originals, with everything the camera wrote into them, lie in originals/ beside this page.`;
  return { kind: 'paragraph', id: 'contact-sheet-intro', size: 'body', text: rich(text) };
}

function sheets(context: Context, photos: readonly OnSheet[]): Block[] {
  if (photos.length === 0) return [];
  if (photos.length <= ONE_SHEET) return [sheet(context, 'contact-sheet-all', photos)];
  const months = new Map<string, OnSheet[]>();
  for (const photo of photos) {
    const month = takenWhen(photo)?.slice(0, 7) ?? 'no-time';
    months.set(month, [...(months.get(month) ?? []), photo]);
  }
  return [...months].flatMap(([month, taken]): Block[] => [
    {
      kind: 'heading',
      id: `contact-${month}`,
      level: 3,
      text: month === 'no-time' ? 'Without a time' : isoDate(month),
    },
    sheet(context, `contact-${month}-sheet`, taken),
  ]);
}

function sheet(context: Context, id: string, photos: readonly OnSheet[]): PhotosBlock {
  return {
    kind: 'photos',
    form: 'contact',
    id,
    photos: photos.map((photo) => ({
      id: photo.entry === undefined ? anchorOfUnnamed(context, photo) : photoAnchor(context, photo.id),
      photo: photo.id,
      caption: rich(
        photo.entry === undefined ? undefined : strong(`${upperFirst(photo.entry.shows)}. `),
        upperFirst([whenTaken(photo), ...fate(context, photo)].join(', ')),
      ),
      original: { name: photo.name, path: `originals/${photo.name}` },
    })),
  };
}

const anchorOfUnnamed = ({ unnamed }: Context, photo: PhotoOnDisk): string =>
  `photo-unnamed-${unnamed.findIndex((one) => one.id === photo.id) + 1}`;

function whenTaken(photo: OnSheet): string {
  if (photo.taken !== undefined && takenWhen(photo) !== photo.takenAt) return printDate(photo.taken);
  if (photo.takenAt === undefined) return 'no time';
  return `${isoDate(photo.takenAt.slice(0, 10))}, ${photo.takenAt.slice(11, 16)}`;
}

/** What becomes of the photo in the other editions. */
function fate(context: Context, { entry }: OnSheet): string[] {
  if (entry === undefined) return ['named by no fact'];
  const held = entry['not-before'];
  return [
    entry.when === undefined ? '' : entry.when.replace('-', ' '),
    entry.hide.length === 0 ? '' : 'part covered',
    entry.private ? 'private' : '',
    entry.private || held === undefined || mayLeaveFile(entry, context.tally.asOf)
      ? ''
      : `held until ${printDate(held)}`,
    entry.alt === undefined ? 'no alt text' : '',
  ].filter((word) => word !== '');
}
