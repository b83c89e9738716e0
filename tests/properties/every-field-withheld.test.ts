/**
 * Every word of the schema that holds a text has one that nobody else has, and so have the owner’s sums; each edition is
 * built, and every byte of it is searched for those of the words that it may not say. Days, numbers and choices are the
 * same in many houses and can’t be searched for.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildHouse, EDITION_NAMES } from '../../src/build.js';
import type { EditionName } from '../../src/packet/packet.js';
import { textsIn } from '../tools/every-byte.js';
import { everyWord, fieldPaths, textFields } from '../tools/every-word.js';
import { photoWithSecrets } from '../tools/photo-with-secrets.js';
import { mayBeSeen, WHO_MAY_SEE } from './who-may-see.js';

const noTool = spawnSync('pdftotext', ['-v']).error !== undefined;
const without = noTool ? ' (skipped: pdftotext not on this machine)' : '';

/** Words that stand for something else: their canaries would be no value, or lead nowhere. */
const MEANT: Readonly<Record<string, string>> = {
  'systems[].label.reads': 'YYWW at 1',
  'money.budget[].for': 'all',
  'measured.by': 'owner',
};

const letters = (n: number): string =>
  [...String(n).padStart(3, '0')].map((digit) => 'bdfhkmprtv'[Number(digit)]).join('');

it('who may see it is decided for every word of the schema, and for no other', () => {
  const fields = fieldPaths();
  expect(fields.filter((field) => mayBeSeen(field) === undefined)).toEqual([]);
  expect([...WHO_MAY_SEE.keys()].filter((field) => !fields.includes(field))).toEqual([]);
});

describe.skipIf(noTool)(`every word of the schema${without}`, () => {
  let root: string;
  let out: string;
  /** Field → what stands in it, in every form in which it may be told. */
  const planted = new Map<string, readonly string[]>();

  beforeAll(async () => {
    root = mkdtempSync(path.join(tmpdir(), 'every-field-'));
    const folder = path.join(root, 'content', 'every');
    for (const part of ['documents', 'photos']) mkdirSync(path.join(folder, part), { recursive: true });
    let n = 0;
    const spec = everyWord((field, kind) => {
      n += 1;
      const meant = MEANT[field];
      if (meant !== undefined) return meant;
      if (kind === 'text') {
        // A serial number begins with its year and week, for its label to be read.
        const text = `${field.endsWith('.serial') ? '2601' : ''}qzcanary${letters(n)}xj`;
        planted.set(field, [text]);
        return field === 'documents[].file' ? `${text}.pdf` : text;
      }
      if (kind === 'money' && mayBeSeen(field)?.length === 1) {
        const dollars = 71_000 + n;
        planted.set(field, [
          `${dollars}.37`,
          `${Math.floor(dollars / 1000)},${String(dollars % 1000).padStart(3, '0')}.37`,
          `${dollars}37`,
        ]);
        return `${dollars}.37`;
      }
      return undefined;
    });
    writeFileSync(path.join(folder, 'house.yaml'), JSON.stringify(spec, null, 1));
    writeFileSync(path.join(folder, 'photos', 'photo.jpg'), await photoWithSecrets('photo'));
    writeFileSync(path.join(folder, 'documents', `${planted.get('documents[].file')?.[0]}.pdf`), 'a paper\n');
    out = path.join(root, 'out');
    const { located, made } = await buildHouse({
      folder,
      shown: 'content/every',
      asOf: '2026-11-20',
      editions: EDITION_NAMES,
      out,
      outShown: 'out',
      paper: 'letter',
    });
    expect(
      located
        .filter(({ diagnostic }) => diagnostic.severity === 'error')
        .map(({ diagnostic }) => diagnostic.message),
    ).toEqual([]);
    expect(made).toHaveLength(EDITION_NAMES.length);
  });

  afterAll(() => rmSync(root, { recursive: true, force: true }));

  it('has a canary in every word that takes a text, and in every sum of the owner’s', () => {
    const meant = Object.keys(MEANT);
    // A system has one warranty or a list of them, and a list says the same words; a photo is told by its key or by its file.
    const other = /^systems\[\]\.warranty\[\]\.|^photos\{\}\.file$/;
    expect(
      textFields().filter((field) => !planted.has(field) && !meant.includes(field) && !other.test(field)),
    ).toEqual([]);
    expect([...planted.values()].flat().length).toBeGreaterThan(180);
  });

  it.each(EDITION_NAMES)('is in no byte of an edition that may not say it: %s', (edition: EditionName) => {
    const folder = path.join(out, 'every', edition);
    const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
    const found = new Set<string>();
    const all = [...planted.values()].flat();
    for (const one of files) {
      if (one.name.endsWith('.woff2')) continue;
      const file = path.join(one.parentPath, one.name);
      const readings = [readFileSync(file), Buffer.from(path.relative(folder, file))];
      if (one.name.endsWith('.pdf') && !file.includes(`${path.sep}papers${path.sep}`))
        readings.push(
          execFileSync('pdftotext', ['-raw', '-enc', 'UTF-8', file, '-'], { maxBuffer: 2 ** 26 }),
        );
      for (const reading of readings) for (const text of textsIn(reading, all)) found.add(text);
    }
    const told = [...planted]
      .filter(([, texts]) => texts.some((text) => found.has(text)))
      .map(([field]) => field);
    expect(told.filter((field) => mayBeSeen(field)?.includes(edition) !== true)).toEqual([]);
    // The search can fail: of what an edition may say, it says a good part.
    const least: Record<EditionName, number> = { agent: 20, visit: 5, buyer: 70, care: 40, file: 90 };
    expect(told.length).toBeGreaterThan(least[edition]);
  });

  it('is in nothing beside the editions but the photo cache, and that holds no word', () => {
    const house = readdirSync(path.join(out, 'every'));
    const beside = house.filter((name) => !(EDITION_NAMES as readonly string[]).includes(name));
    expect(beside).toEqual(['.sillplate-made.json']);
    const notes = readFileSync(path.join(out, 'every', '.sillplate-made.json'));
    const cache = readdirSync(path.join(out, '.photo-cache'), {
      recursive: true,
      withFileTypes: true,
    }).filter((one) => one.isFile());
    expect(cache.length).toBeGreaterThanOrEqual(3);
    const all = [...planted.values()].flat();
    for (const bytes of [notes, ...cache.map((one) => readFileSync(path.join(one.parentPath, one.name)))])
      expect(textsIn(bytes, all)).toEqual([]);
    expect(
      textsIn(Buffer.from(cache.map((one) => path.join(one.parentPath, one.name)).join('\n')), all),
    ).toEqual([]);
  });
});
