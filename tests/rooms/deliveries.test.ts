/** A packet is given, facts change, another is given: what the second one says of the first, and when its owner is warned. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { type SinceDelivery, warnOfDelivered } from '../../src/delivered.js';
import { houseOf } from '../properties/made-house.js';
import { textsIn } from '../tools/every-byte.js';
import { typed } from '../tools/gallery.js';
import { fingerprint, scratchFolder } from './cli-program.js';
import { decoded } from './rendered-sample.js';

const YAML = `house:
  name: Test Lane
  address: { street: 9 Tannery Steps, city: Fallow Mills, state: OH, show: full }
  kind: detached
  built: { is: 1985, from: county record }
  lot: 0.25 acre
people:
  - { id: ridge, name: Ridge Street Plumbing, trade: plumber, licence: OH-PL-00000, contact: 555-0101 }
levels:
  - { id: main, name: Main level, grade: above, size: 30' x 20' }
rooms:
  - { id: hall, name: Hall, level: main, use: hall, size: 10' x 8' }
systems:
  - { id: roof, is: "roof, architectural shingle", name: "roof, house", installed: 2019-06, kept: true }
  - { id: furnace, is: "furnace, gas", installed: 2015, kept: true }
work:
  - { id: drain, what: drain of the sink, did: replaced, done: 2026-03-04, by: ridge, where: [hall], permit: pl-1 }
conditions:
  - { what: garage floor has a crack, since: as bought }
  - { what: gate sticks, since: as bought }
permits:
  - { id: pl-1, number: PL-1, what: drain of the sink, office: Fallow Mills, issued: 2026-03-01, state: open }
documents:
  - { id: chimney-letter, what: letter on the chimney of the neighbour, kind: letter, date: 2026-02-02 }
  - { id: county-card, what: county card, kind: record, date: 2026-02-01 }
`;

/** One fact is corrected, one has changed, one is new, one is withheld. */
const CHANGED = YAML.replace(
  'installed: 2019-06, kept',
  'installed: { is: 2017-06, was: 2019-06, corrected: 2026-07-02 }, kept',
)
  .replace('issued: 2026-03-01, state: open', 'issued: 2026-03-01, state: final')
  .replace(
    '  - { what: garage floor',
    '  - { what: fence post leans, since: found in July }\n  - { what: garage floor',
  )
  .replace('date: 2026-02-02 }', 'date: 2026-02-02, private: true }');

/** The least that is a house. */
const HOUSE_SPEC = {
  house: {
    name: 'Test Lane',
    address: { city: 'Fallow Mills', state: 'OH' },
    kind: 'detached',
    built: 1985,
  },
} as never;

const FIRST = ['--as-of', '2026-06-12', '--on', '2026-06-12'];
const LATER = ['--as-of', '2026-07-20', '--on', '2026-07-21'];
/** Nobody may read them in a published packet. */
const AGENT = 'Qzagentx of the buyer';
const NOTE = 'qznotex, with the keys';

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

let home: string;
let count = 0;
const write = (yaml: string): void => writeFileSync(path.join(home, 'house.yaml'), yaml);
const out = (): string => path.join(home, '..', 'out');
const names = (): string[] => readdirSync(path.join(home, 'deliveries')).sort();
const folderOf = (name: string | undefined): string => path.join(home, 'deliveries', name ?? '');

const deliver = (...words: string[]) => typed(['deliver', home, '--out', out(), ...words]);
const list = (...words: string[]) =>
  typed(['deliveries', home, '--out', out(), '--as-of', '2026-07-20', ...words]);
const check = async (asOf = '2026-07-20'): Promise<{ fact: string; message: string; do: string[] }[]> => {
  const { said } = await typed(['check', home, '--as-of', asOf, '--out', out(), '--format', 'json']);
  return JSON.parse(said).filter((one: { code: string }) => one.code === 'packet.delivered');
};
const build = async (asOf: string, edition = 'buyer'): Promise<string> => {
  const { said, status } = await typed([
    'build',
    home,
    '--edition',
    edition,
    '--as-of',
    asOf,
    '--out',
    out(),
  ]);
  expect(status, said).toBe(0);
  return path.join(out(), path.basename(home), edition);
};

interface Said {
  readonly id: string;
  readonly section: string;
  readonly about?: string;
  readonly says: string | { readonly column: string; readonly cell: string }[];
}
const changesIn = (folder: string): Said[] =>
  (JSON.parse(readFileSync(path.join(folder, 'facts.json'), 'utf8')).facts as Said[]).filter(({ id }) =>
    id.startsWith('changes-'),
  );
const cells = ({ about, says }: Said): string[] =>
  typeof says === 'string' ? [says] : [about ?? '', ...says.map(({ cell }) => cell)];
const tablesOf = (said: readonly Said[], kind: string): string[][] =>
  said.filter(({ id }) => id.includes(`-${kind}-`)).map(cells);

beforeEach(() => {
  home = path.join(scratch, String(++count), 'test-lane');
  mkdirSync(home, { recursive: true });
  write(YAML);
});

describe('a delivery', () => {
  it('freezes record, data, PDF and pages with a digest each, and a second program finds them whole', async () => {
    const { said, status } = await deliver('--edition', 'buyer', '--to', AGENT, '--note', NOTE, ...FIRST);
    expect(status, said).toBe(0);
    const [name = ''] = names();
    expect(name).toMatch(/^2026-06-12-buyer-[0-9a-f]{8}$/u);
    const folder = folderOf(name);
    expect(readdirSync(folder).sort()).toEqual([
      'delivery.yaml',
      'facts.json',
      'manifest-sha256.txt',
      'pages',
      'test-lane-buyer.pdf',
    ]);
    const record = readFileSync(path.join(folder, 'delivery.yaml'), 'utf8');
    for (const line of [
      'number: 1',
      `  - "${AGENT}"`,
      'given: 2026-06-12',
      'as-of: 2026-06-12',
      `note: "${NOTE}"`,
    ])
      expect(record.split('\n')).toContain(line);
    expect(said).toContain(name);
    expect(said).toContain('test-lane-buyer.pdf');
    // GNU coreutils reads the manifest of the BagIt form (RFC 8493, 2.1.3).
    const checked = execFileSync('sha256sum', ['-c', 'manifest-sha256.txt'], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect(checked.trim().split('\n')).toHaveLength(
      readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile()).length - 1,
    );
  });

  it('is what the folder builds then and right after it, byte for byte', async () => {
    const before = fingerprint(await build('2026-06-12'));
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    expect(fingerprint(path.join(folderOf(names()[0]), 'pages'))).toBe(before);
    expect(fingerprint(await build('2026-06-12'))).toBe(before);
    // And with a list of changes in it as well.
    write(CHANGED);
    await deliver('--edition', 'buyer', '--to', AGENT, ...LATER);
    const second = fingerprint(path.join(folderOf(names()[1]), 'pages'));
    expect(second).toContain('changes.html');
    expect(fingerprint(await build('2026-07-20'))).toBe(second);
  });

  it('of the same packet to another person names the first, and is damaged if that is', async () => {
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    const { said } = await deliver('--edition', 'buyer', '--to', 'J. Cole', ...FIRST);
    const [first = '', second = ''] = names();
    expect(second).toBe(`${first}-2`);
    expect(said).toContain('byte for byte');
    expect(readdirSync(folderOf(second)).sort()).toEqual([
      'delivery.yaml',
      'facts.json',
      'manifest-sha256.txt',
    ]);
    expect(readFileSync(path.join(folderOf(second), 'delivery.yaml'), 'utf8')).toContain(`same-as: ${first}`);
    expect((await list()).status).toBe(0);
    appendFileSync(path.join(folderOf(first), 'pages/index.html'), ' ');
    const damaged = await list();
    expect(damaged.status).toBe(1);
    expect(damaged.said).toContain(`${first}/pages/index.html was changed`);
    // A copy that is no longer whole is not relied on again.
    await deliver('--edition', 'buyer', '--to', 'a third', ...FIRST);
    expect(readdirSync(folderOf(`${first}-3`))).toContain('pages');
  });

  it('of the house file is refused without --private; so is one to nobody, and of nothing', async () => {
    for (const [words, say] of [
      [['--edition', 'file', '--to', 'tax preparer'], '--private'],
      [['--edition', 'buyer'], 'it is not said who gets the packet'],
      [['--to', AGENT], 'it is not said which packet'],
      [['--edition', 'buyer', '--to', ' '], 'without a name'],
      [['--edition', 'buyer', '--to', 'a\u0007b'], 'can’t be printed'],
      [['--dry-run'], 'it is not said which packet'],
      [['--note', NOTE], 'it is not said which packet'],
      [['--private'], 'it is not said which packet'],
      [['--edition', 'buyer', '--to', AGENT, '--format', 'json'], 'unknown option'],
      [['--list'], 'unknown option'],
    ] as const) {
      const { said, status } = await deliver(...words, ...FIRST);
      expect(said).toContain(say);
      expect(status).toBe(2);
    }
    write(YAML.replace('1985', '1985-13'));
    expect(await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST)).toMatchObject({ status: 1 });
    expect(readdirSync(home)).toEqual(['house.yaml']);
  });

  it('that is shown with --dry-run is not written', async () => {
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    write(CHANGED);
    const before = fingerprint(home);
    const { said, status } = await deliver(
      '--edition',
      'buyer',
      '--to',
      AGENT,
      '--to',
      'J. Cole',
      '--dry-run',
      ...LATER,
    );
    expect(status).toBe(0);
    expect(said).toContain('it said June 2019, and is June 2017');
    expect(said).toContain('J. Cole has been given no buyer packet yet');
    // Old words of what is no longer told are for the owner's screen.
    expect(said).toMatch(/no longer told \(1\)\n.*letter on the chimney/iu);
    expect(fingerprint(home)).toBe(before);
  });
});

describe('the packet after it', () => {
  const delivered = async (): Promise<void> => {
    await deliver('--edition', 'buyer', '--to', AGENT, '--to', 'J. Cole', '--note', NOTE, ...FIRST);
    write(CHANGED);
  };

  it('says exactly what changed, in data, page and sheet', async () => {
    await delivered();
    const folder = await build('2026-07-20');
    const said = changesIn(folder);
    expect(tablesOf(said, 'corrected')).toEqual([
      ['Roof, house, date of installation', 'June 2019', 'June 2017', '2 July 2026'],
    ]);
    const told = said.filter(({ id }) => /-told-\d+-\d+$/u.test(id)).map(cells);
    const about = new Map(told.map(([head = '', was, is]) => [head.replace(' (corrected)', ''), [was, is]]));
    // Ages are counted to the day of the earlier packet on both sides.
    expect(about.get('Roof, house, as found')).toEqual([
      'Installed June 2019: 6 to 7 years',
      'Installed June 2017: 8 to 9 years',
    ]);
    expect(about.get('PL-1')).toEqual(['open, not yet final', 'final']);
    // The furnace and the lot are as they were, although a month went by.
    for (const [head, [was = '', is = ''] = []] of about) {
      expect(was, head).not.toBe(is);
      expect(`${head} ${was} ${is}`).toMatch(/roof|permit|PL-1|final|known condition|fence|how old/iu);
    }
    const added = said.filter(({ id }) => /-new-\d+-\d+$/u.test(id)).map(cells);
    expect(added).toEqual([['Fence post leans. Since: found in July.']]);
    expect(JSON.stringify(said)).toContain('One statement of that packet is not in this one.');
    const page = decoded(readFileSync(path.join(folder, 'changes.html'), 'utf8').replace(/<[^>]*>/gu, ' '));
    const sheets = spawnSync('pdftotext', ['-raw', path.join(folder, 'test-lane-buyer.pdf'), '-'], {
      encoding: 'utf8',
    });
    const texts = sheets.error === undefined ? [page, sheets.stdout] : [page];
    for (const text of texts)
      for (const words of [
        'Since the packet of 12 June 2026',
        'Roof, house, date of installation',
        'open, not yet final',
        'Fence post leans',
      ])
        expect(text.replace(/\s+/gu, ' ')).toContain(words);
  });

  it('never names who got it, nor what was said of it, nor what is withheld by now', async () => {
    await delivered();
    for (const edition of ['buyer', 'agent', 'care', 'visit']) {
      const folder = await build('2026-07-20', edition);
      for (const one of readdirSync(folder, { recursive: true, withFileTypes: true })) {
        if (!one.isFile() || one.name.endsWith('.woff2')) continue;
        const bytes = readFileSync(path.join(one.parentPath, one.name));
        expect(
          textsIn(bytes, ['Qzagentx', 'J. Cole', 'qznotex', 'chimney of the neighbour', 'delivery.yaml']),
          one.name,
        ).toEqual([]);
      }
      expect(readdirSync(folder)).not.toContain('deliveries');
    }
    const file = await build('2026-07-20', 'file');
    expect(readFileSync(path.join(file, 'deliveries.html'), 'utf8')).toContain('Qzagentx');
    expect(readFileSync(path.join(file, 'deliveries.html'), 'utf8')).toContain('chimney of the neighbour');
  });

  it('is not told as none where it can’t be read', async () => {
    await delivered();
    for (const name of names()) writeFileSync(path.join(folderOf(name), 'facts.json'), 'null');
    const { said } = await list();
    expect(said).toContain('what was delivered can’t be read, see above');
    expect(said).not.toContain('nothing was delivered');
  });

  it('does not repeat a street that was told and is withheld since', async () => {
    write(YAML.replace('gate sticks, since: as bought', 'gate to 9 Tannery Steps sticks, since: as bought'));
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    write(
      YAML.replace('show: full', 'show: street-withheld').replace(
        'gate sticks, since',
        'gate to the street sticks, since',
      ),
    );
    const folder = await build('2026-07-20');
    const said = changesIn(folder);
    expect(said.filter(({ id }) => /-told-/u.test(id)).map(cells)).toContainEqual(
      expect.arrayContaining([
        'other words',
        expect.stringContaining('gate to the street'.replace('g', 'G')),
      ]),
    );
    expect(JSON.stringify(said)).toContain('where it stands');
    for (const one of readdirSync(folder, { recursive: true, withFileTypes: true }))
      if (one.isFile() && !one.name.endsWith('.woff2'))
        expect(
          textsIn(readFileSync(path.join(one.parentPath, one.name)), ['Tannery Steps']),
          one.name,
        ).toEqual([]);
  });

  it('does not repeat that street without its number either', async () => {
    // Both words of it stand elsewhere in the packet, and tell nothing there.
    const yaml = YAML.replace(
      '  - { what: garage floor',
      '  - { what: front steps are uneven, since: as bought }\n  - { what: the old tannery sign hangs loose, since: as bought }\n  - { what: garage floor',
    );
    write(yaml.replace('gate sticks, since', 'gate to Tannery Steps sticks, since'));
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    write(
      yaml
        .replace('show: full', 'show: street-withheld')
        .replace('gate sticks, since', 'gate to the street sticks, since'),
    );
    const folder = await build('2026-07-20');
    expect(
      changesIn(folder)
        .filter(({ id }) => /-told-/u.test(id))
        .map(cells),
    ).toContainEqual(expect.arrayContaining(['other words', expect.stringContaining('Gate to the street')]));
    expect(saying(folder, ['Tannery Steps'])).toEqual([]);
  });

  it('does not repeat what its owner struck out, in any row or answer, and keeps it for the owner', async () => {
    write(
      YAML.replace(
        'where: [hall], permit: pl-1',
        'where: [hall], permit: pl-1, note: "paid 412.50 in cash to Qzoe Qzquill"',
      ).replace('garage floor has a crack', 'garage floor was cracked by Qzoe Qzquill'),
    );
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    write(
      YAML.replace('where: [hall], permit: pl-1', 'where: [hall], permit: pl-1, note: solid oak').replace(
        'garage floor has a crack',
        'garage floor was cracked',
      ),
    );
    for (const edition of ['buyer', 'agent', 'care', 'visit'])
      expect(saying(await build('2026-07-20', edition), ['paid 412.50', 'Qzquill']), edition).toEqual([]);
    const said = changesIn(await build('2026-07-20'));
    expect(JSON.stringify(said)).toContain('other words');
    expect(JSON.stringify(said)).toMatch(/solid oak/iu);
    const file = readFileSync(path.join(await build('2026-07-20', 'file'), 'deliveries.html'), 'utf8');
    for (const words of ['412.50', 'Qzoe Qzquill']) {
      expect(decoded(file)).toContain(words);
      expect((await list()).said).toContain(words);
    }
  });

  it('calls corrected what follows from the correction, and nothing that has its figure by chance', async () => {
    const yaml = YAML.replace('is: 1985', 'is: 1999').replace('installed: 2015, kept', 'made: 1999, kept');
    write(yaml);
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    write(
      yaml
        .replace('is: 1999, from', 'is: 2001, was: 1999, corrected: 2026-07-02, from')
        .replace('made: 1999', 'made: 2001'),
    );
    const told = changesIn(await build('2026-07-20'))
      .filter(({ id }) => /-told-\d+-\d+$/u.test(id))
      .map(({ about = '' }) => about);
    expect(told.filter((about) => about.endsWith(' (corrected)')).sort()).toEqual([
      'A house of 2001 (corrected)',
      'Built (corrected)',
      'Is there lead paint? (corrected)',
      'When was the house built? (corrected)',
    ]);
    expect(told).toContain('How old is the heating?');
    expect(told).toContain('How old are the four things that insurers ask about?');
    expect(told).toContain('Furnace, gas, as found');
    const furnace = (await check()).filter(({ fact }) => fact === 'systems[1]');
    expect(furnace).toHaveLength(1);
    expect(furnace[0]?.message).not.toContain('as a correction');
  });

  it('lists a correction near the front, other changes before the last section, and is silent of neither', async () => {
    await delivered();
    const order = (folder: string): string[] => [
      ...new Set(
        (JSON.parse(readFileSync(path.join(folder, 'facts.json'), 'utf8')).facts as Said[]).map(
          ({ section }) => section,
        ),
      ),
    ];
    const title = 'Changes since earlier deliveries';
    // The title of the edition stands for its key facts.
    expect(order(await build('2026-07-20')).indexOf(title)).toBe(2);
    write(YAML.replace('state: open', 'state: final'));
    const plain = order(await build('2026-07-20'));
    expect(plain.indexOf(title)).toBe(plain.length - 2);
  });

  it('calls nothing a correction of what that packet never said', async () => {
    await delivered();
    await deliver('--edition', 'buyer', '--to', AGENT, ...LATER);
    // Corrected a second time: the first packet told 2019, the second 2017.
    write(
      CHANGED.replace(
        'is: 2017-06, was: 2019-06, corrected: 2026-07-02',
        'is: 2016-06, was: 2017-06, corrected: 2026-07-25',
      ),
    );
    const said = changesIn(await build('2026-07-30'));
    const corrected = said.filter(({ id }) => /-corrected-/u.test(id));
    expect(corrected.map(cells)).toEqual([
      ['Roof, house, date of installation', 'June 2017', 'June 2016', '25 July 2026'],
    ]);
    expect(corrected[0]?.id).toMatch(/^changes-2-/u);
    const first = said.filter(({ id }) => id.startsWith('changes-1-told-')).map(cells);
    // What the first packet told stands nowhere any more, so it is not said again.
    expect(first).toContainEqual([
      'Roof, house, as found',
      'other words',
      expect.stringContaining('June 2016'),
    ]);
  });

  it('of an earlier day is none that follows it', async () => {
    await delivered();
    write(YAML.replace('state: open', 'state: final'));
    expect(changesIn(await build('2026-06-01'))).toEqual([]);
    expect(await check('2026-06-01')).toEqual([]);
    expect(await check('2026-06-12')).not.toEqual([]);
  });

  it('says that another version made the one before, and takes no other sign for another word', async () => {
    await delivered();
    write(YAML);
    const folder = folderOf(names()[0]);
    const older = readFileSync(path.join(folder, 'facts.json'), 'utf8')
      .replace(/"sillplate [^"]*"/u, '"sillplate 0.0.9"')
      .replaceAll('’', "'")
      .replaceAll('–', '-');
    resealed(folder, older);
    expect(changesIn(await build('2026-07-20'))).toEqual([]);
    write(CHANGED);
    expect(JSON.stringify(changesIn(await build('2026-07-20')))).toContain(
      'Another version of the program made it',
    );
  });
});

/** Files of a packet that say one of these. */
const saying = (folder: string, words: readonly string[]): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && !one.name.endsWith('.woff2'))
    .filter((one) => textsIn(readFileSync(path.join(one.parentPath, one.name)), words).length > 0)
    .map(({ name }) => name);

/** The data of a delivery as another version would have written them, with a manifest that fits. */
function resealed(folder: string, facts: string): void {
  writeFileSync(path.join(folder, 'facts.json'), facts);
  const digest = execFileSync('sha256sum', ['facts.json'], { cwd: folder, encoding: 'utf8' });
  const manifest = path.join(folder, 'manifest-sha256.txt');
  writeFileSync(manifest, readFileSync(manifest, 'utf8').replace(/^[0-9a-f]{64} {2}facts\.json\n/mu, digest));
}

describe('its owner', () => {
  it('is warned of what somebody was told otherwise, until that person is told', async () => {
    await deliver('--edition', 'buyer', '--to', AGENT, '--to', 'J. Cole', ...FIRST);
    expect(await check()).toEqual([]);
    write(CHANGED);
    const warnings = await check();
    const ofRoof = warnings.find(({ fact }) => fact === 'systems[0].installed');
    expect(ofRoof?.message).toContain(
      `${AGENT} and J. Cole were told “June 2019” in the buyer packet of 12 June 2026`,
    );
    expect(ofRoof?.message).toContain('now it is told: “June 2017”, as a correction');
    expect(ofRoof?.do[0]).toContain(`--edition buyer --to "${AGENT}" --to "J. Cole"`);
    const ofPermit = warnings.find(({ fact }) => fact === 'permits[0]');
    expect(ofPermit?.message).toContain('now it is told: “final”');
    expect(ofPermit?.message).not.toContain('correction');
    // New facts are no warning.
    expect(JSON.stringify(warnings)).not.toContain('fence post leans: ');
    // Told to one of the two, under a name that differs in nothing that counts.
    await deliver('--edition', 'buyer', '--to', 'QZAGENTX of  the buyer', ...LATER);
    const left = await check();
    expect(left.length).toBe(warnings.length);
    for (const { message } of left) {
      expect(message).toContain('J. Cole was told');
      expect(message).not.toContain('gentx');
    }
    // Another person's packet ends nothing, the same person's does.
    await deliver('--edition', 'buyer', '--to', 'somebody else', ...LATER);
    expect(await check()).toHaveLength(warnings.length);
    await deliver('--edition', 'buyer', '--to', 'j. cole', ...LATER);
    expect(await check()).toEqual([]);
  });

  it('is warned also where a packet of another edition has something else under the same number', () => {
    const fact = { id: 'condition-1', section: 'Left as found', says: 'The gate sticks.' };
    const since = (number: number, edition: 'buyer' | 'care', facts: object[], told: object[]) =>
      ({
        delivered: {
          number,
          edition,
          to: ['J. Cole'],
          given: '2026-06-12',
          said: { facts, digest: '7f3a 91c2 0d4e' },
          on: { shown: 'deliveries/one', place: undefined },
        },
        told,
        gone: [],
        head: [],
      }) as unknown as SinceDelivery;
    const changed = {
      id: fact.id,
      section: fact.section,
      about: 'Gate',
      oldWords: 'The gate is fine.',
      is: fact.says,
      now: fact,
    };
    const buyer = since(1, 'buyer', [], [changed]);
    const house = houseOf(HOUSE_SPEC);
    const warned = (care: object): number =>
      warnOfDelivered([buyer, since(2, 'care', [care], [])], house, 'my-house').length;
    expect(warned({ ...fact, section: 'Care', says: 'Clean the gutters.' })).toBe(1);
    expect(warned({ ...fact, section: 'Care' })).toBe(0);
  });

  it('sees who was given what, and what of it is damaged', async () => {
    await deliver('--edition', 'buyer', '--to', AGENT, '--note', NOTE, ...FIRST);
    await deliver('--edition', 'agent', '--to', 'the agent', ...LATER);
    write(CHANGED);
    const { said, status } = await list();
    expect(status).toBe(0);
    for (const words of [AGENT, NOTE, 'the agent', '12 June 2026', '21 July 2026', ': whole', 'it says now'])
      expect(said).toContain(words);
    expect((await deliver('--as-of', '2026-07-20')).said).toBe(said);
    const json = JSON.parse((await list('--format', 'json')).said);
    expect(json.deliveries).toMatchObject([
      { to: [AGENT], edition: 'buyer', whole: true },
      { to: ['the agent'], edition: 'agent', whole: true },
    ]);
    const [buyer = ''] = names().filter((name) => name.includes('buyer'));
    appendFileSync(path.join(folderOf(buyer), 'test-lane-buyer.pdf'), 'x');
    rmSync(path.join(folderOf(buyer), 'pages/index.html'));
    writeFileSync(path.join(folderOf(buyer), 'pages/more.html'), 'more');
    const damaged = await list();
    expect(damaged.status).toBe(1);
    for (const words of [
      'test-lane-buyer.pdf was changed',
      'pages/index.html is missing',
      'pages/more.html was added',
    ])
      expect(damaged.said).toContain(words);
  });

  it('can say years later what a PDF was', async () => {
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    const frozen = path.join(folderOf(names()[0]), 'test-lane-buyer.pdf');
    const pdf = path.join(scratch, 'came-back.pdf');
    cpSync(frozen, pdf);
    write(CHANGED);
    const verify = () => typed(['verify', pdf, home, '--out', out()]);
    const { said, status } = await verify();
    expect(said).toContain(
      `It is what the folder made, byte for byte, delivered on 12 June 2026 to ${AGENT}`,
    );
    // On that day the correction had not been made, so that the folder makes no packet of that day any more.
    expect(said).toContain('has errors and makes no packet now');
    expect(status).toBe(1);
    write(YAML.replace('state: open', 'state: final'));
    expect((await verify()).said).toMatch(/delivered on 12 June 2026[\s\S]*This is not what/u);
    // A frozen PDF that was put there later vouches for nothing.
    appendFileSync(pdf, 'added');
    cpSync(pdf, frozen);
    expect((await verify()).said).not.toContain('It is what the folder made');
  });

  it('is told by a delivery that names another one, and not through a link or a list of another kind', async () => {
    await deliver('--edition', 'agent', '--to', 'the agent', ...FIRST);
    await deliver('--edition', 'agent', '--to', 'J. Cole', ...FIRST);
    const [first = '', second = ''] = names();
    const pdf = path.join(scratch, 'came-back-twice.pdf');
    cpSync(path.join(folderOf(first), 'test-lane-agent.pdf'), pdf);
    const verify = async (): Promise<string> => (await typed(['verify', pdf, home, '--out', out()])).said;
    const both = await verify();
    for (const name of ['to the agent', 'to J. Cole'])
      expect(both).toContain(`delivered on 12 June 2026 ${name}`);
    expect(second).toBe(`${first}-2`);
    const elsewhere = path.join(scratch, 'the-first');
    renameSync(folderOf(first), elsewhere);
    symlinkSync(elsewhere, folderOf(first));
    expect(await verify()).not.toContain('delivered on');
    rmSync(folderOf(first));
    renameSync(elsewhere, folderOf(first));
    execFileSync('truncate', ['-s', '4G', path.join(folderOf(first), 'manifest-sha256.txt')]);
    expect(await verify()).not.toContain('delivered on');
  });
});

describe('a delivery that can’t be relied on', () => {
  const spoil: readonly (readonly [string, (folder: string) => void, string])[] = [
    [
      'changed data',
      (folder) => appendFileSync(path.join(folder, 'facts.json'), ' '),
      'is not what was given',
    ],
    [
      'a changed record',
      (folder) => appendFileSync(path.join(folder, 'delivery.yaml'), '# x\n'),
      'is not what was given',
    ],
    ['no record', (folder) => rmSync(path.join(folder, 'delivery.yaml')), 'is missing'],
    ['no manifest', (folder) => rmSync(path.join(folder, 'manifest-sha256.txt')), 'is missing'],
    [
      'a link for a file',
      (folder) => {
        renameSync(path.join(folder, 'facts.json'), path.join(folder, '..', '..', 'elsewhere.json'));
        symlinkSync('../../elsewhere.json', path.join(folder, 'facts.json'));
      },
      'is a link',
    ],
    [
      'a link for its folder',
      (folder) => {
        renameSync(folder, path.join(folder, '..', '..', 'elsewhere'));
        symlinkSync('../elsewhere', folder);
      },
      'is a link',
    ],
    [
      'another name',
      (folder) => renameSync(folder, path.join(folder, '..', 'mine')),
      'is no delivery of this program',
    ],
    ['data of another packet', (folder) => resealed(folder, '{"form":"other"}'), 'is no packet’s data'],
  ];

  it.each(spoil)(
    'is named and left out, and keeps nothing from being made: %s',
    async (_name, damage, words) => {
      await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
      write(CHANGED);
      damage(folderOf(names()[0]));
      const { said, status } = await typed([
        'build',
        home,
        '--edition',
        'buyer',
        '--as-of',
        '2026-07-20',
        '--out',
        out(),
      ]);
      expect(said).toContain('warning intake.delivery');
      expect(said).toContain(words);
      expect(said).toContain('do: ');
      expect(status).toBe(0);
      expect(changesIn(path.join(out(), 'test-lane', 'buyer'))).toEqual([]);
      // And the next one gets a number of its own.
      expect(await deliver('--edition', 'buyer', '--to', AGENT, ...LATER)).toMatchObject({ status: 0 });
      const later = names().filter((one) => one.startsWith('2026-07-21'));
      expect(later.map((one) => readFileSync(path.join(folderOf(one), 'delivery.yaml'), 'utf8'))).toEqual([
        expect.stringContaining('\nnumber: 2\n'),
      ]);
    },
  );

  it('is read to no end, however large', async () => {
    await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    execFileSync('truncate', ['-s', '4G', path.join(folderOf(names()[0]), 'facts.json')]);
    expect((await list()).said).toContain('is larger than any such file');
  });

  it('is not reached through a folder that leads elsewhere, for reading or for writing', async () => {
    const other = path.join(scratch, 'other-place');
    mkdirSync(other, { recursive: true });
    symlinkSync(other, path.join(home, 'deliveries'));
    const { said, status } = await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    expect(said).toContain('archive.delivery');
    expect(said).toContain('is a link');
    expect(status).toBe(1);
    expect(readdirSync(other)).toEqual([]);
  });

  it('is told where the folder is a file', async () => {
    writeFileSync(path.join(home, 'deliveries'), 'a list of mine');
    const { said, status } = await deliver('--edition', 'buyer', '--to', AGENT, ...FIRST);
    expect(said).toContain('a file stands where the folder is needed');
    expect(status).toBe(1);
    expect(readFileSync(path.join(home, 'deliveries'), 'utf8')).toBe('a list of mine');
  });
});
