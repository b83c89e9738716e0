/**
 * A PDF read back: its data, its paper, and what each of its sheets paints.
 *
 * For holding a packet that went out against what its house folder makes. The file may come from anybody, so nothing
 * in it is trusted: it is unpacked only so far, and what can't be read is no packet.
 */
import { createHash, type Hash } from 'node:crypto';
import { inflateSync } from 'node:zlib';
import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  type PDFPageLeaf,
  PDFRawStream,
  PDFRef,
  PDFString,
} from 'pdf-lib';

export interface PdfContents {
  /** The text of an attached file; undefined if there is none of that name. */
  readonly attachedText: (name: string) => string | undefined;
  readonly paper: { readonly widthPt: number; readonly heightPt: number };
  /** One digest a sheet, of all that is painted on it: the same in another file means that it looks the same. */
  readonly sheets: readonly string[];
  /** Sheets, counted from 1, over which something was laid that is neither a link nor a line to be filled in. */
  readonly laidOver: readonly number[];
}

/** No stream of a packet unpacks to more bytes. */
const MOST_UNPACKED = 64 * 1024 * 1024;

/** The contents of a PDF; undefined where it is none, is locked, damaged, or unpacks without end. */
export async function readPdf(bytes: Uint8Array): Promise<PdfContents | undefined> {
  if (swells(bytes)) return undefined;
  try {
    const doc = await PDFDocument.load(bytes, { updateMetadata: false, throwOnInvalidObject: true });
    const pages = doc.getPages();
    const [first] = pages;
    if (first === undefined) return undefined;
    const painted = new PaintedDigest(doc);
    const files = attachments(doc);
    return {
      attachedText: (name) => files.get(name),
      paper: { widthPt: first.getWidth(), heightPt: first.getHeight() },
      sheets: pages.map(({ node }) => painted.ofPage(node)),
      laidOver: pages.flatMap(({ node }, i) => (isLaidOver(node) ? [i + 1] : [])),
    };
  } catch {
    // Whatever the library stumbled over, the answer is the same.
    return undefined;
  }
}

/** Whether some stream grows beyond measure when it is unpacked: the library would unpack it without asking. */
function swells(bytes: Uint8Array): boolean {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = buffer.indexOf('stream'); at >= 0; at = buffer.indexOf('stream', at + 6)) {
    let begin = at + 6;
    if (buffer[begin] === 0x0d) begin++;
    if (buffer[begin] === 0x0a) begin++;
    // Deflate's own mark (RFC 1950, 2.2): anything else is no packed stream.
    if ((buffer[begin] ?? 0) % 16 !== 8) continue;
    try {
      inflateSync(buffer.subarray(begin), { maxOutputLength: MOST_UNPACKED });
    } catch (thrown) {
      if ((thrown as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') return true;
    }
  }
  return false;
}

function attachments(doc: PDFDocument): ReadonlyMap<string, string> {
  const names = doc.catalog.lookupMaybe(PDFName.of('Names'), PDFDict);
  const list = names
    ?.lookupMaybe(PDFName.of('EmbeddedFiles'), PDFDict)
    ?.lookupMaybe(PDFName.of('Names'), PDFArray);
  const files = new Map<string, string>();
  for (let i = 0; list !== undefined && i + 1 < list.size(); i += 2) {
    const name = list.lookup(i);
    const file = list
      .lookup(i + 1, PDFDict)
      .lookupMaybe(PDFName.of('EF'), PDFDict)
      ?.lookup(PDFName.of('F'));
    if (!(name instanceof PDFString || name instanceof PDFHexString) || !(file instanceof PDFRawStream))
      continue;
    files.set(name.decodeText(), new TextDecoder().decode(unpacked(file)));
  }
  return files;
}

/** What a stream holds; as it lies there if it is packed in another way than packets are. */
function unpacked(stream: PDFRawStream): Uint8Array {
  const filter = stream.dict.lookup(PDFName.of('Filter'));
  const only = filter instanceof PDFArray && filter.size() === 1 ? filter.lookup(0) : filter;
  return only === PDFName.of('FlateDecode') && !stream.dict.has(PDFName.of('DecodeParms'))
    ? inflateSync(stream.contents, { maxOutputLength: MOST_UNPACKED })
    : stream.contents;
}

/** Lines to be filled in are empty in what the folder makes and may be full in what came back. */
function isLaidOver(page: PDFDict): boolean {
  const list = page.lookupMaybe(PDFName.of('Annots'), PDFArray);
  for (let i = 0; list !== undefined && i < list.size(); i++) {
    const kind = list.lookup(i, PDFDict).lookup(PDFName.of('Subtype'));
    if (kind !== PDFName.of('Link') && kind !== PDFName.of('Widget')) return true;
  }
  return false;
}

/** How streams are packed and what else hangs on a thing: nothing of it is painted. */
const UNPAINTED = new Set(
  ['Parent', 'StructParents', 'StructParent', 'Metadata', 'Length', 'Filter'].map((name) => PDFName.of(name)),
);

/** What of a page's own words changes how it looks. */
const FRAMES = ['MediaBox', 'CropBox', 'Rotate', 'UserUnit'] as const;

const byName = ([a]: readonly [PDFName, unknown], [b]: readonly [PDFName, unknown]): number =>
  a.asString() < b.asString() ? -1 : 1;

/** A page's operators: one stream, or several that count as one (ISO 32000-1, 7.7.3.3). */
function contentOf(page: PDFPageLeaf, doc: PDFDocument): Uint8Array {
  const contents = page.Contents();
  const streams = contents instanceof PDFArray ? contents.asArray() : [contents];
  const parts = streams.flatMap((stream) => {
    const found = stream instanceof PDFRef ? doc.context.lookup(stream) : stream;
    return found instanceof PDFRawStream ? [Buffer.from(unpacked(found))] : [];
  });
  // Libraries bracket what was there before they lay something over it, by streams of one operator.
  return Buffer.concat(parts.filter((part) => !BRACKET.test(part.toString('latin1'))));
}

const BRACKET = /^\s*[qQ]\s*$/u;

/** Digests of pages with everything they paint with, whatever the objects' numbers and however they are packed. */
class PaintedDigest {
  readonly #doc: PDFDocument;
  readonly #known = new Map<PDFRef, string>();

  constructor(doc: PDFDocument) {
    this.#doc = doc;
  }

  /** Of what a page's operators paint, with those of its resources that they name: pages share the rest. */
  ofPage(page: PDFPageLeaf): string {
    const hash = createHash('sha256');
    const painted = contentOf(page, this.#doc);
    hash.update(painted);
    for (const frame of FRAMES) this.#add(hash, page.lookup(PDFName.of(frame)));
    const used = new Set(
      Buffer.from(painted)
        .toString('latin1')
        .match(/\/[^\s/<>[\](){}%]+/gu),
    );
    for (const kind of ['Font', 'XObject', 'ExtGState', 'ColorSpace', 'Pattern', 'Shading', 'Properties']) {
      const named = page.Resources()?.lookupMaybe(PDFName.of(kind), PDFDict)?.entries() ?? [];
      for (const [name, value] of named.sort(byName)) {
        if (!used.has(name.asString())) continue;
        hash.update(name.asString());
        this.#add(hash, value);
      }
    }
    return hash.digest('hex');
  }

  #of(object: PDFObject | undefined): string {
    const hash = createHash('sha256');
    this.#add(hash, object);
    return hash.digest('hex');
  }

  #add(hash: Hash, object: PDFObject | undefined): void {
    if (object instanceof PDFRef) hash.update(this.#ofRef(object));
    else if (object instanceof PDFRawStream) {
      this.#add(hash, object.dict);
      hash.update('stream').update(unpacked(object));
    } else if (object instanceof PDFDict) {
      const entries = object.entries().filter(([key]) => !UNPAINTED.has(key));
      hash.update('<<');
      for (const [key, value] of entries.sort(byName)) {
        hash.update(key.asString());
        this.#add(hash, value);
      }
      hash.update('>>');
    } else if (object instanceof PDFArray) {
      hash.update('[');
      for (const value of object.asArray()) this.#add(hash, value);
      hash.update(']');
    } else if (object instanceof PDFNumber) hash.update(` ${object.asNumber()}`);
    else if (object instanceof PDFString || object instanceof PDFHexString)
      hash.update('(').update(object.asBytes()).update(')');
    else hash.update(` ${object?.toString() ?? 'null'}`);
  }

  #ofRef(ref: PDFRef): string {
    const known = this.#known.get(ref);
    if (known !== undefined) return known;
    // An object that leads back to itself is met again as this.
    this.#known.set(ref, 'itself');
    const digest = this.#of(this.#doc.context.lookup(ref));
    this.#known.set(ref, digest);
    return digest;
  }
}
