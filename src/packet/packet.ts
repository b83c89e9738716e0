/**
 * The document model: what one audience is given about one house, made on one date.
 *
 * Takes nothing, gives types. `packet/compose.ts` fills them; `web` and `print` render them and can see
 * nothing else. Every string in here is final: rounded, worded and allowed for this edition. A renderer
 * places it and never changes it. Start reading at `Packet`.
 */
import type { Workbook } from './workbook.js';

export type EditionName = 'agent' | 'visit' | 'buyer' | 'care' | 'file';

/** One edition of one house. */
export interface Packet {
  readonly house: PacketHouse;
  readonly edition: { readonly name: EditionName; readonly title: string; readonly reader: string };
  /** ISO date that ages are counted to. */
  readonly asOf: string;
  /** The same date in words, for printing. */
  readonly asOfText: string;
  /** First 48 bits of the SHA-256 of everything this packet says, in groups of four: `7f3a 91c2 0d4e`. */
  readonly digest: string;
  /**
   * How the web pages are cut: the sheet of an agent is one page, a buyer's packet has one a section. `two-sides` is one
   * page too, and on paper one leaf, printed on both sides: its first section is side one, all others are side two.
   */
  readonly arrangement: Arrangement;
  /** The few facts of the title block. */
  readonly keyFacts: readonly KeyFact[];
  readonly sections: readonly Section[];
  /** The photos this edition shows, each once, in order of first use. */
  readonly photos: readonly PacketPhoto[];
  /** Photos that lie beside the pages as the camera made them, with all it wrote into them. The house file's alone. */
  readonly originals: readonly { readonly photo: string; readonly path: string }[];
  /** Papers that lie beside the pages as they lie in the folder, by the document's id. The house file's alone; else left out. */
  readonly papers?: readonly { readonly document: string; readonly path: string }[];
  /** Files that lie beside the pages and the PDF. */
  readonly exports: readonly PacketExport[];
  /** The sentence at the foot: what this paper is not. */
  readonly standing: string;
}

export type Arrangement = 'one-page' | 'two-sides' | 'page-per-section';

export interface PacketHouse {
  /** Name of the house folder; `[a-z0-9-]+`, used in file names. */
  readonly folder: string;
  readonly name: string;
  /** Address as far as this edition shows it. */
  readonly place: string;
}

export interface KeyFact {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** False where the value is words for nothing being known. */
  readonly known: boolean;
}

export interface PacketPhoto {
  /** Id in the house's `photos`. */
  readonly id: string;
  /** Alternative text; never empty. */
  readonly alt: string;
  /** Digest of the original and of what is covered in it. Counts for the packet's digest; printed nowhere. */
  readonly content: string;
  /** `contact`: shown on the contact sheet and nowhere else, so that a small picture is enough. */
  readonly use: 'full' | 'contact';
}

/** A file that lies beside the pages. A text is attached to the PDF as well; a workbook is not. */
export type PacketExport = TextExport | WorkbookExport;

interface ExportWords {
  /** File name, for example `listing-fields.json`. */
  readonly file: string;
  /** What it is, in words. */
  readonly title: string;
  readonly mediaType: string;
}

export interface TextExport extends ExportWords {
  readonly text: string;
}

export interface WorkbookExport extends ExportWords {
  /** Sheets and cells; they become bytes when the edition is written. */
  /** Made when it is written: of a large sheet it is larger than all else. It says what `ledger.json` says. */
  readonly workbook: () => Workbook;
}

export interface Section {
  /** `[a-z0-9-]+`; the web page's file name where sections are pages. */
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** A stretch of text with one manner. */
export interface Run {
  readonly text: string;
  readonly manner?: 'strong' | 'emphasis' | 'soft';
  /** Stands as it was written, letter for letter: an address, a serial number, a file's name. */
  readonly verbatim?: true;
  /** Id of the block, row or section this run leads to. It exists in the same packet. */
  readonly to?: string;
}

export type Rich = readonly Run[];

/** How a statement is known. Printed as word and shape, never by colour alone. */
export interface EvidenceMark {
  readonly standing: 'documented' | 'owner' | 'not-known';
  /** "Documented", "Documented in part" (standing `owner`: some of several), "Owner’s statement" or "Not known". */
  readonly word: string;
  /** Which paper, photo or saying: goes after the word. May be empty. */
  readonly detail: Rich;
}

interface BlockBase {
  /** Unique in the packet; an anchor in the pages and a destination in the PDF. */
  readonly id: string;
  /** Shown in one rendering only (a search box, a receipt form). Left out: both. */
  readonly only?: 'web' | 'print';
}

export interface HeadingBlock extends BlockBase {
  readonly kind: 'heading';
  /** 3 below a section's title, 4 below that. */
  readonly level: 3 | 4;
  readonly text: string;
}

/** One statement with its evidence in the margin. */
export interface StatementBlock extends BlockBase {
  readonly kind: 'statement';
  readonly text: Rich;
  /** `lead` is the large opening sentence of a packet. */
  readonly size: 'lead' | 'body';
  readonly mark: EvidenceMark;
}

/** Connecting text that asserts nothing about the house and so has no mark. */
export interface ParagraphBlock extends BlockBase {
  readonly kind: 'paragraph';
  readonly text: Rich;
  readonly size: 'body' | 'small';
}

export interface ListBlock extends BlockBase {
  readonly kind: 'list';
  readonly items: readonly { readonly id: string; readonly text: Rich; readonly mark?: EvidenceMark }[];
}

export interface TableColumn {
  readonly title: string;
  readonly align: 'left' | 'right';
  /** Share of the width beside the other columns. */
  readonly weight: number;
}

export interface TableRow {
  readonly id: string;
  /** As many as there are columns. The first one is the row's heading. */
  readonly cells: readonly Rich[];
  readonly mark?: EvidenceMark;
  /** A sum or a remark row: set apart by a line above. */
  readonly weight?: 'normal' | 'total';
}

export interface TableBlock extends BlockBase {
  readonly kind: 'table';
  readonly caption: string;
  /** `large`: few rows, to be read at arm's length. Left out: a table as all others. */
  readonly size?: 'large';
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  /** A remark below the table. */
  readonly note?: Rich;
  /** A table that is copied from or signed: its rows stay on one sheet, if one holds them. */
  readonly together?: true;
  /** The paper that the rows rest on, beside them. */
  readonly plate?: ShownPhoto;
}

/** Label and value pairs about one thing: a finish, a system, a paint. */
export interface RecordBlock extends BlockBase {
  readonly kind: 'record';
  readonly title: Rich;
  readonly entries: readonly { readonly id: string; readonly label: string; readonly value: Rich }[];
  readonly mark?: EvidenceMark;
}

export interface PhotoBlock extends BlockBase {
  readonly kind: 'photo';
  readonly photo: string;
  readonly caption: Rich;
}

/** The same place before and after, side by side, both cut to one shape. */
export interface PairBlock extends BlockBase {
  readonly kind: 'pair';
  readonly before: string;
  readonly after: string;
  /** Width over height that both are cut to. */
  readonly aspect: number;
  readonly caption: Rich;
}

/** A photo with an anchor of its own. */
export interface ShownPhoto {
  readonly id: string;
  readonly photo: string;
  readonly caption: Rich;
  /** The photo as the camera made it, or the paper, which lies beside the pages: its name, and its path among the `originals`. */
  readonly original?: { readonly name: string; readonly path: string };
}

export interface PhotosBlock extends BlockBase {
  readonly kind: 'photos';
  /** `contact`: a contact sheet of many small pictures; `row`: pictures to be looked at. */
  readonly form: 'row' | 'contact';
  readonly photos: readonly ShownPhoto[];
}

export interface DrawingBlock extends BlockBase {
  readonly kind: 'drawing';
  /** `code`: a code to scan, beside a title or a photo; its caption ends with the address, verbatim. */
  readonly role?: 'code';
  readonly drawing: Drawing;
  /** The same drawing made again for a narrow screen; not a scaled one. */
  readonly narrow?: Drawing;
  /** What the drawing says, for those who can't see it. */
  readonly alt: string;
  readonly caption: Rich;
}

/** The one boxed thing. */
export interface NoticeBlock extends BlockBase {
  readonly kind: 'notice';
  readonly title: string;
  readonly paragraphs: readonly Rich[];
  /** Law or agency behind the words. */
  readonly source?: Rich;
}

export interface QuestionBlock extends BlockBase {
  readonly kind: 'question';
  readonly ask: string;
  readonly answer: Rich;
  readonly mark: EvidenceMark;
}

/** Lines to be filled in by hand, or in the PDF's own form fields. A page on a screen has none. */
export interface FormBlock extends BlockBase {
  readonly kind: 'form';
  readonly only: 'print';
  /** What filling it in means, and what it doesn't. */
  readonly text: Rich;
  readonly fields: readonly {
    readonly id: string;
    /** Printed beside the line: "Received on". */
    readonly label: string;
    /** Read out by a screen reader in the label's place: what goes here, and in which form. */
    readonly hint: string;
    /** Share of the width beside the other fields of its row; a row is full at 1. */
    readonly share: number;
    /** Written on by hand alone: a line on paper, and no field in the file. */
    readonly inInk?: true;
  }[];
}

export type Block =
  | HeadingBlock
  | StatementBlock
  | ParagraphBlock
  | ListBlock
  | TableBlock
  | RecordBlock
  | PhotoBlock
  | PairBlock
  | PhotosBlock
  | DrawingBlock
  | NoticeBlock
  | QuestionBlock
  | FormBlock;

/** A drawing in points (1/72 inch), y growing downwards, made once and rendered as SVG and as PDF vectors. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

/** Widths: hair 0.4, thin 0.7, medium 1.2, wall 3 points. */
export type Pen = 'hair' | 'thin' | 'medium' | 'wall' | 'dashed';
export type Ink = 'ink' | 'soft' | 'line' | 'accent';
export type Fill = 'none' | 'paper' | 'wash' | 'ink' | 'accent' | 'accent-soft';
/** Sizes: name 9.5, body 8.5, small 7.5, tick 7 points. `unknown` is small and italic. */
export type LetterStyle = 'name' | 'body' | 'small' | 'tick' | 'unknown';

export type XY = readonly [number, number];

export type Shape =
  | { readonly kind: 'line'; readonly from: XY; readonly to: XY; readonly pen: Pen; readonly ink: Ink }
  | {
      readonly kind: 'path';
      readonly points: readonly XY[];
      readonly closed: boolean;
      readonly pen?: Pen;
      readonly ink?: Ink;
      readonly fill: Fill;
    }
  | {
      readonly kind: 'circle';
      readonly at: XY;
      readonly radius: number;
      readonly fill: Fill;
      readonly ink?: Ink;
      readonly pen?: Pen;
    }
  | {
      readonly kind: 'text';
      /** Baseline point. */
      readonly at: XY;
      readonly text: string;
      readonly style: LetterStyle;
      readonly ink: Ink;
      readonly anchor: 'start' | 'middle' | 'end';
      /** Degrees clockwise about `at`. */
      readonly turn?: 0 | 90 | -90;
    };

/** A file that was made ready: where its bytes lie now, and what to call them (a digest of them). */
export interface StoredFile {
  readonly name: string;
  readonly file: string;
}

/** One photo made ready for showing: upright, without metadata, named by its content. */
export interface Picture {
  readonly id: string;
  /** Of the upright picture as shown at its largest, in pixels. */
  readonly width: number;
  readonly height: number;
  /** For pages, smallest first; each in two formats. */
  readonly sizes: readonly {
    readonly width: number;
    readonly height: number;
    readonly jpeg: StoredFile;
    readonly avif: StoredFile;
  }[];
  /** A few pixels as a `data:` address, shown until the picture is there. */
  readonly tiny: string;
  /** JPEG for paper. */
  readonly print: { readonly width: number; readonly height: number; readonly file: string };
}

export type Pictures = ReadonlyMap<string, Picture>;

/** What a renderer hands on: a path inside the edition's folder and what to put there. */
export type OutputFile =
  | { readonly path: string; readonly text: string }
  | { readonly path: string; readonly bytes: Uint8Array }
  | { readonly path: string; readonly copyOf: string };
