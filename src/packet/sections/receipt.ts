import type { Context } from '../context.js';
import { isoDate } from '../date-words.js';
import type { Block, EditionName, FormBlock, Section } from '../packet.js';
import { rich } from '../rich.js';

/** Who is usually handed an edition. The others are handed to no one who would sign for them. */
const HANDED_TO: Readonly<Partial<Record<EditionName, string>>> = {
  agent: 'agent, appraiser …',
  buyer: 'buyer, agent …',
  care: 'new owner …',
};

/** A receipt to be filled in and signed, on paper alone, at the end of the last section: where a signature is looked for. */
export function withReceipt(context: Context, sections: readonly Section[]): Section[] {
  return sections.map((section, i) =>
    i === sections.length - 1 ? { ...section, blocks: [...section.blocks, ...receipt(context)] } : section,
  );
}

function receipt(context: Context): Block[] {
  const part = HANDED_TO[context.edition];
  if (part === undefined) return [];
  const what = context.rules.title.toLowerCase();
  return [
    { kind: 'heading', id: 'receipt', level: 3, text: 'Receipt', only: 'print' },
    {
      kind: 'form',
      id: 'receipt-form',
      only: 'print',
      // The digest is of these words too, so it can't stand among them.
      text: rich(
        `Signing says that this ${what}, as of ${isoDate(context.tally.asOf)} and with the digest at the foot of this sheet, was received; not that anything in it was checked, agreed to or accepted.`,
      ),
      fields: fieldsFor(context, part),
    },
  ];
}

function fieldsFor(context: Context, part: string): FormBlock['fields'] {
  // A sheet of few pages has one row for all; a packet has two, with its columns below one another.
  const [short, long] = context.rules.arrangement === 'one-page' ? [0.21, 0.29] : [0.36, 0.64];
  return [
    {
      id: 'received-on',
      label: 'Received on (date)',
      hint: 'the day it was handed over, as year, month and day',
      share: short,
    },
    {
      id: 'received-by',
      label: 'By (name)',
      hint: 'first and last name of the person who received it',
      share: long,
    },
    {
      id: 'received-as',
      label: `As (${part})`,
      hint: 'this person’s part in the sale, and for whom if for another',
      share: short,
    },
    {
      id: 'received-signature',
      label: 'Signature, in ink',
      hint: 'a line to sign on by hand',
      share: long,
      inInk: true,
    },
  ];
}
