/** `sillplate ask`, as somebody types it. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli.js';
import { typedHouse } from '../../src/find-houses.js';
import { openSearch } from '../../src/packet/answers/find-entries.js';
import { searchDataOf } from '../../src/packet/answers/search-entries.js';
import { composePacket } from '../../src/packet/compose.js';
import { quietProgress } from '../tools/quiet-progress.js';
import { demoOrder, SPOKEN } from './ask-house.js';

const content = fileURLToPath(new URL('../../content', import.meta.url));

async function typed(...words: string[]): Promise<{ status: number; out: string; error: string }> {
  let out = '';
  let error = '';
  const status = await run(words, {
    out: (text) => {
      out += text;
    },
    error: (text) => {
      error += text;
    },
    colour: false,
    progress: quietProgress,
  });
  return { status, out, error };
}

const ask = (...words: string[]) => typed('ask', ...words, '--content', content, '--as-of', '2026-11-20');

/** A content folder with one house, written as given. */
function oneHouse(yaml: string): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'ask-'));
  mkdirSync(path.join(folder, 'only'));
  writeFileSync(path.join(folder, 'only', 'house.yaml'), yaml);
  return folder;
}

const HOUSE =
  'house: { name: Only, address: { city: Fallow Mills, state: OH }, kind: detached, built: 1990 }\n';

describe('a question', () => {
  it('is answered with how it is known, as of when, and where it stands', async () => {
    const { status, out } = await ask('how old is the roof', 'quarry-road');
    expect(status).toBe(0);
    expect(out).toMatch(
      /^How old is the roof\?\n {2}Laid in June 2019, by the permit\.\n {2}known {3}Documented · permit, 14 June 2019\n/,
    );
    expect(out).toContain('stands  Buyer packet, Questions (questions.html#question-2)');
    expect(out).toContain('As of 20 November 2026');
  });

  it('needs no quotes', async () => {
    const quoted = await ask('is there aluminum wiring', 'quarry-road');
    const bare = await ask('is', 'there', 'aluminum', 'wiring', 'quarry-road');
    expect(bare).toEqual(quoted);
    expect(bare.out).toContain('Not known. Walls were opened in kitchen and bath only');
  });

  it('has three answers at most, and is the same twice', async () => {
    const first = await ask('heating', 'quarry-road', '--format', 'json');
    expect(JSON.parse(first.out).answers.length).toBeLessThanOrEqual(3);
    expect(await ask('heating', 'quarry-road', '--format', 'json')).toEqual(first);
  });

  it.each(['quarry-road', 'larkspur-court'])(
    'gets the first answers of the box on the pages: %s',
    async (house) => {
      const { entries, words } = searchDataOf(composePacket(await demoOrder(house)));
      const find = openSearch(entries, words);
      // Each reads the house anew; all of them are asked in search-entries.test.ts.
      for (const [asked, first] of SPOKEN.filter((_, index) => index % 4 === 0)) {
        const { status, out } = await ask(asked, house, '--format', 'json');
        const { answers } = JSON.parse(out) as { answers: { question: string; known: string }[] };
        expect(status, asked).toBe(0);
        expect(answers[0]?.question, asked).toMatch(first);
        const shown = find(asked).map(({ entry }) => entry.title);
        expect(
          answers.map(({ question }) => question),
          asked,
        ).toEqual(shown.slice(0, answers.length));
      }
    },
  );

  it('that no packet answers is refused with whom to ask', async () => {
    const { status, out } = await ask('is the house up to code', 'quarry-road');
    expect(status).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'Is the house up to code? Whether a house follows a building code is for those who enforce it to say. Ask the building office, and have a licensed inspector look. stands ',
    );
    expect(out.split('\n\n')[0]).not.toContain('known   ');
  });

  it('has a line of how it is known where the packet has a mark, and no other', async () => {
    const { entries, words } = searchDataOf(composePacket(await demoOrder('quarry-road')));
    const find = openSearch(entries, words);
    const bare = entries.find(
      (one) => one.kind === 'fact' && one.known === '' && find(one.title)[0]?.entry === one,
    );
    const { out } = await ask(bare?.title ?? '', 'quarry-road', '--format', 'json');
    expect(JSON.parse(out).answers[0]).toMatchObject({ answer: bare?.text, known: null });
    expect((await ask(bare?.title ?? '', 'quarry-road')).out).not.toContain('known   Not known');
    // The box on the pages shows the same words of it.
    expect((await ask('is it noisy', 'quarry-road')).out).toContain('known   Not known');
    expect(entries.find(({ title }) => title === 'Is it noisy?')?.known).toBe('Not known');
  });

  it('that nothing fits says so, names the nearest, and ends with 1', async () => {
    const { status, out } = await ask('zebra opera', 'quarry-road');
    expect(status).toBe(1);
    expect(out).toContain('Nothing in this house’s record fits that.');
    expect(out).toMatch(/Nearest questions:\n( {2}\S.*\n){3}/);
    const { nearest, answers } = JSON.parse(
      (await ask('zebra roof opera tuba', 'quarry-road', '--format', 'json')).out,
    );
    expect(answers).toEqual([]);
    expect(nearest[0]).toMatch(/roof/);
  });

  it('is told no more than the edition knows', async () => {
    const words = 'in the sleeve';
    expect((await ask(words, 'quarry-road')).out).not.toContain('sleeve on the tank');
    const file = await ask(words, 'quarry-road', '--edition', 'file', '--format', 'json');
    expect(file.out).toContain('sleeve on the tank');
  });
});

describe('which house is meant', () => {
  it('is asked where there are several', async () => {
    const { status, error } = await ask('how old is the roof');
    expect(status).toBe(2);
    expect(error).toContain('there are 2 houses here, and one is meant: larkspur-court, quarry-road');
    // A bare name is looked for in the content folder that nobody has to name.
    expect(error).toContain(`do: type  sillplate ask "how old is the roof" ${content}/larkspur-court`);
  });

  it('may stand behind its house', async () => {
    const behind = await ask('quarry-road', 'how old is the water heater');
    expect(behind).toEqual(await ask('how old is the water heater', 'quarry-road'));
    expect(behind.status).toBe(0);
  });

  it('is said where the name is no house', async () => {
    const { status, error } = await ask('how old is the roof', 'quary-road');
    expect(status).toBe(2);
    expect(error).toContain('there is no house “quary-road”');
    expect(error).toContain(`sillplate ask "how old is the roof" ${content}/quarry-road`);
  });

  it('is said of two single words, too, where the second is no word of any question', async () => {
    const { status, error } = await ask('roof', 'nohouse');
    expect(status).toBe(2);
    expect(error).toContain('there is no house “nohouse”; there is larkspur-court, quarry-road');
    expect((await ask('lead', 'paint')).error).toContain('there are 2 houses here, and one is meant');
  });

  it('is asked where two are named', async () => {
    const { status, out, error } = await ask('roof', 'quarry-road', 'larkspur-court');
    expect([status, out]).toEqual([2, '']);
    expect(error).toContain('2 houses are named, and one is meant: quarry-road, larkspur-court');
    expect(error).toContain('sillplate ask "roof" quarry-road');
    expect(error).toContain('sillplate ask "roof" larkspur-court');
  });

  it('is told so that a shell takes it: quotes in a question, blanks in a path', async () => {
    const folder = path.join(mkdtempSync(path.join(tmpdir(), 'ask-')), 'my houses');
    for (const name of ['ash', 'oak']) {
      mkdirSync(path.join(folder, name), { recursive: true });
      writeFileSync(path.join(folder, name, 'house.yaml'), HOUSE);
    }
    const { error } = await typed('ask', 'is the "$5" step `new`', '--content', folder);
    expect(error).toContain(`sillplate ask "is the \\"\\$5\\" step \\\`new\\\`" "${folder}/ash"`);
    const { status, out } = await typed('ask', 'zebra opera', `${folder}/oak`, '--as-of', '2026-06-30');
    expect(status).toBe(1);
    expect(out).toContain(`sillplate ask "${folder}/oak"`);
  });

  it.each([
    ['content/oak', 'oak'],
    ['oak', './oak'],
    ['./oak', './oak'],
    ['.', '.'],
    ['other/oak', 'other/oak'],
    ['content/deep/oak', 'content/deep/oak'],
    ['my houses/oak', '"my houses/oak"'],
    ['$HOME/oak', String.raw`"\$HOME/oak"`],
    ['-x/oak', './-x/oak'],
  ])('is typed for %s as %s', (shown, words) => {
    expect(typedHouse(shown)).toBe(words);
  });

  it('is clear where there is one', async () => {
    const folder = oneHouse(HOUSE);
    const { status, out } = await typed(
      'ask',
      'when',
      'was',
      'it',
      'built',
      '--content',
      folder,
      '--as-of',
      '2026-06-30',
    );
    expect(status).toBe(0);
    expect(out).toMatch(/^When was the house built\?\n {2}1990 \(35 to 36 years\)/);
    const { out: listed } = await typed('ask', '--content', folder, '--as-of', '2026-06-30');
    expect(listed).toMatch(
      /^only: \d+ of \d+ questions that buyers ask have no answer yet, most asked first\.\n\nHow old is the roof\?\n {2}do: /,
    );
  });

  it('is not answered from a record with errors', async () => {
    const folder = oneHouse(HOUSE.replace('1990', '2019-13-01'));
    const { status, out, error } = await typed('ask', 'built', '--content', folder, '--as-of', '2026-06-30');
    expect(status).toBe(1);
    expect(out).toBe('');
    expect(error).toContain('facts.date');
  });
});

describe('what has no answer yet', () => {
  let list: { ask: string; type: string; whom: string }[] = [];

  beforeAll(async () => {
    const { status, out } = await ask('quarry-road', '--format', 'json');
    expect(status).toBe(0);
    list = JSON.parse(out).unanswered;
  });

  it('is listed most asked first, each with what to type', () => {
    expect(list.map(({ ask: question }) => question)).toContain('Is it in a flood zone?');
    for (const { type, whom } of list) {
      expect(type).toMatch(/ {2}\S/);
      expect(whom).toMatch(/\.$/);
    }
  });

  it('is listed with --unanswered, too', async () => {
    const { out } = await ask('quarry-road', '--unanswered', '--format', 'json');
    expect(JSON.parse(out).unanswered).toEqual(list);
  });

  it('is not listed in place of an answer to a question', async () => {
    const { status, out, error } = await ask('--unanswered', 'roof', 'quarry-road');
    expect([status, out]).toEqual([2, '']);
    expect(error).toContain('a question and --unanswered don’t go together');
    expect(error).toContain('to ask, type  sillplate ask "roof" quarry-road');
    expect(error).toContain('for the list, type  sillplate ask --unanswered quarry-road');
  });

  it('holds nothing that no packet says', () => {
    expect(list.map(({ ask: question }) => question)).not.toContain('Is the house up to code?');
  });
});
