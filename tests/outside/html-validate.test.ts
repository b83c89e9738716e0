/** Independent check: html-validate 10 (MIT) with its recommended rules on every page of samples and demo houses. */
import { HtmlValidate } from 'html-validate';
import { expect, test } from 'vitest';
import { EDITION_NAMES } from '../../src/build.js';
import { renderWeb } from '../../src/web/render-web.js';
import { htmlOf } from '../rooms/rendered-sample.js';
import { photoSheet, samplePacket, samplePictures, sampleSheet, wideSheet } from '../rooms/sample-packet.js';
import { DEMO_HOUSES, editionsOf, pagesIn } from '../tools/built-houses.js';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  rules: {
    // Titles are the house's and the edition's own names; browsers cut them where they like.
    'long-title': 'off',
    // White space at the end of a line is left where a template's tag stood.
    'no-trailing-whitespace': 'off',
  },
});

/** What is wrong with these pages, each message with its page and line. */
async function faultsOf(pages: ReadonlyMap<string, string>): Promise<string[]> {
  const faults: string[] = [];
  for (const [name, html] of pages) {
    const report = await validator.validateString(html, name);
    for (const result of report.results)
      faults.push(...result.messages.map((m) => `${name}:${m.line} ${m.ruleId} ${m.message}`));
  }
  return faults;
}

test('every page of the samples is valid HTML', async () => {
  const pictures = await samplePictures();
  let checked = 0;
  for (const packet of [samplePacket, sampleSheet, wideSheet, photoSheet]) {
    const pages = htmlOf(await renderWeb(packet, pictures, { file: 'packet.pdf', pages: 2 }));
    expect(await faultsOf(pages)).toEqual([]);
    checked += pages.size;
  }
  expect(checked).toBe(samplePacket.sections.length + photoSheet.sections.length + 2);
});

test('every page of every edition of the demo houses is valid HTML', async () => {
  const editions = (await Promise.all(DEMO_HOUSES.map(editionsOf))).flat();
  expect(editions).toHaveLength(DEMO_HOUSES.length * EDITION_NAMES.length);
  for (const { house, packet, folder } of editions) {
    const edition = packet.edition.name;
    const pages = pagesIn(folder);
    const expected = packet.arrangement === 'page-per-section' ? packet.sections.length : 1;
    expect(pages.size, `${house} ${edition}`).toBe(expected);
    expect(await faultsOf(pages), `${house} ${edition}`).toEqual([]);
  }
});

test('the validator is awake', async () => {
  expect(await faultsOf(new Map([['bad.html', '<!doctype html><p><div></p>']]))).not.toEqual([]);
});
