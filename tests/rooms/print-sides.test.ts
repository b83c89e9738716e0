/** The sheet with two sides: one leaf on both papers, whatever the house is like, with nothing cut and nothing over another. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { composeHouse } from '../../src/build.js';
import type { Packet, Pictures } from '../../src/packet/packet.js';
import { wordsOf } from '../../src/packet/words-of.js';
import type { Box, Plan, TextBox } from '../../src/print/box.js';
import { loadFaces } from '../../src/print/faces.js';
import { normaliseText, sharedLetters } from '../../src/print/letters.js';
import type { PaperName } from '../../src/print/paper.js';
import { planPages } from '../../src/print/plan.js';
import { composedHouse, goldenHouses } from '../tools/golden-houses.js';
import type { PartialSpec } from './house-from.js';
import { packetOf } from './packet-of.js';

const letters = sharedLetters(loadFaces);
const WEB = 'https://test-house.example/packet/';
const PAPERS: readonly PaperName[] = ['letter', 'a4'];
const many = <T>(count: number, make: (n: number) => T): T[] =>
  Array.from({ length: count }, (_, n) => make(n));

/** The photo at the front is not there in most tests; it then is a plain area, which takes the same room. */
const planOf = (packet: Packet, paper: PaperName, pictures: Pictures = new Map()): Plan =>
  planPages(packet, pictures, paper, letters);

const isText = (box: Box): box is TextBox => box.kind === 'text';
const withoutBlanks = (text: string): string => normaliseText(text).replace(/[\s\u2011-]+/gu, '');

/** Every word of the packet stands on the sheet. A long text's mark is set before the text ends, so margin and text are read apart. */
function expectWhole(plan: Plan, packet: Packet): void {
  const boxes = plan.pages.flatMap((page) => page.boxes.filter(isText));
  const read = (block: string, margin: boolean): string =>
    withoutBlanks(
      boxes
        .filter((box) => box.block === block && box.x >= plan.paper.marginLeftPt === margin)
        .map((box) => box.text)
        .join(''),
    );
  for (const block of packet.sections.flatMap((section) => section.blocks)) {
    const printed = [read(block.id, false), read(block.id, true)].join('\n');
    for (const words of wordsOf(block)) expect(printed, block.id).toContain(withoutBlanks(words));
  }
}

/** Text keeps within the sheet's frame, and no line or picture lies over another. */
function expectTidy(plan: Plan): void {
  const { leftPt, fullPt, topPt, bottomPt } = plan.paper;
  for (const page of plan.pages) {
    const boxes = page.boxes.filter(
      (box) => (box.kind === 'text' || box.kind === 'picture') && !['head', 'foot'].includes(box.block),
    );
    for (const box of boxes) {
      expect(box.x).toBeGreaterThanOrEqual(leftPt - 0.01);
      expect(box.x + box.width).toBeLessThanOrEqual(leftPt + fullPt + 0.01);
      expect(box.y).toBeGreaterThanOrEqual(topPt - 0.01);
      expect(box.y + box.height).toBeLessThanOrEqual(bottomPt + 0.01);
    }
    for (const [i, one] of boxes.entries())
      for (const other of boxes.slice(i + 1)) {
        const apart =
          one.x + one.width <= other.x + 0.01 ||
          other.x + other.width <= one.x + 0.01 ||
          one.y + one.height <= other.y + 0.3 ||
          other.y + other.height <= one.y + 0.3;
        expect(apart, `${one.block} and ${other.block} on page ${page.number}`).toBe(true);
      }
  }
}

/** How far down a page's last box reaches, as a share of its frame. */
function fill(plan: Plan, number: number): number {
  const { topPt, bottomPt } = plan.paper;
  const boxes = (plan.pages[number - 1]?.boxes ?? []).filter((box) => !['head', 'foot'].includes(box.block));
  return (Math.max(...boxes.map((box) => box.y + box.height)) - topPt) / (bottomPt - topPt);
}

const HOUSES: Readonly<Record<string, PartialSpec>> = {
  'without an address': { house: { web: undefined } },
  'with an address and no photo': { house: { web: WEB } },
  'with the longest address and a long name': {
    house: {
      name: 'An Uncommonly Long Name for a House That Stands Where Two Lanes Meet',
      web: `https://test-house.example/${'packet-'.repeat(13)}`,
    },
  },
  'with a name of one endless word': { house: { name: 'Quarry'.repeat(30), web: WEB } },
  'with sixty rooms': {
    house: { web: WEB },
    levels: [{ id: 'main', name: 'Main level', grade: 'above', size: `90' x 90'` }],
    rooms: many(60, (n) => ({
      id: `room-${n}`,
      level: 'main',
      use: 'bedroom' as const,
      finishes: [{ on: 'floor' as const, what: 'vinyl plank', did: 'new' as const, done: '2026-04' }],
    })),
    systems: many(50, (n) => ({ id: `s-${n}`, is: 'window, vinyl, with two panes', installed: 2015 })),
    work: many(80, (n) => ({
      id: `w-${n}`,
      what: `${['pipe', 'outlet', 'tile', 'roof', 'rail', 'floor', 'door', 'cabinet', 'fan'][n % 9]} number ${n}`,
      did: 'replaced' as const,
      done: '2026-05',
      by: 'owner',
    })),
    conditions: many(30, (n) => ({ what: `crack number ${n}, seen at the wall beside the window` })),
    conveys: many(40, (n) => ({ what: `movable thing ${n}`, stays: true })),
  },
  'with hostile texts': {
    house: {
      name: '<b>House</b> {{ x }} 家 🏠 שלום',
      web: WEB,
      exterior: 'x'.repeat(300),
      parking: 'Donaudampfschifffahrtsgesellschaft'.repeat(4),
    },
    conditions: [{ what: 'Supercalifragilistic'.repeat(20) }, { what: 'a %s \\ </li> & more' }],
  },
};

describe.each(PAPERS)('on %s', (paper) => {
  it.each(Object.entries(HOUSES))('a house %s has one leaf, whole and tidy', (_name, spec) => {
    const packet = packetOf(spec, 'visit');
    const plan = planOf(packet, paper);
    expect(plan.pages).toHaveLength(2);
    expectWhole(plan, packet);
    expectTidy(plan);
  });

  it.each(goldenHouses())('the golden house %s has one leaf', async (name) => {
    const { packets, picturesOf } = await composedHouse(name);
    const packet = packets.find((one) => one.edition.name === 'visit') as Packet;
    const plan = planOf(packet, paper, picturesOf(packet));
    expect(plan.pages).toHaveLength(2);
    expectWhole(plan, packet);
    expectTidy(plan);
  });
});

describe('the demo houses', () => {
  const packets: Packet[] = [];
  beforeAll(async () => {
    const out = mkdtempSync(path.join(tmpdir(), 'sides-'));
    for (const house of ['quarry-road', 'larkspur-court']) {
      const composed = await composeHouse({
        folder: fileURLToPath(new URL(`../../content/${house}`, import.meta.url)),
        shown: `content/${house}`,
        asOf: '2026-11-20',
        editions: ['visit'],
        out,
        outShown: 'out',
        paper: 'letter',
      });
      expect(composed.failed).toBe(false);
      packets.push(...composed.packets);
    }
  });

  it.each(PAPERS)('fill both sides of a leaf on %s', (paper) => {
    expect(packets).toHaveLength(2);
    for (const packet of packets) {
      const plan = planOf(packet, paper);
      expect(plan.pages).toHaveLength(2);
      expectWhole(plan, packet);
      expectTidy(plan);
      for (const page of [1, 2]) expect(fill(plan, page)).toBeGreaterThan(0.94);
    }
  });

  it.each(PAPERS)(
    'have key facts in large type, all else in nine points at least, the code unscaled on %s',
    (paper) => {
      for (const packet of packets) {
        const boxes = planOf(packet, paper).pages.flatMap((page) => page.boxes);
        const sizes = (block: string): number[] =>
          boxes
            .filter(isText)
            .filter((box) => box.block === block)
            .flatMap((box) => box.spans.map((span) => span.sizePt));
        expect(Math.max(...sizes('glance'))).toBeGreaterThanOrEqual(12.5);
        for (const block of ['short-lead', 'all-renewed', 'ages-list', 'done-list', 'condition-list'])
          expect(Math.max(...sizes(block)), block).toBeGreaterThanOrEqual(9);
        const code = boxes.find((box) => box.kind === 'drawing');
        expect(code?.kind === 'drawing' && code.scale).toBe(1);
      }
    },
  );
});

describe('a text too long for a leaf', () => {
  it('goes on, page after page, with nothing cut', () => {
    const packet = packetOf(
      { house: { web: WEB }, conditions: [{ what: 'the door sticks when it rains and '.repeat(300) }] },
      'visit',
    );
    const plan = planOf(packet, 'letter');
    expect(plan.pages.length).toBeGreaterThan(2);
    expectWhole(plan, packet);
    expectTidy(plan);
  });
});

describe('a last section of one line', () => {
  it.each(PAPERS)('never needs a third page for the room that titles ask for: %s', (paper) => {
    const pages = [0, 1, 2, 3, 4].flatMap((conditions) =>
      [1, 4, 7, 12].map((works) => {
        const packet = packetOf(
          {
            house: { web: WEB },
            rooms: [],
            work: many(works, (n) => ({
              id: `work-${n}`,
              what: `thing number ${n} of the ${'long '.repeat(n % 4)}list`,
              did: 'replaced',
              done: '2026-05',
              by: 'owner',
            })),
            conditions: many(conditions, (n) => ({ what: `the gate number ${n} sticks` })),
            conveys: [{ what: 'the shed', stays: true }],
          },
          'visit',
        );
        return planOf(packet, paper).pages.length;
      }),
    );
    expect(pages).toHaveLength(20);
    expect(new Set(pages)).toEqual(new Set([2]));
  });
});
