/** Headings, statements, paragraphs, lists, questions: text in the column, marks beside it. */
import type {
  HeadingBlock,
  ListBlock,
  ParagraphBlock,
  QuestionBlock,
  Section,
  StatementBlock,
} from '../packet/packet.js';
import type { TagPath } from './box.js';
import type { Composer, Owner } from './composer.js';
import { lineBox, plainRich, rule, textColumn } from './composer.js';
import { besideMark } from './set-mark.js';
import { setText } from './set-text.js';
import type { Slab } from './slab.js';
import { asBlock, slab } from './slab.js';
import { baselineOf } from './type-styles.js';

/** The opening of a section: a hairline over the full measure, then its title. */
export function setSectionTitle(composer: Composer, section: Section, tags: TagPath): Slab {
  const style = composer.styles.section;
  const { spaces, paper } = composer;
  const owner: Owner = { block: section.id, tags: [...tags, { type: 'H2', key: `${section.id}/title` }] };
  const top = spaces.sectionRule;
  const at = { x: 0, y: top, width: paper.fullPt };
  const title = textColumn(composer, plainRich(section.title), style, at, owner);
  return {
    ...slab(top + title.heightPt, [rule(0, 0, paper.fullPt, 0.6, 'ink', section.id), ...title.boxes]),
    beforePt: spaces.aboveSection,
    afterPt: spaces.belowSection,
    keepNext: true,
    heading: true,
    opensSection: true,
    // A section opens with room for six lines at least.
    reachPt: top + title.heightPt + paper.linePt * 6,
    anchors: [section.id],
    onGrid: true,
  };
}

export function setHeading(composer: Composer, block: HeadingBlock, tags: TagPath): Slab[] {
  const style = block.level === 3 ? composer.styles.heading3 : composer.styles.heading4;
  const owner = { block: block.id, tags: [...tags, { type: `H${block.level}`, key: block.id }] };
  const at = { x: 0, y: 0, width: composer.paper.textPt };
  const column = textColumn(composer, plainRich(block.text), style, at, owner);
  return [
    {
      ...slab(column.heightPt, column.boxes),
      beforePt: block.level === 3 ? composer.spaces.aboveHeading3 : composer.spaces.aboveHeading4,
      afterPt: composer.spaces.belowHeading,
      keepNext: true,
      heading: true,
      anchors: [block.id],
      onGrid: true,
    },
  ];
}

export function setStatement(composer: Composer, block: StatementBlock, tags: TagPath): Slab[] {
  const style = block.size === 'lead' ? composer.styles.lead : composer.styles.body;
  const owner = { block: block.id, tags: [...tags, { type: 'P', key: block.id }] };
  const lines = setText(composer.setter, block.text, style, composer.paper.textPt);
  const space = composer.spaces.text * (block.size === 'lead' ? 1.5 : 1);
  return asBlock(besideMark(composer, lines, style, 0, block.mark, owner), {
    beforePt: space,
    afterPt: space,
    onGrid: true,
    anchors: [block.id],
  });
}

/** Lines that may break over a page with two on each side; three lines stay whole. */
export function setLinesApart(composer: Composer, block: ParagraphBlock, tags: TagPath): Slab[] {
  const style = block.size === 'small' ? composer.styles.small : composer.styles.body;
  const owner = { block: block.id, tags: [...tags, { type: 'P', key: block.id }] };
  const lines = setText(composer.setter, block.text, style, composer.paper.textPt);
  const count = lines.length;
  const slabs = lines.map((line, i) => {
    const box = lineBox(line, style, { x: 0, y: 0, width: composer.paper.textPt }, owner);
    return slab(style.leadingPt, [box], { keepNext: i < count - 1 && (i === 0 || i === count - 2) });
  });
  return asBlock(slabs, {
    beforePt: composer.spaces.text,
    afterPt: composer.spaces.text,
    onGrid: true,
    anchors: [block.id],
  });
}

export function setList(composer: Composer, block: ListBlock, tags: TagPath): Slab[] {
  const style = composer.styles.body;
  const indent = composer.styles.body.sizePt * 1.25;
  const listTags = [...tags, { type: 'L', key: block.id }];
  const slabs = block.items.flatMap((item, i) => {
    const owner: Owner = {
      block: block.id,
      tags: [
        ...listTags,
        { type: 'LI', key: item.id },
        { type: 'LBody', key: 'body' },
        { type: 'P', key: 'text' },
      ],
    };
    const lines = setText(composer.setter, item.text, style, composer.paper.textPt - indent);
    const [first, ...rest] = besideMark(composer, lines, style, indent, item.mark, owner);
    if (first === undefined) return [];
    // A dash as a rule, not as a character: it is no word of the item.
    const middle = baselineOf(style) - style.sizePt * 0.24;
    const dash = rule(0, middle - 0.35, composer.styles.body.sizePt * 0.55, 0.7, 'soft', block.id);
    return asBlock([{ ...first, boxes: [dash, ...first.boxes] }, ...rest], {
      beforePt: i === 0 ? composer.spaces.text : composer.spaces.item,
      afterPt: i === block.items.length - 1 ? composer.spaces.text : composer.spaces.item,
      anchors: i === 0 ? [block.id, item.id] : [item.id],
    });
  });
  return slabs;
}

export function setQuestion(composer: Composer, block: QuestionBlock, tags: TagPath): Slab[] {
  const { ask, body } = composer.styles;
  const askOwner = { block: block.id, tags: [...tags, { type: 'P', key: `${block.id}/ask` }] };
  const answerOwner = { block: block.id, tags: [...tags, { type: 'P', key: `${block.id}/answer` }] };
  const at = { x: 0, y: 0, width: composer.paper.textPt };
  const question = textColumn(composer, plainRich(block.ask), ask, at, askOwner);
  const lines = setText(composer.setter, block.answer, body, composer.paper.textPt);
  const answer = besideMark(composer, lines, body, 0, block.mark, answerOwner);
  return asBlock([{ ...slab(question.heightPt, question.boxes), keepNext: true }, ...answer], {
    beforePt: composer.spaces.question,
    afterPt: composer.spaces.question,
    onGrid: true,
    anchors: [block.id],
  });
}
