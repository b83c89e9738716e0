/** What `duties:` says of the house, beside what the rest of the folder shows: bedrooms, pool, association. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { House } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { bedroomAt } from '../bedroom-at.js';
import { isThere } from '../still-there.js';
import { systemName } from '../system-name.js';
import { type ClashSources, clashOf } from './clash.js';

export function saleWords({ house }: ClashSources): Diagnostic[] {
  return [...studio(house), ...poolUnseen(house), ...poolDenied(house), ...association(house)];
}

function studio(house: House): Diagnostic[] {
  const at = bedroomAt(house);
  const room = house.rooms[at];
  if (house.duties?.studio !== 'yes' || room === undefined) return [];
  return [
    clashOf({
      severity: 'error',
      path: ['duties', 'studio'],
      beside: ['rooms', at, 'use'],
      message: `the dwelling is said to have no bedroom, and “${nameOf(room)}” is one; the lead rules hang on this, and the bedroom is counted`,
      hints: ['take out  studio: yes', 'if nobody can sleep there, write another  use:  at the room'],
    }),
  ];
}

function poolUnseen(house: House): Diagnostic[] {
  if (house.duties?.pool !== 'yes' || house.pool !== undefined || poolSystem(house) >= 0) return [];
  // A word of a patio or of work at it is enough to know that the folder has not forgotten it.
  const named = [...house.structures.map(nameOf), ...house.work.map(({ what }) => what)];
  if (named.some((words) => /\bpool\b/i.test(words))) return [];
  return [
    clashOf({
      severity: 'warning',
      path: ['duties', 'pool'],
      message: 'there is said to be a pool, and nothing else in the folder tells of one',
      hints: [
        'if there is one, add what stands around it:  pool: { barriers: [{ what: fence around the pool }] }',
        'if there is none, write  pool: no',
      ],
    }),
  ];
}

function poolDenied(house: House): Diagnostic[] {
  const at = poolSystem(house);
  const system = house.pool === undefined ? house.systems[at] : undefined;
  if (house.duties?.pool !== 'no' || (house.pool ?? system) === undefined) return [];
  return [
    clashOf({
      severity: 'error',
      path: ['duties', 'pool'],
      beside: system === undefined ? ['pool'] : ['systems', at, 'is'],
      message: `there is said to be no pool, and ${system === undefined ? 'the folder describes one' : `“${systemName(system)}” is among the systems`}`,
      hints: [
        'if there is one, write  pool: yes',
        system === undefined
          ? 'if it was taken out, take out  pool:'
          : 'if it was taken out, add  did: removed  there',
      ],
    }),
  ];
}

const poolSystem = ({ systems }: House): number =>
  systems.findIndex((system) => isThere(system) && /\bpool\b/i.test(system.is));

/** Who collects dues by membership; a district or a town is none of them. */
export const ASSOCIATION = /\b(association|hoa|homeowners|owners|condominium|cooperative)\b/i;

function association(house: House): Diagnostic[] {
  if (house.duties?.association !== 'no') return [];
  const at = house.dues.findIndex(
    ({ to, covers, note }) => ASSOCIATION.test(to) && !/\bvoluntary\b/i.test([covers, note].join(' ')),
  );
  const due = house.dues[at];
  if (due === undefined) return [];
  return [
    clashOf({
      severity: 'warning',
      path: ['duties', 'association'],
      beside: ['dues', at, 'to'],
      message: `no owners’ association with mandatory membership is said to be there, and dues are paid to ${due.to}`,
      hints: [
        'if an owner has to be a member, write  association: yes',
        'if nobody has to be a member, say so at the dues:  note: voluntary',
      ],
    }),
  ];
}
