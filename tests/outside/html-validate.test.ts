/** Independent check: html-validate 10 (MIT) with its recommended rules on every page of the samples. */
import { HtmlValidate } from 'html-validate';
import { expect, test } from 'vitest';
import { renderWeb } from '../../src/web/render-web.js';
import { htmlOf } from '../rooms/rendered-sample.js';
import { samplePacket, samplePictures, sampleSheet, wideSheet } from '../rooms/sample-packet.js';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  rules: {
    // Titles are the house's and the edition's own names; browsers cut them where they like.
    'long-title': 'off',
    // White space at the end of a line is left where a template's tag stood.
    'no-trailing-whitespace': 'off',
  },
});

test('every page is valid HTML', async () => {
  const pictures = await samplePictures();
  let checked = 0;
  for (const packet of [samplePacket, sampleSheet, wideSheet]) {
    const pages = htmlOf(await renderWeb(packet, pictures, { file: 'packet.pdf', pages: 2 }));
    for (const [name, html] of pages) {
      const report = await validator.validateString(html, name);
      const messages = report.results.flatMap((result) =>
        result.messages.map((m) => `${name}:${m.line} ${m.ruleId} ${m.message}`),
      );
      expect(messages).toEqual([]);
      checked += 1;
    }
  }
  expect(checked).toBe(samplePacket.sections.length + 2);
});

test('the validator is awake', async () => {
  const report = await validator.validateString('<!doctype html><p><div></p>', 'bad.html');
  expect(report.valid).toBe(false);
});
