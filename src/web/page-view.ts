/**
 * Cuts a packet into pages and gives each everything its template prints.
 *
 * Takes a packet, its pictures and what is known of the paper edition; gives views with every field present.
 * Never chooses, words or rounds a fact: the only words of its own are the furniture (`WORDS`).
 */
import type { Block, Packet, Pictures, Section } from '../packet/packet.js';
import { type BlockView, BlockViews, NOTHING_RECORDED } from './block-view.js';
import { type LinkBook, linkBookOf, shownBlocks } from './links.js';
import { FRAMES_PATH } from './photo-frames.js';
import { PAIR_SCRIPT_PATH, PhotoDesk } from './photo-view.js';
import { hasSearch, SEARCH_SCRIPT_PATH } from './search-data.js';

/** The paper edition that lies beside the pages. */
export interface Paper {
  /** File name inside the edition's folder. */
  readonly file: string;
  readonly pages: number;
}

/** Furniture: words that stand around the packet's own. */
const WORDS = {
  skip: 'Skip to the text',
  contents: 'Contents',
  sections: 'Sections',
  within: 'Within',
  howKnown: 'How it is known',
  asOf: 'Facts as of',
  digest: 'Digest',
  onPaper: 'On paper',
  files: 'Beside these pages',
  previous: 'Previous',
  next: 'Next',
  turn: 'Previous and next section',
  before: 'Before',
  after: 'After',
} as const;

/** Letters from which on a house's name is set smaller. */
const LONG_NAME = 28;
/** Key facts beside each other. */
const MOST_COLUMNS = 4;
/** From this many headings on a section begins with links to them. */
const JUMPS_FROM = 6;

interface SectionView {
  readonly id: string;
  readonly title: string;
  /** 1 where the section is the page, 2 below a title block. */
  readonly level: 1 | 2;
  /** Whether the margin begins to speak beside the title, and so needs its heading there. */
  readonly marked: boolean;
  /** Links to the section's own headings; empty where it has few. */
  readonly jumps: readonly LinkView[];
  readonly blocks: readonly BlockView[];
  /** Said where there are no blocks, or empty. */
  readonly nothing: string;
}

interface LinkView {
  readonly href: string;
  readonly title: string;
}

export interface PageView {
  /** File name inside the edition's folder. */
  readonly file: string;
  /** For `<title>`. */
  readonly title: string;
  /** The edition's name: a class for the style sheet. */
  readonly edition: string;
  /** Address of the style sheet that the page's photos need, or empty. */
  readonly frames: string;
  /** Address of the script that lays a pair's photos over each other, or empty. */
  readonly script: string;
  /** Address of the script that makes the search box, or empty. */
  readonly search: string;
  /** Whether this is the page with the title block. */
  readonly front: boolean;
  readonly house: string;
  /** Class that sets a long name smaller, or empty. */
  readonly houseSize: string;
  readonly place: string;
  /** The edition's title. */
  readonly kind: string;
  readonly reader: string;
  readonly facts: readonly { readonly id: string; readonly label: string; readonly value: string }[];
  /** Class for how many key facts stand in a row. */
  readonly factColumns: string;
  readonly asOf: string;
  readonly asOfText: string;
  readonly digest: string;
  readonly paper: LinkView | null;
  readonly files: readonly LinkView[];
  /** The sections; empty where there is only one. */
  readonly contents: readonly (LinkView & { readonly current: boolean })[];
  /** `3 of 10`; empty on the front page. */
  readonly position: string;
  readonly sections: readonly SectionView[];
  readonly previous: LinkView | null;
  readonly next: LinkView | null;
  readonly standing: string;
  readonly words: typeof WORDS;
}

/** All pages of a packet, the front page first. Throws on links to nowhere and on photos not made ready. */
export function pagesOf(packet: Packet, pictures: Pictures, paper: Paper | undefined): PageView[] {
  const links = linkBookOf(packet);
  const groups: (readonly Section[])[] =
    packet.arrangement === 'page-per-section'
      ? packet.sections.map((section) => [section])
      : [packet.sections];
  if (groups.length === 0) groups.push([]);
  return groups.map((sections, index) => {
    const front = index === 0;
    const photos = new PhotoDesk(packet, pictures);
    const views = sections.map((section) => sectionView(section, front ? 2 : 1, links, photos));
    const hasPair = views.some((section) => section.blocks.some((block) => block.kind === 'pair'));
    return {
      ...frameOf(packet, paper),
      frames: photos.isUsed ? FRAMES_PATH : '',
      script: hasPair ? PAIR_SCRIPT_PATH : '',
      search: hasSearch(packet) ? SEARCH_SCRIPT_PATH : '',
      file: front ? 'index.html' : links.pageOf(onlyOne(sections)),
      title: titleOf(packet, front ? undefined : sections[0]),
      front,
      contents: contentsOf(packet, links, index),
      position: front ? '' : `${index + 1} of ${groups.length}`,
      sections: views,
      previous: neighbour(packet, links, index - 1),
      next: neighbour(packet, links, index + 1),
    };
  });
}

/** What is the same on every page. */
function frameOf(packet: Packet, paper: Paper | undefined) {
  const printed =
    paper === undefined ? null : { href: encodeURI(paper.file), title: `PDF, ${pagesText(paper.pages)}` };
  return {
    edition: packet.edition.name,
    house: packet.house.name,
    houseSize: packet.house.name.length > LONG_NAME ? 'long-name' : '',
    place: packet.house.place,
    kind: packet.edition.title,
    reader: packet.edition.reader,
    facts: packet.keyFacts.map(({ id, label, value }) => ({ id, label, value })),
    factColumns: `facts-${evenColumns(packet.keyFacts.length)}`,
    asOf: packet.asOf,
    asOfText: packet.asOfText,
    digest: packet.digest,
    paper: printed,
    files: packet.exports.map((file) => ({ href: encodeURI(file.file), title: file.title })),
    standing: packet.standing,
    words: WORDS,
  };
}

/** At most four in a row, and rows as even as they come: six are three and three, not four and two. */
function evenColumns(count: number): number {
  return Math.ceil(count / Math.max(1, Math.ceil(count / MOST_COLUMNS)));
}

function pagesText(pages: number): string {
  return pages === 1 ? '1 page' : `${pages} pages`;
}

function titleOf(packet: Packet, section: Section | undefined): string {
  const whole = `${packet.house.name} · ${packet.edition.title}`;
  return section === undefined ? whole : `${section.title} · ${whole}`;
}

function contentsOf(packet: Packet, links: LinkBook, current: number): PageView['contents'] {
  // One section needs no list of sections.
  if (packet.sections.length < 2) return [];
  return packet.sections.map((section, index) => ({
    href: links.hrefOf(section.id),
    title: section.title,
    current: packet.arrangement === 'page-per-section' && index === current,
  }));
}

function neighbour(packet: Packet, links: LinkBook, index: number): LinkView | null {
  const section = packet.arrangement === 'page-per-section' ? packet.sections[index] : undefined;
  // The file alone, without an anchor: turning a page should land at its top.
  return section === undefined ? null : { href: links.pageOf(section), title: section.title };
}

function sectionView(section: Section, level: 1 | 2, links: LinkBook, photos: PhotoDesk): SectionView {
  const views = new BlockViews(links, photos, level);
  const shown = shownBlocks(section);
  return {
    id: section.id,
    title: section.title,
    level,
    marked: marginBegins(shown),
    jumps: jumpsOf(shown, links),
    blocks: shown.map((block) => views.view(block)),
    nothing: shown.length === 0 ? NOTHING_RECORDED : '',
  };
}

function jumpsOf(shown: readonly Block[], links: LinkBook): readonly LinkView[] {
  const headings = shown.flatMap((block) => (block.kind === 'heading' && block.level === 3 ? [block] : []));
  if (headings.length < JUMPS_FROM) return [];
  return headings.map((heading) => ({ href: links.hrefOf(heading.id), title: heading.text }));
}

/** Below a drawing, a notice or a table the heading would stand far from the first mark and beside nothing. */
function marginBegins(shown: readonly Block[]): boolean {
  const first = shown.find((block) => block.kind !== 'heading' && block.kind !== 'paragraph');
  return first !== undefined && hasMark(first);
}

/** Tables head their marks themselves. */
function hasMark(block: Block): boolean {
  switch (block.kind) {
    case 'statement':
    case 'question':
      return true;
    case 'record':
      return block.mark !== undefined;
    case 'list':
      return block.items.some((item) => item.mark !== undefined);
    default:
      return false;
  }
}

function onlyOne(sections: readonly Section[]): Section {
  const [section] = sections;
  if (section === undefined) throw new Error('a page without a section');
  return section;
}
