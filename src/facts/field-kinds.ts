/**
 * The kinds of value a field can hold. Each is a zod schema that takes what YAML gives, hands on what the
 * other rooms use, and carries its description, example and kind for the JSON Schema and the field table.
 *
 * A reader's refusal becomes a zod issue whose `params` hold the diagnostic code and the hint.
 */
import { z } from 'zod';
import type { Code } from '../diagnostics/codes.js';
import { readDate } from './date.js';
import { readFloorArea } from './floor-area.js';
import { readLength } from './length.js';
import { readMoney } from './money.js';
import { readQuantity } from './quantity.js';
import type { Read } from './read.js';
import { readSize } from './size.js';
import { readStep } from './step.js';
import { withoutTurning } from './turning-signs.js';
import { readWebAddress } from './web-address.js';
import { groupThousands } from './written-number.js';

const described = <S extends z.ZodType>(schema: S, kind: string, about: string, example?: string): S =>
  schema.meta({ description: about, kind, ...(example === undefined ? {} : { example }) }) as S;

/** A scalar handed to one of the readers as text, whatever YAML took it for. */
function read<T>(code: Code, reader: (text: string) => Read<T>) {
  return z.union([z.string(), z.number()]).transform((written, context): T => {
    const answer = reader(String(written));
    if (answer.ok) return answer.value;
    context.addIssue({
      code: 'custom',
      message: answer.problem,
      params: { code, hint: answer.hint },
      input: written,
    });
    return z.NEVER;
  });
}

/** Longest of a name, a question and any other text, in characters: what stands as a heading must fit on a sheet. */
const LONGEST = { name: 200, sentence: 400, text: 20_000 } as const;

/** Words that a sheet can hold and a terminal can show. A number or truth value is refused: YAML would change `02139` to 2139. */
const words = (longest: number, clean: (written: string) => string = withoutTurning) =>
  z
    .string()
    .overwrite(clean)
    .trim()
    .min(1)
    .superRefine((written, context) => {
      const refuse = (code: Code, message: string, hint: string): void =>
        context.addIssue({ code: 'custom', message, params: { code, hint }, input: written });
      const control = /[^\P{Cc}\n\t]/u.exec(written)?.[0];
      if (control !== undefined) {
        const point = (control.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
        refuse(
          'facts.sign',
          `this text holds a control character (U+${point}), which is no letter`,
          'take it out',
        );
      }
      const length = [...written].length;
      if (length > longest)
        refuse(
          'facts.too-long',
          `this text has ${groupThousands(length)} characters, and ${groupThousands(longest)} at most can stand here`,
          longest === LONGEST.text
            ? 'say it shorter, or put it into documents/ as a paper'
            : 'say it in a few words here, and the rest in a  note:  or  how:',
        );
    });

/** Text of any length that a person reads. */
export const text = (about: string, example?: string) =>
  described(words(LONGEST.text), 'text', about, example);

/** Name of a file of the folder, sign for sign: phones write some that nobody sees. */
export const fileName = (about: string, example?: string) =>
  described(
    words(LONGEST.text, (written) => written),
    'text',
    about,
    example,
  );

/** A name or a few words: it becomes a heading, a label on a plan, a part of a sentence. */
export const name = (about: string, example?: string) =>
  described(words(LONGEST.name), 'text', about, example);

/** One sentence: a question, a caption. */
export const sentence = (about: string, example?: string) =>
  described(words(LONGEST.sentence), 'text', about, example);

/** Whether a name can be an id as it is. */
export const isId = (name: string): boolean => /^[A-Za-z0-9][A-Za-z0-9_-]*$/.test(name);

/** A short name by which other facts refer to this one. */
export const id = (about: string, example?: string) =>
  described(
    z
      .union([z.string(), z.number()])
      .transform(String)
      .superRefine((written, context) => {
        if (isId(written)) return;
        context.addIssue({
          code: 'custom',
          message: `“${written}” can’t be an id`,
          params: {
            code: 'facts.id',
            hint: `use letters, digits and hyphens, for example ${suggestId(written)}`,
          },
          input: written,
        });
      }),
    'id',
    about,
    example,
  );

function suggestId(written: string): string {
  const slug = written
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return slug === '' ? 'front-door' : slug;
}

export const date = (about: string, example = '2026-04-11') =>
  described(read('facts.date', readDate), 'date', about, example);

export const length = (about: string, example = `11'6"`) =>
  described(read('facts.length', readLength), 'length', about, example);

export const size = (about: string, example = `11'6" x 12'`) =>
  described(read('facts.length', readSize), 'size', about, example);

export const step = (about: string, example = `east 34'`) =>
  described(read('facts.length', readStep), 'step', about, example);

export const floorArea = (about: string, example = '1,410 sq ft') =>
  described(read('facts.area', readFloorArea), 'area', about, example);

export const money = (about: string, example = '45.00') =>
  described(read('facts.money', readMoney), 'money', about, example);

export const quantity = (units: readonly string[], about: string, example: string) =>
  described(
    read('facts.quantity', (written) => readQuantity(written, units)),
    'quantity',
    about,
    example,
  );

export const webAddress = (about: string, example = 'https://quarry-road.example/packet/') =>
  described(read('facts.web', readWebAddress), 'web address', about, example);

export const count = (about: string, example = '1') =>
  described(z.number().int().min(0).max(10_000), 'count', about, example);

export const choice = <const T extends readonly [string, ...string[]]>(
  choices: T,
  about: string,
  example?: string,
) => described(z.enum(choices), 'choice', about, example ?? choices[0]);

/** yes or no, as a plain flag. */
export const flag = (about: string) =>
  described(
    z
      .union([z.boolean(), z.enum(['yes', 'no'])])
      .transform((written) => written === true || written === 'yes'),
    'yes or no',
    about,
    'yes',
  );

export type YesNo = 'yes' | 'no' | 'not known';

/** yes, no or not known: a question somebody will ask. */
export const yesNo = (about: string) =>
  described(
    z
      .union([z.boolean(), z.enum(['yes', 'no', 'not known'])])
      .transform((written): YesNo => (typeof written === 'boolean' ? (written ? 'yes' : 'no') : written)),
    'yes, no or not known',
    about,
    'not known',
  );
