/**
 * Turns a block into what its template prints: links resolved, headings at their level, photos addressed.
 *
 * Takes blocks, gives views with every field present. Says nothing that the packet doesn't, apart from the
 * few words of furniture in `page-view.ts` and `NOTHING_RECORDED`. Start reading at `BlockViews.view`.
 */
import type {
  Block,
  DrawingBlock,
  ListBlock,
  NoticeBlock,
  PairBlock,
  PhotosBlock,
  QuestionBlock,
  RecordBlock,
  Rich,
  ShownPhoto,
} from '../packet/packet.js';
import { encodedPath, type LinkBook } from './links.js';
import { cutClass } from './photo-frames.js';
import type { PhotoPlace } from './photo-sizes.js';
import type { PhotoDesk, PhotoView, ShownView } from './photo-view.js';
import { type MarkView, markOrNull, markView, type RunView, richView } from './rich-view.js';
import { svgOf } from './svg-of.js';
import { type TableView, tableView } from './table-view.js';

/** Stands where a list, a table or a section is empty. It claims nothing: empty is not the same as none. */
export const NOTHING_RECORDED = 'Nothing recorded.';

export type BlockView =
  | {
      readonly kind: 'heading';
      readonly id: string;
      readonly level: number;
      readonly rank: 3 | 4;
      readonly text: string;
    }
  | {
      readonly kind: 'statement';
      readonly id: string;
      readonly size: string;
      readonly text: readonly RunView[];
      readonly mark: MarkView;
    }
  | {
      readonly kind: 'paragraph';
      readonly id: string;
      readonly size: string;
      readonly text: readonly RunView[];
    }
  | {
      readonly kind: 'list';
      readonly id: string;
      readonly items: readonly {
        readonly id: string;
        readonly text: readonly RunView[];
        readonly mark: MarkView | null;
      }[];
      readonly nothing: string;
    }
  | TableView
  | {
      readonly kind: 'record';
      readonly id: string;
      readonly level: number;
      readonly title: readonly RunView[];
      readonly entries: readonly {
        readonly id: string;
        readonly label: string;
        readonly value: readonly RunView[];
      }[];
      readonly mark: MarkView | null;
    }
  | {
      readonly kind: 'photo';
      readonly id: string;
      readonly photo: PhotoView;
      readonly caption: readonly RunView[];
    }
  | {
      readonly kind: 'pair';
      readonly id: string;
      /** Class of the shape that both are cut to. */
      readonly cut: string;
      readonly before: PhotoView;
      readonly after: PhotoView;
      readonly caption: readonly RunView[];
    }
  | {
      readonly kind: 'photos';
      readonly id: string;
      /** Class of the arrangement: `photos` in rows, `contact` for a sheet of many small ones. */
      readonly form: 'photos' | 'contact';
      readonly photos: readonly ShownView[];
    }
  | {
      readonly kind: 'drawing';
      readonly id: string;
      /** One or two `<svg>` elements, already escaped. */
      readonly svg: string;
      readonly caption: readonly RunView[];
    }
  | {
      readonly kind: 'notice';
      readonly id: string;
      readonly level: number;
      readonly title: string;
      readonly paragraphs: readonly (readonly RunView[])[];
      readonly source: readonly RunView[];
    }
  | {
      readonly kind: 'question';
      readonly id: string;
      readonly level: number;
      readonly ask: string;
      readonly answer: readonly RunView[];
      readonly mark: MarkView;
    };

/** Turns the blocks of one page into views, in order: headings depend on those before them. */
export class BlockViews {
  readonly #links: LinkBook;
  readonly #photos: PhotoDesk;
  /** HTML level of the heading that the next block stands under. */
  #level: number;
  /** HTML level of the section's own title. */
  readonly #sectionLevel: number;

  constructor(links: LinkBook, photos: PhotoDesk, sectionLevel: number) {
    this.#links = links;
    this.#photos = photos;
    this.#level = sectionLevel;
    this.#sectionLevel = sectionLevel;
  }

  /** Throws on a link to an id that the packet hasn't, and on a photo that was not made ready. */
  view(block: Block): BlockView {
    switch (block.kind) {
      case 'heading':
        return {
          kind: 'heading',
          id: block.id,
          level: this.#enter(block.level),
          rank: block.level,
          text: block.text,
        };
      case 'statement':
        return {
          kind: 'statement',
          id: block.id,
          size: block.size,
          text: this.#rich(block.text),
          mark: markView(block.mark, this.#links),
        };
      case 'paragraph':
        return { kind: 'paragraph', id: block.id, size: block.size, text: this.#rich(block.text) };
      case 'list':
        return this.#list(block);
      case 'table':
        return tableView(
          block,
          this.#links,
          NOTHING_RECORDED,
          block.plate === undefined ? null : this.#shown(block.plate, { kind: 'row', alone: true }),
        );
      case 'record':
        return this.#record(block);
      case 'photo':
        return {
          kind: 'photo',
          id: block.id,
          photo: this.#photos.view(block.photo, { kind: 'column' }),
          caption: this.#rich(block.caption),
        };
      case 'pair':
        return this.#pair(block);
      case 'photos':
        return this.#photoRow(block);
      case 'drawing':
        return this.#drawing(block);
      case 'notice':
        return this.#notice(block);
      case 'form':
        // `links.ts` gives pages what is shown on a screen; a form never is.
        throw new Error(`the form “${block.id}” is for paper and has no view`);
      case 'question':
        return this.#question(block);
    }
  }

  /** A packet's heading of rank 3 or 4 lies one or two below the section's title, and never skips a level. */
  #enter(rank: 3 | 4): number {
    this.#level = Math.min(this.#sectionLevel + rank - 2, this.#level + 1);
    return this.#level;
  }

  #rich(rich: Rich): readonly RunView[] {
    return richView(rich, this.#links);
  }

  #list(block: ListBlock): BlockView {
    const items = block.items.map((item) => ({
      id: item.id,
      text: this.#rich(item.text),
      mark: markOrNull(item.mark, this.#links),
    }));
    return { kind: 'list', id: block.id, items, nothing: items.length === 0 ? NOTHING_RECORDED : '' };
  }

  #record(block: RecordBlock): BlockView {
    return {
      kind: 'record',
      id: block.id,
      level: this.#level + 1,
      title: this.#rich(block.title),
      entries: block.entries.map((entry) => ({
        id: entry.id,
        label: entry.label,
        value: this.#rich(entry.value),
      })),
      mark: markOrNull(block.mark, this.#links),
    };
  }

  #pair(block: PairBlock): BlockView {
    const place: PhotoPlace = { kind: 'pair', ratio: block.aspect };
    return {
      kind: 'pair',
      id: block.id,
      cut: cutClass(block.aspect),
      before: this.#photos.view(block.before, place),
      after: this.#photos.view(block.after, place),
      caption: this.#rich(block.caption),
    };
  }

  #photoRow(block: PhotosBlock): BlockView {
    const place: PhotoPlace =
      block.form === 'contact' ? { kind: 'contact' } : { kind: 'row', alone: block.photos.length === 1 };
    return {
      kind: 'photos',
      id: block.id,
      form: block.form === 'contact' ? 'contact' : 'photos',
      photos: block.photos.map((one) => this.#shown(one, place)),
    };
  }

  #shown({ id, photo, caption, original }: ShownPhoto, place: PhotoPlace): ShownView {
    return {
      id,
      photo: this.#photos.view(photo, place),
      caption: this.#rich(caption),
      original: original === undefined ? null : { href: encodedPath(original.path), name: original.name },
    };
  }

  #drawing(block: DrawingBlock): BlockView {
    const { drawing, narrow, alt } = block;
    const svg =
      narrow === undefined
        ? svgOf(drawing, alt, 'only')
        : svgOf(drawing, alt, 'wide') + svgOf(narrow, alt, 'narrow');
    return { kind: 'drawing', id: block.id, svg, caption: this.#rich(block.caption) };
  }

  #notice(block: NoticeBlock): BlockView {
    return {
      kind: 'notice',
      id: block.id,
      level: this.#level + 1,
      title: block.title,
      paragraphs: block.paragraphs.map((paragraph) => this.#rich(paragraph)),
      source: this.#rich(block.source ?? []),
    };
  }

  #question(block: QuestionBlock): BlockView {
    return {
      kind: 'question',
      id: block.id,
      level: this.#level + 1,
      ask: block.ask,
      answer: this.#rich(block.answer),
      mark: markView(block.mark, this.#links),
    };
  }
}
