/** “Attached garage, two cars”, beside a garage that stands apart or holds one. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { type ClashSources, clashOf } from './clash.js';
import { garageOtherThanSaid } from './garage-words.js';

export function parkingAndGarage({ house }: ClashSources): Diagnostic[] {
  const other = garageOtherThanSaid(house);
  const said = house.house.parking?.value;
  if (other === undefined || said === undefined) return [];
  const { garage, by } = other;
  const isRoom = garage.at[0] === 'rooms';
  return [
    clashOf({
      severity: 'error',
      path: ['house', 'parking'],
      beside: by === 'cars' ? garage.at : [...garage.at, isRoom ? 'use' : 'attached'],
      message:
        by === 'cars'
          ? `parking is “${said}”, and “${garage.name}” is for ${garage.cars === 1 ? 'one car' : `${garage.cars} cars`}`
          : `parking is “${said}”, and “${garage.name}” ${isRoom ? 'is a room of the house' : garage.attached ? 'is attached' : 'stands apart'}`,
      hints: [
        'correct  parking:',
        by === 'cars'
          ? 'if that is right, correct the name or the remark of the garage'
          : isRoom
            ? 'if the garage stands apart, move it from rooms: to structures:'
            : `if that is right, write  attached: ${garage.attached ? 'false' : 'true'}  at the garage`,
      ],
    }),
  ];
}
