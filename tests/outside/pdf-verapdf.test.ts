/** Every edition of every built house is PDF/A-3b and PDF/UA-1, says veraPDF: no rule fails. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { builtFolder, builtHouses, editionsOf } from '../tools/built-houses.js';
import { resolveVeraPdf, type Validated, validate } from '../tools/verapdf.js';

const classPath = resolveVeraPdf();
const title =
  classPath === undefined ? 'veraPDF (skipped: no Java, no Maven, or no way to its artifacts)' : 'veraPDF';

describe.skipIf(classPath === undefined)(title, () => {
  let found: Validated[];
  let files: string[];
  let plain: string;

  beforeAll(async () => {
    const editions = await Promise.all(builtHouses().map(editionsOf));
    files = editions.flat().map((edition) => edition.pdf);
    plain = path.join(builtFolder(), 'plain.pdf');
    const document = await PDFDocument.create();
    document.addPage().drawText('A page that nothing is known of.');
    writeFileSync(plain, await document.save());
    found = validate(classPath ?? '', [...files, plain]);
  });

  it('finds fault with a file that is neither: the check can fail', () => {
    const faults = found.filter(({ file }) => file === plain).map(({ failed }) => failed.length);
    expect(faults).toHaveLength(2);
    for (const count of faults) expect(count).toBeGreaterThan(1);
  });

  it.each(['3b', 'ua1'])('finds no failed rule of profile %s in any edition', (profile) => {
    const ours = found.filter((one) => one.profile === profile && one.file !== plain);
    expect(ours.map(({ file }) => file)).toEqual(files);
    expect(files.length).toBeGreaterThanOrEqual(10);
    for (const { file, checks, failed } of ours) {
      expect(failed, file).toEqual([]);
      expect(checks, file).toBeGreaterThan(1000);
    }
  });
});
