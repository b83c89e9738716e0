/**
 * Whatever somebody writes into a house folder: the pages come out right, or a message says which fact to change.
 * Each house goes the whole way, from a written file to a checked PDF.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ComposedHouse, composeHouse, EDITION_NAMES } from '../../src/build.js';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.js';
import { type FactPath, printFactPath } from '../../src/diagnostics/fact-path.js';
import { printReport } from '../../src/diagnostics/report.js';
import { findHouses } from '../../src/find-houses.js';
import type { HouseOrder } from '../../src/house-order.js';
import { missingGlyphs } from '../../src/missing-glyphs.js';
import type { Packet } from '../../src/packet/packet.js';
import { wordsOf } from '../../src/packet/words-of.js';
import type { Plan } from '../../src/print/box.js';
import { loadFaces } from '../../src/print/faces.js';
import { sharedLetters } from '../../src/print/letters.js';
import { planPages } from '../../src/print/plan.js';
import { writePdf } from '../../src/print/write-pdf.js';
import { finderIn } from '../tools/find-words.js';
import { lacking } from '../tools/outside-programs.js';
import { boxesOutside, collisions, letteringOutside, spansOutside } from '../tools/plan-faults.js';
import type { PartialSpec } from './house-from.js';

const letters = sharedLetters(loadFaces);
const root = mkdtempSync(path.join(tmpdir(), 'bad-input-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** Far more than a line without a blank; the name at the front tells them apart. Longer names are refused. */
const word = (name: string): string => `${name}${'abcdefghij'.repeat(30)}`.slice(0, 195);
const words = (count: number, name: string): string =>
  Array.from({ length: count }, (_, index) => `${name}${index}`).join(' ');

/** A small house whose every text is `say(what it is)`. */
function houseOf(say: (name: string) => string): PartialSpec {
  return {
    house: {
      name: say('house'),
      address: { street: `12 ${say('street')}`, city: say('city'), state: 'OH', show: 'full' },
      construction: say('construction'),
    },
    people: [{ id: 'ann', name: say('person'), trade: say('trade') }],
    levels: [
      {
        id: 'main',
        name: say('level'),
        grade: 'above',
        outline: ["east 30'", "north 20'", "west 30'", "south 20'"],
      },
    ],
    rooms: [
      {
        id: 'kitchen',
        level: 'main',
        use: 'kitchen',
        name: say('room'),
        size: "10' x 12'",
        at: ["east 5'", "north 4'"],
        finishes: [
          { on: 'floor', what: say('floor'), did: 'new', done: '2026-03-02', by: 'ann' },
          { on: 'walls', what: 'paint', colour: say('colour'), code: say('code'), did: 'painted', by: 'ann' },
        ],
      },
    ],
    systems: [
      {
        id: 'heater',
        is: 'water heater',
        name: say('system'),
        material: say('material'),
        made: '2020',
        by: 'ann',
      },
    ],
    work: [
      {
        id: 'rail',
        what: say('work'),
        did: 'new',
        how: say('how'),
        why: say('why'),
        where: ['kitchen'],
        done: '2026-03-02',
        by: 'ann',
      },
    ],
    conditions: [{ what: say('condition'), where: 'kitchen', since: say('since'), note: say('note') }],
    permits: [
      { id: 'p1', number: say('number'), what: say('permit'), office: say('office'), state: 'final' },
    ],
    documents: [{ id: 'd1', what: say('document'), kind: 'letter', kept: say('kept') }],
    conveys: [{ what: say('conveys'), stays: true, note: say('conveysnote') }],
    answers: [{ ask: say('ask'), answer: say('answer') }],
    care: [{ what: say('care'), every: '3 months' }],
  } as unknown as PartialSpec;
}

const plainHouse = houseOf((name) => name);

const SENTENCES: Readonly<Record<string, string>> = {
  Hebrew: 'לא ידוע לנו על חדירת מים',
  Arabic: 'صنبور المطبخ يقطر ماء ببطء',
  Chinese: '廚房的水龍頭漏水',
  Japanese: 'キッチンの床を張り替えました',
  emoji: 'stair 👩🏽‍🔧 done 👍🏿 ⚠️ 🏚️→🏠',
  'combining marks': 'é̄ n̈ ǟ Å̧ ṩ',
};

interface Case {
  readonly spec: PartialSpec;
  /** More sheets in one edition than this would be a fault. */
  readonly sheets: number;
}

const CASES: Readonly<Record<string, Case>> = {
  'a word longer than the line in every text': { spec: houseOf(word), sheets: 40 },
  'a description of 4,000 characters': {
    spec: {
      ...plainHouse,
      work: [{ id: 'rail', what: 'rail', did: 'new', how: words(500, 'timber'), where: ['kitchen'] }],
      answers: [{ ask: 'Anything else?', answer: words(500, 'answer') }],
    } as PartialSpec,
    sheets: 24,
  },
  'a table cell taller than a page': {
    spec: {
      ...plainHouse,
      systems: [
        { id: 'heater', is: 'water heater', made: '2020', kept: true, material: words(1500, 'copper') },
      ],
      conveys: [{ what: 'bench', stays: true, note: words(1500, 'bolt') }],
      permits: [{ id: 'p1', what: words(1500, 'permit'), state: 'final', note: words(1200, 'visit') }],
    } as PartialSpec,
    sheets: 48,
  },
  'sixty rooms': {
    spec: {
      levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "120' x 90'" }],
      rooms: Array.from({ length: 60 }, (_, index) => ({
        id: `room-${index}`,
        level: 'main',
        use: 'bedroom',
        name: `Bedroom of guest number ${index + 1}`,
        size: "10' x 12'",
        finishes: [{ on: 'floor', what: 'oak strip', did: 'refinished', done: '2026-03-02' }],
      })),
    } as PartialSpec,
    sheets: 60,
  },
  'no photos, no rooms, no systems, nothing': { spec: {}, sheets: 12 },
  'no systems': { spec: { ...plainHouse, systems: [] }, sheets: 20 },
  'slashes, quotes, percent signs and braces': {
    spec: houseOf((name) => `${name} N/S \\ "w" 'q' 7 % %41 {{ ${name} }} <b>&amp;</b> a//b/c #1 ?`),
    sheets: 24,
  },
  ...Object.fromEntries(
    Object.entries(SENTENCES).map(([script, sentence]): [string, Case] => [
      `${script} in names and notes`,
      { spec: houseOf((name) => `${name} ${sentence}`), sheets: 24 },
    ]),
  ),
};

function write(name: string, spec: PartialSpec): HouseOrder {
  const folder = path.join(root, 'content', name);
  mkdirSync(folder, { recursive: true });
  const base = {
    name: 'Test House',
    address: { city: 'Fallow Mills', state: 'OH' },
    kind: 'detached',
    built: 1948,
  };
  const facts = { ...spec, house: { ...base, ...spec.house } };
  writeFileSync(path.join(folder, 'house.yaml'), JSON.stringify(facts, null, 1));
  return {
    folder,
    shown: `content/${name}`,
    asOf: '2026-06-30',
    editions: EDITION_NAMES,
    out: path.join(root, 'out'),
    outShown: 'out',
    paper: 'letter',
  };
}

const printedTexts = (packet: Packet): string[] => [
  packet.house.name,
  packet.house.place,
  ...packet.keyFacts.map(({ value }) => value),
  ...packet.sections.flatMap((section) => [
    section.title,
    ...section.blocks.filter((block) => block.only !== 'web').flatMap(wordsOf),
  ]),
];

const outside = lacking('qpdf', 'pdftotext');

/** Readers turn right-to-left letters round as they think best, line by line, so such a text is looked for word by word. */
const RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}]/u;

/**
 * Whether a text is in the file as two readers give it back: line by line as painted, or element by element as tagged.
 * A cell that goes on over pages stands whole only in the second.
 */
function readerOf(file: string): (text: string) => boolean {
  const options = { encoding: 'utf8', maxBuffer: 2 ** 26 } as const;
  const painted = execFileSync('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-'], options);
  const isPainted = finderIn(painted.split('\f'));
  // Reading a long file by its elements takes pdfinfo many seconds, and most texts stand in the first.
  let isTagged: ((text: string) => boolean) | undefined;
  const tagged = (): ((text: string) => boolean) => {
    const said = execFileSync('pdfinfo', ['-struct-text', '-enc', 'UTF-8', file], options);
    return finderIn([...said.matchAll(/^ *"(.*)"$/gm)].map(([, text = '']) => text));
  };
  const finds = (text: string): boolean => {
    if (isPainted(text)) return true;
    isTagged ??= tagged();
    return isTagged(text);
  };
  return (text) => (RIGHT_TO_LEFT.test(text) ? text.split(/\s+/u).every(finds) : finds(text));
}

describe.each(Object.entries(CASES))('%s', (label, { spec, sheets }) => {
  let composed: ComposedHouse;
  let plans: { packet: Packet; plan: Plan }[];

  beforeAll(async () => {
    const name = `house-${Object.keys(CASES).indexOf(label)}`;
    composed = await composeHouse(write(name, spec));
    plans = composed.packets.map((packet) => ({
      packet,
      plan: planPages(packet, composed.picturesOf(packet), 'letter', letters),
    }));
  });

  const ofEach = (faults: (plan: Plan) => readonly string[]): string[] =>
    plans.flatMap(({ packet, plan }) => faults(plan).map((fault) => `${packet.edition.name}, ${fault}`));

  it('is a house like any other', () => {
    expect(composed.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(plans.map(({ packet }) => packet.edition.name)).toEqual(EDITION_NAMES);
  });

  it('keeps every box in the text area', () => {
    expect(ofEach(boxesOutside)).toEqual([]);
    expect(ofEach(spansOutside)).toEqual([]);
  });

  it('keeps the letters of drawings in the drawing', () => {
    expect(ofEach((plan) => letteringOutside(plan, letters))).toEqual([]);
  });

  it('lets no line run into another', () => {
    expect(ofEach(collisions)).toEqual([]);
  });

  it('makes no more sheets than it needs', () => {
    const many = plans.map(({ packet, plan }) => `${packet.edition.name}: ${plan.pages.length}`);
    expect(Math.max(...plans.map(({ plan }) => plan.pages.length)), many.join(', ')).toBeLessThanOrEqual(
      sheets,
    );
  });

  it('names each character without a glyph once a fact, at its place', () => {
    const { read } = composed;
    const missing = plans.flatMap(({ plan }) => plan.missing);
    const found = missingGlyphs(
      missing,
      plans.map(({ packet }) => packet),
      read.spec,
    );
    const at = found.map(({ path: fact }) => JSON.stringify(fact));
    expect(new Set(at).size).toBe(at.length);
    expect(found.filter(({ path: fact }) => fact === undefined)).toEqual([]);
    expect(found.length > 0).toBe(missing.length > 0);
  });

  it.skipIf(outside.some)(`is a sound PDF with every word in it${outside.words}`, async () => {
    const folder = mkdtempSync(path.join(root, 'pdf-'));
    for (const { packet, plan } of plans) {
      const file = path.join(folder, `${packet.edition.name}.pdf`);
      writeFileSync(file, await writePdf(plan, packet, composed.picturesOf(packet), letters));
      const check = spawnSync('qpdf', ['--check', file], { encoding: 'utf8' });
      expect(check.stderr).toBe('');
      expect(check.status).toBe(0);
      const isIn = readerOf(file);
      const lost = printedTexts(packet).filter((text) => !isIn(text));
      expect(lost, packet.edition.name).toEqual([]);
    }
  });
});

describe('a character that the typefaces lack', () => {
  const reported = async (name: string, spec: PartialSpec): Promise<{ all: Diagnostic[]; text: string }> => {
    const composed = await composeHouse(write(name, spec));
    const missing = composed.packets.flatMap((packet) =>
      planPages(packet, composed.picturesOf(packet), 'letter', letters).missing.map((character) => character),
    );
    const all = missingGlyphs(missing, composed.packets, composed.read.spec);
    composed.diagnostics.splice(0, composed.diagnostics.length, ...all);
    return { all, text: printReport(composed.locate(), 'text', false) };
  };

  it('of a whole sentence makes one message, however many editions show it', async () => {
    const { all, text } = await reported('sentence', {
      conditions: [{ what: SENTENCES.Arabic ?? '', since: 'as bought' }],
    });
    expect(all).toHaveLength(1);
    expect(text).toMatch(
      /^warning print\.no-glyph {2}content\/sentence\/house\.yaml:\d+:\d+ {2}conditions\[0\]\.what\n/,
    );
    expect(text).toContain('no signs for “ص” (U+0635), “ن” (U+0646), “ب” (U+0628) and 10 more');
    expect(text).not.toContain('also on');
  });

  it('is traced to each fact that shows it, and to no fact that is not shown', async () => {
    const { all } = await reported('traced', {
      conditions: [{ what: 'first 漏水', since: 'as bought' }, { what: 'second 漏' }, { what: 'third' }],
      levels: [
        { id: 'main', name: 'Main level', grade: 'above', size: "30' x 20'", note: '龍 is in no edition' },
      ],
    } as PartialSpec);
    expect(all.map(({ path: fact }) => fact)).toEqual([
      ['conditions', 0, 'what'],
      ['conditions', 1, 'what'],
    ]);
    expect(all[1]?.message).toContain('no sign for “漏” (U+6F0F); the PDF shows a stand-in');
  });

  it('that no fact holds is told with the words around it', async () => {
    const composed = await composeHouse(write('unplaced', { conditions: [{ what: 'drip 漏' }] }));
    const [told, ...more] = missingGlyphs(['漏'], composed.packets, { house: { name: 'other' } });
    expect(more).toEqual([]);
    expect(told?.path).toBeUndefined();
    expect(told?.message).toMatch(/no sign for “漏” \(U\+6F0F\), in “.*rip 漏/);
  });

  it('is nobody’s where nothing is missing', () => {
    expect(missingGlyphs([], [], { house: { name: '漏' } })).toEqual([]);
  });
});

describe('empty texts', () => {
  it('are refused, each at its place', async () => {
    const spec = houseOf(() => '');
    const composed = await composeHouse(write('empty', spec));
    expect(composed.packets).toEqual([]);
    const errors = composed.locate().filter(({ diagnostic }) => diagnostic.severity === 'error');
    const refused = composed.diagnostics.filter(({ severity }) => severity === 'error');
    expect(refused.map((one) => printFactPath(one.path ?? [])).sort()).toEqual(emptyTextsIn(spec).sort());
    for (const { diagnostic, place, also } of errors)
      expect([place, ...also], diagnostic.message).not.toContain(undefined);
  });
});

function emptyTextsIn(value: unknown, at: FactPath = []): string[] {
  if (value === '') return [printFactPath(at)];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    emptyTextsIn(inner, [...at, Array.isArray(value) ? Number(key) : key]),
  );
}

describe('a folder name', () => {
  const NAMES = ['lot 7', 'N%41', '"quoted"', "o'clock", 'back\\slash', 'Straße', 'дом', '家', 'a..b', '-'];

  it.each(NAMES)('%s is refused with a name that would do', async (name) => {
    mkdirSync(path.join(root, 'named', name), { recursive: true });
    const { houses, diagnostics } = await findHouses(path.join(root, 'named'), [name]);
    expect(houses).toEqual([]);
    expect(diagnostics.map(({ code, severity }) => [code, severity])).toEqual([['facts.id', 'error']]);
    expect(diagnostics[0]?.hints[0]).toMatch(/for example {2}[a-z0-9]+(-[a-z0-9]+)*$/);
  });
});
