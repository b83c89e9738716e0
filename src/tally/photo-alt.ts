/**
 * Photos without words for those who can't see them, and a sentence for each, made from the facts.
 *
 * The sentence is a proposal: the program has not seen the picture, so nothing is published from it.
 */

import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Finish, House, Photo, WorkItem } from '../facts/house.js';
import { nameOf, nameOfPlace } from '../facts/place-name.js';
import { typedInYaml } from '../facts/typed-in-yaml.js';
import { capital } from './area-words.js';
import { systemName } from './system-name.js';

/** A warning for each photo that would be shown and is left out for want of words. */
export function checkPhotoWords(house: House): Diagnostic[] {
  return Object.entries(house.photos).flatMap(([id, photo]): Diagnostic[] =>
    photo.private || photo.alt !== undefined
      ? []
      : [
          {
            code: 'tally.no-alt',
            severity: 'warning',
            path: ['photos', id],
            onWord: true,
            // Without a name, so that all such photos are told in one message.
            message:
              'the photo has no words for those who can’t see it, so it is left out of every edition but the house file',
            hints: [
              `a proposal from the facts; look at the picture and correct it:  alt: ${typedInYaml(proposeAlt(house, photo, workOf(house, id)))}`,
              'type  sillplate photos  to see a proposal for each photo without words',
            ],
          },
        ],
  );
}

/** The piece of work a photo belongs to; as the one before or after it rather than as one among others. */
export function workOf(house: House, id: string): WorkItem | undefined {
  return (
    house.work.find(({ photos }) => photos?.before === id || photos?.after === id) ??
    house.work.find(({ photos }) => photos?.during.includes(id))
  );
}

/** A sentence for a photo from what the facts say of it, its place and its work. */
export function proposeAlt(
  house: House,
  photo: Pick<Photo, 'shows' | 'when' | 'where'>,
  item: WorkItem | undefined,
): string {
  const what = capital(photo.shows);
  if (photo.when === 'label')
    return `${startsWithLabel(what) ? what : `Label: ${photo.shows}`}; write the lines that can be read.`;
  const place = inPlace(house, photo);
  const telling = `${what}${place}${stage(photo.when)}`;
  const more =
    photo.when === 'before' ? (item?.why ?? '') : isAfter(photo.when) ? seenAfter(house, photo, item) : '';
  return more === '' ? `${telling}.` : `${telling}: ${more.replace(/\.$/, '')}.`;
}

const startsWithLabel = (words: string): boolean => /^label\b/i.test(words);

const isAfter = (when: Photo['when']): boolean => when === 'after' || when === undefined;

const stage = (when: Photo['when']): string =>
  when === 'before' || when === 'after'
    ? `, ${when} the work`
    : when === 'during'
      ? ', during the work'
      : when === 'as-found'
        ? ', as found'
        : '';

/** ", bath" unless the words say so already. */
function inPlace(house: House, { shows, where }: Pick<Photo, 'shows' | 'where'>): string {
  if (where === undefined || house.levels.some(({ id }) => id === where)) return '';
  const name = nameOfPlace(house, where).toLowerCase();
  return shows.toLowerCase().includes(name) ? '' : `, ${name}`;
}

const MOST_PARTS = 3;

/** What the work made; of a whole place its surfaces, else what stands there. */
function seenAfter(
  house: House,
  { shows, where }: Pick<Photo, 'shows' | 'where'>,
  item: WorkItem | undefined,
): string {
  const home = [...house.rooms, ...house.structures].find(({ id }) => id === where);
  const finishes = home?.finishes ?? [];
  const ofWork = item === undefined ? [] : finishes.filter(({ work }) => work === item.id);
  if (ofWork.length > 0) return listOf(ofWork.map(finishWords));
  const wholePlace = home !== undefined && shows.toLowerCase().includes(nameOf(home).toLowerCase());
  if (!wholePlace && item !== undefined) return item.how ?? '';
  const done = finishes.filter(({ kept }) => !kept);
  if (finishes.length > 0) return listOf((done.length > 0 ? done : finishes).map(finishWords));
  return listOf(
    house.systems
      .filter((system) => where !== undefined && system.where === where && system.did !== 'removed')
      .map((system) => systemName(system)),
  );
}

const listOf = (parts: readonly string[]): string => parts.slice(0, MOST_PARTS).join('; ');

const finishWords = ({ on, what, colour }: Finish): string =>
  `${on === 'other' ? '' : `${on} `}${what}${colour === undefined ? '' : `, ${colour}`}`;
