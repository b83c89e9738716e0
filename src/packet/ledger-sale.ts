import type { House } from '../facts/house.js';

/** A sale as the files tell it. */
export interface ClosedSale {
  /** Contract price in cents. */
  readonly price: number;
  /** YYYY-MM-DD; the last day it can be, where the owner named no day. */
  readonly day: string;
  /** As the owner wrote it. */
  readonly written: string;
}

/** The sale of the house; undefined as long as it is not closed on the as-of day, as in the worksheets. */
export function closedSale(house: House, asOf: string): ClosedSale | undefined {
  const sale = house.money?.sale;
  if (sale === undefined || (sale.closed.earliest ?? '') > asOf) return undefined;
  const day = sale.closed.latest ?? sale.closed.earliest;
  return day === undefined ? undefined : { price: sale.price, day, written: sale.closed.written };
}
