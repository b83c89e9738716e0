import { printDate } from '../facts/date.js';
import type { Photo } from '../facts/house.js';
import { whenTaken } from '../tally/photo-days.js';
import type { PhotoOnDisk } from './context.js';
import { upperFirst } from './rich.js';

/** "Kitchen, after, 3 May 2026" or, for a pair, ", 3 May 2026". */
export function photoCaption(photo: Photo & PhotoOnDisk, form: 'full' | 'date'): string {
  const rest = form === 'date' ? dateParts(photo) : whenParts(photo);
  const parts = form === 'date' ? ['', ...rest] : [upperFirst(photo.shows), ...rest];
  return parts.join(', ');
}

/** When in the work and on which day it was taken, and whether part of it is covered. */
export function whenParts(photo: Photo & PhotoOnDisk): string[] {
  const { when } = photo;
  if (when === undefined || when === 'label') return dateParts(photo);
  return [when === 'as-found' ? 'as found' : when, ...dateParts(photo)];
}

function dateParts(photo: Photo & PhotoOnDisk): string[] {
  const taken = whenTaken(photo)?.date;
  return [
    ...(taken === undefined ? [] : [printDate(taken)]),
    ...(photo.hide.length === 0 ? [] : ['part covered']),
  ];
}
