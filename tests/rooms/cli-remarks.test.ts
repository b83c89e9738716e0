/** `sillplate remarks`, as somebody types it. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli.js';
import { type RemarksOptions, remarksCommand } from '../../src/command-remarks.js';
import { quietProgress } from '../tools/quiet-progress.js';

const HOUSE = `house:
  name: Only
  address: { city: Fallow Mills, state: OH }
  kind: detached
  built: { is: 1990, from: county record, evidence: [card] }
  listed: 2026-11-01
levels:
  - { id: main, name: Main level, grade: above, size: 40' x 26' }
rooms:
  - { id: bed-1, level: main, use: bedroom, name: Bedroom 1 }
  - { id: bed-2, level: main, use: bedroom, name: Bedroom 2 }
  - { id: bed-3, level: main, use: bedroom, name: Bedroom 3 }
systems:
  - { id: roof, is: "roof, architectural shingle", name: Roof, installed: { is: 2019-06, evidence: [card] } }
  - { id: heater, is: "water heater, tank, electric", name: Water heater, installed: 2026-02-10 }
documents:
  - { id: card, kind: record, what: county property card, date: 2026-02-01 }
`;

const AS_OF = '2026-11-20';

interface Said {
  readonly status: number;
  readonly out: string;
  readonly error: string;
}

async function heard(
  work: (terminal: Parameters<typeof run>[1]) => Promise<number>,
  colour = false,
): Promise<Said> {
  let out = '';
  let error = '';
  const status = await work({
    out: (text) => {
      out += text;
    },
    error: (text) => {
      error += text;
    },
    colour,
    progress: quietProgress,
  });
  return { status, out, error };
}

/** A content folder with these houses, each with its draft. */
function contentWith(
  drafts: Readonly<Record<string, string | Uint8Array | undefined>>,
  yaml = HOUSE,
): string {
  const content = mkdtempSync(path.join(tmpdir(), 'remarks-'));
  for (const [name, draft] of Object.entries(drafts)) {
    mkdirSync(path.join(content, name));
    writeFileSync(path.join(content, name, 'house.yaml'), yaml);
    if (draft !== undefined) writeFileSync(path.join(content, name, 'remarks.txt'), draft);
  }
  return content;
}

const typed = (content: string, ...words: readonly string[]): Promise<Said> =>
  heard((terminal) => run(['remarks', ...words, '--content', content, '--as-of', AS_OF], terminal));

/** With something piped in. */
const piped = (
  content: string,
  input: string | Uint8Array,
  words: readonly string[],
  options: Partial<RemarksOptions> = {},
): Promise<Said> =>
  heard((terminal) =>
    remarksCommand(words, { content, asOf: AS_OF, format: 'text', ...options }, terminal, async () =>
      typeof input === 'string' ? new TextEncoder().encode(input) : input,
    ),
  );

const checked = async (text: string, yaml = HOUSE): Promise<Said> =>
  typed(contentWith({ only: text }, yaml), 'only');

describe('a draft', () => {
  it('is marked below the exact characters, with why, what to write and where the fact stands', async () => {
    const { status, out } = await checked('Four bedrooms under a 2016 roof. Call today!\n');
    expect(status).toBe(1);
    expect(out).toContain(
      ['  Four bedrooms under a 2016 roof. Call today!', '  ^^^^^^^^^^^^^         ^^^^^^^^^'].join('\n'),
    );
    expect(out).toMatch(/^ {2}1 {21}2$/m);
    expect(out).toMatch(
      /^ 1 {2}contradicted: “Four bedrooms”\n {4}write {2}Three bedrooms\n {4}why {4}the folder/m,
    );
    expect(out).toMatch(/^ 2 {2}contradicted: “2016 roof”\n/m);
    expect(out).toMatch(/Documented: record, 1 February\s+2026\.\s+house\.yaml:\d+/);
    expect(out).toContain('Owner’s statement');
    expect(out).toMatch(/^only, .*remarks\.txt, as of 20 November 2026\n/);
    expect(out).toContain('Not legal advice.');
  });

  it('counts its claims by verdict in one line, and its characters', async () => {
    const { out } = await checked('Four bedrooms. Water heater 2026. Stunning.');
    expect(out.split('\n')[1]).toBe('3 claims: 1 backed, 1 contradicted, 1 opinion; 43 characters.');
  });

  it('that is true ends with 0, and --all shows what backs it', async () => {
    const content = contentWith({ only: 'Three bedrooms. Roof 2019.' });
    const quiet = await typed(content, 'only');
    expect(quiet.status).toBe(0);
    expect(quiet.out).toContain('Nothing in it has to be mended.');
    expect(quiet.out).not.toMatch(/^ {2}[.^~]/m);
    expect(quiet.out).toContain('sillplate remarks only --all');
    const all = await typed(content, 'only', '--all');
    expect(all.status).toBe(0);
    expect(all.out).toMatch(/^ {2}\.{14}/m);
    expect(all.out).toMatch(/^ 1 {2}backed: “Three bedrooms”/m);
  });

  it('is held against the rules for advertisements, each quoted once', async () => {
    const { status, out } = await checked('Adults only. No children. Perfect for families.');
    expect(status).toBe(1);
    expect(out).toContain('3 words to mind');
    expect(out).toMatch(/words to leave out: “Adults only”/);
    expect(out).toMatch(/words to mind: “Perfect for families”/);
    expect(out.match(/rule {3}F05 “/g)).toHaveLength(1);
    expect(out).toContain('F05, as quoted for 1');
    expect(out).toContain('no safe harbour');
  });

  it('whose words are only doubtful ends with 0', async () => {
    const { status, out } = await checked('Three bedrooms, perfect for families.');
    expect(status).toBe(0);
    expect(out).toMatch(/^ {2} {16}~{20}$/m);
  });

  it('that calls new what is older than the word lasts is told the date', async () => {
    const { status, out } = await checked('New water heater.');
    expect(out).toContain('1 word to mind');
    expect(out).toMatch(/new, but when: “New water heater”\n {4}do {5}say the date: 10 February 2026\n/);
    expect(out).toContain('6 months or more before it was listed');
    expect(out).toContain('F10 “entirely new or changed');
    expect(status).toBe(0);
    const fresh = await checked('New water heater.', HOUSE.replace('2026-02-10', '2026-06-10'));
    expect(fresh.out).not.toContain('word to mind');
  });

  it('longer than the listing service takes says where to stop', async () => {
    const yaml = `${HOUSE}listing: { remarks-limit: 40 }\n`;
    const { status, out } = await checked('Three bedrooms. Roof 2019. A quiet lane.\nMore.', yaml);
    expect(status).toBe(1);
    expect(out).toContain('46 of 40 characters');
    expect(out).toContain(
      '6 characters more than the listing service takes; to fit, end it behind “bedrooms. Roof 2019. A quiet lane.” (40 characters)'.slice(
        0,
        60,
      ),
    );
    expect((await checked('Three bedrooms. Roof 2019. A quiet lane.', yaml)).status).toBe(0);
  });

  it('keeps its marks below their characters, whatever stands before them', async () => {
    const odd = '\u202eabc\u202c 家族 e\u0301\u0301\t👨‍👩‍👧 ';
    const { out } = await checked(`${odd}four bedrooms\r\n\r\nfour bedrooms`);
    // Direction marks and joiners are one sign each, wide letters two columns, accents none, the family three times two.
    const before = '·abc· 家族 e\u0301\u0301 👨·👩·👧 ';
    const columns = 5 + 1 + 4 + 1 + 1 + 1 + 8 + 1;
    expect(out).toContain(`  ${before}four bedrooms\n  ${' '.repeat(columns)}${'^'.repeat(13)}\n`);
    expect(out).toMatch(/^ {2}four bedrooms\n {2}\^{13}\n {2}2$/m);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: none may reach a terminal.
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202a-\u202e\u200d]/);
  });

  it('is wrapped at blanks, cut where a word is longer than a line, and no line is wider than the report', async () => {
    const { out } = await checked(`${'word '.repeat(60)}${'x'.repeat(300)} four bedrooms`);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(96);
    expect(out).toMatch(/four bedrooms\n +\^{13}\n/);
  });

  it('is painted only where there is colour', async () => {
    const content = contentWith({ only: 'Four bedrooms.' });
    const words = ['remarks', 'only', '--content', content, '--as-of', AS_OF];
    const painted = await heard((terminal) => run(words, terminal), true);
    const plain = await heard((terminal) => run(words, terminal));
    expect(painted.out).toContain('\u001b[31;1m^^^^^^^^^^^^^\u001b[0m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the terminal's own colours.
    expect(painted.out.replace(/\u001b\[[0-9;]*m/g, '')).toBe(plain.out);
  });

  it('is told as data, with offsets of its own characters', async () => {
    const text = 'Stunning!\r\nFour bedrooms. Adults only.';
    const { status, out, error } = await typed(contentWith({ only: text }), 'only', '--format', 'json');
    const data = JSON.parse(out);
    expect([status, error]).toEqual([1, '']);
    expect(data).toMatchObject({ house: 'only', asOf: AS_OF, text, limit: null, toMend: true, length: 37 });
    for (const one of [...data.claims, ...data.wording]) expect(text.slice(one.from, one.to)).toBe(one.says);
    const claim = data.claims.find(({ verdict }: { verdict: string }) => verdict === 'contradicted');
    expect(claim).toMatchObject({ says: 'Four bedrooms', rule: 'count.bedrooms', instead: 'Three bedrooms' });
    expect(claim.facts[0]).toMatchObject({ path: 'rooms', known: 'Owner’s statement', evidence: [] });
    expect(claim.facts[0].line).toBe(HOUSE.split('\n').indexOf('rooms:') + 1);
    expect(data.wording[0]).toMatchObject({ says: 'Adults only', level: 'block', rule: { id: 'F05' } });
  });

  it('is told beside the lines of its file, for GitHub', async () => {
    const { out } = await typed(
      contentWith({ only: 'Stunning!\nFour bedrooms.\n' }),
      'only',
      '--format',
      'github',
    );
    expect(out).toMatch(
      /^::warning file=.*remarks\.txt,line=2,col=1,title=remarks\.claims::“Four bedrooms”: the folder lists 3 bedrooms/,
    );
    expect(out.trim().split('\n')).toHaveLength(1);
  });

  it('that comes in from elsewhere is held against the house that is named', async () => {
    const content = contentWith({ east: undefined, west: undefined });
    const file = path.join(content, 'draft.txt');
    writeFileSync(file, '\ufeffFour bedrooms.');
    const named = await typed(content, file, 'west');
    expect(named.status).toBe(1);
    expect(named.out).toMatch(/^west, /);
    expect(await typed(content, 'west', file)).toEqual(named);
    const input = await piped(content, 'Four bedrooms.', ['-', 'west']);
    expect(input.status).toBe(1);
    expect(input.out).toMatch(/^west, as of /);
  });

  it('that lies in a house folder is that house’s', async () => {
    const content = contentWith({ east: 'Three bedrooms.', west: 'Three bedrooms.' });
    const { status, out } = await typed(content, path.join(content, 'east', 'remarks.txt'));
    expect(status).toBe(0);
    expect(out).toMatch(/^east, /);
  });

  it('may have another name', async () => {
    const content = contentWith({ only: undefined }, `${HOUSE}listing: { remarks: listing.txt }\n`);
    writeFileSync(path.join(content, 'only', 'listing.txt'), 'Four bedrooms.');
    expect((await typed(content, 'only')).out).toContain('listing.txt');
  });

  it('is the same twice', async () => {
    const content = contentWith({ only: 'Four bedrooms under a 2016 roof.' });
    expect(await typed(content, 'only')).toEqual(await typed(content, 'only'));
  });
});

describe('all houses', () => {
  it('are checked, those without a draft passed over', async () => {
    const content = contentWith({ east: 'Three bedrooms.', south: undefined, west: 'Four bedrooms.' });
    const { status, out, error } = await typed(content);
    expect(status).toBe(1);
    expect(out).toMatch(/^east, [\s\S]*^west, /m);
    expect(error).toMatch(/^south: no .*remarks\.txt\n$/);
    const data = JSON.parse((await typed(content, '--format', 'json')).out);
    expect(data.map(({ house }: { house: string }) => house)).toEqual(['east', 'west']);
  });

  it('without any draft says what to type', async () => {
    const { status, error } = await typed(contentWith({ east: undefined, west: undefined }));
    expect(status).toBe(2);
    expect(error).toContain('none of 2 houses has a draft');
    expect(error).toContain('remarks.txt');
  });
});

describe('what can’t be read', () => {
  const cases: readonly [string, string | Uint8Array, RegExp][] = [
    [
      'bytes that are no text',
      new Uint8Array([0x61, 0xff, 0x62]),
      /intake\.encoding {2}.*:1:2\n.*\n.*not UTF-8/,
    ],
    ['a control character', 'Three\u001b[31m bedrooms', /facts\.sign {2}.*:1:6\n[\s\S]*U\+001B/],
    ['more than a draft', 'a'.repeat(100_001), /intake\.too-big/],
    ['nothing but blanks', ' \n\n ', /intake\.empty/],
  ];
  it.each(cases)('%s', async (_, draft, said) => {
    const content = contentWith({ only: draft });
    const { status, out, error } = await typed(content, 'only');
    expect([status, out]).toEqual([2, '']);
    expect(error).toMatch(said);
    expect(error).toContain('  do: ');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: none may reach a terminal.
    expect(error).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
    const input = await piped(content, draft, ['-', 'only']);
    expect(input.status).toBe(2);
    expect(input.error).toContain('what was typed');
  });

  it('a draft that is not there', async () => {
    const { status, error } = await typed(contentWith({ only: undefined }), 'only');
    expect(status).toBe(2);
    expect(error).toMatch(/there is no file .*only\/remarks\.txt/);
    expect(error).toContain('sillplate remarks --draft only > ');
  });

  it('a path that leads out of the house', async () => {
    const content = contentWith({ only: undefined }, `${HOUSE}listing: { remarks: ../secret.txt }\n`);
    writeFileSync(path.join(content, 'secret.txt'), 'Four bedrooms.');
    const { status, out, error } = await typed(content, 'only');
    expect([status, out]).toEqual([2, '']);
    expect(error).toContain('intake.outside');
  });

  it('a house with errors', async () => {
    const { status, out, error } = await checked('Three bedrooms.', HOUSE.replace('1990', '2019-13-01'));
    expect([status, out]).toEqual([1, '']);
    expect(error).toContain('facts.date');
  });
});

describe('a command line that can’t be followed', () => {
  const content = contentWith({ east: 'Three bedrooms.', west: 'Three bedrooms.' });
  it.each([
    [['eastt'], 'perhaps  sillplate remarks east'],
    [['--draft'], 'type  sillplate remarks --draft east'],
    [['--length', '500', 'east'], '--length goes with --draft'],
    [['--also-owner', 'east'], '--also-owner goes with --draft'],
    [['--draft', '--all', 'east'], 'leave one of them out'],
    [['--all', '--format', 'json', 'east'], 'leave out  --all'],
    [['--draft', '--length', '0', 'east'], 'write how many characters'],
    [['--draft', path.join(content, 'east', 'remarks.txt'), 'east'], 'leave out  --draft'],
    [[path.join(content, 'east', 'house.yaml')], 'a file of facts'],
    [['-', path.join(content, 'east', 'remarks.txt')], 'two drafts were named'],
  ])('%j', async (words, way) => {
    const { status, out, error } = await typed(content, ...words);
    expect([status, out]).toEqual([2, '']);
    expect(error).toContain(way);
    expect(error).toMatch(/^error cli\.usage/);
  });

  it('is told in the form that was asked for', async () => {
    const { status, out } = await typed(content, '--draft', '--format', 'github', 'east');
    expect(status).toBe(2);
    expect(out).toMatch(/^::error title=cli\.usage::a draft has no messages for GitHub/);
  });

  it('asks which house a piped draft is of', async () => {
    const { status, error } = await piped(content, 'Three bedrooms.', ['-']);
    expect(status).toBe(2);
    expect(error).toContain('type  sillplate remarks - east');
  });
});

describe('a draft from the facts', () => {
  const content = contentWith({ only: undefined });

  it('is the text alone on standard output, with what is behind each phrase beside it', async () => {
    const { status, out, error } = await typed(content, '--draft', 'only');
    expect(status).toBe(0);
    expect(out).toMatch(/^[A-Z].*\.\n$/);
    expect(out).not.toContain('[1]');
    expect(error).toContain('[1]');
    expect(error).toContain('of 1,000 characters');
    expect(error).toContain('Documented');
  });

  it('is no longer than it is asked for', async () => {
    const { out } = await typed(content, '--draft', 'only', '--length', '60');
    expect(out.trim().length).toBeLessThanOrEqual(60);
  });

  it('takes the limit of the listing service', async () => {
    const limited = contentWith({ only: undefined }, `${HOUSE}listing: { remarks-limit: 60 }\n`);
    const { out, error } = await typed(limited, '--draft', 'only');
    expect(out.trim().length).toBeLessThanOrEqual(60);
    expect(error).toContain('of 60 characters');
  });

  it('tells the owner’s statements only where that is asked for', async () => {
    const plain = await typed(content, '--draft', 'only');
    const owner = await typed(content, '--draft', 'only', '--also-owner');
    expect(plain.out).not.toMatch(/water heater/i);
    expect(owner.out).toMatch(/water heater/i);
  });

  it('is told as data, each phrase with its fact', async () => {
    const data = JSON.parse((await typed(content, '--draft', 'only', '--format', 'json')).out);
    expect(data.house).toBe('only');
    for (const { from, to, says } of data.phrases) expect(data.text.slice(from, to)).toBe(says);
    expect(data.phrases.length).toBeGreaterThan(0);
  });

  it('of a house without papers says so', async () => {
    const bare = contentWith(
      { only: undefined },
      'house: { name: Only, address: { city: Fallow Mills, state: OH }, kind: detached, built: 1990 }\n',
    );
    const { status, out, error } = await typed(bare, '--draft', 'only');
    expect([status, out]).toEqual([1, '']);
    expect(error).toContain('--also-owner');
  });

  it('passes its own check', async () => {
    for (const house of ['quarry-road', 'larkspur-court']) {
      const demo = 'content';
      const { out } = await typed(demo, '--draft', house);
      const answer = await piped(demo, out, ['-', house], { format: 'json' });
      const { claims, wording } = JSON.parse(answer.out);
      expect(wording).toEqual([]);
      const wrong = claims.filter(({ verdict }: { verdict: string }) =>
        /contradicted|wider|no-fact/.test(verdict),
      );
      expect(
        wrong.map(({ says, because }: { says: string; because: string }) => `${house}: ${says}: ${because}`),
      ).toEqual([]);
      expect(claims.length).toBeGreaterThan(10);
    }
  });
});

it('is in the help, with examples and statuses', async () => {
  const { status, out } = await typed('content', '--help');
  expect(status).toBe(0);
  for (const words of ['--draft', '--also-owner', 'Exit status:', 'sillplate remarks draft.txt my-house'])
    expect(out).toContain(words);
});
