/**
 * “Rewiring of the upper floor”, paid as an improvement, where no work in the folder is of that kind. Of the house file
 * alone.
 *
 * Only big work that a cost row calls by its own name is looked for; anything near it in the folder, in the same place or
 * in none, answers it.
 */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { House } from '../../facts/house.js';
import type { CostRow } from '../../facts/ledger.js';
import { nameOf } from '../../facts/place-name.js';
import { type Improvement, listImprovements } from '../improvements.js';
import { type ClashSources, clashOf, surelyBefore } from './clash.js';
import { plainWords } from './plain-words.js';

interface Big {
  /** What a row calls it. */
  readonly paid: RegExp;
  /** What the folder may call the same. */
  readonly told: RegExp;
}

const BIG: readonly Big[] = [
  {
    paid: /\bre-?wir(ing|ed?)\b|\bnew wiring\b/i,
    told: /\bwir(ing|ed?|es)\b|re-?wir|circuit|electric|service panel|sub-?panel|breaker/i,
  },
  {
    paid: /\bre-?pip(ing|ed?)\b|\bnew (supply|drain|water|waste)? ?(pipes|piping)\b/i,
    told: /pip(es?|ing|ed)\b|plumb|drain|water line/i,
  },
  {
    paid: /\bre-?roof(ing|ed)?\b|\bnew (roof|shingles)\b|\broof (replaced|replacement)\b/i,
    told: /roof|shingle|underlayment/i,
  },
  { paid: /\b(new|replacement) windows\b|\bwindows replaced\b/i, told: /window|glazing|glass/i },
  { paid: /\bnew siding\b|\bre-?siding\b/i, told: /siding|clapboard|stucco/i },
  {
    paid: /\b(new|replacement) (gas |oil |electric )?(furnace|boiler|heat pump|air condition\w+)\b/i,
    told: /furnace|boiler|\bheat(ing| pump)?\b|air (condition|handler)|cooling|hvac/i,
  },
  { paid: /\b(new|replacement) (gas |electric )?water heater\b/i, told: /water heater/i },
  {
    paid: /\bunderpinning\b|\bnew (foundation|footings?)\b|\bfoundation repair\b/i,
    told: /foundation|footing|underpin|wall/i,
  },
  { paid: /\bnew (sewer|septic)\b|\bsewer line replaced\b/i, told: /sewer|septic|drain/i },
  { paid: /\bnew (driveway|deck|patio|fence)\b/i, told: /drive|deck|patio|fence|concrete|paving/i },
];

export function paidImprovements({ house, ledger }: ClashSources): Diagnostic[] {
  if (ledger === undefined) return [];
  const done = listImprovements(house)
    .done.filter((one) => !surelyBefore(one.done, house.house.bought))
    .map((one) => ({ where: one.where, words: wordsOf(one) }));
  const ids = new Set([...house.work, ...house.systems].map(({ id }) => id));
  return ledger.costs.flatMap((row): Diagnostic[] => {
    if (row.bucket !== 'improvement' || row.cents <= 0) return [];
    // A row that names its work or its system is answered by that.
    if (row.place !== undefined && ids.has(row.place)) return [];
    const big = BIG.find(({ paid }) => paid.test(row.what));
    if (big === undefined) return [];
    const places = placesOf(row, house);
    if (done.some((one) => big.told.test(one.words) && isThere(one, places))) return [];
    return [
      clashOf({
        severity: 'note',
        path: ['costs', row.row, 'what'],
        message: `“${row.what}” was paid to ${row.payee} as an improvement, and the folder tells of no such work${places === undefined ? '' : ' there'}`,
        hints: [
          `add the work, for example  - { id: ${idOf(row.what)}, what: ${plainWords(row.what)}, did: replaced, done: ${row.date} }`,
          'if it stands there under another name, put its id into the column  place',
          'if it was for something else, correct the column  what',
        ],
      }),
    ];
  });
}

const idOf = (words: string): string =>
  [...words.toLowerCase().matchAll(/[a-z0-9]+/g)]
    .map(([word]) => word)
    .filter((word) => !['of', 'the', 'a', 'an', 'in', 'on', 'for'].includes(word))
    .slice(0, 3)
    .join('-');

function wordsOf({ source }: Improvement): string {
  if (source.kind === 'work')
    return [source.item.what, source.item.how, ...source.systems.map(({ is }) => is)].join(' ');
  if (source.kind === 'system') return [source.item.is, source.item.name].join(' ');
  return `${source.item.on} ${source.item.what}`;
}

/** Work that says no place may be in any. */
const isThere = ({ where }: Pick<Improvement, 'where'>, places: ReadonlySet<string> | undefined): boolean =>
  places === undefined || where.length === 0 || where.some((id) => places.has(id));

/** The place of the column, and those that the row's words name, each level with its rooms; undefined: the whole house. */
function placesOf({ place, what }: CostRow, house: House): ReadonlySet<string> | undefined {
  const lower = what.toLowerCase();
  const named = [...house.levels, ...house.rooms, ...house.structures].filter(
    (one) =>
      one.id === place ||
      [one.id.replaceAll('-', ' '), nameOf(one).toLowerCase()].some((name) =>
        new RegExp(`\\b${name.replaceAll(/[^a-z0-9 ]/g, '.')}\\b`).test(lower),
      ),
  );
  // The main level often stands for the whole house.
  if (named.length === 0 || named.every(({ id }) => id === 'main')) return undefined;
  const levels = named.map(({ id }) => id);
  const rooms = house.rooms.flatMap((room) => (levels.includes(room.level) ? [room.id] : []));
  const over = house.rooms.flatMap((room) => (levels.includes(room.id) ? [room.level] : []));
  return new Set([...levels, ...rooms, ...over]);
}
