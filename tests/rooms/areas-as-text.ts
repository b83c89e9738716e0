/** What was worked out about a house's size, as lines of text: whatever changes in it shows as a changed line. */
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { SQUARE_FOOT } from '../../src/facts/floor-area.js';
import { FOOT } from '../../src/facts/length.js';
import type { Areas, LevelArea, StructureArea } from '../../src/tally/area-answer.js';

/** Square feet to four decimals, rounded down: no more than a hand would work out. */
const feet = (area: bigint | undefined): string => {
  if (area === undefined) return 'not known';
  const parts = ((area < 0n ? -area : area) * 10_000n) / SQUARE_FOOT;
  const decimals = String(parts % 10_000n)
    .padStart(4, '0')
    .replace(/0+$/, '');
  return `${area < 0n ? '-' : ''}${parts / 10_000n}${decimals === '' ? '' : `.${decimals}`}`;
};

const STRUCTURE_LINES = ['garage', 'open', 'not-all-year', 'outbuildings'] as const;

const length = (units: number | undefined): string =>
  units === undefined ? 'not known' : String(Number((units / FOOT).toFixed(4)));

export function areasAsText(areas: Areas, diagnostics: readonly Diagnostic[]): string {
  const { levels, byClass, declaration, readings, record } = areas;
  const blocks = [
    ...levels.map(level),
    [
      'by class',
      ...Object.entries(byClass).map(
        ([name, { area, squareFeet, squareMetres }]) =>
          `  ${name}: ${feet(area)}, printed ${squareFeet}${squareMetres === undefined ? '' : ` (${squareMetres} m²)`}`,
      ),
    ],
    [
      'structures',
      ...STRUCTURE_LINES.flatMap((line) => areas.structures[line].map((one) => apart(line, one))),
    ],
    [
      `declared: ${areas.toStandard ? 'to the standard' : 'no standard'}${areas.estimate ? ', an estimate' : ''}`,
    ],
    declaration.map((sentence) => `  ${sentence}`),
    [
      'readings',
      ...readings.map(
        ({ room, countedIfPass, countedIfFail, used }) =>
          `  ${room}: ${countedIfPass} or ${countedIfFail}, ${used}`,
      ),
    ],
    record === undefined
      ? ['no record']
      : [
          `record ${record.squareFeet}${record.source === undefined ? '' : ` (${record.source})`}: ${record.difference}`,
          `  ${record.words}`,
          ...record.causes.map((cause) => `  ${cause}`),
        ],
    [
      'rooms inside',
      ...[...areas.roomFloors].map(([id, floor]) => {
        const walls = areas.roomWalls.get(id);
        return `  ${id}: ${feet(floor)}, walls ${length(walls?.perimeter)} by ${length(walls?.height)}`;
      }),
    ],
    [
      'told',
      ...diagnostics.flatMap(({ code, severity, path = [], message, hints = [] }) => [
        `  ${severity} ${code} ${printFactPath(path)}: ${message}`,
        ...hints.map((hint) => `    ${hint}`),
      ]),
    ],
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

const apart = (line: string, { name, area, squareFeet }: StructureArea): string =>
  `  ${line}, ${name}: ${feet(area)}, printed ${squareFeet}`;

function level(of: LevelArea): string[] {
  return [
    `level ${of.name} (${of.grade}, ${of.basis}${of.estimate ? ', estimate' : ''}, ${of.reading}): ${feet(of.gross)}`,
    ...of.lines.flatMap(({ what, area, into, rule }) => [
      `  ${feet(area)} ${what}${into === undefined ? '' : ` -> ${into}`}`,
      `    ${rule}`,
    ]),
    ...Object.entries(of.byClass).flatMap(([name, area]) =>
      area === 0n ? [] : [`  = ${name}${name === of.ownClass ? ' (its own)' : ''} ${feet(area)}`],
    ),
    ...of.rooms.map(
      ({ id, sizeWords, spot, areaClass, split }) =>
        `  placed ${id}: ${sizeWords}, named at ${spot.map(length).join(' ')}, ${areaClass}${split ? ', split' : ''}`,
    ),
  ];
}
