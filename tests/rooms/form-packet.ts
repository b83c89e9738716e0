/** A packet with a receipt at its end, as the buyer's has, for tests that need no house. */
import type { Block, FormBlock, Packet } from '../../src/packet/packet.js';
import { samplePacket } from './sample-packet.js';

export const receiptForm: FormBlock = {
  kind: 'form',
  id: 'receipt-form',
  only: 'print',
  text: [{ text: 'Signing says that this packet was received; not that anything in it was checked.' }],
  fields: [
    { id: 'received-on', label: 'Received on (date)', hint: 'year, month and day', share: 0.36 },
    { id: 'received-by', label: 'By (name)', hint: 'first and last name', share: 0.64 },
    { id: 'received-as', label: 'As (buyer, agent …)', hint: 'part in the sale', share: 0.36 },
    {
      id: 'received-signature',
      label: 'Signature, in ink',
      hint: 'a line to sign on by hand',
      share: 0.64,
      inInk: true,
    },
  ],
};

/** The four fields in one row, as an agent's sheet has them. */
const oneRowForm: FormBlock = {
  ...receiptForm,
  fields: receiptForm.fields.map((field, i) => ({ ...field, share: i % 2 === 0 ? 0.21 : 0.29 })),
};

/** The receipt after some lines of text; `lines` says how far down it stands. */
export function formPacket(lines: number, changes: Partial<Packet> = {}): Packet {
  const filler = Array.from(
    { length: lines },
    (_, i): Block => ({ kind: 'paragraph', id: `f${i}`, size: 'body', text: [{ text: 'One line.' }] }),
  );
  const receipt: Block[] = [
    { kind: 'heading', id: 'receipt', level: 3, text: 'Receipt', only: 'print' },
    changes.arrangement === 'one-page' ? oneRowForm : receiptForm,
  ];
  return {
    ...samplePacket,
    sections: [{ id: 'end', title: 'The end', blocks: [...filler, ...receipt] }],
    photos: [],
    ...changes,
  };
}
