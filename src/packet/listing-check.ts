/** The listing fields beside the standard’s own list of names, types and values. */
import { type ResoField, resoTable } from '../tally/tables/reso.js';

export type FieldValue = string | number | boolean | readonly string[];
export type ListingFields = Readonly<Record<string, FieldValue>>;
/** Fields of which some may not be known. */
export type SomeFields = Record<string, FieldValue | undefined>;

/** Undefined, where the facts settle nothing: a list is never empty. */
export const list = (values: readonly string[]): readonly string[] | undefined =>
  values.length === 0 ? undefined : [...new Set(values)];

/**
 * Each thing that a field says outside the standard, in words; empty if all is well. The program picks every value
 * itself, so that a finding is a mistake of its own and never of the house.
 */
export function strayFields(fields: ListingFields): string[] {
  const { fields: known, lookups } = resoTable();
  return Object.entries(fields).flatMap(([name, value]) => {
    const field = known[name];
    if (field === undefined) return [`${name} is no field of the standard’s list`];
    return strayValue(field, value, lookups).map((finding) => `${name}: ${finding}`);
  });
}

function strayValue(
  field: ResoField,
  value: FieldValue,
  lookups: Readonly<Record<string, readonly string[]>>,
): string[] {
  switch (field.type) {
    case 'boolean':
      return typeof value === 'boolean' ? [] : [`${String(value)} is neither true nor false`];
    case 'number':
      return typeof value === 'number' ? strayNumber(field, value) : [`${String(value)} is no number`];
    case 'text':
      if (typeof value !== 'string') return [`${String(value)} is no text`];
      return tooLong(value, field.length);
    default: {
      const several = field.type === 'several';
      if (several ? !Array.isArray(value) : typeof value !== 'string')
        return [`${String(value)} is ${several ? 'no list' : 'no single value'}`];
      const values = [value].flat() as string[];
      const allowed = lookups[field.lookup] ?? [];
      return [
        ...values
          .filter((one) => !allowed.includes(one))
          .map((one) => `“${one}” is no value of ${field.lookup}`),
        ...tooLong(values.join(','), field.length),
      ];
    }
  }
}

function strayNumber(
  { decimals, length }: { readonly decimals: number; readonly length: number },
  value: number,
): string[] {
  const [whole = '', part = ''] = String(value).split('.');
  if (!Number.isFinite(value) || value < 0 || /e/i.test(String(value)))
    return [`${value} is no plain number`];
  return part.length > decimals || whole.length + part.length > length
    ? [`${value} has too many digits`]
    : [];
}

/** In characters. */
const tooLong = (text: string, most: number): string[] =>
  [...text].length > most ? [`it has ${[...text].length} characters, and ${most} may stand there`] : [];
