import type { Block, Packet, Rich } from './packet.js';

/** Every string a block shows, in reading order. The proof that pages and sheets agree reads this. */
export function wordsOf(block: Block): string[] {
  const plain = (rich: Rich): string => rich.map((run) => run.text).join('');
  const mark = (m: { word: string; detail: Rich } | undefined): string[] =>
    m === undefined ? [] : [m.word, plain(m.detail)];
  switch (block.kind) {
    case 'heading':
      return [block.text];
    case 'statement':
      return [plain(block.text), ...mark(block.mark)];
    case 'paragraph':
      return [plain(block.text)];
    case 'list':
      return block.items.flatMap((item) => [plain(item.text), ...mark(item.mark)]);
    case 'table':
      return [
        block.caption,
        ...block.columns.map((column) => column.title),
        ...block.rows.flatMap((row) => [...row.cells.map(plain), ...mark(row.mark)]),
        ...(block.note ? [plain(block.note)] : []),
      ];
    case 'record':
      return [
        plain(block.title),
        ...block.entries.flatMap((entry) => [entry.label, plain(entry.value)]),
        ...mark(block.mark),
      ];
    case 'photo':
    case 'pair':
      return [plain(block.caption)];
    case 'photos':
      return block.photos.flatMap(({ caption, original }) => [
        plain(caption),
        ...(original === undefined ? [] : [original.name]),
      ]);
    case 'drawing':
      return [
        plain(block.caption),
        ...block.drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])),
      ];
    case 'notice':
      return [block.title, ...block.paragraphs.map(plain), ...(block.source ? [plain(block.source)] : [])];
    case 'question':
      return [block.ask, plain(block.answer), ...mark(block.mark)];
    case 'form':
      return [plain(block.text), ...block.fields.map((field) => field.label)];
  }
}

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
      return within(block.rows);
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
