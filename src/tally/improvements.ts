/**
 * Everything that was done, rolled up from work, finishes and systems into one list.
 *
 * A thing is listed once: a system that a work item names is told within that item.
 */
import { compareDates, type HouseDate } from '../facts/date.js';
import type { Finish, House, Room, Structure, System, WorkItem } from '../facts/house.js';
import { TRADES, type Trade, tradeOf, tradeOfFinish } from './trades.js';
import { type Who, whoDid } from './who.js';

export type Deed = WorkItem['did'];

export type ImprovementSource =
  | { readonly kind: 'work'; readonly item: WorkItem; readonly systems: readonly System[] }
  | { readonly kind: 'finish'; readonly item: Finish; readonly home: Room | Structure }
  | { readonly kind: 'system'; readonly item: System };

export interface Improvement {
  /** `work-cellar-rail`, `finish-kitchen-0`, `system-water-heater`: stable while the facts stay. */
  readonly id: string;
  readonly source: ImprovementSource;
  readonly did: Deed;
  readonly trade: Trade;
  /** Ids of rooms, levels, stairs or structures. */
  readonly where: readonly string[];
  readonly done: HouseDate | undefined;
  readonly who: Who;
  readonly safety: boolean;
  /** A finish that a work item tells of: its id. Counted and told there, not by itself. */
  readonly partOf: string | undefined;
}

/** What was left as it was found, or put in before this owner. */
export interface Kept {
  readonly id: string;
  readonly source: Exclude<ImprovementSource, { kind: 'work' }>;
  readonly where: readonly string[];
}

export function listImprovements(house: House): { done: readonly Improvement[]; kept: readonly Kept[] } {
  const toldInWork = new Set(house.work.flatMap((item) => item.systems));
  const done: Improvement[] = house.work.map((item) => ({
    id: `work-${item.id}`,
    source: {
      kind: 'work',
      item,
      systems: house.systems.filter((system) => item.systems.includes(system.id)),
    },
    did: item.did,
    trade: tradeOf(`${item.what} ${item.how ?? ''}`, item.trade),
    where: item.where,
    done: item.done,
    who: whoDid(house, item.by),
    safety: item.safety,
    partOf: undefined,
  }));
  const kept: Kept[] = [];
  for (const home of [...house.rooms, ...house.structures]) {
    for (const [index, item] of home.finishes.entries()) {
      const id = `finish-${home.id}-${index}`;
      const source = { kind: 'finish', item, home } as const;
      const did = deedOf(item);
      if (did === undefined) kept.push({ id, source, where: [home.id] });
      else
        done.push({
          id,
          source,
          did,
          trade: tradeOfFinish(item),
          where: [home.id],
          done: item.done,
          who: whoDid(house, item.by),
          safety: false,
          partOf: item.work,
        });
    }
  }
  for (const item of house.systems) {
    // A kept system that work was done on is still a kept one: downspouts were added, the gutters are as found.
    if (toldInWork.has(item.id) && !item.kept) continue;
    const source = { kind: 'system', item } as const;
    const where = item.where === undefined ? [] : [item.where];
    const did = deedOfSystem(house, item);
    if (did === undefined) kept.push({ id: `system-${item.id}`, source, where });
    else {
      done.push({
        id: `system-${item.id}`,
        source,
        did,
        trade: tradeOf(item.is),
        where,
        // The day it was put in says nothing about when it was serviced, and the other way round.
        done: PUT_IN.includes(did) ? item.installed?.value : item.serviced,
        who: whoDid(house, item.by),
        safety: false,
        partOf: undefined,
      });
    }
  }
  return { done: done.sort(whatBuyersAskFirst), kept };
}

/** A finish with a date but no verb is new, or painted if it is paint; one that is kept, or has neither, was left as found. */
export function deedOf(finish: Finish): Deed | undefined {
  if (finish.kept) return undefined;
  if (finish.did !== undefined) return finish.did;
  if (finish.done === undefined) return undefined;
  return /^(paint|stain|varnish)\b/i.test(finish.what) ? 'painted' : 'new';
}

/** Deeds after which a thing is as new as its date. */
export const PUT_IN: readonly Deed[] = ['new', 'replaced', 'added'];

function deedOfSystem(house: House, system: System): Deed | undefined {
  if (system.kept) return undefined;
  if (system.did !== undefined) return system.did;
  const installed = system.installed?.value;
  const bought = house.house.bought?.earliest;
  // Installed before the purchase: somebody else's work, told among the ages.
  if (installed?.latest === undefined || bought === undefined) return undefined;
  // A date that reaches back before the month of the purchase doesn't show that this owner did it.
  const mayBeEarlier = installed.earliest === undefined || installed.earliest < `${bought.slice(0, 7)}-01`;
  return installed.latest >= bought && !mayBeEarlier ? 'replaced' : undefined;
}

function whatBuyersAskFirst(a: Improvement, b: Improvement): number {
  const trade = TRADES.indexOf(a.trade) - TRADES.indexOf(b.trade);
  if (trade !== 0) return trade;
  if (a.done !== undefined && b.done !== undefined) {
    const newestFirst = compareDates(b.done, a.done);
    if (newestFirst !== 0) return newestFirst;
  } else if (a.done !== b.done) return a.done === undefined ? 1 : -1;
  return a.id < b.id ? -1 : 1;
}

/** What is counted and told by itself: everything but the finishes that a work item tells of. */
export const toldByThemselves = (improvements: readonly Improvement[]): Improvement[] =>
  improvements.filter((one) => one.partOf === undefined);
