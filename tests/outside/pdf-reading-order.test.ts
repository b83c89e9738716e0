/**
 * What is read aloud of every edition's PDF is the packet, word for word and in its order: by poppler's reading of the
 * structure tree.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Block, Packet } from '../../src/packet/packet.js';
import { wordsOf } from '../../src/packet/words-of.js';
import { builtHouses, editionsOf } from '../tools/built-houses.js';
import { comparable } from '../tools/find-words.js';
import { lacking, run } from '../tools/outside-programs.js';

/**
 * A text as it is compared: words with one blank between them. No blank stands beside a sign at which a line may end, so
 * that it doesn't matter where lines end, and the point between a mark's word and its detail is no word.
 */
const spoken = (texts: readonly string[]): string =>
  comparable(texts.join(' '))
    .replace(/[\s·]+/gu, ' ')
    .replace(/ ?([-–—/×]) ?/gu, '$1')
    .trim();

/** Parts of the structure below its root, in order: the kind of element, and all texts in it. */
interface Part {
  readonly kind: string;
  readonly texts: readonly string[];
}

/** Texts are to be put together as they are: blanks between words are in them. */
function partsOf(pdf: string): Part[] {
  const lines = run('pdfinfo', '-struct-text', '-enc', 'UTF-8', pdf).toString('utf8').split('\n');
  const parts: { kind: string; texts: string[] }[] = [];
  for (const line of lines) {
    const [, depth = '', element] = /^( {2,})([A-Z][A-Za-z0-9]*)(?: \(block\)|:)?$/.exec(line) ?? [];
    if (element !== undefined && depth.length === 2) parts.push({ kind: element, texts: [] });
    // A link stands within a text; whatever else begins, begins a text of its own.
    else if (element !== undefined) parts.at(-1)?.texts.push(' ');
    const text = /^ {4,}"(.*)"$/u.exec(line)?.[1];
    if (text !== undefined) parts.at(-1)?.texts.push(text);
  }
  return parts;
}

const heard = (...parts: readonly (Part | undefined)[]): string =>
  spoken([parts.map((part) => ` ${part?.texts.join('') ?? ''} `).join('')]);

const isFigure = (block: Block): boolean => ['photo', 'pair', 'photos', 'drawing'].includes(block.kind);

/** A figure's words as they are tagged: a drawing's own before its caption, a pair's each under its word. */
function figureWords(block: Block): string[] {
  const [caption = '', ...rest] = wordsOf(block);
  if (block.kind === 'drawing') return [...rest, caption];
  if (block.kind === 'pair') return ['Before', 'After', caption];
  return [caption, ...rest];
}

const printed = (packet: Packet): { title: string; blocks: Block[] }[] =>
  packet.sections.map(({ title, blocks }) => ({
    title,
    blocks: blocks.filter((block) => block.only !== 'web'),
  }));

/** Where two texts part, with some of each around it. */
function parting(said: string, wanted: string): string {
  let same = 0;
  while (same < said.length && said[same] === wanted[same]) same += 1;
  const around = (text: string): string => text.slice(Math.max(0, same - 40), same + 80);
  return `it reads “…${around(said)}…” and the packet says “…${around(wanted)}…”`;
}

const outside = lacking('pdfinfo');

describe.skipIf(outside.some)(`read aloud${outside.words}`, () => {
  describe.each(builtHouses())('%s', (house) => {
    let editions: { packet: Packet; parts: Part[] }[];

    beforeAll(async () => {
      // One house file of ninety sheets is enough: the other one has the same kinds of blocks.
      editions = (await editionsOf(house))
        .filter(({ packet }) => packet.edition.name !== 'file' || house === builtHouses()[0])
        .map(({ packet, pdf }) => ({ packet, parts: partsOf(pdf) }));
      expect(editions.length).toBeGreaterThan(3);
    });

    it('begins with the title, the key facts and the contents', () => {
      for (const { packet, parts } of editions) {
        const front = heard(
          ...parts.slice(
            0,
            parts.findIndex(({ kind }) => kind === 'Sect'),
          ),
        );
        const titles =
          packet.arrangement === 'page-per-section' ? packet.sections.map(({ title }) => title) : [];
        let at = 0;
        for (const text of [
          packet.house.name,
          ...packet.keyFacts.flatMap(({ label, value }) => [label, value]),
          ...titles,
        ]) {
          const next = front.indexOf(spoken([text]), at);
          expect(next, `${packet.edition.name}: ${text}`).toBeGreaterThanOrEqual(at);
          at = next;
        }
      }
    });

    it('goes on with every section in order, each word of it and no other', () => {
      const faults: string[] = [];
      for (const { packet, parts } of editions) {
        const sections = parts.filter(({ kind }) => kind === 'Sect');
        expect(sections.length).toBe(packet.sections.length);
        for (const [index, { title, blocks }] of printed(packet).entries()) {
          const where = `${packet.edition.name}, ${title}`;
          let said = heard(sections[index]);
          // A figure floats to where a page has room for it, and is read where it stands: whole, and in its section.
          for (const figure of blocks.filter(isFigure)) {
            const words = spoken(figureWords(figure));
            if (!said.includes(words)) faults.push(`${where}: ${figure.id} is not read as ${words}`);
            said = spoken([said.replace(words, ' ')]);
          }
          const wanted = spoken([title, ...blocks.filter((block) => !isFigure(block)).flatMap(wordsOf)]);
          if (said !== wanted) faults.push(`${where}: ${parting(said, wanted)}`);
        }
      }
      expect(faults).toEqual([]);
    });

    it('ends with what this paper is not', () => {
      for (const { packet, parts } of editions)
        expect(heard(...parts).endsWith(spoken([packet.standing]))).toBe(true);
    });
  });
});
