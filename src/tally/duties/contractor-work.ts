/** What hired people did since the purchase: asked of a seller in some states, with who did it and under which permit. */

import type { FactPath } from '../../diagnostics/fact-path.js';
import type { HouseDate } from '../../facts/date.js';
import type { Finish, House, Person } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { systemName } from '../system-name.js';
import { type Who, whoDid } from '../who.js';
import type { DutyFact } from './duty-fact.js';
import type { Truth } from './truth.js';

interface Piece {
  readonly what: string;
  readonly who: Who;
  readonly done: HouseDate | undefined;
  /** Id of the permit that is named for it. */
  readonly permit: string | undefined;
  readonly path: FactPath;
  /** The word its date stands under. */
  readonly dated: 'done' | 'installed';
}

/** One piece of work that somebody was hired for. */
export interface HiredWork extends Omit<Piece, 'who'> {
  readonly person: Person;
  /** Not known where its date, or that of the purchase, leaves open which came first. */
  readonly since: Exclude<Truth, 'no'>;
}

/**
 * Recorded work that isn’t surely older than the purchase: the work items, and the systems and finishes that are told
 * under none of them. A system or finish that says neither who put it in nor that it came after the purchase describes
 * the house and records no work.
 */
function piecesOf(house: House): Piece[] {
  const told = new Set(house.work.flatMap(({ systems }) => systems));
  return [
    ...house.work.map(
      (item, index): Piece => ({
        what: item.what,
        who: whoDid(house, item.by),
        done: item.done,
        permit: item.permit,
        path: ['work', index],
        dated: 'done',
      }),
    ),
    ...house.systems.flatMap((system, index): Piece[] =>
      told.has(system.id) || system.kept || !saysMore(house, system.by, system.installed?.value)
        ? []
        : [
            {
              what: systemName(system),
              who: whoDid(house, system.by),
              done: system.installed?.value,
              permit: system.permit,
              path: ['systems', index],
              dated: 'installed',
            },
          ],
    ),
    ...finishPieces(house, 'rooms'),
    ...finishPieces(house, 'structures'),
  ].filter(({ done }) => isSince(house, done) !== 'no');
}

const saysMore = (house: House, by: string | undefined, done: HouseDate | undefined): boolean =>
  by !== undefined || isSince(house, done) === 'yes';

function finishPieces(house: House, list: 'rooms' | 'structures'): Piece[] {
  return house[list].flatMap((place, at) =>
    place.finishes.flatMap((finish: Finish, index): Piece[] =>
      finish.work !== undefined || finish.kept || !saysMore(house, finish.by, finish.done)
        ? []
        : [
            {
              what: `${nameOf(place)}, ${finish.on}: ${finish.what}`,
              who: whoDid(house, finish.by),
              done: finish.done,
              permit: finish.permit,
              path: [list, at, 'finishes', index],
              dated: 'done',
            },
          ],
    ),
  );
}

/** Whether a piece of work, or a permit, came after the purchase; its own day counts as after it. */
export function isSince({ house: { bought } }: House, done: HouseDate | undefined): Truth {
  if (bought?.earliest !== undefined && done?.latest !== undefined && done.latest < bought.earliest)
    return 'no';
  const after =
    bought?.latest !== undefined && done?.earliest !== undefined && done.earliest >= bought.latest;
  return after ? 'yes' : 'not known';
}

/** In the order of the folder; what is surely older than the purchase is left out. */
export const hiredWork = (house: House): HiredWork[] =>
  piecesOf(house).flatMap(({ who, ...piece }) =>
    who.kind !== 'hired'
      ? []
      : [{ ...piece, person: who.person, since: isSince(house, piece.done) === 'yes' ? 'yes' : 'not known' }],
  );

/** Whether anybody was hired since the purchase. */
export function contractorFact(house: House): DutyFact {
  const hired = hiredWork(house);
  const sure = hired.find(({ since }) => since === 'yes');
  const about = { asks: 'who did the work', hint: 'by: owner' };
  if (sure !== undefined)
    return { ...about, is: 'yes', path: sure.path, words: `work by ${sure.person.name}` };
  const [perhaps] = hired;
  if (perhaps !== undefined) return beforeOrAfter(house, perhaps);
  const pieces = piecesOf(house);
  const open = pieces.find(({ who }) => who.kind === 'not-known');
  if (open !== undefined)
    return { ...about, is: undefined, path: open.path, words: `who did “${open.what}” is not known` };
  if (pieces.length === 0)
    return {
      is: undefined,
      path: ['work'],
      words: 'no work since the purchase is recorded',
      asks: 'whether there was work since the purchase, and who did it',
      hint: 'work: [{ id: work-1, what: kitchen circuits, did: new, by: owner, done: 2026-04-11 }]',
    };
  return {
    ...about,
    is: 'no',
    path: ['work'],
    words: 'all work recorded since the purchase was the owner’s and family’s',
  };
}

function beforeOrAfter({ house: { bought } }: House, { what, path, dated }: HiredWork): DutyFact {
  if (bought === undefined)
    return {
      is: undefined,
      path: ['house', 'bought'],
      words: 'when it was bought is not written',
      asks: 'when you bought it',
      hint: 'bought: 2026-02-17',
    };
  const asks = `whether hired work, “${what}”, was done since the purchase`;
  return {
    is: undefined,
    path: [...path, dated],
    words: `${asks} is not known`,
    asks,
    hint: `${dated}: 2026-04-11`,
  };
}
