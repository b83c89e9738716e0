import { mkdtemp, readdir, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
// @ts-expect-error Eleventy comes without types.
import Eleventy from '@11ty/eleventy';
import { expect, test } from 'vitest';
import { configureSite, type EleventyConfiguration } from '../../src/web/configure-site.js';
import { templatesFolder } from '../../src/web/site-assets.js';
import { samplePacket, samplePictures, sampleSheet } from './sample-packet.js';

test('the site for Eleventy by hand keeps editions in folders of their own, assets included', async () => {
  const pictures = await samplePictures();
  const entries = [
    { packet: samplePacket, pictures, paper: undefined },
    { packet: sampleSheet, pictures, paper: undefined },
  ];
  const out = await mkdtemp(join(tmpdir(), 'site-'));
  const eleventy = new Eleventy(templatesFolder, out, {
    quietMode: true,
    configPath: false,
    source: 'script',
    config: (config: EleventyConfiguration) => configureSite(config, entries),
  });
  eleventy.disableLogger();
  await eleventy.write();
  const buyer = join(out, 'quarry-road/buyer');
  expect((await readdir(buyer)).filter((name) => name.endsWith('.html'))).toHaveLength(
    samplePacket.sections.length,
  );
  expect(await readdir(join(out, 'quarry-road/agent'))).toEqual([
    'assets',
    'index.html',
    'listing-fields.json',
  ]);
  // Four photos in two sizes and two formats, and their style sheet.
  const photos = await readdir(join(buyer, 'assets/photos'));
  expect(photos).toHaveLength(17);
  expect(await readFile(join(buyer, 'assets/photos/frames.css'), 'utf8')).toContain('--ratio: 1.33333');
  expect(await readdir(join(buyer, 'assets'))).toContain('pair.js');
  expect(await readFile(join(buyer, 'index.html'), 'utf8')).not.toContain('Improvements sheet');
  expect(await readdir(out)).toEqual(['quarry-road']);
});
