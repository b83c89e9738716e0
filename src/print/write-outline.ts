/** Bookmarks: a linked tree (ISO 32000-1, 12.3.3), sections open and their headings closed. */
import type { OutlineEntry } from './box.js';
import type { PdfStore, Ref } from './pdf-store.js';

function writeLevel(
  store: PdfStore,
  entries: readonly OutlineEntry[],
  parent: Ref,
): { readonly first: Ref; readonly last: Ref } | undefined {
  const refs = entries.map(() => store.next());
  entries.forEach((entry, i) => {
    const ref = refs[i];
    if (ref === undefined) return;
    const below = writeLevel(store, entry.children, ref);
    store.put(ref, {
      Title: store.words(entry.title),
      Parent: parent,
      Dest: store.ascii(entry.to),
      Prev: refs[i - 1],
      Next: refs[i + 1],
      First: below?.first,
      Last: below?.last,
      // Negative: closed, with so many entries inside.
      Count: below === undefined ? undefined : -entry.children.length,
    });
  });
  const first = refs[0];
  const last = refs.at(-1);
  return first === undefined || last === undefined ? undefined : { first, last };
}

/** Writes the outline; undefined where there is nothing to list. */
export function writeOutline(store: PdfStore, entries: readonly OutlineEntry[]): Ref | undefined {
  if (entries.length === 0) return undefined;
  const root = store.next();
  const ends = writeLevel(store, entries, root);
  store.put(root, { Type: 'Outlines', First: ends?.first, Last: ends?.last, Count: entries.length });
  return root;
}
