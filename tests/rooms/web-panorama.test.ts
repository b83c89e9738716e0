/** What counts as a panorama must be the same on pages and sheets: one photo, held beside the threshold, in both. */
import { beforeAll, expect, test } from 'vitest';
import type { Packet, Picture, Pictures } from '../../src/packet/packet.js';
import { loadFaces } from '../../src/print/faces.js';
import { sharedLetters } from '../../src/print/letters.js';
import { planPages } from '../../src/print/plan.js';
import { renderWeb } from '../../src/web/render-web.js';
import { htmlOf } from './rendered-sample.js';
import { photoSheet, samplePictures } from './sample-packet.js';

const letters = sharedLetters(loadFaces);
let pictures: Pictures;

beforeAll(async () => {
  pictures = await samplePictures();
});

const sheet: Packet = {
  ...photoSheet,
  sections: [
    { id: 'only', title: 'Only', blocks: [{ kind: 'photo', id: 'one', photo: 'PANO_4', caption: [] }] },
  ],
};

/** The sample's pictures, its panorama in this size. */
function sized(width: number, height: number): Pictures {
  const own = pictures.get('PANO_4');
  if (own === undefined) throw new Error('the sample has no panorama');
  const changed: Picture = { ...own, width, height };
  return new Map([...pictures, ['PANO_4', changed]]);
}

// 2.2 to 1 itself comes out on either side when the one divides and the other multiplies.
test.each([
  [2200, 1000, false],
  [1100, 500, false],
  [4400, 2000, false],
  [1760, 800, false],
  [2201, 1000, true],
  [1600, 728, false],
  [1600, 727, true],
])('%i by %i is a panorama on both or on neither: %s', async (width, height, full) => {
  const these = sized(width, height);
  const html = htmlOf(await renderWeb(sheet, these, undefined)).get('index.html') ?? '';
  const figure = /<figure class="photo[^>]*id="one"/.exec(html)?.[0] ?? 'no figure';
  expect(figure.includes(' panorama"'), figure).toBe(full);
  const plan = planPages(sheet, these, 'letter', letters);
  const box = plan.pages.flatMap((page) => page.boxes).find((one) => one.kind === 'picture');
  // Others are at most six tenths of the text column wide; both are held to a height, which keeps these below the full.
  expect((box?.width ?? 0) > plan.paper.textPt * 0.6 + 0.01, `${box?.width} points`).toBe(full);
});
