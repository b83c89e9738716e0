/** What lies beside the pages lies inside the PDF as well, byte for byte, and nothing else does: by qpdf's reading. */
import { execFileSync, spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { builtHouses, editionsOf } from '../tools/built-houses.js';

const absent = spawnSync('qpdf', ['--version']).error !== undefined;
const title = absent ? 'attachments (skipped: qpdf is not on this machine)' : 'attachments';

describe.skipIf(absent)(title, () => {
  it.each(builtHouses())('of every edition of %s are its exports', async (house) => {
    const counts = new Map<string, number>();
    for (const { packet, pdf } of await editionsOf(house)) {
      const json = JSON.parse(
        execFileSync('qpdf', ['--json', '--json-key=attachments', pdf], {
          encoding: 'utf8',
          maxBuffer: 2 ** 26,
        }),
      );
      const names = Object.keys(json.attachments);
      // A workbook of the house file lies beside the pages alone; what it holds is among the texts.
      const texts = packet.exports.filter((one) => 'text' in one);
      expect(names.sort()).toEqual(texts.map(({ file }) => file).sort());
      for (const { file, text } of texts)
        expect(execFileSync('qpdf', [`--show-attachment=${file}`, pdf]).toString('utf8')).toBe(text);
      counts.set(packet.edition.name, names.length);
    }
    // What it says, as JSON, in every edition; the listing fields as CSV and JSON beside it.
    expect(counts.get('agent')).toBe(3);
    expect(counts.get('buyer')).toBe(3);
    expect([...counts.values()].every((count) => count > 0)).toBe(true);
  });
});
