/** Every photo of the edition, small, room by room: what is shown elsewhere beside its story can be found here. */
import type { House, Photo } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { inTimeOrder } from '../../tally/photo-days.js';
import { type Context, type PhotoOnDisk, photoAnchor, photoIn } from '../context.js';
import type { Rich, Section } from '../packet.js';
import { whenParts } from '../photo-words.js';
import { rich, strong, upperFirst } from '../rich.js';

export function photosByRoom(context: Context): Section | undefined {
  const { house } = context;
  const photos = Object.keys(house.photos)
    .map((id) => photoIn(context, id))
    .filter((photo) => photo !== undefined);
  if (photos.length === 0) return undefined;
  const homes = [...house.levels, ...house.rooms, ...house.stairs, ...house.structures];
  const ordered = [...homes, undefined].flatMap((home) =>
    inTimeOrder(
      photos.filter((photo) => homes.find(({ id }) => id === placeOf(house, photo.id)) === home),
    ).map((photo) => ({ photo, place: home === undefined ? undefined : nameOf(home) })),
  );
  return {
    id: 'photos',
    title: 'Photos by room',
    blocks: [
      {
        kind: 'photos',
        form: 'contact',
        id: 'photos-by-room',
        photos: ordered.map(({ photo, place }) => ({
          id: photoAnchor(context, photo.id),
          photo: photo.id,
          caption: caption(photo, place),
        })),
      },
    ],
  };
}

/** Where the entry says; failing that, where the work was that the photo was taken of. */
function placeOf(house: House, id: string): string | undefined {
  const written = house.photos[id]?.where;
  if (written !== undefined) return written;
  const work = house.work.find(({ photos }) =>
    [photos?.before, photos?.after, ...(photos?.during ?? [])].includes(id),
  );
  return work?.where[0];
}

/** "**Kitchen.** Before, 18 February 2026": what is shown is left out where it is the room itself. */
function caption(photo: Photo & PhotoOnDisk, place: string | undefined): Rich {
  const same = place !== undefined && photo.shows.toLowerCase() === place.toLowerCase();
  const words = upperFirst([...(same ? [] : [photo.shows]), ...whenParts(photo)].join(', '));
  return rich(place === undefined ? undefined : strong(words === '' ? place : `${place}. `), words);
}
