/**
 * All that is worked out of three houses' money, line by line, as text: each figure with its rules, rows, facts and remark. The
 * figures themselves are held against published examples elsewhere (`tests/outside/irs-examples.test.ts`); here nothing may
 * change unseen. After a change that is meant: `ACCEPT=1 npx vitest run tests/rooms/tally-money-whole.test.ts`, and look
 * at the difference.
 */
import { expect, it } from 'vitest';
import { heldText } from './held-text.js';
import { moneyAsText } from './money-as-text.js';
import { costRows, hoursRows, trips, workOut } from './tally-money-case.js';

/** A home, let from the middle of its second year, sold in its third: every kind of row, reduction and open question. */
const LET = () =>
  workOut(
    {
      house: { bought: '2024-05-20', lot: '0.2 acre' },
      levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 26'" }],
      rooms: [
        { id: 'kitchen', name: 'Kitchen', level: 'main', use: 'kitchen', size: "12' x 12'" },
        { id: 'bath', name: 'Bath', level: 'main', use: 'bath', size: "8' x 6'" },
      ],
      people: [
        { id: 'electrician', name: 'Alder Electric', trade: 'electrician' },
        { id: 'firm', name: 'Grout and Sons', trade: 'painter' },
      ],
      work: [
        {
          id: 'paint',
          what: 'paint scraped in the bath',
          did: 'repaired',
          done: '2024-07-01',
          by: 'firm',
          where: ['bath'],
        },
        {
          id: 'wires',
          what: 'wires of the kitchen',
          did: 'replaced',
          done: '2024-06-10',
          by: 'electrician',
          where: ['kitchen'],
        },
      ],
      lead: { known: 'not known', firm: 'firm' },
      money: {
        role: 'rental',
        'in-business': 'yes',
        employees: 'no',
        sale: { closed: '2026-08', price: '250,000.00' },
        'return-filed': '2027-06-01',
        'gross-receipts': [
          { year: 2021, amount: '50,000' },
          { year: 2022, amount: '90,000' },
          { year: 2023, amount: '100,000' },
          { year: 2024, amount: '110,000' },
        ],
        land: { 'assessed-land': '20,000', 'assessed-building': '60,000' },
        'extensive-remodel': 'no',
        rental: {
          'in-service': '2025-06-15',
          'from-home': 'yes',
          'market-value-building': '120,000',
          'market-value-land': '40,000',
        },
        reductions: [
          { what: 'depreciation', amount: '3,000.00', year: 2025 },
          { what: 'easement', amount: '500.00', note: 'for the sewer' },
          { what: 'energy-credit', amount: '600.00', year: 2024 },
          { what: 'postponed-gain', amount: '100.00' },
        ],
        payees: [
          {
            name: 'Alder Electric',
            person: 'electrician',
            sells: 'services',
            'tax-class': 'individual',
            'taxpayer-form': 'on-file',
          },
          { name: 'Sidewalk Office', sells: 'services', 'tax-class': 'government' },
          { name: 'Hire Yard', sells: 'rent', 'tax-class': 'llc' },
          {
            name: 'Counsel',
            sells: 'services',
            'tax-class': 'c-corporation',
            attorney: 'yes',
            'taxpayer-form': 'asked',
          },
          { name: 'Helper', sells: 'wages' },
        ],
        budget: [
          { for: 'kitchen', amount: '2,000.00' },
          { for: 'main', amount: '9,000.00' },
          { for: 'electrician', amount: '1,000.00' },
          { for: 'garage', amount: '1.00' },
          { for: 'repair', amount: '100.00' },
          { for: 'all', amount: '20,000.00' },
        ],
        'hour-rate': '30.00',
        'held-up': [{ from: '2024-06-01', to: '2024-06-20', 'waiting-for': 'the inspection' }],
        odometer: [{ year: 2024, vehicle: 'van', start: 48_210, end: 52_000 }],
      },
    },
    {
      costs: costRows([
        { date: '2024-05-20', bucket: 'purchase', cents: 10_000_000, paid: 'transfer', payee: 'Seller' },
        { date: '2024-05-20', bucket: 'purchase', cents: 2_000_000, paid: 'loan', payee: 'Seller' },
        { date: '2024-05-20', bucket: 'purchase-closing-in-basis', cents: 150_000, payee: 'Counsel' },
        { date: '2024-05-20', bucket: 'purchase-closing-out', cents: 80_000 },
        {
          date: '2024-06-10',
          bucket: 'improvement',
          cents: 420_000,
          payee: 'Alder Electric',
          place: 'kitchen',
        },
        {
          date: '2024-06-12',
          bucket: 'improvement',
          cents: 60_000,
          payee: 'Alder Electric',
          place: 'kitchen',
          paid: 'card',
        },
        {
          date: '2024-07-02',
          bucket: 'repair',
          cents: 30_000,
          payee: 'Shop',
          place: 'bath',
          paid: undefined,
        },
        { date: '2024-07-03', bucket: 'repair', cents: -5_000, payee: 'Shop', place: 'bath' },
        { date: '2024-08-01', bucket: 'assessment', cents: 90_000, payee: 'Sidewalk Office' },
        { date: '2024-09-01', bucket: 'restoration', cents: 210_000, payee: 'Hire Yard', place: 'bath' },
        { date: '2024-09-20', bucket: 'insurance-payment', cents: -120_000, payee: 'Insurer' },
        { date: '2024-10-01', bucket: 'tool', cents: 40_000, payee: 'Shop' },
        { date: '2024-10-02', bucket: 'tool', cents: 300_000, payee: 'Shop' },
        { date: '2024-10-03', bucket: 'tool', cents: -2_000, payee: 'Shop' },
        { date: '2025-02-01', bucket: 'utilities', cents: 9_000, payee: 'Water Works' },
        { date: '2025-03-01', bucket: 'rebate', cents: -20_000, payee: 'Maker' },
        { date: '2025-06-15', bucket: 'improvement', cents: 70_000, payee: 'Alder Electric', place: 'bath' },
        { date: '2025-09-01', bucket: 'repair', cents: 12_000, payee: 'Helper' },
        { date: '2025-09-02', bucket: 'upkeep', cents: 4_000, payee: 'Helper' },
        { date: '2025-12-30', bucket: 'repair', cents: 6_000, payee: 'Alder Electric', taxYear: 2026 },
        { date: '2025-01-15', bucket: 'selling', cents: 25_000, payee: 'Stager' },
        { date: '2026-08-20', bucket: 'selling', cents: 1_000_000, payee: 'Agent' },
        { date: '2026-10-01', bucket: 'repair', cents: 3_000, payee: 'Shop' },
      ]),
      trips: trips([
        { date: '2024-06-01', thousandths: 12_400, vehicle: 'van' },
        { date: '2024-06-02', thousandths: 9_600, vehicle: 'van', tolls: 250 },
        { date: '2025-02-02', thousandths: 10_000 },
      ]),
      hours: hoursRows([
        { hundredths: 1_250, date: '2024-06-01', place: 'kitchen' },
        { hundredths: 300, date: '2024-06-02', who: 'family' },
      ]),
    },
    '2026-11-20',
  );

/** A main home, not sold, with land that the contract names: little is known, and much stays open. */
const HOME = () =>
  workOut(
    {
      house: { bought: '2026-01-10', built: 1999 },
      money: {
        role: 'main-home',
        land: { price: '24,000.00' },
        'backup-withheld': 'yes',
        employees: 'yes',
        'property-tax': [{ from: '2026-01-01', amount: '730.00', 'paid-by': 'seller', reimbursed: 'no' }],
        payees: [{ name: 'Son', sells: 'services', relation: 'son, 17', 'tax-class': 'individual' }],
      },
    },
    {
      costs: costRows([
        { date: '2026-01-10', bucket: 'purchase', cents: 12_000_000 },
        { date: '2026-02-01', bucket: 'repair', cents: 40_000, payee: 'Son', what: 'paint', paid: 'cash' },
        { date: '2026-02-01', bucket: 'repair', cents: 40_000, payee: 'Son', what: 'paint', paid: 'cash' },
        { date: '2026-03-01', bucket: 'improvement', cents: 260_000, payee: 'Masons' },
        { date: '2025-12-20', bucket: 'interest', cents: 11_000, payee: 'Lender' },
        { date: '2026-05-01', bucket: 'insurance', cents: 30_000, payee: 'Insurer' },
        { date: '2026-12-01', bucket: 'dues', cents: 5_000, payee: 'Club' },
        { date: '2025-06-01', bucket: 'repair', cents: 100, payee: 'Shop' },
      ]),
    },
  );

/** A dealer who sold at a loss before the as-of year, with receipts that fail the test. */
const LOSS = () =>
  workOut(
    {
      house: { bought: '2023-03-01' },
      money: {
        role: 'dealer',
        'in-business': 'yes',
        'backup-withheld': 'no',
        sale: { closed: '2024-02-01', price: '90,000.00' },
        'gross-receipts': [
          { year: 2020, amount: '40,000,000' },
          { year: 2021, amount: '40,000,000' },
          { year: 2022, amount: '40,000,000' },
          { year: 2023, amount: '1' },
        ],
        payees: [
          { name: 'Mason', sells: 'services', 'tax-class': 'partnership', 'taxpayer-form': 'none' },
          { name: 'Painter', sells: 'services', 'tax-class': 's-corporation' },
          { name: 'Roofer', sells: 'services', 'tax-class': 'individual' },
        ],
      },
    },
    {
      costs: costRows([
        { date: '2023-03-01', bucket: 'purchase', cents: 9_500_000, payee: 'Seller' },
        { date: '2023-04-01', bucket: 'improvement', cents: 59_900, payee: 'Mason' },
        { date: '2023-05-01', bucket: 'improvement', cents: 60_000, payee: 'Roofer' },
        { date: '2023-06-01', bucket: 'improvement', cents: 500_000, payee: 'Painter' },
        { date: '2024-01-10', bucket: 'improvement', cents: 80_000, payee: 'Mason' },
        { date: '2024-01-11', bucket: 'improvement', cents: 80_000, payee: 'Roofer', paid: 'network' },
      ]),
    },
  );

it.each([
  ['let', LET],
  ['home', HOME],
  ['loss', LOSS],
] as const)('the money of the house “%s” is as it was', (name, make) => {
  const { money, diagnostics } = make();
  const text = moneyAsText(money, diagnostics);
  expect(text).toBe(heldText(`money-whole/${name}.txt`, text));
});
