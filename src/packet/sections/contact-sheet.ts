/** All photos of the folder, in the order they were taken, with what becomes of each. The house file's alone. */
import { printDate } from '../../facts/date.js';
import type { Photo } from '../../facts/house.js';
import { heldBack } from '../../tally/photo-consent.js';
import { inTimeOrder, whenTaken } from '../../tally/photo-days.js';
import { type Context, type PhotoOnDisk, photoAnchor } from '../context.js';
import { isoDate } from '../date-words.js';
import type { Block, PhotosBlock, Section } from '../packet.js';
import { rich, strong, upperFirst } from '../rich.js';

/** A photo with its entry under `photos:`, if it has one. */
type OnSheet = PhotoOnDisk & { readonly entry: Photo | undefined; readonly taken: Photo['taken'] };

/** More than these stand under headings, mostly months. */
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
      : `${photos.length === 1 ? 'One photo lies' : `${photos.length} photos lie`} in the folder, in the order they were taken. The pictures are covered where the facts say so; the originals, with everything the camera wrote into them, lie in originals/ beside this page.`;
  return { kind: 'paragraph', id: 'contact-sheet-intro', size: 'body', text: rich(text) };
}

function sheets(context: Context, photos: readonly OnSheet[]): Block[] {
  if (photos.length === 0) return [];
  if (photos.length <= ONE_SHEET) return [sheet(context, 'contact-sheet-all', photos)];
  const groups = new Map<string, OnSheet[]>();
  for (const photo of photos) {
    const heading = headingOf(photo);
    groups.set(heading, [...(groups.get(heading) ?? []), photo]);
  }
  return [...groups].flatMap(([text, taken]): Block[] => {
    const id = `contact-${text.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
    return [{ kind: 'heading', id, level: 3, text }, sheet(context, `${id}-sheet`, taken)];
  });
}

/** The month, where it is known; else as much as is. */
function headingOf(photo: OnSheet): string {
  const date = whenTaken(photo)?.date;
  if (date === undefined) return 'Without a time';
  const inMonth = (date.precision === 'day' || date.precision === 'month') && !date.about;
  return inMonth && date.earliest !== undefined
    ? isoDate(date.earliest.slice(0, 7))
    : upperFirst(printDate(date));
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
        upperFirst([timeWords(photo), ...fate(context, photo)].join(', ')),
      ),
      original: { name: photo.name, path: `originals/${photo.name}` },
    })),
  };
}

const anchorOfUnnamed = ({ unnamed }: Context, photo: PhotoOnDisk): string =>
  `photo-unnamed-${unnamed.findIndex((one) => one.id === photo.id) + 1}`;

function timeWords(photo: OnSheet): string {
  const day = whenTaken(photo);
  if (day === undefined) return 'no time';
  const words = printDate(day.date);
  return day.takenAt === undefined ? words : `${words}, ${day.takenAt.slice(11, 16)}`;
}

/** What becomes of the photo in the other editions. */
function fate(context: Context, { entry }: OnSheet): string[] {
  if (entry === undefined) return ['named by no fact'];
  const held = heldBack(entry, context.tally.asOf);
  return [
    entry.when === undefined ? '' : entry.when.replace('-', ' '),
    entry.hide.length === 0 ? '' : 'part covered',
    held === undefined ? '' : held.why === 'private' ? 'private' : `held until ${printDate(held.until)}`,
    entry.alt === undefined ? 'no alt text' : '',
  ].filter((word) => word !== '');
}
