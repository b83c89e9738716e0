import { collectFacts } from '../collect-facts.js';
import { columns } from '../columns.js';
import { type Context, photoAnchor, photoIn, placeName } from '../context.js';
import { markOf } from '../marks.js';
import type { Block, Section } from '../packet.js';
import { photoCaption } from '../photo-words.js';
import { fullStop, rich, strong, upperFirst } from '../rich.js';
import { finishWords, systemWords } from '../tell.js';
import { correctedTable } from './corrected-table.js';

/** Known and not mended, kept as it was, not known, and what was corrected. */
export function leftAsFound(context: Context): Section {
  return {
    id: 'left-as-found',
    title: 'Left as found',
    blocks: [...conditions(context), ...kept(context), ...notKnown(context), ...corrections(context)],
  };
}

function conditions(context: Context): Block[] {
  const list = context.house.conditions;
  const blocks: Block[] = [{ kind: 'heading', id: 'conditions', level: 3, text: 'Known and not mended' }];
  if (list.length === 0)
    blocks.push({
      kind: 'paragraph',
      id: 'conditions-none',
      size: 'body',
      text: rich('The owner has written down no such condition. That is no finding that there is none.'),
    });
  for (const [index, item] of list.entries()) {
    const where = item.where === undefined ? '' : ` ${upperFirst(placeName(context, item.where))}`;
    blocks.push({
      kind: 'statement',
      id: `condition-${index + 1}`,
      size: 'body',
      text: rich(
        strong(fullStop(upperFirst(item.what))),
        where === '' ? undefined : `${where}.`,
        item.since === undefined ? undefined : ` ${fullStop(`Since: ${item.since}`)}`,
        item.note === undefined ? undefined : ` ${fullStop(upperFirst(item.note))}`,
      ),
      mark: markOf(context, { from: item.from, evidence: [...item.evidence, ...item.photos] }),
    });
    for (const id of item.photos) {
      const photo = photoIn(context, id);
      if (photo !== undefined)
        blocks.push({
          kind: 'photo',
          id: photoAnchor(context, id),
          photo: id,
          caption: rich(photoCaption(photo, 'full')),
        });
    }
  }
  return blocks;
}

function kept(context: Context): Block[] {
  const list = context.tally.kept;
  if (list.length === 0) return [];
  return [
    { kind: 'heading', id: 'kept', level: 3, text: 'Kept as it was' },
    {
      kind: 'table',
      id: 'kept-list',
      caption: 'Not changed by this owner',
      columns: columns(['What', 30], ['Where', 25], ['What is known of it', 45]),
      rows: list.map((one) => {
        const { source } = one;
        const words = source.kind === 'finish' ? finishWords(source.item) : systemWords(source.item);
        const title = source.kind === 'finish' ? source.item.on : (source.item.name ?? source.item.is);
        return {
          id: `kept-${one.id}`,
          cells: [
            rich(upperFirst(title)),
            rich(one.where.map((id) => upperFirst(placeName(context, id))).join(', ')),
            rich(
              words === '' ? 'no more is known' : upperFirst(words),
              source.item.note === undefined ? undefined : `. ${upperFirst(source.item.note)}`,
            ),
          ],
          mark: markOf(context, source.item),
        };
      }),
    },
  ];
}

function notKnown(context: Context): Block[] {
  const facts = collectFacts(context.house).filter((one) => one.fact.value === undefined);
  if (facts.length === 0) return [];
  return [
    { kind: 'heading', id: 'not-known', level: 3, text: 'Not known' },
    {
      kind: 'paragraph',
      id: 'not-known-note',
      size: 'small',
      text: rich('Asked for and not found out. Not known is never the same as no.'),
    },
    {
      kind: 'list',
      id: 'not-known-list',
      items: facts.map(({ words, fact }, index) => ({
        id: `unknown-${index + 1}`,
        text: rich(upperFirst(words), fact.note === undefined ? undefined : `: ${fact.note}`),
        mark: markOf(context, fact, false),
      })),
    },
  ];
}

function corrections(context: Context): Block[] {
  const facts = collectFacts(context.house).filter((one) => one.fact.was !== undefined);
  if (facts.length === 0) return [];
  return [
    { kind: 'heading', id: 'corrections', level: 3, text: 'Corrected' },
    correctedTable(context, facts, {
      id: 'correction-list',
      row: 'correction',
      caption: 'Facts that were written differently before',
      titles: ['Before', 'Now'],
    }),
  ];
}
