/**
 * Where every id of a packet lies in its pages, and so what a link to it must say.
 *
 * All links are relative and name the file, so that they work from a disk, a stick or any folder of a host.
 */
import type { Block, Packet, Section } from '../packet/packet.js';

const FILE_NAME = /^[a-z0-9-]+$/;

/** Answers with the `href` for an id, or with the page for a section. */
export interface LinkBook {
  /** Throws on an id that the packet hasn't: a link to nowhere is our bug, never the writer's. */
  hrefOf(id: string): string;
  /** File of the page that shows this section, for example `what-was-done.html`. */
  pageOf(section: Section): string;
}

/** The blocks that the pages show: all but those meant for paper alone. */
export function shownBlocks(section: Section): readonly Block[] {
  return section.blocks.filter((block) => block.only !== 'print');
}

/** Finds a place for every id. Throws when a section's id can't be a file name. */
export function linkBookOf(packet: Packet): LinkBook {
  const pages = new Map<string, string>();
  const places = new Map<string, string>();
  packet.sections.forEach((section, index) => {
    const page = pageName(packet, section, index);
    pages.set(section.id, page);
    places.set(section.id, hrefTo(page, section.id));
    const shown = new Set(shownBlocks(section));
    for (const block of section.blocks) {
      // A block on paper only has no anchor here; the nearest thing that has one is its section.
      for (const id of idsOf(block)) places.set(id, hrefTo(page, shown.has(block) ? id : section.id));
    }
  });
  return {
    hrefOf(id) {
      const href = places.get(id);
      if (href === undefined) throw new Error(`a link leads to "${id}", which this packet does not hold`);
      return href;
    },
    pageOf(section) {
      const page = pages.get(section.id);
      if (page === undefined) throw new Error(`section "${section.id}" is not in this packet`);
      return page;
    },
  };
}

function pageName(packet: Packet, section: Section, index: number): string {
  if (packet.arrangement !== 'page-per-section' || index === 0) return 'index.html';
  if (!FILE_NAME.test(section.id) || section.id === 'index') {
    throw new Error(`section id "${section.id}" can't name a page`);
  }
  return `${section.id}.html`;
}

function hrefTo(page: string, id: string): string {
  return `${page}#${encodeURIComponent(id)}`;
}

/**
 * A path beside the pages as a relative address: each part may hold any character a file name can, also a colon that
 * would pass for a scheme. Throws on a path that leaves the edition's folder, which is our bug.
 */
export function encodedPath(path: string): string {
  const address = path.split('/').map(encodeURIComponent).join('/');
  if (/^\/|(^|\/)\.\.?(\/|$)/u.test(address)) throw new Error(`"${path}" is no path beside the pages`);
  return address;
}

/** Ids inside one block, its own first. */
function idsOf(block: Block): string[] {
  switch (block.kind) {
    case 'table':
      return [block.id, ...block.rows.map((row) => row.id)];
    case 'list':
      return [block.id, ...block.items.map((item) => item.id)];
    case 'record':
      return [block.id, ...block.entries.map((entry) => entry.id)];
    case 'photos':
      return [block.id, ...block.photos.map((photo) => photo.id)];
    default:
      return [block.id];
  }
}
