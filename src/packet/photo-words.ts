import { printDate } from '../facts/date.js';
import type { Photo } from '../facts/house.js';
import type { PhotoOnDisk } from './context.js';
import { dayOf } from './marks.js';
import { upperFirst } from './rich.js';

/** "Kitchen, after, 3 May 2026" or, for a pair, ", 3 May 2026". */
export function photoCaption(photo: Photo & PhotoOnDisk, form: 'full' | 'date'): string {
  const taken = photo.taken ?? dayOf(photo.takenOn);
  const date = taken === undefined ? '' : `, ${printDate(taken)}`;
  if (form === 'date') return date;
  const when =
    photo.when === undefined || photo.when === 'label'
      ? ''
      : `, ${photo.when === 'as-found' ? 'as found' : photo.when}`;
  return `${upperFirst(photo.shows)}${when}${date}`;
}
