import { unansweredForOwner } from '../answers/unanswered.js';
import type { Context } from '../context.js';
import type { Block, Section } from '../packet.js';
import { rich, upperFirst, verbatim } from '../rich.js';

/** What only the house file holds: notes, contacts, serial numbers, where papers are kept. */
export function forTheOwner(context: Context): Section {
  const { house } = context;
  const notes = house['private-notes'];
  const contacts = house.people.filter((person) => person.contact !== undefined);
  const numbered = house.systems.filter((system) => system.label !== undefined || system.model !== undefined);
  const filed = house.documents.filter(
    (document) => document.file !== undefined || document.kept !== undefined,
  );
  const blocks: Block[] = [
    ...(notes.length === 0
      ? []
      : [
          {
            kind: 'list',
            id: 'private-notes',
            items: notes.map((note, index) => ({ id: `private-note-${index + 1}`, text: rich(note) })),
          } satisfies Block,
        ]),
    ...table(
      'contacts',
      'Contacts',
      ['Name', 'Contact'],
      contacts.map((one) => [one.id, one.name, one.contact ?? '']),
    ),
    ...table(
      'numbers',
      'Model and serial numbers',
      ['System', 'Model', 'Serial'],
      numbered.map((one) => [
        one.id,
        upperFirst(one.name ?? one.is),
        one.model ?? 'not recorded',
        one.label?.serial ?? 'not recorded',
      ]),
    ),
    ...table(
      'filed',
      'Where papers are',
      ['Paper', 'File', 'Kept'],
      filed.map((one) => [
        one.id,
        upperFirst(one.what),
        one.file === undefined ? 'none' : `documents/${one.file}`,
        one.kept ?? '',
      ]),
    ),
  ];
  blocks.unshift(...unansweredForOwner(context));
  if (blocks.length === 0)
    blocks.push({
      kind: 'paragraph',
      id: 'owner-none',
      size: 'body',
      text: rich('There are no private notes.'),
    });
  return { id: 'for-the-owner', title: 'For the owner', blocks };
}

/** Rows begin with the id of what they are about; behind a first cell of words stands what is told letter for letter. */
function table(
  id: string,
  caption: string,
  titles: readonly string[],
  rows: readonly (readonly string[])[],
): Block[] {
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      id: `owner-${id}`,
      caption,
      columns: titles.map((title) => ({ title, align: 'left', weight: 100 / titles.length })),
      rows: rows.map(([about, ...cells]) => ({
        id: `owner-${id}-${about}`,
        cells: cells.map((cell, at) => rich(at === 0 ? cell : verbatim(cell))),
      })),
    },
  ];
}
