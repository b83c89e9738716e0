/**
 * Fields of a form in the file (ISO 32000-1, 12.7): one text field for each box, empty, in the order they are read.
 *
 * PDF/A-3 (ISO 19005-3, 6.4.1) asks that every field brings what it looks like and that no program draws it anew
 * unasked; PDF/UA-1 (ISO 14289-1, 7.18) that it is the one thing in a `Form` element and has words for who can't see it.
 */
import { INKS } from './inks.js';
import { numeral, thousandths } from './numeral.js';
import type { PaintedField } from './paint.js';
import type { PdfStore, Ref } from './pdf-store.js';
import type { StructureTree } from './write-structure.js';

/** Resource name of the font that fields are filled in with. */
const FONT_KEY = 'Typed';

/** How a program that fills a field in should write: font, size, ink. */
const defaultLook = (sizePt: number): string =>
  `/${FONT_KEY} ${numeral(sizePt)} Tf ${INKS.ink.map(numeral).join(' ')} rg`;

/** The fields of one page. `font` is a simple font, whose codes other programs know. */
export function writeFields(
  store: PdfStore,
  tree: StructureTree,
  page: Ref,
  fields: readonly PaintedField[],
  font: Ref,
): Ref[] {
  return fields.map(({ field, rect }) => {
    const ref = store.next();
    const empty = store.stream('/Tx BMC\nEMC\n', {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [0, 0, thousandths(field.width), thousandths(field.height)],
      Resources: { Font: { [FONT_KEY]: font } },
    });
    store.put(ref, {
      Type: 'Annot',
      Subtype: 'Widget',
      FT: 'Tx',
      T: store.words(field.name),
      TU: store.words(`${field.label}: ${field.hint}`),
      DA: store.ascii(defaultLook(field.sizePt)),
      Rect: rect.map(thousandths),
      // Printed with the page.
      F: 4,
      P: page,
      AP: { N: empty },
      StructParent: tree.addAnnotation(page, ref, field.tags),
    });
    return ref;
  });
}

/** The catalog's entry for all fields of the document. */
export function acroForm(store: PdfStore, fields: readonly Ref[], font: Ref): Ref {
  return store.add({
    Fields: fields,
    DR: { Font: { [FONT_KEY]: font } },
    DA: store.ascii(defaultLook(0)),
  });
}
