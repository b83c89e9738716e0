import { printDate } from '../../facts/date.js';
import type { Finish, Room, Structure } from '../../facts/house.js';
import { type Length, printLength } from '../../facts/length.js';
import { printSize } from '../../facts/size.js';
import { nameOfRoom } from '../../tally/alarms.js';
import { whoDid } from '../../tally/who.js';
import { type Context, photoIn } from '../context.js';
import { markOf } from '../marks.js';
import type { Block, Section, TableRow } from '../packet.js';
import { photoCaption } from '../photo-words.js';
import { rich, upperFirst } from '../rich.js';
import { deedWords, whoWords } from '../tell.js';

/** Room by room: its size, its finishes and how each is known. */
export function roomsAndFinishes(context: Context): Section {
  const blocks = homes(context).flatMap((home) => roomBlocks(context, home));
  if (blocks.length === 0)
    blocks.push({ kind: 'paragraph', id: 'rooms-none', size: 'body', text: rich('No room is described.') });
  return { id: 'rooms', title: 'Rooms and finishes', blocks };
}

const homes = (context: Context): (Room | Structure)[] => [
  ...context.house.rooms,
  ...context.house.structures.filter((one) => one.finishes.length > 0),
];

function roomBlocks(context: Context, home: Room | Structure): Block[] {
  const blocks: Block[] = [
    { kind: 'heading', id: `room-${home.id}`, level: 3, text: nameOfRoom(home) },
    {
      kind: 'paragraph',
      id: `room-${home.id}-size`,
      size: 'small',
      text: rich(upperFirst(sizeWords(context, home))),
    },
  ];
  if (home.finishes.length > 0) {
    blocks.push({
      kind: 'table',
      id: `room-${home.id}-finishes`,
      caption: `Finishes, ${nameOfRoom(home).toLowerCase()}`,
      columns: [
        { title: 'Where', align: 'left', weight: 15 },
        { title: 'What', align: 'left', weight: 45 },
        { title: 'Done', align: 'left', weight: 40 },
      ],
      rows: home.finishes.map((finish, index) => finishRow(context, home, finish, index)),
    });
  }
  return [...blocks, ...roomPhotos(context, home)];
}

function finishRow(context: Context, home: Room | Structure, finish: Finish, index: number): TableRow {
  const what = [
    finish.what,
    finish.product,
    finish.colour,
    finish.code && `code ${finish.code}`,
    finish.sheen,
    finish.plank && printSize(finish.plank),
    finish.tile && printSize(finish.tile),
    finish.pattern && (finish.pattern === 'straight' ? 'laid straight' : `laid ${finish.pattern}`),
    finish.over && `over ${finish.over}`,
  ].filter(Boolean);
  return {
    id: `finish-${home.id}-${index}`,
    cells: [
      rich(upperFirst(finish.on)),
      rich(
        upperFirst(what.join(', ')),
        finish.note === undefined ? undefined : `. ${upperFirst(finish.note)}`,
      ),
      rich(doneWords(context, finish)),
    ],
    mark: markOf(
      context,
      finish,
      finish.kept
        ? finish.from !== undefined ||
            finish.evidence.length > 0 ||
            finish.colour !== undefined ||
            finish.what !== ''
        : true,
    ),
  };
}

export function doneWords(context: Context, finish: Finish): string {
  if (finish.kept) return 'as found';
  const did = finish.did === undefined ? 'new' : deedWords(finish.did);
  const date = finish.done === undefined ? 'date not known' : printDate(finish.done);
  return `${did}, ${date}, ${whoWords(context, whoDid(context.house, finish.by))}`;
}

export function sizeWords(context: Context, home: Room | Structure): string {
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
    .filter(([id, photo]) => photo.where === home.id && !shown.has(id) && !/\bfront\b/i.test(photo.shows))
    .map(([id]) => photoIn(context, id))
    .filter((photo) => photo !== undefined);
  if (photos.length === 0) return [];
  return [
    {
      kind: 'photos',
      id: `room-${home.id}-photos`,
      photos: photos.map((photo) => ({
        id: `photo-${photo.id}`,
        photo: photo.id,
        caption: rich(photoCaption(photo, 'full')),
      })),
    },
  ];
}
