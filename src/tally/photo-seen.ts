/** A picture in the house folder, named by a fact or by none, as `sillplate photos` looks at it. */
import type { Spot } from '../facts/camera.js';
import type { House, Photo } from '../facts/house.js';
import { type PhotoDay, whenTaken } from './photo-days.js';

export interface SeenPhoto {
  /** The file below photos/. */
  readonly name: string;
  /** In the facts; undefined where no fact names it. */
  readonly id: string | undefined;
  readonly width: number;
  readonly height: number;
  /** By the camera's clock: `2026-02-21T09:14:02`. */
  readonly takenAt: string | undefined;
  readonly spot: Spot | undefined;
}

/** Its entry under `photos:`. */
export const entryOf = (house: House, { id }: Pick<SeenPhoto, 'id'>): Photo | undefined =>
  id === undefined ? undefined : house.photos[id];

export const dayOfSeen = (house: House, photo: Pick<SeenPhoto, 'id' | 'takenAt'>): PhotoDay | undefined =>
  whenTaken({ taken: entryOf(house, photo)?.taken, takenAt: photo.takenAt });
