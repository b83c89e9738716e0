/**
 * A plan becomes a PDF file: pages, photos, fonts, links, fields, destinations, bookmarks, structure.
 *
 * The same plan gives the same bytes: dates come from the packet, the file's id from its digest.
 */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { Packet, Pictures } from '../packet/packet.js';
import type { Anchor, Plan } from './box.js';
import { GlyphBook } from './glyph-book.js';
import type { Letters } from './letters.js';
import { thousandths } from './numeral.js';
import type { PaintedLink, PaintedPage } from './paint.js';
import { paintPage } from './paint.js';
import type { PdfDict, PdfStore, PdfValue, Ref } from './pdf-store.js';
import { openStore } from './pdf-store.js';
import { attach, outputIntents, pdfDate, writeMetadata } from './write-archival.js';
import { writeFonts } from './write-fonts.js';
import { acroForm, writeFields } from './write-form.js';
import { writeOutline } from './write-outline.js';
import { StructureTree } from './write-structure.js';

/** Language of all texts a packet holds. */
const LANGUAGE = 'en-US';

/** Photos by file: two ids of one picture are one image in the file. */
async function writePhotos(
  store: PdfStore,
  pictures: Pictures,
  photos: readonly string[],
): Promise<Map<string, Ref>> {
  const byFile = new Map<string, Ref>();
  const refs = new Map<string, Ref>();
  for (const photo of photos) {
    const picture = pictures.get(photo);
    if (picture === undefined) continue;
    let ref = byFile.get(picture.print.file);
    if (ref === undefined) {
      ref = await store.jpeg(await readFile(picture.print.file));
      byFile.set(picture.print.file, ref);
    }
    refs.set(photo, ref);
  }
  return refs;
}

function writeLinks(
  store: PdfStore,
  tree: StructureTree,
  page: Ref,
  links: readonly PaintedLink[],
  known: ReadonlySet<string>,
): Ref[] {
  return links
    .filter((link) => known.has(link.to))
    .map((link) => {
      const ref = store.next();
      const parent = link.tags.length === 0 ? undefined : tree.addAnnotation(page, ref, link.tags);
      store.put(ref, {
        Type: 'Annot',
        Subtype: 'Link',
        Rect: link.rect.map(thousandths),
        Border: [0, 0, 0],
        // Printed with the page.
        F: 4,
        Dest: store.ascii(link.to),
        Contents: store.words(link.text),
        StructParent: parent,
      });
      return ref;
    });
}

/** Named destinations, sorted as a name tree must be. */
function destinations(
  store: PdfStore,
  anchors: readonly Anchor[],
  pages: readonly Ref[],
  plan: Plan,
): PdfDict {
  const first = new Map<string, Anchor>();
  for (const anchor of anchors) if (!first.has(anchor.id)) first.set(anchor.id, anchor);
  const sorted = [...first.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const names = sorted.flatMap((anchor): PdfValue[] => {
    const page = pages[anchor.page - 1];
    if (page === undefined) return [];
    // A little above, so that the reader sees where the thing begins.
    const top = Math.round((plan.paper.heightPt - anchor.y + 8) * 100) / 100;
    return [store.ascii(anchor.id), [page, 'XYZ', 0, top, 0]];
  });
  return { Names: names };
}

/** Digest of what makes this file differ from every other, as 32 hex digits. */
function fileId(packet: Packet, plan: Plan): string {
  const { house, edition, digest, asOf } = packet;
  const words = [house.folder, edition.name, digest, asOf, plan.paper.name].join('\n');
  return createHash('sha256').update(words).digest('hex').slice(0, 32).toUpperCase();
}

/** Paints all pages; `keys` names each photo in the pages' resources, in order of first use. */
function paintAll(
  plan: Plan,
  pictures: Pictures,
  book: GlyphBook,
  letters: Letters,
): { readonly painted: readonly PaintedPage[]; readonly keys: ReadonlyMap<string, string> } {
  const keys = new Map<string, string>();
  const keyOf = (photo: string): string => {
    const key = keys.get(photo) ?? `P${keys.size + 1}`;
    keys.set(photo, key);
    return key;
  };
  const painted = plan.pages.map((page) =>
    paintPage(page, plan.paper.heightPt, book, letters, pictures, keyOf),
  );
  return { painted, keys };
}

/** Writes a planned packet. Fails with the file system's error if a photo's file is not there. */
export async function writePdf(
  plan: Plan,
  packet: Packet,
  pictures: Pictures,
  letters: Letters,
): Promise<Uint8Array> {
  const store = await openStore();
  const book = new GlyphBook();
  const { painted, keys } = paintAll(plan, pictures, book, letters);
  const photos = await writePhotos(store, pictures, [...keys.keys()]);
  const withFields = painted.some((page) => page.fields.length > 0);
  const written = writeFonts(store, letters.faces, book, withFields);
  const fonts = store.add(written.pages);
  const known = new Set(plan.anchors.map((anchor) => anchor.id));
  const tree = new StructureTree(store);
  const pages = painted.map((page) =>
    store.page(plan.paper.widthPt, plan.paper.heightPt, {
      Contents: store.stream(page.operators),
      Tabs: 'S',
      Resources: {
        Font: fonts,
        XObject: Object.fromEntries(page.photos.map((photo) => [keys.get(photo) ?? '', photos.get(photo)])),
      },
    }),
  );
  const fields: Ref[] = [];
  painted.forEach((page, i) => {
    const ref = pages[i];
    if (ref === undefined) return;
    const structParents = tree.addPage(ref, page.marked);
    const links = writeLinks(store, tree, ref, page.links, known);
    const onPage =
      written.typed === undefined ? [] : writeFields(store, tree, ref, page.fields, written.typed);
    fields.push(...onPage);
    const annotations = [...links, ...onPage];
    store.amend(ref, {
      StructParents: structParents,
      Annots: annotations.length === 0 ? undefined : annotations,
    });
  });
  // The same words twice: PDF/A asks that its two kinds of metadata agree.
  const words = {
    title: `${packet.house.name}, ${packet.edition.title}`,
    subject: packet.house.place,
    creator: 'sillplate',
  };
  const attached = attach(
    store,
    packet.exports.filter((one) => 'text' in one),
    packet.asOf,
  );
  store.catalog({
    Lang: store.ascii(LANGUAGE),
    ViewerPreferences: { DisplayDocTitle: true },
    PageMode: 'UseOutlines',
    Outlines: writeOutline(store, plan.outline),
    Names: {
      Dests: store.add(destinations(store, plan.anchors, pages, plan)),
      EmbeddedFiles: attached === undefined ? undefined : store.add(attached.names),
    },
    AF: attached?.files,
    AcroForm: written.typed === undefined ? undefined : acroForm(store, fields, written.typed),
    MarkInfo: { Marked: true },
    StructTreeRoot: tree.finish(),
    Metadata: writeMetadata(store, { ...words, language: LANGUAGE, day: packet.asOf }),
    OutputIntents: outputIntents(store),
  });
  const date = store.ascii(pdfDate(packet.asOf));
  store.info({
    Title: store.words(words.title),
    Subject: store.words(words.subject),
    Creator: store.words(words.creator),
    CreationDate: date,
    ModDate: date,
  });
  return store.save(fileId(packet, plan));
}
