/**
 * What a packet says, as data: `facts.json`, that lies beside the pages and inside the PDF.
 *
 * A plain walk over the packet, so it can hold nothing that the edition may not say. Each statement, row, entry and
 * answer is one fact with the id it has as an anchor of the pages and a destination of the PDF; key facts and notes
 * below tables, which nothing leads to, have ids of their own kind (`key-…`, `…-note`).
 */
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Block, EvidenceMark, Packet, Section, ShownPhoto, TableBlock, TextExport } from './packet.js';
import { plainText } from './rich.js';

/** Of the form of this file; a file of another form is not read. */
const FORM = 'sillplate-facts-1';

const factSchema = z.object({
  id: z.string(),
  /** Title of the section it stands in. */
  section: z.string(),
  /** The headings it stands under there, and its table's caption: a room, a trade. */
  under: z.array(z.string()).optional(),
  /** What it is about, where that is told apart from what is said: a row's heading, an entry's label, a question. */
  about: z.string().optional(),
  /** One text, or a table row's cells behind its heading, each with its column. */
  says: z.union([z.string(), z.array(z.object({ column: z.string(), cell: z.string() }))]),
  /** How it is known: "Documented", "Owner’s statement", "Not known" … */
  known: z.string().optional(),
  /** By which paper, photo or saying; of a notice, by which law or agency. */
  by: z.string().optional(),
  /** Of a photo: the beginning of a digest that changes with the picture. */
  picture: z.string().optional(),
});

const fileSchema = z.object({
  form: z.literal(FORM),
  /** Name and version of the program that wrote it. */
  program: z.string().regex(/^sillplate(?: [\w.+-]{1,40})?$/),
  house: z.object({ folder: z.string(), name: z.string(), place: z.string() }),
  edition: z.string(),
  title: z.string(),
  asOf: z.string(),
  /** The digest at the foot of the sheets. */
  digest: z.string().regex(/^[0-9a-f]{4}(?: [0-9a-f]{4}){2}$/),
  facts: z.array(factSchema),
});

/** One thing that a packet says. */
export type SaidFact = z.infer<typeof factSchema>;
export type FactsFile = z.infer<typeof fileSchema>;

/** `program` is its name and version, for instance `sillplate 0.1.0`. */
export function factsExport(packet: Packet, program: string): TextExport {
  return {
    file: FACTS_NAME,
    title: 'What this packet says, for programs (JSON)',
    mediaType: 'application/json',
    text: `${JSON.stringify(factsFileOf(packet, program), null, 1)}\n`,
  };
}

export const FACTS_NAME = 'facts.json';

/** The facts of a file's text; undefined where it is none, or one of another form. Unknown words are left out. */
export function readFactsFile(text: string): FactsFile | undefined {
  try {
    return fileSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

function factsFileOf(packet: Packet, program: string): FactsFile {
  const pictures = new Map(packet.photos.map(({ id, content }) => [id, pictureOf(content)]));
  const said = packet.sections.flatMap((section) => saidIn(section, pictures));
  const key = packet.keyFacts.map(({ id, label, value }) => ({
    id,
    section: packet.edition.title,
    about: label,
    says: value,
  }));
  return {
    form: FORM,
    program,
    house: packet.house,
    edition: packet.edition.name,
    title: packet.edition.title,
    asOf: packet.asOf,
    digest: packet.digest,
    facts: [...key, ...said],
  };
}

/** What covers a picture is in its content as well, and is nobody's business: only whether it changed is told. */
const pictureOf = (content: string): string =>
  createHash('sha256').update(content).digest('hex').slice(0, 12);

type Told = Omit<SaidFact, 'section'>;

/** What one section says; `pictures` by their photos' ids. */
export function saidIn({ title, blocks }: Section, pictures: ReadonlyMap<string, string>): SaidFact[] {
  let under: string[] = [];
  return blocks.flatMap((block) => {
    if (block.kind === 'heading') under = [...under.slice(0, block.level - 3), block.text];
    return saidBy(block, pictures).map(({ id, ...rest }) => {
      const over = [...under, ...(rest.under ?? [])];
      return { id, section: title, ...rest, ...(over.length === 0 ? {} : { under: over }) };
    });
  });
}

function saidBy(block: Block, pictures: ReadonlyMap<string, string>): Told[] {
  switch (block.kind) {
    case 'heading':
    case 'form':
      return [];
    case 'statement':
      return [{ id: block.id, says: plainText(block.text), ...marked(block.mark) }];
    case 'paragraph':
      return [{ id: block.id, says: plainText(block.text) }];
    case 'list':
      return block.items.map(({ id, text, mark }) => ({ id, says: plainText(text), ...marked(mark) }));
    case 'table':
      // On paper alone: the pages say the same in another form, and the facts are told once.
      if (block.only === 'print') return [];
      return [
        ...block.rows.map((row) => rowOf(block, row)),
        ...noteOf(block),
        ...(block.plate === undefined ? [] : [pictureTold(block.plate, pictures)]),
      ];
    case 'record':
      return block.entries.map(({ id, label, value }) => ({
        id,
        about: `${plainText(block.title)}: ${label}`,
        says: plainText(value),
        ...marked(block.mark),
      }));
    case 'photo':
      return [{ id: block.id, says: plainText(block.caption), ...pictured(pictures, block.photo) }];
    case 'pair':
      return [
        { id: block.id, says: plainText(block.caption), ...pictured(pictures, block.before, block.after) },
      ];
    case 'photos':
      return block.photos.map((one) => pictureTold(one, pictures));
    case 'drawing':
      return [{ id: block.id, about: plainText(block.caption), says: block.alt }];
    case 'notice':
      return [
        {
          id: block.id,
          about: block.title,
          says: block.paragraphs.map(plainText).join('\n'),
          ...(block.source === undefined ? {} : { by: plainText(block.source) }),
        },
      ];
    case 'question':
      return [{ id: block.id, about: block.ask, says: plainText(block.answer), ...marked(block.mark) }];
  }
}

const pictureTold = ({ id, photo, caption }: ShownPhoto, pictures: ReadonlyMap<string, string>): Told => ({
  id,
  says: plainText(caption),
  ...pictured(pictures, photo),
});

function rowOf(table: TableBlock, { id, cells, mark }: TableBlock['rows'][number]): Told {
  const [first, ...rest] = cells;
  const says = rest.map((cell, i) => ({ column: table.columns[i + 1]?.title ?? '', cell: plainText(cell) }));
  return { id, ...underCaption(table), about: plainText(first ?? []), says, ...marked(mark) };
}

const noteOf = (table: TableBlock): Told[] =>
  table.note === undefined
    ? []
    : [{ id: `${table.id}-note`, ...underCaption(table), says: plainText(table.note) }];

const underCaption = ({ caption }: TableBlock): Pick<Told, 'under'> =>
  caption === '' ? {} : { under: [caption] };

function marked(mark: EvidenceMark | undefined): Pick<Told, 'known' | 'by'> {
  if (mark === undefined) return {};
  const by = plainText(mark.detail);
  return by === '' ? { known: mark.word } : { known: mark.word, by };
}

function pictured(pictures: ReadonlyMap<string, string>, ...photos: string[]): Pick<Told, 'picture'> {
  return { picture: photos.map((photo) => pictures.get(photo) ?? '').join(' ') };
}
