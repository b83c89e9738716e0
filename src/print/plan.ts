/**
 * A packet becomes a plan: pages of placed boxes.
 *
 * Takes a packet, its pictures, a paper size and letters; gives plain data. Decides where things stand, never what
 * is said. Start reading at `planPages`; each kind of block has its own `set-….ts`.
 */
import type { Block, Packet, Pictures } from '../packet/packet.js';
import { anchorsOf, printedBlocks } from '../packet/words-of.js';
import type { Anchor, OutlineEntry, Plan, PlannedPage, TagPath } from './box.js';
import type { Composer } from './composer.js';
import { setFurniture } from './furniture.js';
import type { Letters } from './letters.js';
import { breakWholeParagraph } from './lines.js';
import type { FilledPage, Pagination } from './paginate.js';
import { keepHeadings, paginate } from './paginate.js';
import type { PaperName } from './paper.js';
import { paperOf } from './paper.js';
import { isBeside, pairDrawings, setBeside } from './set-beside.js';
import { setContact } from './set-contact.js';
import { setDrawing, setPair, setPhoto, setPhotos } from './set-figure.js';
import { setForm } from './set-form.js';
import { setContents, setStandingLast, setTitle } from './set-front.js';
import { setNotice } from './set-notice.js';
import {
  setHeading,
  setLinesApart,
  setList,
  setQuestion,
  setSectionTitle,
  setStatement,
} from './set-prose.js';
import { setRecord } from './set-record.js';
import { fillSides } from './set-sides.js';
import { setTable } from './set-table.js';
import type { Slab } from './slab.js';
import { moved, slab } from './slab.js';
import { spacesOf } from './spaces.js';
import { styleSheet } from './type-styles.js';

function setBlock(composer: Composer, block: Block, tags: TagPath): Slab[] {
  switch (block.kind) {
    case 'heading':
      return setHeading(composer, block, tags);
    case 'statement':
      return setStatement(composer, block, tags);
    case 'paragraph':
      return setLinesApart(composer, block, tags);
    case 'list':
      return setList(composer, block, tags);
    case 'table':
      return setTable(composer, block, tags);
    case 'record':
      return setRecord(composer, block, tags);
    case 'photo':
      return setPhoto(composer, block, tags);
    case 'pair':
      return setPair(composer, block, tags);
    case 'photos':
      return block.form === 'contact' ? setContact(composer, block, tags) : setPhotos(composer, block, tags);
    case 'drawing':
      return setDrawing(composer, block, tags);
    case 'notice':
      return setNotice(composer, block, tags);
    case 'question':
      return setQuestion(composer, block, tags);
    case 'form':
      return setForm(composer, block, tags);
  }
}

function outlineOf(packet: Packet): OutlineEntry[] {
  return packet.sections.map((section) => {
    const children: { title: string; to: string; children: OutlineEntry[] }[] = [];
    for (const block of printedBlocks(section)) {
      if (block.kind !== 'heading') continue;
      const entry = { title: block.text, to: block.id, children: [] };
      const parent = block.level === 4 ? children.at(-1) : undefined;
      (parent?.children ?? children).push(entry);
    }
    return { title: section.title, to: section.id, children };
  });
}

/** A block that shows nothing (a list without items) is still a place that links lead to. */
function setPlace(composer: Composer, block: Block, tags: TagPath): Slab[] {
  const slabs = setBlock(composer, block, tags);
  return slabs.length > 0 ? slabs : [slab(0, [], { anchors: [block.id] })];
}

function setBody(composer: Composer, packet: Packet): Slab[] {
  const slabs = packet.sections.flatMap((section) => {
    const tags: TagPath = [{ type: 'Sect', key: section.id }];
    return [
      setSectionTitle(composer, section, tags),
      ...pairDrawings(composer, printedBlocks(section)).flatMap((each) =>
        isBeside(each)
          ? setBeside(composer, each, tags, (inner, block) => setPlace(inner, block, tags))
          : setPlace(composer, each, tags),
      ),
    ];
  });
  // The last words never stand alone on a page.
  const last = slabs.at(-1);
  if (last !== undefined) slabs[slabs.length - 1] = { ...last, keepNext: true };
  return keepHeadings([...slabs, ...setStandingLast(composer, packet)], composer.paper.linePt);
}

/** A last page filled less than this looks forgotten; one of few pages is worth more trouble to save. */
const LEAST_LAST = { airy: 0.2, dense: 0.45 } as const;

/** Slabs with less air between them, and sections that may open with three lines fewer below them. */
function tightened(slabs: readonly Slab[], share: number, linePt: number): Slab[] {
  const closer = (each: Slab): Slab => ({
    ...each,
    beforePt: each.beforePt * share,
    afterPt: each.afterPt * share,
  });
  return slabs.map((each) => ({
    ...closer(each),
    ...(each.smaller === undefined ? {} : { smaller: each.smaller.map(closer) }),
    reachPt: each.opensSection === true ? (each.reachPt ?? 0) - linePt * 3 : each.reachPt,
  }));
}

/** Pages for all slabs; if only a few lines reach the last page, less air may bring them back. */
function paginateWell(slabs: readonly Slab[], composer: Composer): Pagination {
  const { paper } = composer;
  const first = paginate(slabs, paper, 1);
  const last = first.pages.at(-1);
  const limit = paper.topPt + (paper.bottomPt - paper.topPt) * LEAST_LAST[composer.dense ? 'dense' : 'airy'];
  if (first.pages.length < 2 || last === undefined || last.filledToPt > limit) return first;
  for (const share of composer.dense ? [1, 0.85, 0.7, 0.6] : [1, 0.85, 0.7]) {
    const next = paginate(tightened(slabs, share, paper.linePt), paper, 1);
    if (next.pages.length < first.pages.length) return next;
  }
  return first;
}

/** The title, in a packet of many sections the contents, and then the sections at once. */
function fillPages(composer: Composer, packet: Packet): Pagination {
  if (packet.arrangement === 'two-sides') return fillSides(composer, packet, setPlace);
  const title = setTitle(composer, packet);
  if (packet.arrangement !== 'page-per-section') {
    return paginateWell([...title, ...setBody(composer, packet)], composer);
  }
  const contents = (pageOf: (section: string) => number | undefined): Slab =>
    setContents(composer, packet, pageOf);
  const first = contents(() => undefined);
  const body = setBody(composer, packet);
  const filled = paginateWell([...title, first, ...body], composer);
  // Page numbers take no height, so the contents with numbers stand exactly where those without stood.
  const pages = new Map(filled.anchors.map((anchor) => [anchor.id, anchor.page]));
  return withNumbers(
    filled,
    first,
    contents((section) => pages.get(section)),
  );
}

/** Puts one slab's boxes where another's of the same block stood. */
function withNumbers(filled: Pagination, from: Slab, to: Slab): Pagination {
  const block = 'contents';
  const pages = filled.pages.map((page) => {
    const at = page.boxes.findIndex((box) => box.block === block);
    const [old, model] = [page.boxes[at], from.boxes.find((box) => box.block === block)];
    if (old === undefined || model === undefined) return page;
    const [dx, dy] = [old.x - model.x, old.y - model.y];
    const numbered = to.boxes.map((box) => moved(box, dx, dy));
    return { ...page, boxes: page.boxes.toSpliced(at, from.boxes.length, ...numbered) };
  });
  return { ...filled, pages };
}

/** The section that a page's first line belongs to. */
function sectionsByPage(packet: Packet, pages: readonly FilledPage[], anchors: readonly Anchor[]): string[] {
  const starts = packet.sections.flatMap((section) => {
    const anchor = anchors.find((each) => each.id === section.id);
    return anchor === undefined ? [] : [{ title: section.title, page: anchor.page, y: anchor.y }];
  });
  const top = Math.min(...starts.map((start) => start.y));
  return pages.map((page) => {
    const begun = starts.filter(
      (start) => start.page < page.number || (start.page === page.number && start.y <= top),
    );
    return begun.at(-1)?.title ?? '';
  });
}

/** Places everything a packet prints. */
export function planPages(packet: Packet, pictures: Pictures, paperName: PaperName, letters: Letters): Plan {
  const dense = packet.arrangement !== 'page-per-section';
  const paper = paperOf(paperName, dense);
  const alts = new Map(packet.photos.map((photo) => [photo.id, photo.alt]));
  const missing = new Set<string>();
  const targets = anchorsOf({
    ...packet,
    sections: packet.sections.map((section) => ({ ...section, blocks: printedBlocks(section) })),
  });
  const composer: Composer = {
    paper,
    styles: styleSheet(dense),
    setter: {
      letters,
      breakLines: breakWholeParagraph,
      hasTarget: (id) => targets.has(id),
      reportMissing: (character) => missing.add(character),
    },
    pictures,
    altOf: (photo) => {
      const alt = alts.get(photo);
      // A photo's id is its file's name, which is no one's business.
      if (alt === undefined) throw new Error('a block shows a photo that the packet does not list');
      return alt;
    },
    unitPt: paper.linePt / 2,
    dense,
    spaces: spacesOf(dense),
    recordLabels: packet.sections.flatMap((section) =>
      printedBlocks(section).flatMap((block) =>
        block.kind === 'record' ? block.entries.map((entry) => entry.label) : [],
      ),
    ),
    tallestPhotoPt: dense ? 86 : 151,
  };
  const filled = fillPages(composer, packet);
  const sections = sectionsByPage(packet, filled.pages, filled.anchors);
  const pages = filled.pages.map((page, i): PlannedPage => {
    const furniture = setFurniture(composer, packet, {
      number: page.number,
      of: filled.pages.length,
      section: sections[i] ?? '',
    });
    return { number: page.number, boxes: [...page.boxes, ...furniture] };
  });
  return {
    paper,
    pages,
    anchors: filled.anchors,
    outline: outlineOf(packet),
    missing: [...missing],
  };
}
