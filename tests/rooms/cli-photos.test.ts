/** `sillplate photos`: the list, the proposals, and what `--accept` writes. */
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { acceptPairs } from '../../src/accept-pairs.js';
import { columnsOf } from '../../src/diagnostics/columns.js';
import { readHouse } from '../../src/intake/read-house.js';
import { proposePhotos } from '../../src/tally/photo-proposals.js';
import { cameraPhoto } from '../tools/camera-photo.js';
import { typed } from '../tools/gallery.js';
import { SMALL_HOUSE, scratchFolder } from './cli-program.js';

const scratch = scratchFolder();
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const AS_OF = ['--as-of', '2026-11-20'];
const HOME = '39/1 7/1 243724/10000';
const AWAY = '39/1 10/1 243724/10000';

type Files = Readonly<Record<string, string | Uint8Array>>;

function houseFolder(name: string, files: Files): string {
  const home = path.join(scratch, name);
  for (const [file, content] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(home, file)), { recursive: true });
    writeFileSync(path.join(home, file), content);
  }
  return home;
}

const WORK = `# what was done
work:
  # the cellar first
  - id: cellar-rail        # the short one
    what: handrail, cellar stair
    did: new
    done: 2026-05-12
    by: owner

    # nobody has the receipt
  - { id: floor, what: kitchen floor, did: new, started: 2026-04-13, done: 2026-04-17, by: owner, photos: { before: IMG_0001 } }
`;
const PHOTOS = `photos:
  IMG_0001: { shows: kitchen floor, when: before, alt: A floor. }
  IMG_0002:
    shows: yard
    private: yes
  # more to come
`;

let pictures: Files = {};
beforeAll(async () => {
  pictures = {
    'photos/IMG_0001.jpg': await cameraPhoto('2026:04:10 09:14:02', HOME),
    'photos/IMG_0002.jpg': await cameraPhoto('2026:04:10 10:14:02', HOME),
    'photos/IMG_0003.jpg': await cameraPhoto('2026:04:17 17:00:00', HOME),
    'photos/IMG_0004.jpg': await cameraPhoto('2026:05:08 09:00:00', HOME),
    'photos/IMG_0005.jpg': await cameraPhoto('2026:05:08 09:00:01', HOME),
    'photos/IMG_0006.jpg': await cameraPhoto('2026:05:08 09:00:02', HOME),
    'photos/Küche "vorher" 😀.jpg': await cameraPhoto('2026:05:12 18:30:00'),
    'photos/床の間.jpg': await cameraPhoto('2026:05:13 18:30:00', AWAY),
    'photos/old scan.jpg': await cameraPhoto(),
  };
});

const made = (name: string, facts: Files): string => houseFolder(name, { ...facts, ...pictures });
const split = (name: string): string =>
  made(name, { 'house.yaml': SMALL_HOUSE, 'work.yaml': WORK, 'papers.yaml': PHOTOS });
const read = (...parts: string[]): string => readFileSync(path.join(...parts), 'utf8');
const photos = (...words: string[]) => typed(['photos', ...words, ...AS_OF]);

describe('the list', () => {
  it('is in the order the photos were taken, with what is known of each', async () => {
    const { said, status } = await photos(split('list'));
    expect(status).toBe(0);
    const lines = said.split('\n');
    expect(lines[0]).toBe('list: 9 photos, 2 named by the facts, 7 by none');
    expect(lines[1]).toBe('  1 without the time · 1 held back · 1 burst · 1 probably not of this house');
    const at = (words: string): number => lines.findIndex((line) => line.includes(words));
    const order = ['10 April 2026', 'IMG_0001', 'IMG_0002', 'IMG_0003', 'IMG_0004', '12 May 2026', '床の間'];
    for (const [n, words] of order.slice(1).entries()) expect(at(words)).toBeGreaterThan(at(order[n] ?? ''));
    expect(lines[at('IMG_0001.jpg')]).toContain('kitchen floor');
    expect(lines[at('IMG_0001.jpg')]).toContain('before floor');
    expect(lines[at('IMG_0002.jpg')]).toContain('private');
    expect(lines[at('time not known') + 1]).toContain('old scan.jpg');
    expect(said).toContain('IMG_0004.jpg to IMG_0006.jpg: 3 photos; look at IMG_0005.jpg first');
    expect(said).toContain('Probably not of this house:\n  about 3 miles from the others: 床の間.jpg\n');
  });

  it('puts a day that the facts only narrow down where the sheets put it', async () => {
    const home = made('scans', {
      'house.yaml': `${SMALL_HOUSE}photos:\n  IMG_0003: { shows: front, alt: F., taken: ../2010 }\n  IMG_0001: { shows: yard, alt: Y., taken: 2026-04-10 }\n  IMG_0002: { shows: gate, alt: G., taken: 2019 }\n`,
    });
    const lines = (await photos(home)).said.split('\n');
    expect(lines.slice(4, 10).map((line) => line.trim().split(/ {2,}/)[0])).toEqual([
      '2010 or before',
      'IMG_0003.jpg',
      '2019',
      'IMG_0002.jpg',
      '10 April 2026',
      '09:14',
    ]);
  });

  it('lines its columns up for wide signs, too', async () => {
    const { said } = await photos(split('columns'));
    const rows = said.split('\n').filter((line) => /^ {4}.*no fact names it/.test(line));
    expect(rows.length).toBeGreaterThan(3);
    const columns = rows.map((row) => columnsOf(row.slice(0, row.indexOf('no fact names it'))));
    expect(new Set(columns).size).toBe(1);
  });

  it('tells the pairs with their reasons, and what to type', async () => {
    const home = split('pairs');
    const { said } = await photos(home);
    expect(said).toContain(`  cellar-rail: handrail, cellar stair, done 2026-05-12
    before  IMG_0005.jpg: taken 4 days before it was done; only its time speaks for it;`);
    expect(said).toContain('    after   Küche "vorher" 😀.jpg: taken on the day it was done');
    expect(said).toContain(
      '    before  IMG_0001 (there already)\n    after   IMG_0003.jpg: taken on the day it was done',
    );
    expect(said).toContain(`sillplate photos ${home} --accept cellar-rail\n`);
  });

  it('of three hundred photos stays short', async () => {
    const one = await cameraPhoto('2026:05:08 09:00:00');
    const other = await cameraPhoto('2026:05:09 09:00:00');
    const many = Object.fromEntries(
      Array.from({ length: 300 }, (_, n) => [`photos/IMG_${2000 + n * 2}.jpg`, n % 2 === 0 ? one : other]),
    );
    const { said } = await photos(
      houseFolder('many', {
        'house.yaml': SMALL_HOUSE + WORK.replace('IMG_0001', 'IMG_2000'),
        'papers.yaml': 'photos: { IMG_2000: { shows: x, alt: X. } }\n',
        ...many,
      }),
    );
    expect(said).toContain('149 that no fact names');
    expect(said).toContain('150 that no fact names');
    expect(said.split('\n').length).toBeLessThan(30);
  });

  it('tells every name one may need to type, on lines of a screen', async () => {
    const bytes = await cameraPhoto();
    const long = `${'n'.repeat(60)} of the cellar, seen from the door.jpg`;
    const names = ['😀 bath.jpg', long, ...Array.from({ length: 58 }, (_, n) => `IMG_${300 + n}.jpg`)];
    const folder = (house: string, list: readonly string[]): string =>
      houseFolder(house, {
        'house.yaml': SMALL_HOUSE,
        ...Object.fromEntries(list.map((name) => [`photos/${name}`, bytes])),
      });
    const { said } = await photos(folder('sixty', names));
    expect(said).toContain('\n      60 that no fact names:\n        IMG_300.jpg · IMG_301.jpg · ');
    for (const name of names) expect(said).toContain(name);
    const rows = said.split('\n').filter((line) => line.startsWith('        '));
    expect(rows.length).toBeGreaterThan(9);
    for (const row of rows) expect(row.includes(long) || columnsOf(row) <= 88, row).toBe(true);
    const home = folder('sixty-one', [...names, 'IMG_400.jpg']);
    const more = await photos(home);
    expect(more.said).toContain('\n      61 that no fact names: IMG_300.jpg to 😀 bath.jpg\n');
    expect(more.said).toContain(`\nTo see all names:  sillplate photos ${home} --format json\n`);
    expect(said).not.toContain('To see all names');
    const all = await photos(home, '--format', 'json');
    for (const name of names) expect(all.said).toContain(JSON.stringify(name));
    // One alone in its row is cut there, and said whole below.
    const one = await photos(folder('one-long', [long]));
    expect(one.said).toContain(`\n        its whole name: ${long}\n`);
  });

  it('gives a sentence for each photo without words', async () => {
    const home = made('silent', {
      'house.yaml': `${SMALL_HOUSE}photos:\n  IMG_0001: { shows: kitchen floor, when: before }\n`,
    });
    expect((await photos(home)).said).toContain('  IMG_0001:\n    alt: Kitchen floor, before the work.\n');
  });

  it('as data holds the same, and neither says where a photo was taken', async () => {
    const home = split('data');
    const { said, status } = await photos(home, '--format', 'json');
    expect(status).toBe(0);
    const [house] = JSON.parse(said).houses;
    expect(house.photos.map(({ name }: { name: string }) => name)).toHaveLength(9);
    expect(house.photos[0]).toEqual({
      name: 'IMG_0001.jpg',
      id: 'IMG_0001',
      takenAt: '2026-04-10T09:14:02',
      taken: null,
      shows: 'kitchen floor',
      when: 'before',
      where: null,
      standing: ['before floor'],
    });
    expect(house.pairs.map(({ work }: { work: string }) => work)).toEqual(['cellar-rail', 'floor']);
    expect(house.far).toEqual([{ photo: '床の間.jpg', distance: 'about 3 miles' }]);
    for (const text of [
      said,
      (await photos(home)).said,
      (await typed(['check', home, '--format', 'json', ...AS_OF, '--out', path.join(scratch, 'out')])).said,
    ])
      expect(text).not.toMatch(/39[.°]\d|84[.°]\d|24\.37|12\.40|243724|124068|latitude|longitude/i);
  });

  it('of an empty folder, and of a house that can’t be read', async () => {
    const bare = houseFolder('bare', { 'house.yaml': SMALL_HOUSE });
    expect(await photos(bare)).toEqual({ said: 'bare: there is no photo in photos/\n', status: 0 });
    const gone = await photos(path.join(scratch, 'nowhere'));
    expect([gone.status, gone.said.includes('intake.no-folder')]).toEqual([1, true]);
  });

  it('says that the facts have mistakes, and ends with their status', async () => {
    const home = made('wrong', { 'house.yaml': SMALL_HOUSE.replace('detached', 'detatched') });
    const { said, status } = await photos(home);
    expect(status).toBe(1);
    expect(said).toContain(`The facts have a mistake besides; to see it:  sillplate check ${home}\n`);
  });

  it('warns of days that contradict, as check does', async () => {
    const home = made('days', {
      'house.yaml': `${SMALL_HOUSE}work:\n  - { id: w, what: w, did: new, done: 2026-06-01, photos: { after: IMG_0001 } }\nphotos:\n  IMG_0001: { shows: x, alt: X. }\n`,
    });
    for (const command of ['photos', 'check'])
      expect(
        (
          await typed([
            command,
            home,
            ...AS_OF,
            ...(command === 'check' ? ['--out', path.join(scratch, 'out')] : []),
          ])
        ).said,
      ).toContain('warning tally.photo-date');
  });
});

describe('--accept', () => {
  const errorsOf = async (home: string): Promise<unknown[]> =>
    JSON.parse(
      (await typed(['check', home, '--format', 'json', ...AS_OF, '--out', path.join(scratch, 'out')])).said,
    ).filter(({ severity }: { severity: string }) => severity === 'error');

  it('writes a pair into each file it concerns, and keeps what was there', async () => {
    const home = split('accept');
    const { said, status } = await photos(home, '--accept', 'cellar-rail');
    expect(status).toBe(0);
    expect(read(home, 'work.yaml')).toBe(
      WORK.replace(
        '    by: owner\n\n',
        '    by: owner\n    photos: { before: IMG_0005, after: Kuche-vorher }\n\n',
      ),
    );
    const papers = read(home, 'papers.yaml');
    expect(papers).toBe(
      PHOTOS.replace(
        '  # more',
        `  IMG_0005:
    shows: handrail, cellar stair
    when: before
    # alt: Handrail, cellar stair, before the work.  # a proposal; look at the picture, correct the sentence and take the first # away
  Kuche-vorher:
    file: Küche "vorher" 😀.jpg
    shows: handrail, cellar stair
    when: after
    # alt: Handrail, cellar stair, after the work.  # a proposal; look at the picture, correct the sentence and take the first # away
  # more`,
      ),
    );
    expect([read(home, 'work.yaml.before-photos'), read(home, 'papers.yaml.before-photos')]).toEqual([
      WORK,
      PHOTOS,
    ]);
    expect(said).toContain(
      `${home}/work.yaml is written; what it was lies in ${home}/work.yaml.before-photos\n`,
    );
    expect(said).toContain(
      '  in cellar-rail under work:\n    photos: { before: IMG_0005, after: Kuche-vorher }\n',
    );
    expect(await errorsOf(home)).toEqual([]);
    // The line can be taken as it stands.
    writeFileSync(path.join(home, 'papers.yaml'), papers.replaceAll('    # alt:', '    alt:'));
    const after = await typed(['check', home, ...AS_OF, '--out', path.join(scratch, 'out')]);
    expect([after.status, after.said.includes('tally.no-alt')]).toEqual([0, false]);
  });

  it('all, then again: the second time nothing is written, and it says why', async () => {
    const home = split('again');
    expect((await photos(home, '--accept', 'all')).status).toBe(0);
    expect(read(home, 'work.yaml')).toContain('photos: { before: IMG_0001, after: IMG_0003 } }\n');
    // Left by a run that was killed when all was written: number 2 ** 22 is above every process’s.
    writeFileSync(path.join(home, '.sillplate-lock-facts'), '4194305 1');
    const before = readdirSync(home)
      .filter((name) => name !== '.sillplate-lock-facts')
      .map((name) => [name, /\.yaml/.test(name) ? read(home, name) : '']);
    const again = await photos(home, '--accept', 'cellar-rail,floor');
    expect(again.status).toBe(0);
    expect(again.said).toContain(
      'cellar-rail has its photos already (before IMG_0005, after Kuche-vorher); nothing was written for it\n',
    );
    expect((await photos(home, '--accept', 'all')).said).toContain(
      'nothing is proposed, so nothing was written',
    );
    expect(readdirSync(home).map((name) => [name, /\.yaml/.test(name) ? read(home, name) : ''])).toEqual(
      before,
    );
    expect(await errorsOf(home)).toEqual([]);
  });

  it('makes photos: where there is none, keeps line ends and a byte order mark', async () => {
    const text = `\uFEFF${SMALL_HOUSE}${WORK.replace(', photos: { before: IMG_0001 }', '')}`
      .replaceAll('\n', '\r\n')
      .trimEnd();
    const home = made('crlf', { 'house.yaml': text });
    expect((await photos(home, '--accept', 'floor')).status).toBe(0);
    const now = read(home, 'house.yaml');
    expect(now.startsWith('\uFEFF')).toBe(true);
    expect(now.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(now).toContain('\r\n\r\nphotos:\r\n  IMG_0002:\r\n    shows: kitchen floor\r\n');
    expect(now.endsWith('\r\n')).toBe(false);
    expect(await errorsOf(home)).toEqual([]);
  });

  it('writes nothing where the facts would then be wrong, and gives the lines to type', async () => {
    const home = made('refused', { 'house.yaml': `${SMALL_HOUSE}${WORK}photos: [IMG_0001]\n` });
    const old = read(home, 'house.yaml');
    const { said, status } = await photos(home, '--accept', 'cellar-rail');
    expect([status, read(home, 'house.yaml') === old]).toEqual([1, true]);
    expect(said).toContain('error archive.facts');
    expect(said).toContain('To be typed by hand:\n');
    expect(said).toContain('    IMG_0005: { shows: "handrail, cellar stair", when: before }\n');
    expect(readdirSync(home).sort()).toEqual(['house.yaml', 'photos']);
  });

  const CORRECT = 'correct its line  # alt:  and take the first # away.\n';

  it('puts lines in place of the braces of an empty photos:, and tells them as they stand there', async () => {
    const rail = WORK.replace('    by: owner\n', '    by: owner\n    photos: {} # soon\n');
    const home = made('braces', { 'house.yaml': `${SMALL_HOUSE}${rail}photos: {} # none yet\n# the end\n` });
    const { said, status } = await photos(home, '--accept', 'cellar-rail');
    const now = read(home, 'house.yaml');
    expect(now).toContain(
      '\nphotos:  # none yet\n  IMG_0005:\n    shows: handrail, cellar stair\n    when: before\n    # alt: Handrail',
    );
    expect(now).toContain('    photos:  # soon\n      before: IMG_0005\n      after: Kuche-vorher\n');
    // What is told stands there, line by line.
    const told = said.slice(said.indexOf('  under photos:\n')).match(/^ {4}\S?.*$/gm) ?? [];
    expect(told.length).toBeGreaterThan(8);
    for (const line of told) expect(now).toContain(`${line.slice(4)}\n`);
    expect(said).toContain(CORRECT);
    expect(status).toBe(1);
    expect(await errorsOf(home)).toHaveLength(1);
  });

  it('into brackets with entries: gives the sentences, and speaks of no line that is not there', async () => {
    const home = made('brackets', {
      'house.yaml': `${SMALL_HOUSE}${WORK}photos: { IMG_0001: { shows: floor, alt: F. } }\n`,
    });
    const { said, status } = await photos(home, '--accept', 'cellar-rail');
    expect(status).toBe(0);
    expect(read(home, 'house.yaml')).toContain(
      'photos: { IMG_0001: { shows: floor, alt: F. }, IMG_0005: { shows: "handrail, cellar stair", when: before }, ',
    );
    expect(said).toContain('    IMG_0005: { shows: "handrail, cellar stair", when: before }\n');
    expect(said).not.toContain('# alt:');
    const sentences = `look at each picture, correct its sentence and write it into the brackets of its entry, behind a comma:
  IMG_0005
    alt: "Handrail, cellar stair, before the work."
  Kuche-vorher
    alt: "Handrail, cellar stair, after the work."
`;
    expect(said).toContain(sentences);
    // Done as it says, nothing is left out.
    const file = path.join(home, 'house.yaml');
    let text = readFileSync(file, 'utf8');
    for (const [, id, alt] of sentences.matchAll(/^ {2}(\S+)\n {4}(alt: .*)$/gm))
      text = text.replace(new RegExp(`(${id}: \\{[^}]*?) \\}`), `$1, ${alt} }`);
    writeFileSync(file, text);
    const after = await typed(['check', home, ...AS_OF, '--out', path.join(scratch, 'out')]);
    expect([after.status, after.said.includes('tally.no-alt')]).toEqual([0, false]);
  });

  it.each(['photos:\n', 'photos: # none yet\n'])(
    'judges by the facts as they are afterwards: %j was a mistake, and is mended',
    async (empty) => {
      const work = WORK.replace(', photos: { before: IMG_0001 }', '');
      const home = made(empty.includes('#') ? 'mended-remark' : 'mended', {
        'house.yaml': `${SMALL_HOUSE}${work}${empty}`,
      });
      expect(await errorsOf(home)).toHaveLength(1);
      const { said, status } = await photos(home, '--accept', 'all');
      expect([status, await errorsOf(home)]).toEqual([0, []]);
      expect(said).not.toContain('a mistake');
      expect(said).toContain(CORRECT);
    },
  );

  it.each([
    [
      'an unclosed bracket',
      WORK.replace('by: owner, photos: { before: IMG_0001 } }', 'by: owner'),
      'intake.yaml',
    ],
    ['a word of its own', WORK.replace('    did: new', '    did: nwe'), 'facts.choice'],
  ])('work that %s hides is told with that mistake', async (_name, work, code) => {
    const home = made(code.replace('.', '-'), { 'house.yaml': SMALL_HOUSE, 'work.yaml': work });
    for (const accept of ['cellar-rail', ...(code === 'intake.yaml' ? ['all'] : [])]) {
      const { said, status } = await photos(home, '--accept', accept);
      expect(status).toBe(1);
      expect(said).toMatch(new RegExp(`^error ${code}  \\S*work\\.yaml:\\d+`));
      expect(said).toContain('so nothing was written\n  do: mend the mistake above');
      expect(said).not.toContain('no item under work: has the id');
    }
    expect(read(home, 'work.yaml')).toBe(work);
  });

  it('a mistake of other work has no say in an id that is mistyped', async () => {
    const home = made('mistyped', {
      'house.yaml': `${SMALL_HOUSE}${WORK.replace('    did: new', '    did: nwe')}`,
    });
    const { said, status } = await photos(home, '--accept', 'flor');
    expect([status, said.includes('perhaps  --accept floor'), said.includes('facts.choice')]).toEqual([
      2,
      true,
      false,
    ]);
  });

  it('a mistake that is there already does not hide the same one elsewhere', async () => {
    // The place is told once, at the work; the entry of the photo would repeat it.
    const home = made('repeated', {
      'house.yaml': `${SMALL_HOUSE}${WORK.replace('    did: new\n', '    did: new\n    where: [cellar]\n')}`,
    });
    const old = read(home, 'house.yaml');
    const known = await errorsOf(home);
    const { said, status } = await photos(home, '--accept', 'cellar-rail');
    expect([known.length > 0, status, read(home, 'house.yaml') === old]).toEqual([true, 1, true]);
    expect(said).toContain('with these pairs the facts would have a mistake (');
  });

  it('writes nothing into a file that was changed while it was at work', async () => {
    const home = split('race');
    const found = await readHouse(home, home, { everyPhoto: true });
    const house = found.found?.house;
    if (house === undefined) throw new Error('the house could not be read');
    const seen = { id: 'IMG_0002', name: 'IMG_0002.jpg', width: 40, height: 30, spot: undefined };
    const { pairs } = proposePhotos(house, [{ ...seen, takenAt: '2026-05-12T18:00:00' }], '2026-11-20');
    expect(pairs.map(({ item }) => item.id)).toEqual(['cellar-rail']);
    const swapped = 'work:\n  - { id: other, what: other, did: new }\n';
    writeFileSync(path.join(home, 'work.yaml'), swapped);
    const { written, byHand, diagnostics } = await acceptPairs(home, home, found, pairs, []);
    expect([written, byHand, diagnostics[0]?.code]).toEqual([[], [], 'archive.facts']);
    // There is nothing to mend.
    expect(diagnostics[0]?.hints).toEqual(['type the same command again']);
    expect(read(home, 'work.yaml')).toBe(swapped);
  });

  it('two files of one stem: the entry says which', async () => {
    const home = houseFolder('twins', {
      'house.yaml': `${SMALL_HOUSE}work:\n  - { id: w, what: w, did: new, done: 2026-05-12 }\n`,
      'photos/IMG_0007.jpg': await cameraPhoto('2026:05:12 18:00:00'),
      'photos/IMG_0007.png': await sharp({ create: { width: 8, height: 8, channels: 3, background: '#000' } })
        .png()
        .toBuffer(),
    });
    await photos(home, '--accept', 'w');
    expect(read(home, 'house.yaml')).toContain('  IMG_0007:\n    file: IMG_0007.jpg\n');
    expect(await errorsOf(home)).toEqual([]);
  });

  it.each([
    ['an id that no work has', ['--accept', 'celar-rail'], 'perhaps  --accept cellar-rail'],
    ['nothing', ['--accept', ','], 'write the id of an item under work:, or all'],
    ['an unknown form', ['--format', 'github'], 'Allowed choices are text, json'.toLowerCase()],
  ])('%s is a matter of the command line', async (_name, words, hint) => {
    const home = split('typed');
    const { said, status } = await photos(home, ...words);
    expect(status).toBe(2);
    expect(said.toLowerCase()).toContain(hint.toLowerCase());
    expect(read(home, 'work.yaml')).toBe(WORK);
  });

  it('needs one house', async () => {
    const one = split('one');
    const two = split('two');
    const { said, status } = await photos(one, two, '--accept', 'all');
    expect([status, said.includes('--accept writes into one house, and 2 are meant here')]).toEqual([
      2,
      true,
    ]);
    expect(read(one, 'work.yaml')).toBe(WORK);
  });

  it('the copies are no facts', async () => {
    const home = split('copies');
    await photos(home, '--accept', 'cellar-rail');
    writeFileSync(path.join(home, 'work.yaml.before-photos'), 'work: [\n');
    expect(await errorsOf(home)).toEqual([]);
  });
});

it('help has examples that can be typed', async () => {
  const { said, status } = await typed(['photos', '--help']);
  expect(status).toBe(0);
  const examples = said.slice(said.indexOf('\nExamples:\n')).match(/^ {2}sillplate .*$/gm) ?? [];
  expect(examples.length).toBe(4);
  for (const example of examples) {
    const words = example.trim().split(/ {2,}/)[0]?.split(' ').slice(1) ?? [];
    expect((await typed([...words.slice(0, 1), '--help', ...words.slice(1)])).status, example).toBe(0);
  }
});
