/** The care book: what the next owner keeps up, matches and calls about. */
import { type HouseDate, printDate } from '../../facts/date.js';
import { printSquareFeet } from '../../facts/floor-area.js';
import type { Finish, House, Room, Structure } from '../../facts/house.js';
import { printLength } from '../../facts/length.js';
import { nameOf } from '../../facts/place-name.js';
import { printProductSize } from '../../facts/size.js';
import type { FinishQuantity } from '../../tally/finish-quantities.js';
import { datesWords } from '../age-words.js';
import { alarmEvidence, alarmWords, replaceByWords } from '../alarm-words.js';
import { columns } from '../columns.js';
import { type Context, placeName } from '../context.js';
import { evidenceOf, markOf } from '../marks.js';
import type { Block, Section } from '../packet.js';
import { rich, strong, upperFirst, verbatim } from '../rich.js';
import { doneWords } from './rooms.js';
import { warrantyTable } from './warranties.js';

export function careSchedule(context: Context): Section {
  return {
    id: 'schedule',
    title: 'What to do, and when',
    blocks: [...tasks(context), ...alarmDates(context)],
  };
}

function tasks(context: Context): Block[] {
  const list = context.house.care;
  if (list.length === 0)
    return [
      { kind: 'paragraph', id: 'care-none', size: 'body', text: rich('No care task is written down.') },
    ];
  return [
    {
      kind: 'paragraph',
      id: 'care-note',
      size: 'body',
      text: rich(
        'The calendar file beside this book (care.ics) holds the dated tasks; any calendar program takes it.',
      ),
    },
    {
      kind: 'table',
      id: 'care-tasks',
      caption: 'Care tasks',
      columns: columns(['What', 34], ['Every', 16], ['Next', 20], ['How', 30]),
      rows: list.map((task, index) => ({
        id: `care-${index + 1}`,
        cells: [
          rich(
            upperFirst(task.what),
            task.for === undefined ? undefined : `, ${thingName(context, task.for)}`,
          ),
          rich(task.every),
          rich(nextWords(context, task.next)),
          rich(upperFirst(task.how ?? '')),
        ],
      })),
    },
  ];
}

/** A day that has come says so: nobody knows from here whether the task was done. */
function nextWords({ tally }: Context, next: HouseDate | undefined): string {
  if (next === undefined) return 'not dated';
  const words = printDate(next);
  return next.latest !== undefined && next.latest < tally.asOf ? `was due ${words}` : words;
}

function thingName(context: Context, id: string): string {
  const system = context.house.systems.find((one) => one.id === id);
  return (system?.name ?? system?.is ?? placeName(context, id)).toLowerCase();
}

function alarmDates(context: Context): Block[] {
  const { ends } = context.tally.alarms;
  if (ends.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'alarm-dates',
      caption: 'When alarms are to be replaced',
      columns: columns(['Alarm', 40], ['Replace by', 30], ['How that is known', 30]),
      rows: ends.map((end, index) => ({
        id: `alarm-date-${index + 1}`,
        cells: [
          rich(`${upperFirst(alarmWords(end.alarm))}, ${placeName(context, end.alarm.where).toLowerCase()}`),
          rich(end.replaceBy === undefined ? 'not known' : replaceByWords(end)),
          rich(end.basis),
        ],
        mark: markOf(context, { evidence: alarmEvidence(context, end.alarm) }, end.replaceBy !== undefined),
      })),
      note: rich(
        'Test every alarm on moving in, whatever its date. Smoke alarms: ten years from the date of manufacture (NFPA 72). Carbon monoxide alarms: the date printed on them.',
      ),
    },
  ];
}

/** Paint and finishes by room, with what is needed to match them. */
export function finishRecord(context: Context): Section {
  const homes = [...context.house.rooms, ...context.house.structures].filter(
    (home) => home.finishes.length > 0,
  );
  return {
    id: 'finishes',
    title: 'Paint and finishes by room',
    blocks: [
      touchUp(),
      ...(homes.length === 0
        ? [
            {
              kind: 'paragraph',
              id: 'finishes-none',
              size: 'body',
              text: rich('No finish is recorded.'),
            } satisfies Block,
          ]
        : homes.flatMap((home) => homeRecords(context, home))),
      ...amounts(context),
    ],
  };
}

/** The conventions behind the amounts, each once. */
function amounts(context: Context): Block[] {
  const rules = [...new Set(context.tally.quantities.map((one) => one.rule).filter((rule) => rule !== ''))];
  if (rules.length === 0) return [];
  return [
    { kind: 'heading', id: 'amounts', level: 3, text: 'How amounts to order again were worked out' },
    {
      kind: 'list',
      id: 'amount-rules',
      items: rules.map((rule, index) => ({ id: `amount-rule-${index + 1}`, text: rich(rule) })),
    },
  ];
}

const touchUp = (): Block => ({
  kind: 'paragraph',
  id: 'touch-up',
  size: 'body',
  text: rich(
    strong('Touching up. '),
    'Use the same can or batch, the same tool and sheen, first on a spot that nobody sees, and feather the edge. Aged, sunlit or shiny paint will show a patch; repaint such a wall from corner to corner. Keep what is left sealed, away from frost, and labelled with room and code. (Trade practice, no source.)',
  ),
});

function homeRecords(context: Context, home: Room | Structure): Block[] {
  return [
    { kind: 'heading', id: `finishes-${home.id}`, level: 3, text: nameOf(home) },
    ...home.finishes.map((finish, index): Block => {
      const id = `finish-${home.id}-${index}`;
      const quantity = context.tally.quantities.find((one) => one.id === id);
      return {
        kind: 'record',
        id,
        title: rich(strong(upperFirst(finish.on)), ` · ${finish.what}`),
        entries: [...entriesOf(context, finish), ...quantityEntries(quantity)].map((entry, at) => ({
          id: `${id}-${at + 1}`,
          label: entry[0],
          value: rich(entry[1]),
        })),
        mark: markOf(context, evidenceOf(context, finish)),
      };
    }),
  ];
}

function entriesOf(context: Context, finish: Finish): [string, string][] {
  const painted = /\b(paint|stain|varnish)\b/i.test(finish.what);
  const entry = (label: string, value: string | undefined, ask: boolean): [string, string][] =>
    value !== undefined ? [[label, value]] : ask && !finish.kept ? [[label, 'not recorded']] : [];
  const tiled = /tile/i.test(finish.what);
  return [
    ...entry('Product', finish.product, false),
    ...entry('Colour', finish.colour, painted),
    ...entry('Code', finish.code, painted),
    ...entry('Base', finish.base, painted),
    ...entry('Sheen, as labelled', finish.sheen, painted),
    ...entry('Coats', finish.coats?.toString(), false),
    ...entry('Lot or shade', finish.lot, tiled),
    ...entry('Plank', finish.plank && printProductSize(finish.plank), false),
    ...entry('Tile', finish.tile && printProductSize(finish.tile), tiled),
    ...entry('Thickness', finish.thickness && printLength(finish.thickness), false),
    ...entry('Grout', finish.grout, tiled),
    ...entry('Joint', finish.joint && printLength(finish.joint), false),
    ...entry('Sealed', finish.sealed && printDate(finish.sealed), false),
    ...entry('Laid', finish.pattern, false),
    ...entry('Runs', finish.direction, false),
    ...entry('Over', finish.over, false),
    ...entry('Done', doneWords(context, finish), true),
    ...entry('Left over', [finish.left, finish['left-at']].filter(Boolean).join(', ') || undefined, false),
    ...entry('Remark', finish.note, false),
  ];
}

function quantityEntries(quantity: FinishQuantity | undefined): [string, string][] {
  if (quantity?.area === undefined) return [];
  const { flooring, paint } = quantity;
  const entries: [string, string][] = [
    ['Net area', `${printSquareFeet(quantity.area)} sq ft (${quantity.basis})`],
  ];
  if (flooring !== undefined) {
    entries.push([
      'To order again',
      `${printSquareFeet(flooring.order)} sq ft with ${flooring.wastePercent} % waste (${flooring.wasteBasis})${flooring.boxes === undefined ? '' : `, ${flooring.boxes} ${flooring.boxes === 1 ? 'box' : 'boxes'}`}`,
    ]);
  }
  if (flooring?.defects !== undefined) entries.push(['For defects', flooring.defects.words]);
  if (paint !== undefined) {
    entries.push([
      'To paint again',
      `${paint.gallonsWords} gal for ${paint.coats} ${paint.coats === 1 ? 'coat' : 'coats'}${paint.coatsStated ? '' : ' (coats not stated)'} at ${paint.coverage} sq ft a gallon (${paint.coverageBasis}); buy ${paint.buy}`,
    ]);
  }
  return entries;
}

/** What is read off a label is told letter for letter. */
const AS_WRITTEN: ReadonlySet<string> = new Set(['Model', 'Serial']);

/** Systems with what a service person asks for. */
export function equipment(context: Context): Section {
  const { ages } = context.tally;
  const blocks: Block[] = ages.flatMap((age): Block[] => {
    const system = context.house.systems.find((one) => one.id === age.system.id);
    if (system === undefined) return [];
    const entries: [string, string | undefined][] = [
      ['What', system.name === undefined ? undefined : system.is],
      ['Where', system.where === undefined ? undefined : placeName(context, system.where)],
      ['Date', datesWords(age)],
      ['Model', system.model],
      ['Serial', system.label?.serial],
      ['Capacity', system.capacity === undefined ? undefined : (system.capacity.value ?? 'not known')],
      ['Runs on', system.fuel],
      ['Material', system.material],
      ['Serves', system.serves],
      ['Set to', system['set-to'] && `${system['set-to'].value} °F`],
      ['Serviced', system.serviced && printDate(system.serviced)],
      ['Manual', manualOf(context.house, system.manual)],
      ['Remark', system.note],
    ];
    return [
      {
        kind: 'record',
        id: `equipment-${system.id}`,
        title: rich(strong(upperFirst(system.name ?? system.is))),
        entries: entries
          .filter((entry): entry is [string, string] => entry[1] !== undefined)
          .map(([label, value], at) => ({
            id: `equipment-${system.id}-${at + 1}`,
            label,
            value: rich(AS_WRITTEN.has(label) ? verbatim(value) : upperFirst(value)),
          })),
        mark: markOf(context, system),
      },
    ];
  });
  if (blocks.length === 0)
    blocks.push({
      kind: 'paragraph',
      id: 'equipment-none',
      size: 'body',
      text: rich('No system or appliance is described.'),
    });
  return { id: 'equipment', title: 'Systems and appliances', blocks };
}

const manualOf = (house: House, id: string | undefined): string | undefined =>
  house.documents.find((one) => one.id === id)?.what;

export function warrantySection(context: Context): Section {
  const table = warrantyTable(context);
  return {
    id: 'warranties',
    title: 'Warranties',
    blocks:
      table.length > 0
        ? table.map((block) => ({ ...block, id: 'warranty-list' }))
        : [
            {
              kind: 'paragraph',
              id: 'warranties-none',
              size: 'body',
              text: rich('No warranty is recorded.'),
            },
          ],
  };
}
