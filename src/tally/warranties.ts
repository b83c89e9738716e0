import { Temporal } from 'temporal-polyfill';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { HouseDate } from '../facts/date.js';
import type { House, System, Warranty, WorkItem } from '../facts/house.js';
import { isThere } from './still-there.js';

export interface WarrantyEnd {
  readonly warranty: Warranty;
  /** What it is on. */
  readonly on:
    | { readonly kind: 'system'; readonly item: System }
    | { readonly kind: 'work'; readonly item: WorkItem };
  readonly path: FactPath;
  /** The end as the writer gave it, to be printed as it was written; undefined: none was given. */
  readonly stated: HouseDate | undefined;
  /**
   * Last day it runs, YYYY-MM-DD; undefined: not known, or stated as more than one day or month. Where its start is a
   * span, counted from the earliest day.
   */
  readonly lastDay: string | undefined;
  /** How the last day was come by. */
  readonly basis: 'as stated' | 'counted from installation' | 'not known';
  /** It runs on its last day, too. Undefined: not known, or the as-of day lies within what its dates leave open. */
  readonly running: boolean | undefined;
}

/** Warranties on what is still there, and on work. */
export function deriveWarranties(house: House, asOf: string): WarrantyEnd[] {
  const onSystems = house.systems.flatMap((item, index) =>
    (isThere(item) ? [item.warranty ?? []] : [])
      .flat()
      .map((warranty, at) =>
        end(
          warranty,
          { kind: 'system', item },
          ['systems', index, 'warranty', ...(Array.isArray(item.warranty) ? [at] : [])],
          item.installed?.value,
          asOf,
        ),
      ),
  );
  const onWork = house.work.flatMap((item, index) =>
    item.warranty === undefined
      ? []
      : [end(item.warranty, { kind: 'work', item }, ['work', index, 'warranty'], item.done, asOf)],
  );
  return [...onSystems, ...onWork];
}

function end(
  warranty: Warranty,
  on: WarrantyEnd['on'],
  path: FactPath,
  start: HouseDate | undefined,
  asOf: string,
): WarrantyEnd {
  const stated = warranty.until;
  const ends = stated === undefined ? countedEnds(warranty, start) : statedEnds(stated);
  const counted = stated === undefined && ends.earliest !== undefined;
  return {
    warranty,
    on,
    path,
    stated,
    lastDay: counted || ends.earliest === ends.latest ? ends.earliest : undefined,
    basis: stated !== undefined ? 'as stated' : counted ? 'counted from installation' : 'not known',
    running: isRunning(ends, asOf),
  };
}

/** The first and the last day that an end can be. */
type Ends = Pick<HouseDate, 'earliest' | 'latest'>;

/** A month or year that is written as the end runs to its close; "about", a span and a decade leave the day open. */
function statedEnds({ earliest, latest, about, precision }: HouseDate): Ends {
  const open = about || precision === 'span' || precision === 'decade';
  return { earliest: open ? earliest : latest, latest };
}

function countedEnds({ years }: Warranty, start: HouseDate | undefined): Ends {
  if (years === undefined || start?.earliest === undefined) return { earliest: undefined, latest: undefined };
  const { earliest, latest } = start;
  return {
    earliest: addWarrantyYears(earliest, years),
    latest: latest === undefined ? undefined : addWarrantyYears(latest, years),
  };
}

function isRunning({ earliest, latest }: Ends, asOf: string): boolean | undefined {
  if (earliest !== undefined && asOf <= earliest) return true;
  return latest !== undefined && asOf > latest ? false : undefined;
}

/**
 * Years may have a half or a quarter; a part of a month is dropped, and 29 February ends on the 28th. Years that are
 * whole months have an exact binary form (a whole, half or quarter), so that the product can’t fall short of one.
 */
const addWarrantyYears = (start: string, years: number): string =>
  Temporal.PlainDate.from(start)
    .add({ months: Math.floor(years * 12) })
    .toString();
