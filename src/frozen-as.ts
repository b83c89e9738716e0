/** Whether a PDF is one that was delivered, as it lies frozen in its house folder. */
import type { DeliveryRecord } from './facts/delivery.js';
import { readDeliveries } from './intake/read-deliveries.js';
import { pdfBeginnings } from './pdf-beginnings.js';

export interface Frozen {
  readonly record: DeliveryRecord;
  /** The delivery's folder as its owner would type it. */
  readonly shown: string;
  /** Bytes that were added behind the PDF since; 0 where it is as it was given. */
  readonly added: number;
}

/**
 * The deliveries whose PDF has these bytes, or the bytes that these begin with, by the digest in their manifest: a frozen PDF that somebody changed since
 * vouches for nothing, and a delivery that names another one only if that is still the one it named. `folder` is the
 * house's, `shown` the same as its owner would type it.
 */
export async function frozenAs(pdf: Uint8Array, folder: string, shown: string): Promise<Frozen[]> {
  const { deliveries } = await readDeliveries(folder, shown);
  const behind = pdfBeginnings(pdf);
  const byName = new Map(deliveries.map((one) => [one.name, one]));
  return deliveries.flatMap(({ name, record, shown: at }) => {
    const holder = byName.get(record['same-as'] ?? name);
    const added = behind.get(holder?.pdf ?? '');
    if (added === undefined || (record['same-manifest'] ?? holder?.manifest) !== holder?.manifest) return [];
    return [{ record, shown: at, added }];
  });
}
