/**
 * Cells that hold one of a set of words: a bucket, a way of paying, the id of a place or a paper.
 *
 * Each is asked once for every text that occurs: a sheet of thousands of rows repeats few words.
 */
import { BUCKET_NAMES, BUCKETS, type Bucket } from '../facts/bucket.js';
import { valueAt } from '../facts/explain-issue.js';
import type { House } from '../facts/house.js';
import { PAYMENT_WAYS, type PaymentWay } from '../facts/ledger.js';
import { nearestWord } from '../facts/nearest-word.js';
import { plainWord } from './sheet-headings.js';
import type { CellRead } from './sheet-row.js';

/** Beyond this many misspelt words in one sheet the cause is another, and looking for the nearest of each takes time. */
const MOST_SUGGESTIONS = 200;

/** What a cell's text is likely meant as. */
type Nearest = (written: string, known: readonly string[]) => string | undefined;

/** Remembers answers by the text. */
function once<T>(
  reader: (written: string, nearest: Nearest) => CellRead<T>,
): (written: string) => CellRead<T> {
  const answers = new Map<string, CellRead<T>>();
  let asked = 0;
  const nearest: Nearest = (written, known) => {
    asked += 1;
    return asked > MOST_SUGGESTIONS || written.length > 60 ? undefined : nearestWord(written, known);
  };
  return (written) => {
    let answer = answers.get(written);
    if (answer === undefined) {
      answer = reader(written, nearest);
      answers.set(written, answer);
    }
    return answer;
  };
}

const yes = <T>(value: T): CellRead<T> => ({ ok: true, value });
const no = (problem: string, ...hints: (string | undefined)[]): CellRead<never> => ({
  ok: false,
  problem,
  hints: hints.filter((hint) => hint !== undefined),
});
const perhaps = (word: string | undefined): string | undefined =>
  word === undefined ? undefined : `perhaps  ${word}`;
const shorten = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

/** Other words that mean one bucket and no other. */
const BUCKET_ALSO: Readonly<Partial<Record<Bucket, readonly string[]>>> = {
  purchase: ['purchase of the house', 'price of the house', 'house purchase'],
  'purchase-closing-in-basis': ['closing in basis', 'closing costs inside basis'],
  'purchase-closing-out': ['closing out', 'closing costs out of basis', 'closing costs not in basis'],
  'property-tax-taken-over': ['seller’s property tax', 'property taxes taken over'],
  assessment: ['assessments', 'special assessment', 'local improvement assessment'],
  improvement: ['capital improvement', 'capital improvements'],
  restoration: ['restorations'],
  repair: ['repairs', 'repairs and maintenance'],
  'property-tax': ['property taxes', 'real estate tax', 'real estate taxes'],
  interest: ['loan interest', 'mortgage interest'],
  insurance: ['insurance premium', 'insurance premiums', 'homeowner’s insurance'],
  utilities: ['utility'],
  upkeep: ['lawn and cleaning', 'lawn care'],
  dues: ['association dues', 'HOA dues', 'HOA'],
  holding: ['holding cost', 'holding costs', 'other holding costs'],
  selling: ['selling cost', 'selling expense', 'selling expenses', 'cost of sale'],
  tool: ['tools'],
  rebate: ['rebates'],
  'insurance-payment': ['insurance payments', 'insurance claim', 'insurance proceeds'],
};

/** Words that may mean several; which one, only the writer knows. */
const BUCKET_UNCLEAR: readonly (readonly [words: readonly string[], hints: readonly string[]])[] = [
  [
    ['tax', 'taxes'],
    [
      'write property-tax for your own share of the house’s tax, or property-tax-taken-over for the seller’s share that you paid',
      'sales tax stands in its own column',
    ],
  ],
  [
    ['closing', 'closing cost', 'closing costs', 'purchase closing'],
    [
      'write purchase-closing-in-basis for title, recording and transfer tax',
      'write purchase-closing-out for what a loan costs, insurance and rent',
      'write selling for the closing of your sale',
    ],
  ],
  [
    ['material', 'materials', 'supplies', 'labor', 'labour', 'construction', 'renovation', 'remodel', 'work'],
    ['write what it was for: improvement, repair or restoration'],
  ],
];

const known = <T>(words: readonly (readonly [word: string, means: T])[]): ReadonlyMap<string, T> =>
  new Map(words.map(([word, means]) => [plainWord(word), means]));

const BUCKET_WORDS = known(
  BUCKET_NAMES.flatMap((bucket) =>
    [bucket, BUCKETS[bucket].title, ...(BUCKET_ALSO[bucket] ?? [])].map((word) => [word, bucket] as const),
  ),
);
const UNCLEAR_WORDS = known(
  BUCKET_UNCLEAR.flatMap(([words, hints]) => words.map((word) => [word, hints] as const)),
);
const ALL_BUCKETS = `the buckets: ${BUCKET_NAMES.join(', ')}`;

export const bucketReader = (): ((written: string) => CellRead<Bucket>) =>
  once((written, nearest) => {
    if (written === '')
      return no(
        'this payment has no bucket',
        'write what it was for, for example improvement, repair or tool; the program never decides it',
        ALL_BUCKETS,
      );
    const word = plainWord(written);
    const bucket = BUCKET_WORDS.get(word);
    if (bucket !== undefined) return yes(bucket);
    const unclear = UNCLEAR_WORDS.get(word);
    if (unclear !== undefined) return no(`“${written}” may mean more than one bucket`, ...unclear);
    return no(`“${shorten(written)}” is no bucket`, perhaps(nearest(written, BUCKET_NAMES)), ALL_BUCKETS);
  });

const PAID_ALSO: Readonly<Record<PaymentWay, readonly string[]>> = {
  cash: [],
  check: ['cheque', 'personal check', 'cashier’s check', 'bank check', 'money order'],
  transfer: [
    'bank transfer',
    'wire',
    'wire transfer',
    'ACH',
    'EFT',
    'direct debit',
    'direct deposit',
    'online transfer',
  ],
  card: ['credit card', 'debit card', 'credit', 'debit', 'bank card'],
  network: ['online payment app', 'payment app', 'app', 'payment network', 'third-party network'],
  loan: ['lender', 'mortgage', 'financed'],
};
const PAID_WORDS = known(
  PAYMENT_WAYS.flatMap((way) => [way, ...PAID_ALSO[way]].map((word) => [word, way] as const)),
);

/** `ways`: those that are meant here, all if left out. */
export const paidReader = (
  ways: readonly PaymentWay[] = PAYMENT_WAYS,
): ((written: string) => CellRead<PaymentWay>) =>
  once((written, nearest) => {
    const way = PAID_WORDS.get(plainWord(written));
    if (way !== undefined && ways.includes(way)) return yes(way);
    const all = `write one of: ${ways.join(', ')}`;
    if (/^(?:check|cheque|ck|chk)\s*(?:no\.?|nr\.?|#)?\s*\d+$/i.test(written))
      return no(
        `“${shorten(written)}” is more than the way of paying`,
        'write check, and its number in the note',
        all,
      );
    return no(`“${shorten(written)}” is no way of paying`, perhaps(nearest(written, ways)), all);
  });

const some = (ids: readonly string[]): string =>
  `${ids.slice(0, 12).join(', ')}${ids.length > 12 ? ', …' : ''}`;

/** Ids in what a house was checked from: a thing that was cut away for an error of its own is still there for a row. */
function writtenIds(written: unknown, ...words: readonly string[]): string[] {
  return words.flatMap((word) => {
    const list = valueAt(written, [word]);
    if (!Array.isArray(list)) return [];
    return list.map((_one, at) => valueAt(list, [at, 'id'])).filter((id) => typeof id === 'string');
  });
}

/** Ids of what a payment or an hour can be for. */
export function placeReader(house: House, written: unknown = house): (written: string) => CellRead<string> {
  const things = [...house.rooms, ...house.levels, ...house.structures, ...house.systems, ...house.work];
  const isId = new Set([
    ...things.map(({ id }) => id),
    ...writtenIds(written, 'rooms', 'levels', 'structures', 'systems', 'work'),
  ]);
  const ids = [...isId];
  const byName = new Map(
    things.flatMap((thing) =>
      [thing.id, 'name' in thing ? thing.name : undefined, 'what' in thing ? thing.what : undefined].flatMap(
        (word) => (word === undefined ? [] : [[plainWord(word), thing.id] as const]),
      ),
    ),
  );
  return once((written, nearest) => {
    if (isId.has(written)) return yes(written);
    if (/^(?:all|house|whole house|the (?:whole )?house|everywhere|-|–|—|n\/a|none)$/i.test(written))
      return no(`“${written}” is no id`, 'leave the cell empty for the whole house');
    const near = byName.get(plainWord(written)) ?? nearest(written, ids);
    return no(
      `no room, level, structure, system or work item has the id “${shorten(written)}”`,
      perhaps(near),
      ids.length === 0
        ? 'leave the cell empty: nothing has an id yet'
        : `leave it empty, or use one of: ${some(ids)}`,
    );
  });
}

const SEVERAL = /[\s,;|&+/]+/;

/** The id of one document. */
export function receiptReader(house: House, written: unknown = house): (written: string) => CellRead<string> {
  const ids = house.documents.map(({ id }) => id);
  const isId = new Set([...ids, ...writtenIds(written, 'documents')]);
  const byWord = new Map(
    house.documents.flatMap(({ id, file }) =>
      [id, ...(file === undefined ? [] : [file, file.replace(/\.[A-Za-z0-9]+$/, '')])].map(
        (word) => [plainWord(word.replace(/^.*\//, '')), id] as const,
      ),
    ),
  );
  return once((written, nearest) => {
    if (isId.has(written)) return yes(written);
    if (/^(?:none|no|lost|missing|not known|\?|-|–|—|n\/a)$/i.test(written))
      return no(`“${written}” is no receipt`, 'leave the cell empty where there is none');
    const file = written.replace(/^.*[\\/]/, '');
    const same = byWord.get(plainWord(file)) ?? byWord.get(plainWord(file.replace(/\.[A-Za-z0-9]+$/, '')));
    if (same !== undefined)
      return no(
        `“${shorten(written)}” is not the id of a document${/\.[A-Za-z0-9]+$/.test(written) ? ' but a file' : ''}`,
        `write ${same}`,
      );
    const parts = written.split(SEVERAL).filter((part) => part !== '' && part.toLowerCase() !== 'and');
    if (parts.length > 1 && (parts.some((part) => isId.has(part)) || /[,;|&+\n]/.test(written)))
      return no(
        'a row names one receipt, and here are several',
        'write one row for each receipt, with its own amount',
      );
    return no(
      `no document has the id “${shorten(written)}”`,
      perhaps(nearest(written, ids)),
      /^[A-Za-z0-9][A-Za-z0-9_-]*$/.test(written) && written.length <= 60
        ? `add it under documents:, for example  - { id: ${written}, what: receipt, kind: receipt }`
        : 'write the id of an entry under documents:',
    );
  });
}
