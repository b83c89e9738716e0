/** The PDF file, looked at from inside: structure, links, photos, sameness. */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { PDFObject, PDFPage } from 'pdf-lib';
import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  PDFRawStream,
  PDFRef,
  PDFString,
} from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Pictures } from '../../src/packet/packet.js';
import { renderPrint } from '../../src/print/render-print.js';
import { samplePacket, samplePictures } from './sample-packet.js';

let pictures: Pictures;
let bytes: Uint8Array;
let doc: PDFDocument;

beforeAll(async () => {
  pictures = await samplePictures();
  bytes = (await renderPrint(samplePacket, pictures, 'letter')).bytes;
  doc = await PDFDocument.load(bytes, { updateMetadata: false });
});

const name = PDFName.of;

function words(object: PDFObject | undefined): string {
  if (object instanceof PDFHexString || object instanceof PDFString) return object.decodeText();
  throw new Error('not a text string');
}

function operatorsOf(page: PDFPage): string {
  const contents = page.node.Contents();
  const streams =
    contents instanceof PDFArray ? contents.asArray().map((each) => doc.context.lookup(each)) : [contents];
  return streams
    .map((stream) => Buffer.from(decodePDFRawStream(stream as PDFRawStream).decode()).toString('latin1'))
    .join('\n');
}

describe('same input, same bytes', () => {
  const digest = (data: Uint8Array): string => createHash('sha256').update(data).digest('hex');

  it('twice in one process', async () => {
    const again = await renderPrint(samplePacket, pictures, 'letter');
    expect(digest(again.bytes)).toBe(digest(bytes));
  });

  it('in another process', async () => {
    const root = fileURLToPath(new URL('../../', import.meta.url));
    // vite, which vitest stands on, runs the TypeScript sources in the child.
    const script = `
      const { runnerImport } = await import('vite');
      const { module: sample } = await runnerImport('./tests/rooms/sample-packet.ts');
      const { module: room } = await runnerImport('./src/print/render-print.ts');
      const { createHash } = await import('node:crypto');
      const printed = await room.renderPrint(sample.samplePacket, await sample.samplePictures(), 'letter');
      process.stdout.write('digest ' + createHash('sha256').update(printed.bytes).digest('hex'));
    `;
    const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', script], {
      cwd: root,
    });
    expect(stdout).toContain(`digest ${digest(bytes)}`);
  }, 60_000);

  it('but another file for another paper', async () => {
    const other = await renderPrint(samplePacket, pictures, 'a4');
    expect(digest(other.bytes)).not.toBe(digest(bytes));
  });
});

describe('document', () => {
  it('says what it is, in which language, from which day', () => {
    expect(doc.getTitle()).toBe('Quarry Road, Buyer packet');
    expect(words(doc.catalog.lookup(name('Lang')))).toBe('en-US');
    const preferences = doc.catalog.lookup(name('ViewerPreferences'), PDFDict);
    expect(String(preferences.get(name('DisplayDocTitle')))).toBe('true');
    expect(doc.getCreationDate()?.toISOString()).toBe(`${samplePacket.asOf}T00:00:00.000Z`);
    expect(doc.getModificationDate()?.toISOString()).toBe(`${samplePacket.asOf}T00:00:00.000Z`);
  });

  it('has bookmarks for all sections and headings', () => {
    const titles: string[] = [];
    const walk = (ref: PDFObject | undefined): void => {
      let item = ref === undefined ? undefined : doc.context.lookup(ref, PDFDict);
      while (item !== undefined) {
        titles.push(words(item.get(name('Title'))));
        walk(item.get(name('First')));
        const next: PDFObject | undefined = item.get(name('Next'));
        item = next === undefined ? undefined : doc.context.lookup(next, PDFDict);
      }
    };
    walk(doc.catalog.lookup(name('Outlines'), PDFDict).get(name('First')));
    const wanted = samplePacket.sections.flatMap((section) => [
      section.title,
      ...section.blocks.flatMap((block) => (block.kind === 'heading' ? [block.text] : [])),
    ]);
    expect(titles).toEqual(wanted);
  });

  it('leads every link of the packet to a destination that exists', () => {
    const dests = doc.catalog.lookup(name('Names'), PDFDict).lookup(name('Dests'), PDFDict);
    const names = dests.lookup(name('Names'), PDFArray).asArray();
    const known = new Set(names.filter((_, i) => i % 2 === 0).map((each) => words(each)));
    const sorted = [...known].sort();
    expect([...known]).toEqual(sorted);
    const used = doc
      .getPages()
      .flatMap((page) =>
        (page.node.Annots()?.asArray() ?? []).map((ref) =>
          words(doc.context.lookup(ref, PDFDict).get(name('Dest'))),
        ),
      );
    expect(used.length).toBeGreaterThan(20);
    expect(used.filter((each) => !known.has(each))).toEqual([]);
    const wanted = new Set(JSON.stringify(samplePacket.sections).match(/(?<="to":")[^"]+/g));
    expect([...wanted].filter((each) => !used.includes(each))).toEqual([]);
  });

  it('carries each photo once, as the JPEG it is', () => {
    const images = doc.context
      .enumerateIndirectObjects()
      .flatMap(([, object]) =>
        object instanceof PDFRawStream && object.dict.get(name('Subtype')) === name('Image') ? [object] : [],
      );
    const files = new Set([...pictures.values()].map((picture) => picture.print.file));
    expect(images.length).toBeGreaterThan(0);
    expect(images.length).toBeLessThanOrEqual(files.size);
    for (const image of images) {
      expect(String(image.dict.get(name('Filter')))).toBe('/DCTDecode');
      expect([...image.getContents().subarray(0, 2)]).toEqual([0xff, 0xd8]);
    }
  });

  it('embeds subsets with a tag, a length and the characters of every code', () => {
    const fonts = doc.context
      .enumerateIndirectObjects()
      .flatMap(([, object]) =>
        object instanceof PDFDict && object.get(name('Subtype')) === name('Type0') ? [object] : [],
      );
    expect(fonts).toHaveLength(6);
    for (const font of fonts) {
      expect(String(font.get(name('BaseFont')))).toMatch(/^\/[A-Z]{6}\+Source/);
      expect(font.lookup(name('ToUnicode'))).toBeInstanceOf(PDFRawStream);
      const descendant = font.lookup(name('DescendantFonts'), PDFArray).lookup(0, PDFDict);
      const file = descendant
        .lookup(name('FontDescriptor'), PDFDict)
        .lookup(name('FontFile2')) as PDFRawStream;
      const length = decodePDFRawStream(file).decode().length;
      expect(file.dict.lookup(name('Length1'), PDFNumber).asNumber()).toBe(length);
    }
  });
});

describe('structure', () => {
  /** Common practice for tagged files (ISO 32000-1, 14.7 and 14.8); the list of checks has no single source. */
  it('paints everything inside marked content, and nests none', () => {
    for (const page of doc.getPages()) {
      let depth = 0;
      let painted = 0;
      for (const line of operatorsOf(page).split('\n')) {
        if (/ (BDC|BMC)$/.test(line)) depth++;
        if (line === 'EMC') depth--;
        expect(depth).toBeGreaterThanOrEqual(0);
        expect(depth).toBeLessThanOrEqual(1);
        if (/( TJ| f| S| s| B| Do)$/.test(line)) {
          painted++;
          expect(depth).toBe(1);
        }
      }
      expect(depth).toBe(0);
      expect(painted).toBeGreaterThan(0);
    }
  });

  it('agrees between elements and pages', () => {
    const root = doc.catalog.lookup(name('StructTreeRoot'), PDFDict);
    const nums = root.lookup(name('ParentTree'), PDFDict).lookup(name('Nums'), PDFArray);
    const owners = new Map<number, PDFObject>();
    for (let i = 0; i < nums.size(); i += 2) {
      owners.set(nums.lookup(i, PDFNumber).asNumber(), nums.get(i + 1));
    }
    let marked = 0;
    for (const page of doc.getPages()) {
      const key = page.node.lookup(name('StructParents'), PDFNumber).asNumber();
      const list = doc.context.lookup(owners.get(key), PDFArray);
      const ids = [...operatorsOf(page).matchAll(/\/MCID (\d+)/g)].map((match) => Number(match[1]));
      expect(ids).toEqual(ids.map((_, i) => i));
      expect(list.size()).toBe(ids.length);
      for (const id of ids) {
        const element = list.lookup(id, PDFDict);
        const kids = element.lookup(name('K'), PDFArray).asArray();
        const claims = kids.some((kid) => {
          const dict = doc.context.lookup(kid);
          return (
            dict instanceof PDFDict &&
            dict.get(name('Pg')) === page.ref &&
            dict.lookupMaybe(name('MCID'), PDFNumber)?.asNumber() === id
          );
        });
        expect(claims).toBe(true);
        marked++;
      }
    }
    expect(marked).toBeGreaterThan(200);
  });

  it('gives figures words, head cells a scope, and headings no jump', () => {
    const types: string[] = [];
    const walk = (dict: PDFDict): void => {
      const type = String(dict.get(name('S')) ?? '');
      if (type !== '') types.push(type.slice(1));
      if (type === '/Figure') expect(words(dict.get(name('Alt'))).length).toBeGreaterThan(0);
      if (type === '/TH') expect(dict.lookup(name('A'), PDFDict).get(name('Scope'))).toBeDefined();
      const kids = dict.get(name('K'));
      const list = kids instanceof PDFArray ? kids.asArray() : kids instanceof PDFRef ? [kids] : [];
      for (const kid of list) {
        const below = doc.context.lookup(kid);
        if (below instanceof PDFDict && below.has(name('S'))) walk(below);
      }
    };
    walk(doc.catalog.lookup(name('StructTreeRoot'), PDFDict));
    expect(types).toEqual(
      expect.arrayContaining(['Document', 'Sect', 'H1', 'P', 'Table', 'TD', 'Figure', 'Link']),
    );
    let level = 0;
    for (const type of types) {
      const heading = /^H(\d)$/.exec(type);
      if (heading === null) continue;
      const next = Number(heading[1]);
      expect(next).toBeLessThanOrEqual(level + 1);
      level = next;
    }
  });
});
