/**
 * Every text of the schema, the sheets and the file names holds markup, template tags, formulas, addresses, breakers of PDF,
 * JSON and iCalendar, or signs that turn a line about: what comes out is the same things as from plain words, and nothing else.
 *
 * Read by other programs: qpdf (PDF objects), pdftotext, ical.js, Papa Parse, LibreOffice (CSV and XLSX), Chromium in
 * hostile-chromium.test.ts. Formulas: OWASP, "CSV Injection", read November 2026 from memory.
 */
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { unzipSync } from 'fflate';
import ICAL from 'ical.js';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EDITION_NAMES } from '../../src/build.js';
import { asItWas } from '../../src/facts/inert-text.js';
import { textFields } from '../tools/every-word.js';
import { ATTACKS, buildHostileHouse, type HostileHouse } from '../tools/hostile-house.js';
import { lacking, run } from '../tools/outside-programs.js';

const NAMES = Object.keys(ATTACKS);
const noQpdf = lacking('qpdf');
const noOffice = lacking('soffice');

/** What steers a terminal or an editor, or turns a line about; line feeds, tabs and the joiners of words do neither. */
const STEERING = /[^\P{Cc}\n\r\t]|[^\P{Cf}\u00ad\u200c\u200d]|[\p{Zl}\p{Zp}]/u;

let root: string;
const houses = new Map<string, HostileHouse>();
const houseOf = (name: string): HostileHouse => {
  const house = houses.get(name);
  if (house === undefined) throw new Error(`${name} was not built`);
  return house;
};
const filesOf = (name: string, ending: RegExp): string[] =>
  readdirSync(houseOf(name).out, { recursive: true, encoding: 'utf8' })
    .filter((file) => ending.test(file) && !/^file\/(originals|papers)\//u.test(file))
    .sort();
const textOf = (name: string, file: string): string =>
  readFileSync(path.join(houseOf(name).out, file), 'utf8');

beforeAll(async () => {
  root = mkdtempSync(path.join(tmpdir(), 'hostile-'));
  for (const name of NAMES) houses.set(name, await buildHostileHouse(root, name));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

it('holds the attack in every text that the schema takes', () => {
  const meant = /^systems\[\]\.warranty\[\]\.|^photos\{\}\.file$/;
  for (const name of NAMES) {
    const { texts } = houseOf(name);
    expect(textFields().filter((field) => !texts.has(field) && !meant.test(field))).toEqual([]);
    expect(new Set(texts.values()).size).toBeGreaterThan(100);
  }
});

describe.each(NAMES)('%s', (name) => {
  it('has the files of plain words, by the same names', () => {
    const plain = (file: string): boolean => !/assets\/photos\/[0-9a-f]{20}\./u.test(file);
    expect(filesOf(name, /./u).filter(plain)).toEqual(filesOf('plain', /./u).filter(plain));
  });

  it('lets no sign out that steers a terminal or turns a line about', () => {
    for (const file of filesOf(name, /\.(html|json|js|csv|ics|journal|txt|css)$/u))
      expect(STEERING.exec(textOf(name, file))?.[0]?.codePointAt(0)?.toString(16), file).toBeUndefined();
  });

  it('evaluates no template and escapes all markup', () => {
    for (const file of filesOf(name, /\.(html|json|js|csv|ics|journal)$/u)) {
      const text = textOf(name, file);
      if (file.endsWith('.html'))
        expect(text, file).not.toMatch(/<img src=x|<script>|onerror="document|<!-- |javascript:hit\(\)"/u);
      if (/\.js$/u.test(file)) expect(text, file).not.toMatch(/<\/script/iu);
      if (name === 'markup') expect(text, file).not.toMatch(/document\.title[^{]*49\{%|49#49/u);
    }
  });

  it('is the same data: JSON of the same shape, with the words as they were written', () => {
    const shape = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(shape)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, shape(one)]))
          : typeof value;
    for (const file of filesOf(name, /\.json$/u)) {
      const [ours, plain] = [JSON.parse(textOf(name, file)), JSON.parse(textOf('plain', file))];
      if (/ledger\.(schema\.)?json$/u.test(file)) expect(shape(ours), file).toEqual(shape(plain));
      else expect(Object.keys(ours).sort(), file).toEqual(Object.keys(plain).sort());
    }
    const said = JSON.stringify(JSON.parse(textOf(name, 'file/ledger.json')));
    if (name === 'markup') expect(said).toContain(JSON.stringify(ATTACKS.markup?.(902)).slice(1, -1));
  });

  it('is the same calendar: one component for one of plain words, and each line of it one of its own', () => {
    const read = (of: string) => new ICAL.Component(ICAL.parse(textOf(of, 'care/care.ics')));
    const of = (calendar: ICAL.Component): unknown =>
      calendar
        .getAllSubcomponents()
        .map((one) => [one.name, one.getAllProperties().map((property) => property.name)]);
    expect(of(read(name))).toEqual(of(read('plain')));
    expect(textOf(name, 'care/care.ics')).not.toMatch(/^ATTENDEE|^BEGIN:VEVENT;/mu);
  });

  it('begins no cell of a sheet as a formula, whatever parts the cells, and comes back as it was', () => {
    for (const file of filesOf(name, /\.csv$/u)) {
      const text = textOf(name, file);
      const { data, errors } = Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' });
      expect(errors, file).toEqual([]);
      const cells = data.flat();
      const amounts = /^-?\d+(\.\d+)?$/u;
      for (const cell of cells)
        for (const part of amounts.test(cell) ? [] : cell.split(/[;\t\r\n]/u))
          expect(part, file).not.toMatch(/^[\s"]*[=+\-@＝＋－＠]/u);
      // As a program sees it that parts cells by semicolons or tabs.
      for (const delimiter of [';', '\t'])
        for (const cell of Papa.parse<string[]>(text, { delimiter, quoteChar: '\u0000' }).data.flat())
          expect(cell, `${file} by ${delimiter}`).not.toMatch(/^[\s"]*[=+@＝＋＠]/u);
      if (file === 'file/ledger.csv' && name === 'start') {
        // Beside the row: blanks around a cell and signs of no width are no words.
        const [payee, what] = [data[1]?.[1] ?? '', data[1]?.[2] ?? ''].map(asItWas);
        expect([payee, what]).toEqual([901, 902].map((n) => ATTACKS.start?.(n).replace(/\u200B/gu, '')));
      }
    }
  });

  it('has no formula, link, comment or macro in the workbook', () => {
    const parts = unzipSync(readFileSync(path.join(houseOf(name).out, 'file/ledger.xlsx')));
    expect(Object.keys(parts).sort()).toEqual(
      Object.keys(unzipSync(readFileSync(path.join(houseOf('plain').out, 'file/ledger.xlsx')))).sort(),
    );
    for (const [part, bytes] of Object.entries(parts)) {
      const text = Buffer.from(bytes).toString('utf8');
      expect(text, part).not.toMatch(
        /<f[ >]|<hyperlink|<legacyDrawing|<oleObject|TargetMode="External"|vbaProject/u,
      );
      expect(text, part).not.toMatch(/<!DOCTYPE|<!ENTITY|<!\[CDATA/u);
    }
  });

  it('is a journal of as many entries, each line of the forms that plain words have', () => {
    const forms = (of: string): string[] =>
      textOf(of, 'file/hostile.journal')
        .split('\n')
        .map((line) => line.replace(/^(\S+) .*/u, '$1').replace(/^( +)(; \w+:|\S).*/u, '$1$2'));
    const [ours, plain] = [forms(name), forms('plain')];
    expect(ours.filter((line) => /^\d{4}/u.test(line))).toEqual(plain.filter((line) => /^\d{4}/u.test(line)));
    expect(ours.length).toBe(plain.length);
  });

  it.skipIf(noQpdf.some).each(EDITION_NAMES)(`has no action in the PDF of %s${noQpdf.words}`, (edition) => {
    const file = path.join(houseOf(name).out, edition, `hostile-${edition}.pdf`);
    run('qpdf', '--check', file);
    const keys = (of: string): { words: Set<string>; actions: string[] } => {
      const words = new Set<string>();
      const actions: string[] = [];
      const { qpdf } = JSON.parse(
        run(
          'qpdf',
          '--json=2',
          '--json-key=qpdf',
          path.join(houseOf(of).out, edition, `hostile-${edition}.pdf`),
        ).toString(),
      ) as { qpdf: unknown[] };
      const walk = (value: unknown): void => {
        if (Array.isArray(value)) value.forEach(walk);
        else if (typeof value === 'object' && value !== null)
          for (const [key, one] of Object.entries(value)) {
            if (key.startsWith('/')) words.add(key);
            if (
              key === '/S' &&
              typeof one === 'string' &&
              /URI|JavaScript|Launch|GoTo|Submit|Import|Named|Rendition|Movie|Sound/u.test(one)
            )
              actions.push(one);
            walk(one);
          }
      };
      walk(qpdf[1]);
      return { words, actions };
    };
    const [ours, plain] = [keys(name), keys('plain')];
    expect(ours.actions).toEqual([]);
    for (const key of ['/JS', '/JavaScript', '/AA', '/OpenAction', '/URI', '/Launch', '/RichMedia', '/XFA'])
      expect([...ours.words]).not.toContain(key);
    expect([...ours.words].filter((key) => !plain.words.has(key))).toEqual([]);
  });
});

describe.skipIf(noOffice.some)(`sheets in LibreOffice${noOffice.words}`, () => {
  /** Reads a sheet with formulas evaluated wherever LibreOffice sees one, and answers with what its cells are. */
  function opened(file: string, filter: string): string {
    const to = path.join(root, 'office');
    const copy = path.join(root, `copy${path.extname(file)}`);
    copyFileSync(file, copy);
    execFileSync(
      'soffice',
      [
        '--headless',
        `-env:UserInstallation=file://${root}/profile`,
        ...(filter === '' ? [] : [`--infilter=${filter}`]),
        '--convert-to',
        'fods',
        '--outdir',
        to,
        copy,
      ],
      { stdio: 'ignore', timeout: 100_000 },
    );
    return readFileSync(path.join(to, 'copy.fods'), 'utf8');
  }
  // Tokens of the text import: separator, quote, UTF-8, first line; then columns, language, quoted as text, detect numbers,
  // save as shown, formulas, whitespace, sheet, evaluate formulas.
  const csv = (separator: number): string =>
    `CSV:${separator},34,76,1,,0,false,true,false,false,false,-1,true`;

  it.each([44, 59, 9])('run nothing, with cells parted by character %i', (separator) => {
    for (const file of ['file/ledger.csv', 'file/miles.csv'])
      expect(opened(path.join(houseOf('start').out, file), csv(separator)), file).not.toContain(
        'table:formula',
      );
  });

  it('would have run it: the check can fail', () => {
    const bare = path.join(root, 'bare.csv');
    writeFileSync(bare, 'a,b\r\n=1+1,x;=1+1;\r\n');
    for (const separator of [44, 59]) expect(opened(bare, csv(separator))).toContain('table:formula');
  });

  it('and neither does the workbook', () =>
    expect(opened(path.join(houseOf('start').out, 'file/ledger.xlsx'), '')).not.toContain('table:formula'));
});
