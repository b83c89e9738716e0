/** Forms on paper: where their lines stand, and what the file makes of them. */
import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  PDFRawStream,
  PDFRef,
  PDFString,
} from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Packet } from '../../src/packet/packet.js';
import type { Box, FieldBox, Plan } from '../../src/print/box.js';
import { loadFaces } from '../../src/print/faces.js';
import { sharedLetters } from '../../src/print/letters.js';
import type { PaperName } from '../../src/print/paper.js';
import { planPages } from '../../src/print/plan.js';
import { renderPrint } from '../../src/print/render-print.js';
import { TYPED_LETTERS } from '../../src/print/typed-letters.js';
import { formPacket, receiptForm } from './form-packet.js';
import { samplePacket } from './sample-packet.js';

const NONE = new Map();
const letters = sharedLetters(loadFaces);
const planOf = (packet: Packet, paper: PaperName = 'letter'): Plan => planPages(packet, NONE, paper, letters);

const isField = (box: Box): box is FieldBox => box.kind === 'field';

function boxesOf(plan: Plan): { page: number; box: Box }[] {
  return plan.pages.flatMap(({ number, boxes }) =>
    boxes
      .filter((box) => box.block === 'receipt' || box.block === 'receipt-form')
      .map((box) => ({ page: number, box })),
  );
}

const fieldsOf = (plan: Plan): FieldBox[] => boxesOf(plan).flatMap(({ box }) => (isField(box) ? [box] : []));

describe('a form', () => {
  it.each(['letter', 'a4'] as const)('stands on one page with its heading and its words: %s', (paper) => {
    for (let lines = 10; lines < 60; lines++) {
      const boxes = boxesOf(planOf(formPacket(lines), paper));
      expect(new Set(boxes.map(({ page }) => page)).size, `${lines} lines before`).toBe(1);
      expect(boxes.some(({ box }) => box.block === 'receipt')).toBe(true);
      expect(boxes.filter(({ box }) => isField(box))).toHaveLength(3);
    }
  });

  it.each([
    ['packet', 'letter', 'page-per-section'],
    ['packet', 'a4', 'page-per-section'],
    ['sheet', 'letter', 'one-page'],
    ['sheet', 'a4', 'one-page'],
  ] as const)(
    'of a %s on %s stays inside the block of text, with room for a hand',
    (_, paper, arrangement) => {
      const plan = planOf(formPacket(3, { arrangement }), paper);
      const { leftPt, textPt, fullPt, topPt, bottomPt } = plan.paper;
      const right = leftPt + (arrangement === 'one-page' ? fullPt : textPt);
      const boxes = boxesOf(plan).map(({ box }) => box);
      for (const box of boxes) {
        expect(box.x).toBeGreaterThanOrEqual(leftPt - 0.01);
        expect(box.x + box.width).toBeLessThanOrEqual(right + 0.01);
        expect(box.y).toBeGreaterThanOrEqual(topPt - 0.01);
        expect(box.y + box.height).toBeLessThanOrEqual(bottomPt + 0.01);
      }
      const lines = boxes.filter((box) => box.kind === 'rule');
      expect(lines).toHaveLength(4);
      // The right ends of the rows are those of the measure.
      expect(Math.max(...lines.map((line) => line.x + line.width))).toBeCloseTo(right, 3);
      for (const line of lines) {
        expect(line.width).toBeGreaterThanOrEqual(80);
        // On the grid of half lines, like the text around.
        const steps = (line.y - topPt) / (plan.paper.linePt / 2);
        expect(Math.abs(steps - Math.round(steps))).toBeLessThan(0.01);
        const above = boxes.filter(
          (box) =>
            box.kind === 'text' &&
            box.y < line.y &&
            box.x < line.x + line.width &&
            line.x < box.x + box.width,
        );
        expect(line.y - Math.max(...above.map((box) => box.y + box.height))).toBeGreaterThanOrEqual(20);
      }
      for (const field of boxes.filter(isField)) {
        const under = lines.find(
          (line) => line.x === field.x && Math.abs(line.y - field.y - field.height) < 0.01,
        );
        expect(under?.width).toBe(field.width);
      }
    },
  );

  it('is read label before field, row by row, and the line for ink is no field', () => {
    const plan = planOf(formPacket(3));
    expect(fieldsOf(plan).map((field) => [field.name, field.label, field.hint])).toEqual(
      receiptForm.fields.filter((field) => !field.inInk).map(({ id, label, hint }) => [id, label, hint]),
    );
    const read = boxesOf(plan)
      .filter(({ box }) => box.tags.length > 0)
      .map(({ box }) => (box.kind === 'text' ? box.text.trim() : box.kind));
    expect(read.slice(-8)).toEqual([
      ...['Received on (date)', 'field', 'By (name)', 'field', 'As (buyer, agent …)', 'field'],
      ...['Signature, in ink', 'rule'],
    ]);
  });

  it('gives each of its fields a place to lead to', () => {
    const { anchors } = planOf(formPacket(3));
    expect(anchors.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['receipt', 'receipt-form', ...receiptForm.fields.map(({ id }) => id)]),
    );
  });

  it('fills rows by shares', () => {
    const third = receiptForm.fields.slice(0, 3).map((field) => ({ ...field, share: 0.33 }));
    const base = formPacket(1);
    const blocks = [
      { ...receiptForm, fields: [...third, ...third.map((f, i) => ({ ...f, id: `more-${i}` }))] },
    ];
    const plan = planOf({ ...base, sections: [{ id: 'end', title: 'The end', blocks }] });
    const tops = fieldsOf(plan).map((field) => field.y);
    expect(new Set(tops).size).toBe(2);
    expect(new Set(tops.slice(0, 3)).size).toBe(1);
  });
});

const name = PDFName.of;
const words = (object: unknown): string => {
  if (object instanceof PDFHexString || object instanceof PDFString) return object.decodeText();
  throw new Error('not a text string');
};

describe('the file', () => {
  let bytes: Uint8Array;
  let doc: PDFDocument;

  beforeAll(async () => {
    bytes = (await renderPrint(formPacket(3), NONE, 'letter')).bytes;
    doc = await PDFDocument.load(bytes, { updateMetadata: false });
  });

  const acroForm = (): PDFDict => doc.catalog.lookup(name('AcroForm'), PDFDict);
  const widgets = (): PDFDict[] =>
    acroForm()
      .lookup(name('Fields'), PDFArray)
      .asArray()
      .map((ref) => doc.context.lookup(ref, PDFDict));

  it('is the same twice', async () => {
    const again = await renderPrint(formPacket(3), NONE, 'letter');
    expect(Buffer.from(again.bytes).equals(Buffer.from(bytes))).toBe(true);
  });

  it('without a form has no fields, and no font to fill them in', async () => {
    const packet = { ...samplePacket, sections: [], photos: [] };
    const other = await PDFDocument.load((await renderPrint(packet, NONE, 'letter')).bytes);
    expect(other.catalog.has(name('AcroForm'))).toBe(false);
    const simple = other.context
      .enumerateIndirectObjects()
      .filter(([, object]) => object instanceof PDFDict && object.get(name('Subtype')) === name('TrueType'));
    expect(simple).toEqual([]);
  });

  it('asks no program to draw its fields anew (ISO 19005-3, 6.4.1)', () => {
    expect(acroForm().has(name('NeedAppearances'))).toBe(false);
    for (const widget of widgets()) {
      expect(widget.lookup(name('F'), PDFNumber).asNumber()).toBe(4);
      expect(widget.lookup(name('AP'), PDFDict).lookup(name('N'))).toBeInstanceOf(PDFRawStream);
      for (const key of ['A', 'AA', 'MK', 'V']) expect(widget.has(name(key)), key).toBe(false);
    }
  });

  it('has every field alone in a Form element, after its label (ISO 14289-1, 7.18.4)', () => {
    const root = doc.catalog.lookup(name('StructTreeRoot'), PDFDict);
    const nums = root.lookup(name('ParentTree'), PDFDict).lookup(name('Nums'), PDFArray);
    const owners = new Map<number, PDFRef>();
    for (let i = 0; i < nums.size(); i += 2) {
      const owner = nums.get(i + 1);
      if (owner instanceof PDFRef) owners.set(nums.lookup(i, PDFNumber).asNumber(), owner);
    }
    expect(widgets()).toHaveLength(3);
    acroForm()
      .lookup(name('Fields'), PDFArray)
      .asArray()
      .forEach((ref) => {
        const widget = doc.context.lookup(ref, PDFDict);
        const key = widget.lookup(name('StructParent'), PDFNumber).asNumber();
        const element = doc.context.lookup(owners.get(key), PDFDict);
        expect(String(element.get(name('S')))).toBe('/Form');
        const kids = element.lookup(name('K'), PDFArray);
        expect(kids.size()).toBe(1);
        expect(kids.lookup(0, PDFDict).get(name('Obj'))).toBe(ref);
        const around = element.lookup(name('P'), PDFDict).lookup(name('K'), PDFArray);
        expect(around.size()).toBe(2);
        expect(String(around.lookup(0, PDFDict).get(name('S')))).toBe('/P');
      });
  });

  it('says of the line for ink that it is a text field on paper', () => {
    const printed = doc.context
      .enumerateIndirectObjects()
      .flatMap(([, object]) =>
        object instanceof PDFDict && object.get(name('S')) === name('Form') && object.has(name('A'))
          ? [object.lookup(name('A'), PDFDict)]
          : [],
      );
    expect(printed).toHaveLength(1);
    expect(String(printed[0]?.get(name('O')))).toBe('/PrintField');
    expect(String(printed[0]?.get(name('Role')))).toBe('/tv');
    expect(words(printed[0]?.get(name('Desc')))).toBe('a line to sign on by hand');
  });

  it('brings the letters of Western Europe to fill in with, on the bytes of one face', () => {
    const font = acroForm()
      .lookup(name('DR'), PDFDict)
      .lookup(name('Font'), PDFDict)
      .lookup(name('Typed'), PDFDict);
    expect(String(font.get(name('Subtype')))).toBe('/TrueType');
    expect(String(font.get(name('Encoding')))).toBe('/WinAnsiEncoding');
    expect(String(font.get(name('BaseFont')))).toMatch(/^\/[A-Z]{6}\+SourceSans3-Regular$/);
    const widths = font.lookup(name('Widths'), PDFArray);
    expect(widths.size()).toBe(224);
    // Source Sans 3 Regular: a is 504 and W is 786 thousandths wide (the font's own table).
    const widthOf = (letter: string): number =>
      widths.lookup(letter.charCodeAt(0) - 32, PDFNumber).asNumber();
    expect(['a', 'W', 'é'].map(widthOf)).toEqual([504, 786, 496]);
    for (const widget of widgets()) {
      expect(words(widget.get(name('DA')))).toMatch(/^\/Typed 10 Tf /);
      const look = widget.lookup(name('AP'), PDFDict).lookup(name('N')) as PDFRawStream;
      const fonts = look.dict.lookup(name('Resources'), PDFDict).lookup(name('Font'), PDFDict);
      expect(fonts.lookup(name('Typed'))).toBe(font);
    }
    const programs = doc.context
      .enumerateIndirectObjects()
      .filter(([, object]) => object instanceof PDFRawStream && object.dict.has(name('Length1')));
    const composite = doc.context
      .enumerateIndirectObjects()
      .filter(([, object]) => object instanceof PDFDict && object.get(name('Subtype')) === name('Type0'));
    expect(programs).toHaveLength(composite.length);
  });
});

describe('letters to type', () => {
  it('have the codes of WinAnsiEncoding (ISO 32000-1, annex D.2, octal; from memory)', () => {
    const codes: readonly [number, string][] = [
      [0o40, ' '],
      [0o101, 'A'],
      [0o176, '~'],
      [0o200, '€'],
      [0o212, 'Š'],
      [0o214, 'Œ'],
      [0o216, 'Ž'],
      [0o222, '’'],
      [0o225, '•'],
      [0o231, '™'],
      [0o237, 'Ÿ'],
      [0o277, '¿'],
      [0o337, 'ß'],
      [0o377, 'ÿ'],
    ];
    for (const [code, letter] of codes) expect(TYPED_LETTERS.get(code), letter).toBe(letter.codePointAt(0));
    const open = Array.from({ length: 224 }, (_, i) => i + 32).filter((code) => !TYPED_LETTERS.has(code));
    expect(open).toEqual([0o177, 0o201, 0o215, 0o217, 0o220, 0o235]);
  });

  it('are all in the face', () => {
    const { sans } = loadFaces();
    expect([...TYPED_LETTERS.values()].filter((codePoint) => !sans.has(codePoint))).toEqual([]);
  });
});
