/** The plan of a packet: where boxes stand. Nothing here needs a PDF. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Block, EvidenceMark, Packet, Pictures, Section } from '../../src/packet/packet.js';
import type { Box, Plan, TextBox } from '../../src/print/box.js';
import { loadFaces } from '../../src/print/faces.js';
import { sharedLetters } from '../../src/print/letters.js';
import type { PaperName } from '../../src/print/paper.js';
import { planPages } from '../../src/print/plan.js';
import { samplePacket, samplePictures, sampleSheet } from './sample-packet.js';

const letters = sharedLetters(loadFaces);
let pictures: Pictures;

beforeAll(async () => {
  pictures = await samplePictures();
});

const mark: EvidenceMark = { standing: 'documented', word: 'Documented', detail: [{ text: 'receipt 12' }] };

function words(count: number, of = 'timber'): string {
  return Array.from({ length: count }, (_, i) => `${of} ${i}`).join(' ');
}

const oneLiners = (count: number): Block[] =>
  Array.from({ length: count }, (_, i) => ({
    kind: 'paragraph',
    id: `f${i}`,
    size: 'body',
    text: [{ text: 'One line.' }],
  }));

function packetOf(sections: readonly Section[], changes: Partial<Packet> = {}): Packet {
  return { ...samplePacket, sections, photos: [], ...changes };
}

function packetWith(blocks: readonly Block[]): Packet {
  return packetOf([{ id: 'only', title: 'Only', blocks }]);
}

function planOf(packet: Packet, paper: PaperName = 'letter'): Plan {
  return planPages(packet, pictures, paper, letters);
}

function isText(box: Box): box is TextBox {
  return box.kind === 'text';
}

/** Furniture stands outside the frame and is no content. */
function content(boxes: readonly Box[]): Box[] {
  return boxes.filter((box) => box.block !== 'head' && box.block !== 'foot');
}

function linesOf(plan: Plan, block: string): { page: number; box: TextBox }[] {
  return plan.pages.flatMap((page) =>
    page.boxes.filter(isText).flatMap((box) => (box.block === block ? [{ page: page.number, box }] : [])),
  );
}

function textOf(plan: Plan, block: string): string {
  return linesOf(plan, block)
    .map(({ box }) => box.text)
    .join('');
}

/** Blocks that strain the layout: long, tall, empty, many. */
function strainedPacket(): Packet {
  const blocks: Block[] = [];
  for (let i = 0; i < 14; i++) {
    blocks.push({ kind: 'heading', id: `h${i}`, level: i % 3 === 0 ? 4 : 3, text: `Heading ${i}` });
    blocks.push({
      kind: 'statement',
      id: `s${i}`,
      size: 'body',
      text: [{ text: words(6 + ((i * 37) % 150)) }],
      mark: { ...mark, detail: [{ text: words((i * 11) % 40, 'paper') }] },
    });
    blocks.push({
      kind: 'paragraph',
      id: `p${i}`,
      size: 'body',
      text: [{ text: words(10 + ((i * 53) % 120)) }],
    });
    blocks.push({
      kind: 'notice',
      id: `n${i}`,
      title: `Notice ${i}`,
      paragraphs: [[{ text: words(30 + ((i * 29) % 140)) }], [{ text: words(12) }]],
      source: [{ text: 'invented rule 7' }],
    });
    blocks.push({
      kind: 'record',
      id: `r${i}`,
      title: [{ text: `Record ${i}` }],
      entries: Array.from({ length: 1 + ((i * 7) % 9) }, (_, j) => ({
        id: `r${i}-${j}`,
        label: `Label ${j}`,
        value: [{ text: words(1 + ((i + j) % 14)) }],
      })),
      mark: { ...mark, detail: [{ text: words(12, 'paper') }] },
    });
    blocks.push({
      kind: 'table',
      id: `t${i}`,
      caption: `Table ${i}`,
      columns: [
        { title: 'Thing', align: 'left', weight: 3 },
        { title: 'How many', align: 'right', weight: 1 },
      ],
      rows: Array.from({ length: (i * 5) % 13 }, (_, j) => ({
        id: `t${i}-${j}`,
        cells: [[{ text: words(1 + ((i * j) % 17)) }], [{ text: `${j * 1000}` }]],
        ...(j % 4 === 0 ? { mark } : {}),
      })),
    });
  }
  return packetOf([
    { id: 'empty', title: 'Empty', blocks: [] },
    { id: 'full', title: 'Full', blocks },
    { id: 'late', title: 'Late and empty', blocks: [] },
  ]);
}

describe.each([
  ['buyer packet, letter', () => planOf(samplePacket)],
  ['buyer packet, A4', () => planOf(samplePacket, 'a4')],
  ['agent sheet, letter', () => planOf(sampleSheet)],
  ['strained packet, letter', () => planOf(strainedPacket())],
  ['strained sheet, A4', () => planOf({ ...strainedPacket(), arrangement: 'one-page' }, 'a4')],
])('%s', (_, make) => {
  let plan: Plan;
  beforeAll(() => {
    plan = make();
  });

  it('keeps every box inside the frame of its page', () => {
    const { paper } = plan;
    const outside = plan.pages.flatMap((page) =>
      content(page.boxes).filter(
        (box) =>
          box.x < paper.leftPt - 0.01 ||
          box.x + box.width > paper.leftPt + paper.fullPt + 0.01 ||
          box.y < paper.topPt - 0.75 ||
          box.y + box.height > paper.bottomPt + 0.01,
      ),
    );
    expect(plan.pages.length).toBeGreaterThan(2);
    expect(outside).toEqual([]);
  });

  it('lets no line of text run into another', () => {
    const collisions = plan.pages.flatMap((page) => {
      const boxes = page.boxes.filter(isText);
      return boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter(
            (b) =>
              a.x < b.x + b.width - 0.01 &&
              b.x < a.x + a.width - 0.01 &&
              a.y < b.y + b.height - 0.01 &&
              b.y < a.y + a.height - 0.01,
          )
          .map((b) => `page ${page.number}: "${a.text}" and "${b.text}"`),
      );
    });
    expect(collisions).toEqual([]);
  });

  it('never ends a page with a heading', () => {
    const headings = plan.pages.slice(0, -1).flatMap((page) => {
      const column = content(page.boxes).filter(isText);
      const lowest = column.reduce<TextBox | undefined>(
        (low, box) => (low === undefined || box.y + box.height > low.y + low.height ? box : low),
        undefined,
      );
      const type = lowest?.tags.at(-1)?.type ?? '';
      return /^H\d$/.test(type) ? [lowest?.text] : [];
    });
    expect(headings).toEqual([]);
  });

  it('leaves no page blank', () => {
    const blank = plan.pages.filter((page) => content(page.boxes).every((box) => box.kind === 'rule'));
    expect(blank).toEqual([]);
  });

  it('numbers its pages', () => {
    const feet = plan.pages.map((page) =>
      page.boxes.find((box) => isText(box) && box.block === 'foot' && box.text.startsWith('page ')),
    );
    expect(feet.map((box) => (box as TextBox).text)).toEqual(
      plan.pages.map((page) => `page ${page.number} of ${plan.pages.length}`),
    );
  });
});

describe('the baseline grid', () => {
  it.each(['letter', 'a4'] as const)('carries what is read, in half lines, on every page: %s', (paper) => {
    const plan = planOf(samplePacket, paper);
    const kinds = new Map(
      samplePacket.sections.flatMap(({ blocks }) => blocks.map((block) => [block.id, block] as const)),
    );
    const half = plan.paper.linePt / 2;
    const steps = new Set<string>();
    let lines = 0;
    for (const { boxes } of plan.pages)
      for (const box of boxes.filter(isText)) {
        const block = kinds.get(box.block);
        const read =
          block?.kind === 'question' ||
          ((block?.kind === 'statement' || block?.kind === 'paragraph') && block.size === 'body');
        // The evidence margin has smaller letters, of which the first line alone stands on the text's.
        if (!read || box.x > plan.paper.leftPt + plan.paper.textPt) continue;
        steps.add((((box.y + box.baseline - plan.paper.topPt) % half) + 0).toFixed(2));
        lines++;
      }
    expect(lines).toBeGreaterThan(20);
    expect([...steps]).toHaveLength(1);
  });
});

describe('statements', () => {
  it('have their mark on the first baseline, in the margin', () => {
    const plan = planOf(samplePacket);
    const statements = samplePacket.sections.flatMap((section) =>
      section.blocks.filter((block) => block.kind === 'statement'),
    );
    expect(statements.length).toBeGreaterThan(3);
    for (const statement of statements) {
      const lines = linesOf(plan, statement.id);
      const text = lines.find(({ box }) => box.tags.at(-1)?.key === statement.id);
      const words = lines.find(({ box }) => box.tags.at(-1)?.key === `${statement.id}/mark`);
      expect(words?.page).toBe(text?.page);
      expect(words?.box.text.startsWith(statement.mark.word)).toBe(true);
      expect(words?.box.x).toBeGreaterThan(plan.paper.marginLeftPt);
      const baseline = (box: TextBox | undefined): number => (box?.y ?? 0) + (box?.baseline ?? 0);
      expect(baseline(words?.box)).toBeCloseTo(baseline(text?.box), 6);
    }
  });

  it('grow to a mark that is taller than they are', () => {
    const tall: EvidenceMark = { ...mark, detail: [{ text: words(40, 'paper') }] };
    const say = (id: string): Block => ({
      kind: 'statement',
      id,
      size: 'body',
      text: [{ text: 'Short.' }],
      mark: tall,
    });
    const plan = planOf(packetWith([say('first'), say('second')]));
    const endOfMark = Math.max(...linesOf(plan, 'first').map(({ box }) => box.y + box.height));
    const startOfNext = Math.min(...linesOf(plan, 'second').map(({ box }) => box.y));
    expect(linesOf(plan, 'first').length).toBeGreaterThan(5);
    expect(startOfNext).toBeGreaterThanOrEqual(endOfMark);
  });

  it('break over a page with two lines on either side', () => {
    for (let before = 30; before < 46; before++) {
      const filler = oneLiners(before);
      const long: Block = { kind: 'statement', id: 'long', size: 'body', text: [{ text: words(90) }], mark };
      const plan = planOf(packetWith([...filler, long]));
      const pages = linesOf(plan, 'long')
        .filter(({ box }) => box.tags.at(-1)?.key === 'long')
        .map(({ page }) => page);
      for (const page of new Set(pages)) {
        expect(pages.filter((each) => each === page).length).toBeGreaterThanOrEqual(2);
      }
    }
  });

  it('survive a mark longer than a page', () => {
    const text = words(1500, 'paper');
    const plan = planOf(
      packetWith([
        {
          kind: 'statement',
          id: 'odd',
          size: 'body',
          text: [{ text: 'Short.' }],
          mark: { ...mark, detail: [{ text }] },
        },
      ]),
    );
    expect(textOf(plan, 'odd')).toContain('paper 1499');
    expect(new Set(linesOf(plan, 'odd').map(({ page }) => page)).size).toBeGreaterThan(1);
  });
});

describe('tables', () => {
  const table = (rows: number, cell = 'a row of the table'): Block => ({
    kind: 'table',
    id: 'table',
    caption: 'Long table',
    columns: [
      { title: 'Head of first', align: 'left', weight: 3 },
      { title: 'Head of second', align: 'right', weight: 1 },
    ],
    rows: Array.from({ length: rows }, (_, i) => ({
      id: `row-${i}`,
      cells: [[{ text: `${cell} ${i}` }], [{ text: `${i}` }]],
      ...(i === rows - 1 ? { weight: 'total' as const } : {}),
    })),
    note: [{ text: 'Remark at the end.' }],
  });

  it('repeat their head on every page, once for a reader by ear', () => {
    const plan = planOf(packetWith([table(60)]));
    const heads = linesOf(plan, 'table').filter(({ box }) => box.text === 'Head of first');
    const pages = new Set(linesOf(plan, 'table').map(({ page }) => page));
    expect(pages.size).toBeGreaterThan(1);
    expect(heads.map(({ page }) => page)).toEqual([...pages]);
    expect(heads.filter(({ box }) => box.tags.length > 0)).toHaveLength(1);
    for (const { page, box } of heads) {
      const rows = linesOf(plan, 'table').filter(
        (line) => line.page === page && /row of/.test(line.box.text),
      );
      expect(Math.min(...rows.map((row) => row.box.y))).toBeGreaterThan(box.y);
    }
  });

  it('keep a row whole and a sum with the row before it', () => {
    for (let rows = 26; rows < 40; rows++) {
      const plan = planOf(packetWith([table(rows, words(9))]));
      const pagesOf = (i: number): Set<number> =>
        new Set(
          linesOf(plan, 'table')
            .filter(({ box }) => box.tags.some((tag) => tag.key === `row-${i}`))
            .map(({ page }) => page),
        );
      for (let i = 0; i < rows; i++) expect(pagesOf(i).size).toBe(1);
      expect(pagesOf(rows - 1)).toEqual(pagesOf(rows - 2));
    }
  });

  it('break a row only when it is taller than a page', () => {
    const plan = planOf(packetWith([table(2, words(900))]));
    expect(textOf(plan, 'table').match(/timber 899/g)).toHaveLength(2);
  });

  it('stand in the text column when rows have marks, and may use the full measure when not', () => {
    const wide = (marked: boolean): Plan => {
      const base = table(3, words(30));
      const block =
        base.kind === 'table' && marked
          ? { ...base, rows: base.rows.map((row) => ({ ...row, mark })) }
          : base;
      return planOf(packetWith([block]));
    };
    const right = (plan: Plan): number =>
      Math.max(
        ...linesOf(plan, 'table')
          .filter(({ box }) => !box.tags.some((tag) => tag.key === 'mark'))
          .map(({ box }) => box.x + box.width),
      );
    const { paper } = wide(true);
    expect(right(wide(true))).toBeCloseTo(paper.leftPt + paper.textPt, 3);
    expect(right(wide(false))).toBeCloseTo(paper.leftPt + paper.fullPt, 3);
  });

  it('without rows still show caption and head', () => {
    const plan = planOf(packetWith([{ ...(table(1) as Extract<Block, { kind: 'table' }>), rows: [] }]));
    expect(textOf(plan, 'table')).toContain('Head of second');
  });
});

describe('headings', () => {
  it('hold on to two lines of what follows', () => {
    for (let before = 25; before < 46; before++) {
      const filler = oneLiners(before);
      const one = (id: string): Block => ({
        kind: 'statement',
        id,
        size: 'body',
        text: [{ text: 'One.' }],
        mark,
      });
      const plan = planOf(
        packetWith([...filler, { kind: 'heading', id: 'h', level: 3, text: 'Heading' }, one('a'), one('b')]),
      );
      const page = (id: string): number | undefined => linesOf(plan, id)[0]?.page;
      expect([page('a'), page('b')]).toEqual([page('h'), page('h')]);
    }
  });
});

describe('notices', () => {
  it('are outlined on each page they reach, open where they go on', () => {
    const notice: Block = {
      kind: 'notice',
      id: 'notice',
      title: 'Long notice',
      paragraphs: [[{ text: words(700) }]],
    };
    const plan = planOf(packetWith([notice]));
    const frames = plan.pages.flatMap((page) => page.boxes.filter((box) => box.kind === 'frame'));
    expect(frames.length).toBeGreaterThan(1);
    expect(frames.map((frame) => [frame.openTop, frame.openBottom])).toEqual(
      frames.map((_, i) => [i > 0, i < frames.length - 1]),
    );
    for (const page of plan.pages) {
      const frame = page.boxes.find((box) => box.kind === 'frame');
      for (const box of page.boxes.filter((each) => isText(each) && each.block === 'notice')) {
        expect(box.y).toBeGreaterThanOrEqual((frame?.y ?? 0) + 5);
        expect(box.y + box.height).toBeLessThanOrEqual((frame?.y ?? 0) + (frame?.height ?? 0) - 5);
      }
    }
  });
});

describe('contents', () => {
  it('name the page on which each section begins', () => {
    const plan = planOf(samplePacket);
    const entries = linesOf(plan, 'contents');
    for (const section of samplePacket.sections) {
      const begins = plan.anchors.find((anchor) => anchor.id === section.id)?.page;
      const mine = entries.filter(({ box }) => box.spans.some((span) => span.to === section.id));
      expect(mine.at(-1)?.box.text).toBe(`${begins}`);
    }
  });

  it('are left out of a sheet, which begins at once', () => {
    const plan = planOf(sampleSheet);
    expect(linesOf(plan, 'contents')).toEqual([]);
    expect(plan.anchors.find((anchor) => anchor.id === sampleSheet.sections[0]?.id)?.page).toBe(1);
  });
});

describe('text', () => {
  it('parts a word that is longer than the line and loses none of it', () => {
    const long = `${'x'.repeat(90)}-${'y'.repeat(90)}`;
    const plan = planOf(
      packetWith([{ kind: 'paragraph', id: 'p', size: 'body', text: [{ text: `a ${long} b` }] }]),
    );
    expect(linesOf(plan, 'p').length).toBeGreaterThan(2);
    expect(textOf(plan, 'p')).toBe(`a ${long} b`);
  });

  it('reports each character that no face has, once', () => {
    const plan = planOf(
      packetWith([
        { kind: 'paragraph', id: 'p', size: 'body', text: [{ text: 'mind the ⚠ sign, and 漢 too, and ⚠' }] },
      ]),
    );
    expect(plan.missing).toEqual(['⚠', '漢']);
  });

  it('reports nothing for the sample', () => {
    expect(planOf(samplePacket).missing).toEqual([]);
  });
});

it('leaves out what is for the pages on screen only', () => {
  const plan = planOf(
    packetWith([
      { kind: 'paragraph', id: 'screen', size: 'body', text: [{ text: 'Search here.' }], only: 'web' },
      { kind: 'paragraph', id: 'paper', size: 'body', text: [{ text: 'Write here.' }], only: 'print' },
    ]),
  );
  expect(textOf(plan, 'screen')).toBe('');
  expect(textOf(plan, 'paper')).toBe('Write here.');
});

it('says what should be seen where a picture is lacking', () => {
  const packet: Packet = {
    ...packetWith([{ kind: 'photo', id: 'photo', photo: 'IMG_9', caption: [{ text: 'The porch.' }] }]),
    photos: [{ id: 'IMG_9', alt: 'Porch from the street', content: 'f00d', use: 'full' }],
  };
  const plan = planOf(packet);
  expect(textOf(plan, 'photo')).toContain('Porch from the street');
});

it('gives every anchor of the packet a place', () => {
  const plan = planOf(samplePacket);
  const placed = new Set(plan.anchors.map((anchor) => anchor.id));
  const wanted = samplePacket.sections.flatMap((section) => [
    section.id,
    ...section.blocks.filter((block) => block.only !== 'web').map((block) => block.id),
    ...section.blocks.flatMap((block) => (block.kind === 'table' ? block.rows.map((row) => row.id) : [])),
  ]);
  expect(wanted.length).toBeGreaterThan(60);
  expect(wanted.filter((id) => !placed.has(id))).toEqual([]);
});

it('sets a link to what is only on screen as plain text', () => {
  const plan = planOf(
    packetWith([
      { kind: 'paragraph', id: 'screen', size: 'body', text: [{ text: 'Search here.' }], only: 'web' },
      {
        kind: 'paragraph',
        id: 'p',
        size: 'body',
        text: [
          { text: 'search', to: 'screen' },
          { text: ', up', to: 'p' },
        ],
      },
    ]),
  );
  const spans = linesOf(plan, 'p').flatMap(({ box }) => box.spans);
  expect(spans.map((span) => [span.text, span.to, span.underlined])).toEqual([
    ['search', undefined, undefined],
    [', up', 'p', true],
  ]);
});

/** The lowest box of a page as a share of the frame. */
function fillOf(plan: Plan, page: Plan['pages'][number]): number {
  const lowest = Math.max(...content(page.boxes).map((box) => box.y + box.height));
  return (lowest - plan.paper.topPt) / (plan.paper.bottomPt - plan.paper.topPt);
}

/** Pages under 60 % that are neither the last nor before a page that begins with a figure. */
function thinPages(plan: Plan): string[] {
  return plan.pages.slice(0, -1).flatMap((page, i) => {
    const next = content(plan.pages[i + 1]?.boxes ?? []).filter((box) => box.tags.length > 0);
    const first = Math.min(...next.map((box) => box.y));
    const beforeFigure = next.some(
      (box) => box.y < first + 1 && (box.kind === 'drawing' || box.kind === 'picture'),
    );
    const fill = fillOf(plan, page);
    return fill < 0.6 && !beforeFigure ? [`page ${page.number}: ${fill.toFixed(2)}`] : [];
  });
}

function drawing(id: string, height: number, width = 300): Block {
  return {
    kind: 'drawing',
    id,
    drawing: { width, height, shapes: [] },
    alt: 'A plan.',
    caption: [{ text: `Plan ${id}. Drawn from the facts.` }],
  };
}

describe('pages', () => {
  it.each([
    ['buyer packet, letter', () => planOf(samplePacket)],
    ['buyer packet, A4', () => planOf(samplePacket, 'a4')],
    ['strained packet', () => planOf(strainedPacket())],
  ])('are filled to 60 % at least: %s', (_, make) => {
    expect(thinPages(make())).toEqual([]);
  });

  it('are filled to 60 % at least, wherever a tall drawing falls', () => {
    for (let before = 1; before < 40; before++) {
      const text = (id: string): Block => ({
        kind: 'paragraph',
        id,
        size: 'body',
        text: [{ text: words(24) }],
      });
      const blocks = [
        ...Array.from({ length: before }, (_, i) => text(`b${i}`)),
        drawing('plan', 420),
        ...Array.from({ length: 30 }, (_, i) => text(`a${i}`)),
      ];
      expect(thinPages(planOf(packetWith(blocks)))).toEqual([]);
    }
  });

  it('hold a figure over no heading and no other figure', () => {
    for (let before = 6; before < 20; before++) {
      const text = (id: string): Block => ({
        kind: 'paragraph',
        id,
        size: 'body',
        text: [{ text: words(24) }],
      });
      const plan = planOf(
        packetWith([
          ...Array.from({ length: before }, (_, i) => text(`b${i}`)),
          drawing('one', 300),
          text('between'),
          drawing('two', 300),
          text('after'),
          { kind: 'heading', id: 'h', level: 3, text: 'Heading' },
          ...Array.from({ length: 20 }, (_, i) => text(`a${i}`)),
        ]),
      );
      const place = (id: string): number => {
        const anchor = plan.anchors.find((each) => each.id === id);
        return (anchor?.page ?? 0) * 1000 + (anchor?.y ?? 0);
      };
      expect(place('one')).toBeLessThan(place('two'));
      expect(place('two')).toBeLessThan(place('h'));
    }
  });

  it('never begin with one row of a table alone', () => {
    for (let before = 0; before < 30; before++) {
      const filler = oneLiners(before);
      const table: Block = {
        kind: 'table',
        id: 't',
        caption: 'Table',
        columns: [{ title: 'Thing', align: 'left', weight: 1 }],
        rows: Array.from({ length: 40 }, (_, i) => ({ id: `t-${i}`, cells: [[{ text: `Row ${i}` }]] })),
      };
      const plan = planOf(packetWith([...filler, table]));
      const pages = plan.anchors.filter((anchor) => /^t-/.test(anchor.id)).map((anchor) => anchor.page);
      for (const page of new Set(pages)) {
        expect(pages.filter((each) => each === page).length).toBeGreaterThan(1);
      }
    }
  });
});

/** As long as a sheet of a house with some seventy improvements. */
function realisticSheet(): Packet {
  const item = (id: string, count: number): { id: string; text: { text: string }[]; mark: EvidenceMark } => ({
    id,
    text: [{ text: `${words(count, 'oak')}. 17 February 2026, by the owner.` }],
    mark,
  });
  const trades = Array.from({ length: 12 }, (_, i): Block[] => [
    { kind: 'heading', id: `trade${i}`, level: 3, text: `Trade ${i}` },
    {
      kind: 'list',
      id: `list${i}`,
      items: Array.from({ length: 5 }, (_, j) => item(`i${i}-${j}`, 5 + ((i * 3 + j * 5) % 9))),
    },
  ]);
  const table = (id: string, rows: number, count: number): Block => ({
    kind: 'table',
    id,
    caption: 'Table',
    columns: [
      { title: 'What', align: 'left', weight: 2 },
      { title: 'How much', align: 'right', weight: 1 },
    ],
    rows: Array.from({ length: rows }, (_, i) => ({
      id: `${id}-${i}`,
      cells: [[{ text: words(count) }], [{ text: '1,234' }]],
    })),
  });
  return packetOf(
    [
      {
        id: 'short',
        title: 'In short',
        blocks: [
          { kind: 'statement', id: 'lead', size: 'lead', text: [{ text: words(22) }], mark },
          ...Array.from(
            { length: 4 },
            (_, i): Block => ({
              kind: 'statement',
              id: `s${i}`,
              size: 'body',
              text: [{ text: words(12) }],
              mark,
            }),
          ),
        ],
      },
      { id: 'done', title: 'Improvements by trade', blocks: trades.flat() },
      {
        id: 'ages',
        title: 'Systems',
        blocks: [
          { kind: 'list', id: 'ages-list', items: Array.from({ length: 20 }, (_, i) => item(`age${i}`, 3)) },
        ],
      },
      {
        id: 'size',
        title: 'Size',
        blocks: [
          table('areas', 6, 1),
          { kind: 'paragraph', id: 'declared', size: 'small', text: [{ text: words(60) }] },
          { kind: 'statement', id: 'record', size: 'body', text: [{ text: words(12) }], mark },
          drawing('plan', 240, 260),
        ],
      },
      { id: 'updates', title: 'Updates', blocks: [table('updates', 4, 20)] },
    ],
    { arrangement: 'one-page' },
  );
}

describe('a sheet of few pages', () => {
  it('has four at most for seventy improvements and twenty systems', () => {
    const plan = planOf(realisticSheet());
    expect(plan.pages.length).toBeGreaterThan(2);
    expect(plan.pages.length).toBeLessThanOrEqual(4);
  });

  it('sets a modest plan beside the table and the words before it', () => {
    const plan = planOf(realisticSheet());
    const plans = plan.pages.flatMap((page) => page.boxes.filter((box) => box.kind === 'drawing'));
    const table = linesOf(plan, 'areas').map(({ box }) => box);
    expect(plans).toHaveLength(1);
    const [figure] = plans;
    expect(Math.max(...table.map((box) => box.x + box.width))).toBeLessThan(figure?.x ?? 0);
    expect(Math.min(...table.map((box) => box.y))).toBeLessThan((figure?.y ?? 0) + (figure?.height ?? 0) / 4);
    // What has a mark keeps its place beside the margin, below both.
    expect(linesOf(plan, 'record')[0]?.box.y).toBeGreaterThanOrEqual(
      (figure?.y ?? 0) + (figure?.height ?? 0),
    );
  });
});

describe('records', () => {
  it('set short entries two in a row, in reading order, and a long one in a row of its own', () => {
    const values = ['Oat 12', 'T-12', words(14), 'eggshell', 'satin'];
    const plan = planOf(
      packetWith([
        {
          kind: 'record',
          id: 'r',
          title: [{ text: 'Walls' }],
          entries: values.map((value, i) => ({ id: `r${i}`, label: `Label ${i}`, value: [{ text: value }] })),
        },
      ]),
    );
    const at = (i: number): { x: number; y: number } => {
      const box = linesOf(plan, 'r').find((line) => line.box.tags.some((tag) => tag.key === `r${i}`))?.box;
      return { x: box?.x ?? 0, y: box?.y ?? 0 };
    };
    expect(at(1).y).toBeCloseTo(at(0).y, 6);
    expect(at(1).x).toBeGreaterThan(at(0).x + 100);
    expect(at(2).y).toBeGreaterThan(at(1).y);
    expect(at(2).x).toBeCloseTo(at(0).x, 6);
    expect(at(4).y).toBeCloseTo(at(3).y, 6);
  });
});
