/** Permits, documents, photos, and what is told to the buyer. */
import { z } from 'zod';
import { fact, knownBy } from '../fact.js';
import { choice, date, fileName, flag, id, money, sentence, text, yesNo } from '../field-kinds.js';

/** `permits:` one permit or the finding that there is none. */
export const permit = z.strictObject({
  id: id('Short name other facts refer to.', 'el-26-0214'),
  number: text('Number on it, in quotes if it is only digits.', 'EL-26-0214').optional(),
  what: text('What it is for.', 'three kitchen circuits'),
  office: text('Who issued it.', 'Fallow Mills building office').optional(),
  issued: date('Issued.', '2026-04-20').optional(),
  final: date('Final inspection.', '2026-05-19').optional(),
  state: choice(
    ['final', 'open', 'expired', 'none-found', 'not-known'],
    'How it stands. none-found: the office was asked and has none.',
    'final',
  ),
  'taken-by': choice(
    ['owner', 'contractor', 'not-known'],
    'Who took it out. owner: as an owner who is his own contractor; some states ask for living there afterwards.',
    'contractor',
  ).optional(),
  ...knownBy,
});

/** `documents:` a paper in the folder. */
export const document = z.strictObject({
  id: id('Short name other facts refer to.', 'receipt-031'),
  what: text('What it is.', 'receipt, vinyl plank'),
  kind: choice(
    [
      'receipt',
      'invoice',
      'permit',
      'label',
      'warranty',
      'manual',
      'record',
      'survey',
      'report',
      'letter',
      'drawing',
      'other',
    ],
    'What kind of paper.',
    'receipt',
  ),
  date: date('Date on it.', '2026-04-03').optional(),
  total: money(
    'What a receipt or invoice adds up to; the cost rows are held against it. House file only.',
    '472.14',
  ).optional(),
  file: fileName(
    'File under documents/. Left out: the paper is kept elsewhere.',
    'receipt-031.pdf',
  ).optional(),
  kept: text('Where the original is, if not in the folder.', 'binder, tab 3').optional(),
  private: flag(
    'Not named in any edition but the house file; facts that rest on it say "a paper on file".',
  ).default(false),
});

/** A part of a hundredth of a pixel over the edge is a rounded figure, not a mistake. */
const EDGE = 1 + 1e-6;

/** A rectangle that leaves the picture may have been meant for another part of it, and that part would be seen. */
function insidePicture(
  rectangle: readonly [left: number, top: number, width: number, height: number],
  context: z.RefinementCtx,
): void {
  const [left, top, width, height] = rectangle;
  const refuse = (message: string, hint: string): void =>
    context.addIssue({ code: 'custom', message, params: { code: 'facts.kind', hint }, input: rectangle });
  if (width === 0 || height === 0)
    refuse('a rectangle without width or height covers nothing', 'write left, top, width, height');
  else if (left + width > EDGE)
    refuse(
      `the rectangle leaves the picture at the right: left ${left} and width ${width} make ${rounded(left + width)}`,
      `write a width of ${rounded(1 - left)} or less; the four are left, top, width, height`,
    );
  else if (top + height > EDGE)
    refuse(
      `the rectangle leaves the picture at the bottom: top ${top} and height ${height} make ${rounded(top + height)}`,
      `write a height of ${rounded(1 - top)} or less; the four are left, top, width, height`,
    );
}

const rounded = (part: number): number => Math.round(part * 1000) / 1000;

/** One entry of `photos:`; its key is the file name without its ending. */
export const photo = z.strictObject({
  file: fileName('File under photos/, if the name differs from the key.', 'IMG_0412.jpg').optional(),
  shows: sentence('What it shows.', 'cellar stair'),
  when: choice(
    ['before', 'during', 'after', 'as-found', 'label'],
    'When in the work it was taken.',
    'after',
  ).optional(),
  where: id('Room, level or structure.', 'cellar-stair').optional(),
  alt: text(
    'The picture in words, for those who can’t see it.',
    'A steep stair between white walls, without a handrail.',
  ).optional(),
  taken: date('When, if the camera does not say.', '2026-02-21').optional(),
  hide: z
    .array(
      z
        .tuple([
          z.number().min(0).max(1),
          z.number().min(0).max(1),
          z.number().min(0).max(1),
          z.number().min(0).max(1),
        ])
        .superRefine(insidePicture),
    )
    .default([])
    .describe('Rectangles to cover: left, top, width, height as parts of the upright picture.')
    .meta({ kind: 'rectangles', example: '[[0.1, 0.2, 0.3, 0.1]]' }),
  private: flag('Only in the house file.').default(false),
  'not-before': date(
    'Only in the house file until this day, for example the day an occupant agreed to. Of a month or a span the last day counts.',
    '2026-12-01',
  ).optional(),
  huge: flag('Allow more than 100 million pixels.').default(false),
});

/** `conveys:` what stays and what goes. */
export const conveyed = z.strictObject({
  what: text('What.', 'workbench in the cellar'),
  stays: yesNo('Whether it stays with the house.'),
  note: text('A remark.', 'bolted to the wall').optional(),
});

/** `dues:` what an association or district asks. */
export const due = z.strictObject({
  to: text('To whom.', 'Larkspur Court Owners’ Association'),
  amount: money('How much.', '145.00'),
  per: choice(['month', 'quarter', 'half-year', 'year', 'once'], 'How often.', 'month'),
  covers: text('What it pays for.', 'common garden, gate').optional(),
  since: date('Since when this amount.', '2026-01').optional(),
  ...knownBy,
});

/** `answers:` a question buyers ask, answered once. */
export const answer = z.strictObject({
  ask: sentence('The question.', 'Has water ever come into the cellar?'),
  answer: fact(
    text('', 'Not since February 2026; earlier not known.'),
    'The answer, or: not known.',
    'Not since we bought it.',
  ),
});

/** `care:` what the next owner does, and when. */
export const careTask = z.strictObject({
  what: text('What to do.', 'change the furnace filter'),
  for: id('System, room or structure it is for.', 'furnace').optional(),
  every: z
    .string()
    .regex(/^([1-9]\d{0,2} (day|week|month|year)s?|month|year|week)$/)
    .meta({ description: 'How often.', kind: 'interval', example: '3 months' }),
  next: date('When next.', '2026-12-01').optional(),
  how: text('How.', '16 x 25 x 1 in, arrow towards the blower').optional(),
});

/** `lead:` what is known of lead paint, for houses built before 1978. */
export const lead = z.strictObject({
  known: fact(
    text('', 'none known'),
    'What you know of lead paint or hazards, where and on what basis.',
    'not known',
  ),
  reports: z
    .array(id('Document with a test or report.', 'lead-report'))
    .default([])
    .describe('Tests and reports you have.'),
  'pamphlet-given': date('When the federal pamphlet was given.', '2026-06-22').optional(),
  firm: id('Certified renovation firm, if one worked here.', 'ridge-painting').optional(),
});
