/**
 * Receipts as shops and scanners leave them: one page in one colour, and words in every place that no reader of the page
 * sees. A PDF (ISO 32000-1: 14.3.3 information, 14.3.2 XMP, 7.11.4 attached files, 12.5.6.4 notes, 9.3.6 words that are not
 * painted, as text recognition writes them, 12.6.4.16 scripts) and a PNG (third edition: 11.3.3 texts, 11.3.4.5 Exif, and what
 * follows the end).
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import { PDFDocument, PDFHexString, PDFName, PDFString, rgb, TextRenderingMode } from 'pdf-lib';
import { chunk } from './one-colour-png.js';
import { run } from './outside-programs.js';
import type { Colour } from './rare-colours.js';
import { painted, tagsWith, type WordFor } from './talking-photo.js';

/** A page with one square of the colour. Behind its end stands a line that no reader looks at. */
export async function talkingPdf([red, green, blue]: Colour, wordFor: WordFor): Promise<Buffer> {
  const pdf = await PDFDocument.create();
  pdf.setTitle(wordFor('PDF title'));
  pdf.setAuthor(wordFor('PDF author'));
  pdf.setSubject(wordFor('PDF subject'));
  pdf.setKeywords([wordFor('PDF keywords')]);
  pdf.setCreator(wordFor('PDF creator'));
  pdf.setProducer(wordFor('PDF producer'));
  const page = pdf.addPage([300, 400]);
  page.drawRectangle({
    ...{ x: 40, y: 120, width: 200, height: 200 },
    color: rgb(red / 255, green / 255, blue / 255),
  });
  page.drawText(wordFor('PDF recognised text'), {
    ...{ x: 40, y: 60, size: 10 },
    renderMode: TextRenderingMode.Invisible,
  } as never);
  await pdf.attach(Buffer.from(wordFor('PDF attachment')), `${wordFor('PDF attachment’s name')}.txt`, {
    description: wordFor('PDF attachment’s description'),
  });
  const { context, catalog } = pdf;
  const note = context.obj({
    // Not to be drawn: its sign would be a picture of its own.
    ...{ Type: 'Annot', Subtype: 'Text', Rect: [10, 10, 30, 30], F: 2 },
    Contents: PDFHexString.fromText(wordFor('PDF note')),
    T: PDFString.of(wordFor('PDF note’s author')),
  });
  page.node.set(PDFName.of('Annots'), context.obj([context.register(note)]));
  const xmp = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" pdf:Keywords="${wordFor('PDF XMP')}"/></rdf:RDF></x:xmpmeta>`;
  const metadata = context.flateStream(xmp, { Type: 'Metadata', Subtype: 'XML' });
  catalog.set(PDFName.of('Metadata'), context.register(metadata));
  pdf.addJavaScript('begin', `var who = "${wordFor('PDF script')}";`);
  return Buffer.concat([await pdf.save(), Buffer.from(`\n% ${wordFor('PDF behind the end')}\n`)]);
}

export async function talkingPng(colour: Colour, wordFor: WordFor): Promise<Buffer> {
  const folder = mkdtempSync(path.join(tmpdir(), 'talking-'));
  try {
    const file = path.join(folder, 'paper.png');
    await painted({ left: colour, right: colour }, 240, 320).png().toFile(file);
    run('exiftool', '-q', '-q', '-m', '-n', '-overwrite_original', ...tagsWith(wordFor), file);
    const png = readFileSync(file);
    const text = (word: string): Buffer => Buffer.from(word, 'latin1');
    const packed = (word: string): Buffer => deflateSync(text(`${word} ${'of the till '.repeat(20)}`));
    const texts = [
      chunk('tEXt', text(`Comment\0${wordFor('tEXt')}`)),
      chunk('zTXt', Buffer.concat([text('Author\0\0'), packed(wordFor('zTXt'))])),
      chunk('iTXt', Buffer.concat([text('Description\0\x01\0en\0\0'), packed(wordFor('iTXt'))])),
    ];
    // Behind the head, which has 8 bytes of signature and 25 of its own.
    const behind = Buffer.from(wordFor('PNG behind the end'));
    return Buffer.concat([png.subarray(0, 33), ...texts, png.subarray(33), behind]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
