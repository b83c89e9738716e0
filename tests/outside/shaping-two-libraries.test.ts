/**
 * HarfBuzz shapes the sheets; fontkit, which shares no code with it, shapes the same words in the same faces with the
 * same features (OpenType 1.9, GSUB and GPOS), and every glyph, its characters and its advance agree.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { FACE_FILES, loadFaces } from '../../src/print/faces.js';
import type { FaceName } from '../../src/print/type-styles.js';

const FIGURES = {
  'old-style': { onum: true, pnum: true },
  lining: { pnum: true },
  tabular: { lnum: true, tnum: true },
} as const;

/** The words of a demo house's facts, and some that strain kerning, ligatures, accents and other scripts. */
function words(): string[] {
  const folder = new URL('../../content/quarry-road/', import.meta.url);
  const text = readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => readFileSync(new URL(file, folder), 'utf8'))
    .join(' ');
  const odd = 'Łukasz Zażółć Ελλάδα Москва office affluent Te AV “L’Y” ½″ €²³ 1,436 0.21 fjord WAVE Tý';
  return [...new Set(`${text} ${odd}`.split(/[\s"'`]+/u))].filter(
    (word) => word !== '' && !word.includes('\u00AD'),
  );
}

describe.each(Object.entries(FACE_FILES))('%s', (name, file) => {
  it('is shaped alike by two libraries', () => {
    const face = loadFaces()[name as FaceName];
    const font = create(readFileSync(new URL(`../../dist/fonts/${file}`, import.meta.url)));
    const k = 1000 / font.unitsPerEm;
    const list = words();
    expect(list.length).toBeGreaterThan(1000);
    let ligatures = 0;
    let kerned = 0;
    for (const [figures, features] of Object.entries(FIGURES))
      for (const word of list) {
        if (![...word].every((one) => face.has(one.codePointAt(0) ?? 0))) continue;
        const shaped = face.shape(word, figures as keyof typeof FIGURES);
        const { glyphs, positions } = font.layout(word, features);
        expect(
          shaped.map(({ id }) => id),
          word,
        ).toEqual(glyphs.map(({ id }) => id));
        expect(shaped.map(({ text }) => text).join(''), word).toBe(word.normalize('NFC'));
        shaped.forEach(({ advance, width, text }, i) => {
          expect(advance, word).toBeCloseTo((positions[i]?.xAdvance ?? Number.NaN) * k, 3);
          if (text.length > 1) ligatures++;
          if (Math.abs(advance - width) > 0.5) kerned++;
        });
      }
    expect(ligatures).toBeGreaterThan(0);
    expect(kerned).toBeGreaterThan(100);
  });
});
