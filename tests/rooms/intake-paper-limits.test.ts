/** Papers that ask for hours or gigabytes are given up, and the one behind them is drawn all the same. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PaperFile } from '../../src/facts/ledger.js';
import { PAGE_LIMITS, PageDrawer } from '../../src/intake/draw-pages.js';
import { paperPlates } from '../../src/intake/paper-plates.js';
import { formsInForms, pdfOf, STROKE } from '../tools/hostile-pdf.js';

let root: string;
beforeAll(() => {
  root = mkdtempSync(path.join(tmpdir(), 'paper-limits-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const ASKED = { mostPages: 4, mostPixels: 6_300_000, dpi: 150 };
const honest = pdfOf(STROKE);

function paper(file: string, bytes: Uint8Array): PaperFile {
  const at = path.join(root, file);
  writeFileSync(at, bytes);
  return { file, path: at, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
}

describe('the thread that draws', () => {
  it('draws one paper after the other', async () => {
    const drawer = new PageDrawer();
    try {
      for (let n = 0; n < 3; n++)
        expect(await drawer.draw({ ...ASKED, bytes: honest })).toMatchObject({ of: 1 });
    } finally {
      await drawer.close();
    }
  });

  it('is ended where a page takes too long, and the next paper gets another', async () => {
    const drawer = new PageDrawer({ ...PAGE_LIMITS, mostMs: 300 });
    try {
      expect(await drawer.draw({ ...ASKED, bytes: pdfOf(STROKE.repeat(800_000)) })).toEqual({
        why: 'too-long',
      });
      // A thread that starts takes a while of its own.
      const other = new PageDrawer();
      expect(await other.draw({ ...ASKED, bytes: honest })).toMatchObject({
        of: 1,
        pages: [{ width: 1275 }],
      });
      await other.close();
    } finally {
      await drawer.close();
    }
  });

  it('gives a page no more memory than it may have, and the next paper is drawn', async () => {
    const drawer = new PageDrawer();
    try {
      expect(await drawer.draw({ ...ASKED, bytes: formsInForms() })).toEqual({ why: 'no' });
      expect(await drawer.draw({ ...ASKED, bytes: honest })).toMatchObject({
        of: 1,
        pages: [{ width: 1275 }],
      });
    } finally {
      await drawer.close();
    }
  });

  // A process of its own, since memory is counted for all of one. The files are the compiled ones.
  it.each([
    ['“q” two million times', () => pdfOf('q '.repeat(2_000_000))],
    ['“q” and a stroke, a million times', () => pdfOf(`q ${STROKE}`.repeat(700_000))],
    ['forms in forms', formsInForms],
    ['strokes without end', () => pdfOf(STROKE.repeat(800_000))],
    ['a page as large as a country', () => pdfOf(STROKE, [], '', '0 0 9000000000 9000000000')],
  ])('takes under 5 s of processor time and 500 MB for %s', (_what, made) => {
    const file = path.join(root, 'hostile.pdf');
    writeFileSync(file, made());
    const compiled = path.resolve('dist/intake/draw-pages.js');
    expect(existsSync(compiled)).toBe(true);
    const script = `
      import { readFileSync } from 'node:fs';
      import { PageDrawer } from ${JSON.stringify(pathToFileURL(compiled).href)};
      const drawer = new PageDrawer();
      const drawn = await drawer.draw({ ...${JSON.stringify(ASKED)}, bytes: readFileSync(${JSON.stringify(file)}) });
      await drawer.close();
      const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
      console.log(JSON.stringify({ drawn: 'why' in drawn ? drawn.why : drawn.of, ms: (userCPUTime + systemCPUTime) / 1000, mb: maxRSS / 1024 }));
    `;
    const asked = path.join(root, 'draw.mjs');
    writeFileSync(asked, script);
    const { stdout, stderr } = spawnSync(process.execPath, [asked], { encoding: 'utf8' });
    expect(stderr).toBe('');
    const { drawn, ms, mb } = JSON.parse(stdout) as { drawn: unknown; ms: number; mb: number };
    expect(['no', 'too-long', 1]).toContain(drawn);
    expect(ms).toBeLessThan(5_000);
    expect(mb).toBeLessThan(500);
  });
});

describe('the cache', () => {
  it('keeps that a paper can’t be drawn, and not that there was no time for it', async () => {
    const cache = path.join(root, 'cache');
    const papers = new Map([
      ['forms', paper('forms.pdf', formsInForms())],
      ['strokes', paper('strokes.pdf', pdfOf(STROKE.repeat(800_000)))],
      ['honest', paper('honest.pdf', honest)],
    ]);
    const plates = await paperPlates({ papers, cache });
    expect([...plates].map(([id, { pages, of }]) => [id, pages.length, of])).toEqual([
      ['forms', 0, 0],
      ['strokes', 0, 0],
      ['honest', 1, 1],
    ]);
    const kept = (id: string): boolean =>
      readdirSync(cache).some((name) => name.includes(papers.get(id)?.sha256.slice(0, 40) ?? '?'));
    expect(['forms', 'strokes', 'honest'].map(kept)).toEqual([true, false, true]);
  });
});
