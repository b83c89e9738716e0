/** Which repairs count in a holder's basis. Where the facts leave it open, nothing is picked. */
import type { Role } from '../../facts/bucket.js';
import type { CostRow } from '../../facts/ledger.js';
import { type Books, rowsIn } from './books.js';
import type { RuleId } from './money-rules.js';

export interface RepairSplit {
  readonly counted: readonly CostRow[];
  readonly out: readonly CostRow[];
  readonly open: readonly CostRow[];
  /** Why, as the end of a sentence. */
  readonly why: string;
  readonly rules: readonly RuleId[];
}

export function splitRepairs(books: Books, role: Exclude<Role, 'dealer'>): RepairSplit {
  const rows = rowsIn(books, 'repair');
  if (role === 'main-home') return homeRepairs(books, rows);
  if (role === 'investor')
    return {
      counted: [],
      out: [],
      open: rows,
      why: 'whether repairs of a house that was never put to use count is open',
      rules: ['repairs-kept-out', 'work-before-use'],
    };
  return rentalRepairs(books, rows);
}

function homeRepairs({ money }: Books, rows: readonly CostRow[]): RepairSplit {
  const remodel = money['extensive-remodel'];
  const all = { counted: [], out: [], open: [], rules: ['repairs-kept-out'] as const };
  if (remodel === 'yes')
    return {
      ...all,
      counted: rows,
      why: 'they were done as part of an extensive remodel, by the owner’s word',
    };
  if (remodel === 'no')
    return { ...all, out: rows, why: 'they were no part of an extensive remodel, by the owner’s word' };
  return {
    ...all,
    open: rows,
    why: 'whether they were part of an extensive remodel is not written under money: extensive-remodel:',
  };
}

function rentalRepairs(books: Books, rows: readonly CostRow[]): RepairSplit {
  const service = books.money.rental?.['in-service'];
  const rules = ['work-before-use', 'repairs-kept-out'] as const;
  if (service === undefined)
    return {
      counted: [],
      out: [],
      open: rows,
      why: 'the day it was ready to be let is not written under money: rental: in-service:',
      rules,
    };
  const { earliest = '0000', latest = '9999' } = service;
  const before = rows.filter(({ date }) => date < earliest);
  const out = rows.filter(({ date }) => date >= latest);
  const between = rows.filter(({ date }) => date >= earliest && date < latest);
  if (books.money.rental?.['from-home'] === 'yes') {
    // Before it was let it was a home, whose repairs are no work on a property that waits for its use.
    const home = homeRepairs(books, before);
    return {
      counted: home.counted,
      out: [...home.out, ...out],
      open: [...home.open, ...between],
      why: `before it was let it was a home, and ${home.why}; later ones are costs of the year`,
      rules,
    };
  }
  return {
    counted: before,
    out,
    open: between,
    why: 'those before it was ready to be let count, later ones are costs of the year',
    rules,
  };
}
