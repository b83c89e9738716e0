/**
 * PDF objects: the only file that imports pdf-lib.
 *
 * Gives numbered objects, streams and the serialised file. Everything above it is written with plain values, where
 * a string is a PDF name and words for people are made with `words`.
 */

import type { PDFRef } from 'pdf-lib';
import { PDFDict, PDFDocument, PDFHexString, PDFName, PDFString } from 'pdf-lib';

declare const refBrand: unique symbol;
declare const wordsBrand: unique symbol;

/** An object that other objects point to. */
export interface Ref {
  readonly [refBrand]: true;
}

/** A text string. */
interface Words {
  readonly [wordsBrand]: true;
}

export type PdfValue = string | number | boolean | Ref | Words | readonly PdfValue[] | PdfDict;
export interface PdfDict {
  readonly [key: string]: PdfValue | undefined;
}

export interface PdfStore {
  /** A number to be filled later with `put`. */
  next(): Ref;
  put(ref: Ref, value: PdfValue): void;
  add(value: PdfValue): Ref;
  /** A compressed stream. */
  stream(bytes: Uint8Array | string, dict?: PdfDict): Ref;
  /** A stream whose bytes are already what its `Filter` says, or are to stay readable. */
  rawStream(bytes: Uint8Array, dict: PdfDict): Ref;
  /** A JPEG file, untouched. */
  jpeg(bytes: Uint8Array): Promise<Ref>;
  /** A text string for people, in any script. */
  words(text: string): Words;
  /** A byte string: dates, language codes, destination names. All characters must be ASCII. */
  ascii(text: string): Words;
  page(widthPt: number, heightPt: number, dict: PdfDict): Ref;
  /** Adds entries to a page. */
  amend(page: Ref, dict: PdfDict): void;
  catalog(entries: PdfDict): void;
  info(entries: PdfDict): void;
  /** Writes the file; `id` is 32 hex digits. */
  save(id: string): Promise<Uint8Array>;
}

/** An empty document without a clock's or a library's marks in it. */
export async function openStore(): Promise<PdfStore> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const { context } = doc;
  type Literal = Parameters<typeof context.obj>[0];
  // PdfValue is the part of pdf-lib's literals that is used here, with its object classes hidden.
  const object = (value: PdfValue): ReturnType<typeof context.obj> =>
    context.obj(value as unknown as Literal);
  const dictOf = (dict: PdfDict): Record<string, never> => dict as unknown as Record<string, never>;
  const outer = (ref: PDFRef): Ref => ref as unknown as Ref;
  return {
    next: () => outer(context.nextRef()),
    put: (ref, value) => context.assign(ref as unknown as PDFRef, object(value)),
    add: (value) => outer(context.register(object(value))),
    stream: (bytes, dict = {}) => outer(context.register(context.flateStream(bytes, dictOf(dict)))),
    rawStream: (bytes, dict) => outer(context.register(context.stream(bytes, dictOf(dict)))),
    jpeg: async (bytes) => {
      const image = await doc.embedJpg(bytes);
      await image.embed();
      return outer(image.ref);
    },
    words: (text) => PDFHexString.fromText(text) as unknown as Words,
    ascii: (text) => PDFString.of(text) as unknown as Words,
    page(widthPt, heightPt, dict) {
      const page = doc.addPage([widthPt, heightPt]);
      for (const [key, value] of Object.entries(dict)) {
        if (value !== undefined) page.node.set(PDFName.of(key), object(value));
      }
      return outer(page.ref);
    },
    amend(page, dict) {
      const node = context.lookup(page as unknown as PDFRef, PDFDict);
      for (const [key, value] of Object.entries(dict)) {
        if (value !== undefined) node.set(PDFName.of(key), object(value));
      }
    },
    catalog(entries) {
      for (const [key, value] of Object.entries(entries)) {
        if (value !== undefined) doc.catalog.set(PDFName.of(key), object(value));
      }
    },
    info(entries) {
      context.trailerInfo.Info = context.register(object(entries));
    },
    save(id) {
      // The library would draw lots for an id of its own.
      context.trailerInfo.ID = context.obj([PDFHexString.of(id), PDFHexString.of(id)]);
      return doc.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
    },
  };
}
