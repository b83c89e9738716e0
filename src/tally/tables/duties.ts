/**
 * What laws ask of a sale and of a renovation, one file for the federal rules and one a state: `duties/us.yaml`,
 * `duties/us-fl.yaml`, … A state is added by adding its file; nothing else names it.
 *
 * A rule says what is asked, under which condition on the facts, by when, and where that was read. It is a pointer
 * to a law, never the law: texts that a law fixes stand under `notice`, with how closely they were read.
 */
import { z } from 'zod';
import { hasTable, readTable } from '../read-table.js';
import { sourced, whole } from './sourced.js';

const text = z.string().min(1);
const day = z.iso.date();

/** What a condition may ask about. `src/tally/duties/duty-facts.ts` says where each is read from. */
export const DUTY_FACTS = [
  'state',
  'year-built',
  'units',
  'studio',
  'foreclosure',
  'condominium',
  'association',
  'district',
  'seaward-of-line',
  'sinkhole-claim-paid',
  'sewer-lateral-defect',
  'declared-disaster',
  'unincorporated',
  'subdivided',
  'pool',
  'for-resale',
  'contractor-used',
  'contract',
  'months-owned',
  'owner-builder-permit',
  'months-from-owner-build-to-offer',
] as const;
export type DutyFactName = (typeof DUTY_FACTS)[number];

const OPS = ['eq', 'ne', 'lt', 'lte', 'gt', 'gte', 'in'] as const;

/** One question. `unknown-as: applies`: a fact that isn’t known counts as fulfilling it, and that is printed. */
const question = z
  .strictObject({
    fact: z.enum(DUTY_FACTS),
    op: z.enum(OPS),
    value: z.union([z.number(), text, z.array(z.union([z.number(), text])).min(1)]),
    'unknown-as': z.literal('applies').optional(),
  })
  .refine(
    ({ op, value }) => Array.isArray(value) === (op === 'in'),
    'a list goes with  in  and with nothing else',
  )
  .refine(
    ({ op, value }) =>
      !['lt', 'lte', 'gt', 'gte'].includes(op) || typeof value === 'number' || day.safeParse(value).success,
    'only numbers and days have an order',
  );
export type Question = z.infer<typeof question>;

export type Condition =
  | Question
  | { readonly always: true }
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] };

const parts = z.array(z.lazy(() => condition)).min(1);
const condition: z.ZodType<Condition> = z.union([
  question,
  z.strictObject({ always: z.literal(true) }),
  z.strictObject({ all: parts }),
  z.strictObject({ any: parts }),
]);

/**
 * In the order of a sale. once-offered, once-contracted: as soon as the house is offered or under contract, with no day
 * of its own; surely late after the closing.
 */
export const MOMENTS = [
  'before-contract',
  'at-contract',
  'by-offer',
  'once-offered',
  'once-contracted',
  'before-closing',
  'days-before-closing',
  'while-working',
] as const;
export type Moment = (typeof MOMENTS)[number];

const due = z.union([
  z.strictObject({ by: z.literal('days-before-closing'), days: whole, words: text }),
  z.strictObject({ by: z.enum(MOMENTS).exclude(['days-before-closing']), words: text }),
]);

const notice = z.strictObject({
  title: text,
  /** Paragraph by paragraph. Quotation marks as the law has them. */
  text: z.array(text).min(1),
  /** The law fixes these words; they are printed as they stand. */
  'word-for-word': z.boolean(),
  /** How closely these words were read, which may be less closely than the duty. */
  read: sourced.shape.read,
  how: text,
  /** What the law’s text has and this one lacks. */
  lacks: text.optional(),
});

const dutyRule = sourced.extend({
  /** Ours, and stable: `given:` names it. */
  id: z.string().regex(/^[a-z]{2}(-[a-z0-9]+)+$/),
  title: text,
  /**
   * tell: something is told or handed to the buyer. work: asked of the work itself. caution: how a permit and a sale
   * bear on each other. aside: worth knowing, nothing to do.
   */
  kind: z.enum(['tell', 'work', 'caution', 'aside']),
  /** Of whom. */
  asked: text,
  when: condition,
  due: due.optional(),
  /** What the law says of being late. For reference. */
  late: text.optional(),
  form: z.strictObject({ title: text, from: text }).optional(),
  notice: notice.optional(),
  /** What the buyer’s packet prints with it: what hired people did since the purchase, or the dues on record. */
  prints: z.enum(['contractor-work', 'dues']).optional(),
  /** Dated readings of the rule, picked by the day of the contract. Without `from`: from the beginning. */
  versions: z
    .array(
      z.strictObject({
        from: day.optional(),
        to: day.optional(),
        says: text,
        asks: z.array(text).default([]),
      }),
    )
    .min(1)
    .optional(),
  /** Which of the keeping times of `lead-asbestos.yaml` its papers have. */
  keep: z.enum(['lead-disclosure', 'lead-renovation']).optional(),
  /** Last day on which it was read. */
  on: day,
});
export type DutyRule = z.infer<typeof dutyRule>;

const pack = z
  .strictObject({
    /** `US`, or the state as two letters. */
    of: z.string().regex(/^[A-Z]{2}$/),
    name: text,
    rules: z.array(dutyRule).min(1),
  })
  .refine(
    ({ of, rules }) => rules.every(({ id }) => id.startsWith(`${of.toLowerCase()}-`)),
    'every id begins with the pack’s two letters',
  )
  .refine(({ rules }) => new Set(rules.map(({ id }) => id)).size === rules.length, 'an id is given twice');
export type DutyPack = z.infer<typeof pack>;

/** The federal rules. */
export const federalDuties = (): DutyPack => readTable('duties/us', pack);

/** The rules of a state (two letters); undefined where there is no file for it. */
export function stateDuties(state: string): DutyPack | undefined {
  const name = `duties/us-${state.toLowerCase()}`;
  return hasTable(name) ? readTable(name, pack) : undefined;
}

/** For tests of the shape: a broken pack is refused with the reason. @internal */
export const dutyPackShape = pack;
