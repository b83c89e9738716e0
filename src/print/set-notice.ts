/** Notices: the one boxed thing. The outline is drawn when it is known where pages end. */
import type { NoticeBlock, Rich } from '../packet/packet.js';
import type { TagPath } from './box.js';
import type { Composer } from './composer.js';
import { lineBox, plainRich } from './composer.js';
import { setText } from './set-text.js';
import type { Slab } from './slab.js';
import { asBlock, slab } from './slab.js';
import type { TypeStyle } from './type-styles.js';

/** Between outline and text. */
const PAD_X_PT = 14;

/** Notices taller than this share of a page may go on over its edge, with their outline open there. */
const WHOLE_SHARE = 0.4;

export function setNotice(composer: Composer, block: NoticeBlock, tags: TagPath): Slab[] {
  const { noticeTitle, noticeText, note } = composer.styles;
  const { unitPt } = composer;
  const noticeTags = [...tags, { type: 'Sect', key: block.id }];
  const padY = unitPt * 1.5;
  const parts: Slab[] = [
    { ...slab(padY, []), keepNext: true },
    ...paragraph(composer, block, plainRich(block.title), noticeTitle, noticeTags, 'title').map((each) => ({
      ...each,
      keepNext: true,
    })),
  ];
  block.paragraphs.forEach((text, i) => {
    const lines = paragraph(composer, block, text, noticeText, noticeTags, `p${i}`);
    parts.push(...asBlock(lines, { beforePt: i === 0 ? unitPt * 0.5 : unitPt }));
  });
  if (block.source !== undefined) {
    const lines = paragraph(composer, block, block.source, note, noticeTags, 'source');
    // The source never stands alone on a page.
    const last = parts.at(-1);
    if (last !== undefined) parts[parts.length - 1] = { ...last, keepNext: true };
    parts.push(...asBlock(lines, { beforePt: unitPt }).map((each) => ({ ...each, keepNext: true })));
  }
  const ending = parts.at(-1);
  if (ending !== undefined) parts[parts.length - 1] = { ...ending, keepNext: true };
  parts.push(slab(padY, []));
  const air = [slab(padY, [])];
  const height = parts.reduce((sum, each) => sum + each.heightPt, 0);
  const whole = height < (composer.paper.bottomPt - composer.paper.topPt) * WHOLE_SHARE;
  const framed = parts.map((each, i) => ({
    ...each,
    keepNext: each.keepNext || (whole && i < parts.length - 1),
    frame: { id: block.id, first: i === 0, last: i === parts.length - 1 },
    // The very beginning has its own air.
    ...(i === 0 ? {} : { resume: air }),
    tailPt: i === parts.length - 1 ? 0 : padY,
  }));
  return asBlock(framed, {
    beforePt: composer.spaces.notice,
    afterPt: composer.spaces.notice,
    anchors: [block.id],
  });
}

function paragraph(
  composer: Composer,
  block: NoticeBlock,
  text: Rich,
  style: TypeStyle,
  tags: TagPath,
  key: string,
): Slab[] {
  const at = { x: PAD_X_PT, y: 0, width: composer.paper.textPt - PAD_X_PT * 2 };
  const owner = { block: block.id, tags: [...tags, { type: 'P', key }] };
  const lines = setText(composer.setter, text, style, at.width);
  return lines.map((line, i) =>
    slab(style.leadingPt, [lineBox(line, style, at, owner)], {
      keepNext: i < lines.length - 1 && (i === 0 || i === lines.length - 2),
    }),
  );
}
