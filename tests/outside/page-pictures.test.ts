/**
 * Every kind of sheet, as a picture: what the demo houses' editions look like is what was looked at and accepted.
 *
 * After a change that is meant, look at the pictures the failed test names, then run `node tests/tools/accept-sheets.mjs`.
 */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { composeHouse } from '../../src/build.js';
import type { EditionName } from '../../src/packet/packet.js';
import { loadFaces } from '../../src/print/faces.js';
import { lettersOf } from '../../src/print/letters.js';
import { paperOf } from '../../src/print/paper.js';
import { planPages } from '../../src/print/plan.js';
import { writePdf } from '../../src/print/write-pdf.js';
import { BUILT_AS_OF } from '../tools/build-houses.js';
import { type BuiltEdition, builtFolder, editionsOf } from '../tools/built-houses.js';
import { lacking, run } from '../tools/outside-programs.js';
import {
  type Area,
  type Change,
  differencePng,
  fromPng,
  likenessOf,
  paintSheet,
  toPng,
  UNLIKE,
} from '../tools/sheet-pictures.js';

const KEPT = fileURLToPath(new URL('../sheets', import.meta.url));
const ACCEPTING = process.env.SILLPLATE_ACCEPT_SHEETS === '1';

/** The sheet on which a section, or a drawing in it, begins: house, edition, anchor. */
const SHEETS: readonly (readonly [house: string, edition: EditionName, anchor: string])[] = [
  ['quarry-road', 'agent', 'in-short'],
  ['quarry-road', 'agent', 'plan-main'],
  ['quarry-road', 'agent', 'receipt-form'],
  ['quarry-road', 'visit', 'at-a-glance'],
  ['quarry-road', 'visit', 'terms'],
  ['quarry-road', 'buyer', 'in-short'],
  ['quarry-road', 'buyer', 'what-was-done'],
  ['quarry-road', 'buyer', 'drawn-done-main'],
  ['quarry-road', 'buyer', 'how-old'],
  ['quarry-road', 'buyer', 'ages-drawing-4'],
  ['quarry-road', 'buyer', 'rooms'],
  ['quarry-road', 'buyer', 'plan-main'],
  ['quarry-road', 'buyer', 'plan-upper'],
  ['quarry-road', 'buyer', 'safety'],
  ['quarry-road', 'buyer', 'drawn-alarms'],
  ['quarry-road', 'buyer', 'left-as-found'],
  ['quarry-road', 'buyer', 'photos'],
  ['quarry-road', 'buyer', 'papers'],
  ['quarry-road', 'buyer', 'questions'],
  ['quarry-road', 'buyer', 'notices'],
  ['quarry-road', 'buyer', 'receipt-form'],
  ['quarry-road', 'care', 'schedule'],
  ['quarry-road', 'care', 'finishes'],
  ['quarry-road', 'care', 'equipment'],
  ['quarry-road', 'care', 'warranties'],
  ['quarry-road', 'file', 'contact-sheet'],
  ['quarry-road', 'file', 'for-the-owner'],
  ['larkspur-court', 'agent', 'in-short'],
  ['larkspur-court', 'visit', 'at-a-glance'],
  ['larkspur-court', 'buyer', 'plan-family-wing'],
  ['larkspur-court', 'buyer', 'photos'],
];

const nameOf = (sheet: (typeof SHEETS)[number]): string => sheet.join('--');

const told = new Map<string, string>();

/** What one of poppler's programs prints of a file; the file stays as it is, so it is asked once. */
function poppler(program: string, ...words: readonly string[]): string {
  const name = [program, ...words].join(' ');
  const known = told.get(name) ?? run(program, ...words).toString('utf8');
  told.set(name, known);
  return known;
}

/** The page that a link to this anchor leads to. */
function pageOf(pdf: string, anchor: string): number {
  const lines = poppler('pdfinfo', '-dests', pdf).split('\n');
  const line = lines.find((each) => each.endsWith(` "${anchor}"`));
  if (line === undefined) throw new Error(`${path.basename(pdf)} has no anchor ${anchor}`);
  return Number.parseInt(line, 10);
}

/** Lines of text on a page, as poppler finds them. */
function linesOn(pdf: string, page: number): { text: string; area: Area }[] {
  const where = ['-f', String(page), '-l', String(page)];
  const html = poppler('pdftotext', '-bbox-layout', ...where, pdf, '-');
  const found = html.matchAll(
    /<line xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">([\s\S]*?)<\/line>/g,
  );
  return [...found].map(([, ...parts]) => {
    const [x = 0, y = 0, right = 0, bottom = 0] = parts.slice(0, 4).map(Number);
    const text = (parts[4] ?? '')
      .replace(/<[^>]*>/g, ' ')
      .replace(/\s+/g, ' ')
      .trim();
    return { text, area: { x, y, width: right - x, height: bottom - y } };
  });
}

/** Digest and page number change with facts that stand on other sheets, so a picture holds neither. */
function changing(pdf: string, page: number, { packet }: BuiltEdition): Area[] {
  const { footBaselinePt, widthPt, heightPt } = paperOf('letter', packet.arrangement !== 'page-per-section');
  const foot = { x: 0, y: footBaselinePt - 9, width: widthPt, height: heightPt - footBaselinePt + 9 };
  const digests = linesOn(pdf, page).filter(({ text }) => text.includes(packet.digest));
  return [foot, ...digests.map(({ area }) => area)];
}

const outside = lacking('pdftoppm', 'pdftotext', 'pdfinfo');

describe.skipIf(outside.some)(`the picture of a sheet${outside.words}`, () => {
  const editions = new Map<string, BuiltEdition>();
  let left = '';

  beforeAll(async () => {
    for (const house of new Set(SHEETS.map(([name]) => name)))
      for (const edition of await editionsOf(house))
        editions.set(`${house} ${edition.packet.edition.name}`, edition);
    if (ACCEPTING) {
      rmSync(KEPT, { recursive: true, force: true });
      mkdirSync(KEPT, { recursive: true });
    }
  });

  const editionOf = ([house, edition]: (typeof SHEETS)[number]): BuiltEdition => {
    const found = editions.get(`${house} ${edition}`);
    if (found === undefined) throw new Error(`no ${edition} edition of ${house}`);
    return found;
  };

  const paint = (sheet: (typeof SHEETS)[number], change: Change = {}, painter?: 'pdftocairo') => {
    const edition = editionOf(sheet);
    const page = pageOf(edition.pdf, sheet[2]);
    const blank = [...changing(edition.pdf, page, edition), ...(change.blank ?? [])];
    return paintSheet(edition.pdf, page, { ...change, blank }, painter);
  };

  const keptOf = (sheet: (typeof SHEETS)[number]) => fromPng(path.join(KEPT, `${nameOf(sheet)}.png`));

  it.each(SHEETS.map((sheet) => [sheet.join(', '), sheet] as const))(
    '%s, is the one accepted',
    async (_, sheet) => {
      const now = await paint(sheet);
      if (ACCEPTING) writeFileSync(path.join(KEPT, `${nameOf(sheet)}.png`), await toPng(now));
      const likeness = await likenessOf(await keptOf(sheet), now);
      if (likeness.most > UNLIKE) {
        if (left === '') left = mkdtempSync(path.join(tmpdir(), 'sheets-'));
        const file = path.join(left, nameOf(sheet));
        writeFileSync(`${file}.png`, await toPng(now));
        writeFileSync(`${file}-difference.png`, await differencePng(now, likeness));
        expect(likeness.most, `see ${file}.png and ${file}-difference.png`).toBeLessThanOrEqual(UNLIKE);
      }
    },
  );

  it('is kept for these sheets and no others, in less than 1.5 MB', () => {
    const files = readdirSync(KEPT).sort();
    expect(files).toEqual(SHEETS.map((sheet) => `${nameOf(sheet)}.png`).sort());
    const bytes = files.reduce((sum, file) => sum + statSync(path.join(KEPT, file)).size, 0);
    expect(bytes).toBeLessThan(1_500_000);
  });

  const noCairo = lacking('pdftocairo');
  it.skipIf(noCairo.some)(`is the same by another rasteriser${noCairo.words}`, async () => {
    for (const sheet of SHEETS.filter((_, index) => index % 5 === 0)) {
      const likeness = await likenessOf(await paint(sheet), await paint(sheet, {}, 'pdftocairo'));
      expect(likeness.most, nameOf(sheet)).toBeLessThan(UNLIKE);
    }
  });

  describe('is another one', () => {
    const sheets = SHEETS.filter(([house, edition]) => house === 'quarry-road' && edition === 'buyer');

    it('3 points lower', async () => {
      for (const sheet of sheets)
        expect(
          (await likenessOf(await paint(sheet), await paint(sheet, { lowerPt: 3 }))).most,
        ).toBeGreaterThan(UNLIKE);
    });

    it('without any one of its lines or marks', async () => {
      const sheet = ['quarry-road', 'buyer', 'left-as-found'] as const;
      const edition = editionOf(sheet);
      const whole = await paint(sheet);
      const { topPt, bottomPt } = paperOf('letter', false);
      const lines = linesOn(edition.pdf, pageOf(edition.pdf, sheet[2])).filter(
        ({ text, area }) => text.length > 3 && area.y > topPt && area.y + area.height < bottomPt,
      );
      const marks = lines.filter(({ text }) => /^(Documented|Owner’s statement|Not known)/.test(text));
      expect(lines.length).toBeGreaterThan(30);
      expect(marks.length).toBeGreaterThan(5);
      // The shape before a mark's word, without the word.
      const shapes = marks.map(({ text, area }) => ({
        text: `shape of ${text}`,
        area: { ...area, x: area.x - 9, width: 8.5 },
      }));
      const unseen = [];
      for (const { text, area } of [...lines, ...shapes]) {
        const { most } = await likenessOf(whole, await paint(sheet, { blank: [area] }));
        if (most <= UNLIKE) unseen.push(`${text}: ${most.toFixed(1)}`);
      }
      expect(unseen).toEqual([]);
    });

    it('in another face', async () => {
      const sheet = ['quarry-road', 'buyer', 'notices'] as const;
      const edition = editionOf(sheet);
      const composed = await composeHouse({
        folder: path.join(builtFolder(), 'content', 'quarry-road'),
        shown: 'content/quarry-road',
        asOf: BUILT_AS_OF,
        editions: ['buyer'],
        out: path.join(builtFolder(), 'out'),
        outShown: 'out',
        paper: 'letter',
      });
      const faces = loadFaces();
      const sans = lettersOf({ ...faces, serif: faces.sans });
      const [packet] = composed.packets;
      if (packet === undefined) throw new Error('nothing was composed');
      const pictures = composed.picturesOf(packet);
      const folder = mkdtempSync(path.join(tmpdir(), 'other-face-'));
      const pdf = path.join(folder, 'sans.pdf');
      writeFileSync(pdf, await writePdf(planPages(packet, pictures, 'letter', sans), packet, pictures, sans));
      const page = pageOf(pdf, sheet[2]);
      const other = await paintSheet(pdf, page, { blank: changing(pdf, page, edition) });
      expect((await likenessOf(await paint(sheet), other)).cells.length).toBeGreaterThan(100);
      rmSync(folder, { recursive: true });
    });
  });
});
