/** What was paid, by bucket. */
import { BUCKET_NAMES, type Bucket } from '../../facts/bucket.js';
import { addUp, type Books, sumRows } from './books.js';
import type { BucketTotal } from './money-tally.js';

/** Buckets in which a sum below zero is the usual thing and no refund. */
export const BELOW_ZERO: readonly Bucket[] = ['rebate', 'insurance-payment', 'property-tax-taken-over'];

/** In the buckets' order; a bucket without rows is left out. Each row is in one of them. */
export function bucketTotals(books: Books): BucketTotal[] {
  return BUCKET_NAMES.flatMap((bucket) => {
    const rows = books.byBucket.get(bucket) ?? [];
    if (rows.length === 0) return [];
    const refunds = BELOW_ZERO.includes(bucket)
      ? 0
      : addUp(rows.flatMap(({ cents }) => (cents < 0 ? [cents] : [])));
    const salesTax = addUp(rows.map((row) => row.salesTax ?? 0));
    return [{ bucket, ...sumRows(rows), refunds, salesTax }];
  });
}
