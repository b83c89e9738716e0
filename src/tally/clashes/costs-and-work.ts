/** Money paid for work that the folder does not have, and hired work that no row paid. Of the house file alone. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { Bucket } from '../../facts/bucket.js';
import type { House } from '../../facts/house.js';
import { type CostRow, EMPTY_LEDGER } from '../../facts/ledger.js';
import { nameOfPlace } from '../../facts/place-name.js';
import { listImprovements } from '../improvements.js';
import { type FindPayee, payeeFinder, sellsOf } from '../money/payee-names.js';
import { systemName } from '../system-name.js';
import { whoDid } from '../who.js';
import { type ClashSources, clashOf, surelyBefore } from './clash.js';
import { plainWords } from './plain-words.js';

/** Buckets of work on the house. Holding it, mowing and selling leave nothing that could be listed as work. */
const WORK: readonly Bucket[] = ['improvement', 'repair', 'restoration'];

/** Words by which a piece of work says that it cost nothing, or that somebody else paid. */
const FREE =
  /\b(free|no charge|without charge|nothing (was )?paid|unpaid|under warranty|paid by|seller paid|insurer paid)\b/i;

export function costsAndWork({ house, ledger }: ClashSources): Diagnostic[] {
  const { costs, sheets } = ledger ?? EMPTY_LEDGER;
  if (sheets.costs === undefined || costs.length === 0) return [];
  const rows = costs.filter(({ bucket, cents }) => WORK.includes(bucket) && cents > 0);
  const find = payeeFinder(house);
  const payees = unlistedPayees(house, rows, find);
  // A row whose payee has no work is one finding, wherever it was for.
  const said = new Set(payees.flatMap(({ rows: own }) => own));
  return [
    ...unpaidWork(house, costs, sheets.costs, find),
    ...payees.map(({ finding }) => finding),
    ...unlistedPlaces(
      house,
      rows.filter((row) => !said.has(row)),
    ),
  ];
}

/** Work that somebody was hired for after the purchase, with no row to them and none for it. */
function unpaidWork(house: House, costs: readonly CostRow[], sheet: string, find: FindPayee): Diagnostic[] {
  const { bought } = house.house;
  return house.work.flatMap((item, index): Diagnostic[] => {
    const who = whoDid(house, item.by);
    if (who.kind !== 'hired' || item.done === undefined || bought === undefined) return [];
    // Before the purchase somebody else paid; a day that may be before it is left alone.
    if (
      item.done.earliest === undefined ||
      bought.earliest === undefined ||
      item.done.earliest < bought.earliest
    )
      return [];
    if (FREE.test([item.note, item.from].join(' '))) return [];
    const names = [item.id, ...item.systems];
    // What a shop was paid for the same work is material, and no pay for who did it.
    const paid = costs.some(
      ({ place, payee }) =>
        find(payee).person?.id === who.person.id ||
        (place !== undefined && names.includes(place) && sellsOf(find(payee)) !== 'goods'),
    );
    if (paid) return [];
    const shop = costs.some(({ place }) => place !== undefined && names.includes(place));
    return [
      clashOf({
        severity: 'note',
        path: ['work', index, 'by'],
        message: `“${item.what}” was done by ${who.person.name}, and ${sheet} has no row to them${shop ? ', and what it has for it went to a shop' : ' and none for it'}`,
        hints: [
          `add the payment, with  ${item.id}  in the column  place`,
          'if nothing was paid, say so beside the work:  note: nothing paid',
        ],
      }),
    ];
  });
}

interface Unlisted {
  readonly rows: readonly CostRow[];
  readonly finding: Diagnostic;
}

/** Somebody of `people:` who was paid for work, and of whom no work tells. */
function unlistedPayees(house: House, rows: readonly CostRow[], find: FindPayee): Unlisted[] {
  const named = new Set<string | undefined>([
    ...house.work.map(({ by }) => by),
    ...house.systems.map(({ by }) => by),
    ...[...house.rooms, ...house.structures].flatMap(({ finishes }) => finishes.map(({ by }) => by)),
    house.lead?.firm,
    house.measured?.by,
  ]);
  return house.people.flatMap((person, index): Unlisted[] => {
    if (named.has(person.id)) return [];
    const own = rows.filter(({ payee }) => {
      const known = find(payee);
      return known.person?.id === person.id && sellsOf(known) === 'services';
    });
    const [first, ...more] = own;
    if (first === undefined) return [];
    const finding = clashOf({
      severity: 'note',
      path: ['costs', first.row, 'payee'],
      beside: ['people', index, 'name'],
      message: `${person.name} was paid for “${first.what}”${andMore(more.length)}, and no work in the folder was done by them`,
      hints: [`add the work, with  by: ${person.id}`, 'if it stands there already, name them in its  by:'],
    });
    return [{ rows: own, finding }];
  });
}

/** Rows for a room, level, structure or system in which nothing was done. */
function unlistedPlaces(house: House, rows: readonly CostRow[]): Diagnostic[] {
  const done = placesOfWork(house);
  const unlisted = new Map<string, { readonly first: CostRow; more: number }>();
  for (const row of rows) {
    if (row.place === undefined || done.has(row.place)) continue;
    const known = unlisted.get(row.place);
    if (known === undefined) unlisted.set(row.place, { first: row, more: 0 });
    else known.more += 1;
  }
  return [...unlisted].map(([place, { first, more }]): Diagnostic => {
    const system = house.systems.find(({ id }) => id === place);
    const name = system === undefined ? nameOfPlace(house, place) : systemName(system);
    return clashOf({
      severity: 'note',
      path: ['costs', first.row, 'place'],
      message: `“${first.what}”${andMore(more)} was paid for “${name}”, and the folder tells of no work ${system === undefined ? 'there' : 'on it'}`,
      hints: [
        system === undefined
          ? `add the work, for example  - { id: ${place}-work, what: ${plainWords(first.what)}, did: ${first.bucket === 'improvement' ? 'new' : 'repaired'}, where: [${place}] }`
          : `add the work, with  systems: [${place}]`,
        'if it was for another place, correct the column  place',
      ],
    });
  });
}

const andMore = (more: number): string => (more === 0 ? '' : ` (and ${more} more)`);

/** Ids in whose place something was done, work items themselves, and the levels that such rooms are on. */
function placesOfWork(house: House): ReadonlySet<string> {
  const { bought } = house.house;
  const direct = listImprovements(house).done.flatMap(({ where, source }) => [
    ...where,
    ...(source.kind === 'finish' ? [] : [source.item.id]),
    ...(source.kind === 'work' ? source.item.systems : []),
  ]);
  const systems = house.systems.flatMap((system) => {
    const touched =
      system.did !== undefined ||
      surelyBefore(bought, system.serviced) ||
      surelyBefore(bought, system.installed?.value);
    return touched ? [system.id, ...(system.where === undefined ? [] : [system.where])] : [];
  });
  const alarms = house.alarms.flatMap(({ installed, where }) =>
    surelyBefore(bought, installed) ? [where] : [],
  );
  const ids = new Set([...direct, ...systems, ...alarms]);
  const levels = house.rooms.flatMap(({ id, level }) => (ids.has(id) ? [level] : []));
  // Work on a whole level is work in its rooms, and a whole house of rooms has stairs.
  const rooms = house.rooms.flatMap(({ id, level }) => (ids.has(level) ? [id] : []));
  return new Set([...ids, ...levels, ...rooms]);
}
