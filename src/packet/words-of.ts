import type { Block, EvidenceMark, Packet, Section } from './packet.js';
import { plainText } from './rich.js';

/** Every string a block shows, in reading order. The proof that pages and sheets agree reads this. */
export function wordsOf(block: Block): string[] {
  const mark = (m: Pick<EvidenceMark, 'word' | 'detail'> | undefined): string[] =>
    m === undefined ? [] : [m.word, plainText(m.detail)];
  switch (block.kind) {
    case 'heading':
      return [block.text];
    case 'statement':
      return [plainText(block.text), ...mark(block.mark)];
    case 'paragraph':
      return [plainText(block.text)];
    case 'list':
      return block.items.flatMap((item) => [plainText(item.text), ...mark(item.mark)]);
    case 'table':
      return [
        block.caption,
        ...block.columns.map((column) => column.title),
        ...block.rows.flatMap((row) => [...row.cells.map(plainText), ...mark(row.mark)]),
        ...(block.note ? [plainText(block.note)] : []),
        ...(block.plate === undefined ? [] : [plainText(block.plate.caption)]),
      ];
    case 'record':
      return [
        plainText(block.title),
        ...block.entries.flatMap((entry) => [entry.label, plainText(entry.value)]),
        ...mark(block.mark),
      ];
    case 'photo':
    case 'pair':
      return [plainText(block.caption)];
    case 'photos':
      // A contact sheet is where a photo is looked up by the name of its file.
      return block.photos.flatMap(({ caption, original }) => [
        plainText(caption),
        ...(original === undefined || block.form !== 'contact' ? [] : [original.name]),
      ]);
    case 'drawing':
      return [
        plainText(block.caption),
        ...block.drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])),
      ];
    case 'notice':
      return [
        block.title,
        ...block.paragraphs.map(plainText),
        ...(block.source ? [plainText(block.source)] : []),
      ];
    case 'question':
      return [block.ask, plainText(block.answer), ...mark(block.mark)];
    case 'form':
      return [plainText(block.text), ...block.fields.map((field) => field.label)];
  }
}

/** What of a section stands on paper. */
export const printedBlocks = ({ blocks }: Section): readonly Block[] =>
  blocks.filter((block) => block.only !== 'web');

/** Every id a link may lead to: sections, blocks, rows, items, entries. */
export const anchorsOf = (packet: Packet): Set<string> => new Set(idsIn(packet));

/** The same in reading order, where an id that two things share stands twice. */
export function idsIn(packet: Packet): string[] {
  return packet.sections.flatMap((section) => [section.id, ...section.blocks.flatMap(idsOf)]);
}

function idsOf(block: Block): string[] {
  const within = (things: readonly { readonly id: string }[]): string[] => [
    block.id,
    ...things.map(({ id }) => id),
  ];
  switch (block.kind) {
    case 'table':
      return within([...block.rows, ...(block.plate === undefined ? [] : [block.plate])]);
    case 'list':
      return within(block.items);
    case 'record':
      return within(block.entries);
    case 'photos':
      return within(block.photos);
    case 'form':
      return within(block.fields);
    default:
      return [block.id];
  }
}
