import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../src/packet/packet.js';
import { renderWeb } from '../../src/web/render-web.js';
import { templatesFolder } from '../../src/web/site-assets.js';
import { svgOf } from '../../src/web/svg-of.js';
import { attributes, htmlOf } from './rendered-sample.js';
import { photoSheet, samplePacket, samplePictures, sampleSheet, wideSheet } from './sample-packet.js';

const style = await readFile(join(templatesFolder, 'assets/style.css'), 'utf8');

describe('a drawing as SVG', () => {
  const drawing: Drawing = {
    width: 90,
    height: 60.126,
    shapes: [
      { kind: 'line', from: [0, 0.333333], to: [10, 20], pen: 'hair', ink: 'line' },
      {
        kind: 'path',
        points: [
          [0, 0],
          [5, 0],
          [5, 5],
        ],
        closed: true,
        fill: 'accent-soft',
      },
      { kind: 'circle', at: [3, 4], radius: 1.5, fill: 'none', ink: 'accent' },
      { kind: 'text', at: [7, 8], text: 'A & <b>"', style: 'tick', ink: 'soft', anchor: 'middle', turn: -90 },
    ],
  };
  const svg = svgOf(drawing, 'Says "what" & more', 'only');

  test('is one picture with a spoken text, at four thirds of its points', () => {
    expect(svg).toMatch(
      /^<svg class="drawn drawn-only" viewBox="0 0 90 60.13" width="120" height="80" role="img" /,
    );
    expect(svg).toContain('aria-label="Says &quot;what&quot; &amp; more">');
  });

  test('has one element a shape, styled by classes alone', () => {
    expect(svg).toContain('<line class="pen-hair ink-line" x1="0" y1="0.33" x2="10" y2="20"/>');
    expect(svg).toContain('<path class="pen-none fill-accent-soft" d="M0 0L5 0L5 5Z"/>');
    expect(svg).toContain('<circle class="pen-thin ink-accent fill-none" cx="3" cy="4" r="1.5"/>');
    expect(svg).not.toMatch(/ (style|fill|stroke)=/);
  });

  test('turns and escapes its letters', () => {
    expect(svg).toContain('transform="rotate(-90 7 8)">A &amp; &lt;b&gt;&quot;</text>');
  });
});

test('a drawing with a narrow form is given in both, and the style sheet shows one', async () => {
  const html =
    htmlOf(await renderWeb(samplePacket, await samplePictures(), undefined)).get('ages.html') ?? '';
  expect(html.match(/drawn-wide/g)).toHaveLength(1);
  expect(html.match(/drawn-narrow/g)).toHaveLength(1);
  expect(style).toMatch(/\n\.drawn-narrow \{\s*display: none;/);
  expect(style).toMatch(/max-width: 46rem\)[\s\S]*\.drawn-wide \{\s*display: none;/);
});

test('every class of every page is one that the style sheet knows', async () => {
  const pictures = await samplePictures();
  const packets = [samplePacket, sampleSheet, wideSheet, photoSheet];
  let known = style;
  const used = new Set<string>();
  for (const packet of packets) {
    const files = await renderWeb(packet, pictures, undefined);
    for (const file of files) if (file.path.endsWith('frames.css') && 'text' in file) known += file.text;
    for (const html of htmlOf(files).values()) {
      for (const names of attributes(html, 'class')) for (const name of names.split(' ')) used.add(name);
    }
  }
  // Names that stand for themselves: where nothing differs from the default there is nothing to style.
  const plain = new Set([
    ...[
      'edition-buyer',
      'edition-file',
      'front',
      'statement',
      'say-body',
      'paragraph-body',
      'table-full',
      'table-keep',
      'facts-4',
    ],
    ...['drawn-wide', 'drawn-only', 'from-start', 'normal', 'left'],
  ]);
  const unknown = [...used].filter(
    (name) => !plain.has(name) && !new RegExp(`\\.${name}(?![\\w-])`).test(known),
  );
  expect(used.size).toBeGreaterThan(60);
  expect(unknown).toEqual([]);
});

test('every pen, ink, fill and letter of the drawing model is in the style sheet', () => {
  const names = [
    ...['hair', 'thin', 'medium', 'wall', 'dashed'].map((pen) => `pen-${pen}`),
    ...['ink', 'soft', 'line', 'accent'].flatMap((ink) => [`ink-${ink}`, `text-${ink}`]),
    ...['none', 'paper', 'wash', 'ink', 'accent', 'accent-soft'].map((fill) => `fill-${fill}`),
    ...['name', 'body', 'small', 'tick', 'unknown'].map((letter) => `letter-${letter}`),
  ];
  for (const name of names) expect(style).toContain(`.${name} {`);
});

test('the style sheet asks for nothing but the fonts beside it', async () => {
  const paths = (await renderWeb(sampleSheet, await samplePictures(), undefined)).map((file) => file.path);
  const urls = [...style.matchAll(/url\("?([^)"]*)"?\)/g)].map((match) => match[1]);
  expect(urls).toHaveLength(6);
  for (const url of urls) expect(paths).toContain(`assets/${url}`);
  expect(style).not.toMatch(/@import|https?:/);
});
