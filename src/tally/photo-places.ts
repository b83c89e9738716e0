/** Photos that were taken far from the house's others, and so are probably of another house. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Cameras, Spot } from '../facts/camera.js';
import type { House } from '../facts/house.js';
import { FOOT, LONGEST_FEET } from '../facts/length.js';
import { coarseDistance, farFrom } from './photo-distance.js';

/** Where `photos-within` is left out. Common practice, no source: a large lot, and a phone that is off by a street. */
const USUAL_FEET = 1000;

/** Feet from the other photos beyond which one is probably not of this house. */
const photosWithinFeet = (house: House): number => {
  const set = house.house['photos-within'];
  return set === undefined ? USUAL_FEET : set.units / FOOT;
};

/** By the photo's name in `cameras`: how far it is from the others, in coarse words. Never where. */
export function farPhotos(house: House, cameras: Cameras): ReadonlyMap<string, string> {
  return new Map([...feetAway(house, cameras)].map(([id, feet]) => [id, coarseDistance(feet).words]));
}

export function checkPhotoPlaces(house: House, cameras: Cameras): Diagnostic[] {
  const named = new Map([...cameras].filter(([id]) => Object.hasOwn(house.photos, id)));
  return [...feetAway(house, named)].map(([id, feet]): Diagnostic => {
    const { words, feet: coarse } = coarseDistance(feet);
    return {
      code: 'tally.photo-place',
      severity: 'warning',
      path: ['photos', id],
      onWord: true,
      message: `this photo was taken ${words} from the house’s other photos, and is probably not of this house`,
      hints: [
        'take it out of photos: if it shows another house',
        ...withinHint(feet, coarse),
        'if it is of this house all the same, leave it so',
      ],
    };
  });
}

/** Half as much again as the coarse distance, so that it holds whatever was rounded away; none where no length would do. */
function withinHint(feet: number, coarse: number): string[] {
  if (feet > LONGEST_FEET) return [];
  const within = Math.min(LONGEST_FEET, Math.ceil((coarse * 1.5) / 1000) * 1000);
  return [`if the house’s photos lie that far apart, write under house:  photos-within: ${within}'`];
}

/** Of those that are too far from the others. */
const feetAway = (house: House, cameras: Cameras): ReadonlyMap<string, number> => {
  const spots = [...cameras].flatMap(([id, { spot }]): [string, Spot][] =>
    spot === undefined ? [] : [[id, spot]],
  );
  return farFrom(new Map(spots), photosWithinFeet(house));
};
