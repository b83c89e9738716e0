/**
 * Several houses side by side: each is read and worked out as for its house file, and what it teaches becomes one
 * page and one PDF. A house with an error is left out, by name.
 */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { type Located, locate } from './diagnostics/report.js';
import type { HouseFolder } from './find-houses.js';
import { readHouse } from './intake/read-house.js';
import { type ComparedHouse, composeComparison } from './packet/compose-comparison.js';
import type { Packet } from './packet/packet.js';
import { payeesOverHouses } from './tally/money/payees-over-houses.js';
import { deriveTally } from './tally/tally.js';
import { version } from './version.js';

export interface Comparison {
  readonly located: readonly Located[];
  /** Undefined if there are not two houses to show. */
  readonly packet: Packet | undefined;
  /** Houses that are in it, and those that are not, with why. */
  readonly shown: readonly string[];
  readonly leftOut: readonly { readonly house: string; readonly why: string }[];
}

export async function compareHouses(houses: readonly HouseFolder[], asOf: string): Promise<Comparison> {
  const compared: ComparedHouse[] = [];
  const books: Parameters<typeof payeesOverHouses>[0][number][] = [];
  const located: Located[] = [];
  const leftOut: Comparison['leftOut'][number][] = [];
  for (const { folder, shown } of houses) {
    const read = await readHouse(folder, shown, { ledger: true });
    const diagnostics: Diagnostic[] = [...read.diagnostics];
    const { found } = read;
    const derived = found === undefined ? undefined : deriveTally(found.house, asOf, new Map(), found.ledger);
    diagnostics.push(...(derived?.diagnostics ?? []));
    const errors = diagnostics.filter(({ severity }) => severity === 'error');
    located.push(...locate(errors, read.places));
    const money = derived?.tally.money;
    if (found === undefined || errors.length > 0) leftOut.push({ house: shown, why: 'it has errors' });
    else if (money === undefined || money.ledger.costs.length === 0)
      leftOut.push({ house: shown, why: 'it has no row of costs' });
    else {
      compared.push({
        folder: found.folder,
        name: found.house.house.name,
        lessons: money.lessons,
        sold: money.sale !== undefined,
      });
      books.push({ house: found.house, ledger: money.ledger });
    }
  }
  return {
    located,
    packet:
      compared.length < 2
        ? undefined
        : composeComparison({
            houses: compared,
            payees: payeesOverHouses(books, asOf),
            asOf,
            program: `sillplate ${version()}`,
          }),
    shown: compared.map(({ name }) => name),
    leftOut,
  };
}
