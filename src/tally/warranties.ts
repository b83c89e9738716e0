import { Temporal } from 'temporal-polyfill';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House, System, Warranty, WorkItem } from '../facts/house.js';

export interface WarrantyEnd {
  readonly warranty: Warranty;
  /** What it is on. */
  readonly on:
    | { readonly kind: 'system'; readonly item: System }
    | { readonly kind: 'work'; readonly item: WorkItem };
  readonly path: FactPath;
  /** Last day it runs, YYYY-MM-DD; undefined: not known. Where its start is a span, counted from the earliest day. */
  readonly lastDay: string | undefined;
  /** How the last day was come by. */
  readonly basis: 'as stated' | 'counted from installation' | 'not known';
  /** It runs on its last day, too. Undefined: not known. */
  readonly running: boolean | undefined;
}

export function deriveWarranties(house: House, asOf: string): WarrantyEnd[] {
  const onSystems = house.systems.flatMap((item, index) =>
    [item.warranty ?? []]
      .flat()
      .map((warranty, at) =>
        end(
          warranty,
          { kind: 'system', item },
          ['systems', index, 'warranty', ...(Array.isArray(item.warranty) ? [at] : [])],
          item.installed?.value?.earliest,
          asOf,
        ),
      ),
  );
  const onWork = house.work.flatMap((item, index) =>
    item.warranty === undefined
      ? []
      : [end(item.warranty, { kind: 'work', item }, ['work', index, 'warranty'], item.done?.earliest, asOf)],
  );
  return [...onSystems, ...onWork];
}

function end(
  warranty: Warranty,
  on: WarrantyEnd['on'],
  path: FactPath,
  start: string | undefined,
  asOf: string,
): WarrantyEnd {
  const stated = warranty.until?.latest;
  const counted =
    warranty.years === undefined || start === undefined ? undefined : addWarrantyYears(start, warranty.years);
  const lastDay = stated ?? counted;
  return {
    warranty,
    on,
    path,
    lastDay,
    basis:
      stated !== undefined ? 'as stated' : counted !== undefined ? 'counted from installation' : 'not known',
    running: lastDay === undefined ? undefined : asOf <= lastDay,
  };
}

/**
 * Years may have a half or a quarter; a part of a month is dropped, and 29 February ends on the 28th. Years that are
 * whole months have an exact binary form (a whole, half or quarter), so that the product can’t fall short of one.
 */
const addWarrantyYears = (start: string, years: number): string =>
  Temporal.PlainDate.from(start)
    .add({ months: Math.floor(years * 12) })
    .toString();
