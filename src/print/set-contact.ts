/**
 * A contact sheet: many small pictures in equal fields over the full measure, with the names of their originals.
 *
 * Pages break between rows. Pictures are whole and stand on one line; captions begin on one line below them.
 */
import type { PhotosBlock } from '../packet/packet.js';
import type { Box, TagPath } from './box.js';
import type { Composer } from './composer.js';
import { plainRich, textColumn } from './composer.js';
import { aspectOf, type Place, pictureBoxes } from './set-figure.js';
import { asBlock, type Slab, slab } from './slab.js';

const COLUMNS = 5;

/** Height over width of a field. */
const FIELD = 0.75;

/** Between a picture and its caption, and between two fields side by side. */
const CAPTION_GAP_PT = 3;
const GAP_PT = 9;

type ContactPhoto = PhotosBlock['photos'][number];

export function setContact(composer: Composer, block: PhotosBlock, tags: TagPath): Slab[] {
  const { figure } = composer.spaces;
  const rows: Slab[] = [];
  for (let i = 0; i < block.photos.length; i += COLUMNS)
    rows.push(contactRow(composer, block.id, block.photos.slice(i, i + COLUMNS), tags));
  return asBlock(rows, { beforePt: figure, afterPt: figure * 1.2, anchors: [block.id] });
}

function contactRow(composer: Composer, block: string, row: readonly ContactPhoto[], tags: TagPath): Slab {
  const width = (composer.paper.fullPt - GAP_PT * (COLUMNS - 1)) / COLUMNS;
  const fields = row.map((each, i) =>
    contactField(composer, each, { x: i * (width + GAP_PT), width }, { block, tags, key: each.id }),
  );
  const height = Math.max(...fields.map((field) => field.heightPt));
  const { figure } = composer.spaces;
  return slab(
    height,
    fields.flatMap((field) => field.boxes),
    { beforePt: figure, afterPt: figure, anchors: row.map((each) => each.id) },
  );
}

function contactField(
  composer: Composer,
  { photo, caption, original }: ContactPhoto,
  { x, width }: { readonly x: number; readonly width: number },
  place: Place,
): { readonly boxes: Box[]; readonly heightPt: number } {
  const aspect = aspectOf(composer, photo);
  const tallest = width * FIELD;
  const height = Math.min(tallest, width * aspect);
  const at = { x, y: tallest - height, width: height / aspect, height };
  const boxes = pictureBoxes(composer, photo, at, place);
  let y = tallest + CAPTION_GAP_PT;
  const { contact } = composer.styles;
  // The name in ink: it is what one looks for in the folder.
  const name = { ...contact, ink: 'ink' as const };
  for (const [text, style, type] of [
    [caption, contact, 'Caption'],
    [plainRich(original?.name ?? ''), name, 'P'],
  ] as const) {
    const owner = {
      block: place.block,
      tags: [...place.tags, { type, key: `${place.key}/${type}` }],
    };
    const column = textColumn(composer, text, style, { x, y, width }, owner);
    boxes.push(...column.boxes);
    y += column.heightPt;
  }
  return { boxes, heightPt: y };
}
