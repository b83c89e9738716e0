/** A packet's own data: everything it says is in there once, under the id that pages and sheets know it by. */
import { describe, expect, it } from 'vitest';
import { compareFacts } from '../../src/packet/compare-facts.js';
import { FACTS_NAME, factsExport, readFactsFile } from '../../src/packet/facts-file.js';
import type { Packet } from '../../src/packet/packet.js';
import { anchorsOf, wordsOf } from '../../src/packet/words-of.js';
import { samplePacket } from './sample-packet.js';

const packet: Packet = samplePacket;

const factsOf = (one: Packet) => {
  const facts = readFactsFile(factsExport(one, 'sillplate 0').text);
  if (facts === undefined) throw new Error('the facts can’t be read back');
  return facts;
};

describe('the facts of a packet', () => {
  const facts = factsOf(packet);
  const all = JSON.stringify(facts);

  it('hold every word of statements, rows, records, answers and notices', () => {
    const told = new Set(['statement', 'paragraph', 'list', 'record', 'question', 'notice', 'photo', 'pair']);
    const words = packet.sections
      .flatMap(({ blocks }) => blocks)
      .filter(({ kind }) => told.has(kind))
      .flatMap((block) =>
        block.kind === 'notice'
          ? block.paragraphs.map((p) => p.map((run) => run.text).join(''))
          : wordsOf(block),
      )
      .filter((text) => text !== '');
    expect(words.length).toBeGreaterThan(40);
    for (const text of words) expect(all).toContain(JSON.stringify(text).slice(1, -1));
  });

  it('hold every cell of a table, under its column', () => {
    let rows = 0;
    for (const block of packet.sections.flatMap(({ blocks }) => blocks)) {
      if (block.kind !== 'table') continue;
      for (const row of block.rows) {
        const fact = facts.facts.find(({ id }) => id === row.id);
        const cells = row.cells.map((cell) => cell.map((run) => run.text).join(''));
        expect(fact?.about).toBe(cells[0]);
        expect(fact?.says).toEqual(
          cells.slice(1).map((cell, i) => ({ column: block.columns[i + 1]?.title, cell })),
        );
        expect(fact?.under?.at(-1)).toBe(block.caption);
        rows++;
      }
    }
    expect(rows).toBeGreaterThan(3);
  });

  it('say under which headings they stand: a room, a trade', () => {
    let stood = 0;
    for (const section of packet.sections) {
      let heading = '';
      for (const block of section.blocks) {
        if (block.kind === 'heading') heading = block.text;
        if (block.kind !== 'statement' || heading === '') continue;
        expect(facts.facts.find(({ id }) => id === block.id)?.under?.at(-1)).toBe(heading);
        stood++;
      }
    }
    expect(stood).toBeGreaterThan(2);
  });

  it('have ids that are anchors, each once', () => {
    const anchors = anchorsOf(packet);
    const ids = facts.facts.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const others = ids.filter((id) => !anchors.has(id) && !id.startsWith('key-') && !id.endsWith('-note'));
    expect(others).toEqual([]);
  });

  it('say nothing that the packet doesn’t: of a photo no name, and of its picture no digest that is known', () => {
    for (const { id, content } of packet.photos) {
      expect(all).not.toContain(`"${id}"`);
      if (content !== '') expect(all).not.toContain(content);
    }
  });

  it('are no part of the digest that they hold', () => {
    expect(facts.digest).toBe(packet.digest);
    expect(packet.exports.map(({ file }) => file)).not.toContain(FACTS_NAME);
  });
});

describe('facts of two packets', () => {
  const was = factsOf(packet);

  it('are told where they differ, and not where they don’t', () => {
    expect(compareFacts(was, was)).toEqual([]);
    const [first, second, ...rest] = was.facts;
    if (first === undefined || second === undefined) throw new Error('too few facts');
    const is = {
      ...was,
      asOf: '2030-01-01',
      facts: [{ ...first, says: 'otherwise' }, ...rest, { ...second, id: 'new' }],
    };
    expect(
      compareFacts(was, is).map(({ id, was: before, is: after }) => [
        id,
        before !== undefined,
        after !== undefined,
      ]),
    ).toEqual([
      ['as-of', true, true],
      [first.id, true, true],
      ['new', false, true],
      [second.id, true, false],
    ]);
  });

  it('differ where one says a thing under an id that is there already, before or behind it', () => {
    const [first, second] = was.facts;
    if (first === undefined || second === undefined) throw new Error('too few facts');
    const false_ = { ...second, says: 'as good as new' };
    for (const facts of [
      [false_, ...was.facts],
      [...was.facts, false_],
    ]) {
      const changes = compareFacts({ ...was, facts }, was);
      expect(changes).toMatchObject([{ id: second.id, is: undefined }]);
      expect(changes[0]?.was).toContain('as good as new');
    }
    expect(compareFacts({ ...was, facts: [{ ...first }, ...was.facts] }, was)).toMatchObject([
      { id: first.id },
    ]);
  });

  it('differ by their digest where nothing else does', () => {
    const digest = compareFacts({ ...was, digest: 'f00d' }, was);
    expect(digest).toMatchObject([{ id: 'digest', was: 'f00d', is: was.digest }]);
    expect(compareFacts({ ...was, asOf: '2030-01-01', digest: 'f00d' }, was)).toMatchObject([
      { id: 'as-of' },
    ]);
  });

  it('differ where only the picture, the section, its headings or what is known of it does', () => {
    const photo = was.facts.find(({ picture }) => picture !== undefined);
    if (photo === undefined) throw new Error('no photo');
    const swapped = (change: object) => ({
      ...was,
      facts: was.facts.map((one) => (one.id === photo.id ? { ...one, ...change } : one)),
    });
    for (const change of [
      { picture: 'other' },
      { section: 'Elsewhere' },
      { under: ['Another room'] },
      { known: 'Not known' },
      { by: 'receipt' },
    ]) {
      const [found, ...more] = compareFacts(was, swapped(change));
      expect(more).toEqual([]);
      expect(found?.id).toBe(photo.id);
      expect(found?.was).not.toBe(found?.is);
    }
  });
});

it('what is no facts file is not read', () => {
  for (const text of ['', '{', '[]', '{"form":"sillplate-facts-2"}', 'null'])
    expect(readFactsFile(text)).toBeUndefined();
});
