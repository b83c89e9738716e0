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
  }
}

/** Every id a link may lead to: sections, blocks, rows, items, entries. */
export function anchorsOf(packet: Packet): Set<string> {
  const anchors = new Set<string>();
  for (const section of packet.sections) {
    anchors.add(section.id);
    for (const block of section.blocks) {
      anchors.add(block.id);
      if (block.kind === 'table') for (const row of block.rows) anchors.add(row.id);
      if (block.kind === 'list') for (const item of block.items) anchors.add(item.id);
      if (block.kind === 'record') for (const entry of block.entries) anchors.add(entry.id);
      if (block.kind === 'photos') for (const photo of block.photos) anchors.add(photo.id);
    }
  }
  return anchors;
}
