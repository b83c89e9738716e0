/** A packet that went out, held against its folder: what `sillplate verify` finds, on a made house. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import { PDFDocument, PDFName, PDFString } from 'pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildHouse } from '../../src/build.js';
import { run } from '../../src/cli.js';
import { readPdf } from '../../src/print/read-pdf.js';
import { quietProgress } from '../tools/quiet-progress.js';

const YAML = `house:
  name: Test Lane
  address: { city: Fallow Mills, state: OH }
  kind: detached
  built: 2001
levels:
  - { id: main, name: Main level, grade: above, size: 30' x 20' }
rooms:
  - { id: hall, name: Hall, level: main, use: hall, size: 10' x 8' }
systems:
  - { id: furnace, is: "furnace, gas", installed: 2015 }
`;

let home: string;
let folder: string;
let pdf: string;

const written = (name: string, bytes: Uint8Array | string): string => {
  const file = path.join(home, name);
  writeFileSync(file, bytes);
  return file;
};

/** The PDF changed by a library as somebody else's program would. */
async function changed(name: string, change: (doc: PDFDocument) => void): Promise<string> {
  const doc = await PDFDocument.load(readFileSync(pdf), { updateMetadata: false });
  change(doc);
  return written(name, await doc.save());
}

async function verify(...words: string[]) {
  let out = '';
  let error = '';
  const terminal = {
    out: (text: string) => {
      out += text;
    },
    error: (text: string) => {
      error += text;
    },
    colour: false,
    progress: quietProgress,
  };
  const common = ['--content', path.join(home, 'content'), '--out', path.join(home, 'out')];
  const status = await run(['verify', ...words, ...common], terminal);
  return { status, out, error };
}

beforeAll(async () => {
  home = mkdtempSync(path.join(tmpdir(), 'sillplate-verify-'));
  folder = path.join(home, 'content', 'test-lane');
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'house.yaml'), YAML);
  const out = path.join(home, 'out');
  const { made, located } = await buildHouse({
    folder,
    shown: 'content/test-lane',
    asOf: '2026-06-30',
    editions: ['buyer'],
    out,
    outShown: 'out',
    paper: 'a4',
  });
  expect(located.filter(({ diagnostic }) => diagnostic.severity === 'error')).toEqual([]);
  expect(made).toHaveLength(1);
  pdf = path.join(out, 'test-lane', 'buyer', 'test-lane-buyer.pdf');
});

afterAll(() => rmSync(home, { recursive: true, force: true }));

describe('a PDF is held against its folder', () => {
  it('and is what it makes: another day, edition or paper need not be typed', async () => {
    const { status, out } = await verify(pdf);
    expect(out).toContain('Buyer packet of Test Lane, as of 2026-06-30');
    expect(out).toContain('byte for byte');
    expect(status).toBe(0);
  });

  it('and the facts that changed since are told, old and new', async () => {
    const later = path.join(home, 'later', 'test-lane');
    mkdirSync(later, { recursive: true });
    writeFileSync(
      path.join(later, 'house.yaml'),
      YAML.replace('2015', '2017').replace('name: Hall', 'name: Entry'),
    );
    const { status, out } = await verify(pdf, later);
    expect(status).toBe(1);
    expect(out).toContain('This is not what');
    expect(out).toMatch(/in the PDF {5}.*2015.*\n {4}in the folder {2}.*2017/u);
    expect(out).toMatch(/in the PDF {5}.*Hall.*\n {4}in the folder {2}.*Entry/u);
    const json = JSON.parse((await verify(pdf, later, '--format', 'json')).out);
    expect(json).toMatchObject({ verdict: 'facts', house: 'test-lane', edition: 'buyer', paper: 'a4' });
    expect(json.changes.length).toBeGreaterThan(1);
    expect(json.digest).not.toBe(json.digestNow);
  });

  it('and a fact that is new or gone is told as not said', async () => {
    const later = path.join(home, 'without', 'test-lane');
    mkdirSync(later, { recursive: true });
    writeFileSync(path.join(later, 'house.yaml'), YAML.replace(/systems:.*/su, ''));
    const { out } = await verify(pdf, later);
    expect(out).toMatch(/in the PDF {5}.*urnace.*\n {4}in the folder {2}not said/u);
  });

  it('and a file that was only saved anew shows the same', async () => {
    const { status, out } = await verify(await changed('anew.pdf', () => undefined));
    expect(out).toContain('saved anew');
    expect(status).toBe(1);
  });

  it('and the sheet that was painted on is named', async () => {
    const file = await changed('painted.pdf', (doc) =>
      doc.getPages()[1]?.drawText('new roof', { x: 90, y: 90 }),
    );
    const { status, out } = await verify(file);
    expect(out).toMatch(/sheet 2 shows\s+something else/u);
    expect(status).toBe(1);
  });

  it('and sheets that were put in or taken out are named', async () => {
    const { out } = await verify(await changed('longer.pdf', (doc) => void doc.addPage()));
    expect(out).toMatch(/sheet \d+ shows something else/u);
    const shorter = await changed('shorter.pdf', (doc) => doc.removePage(doc.getPageCount() - 1));
    expect((await verify(shorter)).out).toMatch(/sheet \d+ shows something else/u);
  });

  it('and a note laid over a sheet is told', async () => {
    const file = await changed('stamped.pdf', (doc) => {
      const note = doc.context.obj({
        Type: 'Annot',
        Subtype: 'FreeText',
        Rect: [80, 80, 200, 120],
        Contents: PDFString.of('as good as new'),
      });
      doc.getPages()[0]?.node.addAnnot(doc.context.register(note));
    });
    expect((await verify(file)).out).toContain('laid over sheet 1');
  });
});

describe('what is no packet', () => {
  const refused = async (file: string, words: string): Promise<void> => {
    const { status, out, error } = await verify(file);
    expect(error).toContain(words);
    expect(error).toContain('do: ');
    expect(out).toBe('');
    expect(status).toBe(2);
  };

  it('is refused with what to do', async () => {
    await refused(path.join(home, 'nothing.pdf'), 'there is no file');
    await refused(home, 'is no file');
    await refused(written('text.pdf', 'Dear buyer'), 'carries no packet’s data');
    await refused(written('empty.pdf', ''), 'carries no packet’s data');
    await refused(written('half.pdf', readFileSync(pdf).subarray(0, 9000)), 'carries no packet’s data');
    const bare = await changed('bare.pdf', (doc) => doc.catalog.delete(PDFName.of('Names')));
    await refused(bare, 'carries no packet’s data');
  });

  it('is a file whose data name a place outside of the houses, an edition or a day there is not', async () => {
    const facts = JSON.parse(readFileSync(path.join(path.dirname(pdf), 'facts.json'), 'utf8'));
    for (const [i, false_] of [
      { ...facts, house: { ...facts.house, folder: '../../etc' } },
      { ...facts, edition: 'everything' },
      { ...facts, asOf: '2026-02-30' },
      { ...facts, form: 'other' },
      { ...facts, facts: [{ id: 7 }] },
      [],
    ].entries()) {
      const doc = await PDFDocument.create();
      doc.addPage();
      await doc.attach(new TextEncoder().encode(JSON.stringify(false_)), 'facts.json', {});
      await refused(written(`false-${i}.pdf`, await doc.save()), 'carries no packet’s data');
    }
  });

  it('is a file that swells without end', async () => {
    const packed = deflateSync(Buffer.alloc(80 * 1024 * 1024));
    const head = `%PDF-1.7\n1 0 obj\n<</Type/ObjStm/N 1/First 4/Filter/FlateDecode/Length ${packed.length}>>\nstream\n`;
    const bytes = Buffer.concat([Buffer.from(head), packed, Buffer.from('\nendstream\nendobj\n')]);
    expect(await readPdf(bytes)).toBeUndefined();
    await refused(written('swelling.pdf', bytes), 'carries no packet’s data');
  });

  it('is any other heap of bytes', async () => {
    const whole = readFileSync(pdf);
    let state = 11;
    const next = (most: number): number => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return state % most;
    };
    for (let i = 0; i < 60; i++) {
      const bytes = Uint8Array.from(whole);
      for (let k = 0; k < 40; k++) bytes[next(bytes.length)] = next(256);
      // What can be read and what can't are both answers; neither may throw, and sheets are never lost.
      const read = await readPdf(bytes);
      expect(read?.sheets.length ?? 'no packet').not.toBe(0);
    }
  });

  it('has a house that is not there', async () => {
    const { status, error } = await verify(pdf, path.join(home, 'no-such-house'));
    expect(error).toContain('there is no folder');
    expect(error).toContain('sillplate verify');
    expect(status).toBe(2);
  });

  it('has a house whose record is at fault now', async () => {
    const later = path.join(home, 'faulty', 'test-lane');
    cpSync(folder, later, { recursive: true });
    writeFileSync(path.join(later, 'house.yaml'), YAML.replace('2001', '2001-13-40'));
    const { status, error } = await verify(pdf, later);
    expect(error).toContain('facts.date');
    expect(error).toContain('has errors and makes no packet now');
    expect(status).toBe(1);
  });
});
