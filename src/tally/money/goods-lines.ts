/**
 * On which line of a dealer's cost of goods sold a row stands. Only line 36 and the sum of 36 to 39 follow from the
 * rule (`cost-of-goods-sold` in tables/basis.yaml); the rest is divided by what a payee is and sells.
 */
import type { Bucket } from '../../facts/bucket.js';
import type { CostRow } from '../../facts/ledger.js';
import { printMoney } from '../../facts/money.js';
import { type Books, sumRows } from './books.js';
import { groupBy } from './group-by.js';
import { sellsOf } from './payee-names.js';

export type GoodsLine = '36' | '37' | '38' | '39';

/** Work on the house, which the kind of payee divides over three lines. */
const WORK: readonly Bucket[] = ['improvement', 'restoration', 'repair', 'rebate'];

/** What a row is, as the remark on line 39 names it. */
const KINDS = {
  price: { line: '36', words: 'the price of the house' },
  services: { line: '37', words: 'services' },
  goods: { line: '38', words: 'goods' },
  closing: { line: '39', words: 'costs of closing, taxes and assessments' },
  public: { line: '39', words: 'offices and other public bodies' },
  hire: { line: '39', words: 'hire of machines' },
  rebates: { line: '39', words: 'rebates' },
  'not-written': { line: '39', words: 'payees of whom it isn’t written' },
} as const satisfies Record<string, { readonly line: GoodsLine; readonly words: string }>;

type Kind = keyof typeof KINDS;

export const DIVIDED =
  'divided by what each payee sells: services on 37; goods on 38; offices and other public bodies (permits, dump fees), hire, rebates and payees of whom it isn’t written on 39. The rule fixes only the sum, and the preparer may divide it otherwise';

function kindOf(books: Books, { bucket, payee }: CostRow): Kind {
  if (bucket === 'purchase') return 'price';
  if (!WORK.includes(bucket)) return 'closing';
  if (bucket === 'rebate') return 'rebates';
  const known = books.findPayee(payee);
  const taxClass = known.facts?.['tax-class'];
  if (taxClass === 'government' || taxClass === 'tax-exempt') return 'public';
  const sells = sellsOf(known);
  if (sells === 'services' || sells === 'wages') return 'services';
  if (sells === 'goods') return 'goods';
  return sells === 'rent' ? 'hire' : 'not-written';
}

export const goodsLineOf = (books: Books, row: CostRow): GoodsLine => KINDS[kindOf(books, row)].line;

/** "costs of closing, taxes and assessments $1,596.68, rebates -$300.00"; undefined where there are no rows. */
export function kindsWords(books: Books, rows: readonly CostRow[]): string | undefined {
  const groups = groupBy(rows, (row) => kindOf(books, row));
  const words = (Object.keys(KINDS) as Kind[]).flatMap((kind) => {
    const own = groups.get(kind);
    return own === undefined ? [] : [`${KINDS[kind].words} ${printMoney(sumRows(own).cents)}`];
  });
  return words.length === 0 ? undefined : words.join(', ');
}
