import { printDate } from '../../facts/date.js';
import type { Finish, Room, Structure } from '../../facts/house.js';
import { type Length, printLength } from '../../facts/length.js';
import { nameOf } from '../../facts/place-name.js';
import { printSize } from '../../facts/size.js';
import { deedOf } from '../../tally/improvements.js';
import { inTimeOrder } from '../../tally/photo-days.js';
import { whoDid } from '../../tally/who.js';
import { columns } from '../columns.js';
import { type Context, photoAnchor, photoIn } from '../context.js';
import { evidenceOf, markOf } from '../marks.js';
import type { Block, Rich, Section } from '../packet.js';
import { photoCaption } from '../photo-words.js';
import { fullStop, rich, strong, upperFirst } from '../rich.js';
import { finishWords, whoShort } from '../tell.js';
import { SHOWS_FRONT } from './in-short.js';

/** Room by room: its size, its finishes and how each is known. Rooms without a finish are listed at the end. */
export function roomsAndFinishes(context: Context): Section {
  const all: (Room | Structure)[] = [...context.house.rooms, ...context.house.structures];
  const blocks = [
    ...all.filter((home) => home.finishes.length > 0).flatMap((home) => roomBlocks(context, home)),
    ...otherRooms(
      context,
      all.filter((home) => home.finishes.length === 0),
    ),
  ];
  if (blocks.length === 0)
    blocks.push({ kind: 'paragraph', id: 'rooms-none', size: 'body', text: rich('No room is described.') });
  return { id: 'rooms', title: 'Rooms and finishes', blocks };
}

function roomBlocks(context: Context, home: Room | Structure): Block[] {
  return [
    { kind: 'heading', id: `room-${home.id}`, level: 3, text: nameOf(home) },
    {
      kind: 'paragraph',
      id: `room-${home.id}-size`,
      size: 'small',
      text: rich(
        upperFirst(sizeWords(context, home)),
        home.note === undefined ? undefined : `. ${upperFirst(home.note)}`,
      ),
    },
    {
      kind: 'list',
      id: `room-${home.id}-finishes`,
      items: home.finishes.map((finish, index) => ({
        id: `finish-${home.id}-${index}`,
        text: finishText(context, finish),
        mark: markOf(context, evidenceOf(context, finish)),
      })),
    },
    ...roomPhotos(context, home),
  ];
}

function finishText(context: Context, finish: Finish): Rich {
  const code = finish.code === undefined ? undefined : `code ${finish.code}`;
  const what = [finishWords(finish), code].filter(Boolean).join(', ');
  const done = doneWords(context, finish);
  return rich(
    strong(`${upperFirst(finish.on)}. `),
    fullStop(upperFirst(what)),
    done === 'as found' && /as found/i.test(what) ? undefined : ` ${fullStop(upperFirst(done))}`,
    finish.note === undefined ? undefined : ` ${fullStop(upperFirst(finish.note))}`,
  );
}

function otherRooms(context: Context, homes: readonly (Room | Structure)[]): Block[] {
  if (homes.length === 0) return [];
  return [
    { kind: 'heading', id: 'rooms-other', level: 3, text: 'Other rooms' },
    {
      kind: 'table',
      id: 'rooms-other-list',
      caption: 'Rooms whose finishes are not described',
      columns: columns(['Room', 30], ['What is known of it', 70]),
      rows: homes.map((home) => ({
        id: `room-${home.id}`,
        cells: [
          rich(nameOf(home)),
          rich(
            upperFirst(sizeWords(context, home)),
            home.note === undefined ? undefined : `. ${upperFirst(home.note)}`,
          ),
        ],
        mark: markOf(context, home, home.size !== undefined || home.outline !== undefined),
      })),
    },
    ...homes.flatMap((home) => roomPhotos(context, home)),
  ];
}

export function doneWords(context: Context, finish: Finish): string {
  const did = deedOf(finish);
  if (did === undefined) return 'as found';
  const date = finish.done === undefined ? 'date not known' : printDate(finish.done);
  return `${did}, ${date}, ${whoShort(context, whoDid(context.house, finish.by))}`;
}

function sizeWords(context: Context, home: Room | Structure): string {
  const level = 'level' in home ? context.house.levels.find((one) => one.id === home.level) : undefined;
  const size =
    home.size === undefined
      ? home.outline === undefined
        ? 'size not measured'
        : 'see the plan for its shape'
      : `${printSize(home.size)}${'level' in home ? ' inside' : ' outside'}`;
  const height = 'level' in home ? ceilingWords(home, level?.ceiling) : undefined;
  const windows =
    'windows' in home && home.windows.length > 0
      ? `${home.windows.length} ${home.windows.length === 1 ? 'window' : 'windows'}`
      : undefined;
  return [level?.name, size, height, windows].filter(Boolean).join(' · ');
}

function ceilingWords(room: Room, levels: Length | undefined): string | undefined {
  const own = room.ceiling;
  if (own !== undefined && !('units' in own)) return 'sloped ceiling';
  const height = own ?? levels;
  return height === undefined ? undefined : `ceiling ${printLength(height)}`;
}

/** Photos of the room that no pair of a work item already shows. */
function roomPhotos(context: Context, home: Room | Structure): Block[] {
  const shown = new Set(
    context.house.work.flatMap((item) => [
      item.photos?.before,
      item.photos?.after,
      ...(item.photos?.during ?? []),
    ]),
  );
  const photos = Object.entries(context.house.photos)
    .filter(([id, photo]) => photo.where === home.id && !shown.has(id) && !SHOWS_FRONT.test(photo.shows))
    .map(([id]) => photoIn(context, id))
    .filter((photo) => photo !== undefined);
  if (photos.length === 0) return [];
  return [
    {
      kind: 'photos',
      form: 'row',
      id: `room-${home.id}-photos`,
      photos: inTimeOrder(photos).map((photo) => ({
        id: photoAnchor(context, photo.id),
        photo: photo.id,
        caption: rich(photoCaption(photo, 'full')),
      })),
    },
  ];
}
