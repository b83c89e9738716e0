/** The receipt at an edition's end: who gets one, what it says, and what it must not say. */
import { describe, expect, it } from 'vitest';
import type { Block, EditionName, FormBlock } from '../../src/packet/packet.js';
import { packetOf } from './packet-of.js';

const HANDED_OVER = ['agent', 'buyer', 'care'] as const;
const NOT_HANDED_OVER = ['visit', 'file'] as const;

const blocksOf = (edition: EditionName): readonly Block[] =>
  packetOf({}, edition).sections.flatMap((section) => section.blocks);

const formOf = (edition: EditionName): FormBlock => {
  const form = blocksOf(edition).at(-1);
  if (form?.kind !== 'form') throw new Error(`the ${edition} edition does not end with a form`);
  return form;
};

describe('a receipt', () => {
  it.each(HANDED_OVER)(
    'is the last thing of the %s edition, under its heading, on paper alone',
    (edition) => {
      const [heading, form] = blocksOf(edition).slice(-2);
      expect(heading).toMatchObject({ kind: 'heading', text: 'Receipt', only: 'print' });
      expect(form).toMatchObject({ kind: 'form', only: 'print' });
    },
  );

  it.each(NOT_HANDED_OVER)('is not in the %s edition', (edition) => {
    expect(blocksOf(edition).filter((block) => block.kind === 'form')).toEqual([]);
  });

  it.each(HANDED_OVER)(
    'of the %s edition says what was received, and that nothing was agreed to',
    (edition) => {
      const packet = packetOf({}, edition);
      const text = formOf(edition)
        .text.map((run) => run.text)
        .join('');
      expect(text).toContain(packet.edition.title.toLowerCase());
      expect(text).toContain(packet.asOfText);
      expect(text).toContain('the digest at the foot of this sheet');
      expect(text).toContain('not that anything in it was checked, agreed to or accepted');
      // A digest can't hold itself.
      expect(text).not.toContain(packet.digest);
    },
  );

  it.each(HANDED_OVER)(
    'of the %s edition has a date, a name, a part and a line for ink, in full rows',
    (edition) => {
      const { fields } = formOf(edition);
      expect(fields.map(({ id, inInk }) => [id, inInk ?? false])).toEqual([
        ['received-on', false],
        ['received-by', false],
        ['received-as', false],
        ['received-signature', true],
      ]);
      const sum = fields.reduce((all, { share }) => all + share, 0);
      expect(sum).toBeCloseTo(edition === 'agent' ? 1 : 2, 6);
      for (const { label, hint } of fields) {
        expect(label).not.toBe('');
        expect(hint).not.toBe('');
      }
    },
  );
});
