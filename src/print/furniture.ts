/** Running head and foot: which house and edition, which date and digest, which page of how many. */
import type { Packet } from '../packet/packet.js';
import type { Box } from './box.js';
import type { Composer } from './composer.js';
import { lineBox, plainRich, rule } from './composer.js';
import type { SetLine } from './set-text.js';
import { setText } from './set-text.js';
import { baselineOf } from './type-styles.js';

/** One line, ended with an ellipsis where the text is longer than the measure. */
function oneLine(composer: Composer, text: string, measurePt: number): SetLine | undefined {
  const style = composer.styles.furniture;
  const lines = setText(composer.setter, plainRich(text), style, measurePt);
  if (lines.length <= 1) return lines[0];
  // Room for the ellipsis, which is narrower than one and a half times the type size.
  const first = setText(composer.setter, plainRich(text), style, measurePt - style.sizePt * 1.5)[0];
  const cut = `${(first?.text ?? '').trimEnd()}…`;
  return setText(composer.setter, plainRich(cut), style, measurePt)[0];
}

function furnitureLine(
  composer: Composer,
  text: string,
  baselinePt: number,
  align: 'left' | 'right',
  share: number,
  block: string,
): Box[] {
  const style = composer.styles.furniture;
  const { leftPt, fullPt } = composer.paper;
  const line = oneLine(composer, text, fullPt * share);
  if (line === undefined) return [];
  const at = { x: leftPt, y: baselinePt - baselineOf(style), width: fullPt };
  return [lineBox(line, style, at, { block, tags: [] }, align)];
}

/** The furniture of one page; the first page has its title block instead of a head. */
export function setFurniture(
  composer: Composer,
  packet: Packet,
  page: { readonly number: number; readonly of: number; readonly section: string },
): Box[] {
  const { paper } = composer;
  const foot = [
    rule(paper.leftPt, paper.footBaselinePt - 13, paper.fullPt, 0.4, 'line', 'foot'),
    ...furnitureLine(
      composer,
      `As of ${packet.asOfText} · ${packet.digest}`,
      paper.footBaselinePt,
      'left',
      0.7,
      'foot',
    ),
    ...furnitureLine(
      composer,
      `page ${page.number} of ${page.of}`,
      paper.footBaselinePt,
      'right',
      0.28,
      'foot',
    ),
  ];
  if (page.number === 1) return foot;
  const name = `${packet.house.name} · ${packet.edition.title}`;
  return [
    ...furnitureLine(composer, name, paper.headBaselinePt, 'left', 0.62, 'head'),
    ...furnitureLine(composer, page.section, paper.headBaselinePt, 'right', 0.35, 'head'),
    ...foot,
  ];
}
