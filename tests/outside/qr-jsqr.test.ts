/**
 * The code on the open-house sheet leads where it says: pdftoppm (Poppler) renders the page as a printer would, jsQR
 * reads the picture back. Neither shares anything with the program that drew it.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import jsqr from 'jsqr';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { builtHouses, editionsOf } from '../tools/built-houses.js';

const absent = spawnSync('pdftoppm', ['-v']).error !== undefined;
const title = absent ? 'the code (skipped: pdftoppm is not on this machine)' : 'the code';

/** Where the demo houses say their pages are; the golden houses say nothing. */
const ADDRESSES: Readonly<Record<string, string>> = {
  'quarry-road': 'https://quarry-road.example/packet/',
  'larkspur-court': 'https://larkspur-court.example/',
};

async function codeOn(pdf: string, page: number, dotsAnInch: number): Promise<string | undefined> {
  const at = path.join(mkdtempSync(path.join(tmpdir(), 'qr-')), 'page');
  execFileSync('pdftoppm', [
    ...['-r', `${dotsAnInch}`, '-f', `${page}`, '-l', `${page}`, '-singlefile', '-png'],
    ...[pdf, at],
  ]);
  const { data, info } = await sharp(`${at}.png`).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return jsqr.default(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

describe.skipIf(absent)(title, () => {
  it.each(Object.entries(ADDRESSES))(
    'of %s is read back from the printed side as %s',
    async (house, address) => {
      const sheet = (await editionsOf(house)).find(({ packet }) => packet.edition.name === 'visit');
      if (sheet === undefined) throw new Error(`${house} has no open-house sheet`);
      // A good printer, a poor one, and a screen.
      for (const dotsAnInch of [300, 150, 110]) expect(await codeOn(sheet.pdf, 1, dotsAnInch)).toBe(address);
      expect(await codeOn(sheet.pdf, 2, 150)).toBeUndefined();
    },
  );

  it('is on no other paper, and on no sheet without an address', async () => {
    const others = builtHouses().filter((house) => !(house in ADDRESSES));
    expect(others.length).toBeGreaterThan(0);
    for (const house of others) {
      const sheet = (await editionsOf(house)).find(({ packet }) => packet.edition.name === 'visit');
      expect(await codeOn(sheet?.pdf ?? '', 1, 150), house).toBeUndefined();
    }
    const agent = (await editionsOf('quarry-road')).find(({ packet }) => packet.edition.name === 'agent');
    expect(await codeOn(agent?.pdf ?? '', 1, 150)).toBeUndefined();
  });
});
