/**
 * What a packet says, as data: `facts.json`, that lies beside the pages and inside the PDF.
 *
 * A plain walk over the packet, so it can hold nothing that the edition may not say. Each statement, row, entry and
 * answer is one fact with the id it has as an anchor of the pages and a destination of the PDF.
 */
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Block, EvidenceMark, Packet, PacketExport, Rich, TableBlock } from './packet.js';

/** Of the form of this file; a file of another form is not read. */
const FORM = 'sillplate-facts-1';

const factSchema = z.object({
  id: z.string(),
  /** Title of the section it stands in. */
  section: z.string(),
  /** What it is about, where that is told apart from what is said: a row's heading, an entry's label, a question. */
  about: z.string().optional(),
  /** One text, or a table row's cells by their columns. */
  says: z.union([z.string(), z.record(z.string(), z.string())]),
  /** How it is known: "Documented", "Owner’s statement", "Not known" … */
  known: z.string().optional(),
  /** By which paper, photo or saying. */
  by: z.string().optional(),
  /** Of a photo: the beginning of a digest that changes with the picture. */
  picture: z.string().optional(),
});

const fileSchema = z.object({
  form: z.literal(FORM),
  /** Name and version of the program that wrote it. */
  program: z.string(),
  house: z.object({ folder: z.string(), name: z.string(), place: z.string() }),
  edition: z.string(),
  title: z.string(),
  asOf: z.string(),
  /** The digest at the foot of the sheets. */
  digest: z.string(),
  facts: z.array(factSchema),
});

/** One thing that a packet says. */
export type SaidFact = z.infer<typeof factSchema>;
export type FactsFile = z.infer<typeof fileSchema>;

/** `program` is its name and version, for instance `sillplate 0.1.0`. */
export function factsExport(packet: Packet, program: string): PacketExport {
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
  const said = packet.sections.flatMap(({ title, blocks }) =>
    blocks.flatMap((block) =>
      saidBy(block, pictures).map(({ id, ...rest }) => ({ id, section: title, ...rest })),
    ),
  );
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

function saidBy(block: Block, pictures: ReadonlyMap<string, string>): Told[] {
  switch (block.kind) {
    case 'heading':
    case 'form':
      return [];
    case 'statement':
      return [{ id: block.id, says: plain(block.text), ...marked(block.mark) }];
    case 'paragraph':
      return [{ id: block.id, says: plain(block.text) }];
    case 'list':
      return block.items.map(({ id, text, mark }) => ({ id, says: plain(text), ...marked(mark) }));
    case 'table':
      return [...block.rows.map((row) => rowOf(block, row)), ...noteOf(block)];
    case 'record':
      return block.entries.map(({ id, label, value }) => ({
        id,
        about: `${plain(block.title)}: ${label}`,
        says: plain(value),
        ...marked(block.mark),
      }));
    case 'photo':
      return [{ id: block.id, says: plain(block.caption), ...pictured(pictures, block.photo) }];
    case 'pair':
      return [{ id: block.id, says: plain(block.caption), ...pictured(pictures, block.before, block.after) }];
    case 'photos':
      return block.photos.map(({ id, photo, caption }) => ({
        id,
        says: plain(caption),
        ...pictured(pictures, photo),
      }));
    case 'drawing':
      return [{ id: block.id, about: plain(block.caption), says: block.alt }];
    case 'notice':
      return [{ id: block.id, about: block.title, says: block.paragraphs.map(plain).join('\n') }];
    case 'question':
      return [{ id: block.id, about: block.ask, says: plain(block.answer), ...marked(block.mark) }];
  }
}

function rowOf(table: TableBlock, { id, cells, mark }: TableBlock['rows'][number]): Told {
  const [first, ...rest] = cells;
  const says = Object.fromEntries(
    rest.map((cell, i) => [table.columns[i + 1]?.title ?? String(i + 2), plain(cell)]),
  );
  return { id, about: plain(first ?? []), says, ...marked(mark) };
}

const noteOf = ({ id, note }: TableBlock): Told[] =>
  note === undefined ? [] : [{ id: `${id}-note`, says: plain(note) }];

const plain = (rich: Rich): string => rich.map((run) => run.text).join('');

function marked(mark: EvidenceMark | undefined): Pick<Told, 'known' | 'by'> {
  if (mark === undefined) return {};
  const by = plain(mark.detail);
  return by === '' ? { known: mark.word } : { known: mark.word, by };
}

function pictured(pictures: ReadonlyMap<string, string>, ...photos: string[]): Pick<Told, 'picture'> {
  return { picture: photos.map((photo) => pictures.get(photo) ?? '').join(' ') };
}
