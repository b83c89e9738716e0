/** `money:` what the tax preparer and the next house need to know beside the cost rows. The house file's alone. */
import { z } from 'zod';
import { ROLES } from '../bucket.js';
import { knownBy } from '../fact.js';
import { money as amount, choice, count, date, id, name, text, yesNo } from '../field-kinds.js';

const TAX_CLASSES = [
  'individual',
  'partnership',
  'c-corporation',
  's-corporation',
  'llc',
  'government',
  'tax-exempt',
  'not-known',
] as const;

const year = (about: string) => count(about, '2026');

/** `money: payees:` what a form would ask about somebody who was paid. */
const payee = z.strictObject({
  name: name('Name as it stands in the cost sheet.', 'Ridge Street Plumbing'),
  person: id('Who of people: it is.', 'ridge-plumbing').optional(),
  sells: choice(
    ['services', 'goods', 'rent', 'wages', 'nothing', 'not-known'],
    'What you pay them for. services: work, parts included. goods: things alone. rent: hire of a machine. wages: an employee of yours. nothing: who sold you the house or bought it from you.',
    'services',
  ).default('not-known'),
  'tax-class': choice(
    TAX_CLASSES,
    'What they ticked on the taxpayer form. An LLC that is taxed as a corporation: c-corporation or s-corporation.',
    'individual',
  ).default('not-known'),
  attorney: yesNo('A lawyer: reported also where the firm is a corporation.').optional(),
  'taxpayer-form': choice(
    ['on-file', 'asked', 'none', 'not-known'],
    'Whether you have their signed taxpayer form (W-9). Never write the number itself here.',
    'on-file',
  ).default('not-known'),
  relation: text('If family: how.', 'son, 17').optional(),
});

export const money = z.strictObject({
  role: choice(
    ROLES,
    'What you hold the house as, by your own word or your preparer’s. The program never decides it. dealer: bought to sell in your trade.',
    'dealer',
  ).optional(),
  'in-business': yesNo('Whether you pay these bills in the course of a trade or business.').optional(),
  employees: yesNo('Whether you paid wages.').optional(),
  sale: z
    .strictObject({
      closed: date('The day the sale closed.', '2026-08-14'),
      price: amount('Contract price.', '289,900.00'),
      ...knownBy,
    })
    .optional()
    .describe('The sale of the house.'),
  'return-filed': date('When the return for the year of sale was filed.', '2027-03-01').optional(),
  'backup-withheld': yesNo('Whether you kept back tax from a payee.').optional(),
  'gross-receipts': z
    .array(
      z.strictObject({
        year: year('Tax year.'),
        amount: amount('All your receipts of that year.', '412,000.00'),
      }),
    )
    .default([])
    .describe('Your gross receipts of the three years before, for the small-business test.'),
  land: z
    .strictObject({
      price: amount('The land’s price, where the contract names it.', '24,000.00').optional(),
      'assessed-land': amount('The assessor’s value of the land.', '24,000').optional(),
      'assessed-building': amount('The assessor’s value of the building.', '136,000').optional(),
      ...knownBy,
    })
    .optional()
    .describe('What of the price is land.'),
  'extensive-remodel': yesNo(
    'Whether the repairs were done as part of an extensive remodel; then they count with it.',
  ).optional(),
  rental: z
    .strictObject({
      'in-service': date('When it was ready to be let.', '2026-08-01').optional(),
      'from-home': yesNo('Whether it was your home before.').optional(),
      'market-value-building': amount(
        'What the building alone was worth on the day of the change.',
        '165,000',
      ).optional(),
      'market-value-land': amount('What the land was worth on the day of the change.', '15,000').optional(),
    })
    .optional()
    .describe('If you let it.'),
  reductions: z
    .array(
      z.strictObject({
        what: choice(
          [
            'depreciation',
            'casualty-loss',
            'section-179',
            'energy-credit',
            'energy-subsidy',
            'easement',
            'cancelled-debt',
            'postponed-gain',
            'other',
          ],
          'What lowers the basis.',
          'depreciation',
        ),
        amount: amount('By how much.', '14,526.00'),
        year: year('Tax year.').optional(),
        note: text('A remark.', 'from the return of 2025').optional(),
      }),
    )
    .default([])
    .describe('What lowers the basis and is no payment.'),
  'property-tax': z
    .array(
      z.strictObject({
        from: date('First day of the property tax year.', '2026-01-01'),
        amount: amount('Tax of that whole year.', '1,480.00'),
        'paid-by': choice(['seller', 'buyer'], 'Who paid the bill.', 'seller'),
        reimbursed: yesNo('Whether the other side paid its share back at closing.'),
      }),
    )
    .default([])
    .describe('Tax of the property tax year you bought in, to be split by days.'),
  payees: z
    .array(payee)
    .default([])
    .describe('Who was paid, as far as a form asks. Never a taxpayer number.'),
  budget: z
    .array(
      z.strictObject({
        for: text('A room, level, structure, trade or bucket; or: all.', 'kitchen'),
        amount: amount('Planned.', '9,500.00'),
      }),
    )
    .default([])
    .describe('What you meant to spend.'),
  'hour-rate': amount(
    'What you would have paid for an hour of your own; for comparison only.',
    '35.00',
  ).optional(),
  'held-up': z
    .array(
      z.strictObject({
        from: date('First day.', '2026-04-20'),
        to: date('Last day.', '2026-05-04'),
        'waiting-for': text('What you waited for.', 'the electrician’s inspection'),
      }),
    )
    .default([])
    .describe('What held the work up.'),
  odometer: z
    .array(
      z.strictObject({
        year: year('Year.'),
        vehicle: text('Which vehicle.', 'van').optional(),
        start: z
          .number()
          .int()
          .min(0)
          .max(2_000_000)
          .meta({ description: 'Reading at its beginning, in miles.', kind: 'count', example: '48210' }),
        end: z
          .number()
          .int()
          .min(0)
          .max(2_000_000)
          .meta({ description: 'Reading at its end, in miles.', kind: 'count', example: '60114' }),
        read: date('Day of the last reading, if the year is not over.', '2026-11-20').optional(),
      }),
    )
    .default([])
    .describe('Odometer readings of the year, which a mileage log should have.'),
});
