/** Photos and papers that are older than what they are to show. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import { type HouseDate, printDate } from '../../facts/date.js';
import type { Document, House } from '../../facts/house.js';
import { photoDay } from '../photo-days.js';
import { systemName } from '../system-name.js';
import { type ClashSources, clashOf, surelyBefore } from './clash.js';
import { type DatedDeed, datedDeeds, wasDone } from './dated-deeds.js';

/** Papers that look back. A receipt, permit, label or drawing may well be older than the day of the work. */
const LOOKS_BACK: readonly Document['kind'][] = ['record', 'report', 'letter'];

export function evidenceDates({ house, cameras }: ClashSources): Diagnostic[] {
  return [
    ...datedDeeds(house).flatMap((deed) => [
      ...olderPhotos(deed, house, cameras),
      ...olderPapers(house, deed.evidenceOfDate, deed.date, {
        what: `${deed.name} ${wasDone(deed)}`,
        path: [...deed.path, deed.word],
        word: deed.word,
      }),
    ]),
    ...house.systems.flatMap((system, at) =>
      system.made?.value === undefined
        ? []
        : olderPapers(house, system.made.evidence, system.made.value, {
            what: `“${systemName(system)}” was made`,
            path: ['systems', at, 'made'],
            word: 'made',
          }),
    ),
    ...house.permits.flatMap((permit, at) =>
      olderCopies(house, permit.evidence, permit.issued, permit.what, at),
    ),
    ...(house.record?.date === undefined
      ? []
      : olderPapers(house, house.record.evidence, house.record.date, {
          what: 'the public record was last changed',
          path: ['record', 'date'],
          word: 'date',
        })),
  ];
}

/** A photo that isn't of the label, and isn't of the place before, shows the thing in place; so it can't be older. */
function olderPhotos(deed: DatedDeed, house: House, cameras: ClashSources['cameras']): Diagnostic[] {
  // The photos of a piece of work are held against its day in photo-dates.ts.
  return [...new Set(deed.evidence)].flatMap((id) => {
    const photo = house.photos[id];
    if (photo === undefined || deed.photos.includes(id)) return [];
    if (photo.when !== undefined && photo.when !== 'after') return [];
    const day = photoDay(house, cameras, id);
    if (day === undefined || !surelyBefore(day.date, deed.date)) return [];
    const by = day.by === 'entry';
    return [
      clashOf({
        severity: 'warning',
        path: [...deed.path, deed.word],
        beside: by ? ['photos', id, 'taken'] : ['photos', id],
        message: `${deed.name} ${wasDone(deed)} (${printDate(deed.date)}), and the photo that is to show it, ${id}, was taken before (${printDate(day.date)}${by ? '' : ', by the camera'})`,
        hints: [
          `correct  ${deed.word}: ${deed.date.written}`,
          `if the photo shows the label or the place before, say so under photos:  ${id}: { when: label }  or  { when: before }`,
          by
            ? `correct  taken:  of ${id}`
            : `if the camera’s clock was wrong, add  taken:  with the right day to ${id} under photos:`,
        ],
      }),
    ];
  });
}

interface Claim {
  /** "“Roof” was put in". */
  readonly what: string;
  readonly path: FactPath;
  readonly word: string;
}

function olderPapers(house: House, evidence: readonly string[], date: HouseDate, claim: Claim): Diagnostic[] {
  return papersAmong(house, evidence).flatMap(({ paper, at, day }) =>
    LOOKS_BACK.includes(paper.kind) && surelyBefore(day, date)
      ? [older(paper, at, day, `${claim.what} (${printDate(date)})`, claim.path, claim.word, date)]
      : [],
  );
}

/** The copy of a permit is no older than the permit. */
function olderCopies(
  house: House,
  evidence: readonly string[],
  issued: HouseDate | undefined,
  what: string,
  index: number,
): Diagnostic[] {
  if (issued === undefined) return [];
  return papersAmong(house, evidence).flatMap(({ paper, at, day }) =>
    paper.kind === 'permit' && surelyBefore(day, issued)
      ? [
          older(
            paper,
            at,
            day,
            `the permit for “${what}” was issued (${printDate(issued)})`,
            ['permits', index, 'issued'],
            'issued',
            issued,
          ),
        ]
      : [],
  );
}

const older = (
  paper: Document,
  at: number,
  day: HouseDate,
  claim: string,
  path: FactPath,
  word: string,
  date: HouseDate,
): Diagnostic =>
  clashOf({
    severity: 'warning',
    path,
    beside: ['documents', at, 'date'],
    message: `${claim}, and the paper that is to show it, “${paper.what}”, is older (${printDate(day)})`,
    hints: [
      `correct  ${word}: ${date.written}  or the paper’s  date:`,
      `if another paper shows it, name that in  evidence:  in place of ${paper.id}`,
    ],
  });

/** A paper without a date is older than nothing. */
const papersAmong = (
  house: House,
  evidence: readonly string[],
): { readonly paper: Document; readonly at: number; readonly day: HouseDate }[] =>
  house.documents.flatMap((paper, at) =>
    paper.date !== undefined && evidence.includes(paper.id) ? [{ paper, at, day: paper.date }] : [],
  );
