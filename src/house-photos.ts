/**
 * The photos' part of the walk: which of them are wanted and how, what only decoding finds out, and where the house
 * file's originals go.
 */
import path from 'node:path';
import type { FileToWrite } from './archive/write-tree.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import type { Cameras } from './facts/camera.js';
import type { House } from './facts/house.js';
import type { PaperFile } from './facts/ledger.js';
import { photosReliedOn } from './facts/photos-relied-on.js';
import type { HouseOrder } from './house-order.js';
import { type Development, developPhotos, type PhotoOrder } from './intake/develop-photos.js';
import type { PhotoFile } from './intake/look-at-photo.js';
import { type Plates as PaperPlates, paperPlates } from './intake/paper-plates.js';
import { about, lackOf, leftOut } from './intake/photo-files.js';
import { NO_LIBRARY } from './intake/picture-library.js';
import type { HouseOnDisk } from './intake/read-house.js';
import type { PhotoOnDisk, PlatesOnDisk } from './packet/context.js';
import { holdsPrices, mayLeaveFile } from './packet/edition-house.js';
import type { Packet, Pictures } from './packet/packet.js';
import { version } from './version.js';

/** What the cameras wrote, by the photo's id. */
export const camerasOf = ({ photos }: HouseOnDisk): Cameras =>
  new Map([...photos].map(([id, { camera }]) => [id, camera]));

/** What a packet may know of a photo; where it was taken and where it lies are not among it. */
export const onDisk = ({ id, name, width, height, camera, content }: PhotoFile): PhotoOnDisk => ({
  id,
  name,
  width,
  height,
  takenAt: camera.takenAt,
  content,
});

export interface DevelopedFor {
  readonly picturesOf: (packet: Packet) => Pictures;
  readonly failed: Development['failed'];
  readonly diagnostics: readonly Diagnostic[];
}

/** Where pictures are kept between builds. */
const cacheOf = (order: HouseOrder, what: 'photo' | 'paper', house: string): string =>
  path.join(order.out, `.${what}-cache`, house);

/** Receipts and whatever else a row rests on, with their pages as pictures. Nothing for every edition but the house file. */
export async function platesFor(order: HouseOrder, { ledger, folder, house }: HouseOnDisk): Promise<Plates> {
  if (ledger === undefined || !order.editions.includes('file')) return new Map();
  const named = new Set(ledger.costs.map(({ receipt }) => receipt));
  const papers = new Map(
    house.documents
      .filter((one) => named.has(one.id) || holdsPrices(one))
      .flatMap(({ id }) => {
        const paper = ledger.papers.get(id);
        return paper === undefined ? [] : [[id, paper] as const];
      }),
  );
  const plates = await paperPlates({ papers, cache: cacheOf(order, 'paper', folder) });
  return new Map(
    [...papers].map(([id, paper]) => [id, { paper, ...(plates.get(id) ?? { pages: [], of: 0 }) }]),
  );
}

/** By the document's id. A paper that can't be drawn has no pages. */
export type Plates = ReadonlyMap<string, PaperPlates & { readonly paper: PaperFile }>;

/** What a packet may know of them. */
export const platesOnDisk = (plates: Plates): Map<string, PlatesOnDisk> =>
  new Map(
    [...plates].map(([id, { paper, pages, of }]) => [id, { pages: pages.map(onDisk), of, file: paper.file }]),
  );

/** Papers that are no pictures and can't be drawn: locked, damaged, or of another kind. */
export function undrawnPapers(plates: Plates, house: House): Diagnostic[] {
  return [...plates].flatMap(([id, { paper, pages, noLibrary }]): Diagnostic[] =>
    pages.length > 0
      ? []
      : [
          {
            code: 'intake.paper',
            severity: 'warning',
            path: ['documents', house.documents.findIndex((one) => one.id === id), 'file'],
            message: `documents/${paper.file} can’t be shown beside its rows: ${noLibrary ? NO_LIBRARY.why : 'it is locked, damaged, or neither a PDF nor a photo'}`,
            hints: [
              noLibrary ? NO_LIBRARY.hint : 'save it again as PDF, without a password, or take a photo of it',
              'or leave it: a copy of the file lies in papers/ of the house file',
            ],
          },
        ],
  );
}

/** Makes ready what the packets show. */
export async function developFor(
  order: HouseOrder,
  found: HouseOnDisk,
  packets: readonly Packet[],
  plates: Plates,
): Promise<DevelopedFor> {
  const wanted = { full: new Set<string>(), contact: new Set<string>() };
  // Where nothing will be shown, every photo is still looked at, so that all is said in one go.
  if (packets.length === 0 || order.everyPhoto)
    for (const id of found.photos.keys()) if (found.house.photos[id]?.private !== true) wanted.full.add(id);
  for (const { id, use } of packets.flatMap((packet) => packet.photos)) wanted[use].add(id);
  const papers = [...plates.values()].flatMap(({ pages }) => pages);
  const unnamed = new Map([...found.unnamed, ...papers].map((file) => [file.id, file]));
  const ordersOf = (use: PhotoOrder['use']): PhotoOrder[] =>
    [...wanted[use]].flatMap((id) => {
      const file = found.photos.get(id) ?? unnamed.get(id);
      return file === undefined ? [] : [{ file, hide: found.house.photos[id]?.hide ?? [], use }];
    });
  const [full, contact] = [ordersOf('full'), ordersOf('contact')];
  const all = full.length + contact.length;
  const develop = (orders: readonly PhotoOrder[], before: number): Promise<Development> =>
    developPhotos(orders, {
      cache: cacheOf(order, 'photo', found.folder),
      shownCache: path.posix.join(order.outShown, '.photo-cache', found.folder),
      program: version(),
      onPhoto: (name, done) => order.onPhoto?.(name, before + done, all),
    });
  const large = await develop(full, 0);
  const small = await develop(contact, full.length);
  return {
    picturesOf: ({ photos }) =>
      new Map(
        photos.flatMap(({ id, use }) => {
          const picture = (use === 'full' ? large : small).pictures.get(id);
          return picture === undefined ? [] : [[id, picture] as const];
        }),
      ),
    failed: new Map([...large.failed, ...small.failed]),
    diagnostics: [...large.diagnostics, ...small.diagnostics],
  };
}

/** What only decoding finds out about a photo. */
export function photoTrouble(order: HouseOrder, failed: Development['failed'], house: House): Diagnostic[] {
  const reliedOn = photosReliedOn(house);
  return [...failed].map(([id, remark]) =>
    Object.hasOwn(house.photos, id)
      ? leftOut(about(['photos', id], remark), lackOf(id, reliedOn))
      : { code: 'intake.photo', severity: 'note', file: path.posix.join(order.shown, 'photos'), ...remark },
  );
}

/** Photos whose `not-before` has come on the as-of date and not on the calendar. */
export function earlyPhotos(house: House, { asOf, today }: HouseOrder): Diagnostic[] {
  if (today === undefined || asOf <= today) return [];
  return Object.entries(house.photos)
    .filter(([, photo]) => mayLeaveFile(photo, asOf) && !mayLeaveFile(photo, today))
    .map(([id, photo]) => ({
      code: 'cli.photo-early',
      severity: 'warning',
      path: ['photos', id, 'not-before'],
      message: `${id} is shown as of ${asOf}, but today it is still to be kept back (not-before: ${photo['not-before']?.written})`,
      hints: ['hand the packet over on that day or later', `or build without  --as-of ${asOf}`],
    }));
}

/** The house file's own copies: photos as the camera made them, papers as they lie in the folder. */
export function originals(packet: Packet, found: HouseOnDisk | undefined, plates: Plates): FileToWrite[] {
  const photos = new Map(
    [...(found?.photos.values() ?? []), ...(found?.unnamed ?? [])].map((file) => [file.id, file.original]),
  );
  const copies = new Map([
    ...packet.originals.map(({ photo, path: to }) => [to, photos.get(photo)] as const),
    ...(packet.papers ?? []).map(({ document, path: to }) => [to, plates.get(document)?.paper.path] as const),
  ]);
  return [...copies].flatMap(([to, copyOf]) => (copyOf === undefined ? [] : [{ path: to, copyOf }]));
}
