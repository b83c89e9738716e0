/**
 * Buckets: what a payment was for, in the words of a cost sheet.
 *
 * The program never moves a payment from one bucket to another; a role only decides which buckets a worksheet adds.
 */

export interface BucketWords {
  /** As a person reads it. */
  readonly title: string;
  /** What belongs in it: stands behind the title or the bucket's word, in small letters and without a full stop. */
  readonly about: string;
}

/** In the order in which they are listed. Source of the split: IRS Publications 551, 523 and 530; see `tally/tables/basis.yaml`. */
export const BUCKETS = {
  purchase: { title: 'Purchase price', about: 'the price of the house, debt that was taken on included' },
  'purchase-closing-in-basis': {
    title: 'Closing costs in basis',
    about: 'title search, recording, survey, owner’s title policy, transfer tax',
  },
  'purchase-closing-out': {
    title: 'Closing costs outside basis',
    about: 'what a loan costs, insurance premiums, rent or utilities before closing',
  },
  'property-tax-taken-over': {
    title: 'Seller’s property tax taken over',
    about:
      'the seller’s share of the tax, paid by you and not paid back; below zero: your share, paid by the seller',
  },
  assessment: {
    title: 'Local improvement assessments',
    about: 'a charge for a sidewalk, street, water or sewer connection',
  },
  improvement: { title: 'Improvements', about: 'what adds value, lengthens life or adapts to a new use' },
  restoration: { title: 'Restoration after damage', about: 'mending after a fire, storm or theft' },
  repair: { title: 'Repairs', about: 'what keeps the house in good condition' },
  'property-tax': { title: 'Holding: property tax', about: 'your own share of the tax' },
  interest: { title: 'Holding: loan interest', about: 'interest while you hold the house' },
  insurance: { title: 'Holding: insurance', about: 'premiums while you hold the house' },
  utilities: { title: 'Holding: utilities', about: 'water, power, gas, waste' },
  upkeep: { title: 'Holding: lawn and cleaning', about: 'mowing, snow, cleaning' },
  dues: { title: 'Holding: association dues', about: 'dues of an association or district' },
  holding: { title: 'Holding: other', about: 'another cost of holding the house' },
  selling: { title: 'Selling costs', about: 'commission, staging, advertising, transfer tax paid by you' },
  tool: { title: 'Tools', about: 'what stays with you when the house is sold' },
  rebate: { title: 'Rebates', about: 'money back from a maker or a utility; below zero' },
  'insurance-payment': {
    title: 'Insurance payments',
    about: 'what an insurer paid for damage; below zero',
  },
} as const satisfies Record<string, BucketWords>;

export type Bucket = keyof typeof BUCKETS;

export const BUCKET_NAMES = Object.keys(BUCKETS) as readonly Bucket[];

/** Costs of holding a house: shown in one sum, each kind for itself. */
export const HOLDING: readonly Bucket[] = [
  'property-tax',
  'interest',
  'insurance',
  'utilities',
  'upkeep',
  'dues',
  'holding',
];

/** What an owner may hold a house as. Stated by the owner, never worked out. */
export const ROLES = ['dealer', 'investor', 'main-home', 'rental'] as const;
export type Role = (typeof ROLES)[number];

/** A role in words, as in "held as a main home". */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  dealer: 'dealer',
  investor: 'investor',
  'main-home': 'main home',
  rental: 'rental',
};
