/** Every photo of the edition, small, room by room: what is shown elsewhere beside its story can be found here. */
import type { House, Photo } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { workOf } from '../../tally/photo-alt.js';
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
  const names = new Map(
    [...house.levels, ...house.rooms, ...house.stairs, ...house.structures].map((home) => [
      home.id,
      nameOf(home),
    ]),
  );
  const placed = photos.map((photo) => {
    const place = placeOf(house, photo) ?? '';
    return { ...photo, place: names.has(place) ? place : undefined };
  });
  // Those without a place come last.
  const ordered = [...names.keys(), undefined].flatMap((place) =>
    inTimeOrder(placed.filter((photo) => photo.place === place)),
  );
  return {
    id: 'photos',
    title: 'Photos by room',
    blocks: [
      {
        kind: 'photos',
        form: 'contact',
        id: 'photos-by-room',
        photos: ordered.map((photo) => ({
          id: photoAnchor(context, photo.id),
          photo: photo.id,
          caption: caption(photo, photo.place === undefined ? undefined : names.get(photo.place)),
        })),
      },
    ],
  };
}

/** Where the entry says; failing that, where the work was that the photo was taken of. */
const placeOf = (house: House, { id, where }: Photo & PhotoOnDisk): string | undefined =>
  where ?? workOf(house, id)?.where[0];

/** "**Kitchen.** Before, 18 February 2026": what is shown is left out where it is the room itself. */
function caption(photo: Photo & PhotoOnDisk, place: string | undefined): Rich {
  const same = place !== undefined && photo.shows.toLowerCase() === place.toLowerCase();
  const words = upperFirst([...(same ? [] : [photo.shows]), ...whenParts(photo)].join(', '));
  return rich(place === undefined ? undefined : strong(words === '' ? place : `${place}. `), words);
}
