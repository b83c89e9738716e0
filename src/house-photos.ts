/**
 * The photos' part of the walk: which of them are wanted and how, what only decoding finds out, and where the house
 * file's originals go.
 */
import path from 'node:path';
import type { FileToWrite } from './archive/write-tree.js';
import type { HouseOrder } from './build.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import type { Cameras } from './facts/camera.js';
import type { House } from './facts/house.js';
import { photosReliedOn } from './facts/photos-relied-on.js';
import { type Development, developPhotos, type PhotoOrder } from './intake/develop-photos.js';
import { about, lackOf, leftOut } from './intake/photo-files.js';
import type { HouseOnDisk } from './intake/read-house.js';
import type { Packet } from './packet/packet.js';
import { version } from './version.js';

/** What the cameras wrote, by the photo's id. */
export const camerasOf = ({ photos }: HouseOnDisk): Cameras =>
  new Map([...photos].map(([id, { camera }]) => [id, camera]));

/** Makes ready what the packets show. */
export async function developFor(order: HouseOrder, found: HouseOnDisk, packets: readonly Packet[]) {
  const uses = new Map<string, PhotoOrder['use']>();
  // Where nothing will be shown, every photo is still looked at, so that all is said in one go.
  if (packets.length === 0 || order.everyPhoto)
    for (const id of found.photos.keys()) if (found.house.photos[id]?.private !== true) uses.set(id, 'full');
  for (const { id, use } of packets.flatMap((packet) => packet.photos))
    uses.set(id, uses.get(id) === 'full' ? 'full' : use);
  const unnamed = new Map(found.unnamed.map((file) => [file.id, file]));
  const orders = [...uses].flatMap(([id, use]): PhotoOrder[] => {
    const file = found.photos.get(id) ?? unnamed.get(id);
    return file === undefined ? [] : [{ file, hide: found.house.photos[id]?.hide ?? [], use }];
  });
  return developPhotos(orders, {
    cache: path.join(order.out, '.photo-cache'),
    shownCache: path.posix.join(order.outShown, '.photo-cache'),
    program: version(),
    onPhoto: (name, done, all) => order.onPhoto?.(name, done, all),
  });
}

/** What only decoding finds out about a photo. */
export function photoTrouble(failed: Development['failed'], house: House): Diagnostic[] {
  const reliedOn = photosReliedOn(house);
  return [...failed].map(([id, remark]) =>
    Object.hasOwn(house.photos, id)
      ? leftOut(about(['photos', id], 'warning', remark), lackOf(id, reliedOn))
      : { code: 'intake.photo', severity: 'note', ...remark },
  );
}

/** The house file's own copies, as the camera made them. */
export function originals(packet: Packet, found: HouseOnDisk | undefined): FileToWrite[] {
  const files = new Map(
    [...(found?.photos.values() ?? []), ...(found?.unnamed ?? [])].map((file) => [file.id, file]),
  );
  const paths = new Map(packet.originals.map(({ photo, path: to }) => [to, files.get(photo)]));
  return [...paths].flatMap(([to, file]) =>
    file === undefined ? [] : [{ path: to, copyOf: file.original }],
  );
}
