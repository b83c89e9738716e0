/**
 * The receipt's fields, as other programs know them: pdf.js reads names, words and order; pdf-lib and qpdf fill them in;
 * poppler and pdf.js read back what was filled in, and poppler draws it on its line with the font that the file brings.
 */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFBool, PDFDict, PDFDocument, PDFHexString, PDFName } from 'pdf-lib';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import type { FieldBox } from '../../src/print/box.js';
import { loadFaces } from '../../src/print/faces.js';
import { sharedLetters } from '../../src/print/letters.js';
import { planPages } from '../../src/print/plan.js';
import { renderPrint } from '../../src/print/render-print.js';
import { formPacket, receiptForm } from '../rooms/form-packet.js';
import { lacking, run } from '../tools/outside-programs.js';
import { resolveVeraPdf, validate } from '../tools/verapdf.js';

const folder = mkdtempSync(join(tmpdir(), 'print-form-'));
const packet = formPacket(4);
const fields = receiptForm.fields.filter((field) => !field.inInk);

/** A date, a name with letters of several languages, and signs of the upper half of the encoding. */
const TYPED: Readonly<Record<string, string>> = {
  'received-on': '2026-11-21',
  'received-by': 'Zoë Nuñez-Šimánek',
  'received-as': 'buyer’s agent – “ß€”',
};

let bytes: Uint8Array;

beforeAll(async () => {
  bytes = (await renderPrint(packet, new Map(), 'letter')).bytes;
});

/** As a program does that leaves drawing to the next one: values alone, and the wish that they be drawn. */
async function withValues(): Promise<Uint8Array> {
  const doc = await PDFDocument.load(bytes);
  const form = doc.getForm();
  for (const [name, text] of Object.entries(TYPED))
    form.getTextField(name).acroField.setValue(PDFHexString.fromText(text));
  doc.catalog.lookup(PDFName.of('AcroForm'), PDFDict).set(PDFName.of('NeedAppearances'), PDFBool.True);
  return doc.save({ updateFieldAppearances: false });
}

async function pagesBy(data: Uint8Array) {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  return getDocument({ data: new Uint8Array(data), verbosity: 0 }).promise;
}

describe('pdf.js', () => {
  it('finds the fields by name, each a text field on the one page', async () => {
    const doc = await pagesBy(bytes);
    const found = (await doc.getFieldObjects()) as Record<string, { type: string; value: string }[]>;
    await doc.destroy();
    expect(Object.keys(found)).toEqual(fields.map(({ id }) => id));
    for (const [object, ...more] of Object.values(found)) {
      expect(more).toEqual([]);
      expect(object).toMatchObject({ type: 'text', value: '' });
    }
  });

  it('reads what each is for, in the order of the page and of its structure', async () => {
    const doc = await pagesBy(bytes);
    const page = await doc.getPage(doc.numPages);
    const widgets = (await page.getAnnotations()).filter((one) => one.subtype === 'Widget');
    const tree = JSON.stringify(await page.getStructTree());
    await doc.destroy();
    expect(widgets.map((one) => [one.fieldName, one.alternativeText])).toEqual(
      fields.map(({ id, label, hint }) => [id, `${label}: ${hint}`]),
    );
    // From left to right and down: the order in which the tabulator key goes.
    const tops = widgets.map((one) => one.rect[3]);
    expect(tops[0]).toBe(tops[1]);
    expect(tops[2]).toBeLessThan(tops[1] ?? 0);
    const ids = widgets.map((one) => tree.indexOf(`"type":"annotation","id":"pdfjs_internal_id_${one.id}"`));
    expect(ids.every((at) => at > 0)).toBe(true);
    expect(ids).toEqual([...ids].sort((a, b) => a - b));
  });

  it('reads back what pdf-lib filled in', async () => {
    const filled = await PDFDocument.load(bytes);
    for (const [name, text] of Object.entries(TYPED)) filled.getForm().getTextField(name).setText(text);
    const doc = await pagesBy(await filled.save());
    const found = (await doc.getFieldObjects()) as Record<string, { value: string }[]>;
    await doc.destroy();
    const values = Object.entries(found).map(([name, [object]]) => [name, object?.value]);
    expect(Object.fromEntries(values)).toEqual(TYPED);
  });
});

const noPoppler = lacking('pdftotext', 'pdftoppm', 'pdffonts');

describe.skipIf(noPoppler.some)(`poppler${noPoppler.words}`, () => {
  it('reads on paper what pdf-lib filled in', async () => {
    const filled = await PDFDocument.load(bytes);
    for (const [name, text] of Object.entries(TYPED)) filled.getForm().getTextField(name).setText(text);
    const file = join(folder, 'filled.pdf');
    writeFileSync(file, await filled.save());
    const text = run('pdftotext', '-raw', '-enc', 'UTF-8', file, '-').toString();
    for (const typed of Object.values(TYPED)) expect(text).toContain(typed);
  });

  it('draws what was filled in on its line, and nothing before', async () => {
    const plan = planPages(packet, new Map(), 'letter', sharedLetters(loadFaces));
    const boxes = plan.pages.flatMap((page) =>
      page.boxes.filter((box): box is FieldBox => box.kind === 'field'),
    );
    expect(boxes).toHaveLength(3);
    const [empty, filled] = [await drawn('empty', bytes), await drawn('values', await withValues())];
    for (const box of boxes) {
      expect(empty(box), box.name).toBe(0);
      expect(filled(box), box.name).toBeGreaterThan(150);
      // Nothing above, where the row before or the text stands.
      expect(filled({ ...box, y: box.y - 8, height: 8 }), box.name).toBe(0);
    }
  });

  it('has every font in the file, also for what was filled in', async () => {
    const file = join(folder, 'values.pdf');
    writeFileSync(file, await withValues());
    const [, , ...rows] = run('pdffonts', file).toString().trimEnd().split('\n');
    expect(rows.length).toBeGreaterThan(3);
    for (const row of rows) expect(row).toMatch(/^[A-Z]{6}\+\S+ .* yes yes yes +\d+ +\d+$/);
    expect(rows.filter((row) => / WinAnsi /.test(row))).toHaveLength(1);
  });
});

const noQpdf = lacking('qpdf', 'pdftotext');

describe.skipIf(noQpdf.some)(`qpdf${noQpdf.words}`, () => {
  it('finds nothing wrong, and draws values with the font of the file', async () => {
    const [empty, values, made] = ['empty.pdf', 'given.pdf', 'made.pdf'].map((name) => join(folder, name));
    if (empty === undefined || values === undefined || made === undefined) throw new Error('three names');
    writeFileSync(empty, bytes);
    expect(run('qpdf', '--check', empty).toString()).toContain('No syntax or stream encoding errors found');
    writeFileSync(values, await withValues());
    run('qpdf', '--generate-appearances', values, made);
    const text = run('pdftotext', '-raw', '-enc', 'UTF-8', made, '-').toString();
    for (const typed of Object.values(TYPED)) expect(text).toContain(typed);
  });
});

const classPath = noQpdf.some ? undefined : resolveVeraPdf();
const veraPdf = `veraPDF${classPath === undefined ? ' (skipped: no Java, no Maven, no way to its artifacts, or no qpdf)' : ''}`;

describe.skipIf(classPath === undefined)(veraPdf, () => {
  // Most rules for fonts are asked of those that something is written in: here also the one to fill in with.
  it('finds no failed rule in a copy that was filled in with the font of the file', async () => {
    const [values, made] = [join(folder, 'to-fill.pdf'), join(folder, 'filled-in.pdf')];
    writeFileSync(values, await withValues());
    run('qpdf', '--newline-before-endstream', '--generate-appearances', values, made);
    const found = validate(classPath ?? '', [made]);
    expect(found.map(({ profile }) => profile).sort()).toEqual(['3b', 'ua1']);
    for (const { profile, failed } of found) expect(failed, profile).toEqual([]);
  }, 120_000);
});

/** Draws the last page; answers how many dots inside a box are dark. Four dots to a point. */
async function drawn(name: string, data: Uint8Array): Promise<(box: FieldBox) => number> {
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, data);
  run('pdftoppm', '-r', '288', '-gray', '-png', '-singlefile', file, join(folder, name));
  const { data: dots, info } = await sharp(join(folder, `${name}.png`))
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return ({ x, y, width, height }) => {
    let dark = 0;
    for (let row = Math.ceil(y * 4); row < Math.floor((y + height) * 4) - 1; row++)
      for (let column = Math.ceil(x * 4); column < (x + width) * 4; column++)
        if ((dots[row * info.width + column] ?? 255) < 128) dark++;
    return dark;
  };
}
