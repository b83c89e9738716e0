/** qpdf, an independent reader of PDF files, finds nothing wrong. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Packet, Pictures } from '../../src/packet/packet.js';
import type { PaperName } from '../../src/print/paper.js';
import { renderPrint } from '../../src/print/render-print.js';
import { samplePacket, samplePictures, sampleSheet } from '../rooms/sample-packet.js';

const absent = spawnSync('qpdf', ['--version']).error !== undefined;
const title = absent ? 'qpdf (skipped: qpdf is not on this machine)' : 'qpdf';

describe.skipIf(absent)(title, () => {
  let pictures: Pictures;
  const folder = mkdtempSync(join(tmpdir(), 'print-qpdf-'));

  beforeAll(async () => {
    pictures = await samplePictures();
  });

  const cases: readonly [string, Packet, PaperName][] = [
    ['buyer packet, letter', samplePacket, 'letter'],
    ['buyer packet, A4', samplePacket, 'a4'],
    ['agent sheet, letter', sampleSheet, 'letter'],
    ['packet without sections', { ...samplePacket, sections: [] }, 'letter'],
  ];

  it.each(cases)('%s', async (label, packet, paper) => {
    const file = join(folder, `${label.replace(/[^a-z0-9]+/gi, '-')}.pdf`);
    const printed = await renderPrint(packet, pictures, paper);
    writeFileSync(file, printed.bytes);
    const check = spawnSync('qpdf', ['--check', file], { encoding: 'utf8' });
    expect(check.stderr).toBe('');
    expect(check.stdout).toContain('No syntax or stream encoding errors found');
    expect(check.status).toBe(0);
    const pages = execFileSync('qpdf', ['--show-npages', file], { encoding: 'utf8' });
    expect(Number(pages)).toBe(printed.pages);
    if (packet.sections.length === 0) return;
    const json = JSON.parse(
      execFileSync('qpdf', ['--json', '--json-key=outlines', file], { encoding: 'utf8', maxBuffer: 1 << 26 }),
    );
    expect(json.outlines.map((entry: { title: string }) => entry.title)).toEqual(
      packet.sections.map((section) => section.title),
    );
  });
});
