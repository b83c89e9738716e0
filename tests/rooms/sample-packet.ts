/**
 * An invented packet that uses every kind of block, for testing the two renderers without the rooms above.
 *
 * Takes nothing, gives `samplePacket` (a buyer's packet, one page a section), `sampleSheet` (an agent's
 * sheet, one page), `photoSheet` (pictures in all shapes and arrangements) and `samplePictures()`. House, people, papers and figures are all made up.
 */
import { createHash } from 'node:crypto';
import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import type {
  Block,
  Drawing,
  EvidenceMark,
  Packet,
  Picture,
  Pictures,
  Rich,
  Section,
  Shape,
  StoredFile,
  TableRow,
} from '../../src/packet/packet.js';

const plain = (text: string): Rich => [{ text }];
const strong = (head: string, rest: string): Rich => [{ text: head, manner: 'strong' }, { text: rest }];
const link = (text: string, to: string): Rich => [{ text, to }];

const documented = (detail: Rich): EvidenceMark => ({ standing: 'documented', word: 'Documented', detail });
const owner = (detail: Rich): EvidenceMark => ({ standing: 'owner', word: 'Owner’s statement', detail });
const notKnown = (detail: Rich): EvidenceMark => ({ standing: 'not-known', word: 'Not known', detail });

/** A name without a single space, longer than a phone is wide. */
const LONG_WORD = 'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft';

function say(id: string, head: string, rest: string, mark: EvidenceMark): Block {
  return { kind: 'statement', id, text: strong(head, rest), size: 'body', mark };
}

interface SampleSystem {
  readonly id: string;
  readonly name: string;
  readonly when: string;
  readonly years: readonly [number, number] | undefined;
  readonly lives: readonly (readonly [number, number, string])[];
  readonly mark: EvidenceMark;
}

const SYSTEMS: readonly SampleSystem[] = [
  {
    id: 'water-heater',
    name: 'Water heater, tank, electric',
    when: 'made January 2026',
    years: [0.8, 0.9],
    lives: [
      [10, 13, 'a'],
      [13, 15, 'b'],
    ],
    mark: documented([{ text: 'label photo; ' }, { text: 'permit PL-26-0182', to: 'paper-07' }]),
  },
  {
    id: 'roof',
    name: 'Roof, architectural shingle',
    when: 'laid June 2019',
    years: [7.4, 7.5],
    lives: [
      [25, 30, 'a'],
      [20, 30, 'c'],
    ],
    mark: documented(link('roof permit', 'paper-03')),
  },
  {
    id: 'furnace',
    name: 'Gas furnace',
    when: 'made 2008 or 2009',
    years: [16.9, 18.9],
    lives: [
      [15, 20, 'a'],
      [20, 25, 'b'],
    ],
    mark: documented(plain('label, read in part')),
  },
  {
    id: 'range',
    name: 'Range, electric',
    when: 'made about 2021',
    years: [3.9, 6.9],
    lives: [
      [13, 15, 'a'],
      [12, 16, 'b'],
    ],
    mark: owner(plain('as told by the seller in 2026')),
  },
  {
    id: 'panel',
    name: 'Service panel, 150 A',
    when: 'not known',
    years: undefined,
    lives: [[60, 60, 'a']],
    mark: notKnown(plain('no label date found')),
  },
  {
    id: 'supply-pipe',
    name: 'Supply pipe, copper',
    when: 'before 1990',
    years: [36.9, 78.9],
    lives: [[50, 70, 'b']],
    mark: owner(plain('seen where it is open, in the cellar')),
  },
];

function agesDrawing(): Drawing {
  const left = 150;
  const perYear = 4.2;
  const shapes: Shape[] = [];
  const x = (years: number): number => left + years * perYear;
  const bottom = 24 + SYSTEMS.length * 32;
  for (let years = 0; years <= 80; years += 10) {
    shapes.push({ kind: 'line', from: [x(years), 18], to: [x(years), bottom], pen: 'hair', ink: 'line' });
    const tick = String(years);
    shapes.push({
      kind: 'text',
      at: [x(years), 13],
      text: tick,
      style: 'tick',
      ink: 'soft',
      anchor: 'middle',
    });
  }
  SYSTEMS.forEach((system, row) => {
    const y = 24 + row * 32;
    shapes.push({ kind: 'line', from: [0, y], to: [x(80), y], pen: 'hair', ink: 'line' });
    shapes.push({
      kind: 'text',
      at: [0, y + 13],
      text: system.name,
      style: 'name',
      ink: 'ink',
      anchor: 'start',
    });
    shapes.push({
      kind: 'text',
      at: [0, y + 24],
      text: system.when,
      style: 'small',
      ink: 'soft',
      anchor: 'start',
    });
    shapes.push(...ageShapes(system, x, y));
  });
  shapes.push({
    kind: 'text',
    at: [left, bottom + 12],
    text: 'years before 20 November 2026',
    style: 'tick',
    ink: 'soft',
    anchor: 'start',
  });
  return { width: 500, height: bottom + 18, shapes };
}

function ageShapes(system: SampleSystem, x: (years: number) => number, y: number): Shape[] {
  const shapes: Shape[] = [];
  if (system.years === undefined) {
    shapes.push({
      kind: 'text',
      at: [x(0), y + 12],
      text: 'not known',
      style: 'unknown',
      ink: 'soft',
      anchor: 'start',
    });
  } else {
    const [least, most] = system.years;
    shapes.push({ kind: 'path', points: bar(x(0), x(least), y + 7), closed: true, fill: 'accent-soft' });
    shapes.push({
      kind: 'path',
      points: bar(x(least), Math.max(x(most), x(least) + 2), y + 7),
      closed: true,
      fill: 'accent',
    });
  }
  system.lives.forEach(([from, to, source], index) => {
    const at = y + 17 + index * 6;
    shapes.push({ kind: 'line', from: [x(from), at], to: [x(to), at], pen: 'thin', ink: 'soft' });
    for (const end of [from, to]) {
      shapes.push({ kind: 'line', from: [x(end), at - 2], to: [x(end), at + 2], pen: 'thin', ink: 'soft' });
    }
    shapes.push({
      kind: 'text',
      at: [x(to) + 4, at + 2],
      text: source,
      style: 'tick',
      ink: 'soft',
      anchor: 'start',
    });
  });
  return shapes;
}

function bar(from: number, to: number, y: number): (readonly [number, number])[] {
  return [
    [from, y],
    [to, y],
    [to, y + 5],
    [from, y + 5],
  ];
}

/** The ages once more for a narrow screen: names stand above their bars. */
function narrowAgesDrawing(): Drawing {
  const perYear = 3;
  const x = (years: number): number => years * perYear;
  const shapes: Shape[] = [];
  const bottom = 20 + SYSTEMS.length * 46;
  for (let years = 0; years <= 80; years += 20) {
    shapes.push({ kind: 'line', from: [x(years), 14], to: [x(years), bottom], pen: 'hair', ink: 'line' });
    const anchor = years === 0 ? 'start' : 'middle';
    shapes.push({
      kind: 'text',
      at: [x(years), 10],
      text: String(years),
      style: 'tick',
      ink: 'soft',
      anchor,
    });
  }
  SYSTEMS.forEach((system, row) => {
    const y = 20 + row * 46;
    shapes.push({ kind: 'line', from: [0, y], to: [264, y], pen: 'hair', ink: 'line' });
    const text = `${system.name}, ${system.when}`;
    shapes.push({ kind: 'text', at: [0, y + 11], text, style: 'body', ink: 'ink', anchor: 'start' });
    shapes.push(...ageShapes(system, x, y + 12));
  });
  return { width: 264, height: bottom + 4, shapes };
}

function planDrawing(): Drawing {
  const room = (x: number, y: number, w: number, h: number, name: string, size: string): Shape[] => [
    {
      kind: 'path',
      points: [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
      ],
      closed: true,
      pen: 'wall',
      ink: 'ink',
      fill: 'paper',
    },
    { kind: 'text', at: [x + w / 2, y + h / 2], text: name, style: 'body', ink: 'ink', anchor: 'middle' },
    {
      kind: 'text',
      at: [x + w / 2, y + h / 2 + 10],
      text: size,
      style: 'tick',
      ink: 'soft',
      anchor: 'middle',
    },
  ];
  const dimension = (x1: number, x2: number, y: number, text: string): Shape[] => [
    { kind: 'line', from: [x1, y], to: [x2, y], pen: 'thin', ink: 'soft' },
    { kind: 'circle', at: [x1, y], radius: 1.4, fill: 'ink' },
    { kind: 'circle', at: [x2, y], radius: 1.4, fill: 'ink' },
    { kind: 'text', at: [(x1 + x2) / 2, y - 3], text, style: 'tick', ink: 'soft', anchor: 'middle' },
  ];
  return {
    width: 320,
    height: 292,
    shapes: [
      ...room(36, 32, 162, 108, 'Living room', '21′ 0″ × 13′ 4″'),
      ...room(198, 62, 88, 92, 'Kitchen', '11′ 6″ × 12′ 0″'),
      ...room(36, 140, 162, 28, 'Hall', ''),
      ...room(36, 168, 96, 90, 'Bedroom 1', '12′ 0″ × 12′ 1″'),
      ...room(132, 168, 66, 40, 'Bath', '8′ 6″ × 5′ 0″'),
      ...room(132, 208, 154, 50, 'Bedroom 2', '20′ 6″ × 12′ 6″'),
      ...room(198, 154, 88, 54, 'Dining', '11′ 6″ × 5′ 9″'),
      ...dimension(36, 198, 20, '22′ 0″'),
      ...dimension(198, 286, 50, '12′ 0″'),
      { kind: 'line', from: [22, 32], to: [22, 258], pen: 'thin', ink: 'soft' },
      {
        kind: 'text',
        at: [18, 145],
        text: '30′ 6″',
        style: 'tick',
        ink: 'soft',
        anchor: 'middle',
        turn: -90,
      },
      { kind: 'line', from: [36, 276], to: [110, 276], pen: 'medium', ink: 'soft' },
      { kind: 'text', at: [36, 287], text: '0', style: 'tick', ink: 'soft', anchor: 'start' },
      { kind: 'text', at: [110, 287], text: '10 ft', style: 'tick', ink: 'soft', anchor: 'end' },
      {
        kind: 'path',
        points: [
          [278, 268],
          [282, 261],
          [286, 268],
        ],
        closed: false,
        pen: 'thin',
        ink: 'soft',
        fill: 'none',
      },
      { kind: 'line', from: [282, 262], to: [282, 278], pen: 'thin', ink: 'soft' },
      { kind: 'text', at: [282, 288], text: 'N', style: 'tick', ink: 'soft', anchor: 'middle' },
      { kind: 'line', from: [60, 258], to: [110, 258], pen: 'dashed', ink: 'accent' },
    ],
  };
}

const inShort: Section = {
  id: 'in-short',
  title: 'In short',
  blocks: [
    {
      kind: 'statement',
      id: 'lead',
      size: 'lead',
      text: plain(
        'A storey-and-a-half house of 1948 with a cellar and a detached garage. Three bedrooms, one bath and a half. Bought in February 2026, repaired until June.',
      ),
      mark: documented([{ text: 'county card', to: 'paper-01' }, { text: ', 17 February 2026' }]),
    },
    say(
      'area-above',
      '1,436 square feet above grade, finished.',
      ' Below grade, finished: none. Measured at the outside faces to ANSI Z765-2021; the county says 1,410.',
      owner(plain('measured 14 June 2026')),
    ),
    {
      kind: 'statement',
      id: 'ages-in-short',
      size: 'body',
      text: [
        {
          text: 'The roof is seven years old, the water heater new, the furnace seventeen or eighteen. Each is drawn beside its published lives under ',
        },
        { text: 'How old things are', to: 'ages' },
        { text: '. The wiring behind the walls was ' },
        { text: 'not', manner: 'emphasis' },
        { text: ' opened.' },
      ],
      mark: documented([
        { text: 'roof permit', to: 'paper-03' },
        { text: '; heater label; furnace label in part' },
      ]),
    },
    {
      kind: 'paragraph',
      id: 'how-to-read',
      size: 'small',
      text: plain(
        'The margin says how each thing is known. “Not known” means that nobody could say; it does not mean no.',
      ),
    },
  ],
};

const done: Section = {
  id: 'what-was-done',
  title: 'What was done',
  blocks: [
    { kind: 'heading', id: 'done-kitchen', level: 3, text: 'Kitchen' },
    say(
      'kitchen-floor',
      'Floor, new.',
      ' Vinyl plank, ash, 7″ × 48″, 152 sq ft laid over a levelled subfloor. April 2026, by the owner. One part-box is left in the cellar.',
      documented([{ text: 'receipt 31', to: 'paper-09' }, { text: ', photo' }]),
    ),
    say(
      'kitchen-outlets',
      'Three outlets at the counter, replaced',
      ' with ground-fault protected ones. May 2026, by Ridge Street Electric, licence as stated OH-EL-00000; permit EL-26-0214, final.',
      documented([
        { text: 'permit', to: 'paper-05' },
        { text: ', ' },
        { text: 'invoice 12', to: 'paper-06' },
      ]),
    ),
    say(
      'kitchen-paint',
      'Wall paint, kept.',
      ' The colour is not known; a match card is in the papers.',
      notKnown(plain('asked, seller had no record')),
    ),
    { kind: 'heading', id: 'done-stair', level: 3, text: 'Cellar stair' },
    {
      kind: 'pair',
      id: 'stair-pair',
      before: 'IMG_0412',
      after: 'IMG_0988',
      aspect: 0.96,
      caption: plain('Before, 21 February 2026 · after, 12 May 2026. Nine risers had no rail.'),
    },
    say(
      'stair-rail',
      'Handrail, new',
      ', on the wall side, full length, returned at both ends.',
      documented(plain('two photos')),
    ),
    { kind: 'heading', id: 'done-bath', level: 3, text: 'Bath' },
    { kind: 'heading', id: 'done-bath-wet', level: 4, text: 'Walls around the tub' },
    say(
      'bath-tile',
      'Tile, new,',
      ` white ceramic 3″ × 6″ over cement board with a membrane by ${LONG_WORD}; grout “Oat”.`,
      owner(plain('')),
    ),
    {
      kind: 'photos',
      form: 'row',
      id: 'bath-photos',
      photos: [
        { id: 'bath-photo-1', photo: 'IMG_1033', caption: plain('Membrane before the tile, 2 May 2026.') },
        { id: 'bath-photo-2', photo: 'IMG_0988', caption: plain('The same wall, 20 May 2026.') },
        { id: 'bath-photo-3', photo: 'IMG_0412', caption: plain('') },
        { id: 'bath-photo-4', photo: 'IMG_1107', caption: plain('Floor, after cleaning.') },
      ],
    },
    {
      kind: 'photo',
      id: 'hall-photo',
      photo: 'IMG_1107',
      caption: plain('Hall floor, red oak, sanded and oiled in May 2026.'),
    },
  ],
};

const ages: Section = {
  id: 'ages',
  title: 'How old things are',
  blocks: [
    {
      kind: 'drawing',
      id: 'ages-drawing',
      drawing: agesDrawing(),
      narrow: narrowAgesDrawing(),
      alt: 'Age of each of six systems beside the lives that have been published for it; the table below says the same.',
      caption: plain(
        'A bar is the age; its dark end is the span that the dates leave open. A bracket is a published life: a, b and c name the source. A published life is no promise and no warranty.',
      ),
    },
    {
      kind: 'table',
      id: 'ages-table',
      caption: 'Ages in words, as of 20 November 2026',
      columns: [
        { title: 'System', align: 'left', weight: 4 },
        { title: 'Made or installed', align: 'left', weight: 3 },
        { title: 'Age in years', align: 'right', weight: 2 },
        { title: 'Published lives', align: 'left', weight: 3 },
      ],
      rows: SYSTEMS.map(
        (system): TableRow => ({
          id: `age-${system.id}`,
          cells: [
            plain(system.name),
            plain(system.when),
            plain(
              system.years === undefined
                ? 'not known'
                : `${Math.floor(system.years[0])} to ${Math.floor(system.years[1])}`,
            ),
            plain(system.lives.map(([from, to, source]) => `${from} to ${to} (${source})`).join('; ')),
          ],
          mark: system.mark,
        }),
      ),
      note: plain(
        'a a builders’ survey of 2007 · b an inspectors’ chart · c an energy agency’s list of 2023.',
      ),
    },
  ],
};

const FINISHES: readonly (readonly [string, string, readonly (readonly [string, string])[], EvidenceMark])[] =
  [
    [
      'kitchen-walls',
      'Walls, paint',
      [
        ['Colour', 'Oat 12'],
        ['Sheen', 'eggshell'],
        ['Base and lot', 'base 3, lot 77-A2219'],
        ['Done', 'April 2026, by the owner'],
        ['Left over', 'a third of a gallon, cellar shelf'],
      ],
      documented([{ text: 'can label' }, { text: ', ' }, { text: 'receipt 28', to: 'paper-08' }]),
    ],
    [
      'kitchen-counter',
      'Counter, laminate',
      [
        ['Pattern', 'grey slate, matte'],
        ['Edge', 'square, self edge'],
        ['Done', 'not known; kept'],
      ],
      notKnown(plain('as bought')),
    ],
    [
      'hall-floor',
      'Floor, red oak strip 2¼″',
      [
        ['Treatment', 'sanded to 120, two coats of hard oil'],
        ['Done', 'May 2026, by the owner and a relative'],
        ['Care', 'oil again when water no longer beads; no steam'],
      ],
      owner(plain('')),
    ],
  ];

const rooms: Section = {
  id: 'rooms-and-finishes',
  title: 'Rooms and finishes',
  blocks: [
    { kind: 'heading', id: 'room-kitchen', level: 3, text: 'Kitchen, 11′ 6″ × 12′ 0″' },
    ...FINISHES.slice(0, 2).map(finishRecord),
    { kind: 'heading', id: 'room-hall', level: 3, text: 'Hall' },
    ...FINISHES.slice(2).map(finishRecord),
    {
      kind: 'paragraph',
      id: 'room-attic',
      size: 'body',
      text: plain('The attic has no finishes on record.'),
    },
  ],
};

function finishRecord([id, title, entries, mark]: (typeof FINISHES)[number]): Block {
  return {
    kind: 'record',
    id: `finish-${id}`,
    title: plain(title),
    entries: entries.map(([label, value], index) => ({
      id: `finish-${id}-${index}`,
      label,
      value: plain(value),
    })),
    mark,
  };
}

const size: Section = {
  id: 'size',
  title: 'Size',
  blocks: [
    {
      kind: 'drawing',
      id: 'plan-main',
      drawing: planDrawing(),
      alt: 'Main level to scale: living room and kitchen to the north, hall and bath between, two bedrooms to the south.',
      caption: plain('Main level, drawn from the measured outline. Inside walls are drawn at one thickness.'),
    },
    {
      kind: 'table',
      id: 'area-table',
      caption: 'Area by class',
      columns: [
        { title: 'Class', align: 'left', weight: 4 },
        { title: 'sq ft', align: 'right', weight: 1 },
      ],
      rows: [
        { id: 'area-1', cells: [plain('Above grade, finished'), plain('1,436')] },
        { id: 'area-2', cells: [plain('of that, main level'), plain('989')] },
        { id: 'area-3', cells: [plain('of that, half storey'), plain('447')] },
        { id: 'area-4', cells: [plain('Below grade, unfinished'), plain('989')], weight: 'total' },
        { id: 'area-5', cells: [plain('Garage, detached'), plain('440')] },
        { id: 'area-6', cells: [plain('Porch'), plain('96')] },
      ],
      note: plain('Each class stands alone; they are never added up.'),
    },
  ],
};

const safety: Section = {
  id: 'safety',
  title: 'Safety',
  blocks: [
    {
      kind: 'list',
      id: 'alarms',
      items: [
        {
          id: 'alarm-1',
          text: strong('Smoke alarm, upper hall.', ' Made March 2026; due for replacement by March 2036.'),
          mark: documented(plain('label photo')),
        },
        {
          id: 'alarm-2',
          text: strong(
            'Carbon monoxide alarm, cellar.',
            ' Made before 2018; past the ten years its maker gives.',
          ),
          mark: owner(plain('read on the back of the alarm, 3 June 2026')),
        },
        { id: 'alarm-3', text: strong('Radon.', ' Not measured.'), mark: notKnown(plain('')) },
      ],
    },
    {
      kind: 'list',
      id: 'shut-offs',
      items: [
        {
          id: 'shut-off-water',
          text: plain('Water: cellar, front wall, left of the meter. A quarter turn.'),
        },
        { id: 'shut-off-gas', text: plain('Gas: outside, north wall, at the meter; needs a wrench.') },
      ],
    },
    {
      kind: 'notice',
      id: 'notice-lead',
      title: 'Lead paint may be present',
      paragraphs: [
        plain(
          'The house was built before 1978. Before anything is sanded, scraped or opened, have it tested or treat the paint as lead paint.',
        ),
        [
          { text: 'What is known about tests is under ' },
          { text: 'Questions', to: 'questions' },
          { text: '.' },
        ],
      ],
      source: plain('24 CFR part 35 and 40 CFR part 745'),
    },
  ],
};

const found: Section = {
  id: 'left-as-found',
  title: 'Left as found',
  blocks: [
    say(
      'garage-opener',
      'Garage door opener',
      ' does not run. The door is opened by hand.',
      owner(plain('since before February 2026')),
    ),
    { kind: 'list', id: 'found-nothing', items: [] },
  ],
};

const PAPER_KINDS = ['receipt', 'permit', 'invoice', 'label photo', 'warranty', 'county record'] as const;

const papers: Section = {
  id: 'papers',
  title: 'Papers',
  blocks: [
    {
      kind: 'table',
      id: 'papers-table',
      caption: 'Papers that this packet rests on',
      columns: [
        { title: 'No.', align: 'right', weight: 1 },
        { title: 'Paper', align: 'left', weight: 6 },
        { title: 'Date', align: 'left', weight: 2 },
        { title: 'Kind', align: 'left', weight: 2 },
        { title: 'Used for', align: 'left', weight: 4 },
      ],
      rows: Array.from({ length: 40 }, (_, index): TableRow => {
        const number = String(index + 1).padStart(2, '0');
        return {
          id: `paper-${number}`,
          cells: [
            plain(number),
            plain(
              index === 10
                ? `Permit issued to ${LONG_WORD}`
                : `Paper number ${number}, as kept in the folder`,
            ),
            plain(`2026-0${(index % 6) + 1}-1${index % 10}`),
            plain(PAPER_KINDS[index % PAPER_KINDS.length] ?? ''),
            index % 4 === 0 ? link('Floor, new', 'kitchen-floor') : plain('not cited'),
          ],
        };
      }),
    },
    {
      kind: 'table',
      id: 'warranties',
      caption: 'Warranties that run on',
      columns: [
        { title: 'Thing', align: 'left', weight: 3 },
        { title: 'Until', align: 'left', weight: 2 },
      ],
      rows: [],
    },
  ],
};

const questions: Section = {
  id: 'questions',
  title: 'Questions',
  blocks: [
    {
      kind: 'question',
      id: 'question-water',
      ask: 'Has water ever come into the cellar?',
      answer: plain(
        'Once since February 2026, after the storm of 3 April: a damp line along the north wall, dry the next day.',
      ),
      mark: owner(plain('answered 20 June 2026')),
    },
    {
      kind: 'question',
      id: 'question-lead',
      ask: 'Was the paint tested for lead?',
      answer: [
        { text: 'No test is on record. See ' },
        { text: 'the lead notice', to: 'notice-lead' },
        { text: '.' },
      ],
      mark: notKnown(plain('no test made, none handed over')),
    },
  ],
};

const changes: Section = {
  id: 'changes-since-the-packet-that-was-handed-over-on-the-second-of-june',
  title: 'Changes since the packet that was handed over on the second of June',
  blocks: [
    {
      kind: 'table',
      id: 'changes-table',
      caption: 'Facts that changed',
      columns: [
        { title: 'Fact', align: 'left', weight: 3 },
        { title: 'Said on 2 June 2026', align: 'left', weight: 3 },
        { title: 'Says now', align: 'left', weight: 3 },
      ],
      rows: [
        {
          id: 'change-1',
          cells: [plain('Lot'), plain('0.25 acre'), plain('0.21 acre')],
          mark: documented(link('survey plat', 'paper-02')),
        },
        {
          id: 'change-2',
          cells: [plain('Roof'), plain('2018'), plain('June 2019')],
          mark: documented(link('roof permit', 'paper-03')),
        },
      ],
    },
  ],
};

const notices: Section = {
  id: 'notices',
  title: 'Notices',
  blocks: [
    {
      kind: 'notice',
      id: 'notice-standing',
      title: 'What this packet is',
      paragraphs: [
        plain(
          'This packet says what its owner saw, did and kept papers for. It is not an inspection, an appraisal or legal advice. A licensed inspection and local codes govern.',
        ),
      ],
    },
    {
      kind: 'paragraph',
      id: 'only-web',
      only: 'web',
      size: 'body',
      text: plain('The paper edition of these pages says the same.'),
    },
    {
      kind: 'paragraph',
      id: 'only-print',
      only: 'print',
      size: 'body',
      text: plain('The pages on screen say the same.'),
    },
  ],
};

/** A buyer's packet: one page a section, every kind of block. */
export const samplePacket: Packet = {
  house: {
    folder: 'quarry-road',
    name: 'Quarry Road',
    place: 'Fallow Mills, Ohio · street withheld until showing',
  },
  edition: { name: 'buyer', title: 'Buyer packet', reader: 'For a buyer and a buyer’s inspector' },
  asOf: '2026-11-20',
  asOfText: '20 November 2026',
  digest: '7f3a 91c2 0d4e',
  arrangement: 'page-per-section',
  keyFacts: [
    { id: 'key-built', label: 'Built', value: '1948', known: true },
    { id: 'key-area', label: 'Above grade, finished', value: '1,436 sq ft', known: true },
    { id: 'key-beds', label: 'Bedrooms and baths', value: '3 and 1½', known: true },
    { id: 'key-lot', label: 'Lot', value: '0.21 acre', known: true },
  ],
  sections: [inShort, done, ages, rooms, size, safety, found, papers, questions, changes, notices],
  photos: [
    {
      id: 'IMG_0412',
      alt: 'Cellar stair seen from above: nine steps between bare walls, no rail',
      content: 'f00d',
      use: 'full',
    },
    {
      id: 'IMG_0988',
      alt: 'The stair from below with a round handrail on the wall side',
      content: 'f00d',
      use: 'full',
    },
    { id: 'IMG_1033', alt: 'Grey membrane on the wall around a tub', content: 'f00d', use: 'full' },
    { id: 'IMG_1107', alt: 'Oak strip floor in the hall, light from the left', content: 'f00d', use: 'full' },
  ],
  originals: [],
  exports: [
    {
      file: 'listing-fields.json',
      title: 'Listing fields, by their data dictionary names',
      mediaType: 'application/json',
      text: '{}\n',
    },
  ],
  standing: 'No inspection, no appraisal and no legal advice. A licensed inspection and local codes govern.',
};

/** An agent's sheet: some of the same on one page. */
export const sampleSheet: Packet = {
  ...samplePacket,
  edition: { name: 'agent', title: 'Improvements sheet', reader: 'For the listing agent and the appraiser' },
  digest: '02c4 5be1 aa90',
  arrangement: 'one-page',
  sections: [inShort, done, ages, size, safety, papers, questions],
};

interface SamplePhoto {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly drawn: string;
  /** Widths of the files for pages; half and whole where nothing is said. */
  readonly widths?: readonly number[];
}

const STEPS = Array.from({ length: 9 }, (_, i) => {
  const y = 30 + i * 7;
  return `<path d="M${30 - i * 2} ${y}H${70 + i * 2}V${y + 4}H${30 - i * 2}Z" fill="#${(9 - i).toString(16)}a8070"/>`;
}).join('');

const SAMPLE_PHOTOS: readonly SamplePhoto[] = [
  {
    id: 'IMG_0412',
    width: 800,
    height: 600,
    drawn: `<rect width="100" height="100" fill="#8d8a80"/>${STEPS}`,
  },
  {
    id: 'IMG_0988',
    width: 600,
    height: 800,
    drawn: `<rect width="100" height="100" fill="#c9c4b6"/>${STEPS}<path d="M20 10L12 90" stroke="#6b4a2e" stroke-width="3"/>`,
  },
  {
    id: 'IMG_1033',
    width: 800,
    height: 600,
    drawn: '<rect width="100" height="100" fill="#7d8a90"/><path d="M0 70H100V100H0Z" fill="#e5e5e0"/>',
  },
  {
    id: 'IMG_1107',
    width: 800,
    height: 450,
    drawn:
      '<rect width="100" height="100" fill="#a97f52"/><path d="M0 20H100M0 40H100M0 60H100M0 80H100" stroke="#8a6238"/>',
  },
];

/** A panorama, a very tall photo and a pair as from a phone: shapes that strain a page. */
const ODD_PHOTOS: readonly SamplePhoto[] = [
  {
    id: 'PANO_4',
    width: 1600,
    height: 400,
    widths: [480, 960, 1600],
    drawn:
      '<rect width="100" height="100" fill="#9fb2bb"/><path d="M0 60L20 40L45 62L70 35L100 58V100H0Z" fill="#5f6f62"/>',
  },
  {
    id: 'PANO_8',
    width: 1600,
    height: 200,
    widths: [480, 960, 1600],
    drawn:
      '<rect width="100" height="100" fill="#b6c2c4"/><path d="M0 70L12 40L30 66L52 30L80 64L100 44V100H0Z" fill="#77705f"/>',
  },
  {
    id: 'TALL_1',
    width: 300,
    height: 1200,
    drawn: '<rect width="100" height="100" fill="#cdc6b8"/><path d="M40 0H60V100H40Z" fill="#8b5a3c"/>',
  },
  {
    id: 'PAIR_A',
    width: 1600,
    height: 1200,
    widths: [480, 960, 1600],
    drawn: `<rect width="100" height="100" fill="#8f877a"/>${STEPS}<path d="M0 0H100V8H0Z" fill="#6f675c"/>`,
  },
  {
    id: 'PAIR_B',
    width: 1600,
    height: 1200,
    widths: [480, 960, 1600],
    drawn: `<rect width="100" height="100" fill="#d9d4c8"/>${STEPS}<path d="M22 12L10 92" stroke="#6b4a2e" stroke-width="2"/><path d="M0 0H100V8H0Z" fill="#f1ede4"/>`,
  },
];

/** Names as they come from phones and people: each strains an address or a style sheet in another way. */
export const ODD_NAMES = [
  'IMG_0412.HEIC',
  'Küche nachher (2).jpg',
  'the "good" side.jpg',
  "aunt's #1 100% stair?.png",
  '🏚️ vorher & nachher.heif',
  `${'long-name-'.repeat(9)}.jpg`,
] as const;

const CONTACT_PHOTOS = 60;

/** A house file's contact sheet after a pair, a panorama, a tall photo and a mixed row. */
export const photoSheet: Packet = {
  ...samplePacket,
  edition: { name: 'file', title: 'House file', reader: 'For the renovator' },
  sections: [
    {
      id: 'photos',
      title: 'Photos',
      blocks: [
        {
          kind: 'pair',
          id: 'pair-level',
          before: 'PAIR_A',
          after: 'PAIR_B',
          aspect: 1.333,
          caption: plain('Before, 21 February 2026 · after, 12 May 2026. The same stair from the same step.'),
        },
        say('after-pair', 'Handrail, new', ', on the wall side.', documented(plain('two photos'))),
        { kind: 'photo', id: 'pano', photo: 'PANO_4', caption: plain('The whole front, 4 to 1.') },
        { kind: 'photo', id: 'tall', photo: 'TALL_1', caption: plain('Chimney from roof to footing.') },
        {
          kind: 'photos',
          form: 'row',
          id: 'mixed-row',
          photos: [
            { id: 'mixed-1', photo: 'IMG_0412', caption: plain('Stair.') },
            { id: 'mixed-2', photo: 'TALL_1', caption: plain('The chimney once more, with words below it.') },
            { id: 'mixed-3', photo: 'PANO_8', caption: plain('The street, 8 to 1.') },
            { id: 'mixed-4', photo: 'IMG_0988', caption: plain('Rail.') },
          ],
        },
        {
          kind: 'photos',
          form: 'row',
          id: 'alone-row',
          photos: [{ id: 'alone-1', photo: 'IMG_1107', caption: plain('Hall floor.') }],
        },
      ],
    },
    {
      id: 'all-photos',
      title: 'All photos',
      blocks: [
        {
          kind: 'photos',
          form: 'contact',
          id: 'contact',
          photos: Array.from({ length: CONTACT_PHOTOS }, (_, index) => {
            const photos = ['IMG_1033', 'IMG_0988', 'PANO_8', 'IMG_0412', 'TALL_1'] as const;
            const name = ODD_NAMES[index % ODD_NAMES.length] ?? '';
            return {
              id: `contact-${index}`,
              photo: photos[index % photos.length] ?? '',
              caption: index % 7 === 3 ? [] : plain(`Kitchen, ${1 + (index % 28)} May 2026.`),
              original: { name, path: `originals/${index}/${name}` },
            };
          }),
        },
      ],
    },
  ],
  photos: [
    ...samplePacket.photos,
    { id: 'PANO_4', alt: 'House front from fence to fence', content: 'f00d', use: 'full' },
    { id: 'PANO_8', alt: 'The street to both sides', content: 'f00d', use: 'full' },
    { id: 'TALL_1', alt: 'Brick chimney in full height', content: 'f00d', use: 'full' },
    { id: 'PAIR_A', alt: 'Cellar stair before, without a rail', content: 'f00d', use: 'full' },
    { id: 'PAIR_B', alt: 'Cellar stair after, with a rail', content: 'f00d', use: 'full' },
  ],
};

/**
 * Makes the sample's photos in a new temporary folder, as the intake would: a JPEG and an AVIF in each width, and a
 * few pixels as a PNG. The same bytes on every run with one version of the image library.
 */
export async function samplePictures(): Promise<Pictures> {
  const folder = await mkdtemp(join(tmpdir(), 'sample-pictures-'));
  const pictures = new Map<string, Picture>();
  for (const photo of [...SAMPLE_PHOTOS, ...ODD_PHOTOS])
    pictures.set(photo.id, await samplePicture(folder, photo));
  return pictures;
}

async function samplePicture(folder: string, photo: SamplePhoto): Promise<Picture> {
  const { id, width, height } = photo;
  const svg = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 100 100" preserveAspectRatio="none">${photo.drawn}</svg>`,
  );
  const store = async (bytes: Buffer, ending: string): Promise<StoredFile> => {
    const name = `${createHash('sha256').update(bytes).digest('hex').slice(0, 16)}.${ending}`;
    await writeFile(join(folder, name), bytes);
    return { name, file: join(folder, name) };
  };
  const sizes = [];
  for (const w of photo.widths ?? [width / 2, width]) {
    const h = Math.round((height * w) / width);
    const small = sharp(svg).resize(w, h, { fit: 'fill' });
    const jpeg = await store(await small.clone().jpeg({ quality: 70 }).toBuffer(), 'jpg');
    const avif = await store(await small.clone().avif({ quality: 50, effort: 0 }).toBuffer(), 'avif');
    sizes.push({ width: w, height: h, jpeg, avif });
  }
  const last = sizes.at(-1);
  if (last === undefined) throw new Error('the sample photo has no sizes');
  const few = await sharp(svg).resize(8, 8, { fit: 'inside' }).png().toBuffer();
  const tiny = `data:image/png;base64,${few.toString('base64')}`;
  const print = { width: last.width, height: last.height, file: last.jpeg.file };
  return { id, width, height, sizes, tiny, print };
}

const PAYMENT_COLUMNS = ['Payee', 'Date', 'Paper', 'Kind', 'Before tax', 'Tax', 'Sum'] as const;

/** A table as wide as they come, under a very long name: for looking at what gives way. */
export const wideSheet: Packet = {
  ...sampleSheet,
  house: { ...sampleSheet.house, name: `The Old Schoolhouse at ${LONG_WORD.slice(0, 46)} Crossing` },
  keyFacts: [
    ...samplePacket.keyFacts,
    { id: 'key-heat', label: 'Heat', value: 'Gas furnace, forced air', known: true },
    { id: 'key-water', label: 'Water and sewer', value: 'town water, town sewer', known: true },
  ],
  sections: [
    {
      id: 'payments',
      title: 'Payments',
      blocks: [
        {
          kind: 'table',
          id: 'payments-table',
          caption: 'Payments by date',
          columns: PAYMENT_COLUMNS.map((title, index) => ({
            title,
            align: index > 3 ? 'right' : 'left',
            weight: index === 0 ? 3 : 2,
          })),
          rows: Array.from({ length: 6 }, (_, index) => ({
            id: `payment-${index}`,
            cells: [
              index === 2 ? LONG_WORD : 'Ridge Street Electric and Plumbing',
              `2026-03-1${index}`,
              `receipt 3${index}`,
              'materials',
              '$1,234.56',
              '$82.10',
              '$1,316.66',
            ].map(plain),
            mark: documented(plain(`receipt 3${index}, with a note of the payee’s own hand`)),
            weight: index === 5 ? 'total' : 'normal',
          })),
        },
      ],
    },
  ],
};
