import { printSquareFeet, SQUARE_FOOT } from '../../facts/floor-area.js';
import { groupThousands } from '../../facts/written-number.js';
import { AREA_CLASS_NAMES, AREA_CLASSES, type LevelArea } from '../../tally/area.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { markOf } from '../marks.js';
import type { Block, Section, TableRow } from '../packet.js';
import { rich, soft, strong } from '../rich.js';
import { sizePlans } from '../size-plans.js';
import { squareMetres } from '../square-metres.js';

/** How big the house is, by class and level, with the sums and how it was measured. */
export function sizeSection(context: Context): Section {
  const { areas } = context.tally;
  return {
    id: 'size',
    title: 'Size',
    blocks: [
      ...sizePlans(context),
      classesTable(context),
      ...declaration(context),
      ...readings(context),
      ...record(context),
      ...areas.levels.flatMap(sumsTable),
    ],
  };
}

export function classesTable(context: Context, detail: 'by level' | 'classes only' = 'by level'): Block {
  const { areas } = context.tally;
  const sqft = (n: number | undefined): string => (n === undefined ? 'not measured' : groupThousands(n));
  const rows: TableRow[] = AREA_CLASSES.filter((name) => name !== 'garage-and-open').flatMap(
    (name): TableRow[] => {
      const total = areas.byClass[name];
      if (total.area === 0n && name !== 'above-finished' && name !== 'below-finished') return [];
      const levels = areas.levels.filter((level) => level.byClass[name] > 0n);
      return [
        {
          id: `area-${name}`,
          cells: [
            rich(AREA_CLASS_NAMES[name]),
            rich(total.area === 0n ? 'none' : `${sqft(total.squareFeet)}${squareMetres(total)}`),
          ],
        },
        ...(levels.length < 2 || detail === 'classes only'
          ? []
          : levels.map((level) => ({
              id: `area-${name}-${level.id}`,
              cells: [
                rich(soft(`of that, ${level.name.toLowerCase()}`)),
                rich(printSquareFeet(level.byClass[name])),
              ],
            }))),
      ];
    },
  );
  const lines = [
    ['garage', 'Garage'],
    ['open', 'Open structure'],
    ['not-all-year', 'Enclosed, not for all-year use'],
    ['outbuildings', 'Outbuilding'],
  ] as const;
  for (const [line, title] of lines) {
    for (const one of areas.structures[line])
      rows.push({
        id: `area-${line}-${one.id}`,
        cells: [rich(`${title}: ${one.name.toLowerCase()}`), rich(sqft(one.squareFeet))],
      });
  }
  return {
    kind: 'table',
    id: 'area-classes',
    caption: 'Area by class',
    columns: columns(['Class', 75], ['Square feet', 25, 'right']),
    rows,
    note: rich('Each class stands alone; they are never added up. Rounded once, at the end.'),
  };
}

/**
 * How it was measured, with the measuring's evidence, then what follows from the rules and is nobody's statement.
 * Open readings are left to `readings`, which has their figures.
 */
function declared(context: Context): { readonly measured: Block; readonly rest: readonly string[] } {
  const { measured } = context.house;
  const [first, ...rest] = context.tally.areas.declaration.filter(
    (sentence) => !sentence.startsWith('Open reading, '),
  );
  return {
    measured: {
      kind: 'statement',
      id: 'declaration',
      size: 'body',
      text: rich(first),
      mark: markOf(
        context,
        { evidence: measured?.evidence ?? [], from: measured?.from },
        measured !== undefined,
      ),
    },
    rest,
  };
}

/** The declaration in one statement and one paragraph, for the sheet. */
export function declarationInShort(context: Context): Block[] {
  const { measured, rest } = declared(context);
  return [measured, { kind: 'paragraph', id: 'declaration-rest', size: 'small', text: rich(rest.join(' ')) }];
}

function declaration(context: Context): Block[] {
  const { measured, rest } = declared(context);
  return [
    measured,
    ...rest.map(
      (sentence, index): Block => ({
        kind: 'paragraph',
        id: `declaration-${index + 2}`,
        size: 'body',
        text: rich(sentence),
      }),
    ),
  ];
}

/** A rule that can be read two ways, once, with both figures; the one that the class figures use comes first. */
export function readings(context: Context): Block[] {
  return context.tally.areas.readings.map((reading, index): Block => {
    const { countedIfPass: pass, countedIfFail: fail } = reading;
    const [used, other] = reading.used === 'pass' ? [pass, fail] : [fail, pass];
    const sqft = (n: number): string => `${groupThousands(n)} sq ft`;
    return {
      kind: 'paragraph',
      id: `reading-${index + 1}`,
      size: 'body',
      text: rich(
        strong(`Open reading, ${reading.room}. `),
        `${reading.words} Counted here: ${sqft(used)}; by the other reading ${sqft(other)}.`,
      ),
    };
  });
}

export function record(context: Context): Block[] {
  const { record: compared } = context.tally.areas;
  if (compared === undefined) return [];
  return [
    {
      kind: 'statement',
      id: 'record',
      size: 'body',
      text: rich(
        compared.words,
        compared.causes.length === 0 ? undefined : ` What may explain it: ${compared.causes.join(' ')}`,
      ),
      mark: markOf(context, {
        evidence: context.house.record?.evidence ?? [],
        from: context.house.record?.from ?? compared.source,
      }),
    },
  ];
}

function sumsTable(level: LevelArea): Block[] {
  if (level.lines.length === 0) return [];
  const total = level.byClass[level.ownClass];
  return [
    {
      kind: 'table',
      id: `sum-${level.id}`,
      caption: `How the figure for ${level.name.toLowerCase()} was worked out`,
      columns: columns(['Part', 40], ['Square feet', 17, 'right'], ['Rule', 43]),
      rows: [
        ...level.lines.map((line, index) => ({
          id: `sum-${level.id}-${index + 1}`,
          cells: [rich(line.what), rich(signedSquareFeet(line.area)), rich(line.rule)],
        })),
        {
          id: `sum-${level.id}-total`,
          weight: 'total' as const,
          cells: [
            rich(AREA_CLASS_NAMES[level.ownClass]),
            rich(printSquareFeet(total)),
            rich('Rounded once, here'),
          ],
        },
      ],
    },
  ];
}

/** To a hundredth, so that the lines can be added up by hand; rounded half away from zero for display only. */
function signedSquareFeet(area: bigint): string {
  const size = area < 0n ? -area : area;
  const hundredths = (size * 200n + SQUARE_FOOT) / (2n * SQUARE_FOOT);
  const text = `${groupThousands(hundredths / 100n)}.${String(hundredths % 100n).padStart(2, '0')}`;
  return area < 0n ? `−${text}` : text;
}
