/** Where cars stand, as `parking:` tells it and as the garage’s own entry does. */
import type { House } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';

const NUMBERS: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4 };
const CARS = /\b(one|two|three|four|[1-4])[ -]cars?\b/g;

/** "garage, two cars", "two-car garage"; undefined where cars are told of a carport as well, or twice. */
export function carsIn(words: string | undefined): number | undefined {
  if (words === undefined || !/garage/i.test(words) || /carport/i.test(words)) return undefined;
  const said = [...words.toLowerCase().matchAll(CARS)];
  const [word] = said.map(([, number = '']) => number);
  return said.length === 1 && word !== undefined ? (NUMBERS[word] ?? Number(word)) : undefined;
}

/** A garage of the folder: a building, or a room of the house. */
export interface Garage {
  readonly at: readonly ['structures' | 'rooms', number];
  readonly name: string;
  readonly attached: boolean;
  /** As its name or remark says. */
  readonly cars: number | undefined;
}

function garagesOf(house: House): Garage[] {
  const cars = (...words: readonly (string | undefined)[]): number | undefined =>
    carsIn(['garage', ...words].join(' '));
  return [
    ...house.structures.flatMap((one, index): Garage[] =>
      one.is === 'garage'
        ? [
            {
              at: ['structures', index],
              name: nameOf(one),
              attached: one.attached,
              cars: cars(one.name, one.note),
            },
          ]
        : [],
    ),
    ...house.rooms.flatMap((one, index): Garage[] =>
      one.use === 'garage'
        ? [{ at: ['rooms', index], name: nameOf(one), attached: true, cars: cars(one.name, one.note) }]
        : [],
    ),
  ];
}

/** Whether a garage is said to join the house; undefined where that is not said, or said both ways. */
function attachmentIn(words: string | undefined): boolean | undefined {
  if (words === undefined || !/garage/i.test(words) || /carport/i.test(words)) return undefined;
  const [joined, apart] = [
    /\b(attached|built-in|integral)\b/i,
    /\b(detached|free-?standing|separate)\b/i,
  ].map((pattern) => pattern.test(words));
  return joined === apart ? undefined : joined;
}

/** A garage that `parking:` can’t be of; undefined where it may be of one of them. */
export function garageOtherThanSaid(
  house: House,
): { readonly garage: Garage; readonly by: 'attachment' | 'cars' } | undefined {
  const parking = house.house.parking?.value;
  const garages = garagesOf(house);
  const [first] = garages;
  if (first === undefined) return undefined;
  const attached = attachmentIn(parking);
  if (attached !== undefined && garages.every((one) => one.attached !== attached))
    return { garage: first, by: 'attachment' };
  const cars = carsIn(parking);
  const known = cars !== undefined && garages.length === 1 && first.cars !== undefined && first.cars !== cars;
  return known ? { garage: first, by: 'cars' } : undefined;
}
