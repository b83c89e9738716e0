/** Inputs whose time grew with the square of their length, or that never came to an end; each is far below its limit. */
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { locate, printReport } from '../../src/diagnostics/report.js';
import { checkHouse } from '../../src/facts/check-house.js';
import { checkReferences } from '../../src/facts/check-references.js';
import type { House } from '../../src/facts/house.js';
import { nearestWord } from '../../src/facts/nearest-word.js';
import { readCsv } from '../../src/intake/csv-cells.js';
import { unfoldsTooFar } from '../../src/intake/pdf-unfolds.js';
import { readWorkbook } from '../../src/intake/workbook-cells.js';
import { readYaml } from '../../src/intake/yaml.js';
import { checkPlaces } from '../../src/tally/area-places.js';
import { levelsAbove } from '../../src/tally/level-order.js';
import { leastMs } from '../tools/least-ms.js';

const ENOUGH = 1000;
const many = (count: number, one: (n: number) => string, between = ''): string =>
  Array.from({ length: count }, (_, n) => one(n)).join(between);

const HOUSE = { name: 'X', address: { city: 'A', state: 'OH' }, kind: 'detached', built: '1948' };
function houseWith(lists: Readonly<Record<string, unknown>>): House {
  const { house, diagnostics } = checkHouse({ house: HOUSE, ...lists });
  expect(diagnostics).toEqual([]);
  if (house === undefined) throw new Error('no house');
  return house;
}

describe('a YAML file', () => {
  it('of one long line is told of at thousands of spots', async () => {
    const yaml = readYaml(`rooms: [${many(6000, (n) => `{id: &a r${n}, id: x}`, ',')}]`, 'house.yaml');
    expect(yaml.diagnostics).toHaveLength(12_000);
    const nowhere = { find: () => undefined };
    expect(
      await leastMs(() => printReport(locate(yaml.diagnostics, nowhere), 'text', false), ENOUGH),
    ).toBeLessThan(ENOUGH);
  });

  it('that ends in blanks or a long word behind a slip', async () => {
    for (const text of [`k: ["x" y${' '.repeat(200_000)}\n`, `k: [${'a'.repeat(200_000)}, "x" y\n`])
      expect(await leastMs(() => readYaml(text, 'house.yaml'), ENOUGH), text.slice(0, 20)).toBeLessThan(
        ENOUGH,
      );
  });

  it('is still explained with the word and the value', () => {
    expect(readYaml('house:\n  note: "x" and more\n', 'h.yaml').diagnostics[0]?.hints).toEqual([
      `write  note: '"x" and more'`,
    ]);
    expect(readYaml(`rooms: [{ what: "x" and more, b: c }]\n`, 'h.yaml').diagnostics[0]?.hints).toEqual([
      `write  what: '"x" and more'`,
    ]);
  });
});

describe('a sheet', () => {
  it('of one long line with broken cells is told of in time, as far as its columns may reach', async () => {
    const bytes = Buffer.from(`date${many(100_000, () => ',"a"b')}`);
    expect(readCsv(bytes, 'costs.csv', 'costs.csv').diagnostics).toHaveLength(199);
    expect(await leastMs(() => readCsv(bytes, 'costs.csv', 'costs.csv'), ENOUGH)).toBeLessThan(ENOUGH);
  });

  it('of millions of empty cells is refused before it is read', () => {
    const { sheet, diagnostics } = readCsv(Buffer.alloc(4_000_001, ','), 'costs.csv', 'costs.csv');
    expect(sheet).toBeUndefined();
    expect(diagnostics[0]).toMatchObject({
      code: 'intake.too-big',
      message: 'costs.csv has more than 4,000,000 cells, and no list of a house has as many',
    });
  });

  it('that is a workbook with torn tags, or with one long text in many cells, is refused', async () => {
    const row = (n: number): string => `<row r="${n + 1}"><c r="A${n + 1}" t="s"><v>0</v></c></row>`;
    const sheets = [
      [`<row r="1">${'<c '.repeat(300_000)}`, 'intake.sheet'],
      [`<row r="1">${'<x '.repeat(300_000)}/>`, 'intake.sheet'],
      [`${many(150, row)}</sheetData></worksheet>`, 'intake.too-big'],
    ] as const;
    for (const [rows, code] of sheets) {
      const bytes = workbook(`<worksheet><sheetData>${rows}`, 'ab '.repeat(200_000));
      let found: unknown;
      const ms = await leastMs(async () => {
        found = (await readWorkbook(bytes, 'costs.xlsx', 'costs.xlsx', 'costs')).diagnostics[0]?.code;
      }, ENOUGH);
      expect(found).toBe(code);
      expect(ms).toBeLessThan(ENOUGH);
    }
  });
});

function workbook(sheet: string, text: string): Buffer {
  const kind = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const parts = {
    '[Content_Types].xml':
      '<Types><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/></Types>',
    'xl/workbook.xml': '<workbook><sheets><sheet name="costs" sheetId="1" r:id="rId1"/></sheets></workbook>',
    'xl/_rels/workbook.xml.rels': `<Relationships><Relationship Id="rId1" Type="${kind}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${kind}/sharedStrings" Target="sharedStrings.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml': sheet,
    'xl/sharedStrings.xml': `<sst><si><t>${text}</t></si></sst>`,
  };
  return Buffer.from(
    zipSync(Object.fromEntries(Object.entries(parts).map(([name, xml]) => [name, Buffer.from(xml)]))),
  );
}

describe('a house of thousands of things', () => {
  it('whose ids nobody knows', async () => {
    const house = houseWith({
      conditions: Array.from({ length: 8000 }, (_, n) => ({ what: 'crack', where: `room-number-${n}x` })),
      structures: Array.from({ length: 8000 }, (_, n) => ({
        id: `room-number-${n}`,
        name: 'Shed',
        is: 'shed',
      })),
    });
    const found = checkReferences(house);
    expect(found).toHaveLength(8000);
    expect(found[0]?.hints[0]).toBe('perhaps  room-number-0');
    expect(await leastMs(() => checkReferences(house), ENOUGH)).toBeLessThan(ENOUGH);
  });

  it('with as many levels over each other', async () => {
    const { levels } = houseWith({
      levels: Array.from({ length: 8000 }, (_, n) => ({ id: `l${n}`, name: `L${n}`, grade: 'above' })),
    });
    const [first, second] = levels;
    expect(first && levelsAbove(levels).get(first)).toBe(second);
    expect(await leastMs(() => levelsAbove(levels), ENOUGH)).toBeLessThan(ENOUGH);
  });

  it('with a long word where a choice stands', async () => {
    const long = 'a'.repeat(2_000_000);
    expect(
      await leastMs(
        () =>
          nearestWord(
            long,
            Array.from({ length: 50 }, () => 'improvement'),
          ),
        100,
      ),
    ).toBeLessThan(100);
  });

  it('with rooms that all lie over each other, of which a hundred pairs are told', async () => {
    const corners = [
      [0, 0],
      [3_000_000, 0],
      [3_000_000, 3_000_000],
      [0, 3_000_000],
    ] as const;
    const room = (n: number) => ({
      name: `R${n}`,
      path: ['rooms', n],
      room: { at: [] },
      shape: { corners, area: 9_000_000_000_000n, reading: 'inches', sizeWords: '' },
    });
    const rooms = Array.from({ length: 2000 }, (_, n) => room(n)) as unknown as Parameters<
      typeof checkPlaces
    >[2];
    const level = { id: 'l', name: 'L', grade: 'above' } as Parameters<typeof checkPlaces>[0];
    expect(checkPlaces(level, undefined, rooms)).toHaveLength(100);
    expect(await leastMs(() => checkPlaces(level, undefined, rooms), ENOUGH)).toBeLessThan(ENOUGH);
  });
});

describe('a PDF', () => {
  it('of streams that share one end, or that no object holds', async () => {
    const bytes = Buffer.from(`%PDF-1.7 ${'stream '.repeat(200_000)}endstream`);
    expect(unfoldsTooFar(bytes)).toBe(false);
    expect(await leastMs(() => unfoldsTooFar(bytes), 2 * ENOUGH)).toBeLessThan(2 * ENOUGH);
  });
});
