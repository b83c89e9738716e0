/**
 * The structure tree: which marked stretch is which heading, paragraph, cell, figure or link.
 *
 * Elements grow from the boxes' tag paths: the same path on two pages is one element that spans them.
 */
import type { TagPath } from './box.js';
import type { PdfDict, PdfStore, PdfValue, Ref } from './pdf-store.js';

interface Element {
  readonly ref: Ref;
  readonly tag: TagPath[number];
  readonly parent: Ref;
  readonly kids: PdfValue[];
  /** Kids that are read after all others. */
  readonly last: PdfValue[];
}

export class StructureTree {
  private readonly store: PdfStore;
  private readonly root: Ref;
  private readonly document: Element;
  private readonly elements = new Map<string, Element>();
  private readonly parents: { readonly key: number; readonly value: PdfValue }[] = [];
  private nextKey = 0;

  constructor(store: PdfStore) {
    this.store = store;
    this.root = store.next();
    this.document = {
      ref: store.next(),
      tag: { type: 'Document', key: '' },
      parent: this.root,
      kids: [],
      last: [],
    };
  }

  /** The element at the end of a path; it and those above it are made on first sight. */
  elementAt(path: TagPath): { readonly ref: Ref } {
    let parent = this.document;
    let key = '';
    for (const tag of path) {
      key += `\n${tag.key}`;
      let element = this.elements.get(key);
      if (element === undefined) {
        element = { ref: this.store.next(), tag, parent: parent.ref, kids: [], last: [] };
        this.elements.set(key, element);
        (tag.last === true ? parent.last : parent.kids).push(element.ref);
      }
      parent = element;
    }
    return parent;
  }

  /** Takes in a page's marked stretches; gives the page's `StructParents`. */
  addPage(page: Ref, marked: readonly TagPath[]): number {
    const owners = marked.map((path, mcid) => {
      const element = this.elementAt(path) as Element;
      element.kids.push({ Type: 'MCR', Pg: page, MCID: mcid });
      return element.ref;
    });
    const key = this.nextKey++;
    this.parents.push({ key, value: this.store.add(owners) });
    return key;
  }

  /** Takes in the annotation of a link or a field; gives its `StructParent`. */
  addAnnotation(page: Ref, annotation: Ref, path: TagPath): number {
    const element = this.elementAt(path) as Element;
    element.kids.push({ Type: 'OBJR', Pg: page, Obj: annotation });
    const key = this.nextKey++;
    this.parents.push({ key, value: element.ref });
    return key;
  }

  private attributesOf({ scope, inInk }: TagPath[number]): PdfDict | undefined {
    if (scope !== undefined) return { O: 'Table', Scope: scope };
    // A text field that is none in the file.
    if (inInk !== undefined) return { O: 'PrintField', Role: 'tv', Desc: this.store.words(inInk) };
    return undefined;
  }

  /** Writes all elements; gives the tree's root for the catalog. */
  finish(): Ref {
    for (const element of [this.document, ...this.elements.values()]) {
      const { tag } = element;
      this.store.put(element.ref, {
        Type: 'StructElem',
        S: tag.type,
        P: element.parent,
        K: [...element.kids, ...element.last],
        Alt: tag.alt === undefined ? undefined : this.store.words(tag.alt),
        A: this.attributesOf(tag),
      });
    }
    const nums = this.parents.flatMap(({ key, value }) => [key, value]);
    this.store.put(this.root, {
      Type: 'StructTreeRoot',
      K: this.document.ref,
      ParentTree: this.store.add({ Nums: nums }),
      ParentTreeNextKey: this.nextKey,
    });
    return this.root;
  }
}
