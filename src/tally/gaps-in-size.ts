/** What is lacking of the house itself: its size, who measured it, when it was built. */
import { addItem, addLine, freeId, type Gap, type GapSources, rankOf, SALE } from './gap.js';

export function sizeGaps(sources: GapSources): Gap[] {
  return [...levels(sources), ...yearBuilt(sources), ...measured(sources), ...publicRecord(sources)];
}

function levels({ house, areas }: GapSources): Gap[] {
  if (house.levels.length === 0)
    return [
      {
        path: ['levels'],
        audiences: SALE,
        lacks: 'no level is described, so no size can be worked out',
        hint: addItem(
          'levels',
          `{ id: ${freeId(house, 'main')}, name: Main level, grade: above, size: 40' x 26' }`,
        ),
        rank: rankOf('size'),
      },
    ];
  return areas.levels.flatMap((level, index): Gap[] =>
    level.gross === undefined
      ? [
          {
            path: ['levels', index],
            audiences: SALE,
            lacks: `the size of ${level.name} is not known`,
            hint: `${addLine(`size: 40' x 26'`)}  or its walls under outline:`,
            rank: rankOf('size', 1),
          },
        ]
      : [],
  );
}

function yearBuilt({ house }: GapSources): Gap[] {
  if (house.house.built.value !== undefined) return [];
  return [
    {
      path: ['house', 'built'],
      audiences: SALE,
      lacks: 'when the house was built is not known',
      hint: 'look at the county’s record; a span will do, for example  built: 1940/1955',
      rank: rankOf('year built'),
    },
  ];
}

function measured({ house, asOf }: GapSources): Gap[] {
  if (house.measured?.date !== undefined) return [];
  return [
    house.measured === undefined
      ? {
          path: ['measured'],
          audiences: SALE,
          lacks: 'nobody says who measured the house, when and how',
          // The standard's own name is left to whoever followed all of it.
          hint: addLine(`measured: { by: owner, date: ${asOf}, method: other }`),
          rank: rankOf('who measured'),
        }
      : {
          path: ['measured'],
          audiences: SALE,
          lacks: 'the date of the measuring is missing',
          hint: addLine(`date: ${asOf}`),
          rank: rankOf('who measured', 1),
        },
  ];
}

function publicRecord({ house }: GapSources): Gap[] {
  if (house.record !== undefined) return [];
  return [
    {
      path: ['record'],
      audiences: SALE,
      lacks: 'the public record’s figure is not given, and buyers see it',
      hint: addLine('record: { area: "1,410 sq ft", source: county card }'),
      rank: rankOf('public record'),
    },
  ];
}
