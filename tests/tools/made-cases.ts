/**
 * Cases that a folder in version control can't hold: a link, a file of 50 megabytes, bytes that are no text, a
 * full disk, a command line. Each makes its house in a folder of its own and says what to type.
 */
import { execFileSync } from 'node:child_process';
import { appendFile, mkdir, rm, symlink, truncate, writeFile } from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import writeWorkbook from 'write-excel-file/node';
import { cameraPhoto } from './camera-photo.js';
import { written } from './made-bags.js';
import { packedParts } from './packed-parts.js';

export interface MadeCase {
  readonly code: string;
  readonly name: string;
  /** Makes what is needed below `folder` and answers with the words to type. May answer undefined where it can't be made. */
  readonly make: (folder: string) => Promise<readonly string[] | undefined>;
  /** Puts back what would outlive the folder. */
  readonly clear?: (folder: string) => void;
}

const HOUSE = `house:
  name: Test Lane
  address: { city: Fallow Mills, state: OH }
  kind: detached
  built: 2001
`;

/** Work with a photo that every packet shows. */
const RAIL = `work:
  - { id: rail, what: handrail, did: new, done: 2026-04, photos: { after: IMG_0412 } }
photos:
  IMG_0412: { shows: stair, alt: A stair. }
`;

/** Writes files of a house and answers with the words to check it. */
async function house(folder: string, files: Readonly<Record<string, string | Uint8Array>>) {
  const home = path.join(folder, 'made-house');
  await mkdir(home, { recursive: true });
  for (const [name, content] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(home, name)), { recursive: true });
    await writeFile(path.join(home, name), content);
  }
  return ['check', home];
}

const picture = (side: number): Promise<Buffer> =>
  sharp({
    create: {
      width: side,
      height: side,
      channels: 3,
      background: '#94a3a8',
      noise: { type: 'gaussian', mean: 128, sigma: 60 },
    },
  })
    .jpeg()
    .toBuffer();

/** Work with a photo from before and one from after it. */
const PAIR = `work:
  - { id: rail, what: handrail, did: new, done: 2026-05-12, photos: { before: IMG_0412, after: IMG_0641 } }
photos:
  IMG_0412: { shows: stair, when: before, alt: A stair without a rail. }
  IMG_0641: { shows: stair, when: after, alt: The stair with a rail. }
`;

/** Headings of a cost sheet, and one payment below them. */
const COSTS = ['date', 'payee', 'what', 'amount', 'bucket', 'receipt'];
const PAID = ['2026-03-14', 'Alder Hardware', 'stair treads', 214.5, 'improvement', 'receipt-031'];

const delivering = (folder: string, ...words: readonly string[]): string[] => [
  'deliver',
  path.join(folder, 'made-house'),
  ...words,
  ...['--as-of', '2026-11-20', '--on', '2026-11-20', '--out', path.join(folder, 'out')],
];

export const MADE_CASES: readonly MadeCase[] = [
  {
    code: 'archive.delivery',
    name: 'a-file-in-the-way',
    make: async (folder) => {
      await house(folder, { 'house.yaml': HOUSE, deliveries: 'to the agent, in June' });
      return delivering(folder, '--edition', 'agent', '--to', 'the agent');
    },
  },
  {
    code: 'cli.usage',
    name: 'house-file-to-somebody',
    make: async (folder) => {
      await house(folder, { 'house.yaml': HOUSE });
      return delivering(folder, '--edition', 'file', '--to', 'tax preparer');
    },
  },
  {
    code: 'cli.usage',
    name: 'delivered-to-nobody',
    make: async (folder) => {
      await house(folder, { 'house.yaml': HOUSE });
      return delivering(folder, '--edition', 'buyer');
    },
  },
  {
    code: 'intake.no-folder',
    name: 'not-there',
    make: async (folder) => {
      await mkdir(path.join(folder, 'quarry-road'));
      return ['check', path.join(folder, 'quary-road')];
    },
  },
  {
    code: 'intake.no-folder',
    name: 'a-file',
    make: async (folder) => {
      await writeFile(path.join(folder, 'made-house'), HOUSE);
      return ['check', path.join(folder, 'made-house')];
    },
  },
  {
    code: 'intake.no-folder',
    name: 'no-content',
    make: async (folder) => ['check', '--content', path.join(folder, 'nowhere')],
  },
  {
    code: 'intake.no-folder',
    name: 'capitals-and-a-space',
    make: async (folder) => ['check', path.join(folder, 'Quarry Road')],
  },
  {
    code: 'facts.id',
    name: 'folder-name',
    make: async (folder) => {
      await mkdir(path.join(folder, 'Quarry Road'));
      return ['check', path.join(folder, 'Quarry Road')];
    },
  },
  {
    code: 'facts.id-twice',
    name: 'two-houses-of-one-name',
    make: async (folder) => {
      for (const town of ['east', 'west'])
        await house(path.join(folder, town), { 'house.yaml': `${HOUSE}work: nothing\n` });
      return ['check', path.join(folder, 'east/made-house'), path.join(folder, 'west/made-house')];
    },
  },
  {
    code: 'intake.empty',
    name: 'empty-folder',
    make: async (folder) => {
      await mkdir(path.join(folder, 'made-house'));
      return ['check', path.join(folder, 'made-house')];
    },
  },
  {
    code: 'intake.empty',
    name: 'only-photos',
    make: (folder) => house(folder, { 'photos/IMG_0412.jpg': 'never opened' }),
  },
  {
    code: 'intake.empty',
    name: 'content-without-houses',
    make: async (folder) => {
      await mkdir(path.join(folder, 'content'));
      return ['check', '--content', path.join(folder, 'content')];
    },
  },
  {
    code: 'intake.too-big',
    name: 'fifty-megabytes',
    make: async (folder) => {
      const words = await house(folder, { 'house.yaml': HOUSE });
      await truncate(path.join(folder, 'made-house/house.yaml'), 50_000_000);
      return words;
    },
  },
  {
    code: 'intake.encoding',
    name: 'not-utf-8',
    make: (folder) =>
      house(folder, { 'house.yaml': Buffer.from(HOUSE.replace('Test Lane', 'Café Lane'), 'latin1') }),
  },
  {
    code: 'intake.encoding',
    name: 'facts-in-utf-16',
    make: (folder) => house(folder, { 'house.yaml': Buffer.from(`\ufeff${HOUSE}`, 'utf16le') }),
  },
  {
    code: 'intake.encoding',
    name: 'one-of-two-files',
    make: (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}rooms:\n  - { id: kitchen, level: main, use: kitchn }\n`,
        'levels.yaml': Buffer.from('levels:\n  - { id: main, name: étage, grade: above }\n', 'latin1'),
      }),
  },
  {
    code: 'intake.outside',
    name: 'document-through-a-link',
    make: async (folder) => {
      await writeFile(path.join(folder, 'secret.pdf'), 'not for the packet');
      const words = await house(folder, {
        'house.yaml': `${HOUSE}documents:\n  - { id: receipt-031, what: receipt, kind: receipt, file: receipt-031.pdf }\n`,
        'documents/other.pdf': '%PDF-1.4\n',
      });
      await symlink(
        path.join(folder, 'secret.pdf'),
        path.join(folder, 'made-house/documents/receipt-031.pdf'),
      );
      return words;
    },
  },
  {
    code: 'intake.outside',
    name: 'facts-through-a-link',
    make: async (folder) => {
      await writeFile(path.join(folder, 'elsewhere.yaml'), 'rooms: []\n');
      const words = await house(folder, { 'house.yaml': HOUSE });
      await symlink(path.join(folder, 'elsewhere.yaml'), path.join(folder, 'made-house/rooms.yaml'));
      return words;
    },
  },
  {
    code: 'intake.no-file',
    name: 'folder-where-a-file-should-be',
    make: (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}documents:\n  - { id: receipt-031, what: receipt, kind: receipt, file: receipt-031 }\n`,
        'documents/receipt-031/page-1.pdf': '%PDF-1.4\n',
      }),
  },
  {
    code: 'intake.photo',
    name: 'cut-short',
    make: async (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${RAIL}`,
        'photos/IMG_0412.jpg': (await picture(200)).subarray(0, 3000),
      }),
  },
  {
    code: 'intake.photo',
    name: 'empty',
    make: (folder) => house(folder, { 'house.yaml': `${HOUSE}${RAIL}`, 'photos/IMG_0412.jpg': '' }),
  },
  {
    code: 'intake.photo',
    name: 'heic-cut-short',
    make: (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${RAIL}`,
        // The head of a HEIC file and no picture behind it.
        'photos/IMG_0412.HEIC': Buffer.concat([
          Buffer.from([0, 0, 0, 24]),
          Buffer.from('ftypheic\0\0\0\0mif1heic', 'latin1'),
        ]),
      }),
  },
  {
    code: 'intake.photo',
    name: 'a-fact-rests-on-it',
    make: (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${RAIL}conditions:\n  - { what: no handrail, evidence: [IMG_0412] }\n`,
        'photos/IMG_0412.jpg': 'never a picture',
      }),
  },
  {
    code: 'intake.photo',
    name: 'unfolds-too-large',
    make: async (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${RAIL}`,
        'photos/IMG_0412.png': await sharp({
          create: { width: 12_000, height: 9000, channels: 3, background: '#94a3a8' },
        })
          .png({ compressionLevel: 9 })
          .toBuffer(),
      }),
  },
  {
    code: 'intake.photo',
    name: 'drawing',
    make: (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${RAIL}`,
        'photos/IMG_0412.jpg': '<svg xmlns="http://www.w3.org/2000/svg" width="4" height="3"/>',
      }),
  },
  {
    code: 'intake.photo',
    name: 'wrong-ending',
    make: async (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${RAIL.replace('IMG_0412: {', 'IMG_0412: { file: IMG_0412.png,')}`,
        'photos/IMG_0412.png': await picture(40),
      }),
  },
  {
    code: 'intake.photo',
    name: 'capitals-apart',
    make: async (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${RAIL}`,
        'photos/IMG_0412.jpg': await picture(40),
        'photos/img_0412.JPG': await picture(41),
      }),
  },
  {
    code: 'intake.photo-twice',
    name: 'one-of-them-covered',
    make: async (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}photos:
  front: { file: IMG_0412.jpg, shows: street side, alt: A house., hide: [[0, 0.8, 0.2, 0.2]] }
  again: { file: IMG_0412.jpg, shows: front door, alt: A door. }
`,
        'photos/IMG_0412.jpg': await picture(40),
      }),
  },
  {
    code: 'cli.photo-early',
    name: 'as-of-a-later-day',
    make: async (folder) => [
      ...(await house(folder, {
        'house.yaml': `${HOUSE}photos:\n  IMG_0412: { shows: bedroom, alt: A bedroom., not-before: 2190-01-05 }\n`,
        'photos/IMG_0412.jpg': await picture(40),
      })),
      '--as-of',
      '2190-06-01',
    ],
  },
  {
    code: 'tally.no-alt',
    name: 'one-photo',
    make: async (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}photos:\n  IMG_0412: { shows: cellar stair, when: after }\n`,
        'photos/IMG_0412.jpg': await picture(40),
      }),
  },
  {
    code: 'tally.no-alt',
    name: 'many-photos',
    make: async (folder) => {
      const names = Array.from({ length: 40 }, (_, n) => `IMG_${1000 + n}`);
      const photo = await picture(40);
      return house(folder, {
        'house.yaml': `${HOUSE}photos:\n${names.map((name) => `  ${name}: { shows: cellar stair }\n`).join('')}`,
        ...Object.fromEntries(names.map((name) => [`photos/${name}.jpg`, photo])),
      });
    },
  },
  {
    code: 'tally.photo-date',
    name: 'older-after',
    make: async (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${PAIR}`,
        'photos/IMG_0412.jpg': await cameraPhoto('2026:05:20 16:10:00'),
        'photos/IMG_0641.jpg': await cameraPhoto('2026:02:21 09:14:02'),
      }),
  },
  {
    code: 'tally.photo-date',
    name: 'after-before-it-was-done',
    make: async (folder) =>
      house(folder, {
        'house.yaml': `${HOUSE}${PAIR}`,
        'photos/IMG_0412.jpg': await cameraPhoto('2026:02:21 09:14:02'),
        'photos/IMG_0641.jpg': await cameraPhoto('2026:04:30 16:10:00'),
      }),
  },
  {
    code: 'tally.photo-place',
    name: 'three-miles-away',
    make: async (folder) => {
      const ids = ['IMG_0412', 'IMG_0641', 'IMG_0642', 'IMG_0643'];
      const photos = await Promise.all(
        ids.map((_, n) =>
          cameraPhoto(`2026:05:0${n + 1} 09:00:00`, n === 3 ? '39/1 10/1 0/1' : '39/1 7/1 0/1'),
        ),
      );
      return house(folder, {
        'house.yaml': `${HOUSE}photos:\n${ids.map((id) => `  ${id}: { shows: stair, alt: A stair. }\n`).join('')}`,
        ...Object.fromEntries(ids.map((id, n) => [`photos/${id}.jpg`, photos[n] ?? ''])),
      });
    },
  },
  {
    code: 'archive.facts',
    name: 'pair-into-a-file-with-a-mistake',
    make: async (folder) => {
      const [, home = ''] = await house(folder, {
        'house.yaml': `${HOUSE}work:\n  - { id: rail, what: handrail, did: new, done: 2026-05-12, by: owner, by: family }\n`,
        'photos/IMG_0641.jpg': await cameraPhoto('2026:05:12 16:10:00'),
      });
      return ['photos', home, '--accept', 'rail'];
    },
  },
  {
    code: 'print.no-glyph',
    name: 'a-sign-the-typefaces-lack',
    make: async (folder) => {
      const [, home = ''] = await house(folder, {
        'house.yaml': `${HOUSE}conditions:\n  - { what: the door sticks 床 }\n`,
      });
      return ['build', home, '--edition', 'buyer'];
    },
  },
  {
    code: 'print.too-long',
    name: 'a-long-condition',
    make: async (folder) => {
      const [, home = ''] = await house(folder, {
        'house.yaml': `${HOUSE}conditions:\n  - { what: the garage door sticks }\n  - what: the door sticks ${'in wet weather, when the frame swells, '.repeat(300)}and then opens\n`,
      });
      return ['build', home, '--edition', 'visit'];
    },
  },
  {
    code: 'archive.disk',
    name: 'file-in-the-way',
    make: async (folder) => {
      const [, home = ''] = await house(folder, { 'house.yaml': HOUSE });
      await writeFile(path.join(folder, 'out'), 'a file, not a folder');
      return ['build', home, '--edition', 'agent', '--out', path.join(folder, 'out')];
    },
  },
  {
    code: 'archive.disk',
    name: 'full-disk',
    make: async (folder) => {
      const [, home = ''] = await house(folder, { 'house.yaml': HOUSE });
      return onSmallDisk(folder, ['build', home, '--edition', 'agent']);
    },
    clear: unmount,
  },
  {
    code: 'archive.disk',
    name: 'full-disk-for-photos',
    make: async (folder) => {
      const [, home = ''] = await house(folder, {
        'house.yaml': `${HOUSE}${RAIL}`,
        'photos/IMG_0412.jpg': await picture(1200),
      });
      return onSmallDisk(folder, ['check', home]);
    },
    clear: unmount,
  },
  {
    code: 'archive.place',
    name: 'over-the-house-itself',
    make: async (folder) => {
      const [, home = ''] = await house(folder, { 'house.yaml': HOUSE });
      return ['build', home, '--edition', 'agent', '--out', folder];
    },
  },
  {
    code: 'archive.place',
    name: 'over-somebody-elses-files',
    make: async (folder) => {
      const [, home = ''] = await house(folder, { 'house.yaml': HOUSE });
      await mkdir(path.join(folder, 'out', 'made-house'), { recursive: true });
      await writeFile(path.join(folder, 'out', 'made-house', 'notes.txt'), 'mine');
      return ['build', home, '--edition', 'agent', '--out', path.join(folder, 'out')];
    },
  },
  {
    code: 'archive.disk',
    name: 'new-on-a-folder-that-is-there',
    make: async (folder) => {
      await house(folder, { 'house.yaml': HOUSE });
      return ['new', path.join(folder, 'made-house'), '--yes'];
    },
  },
  {
    code: 'intake.encoding',
    name: 'sheet-in-utf-16',
    make: (folder) =>
      moneyHouse(folder, {
        'costs.csv': Buffer.from(`\ufeff${COSTS.join(',')}\r\n${PAID.join(',')}\r\n`, 'utf16le'),
      }),
  },
  {
    code: 'intake.encoding',
    name: 'sheet-of-another-alphabet',
    make: (folder) =>
      moneyHouse(folder, {
        'costs.csv': Buffer.from(
          `${COSTS.join(',')}\n${PAID.join(',')}\n2026-03-15,Café Alder,boards,9.00,repair,receipt-031\n`,
          'latin1',
        ),
      }),
  },
  {
    code: 'intake.too-big',
    name: 'sheet-of-65-megabytes',
    make: async (folder) => {
      const words = await moneyHouse(folder, { 'costs.csv': '' });
      await truncate(path.join(folder, 'made-house/costs.csv'), 65_000_000);
      return words;
    },
  },
  {
    code: 'intake.outside',
    name: 'sheet-through-a-link',
    make: async (folder) => {
      await writeFile(path.join(folder, 'elsewhere.csv'), `${COSTS.join(',')}\n${PAID.join(',')}\n`);
      const words = await moneyHouse(folder, {});
      await symlink(path.join(folder, 'elsewhere.csv'), path.join(folder, 'made-house/costs.csv'));
      return words;
    },
  },
  {
    code: 'intake.sheet',
    name: 'in-two-places',
    make: async (folder) =>
      moneyHouse(folder, {
        'costs.csv': `${COSTS.join(',')}\n${PAID.join(',')}\n`,
        'costs.xlsx': await workbook({ costs: [COSTS, PAID] }),
      }),
  },
  {
    code: 'intake.sheet',
    name: 'workbook-called-csv',
    make: async (folder) => moneyHouse(folder, { 'costs.csv': await workbook({ costs: [COSTS, PAID] }) }),
  },
  {
    code: 'intake.sheet',
    name: 'workbook-cut-short',
    make: async (folder) =>
      moneyHouse(folder, { 'costs.xlsx': (await workbook({ costs: [COSTS, PAID] })).subarray(0, 900) }),
  },
  {
    code: 'intake.sheet',
    name: 'workbook-with-a-password',
    make: (folder) =>
      moneyHouse(folder, {
        'costs.xlsx': Buffer.concat([Buffer.from('d0cf11e0a1b11ae1', 'hex'), Buffer.alloc(504)]),
      }),
  },
  {
    code: 'intake.sheet',
    name: 'sheets-of-a-workbook-that-are-not-read',
    make: async (folder) =>
      moneyHouse(folder, {
        'costs.xlsx': await workbook({
          costs: [COSTS, PAID],
          Pivot: [
            ['bucket', 'sum'],
            ['improvement', 214.5],
          ],
        }),
      }),
  },
  {
    code: 'intake.sheet',
    name: 'cells-beyond-the-headings-of-a-workbook',
    make: async (folder) =>
      moneyHouse(folder, { 'costs.xlsx': await workbook({ costs: [COSTS, [...PAID, null, 'ask again']] }) }),
  },
  {
    code: 'intake.cell',
    name: 'cells-of-a-workbook',
    make: async (folder) =>
      moneyHouse(folder, {
        'costs.xlsx': await workbook({
          costs: [
            COSTS,
            PAID,
            ['2026-03-15', 'Alder Hardware', 'boards', 12.345, 'improvement', 'receipt-031'],
            ['2026-03-16', 'Alder Hardware', 'boards', '1.234,50', 'improvement', 'receipt-031'],
            ['2026-03-17', 'Alder Hardware', 'boards', 20, 'improvment', 'receipt-031'],
            [46_098, 'Alder Hardware', 'boards', 30, 'improvement', 'receipt-031'],
          ],
        }),
      }),
  },
  {
    code: 'intake.cell',
    name: 'formulas-of-a-workbook',
    make: async (folder) => moneyHouse(folder, { 'costs.xlsx': await workbookOfFormulas() }),
  },
  {
    code: 'facts.taxpayer-number',
    name: 'in-a-workbook',
    make: async (folder) =>
      moneyHouse(folder, {
        'costs.xlsx': await workbook({
          costs: [
            COSTS,
            ['2026-03-15', 'Ridge Street Plumbing 00-0000000', 'rough-in', 850, 'improvement', 'receipt-031'],
          ],
        }),
      }),
  },
  {
    code: 'intake.cell',
    name: 'fifty-thousand-rows',
    make: (folder) => moneyHouse(folder, { 'costs.csv': `${[COSTS, ...fiftyThousand()].join('\n')}\n` }),
  },
  {
    code: 'tally.row-twice',
    name: 'fifty-thousand-rows',
    make: (folder) => {
      const rows = fiftyThousand(false).map((row, at) =>
        at === 30_000 ? '2026-03-14,Alder Hardware,board 1,1.01,improvement,receipt-031' : row,
      );
      return moneyHouse(folder, { 'costs.csv': `${[COSTS, ...rows].join('\n')}\n` });
    },
  },
  ...(
    [
      ['flipped-bit', (bag) => writeFile(path.join(bag, 'data', 'how-to-read.txt'), 'reed it\n')],
      ['missing', (bag) => rm(path.join(bag, 'data', 'originals', 'house.yaml'))],
      ['added', (bag) => writeFile(path.join(bag, 'data', 'note.txt'), 'a note\n')],
      [
        'climbing-out',
        (bag) =>
          appendFile(path.join(bag, 'manifest-sha256.txt'), `${'0'.repeat(64)}  data/../../house.yaml\n`),
      ],
      ['no-manifest', (bag) => rm(path.join(bag, 'manifest-sha256.txt'))],
    ] satisfies [string, (bag: string) => Promise<void>][]
  ).map(
    ([name, spoil]): MadeCase => ({
      code: 'archive.bag',
      name,
      make: async (folder) => {
        const bag = await written(path.join(folder, 'archive'));
        await spoil(bag);
        return ['verify', bag];
      },
    }),
  ),
  ...(
    [
      ['no-csv', 'OFXHEADER:100\nDATA:OFXSGML\n'],
      [
        'european-amounts',
        'Date,Description,Amount\n2026-04-03,Corner Supply,"1.234,50"\n2026-04-04,Corner Supply,1e3\n',
      ],
      ['no-rows', 'Date,Description,Amount\n'],
    ] satisfies [string, string][]
  ).map(
    ([name, text]): MadeCase => ({
      code: 'cli.import',
      name,
      make: async (folder) => {
        const [, home = ''] = await house(folder, { 'house.yaml': HOUSE });
        const file = path.join(folder, 'bank.csv');
        await writeFile(file, text);
        return ['costs', 'import', file, home, '--yes', '--paid-is', 'positive', '--paid', 'card'];
      },
    }),
  ),
  {
    code: 'intake.paper',
    name: 'cut-short',
    make: async (folder) => {
      const [, home = ''] = await house(folder, {
        'house.yaml': `${HOUSE}  bought: 2026-02-17
documents:
  - { id: receipt-031, what: receipt for boards, kind: receipt, file: receipt-031.pdf }
money: { role: dealer, in-business: no }
`,
        'costs.csv':
          'date,payee,what,amount,bucket,receipt\n2026-04-03,Corner Supply,boards,472.14,improvement,receipt-031\n',
        'documents/receipt-031.pdf': '%PDF-1.7 cut',
      });
      return ['build', home, '--edition', 'file'];
    },
  },
  { code: 'cli.no-packet', name: 'no-such-file', make: async () => ['verify', 'packet.pdf'] },
  {
    code: 'cli.no-packet',
    name: 'no-pdf',
    make: async (folder) => {
      const file = path.join(folder, 'letter.pdf');
      await writeFile(file, 'Dear buyer, here is the packet.');
      return ['verify', file];
    },
  },
  { code: 'cli.no-packet', name: 'no-data', make: (folder) => verifying(folder, tinyPdf()) },
  { code: 'cli.no-packet', name: 'locked', make: (folder) => verifying(folder, tinyPdf('/Encrypt<</V 5>>')) },
  { code: 'cli.usage', name: 'unknown-option', make: async () => ['build', '--editon', 'agent'] },
  { code: 'cli.usage', name: 'unknown-command', make: async () => ['chekc'] },
  { code: 'cli.usage', name: 'unknown-edition', make: async () => ['build', '--edition', 'agents'] },
  { code: 'cli.usage', name: 'no-such-day', make: async () => ['check', '--as-of', '2026-02-30'] },
  { code: 'cli.usage', name: 'option-without-value', make: async () => ['build', '--out'] },
  { code: 'cli.usage', name: 'no-port', make: async () => ['serve', '--port', '70000'] },
  { code: 'cli.usage', name: 'no-folder-to-begin', make: async () => ['new'] },
  {
    code: 'cli.usage',
    name: 'pair-of-unknown-work',
    make: async (folder) => {
      const [, home = ''] = await house(folder, {
        'house.yaml': `${HOUSE}work:\n  - { id: cellar-rail, what: handrail, did: new, done: 2026-05-12 }\n`,
        'photos/IMG_0641.jpg': await cameraPhoto('2026:05:12 16:10:00'),
      });
      return ['photos', home, '--accept', 'celar-rail'];
    },
  },
  {
    code: 'cli.usage',
    name: 'pairs-of-several-houses',
    make: async (folder) => {
      for (const name of ['content/elm-lane', 'content/oak-lane'])
        await house(path.join(folder, name), { 'house.yaml': HOUSE });
      return ['photos', '--content', path.join(folder, 'content'), '--accept', 'all'];
    },
  },
  { code: 'cli.usage', name: 'no-pair-named', make: async () => ['photos', '--accept', ' , '] },
];

/** A house with one receipt, whose role and business are told, so that a sheet's mistakes are all there is to say. */
const moneyHouse = (folder: string, sheets: Readonly<Record<string, string | Uint8Array>>) =>
  house(folder, {
    'house.yaml': `${HOUSE}  bought: 2026-02-17
documents:
  - { id: receipt-031, what: receipt for boards, kind: receipt }
money: { role: dealer, in-business: no }
`,
    ...sheets,
  });

/** Sheets of a workbook by their title. */
async function workbook(
  sheets: Readonly<Record<string, readonly (readonly (string | number | null)[])[]>>,
): Promise<Buffer> {
  const named = Object.entries(sheets).map(([sheet, rows]) => ({
    sheet,
    data: rows.map((row) => row.map((value) => (value === null ? null : { value }))),
  }));
  return Buffer.from(await (await writeWorkbook(named as never)).toBuffer());
}

/** A workbook with a formula that failed and one that was never worked out, which the packer of workbooks doesn't write. */
async function workbookOfFormulas(): Promise<Buffer> {
  const text = (at: string, words: string | number): string =>
    `<c r="${at}" t="inlineStr"><is><t>${words}</t></is></c>`;
  const row = (number: number, amount: string): string =>
    `<row r="${number}">${PAID.map((words, at) => (at === 3 ? amount : text(`${'ABCDEF'[at]}${number}`, words))).join('')}</row>`;
  const sheet = [
    `<row r="1">${COSTS.map((words, at) => text(`${'ABCDEF'[at]}1`, words)).join('')}</row>`,
    row(2, '<c r="D2" t="e"><f>1/0</f><v>#DIV/0!</v></c>'),
    row(3, '<c r="D3"><f>D1*2</f></c>'),
  ].join('');
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const relations = (kind: string, target: string): string =>
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${office}/${kind}" Target="${target}"/></Relationships>`;
  const parts = {
    '[Content_Types].xml':
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>',
    '_rels/.rels': relations('officeDocument', 'xl/workbook.xml'),
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${office}"><sheets><sheet name="costs" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': relations('worksheet', 'worksheets/sheet1.xml'),
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${main}"><sheetData>${sheet}</sheetData></worksheet>`,
  };
  return packedParts(parts);
}

/** Rows of a cost sheet, all different; with `wrong` a handful among them that can't be read. */
function fiftyThousand(wrong = true): string[] {
  const broken: Readonly<Record<number, string>> = {
    7: '2026-03-14,Alder Hardware,board 7,"1.234,50",improvement,receipt-031',
    9999: '2026-02-30,Alder Hardware,board 9999,9.99,improvement,receipt-031',
    25000: '2026-03-14,Alder Hardware,board 25000,12.345,improvement,receipt-031',
    40000: '2026-03-14,Alder Hardware,board 40000,40.00,improvment,receipt-031',
    50000: '2026-03-14,Alder Hardware,board 50000,1e3,improvement,receipt-031',
  };
  return Array.from({ length: 50_000 }, (_, at) => {
    const n = at + 1;
    const told = wrong ? broken[n] : undefined;
    const cents = String((n % 100) + 100);
    return (
      told ??
      `2026-03-14,Alder Hardware,board ${n},${cents.slice(0, 1)}.${cents.slice(1)},improvement,receipt-031`
    );
  });
}

/** A disk of 128 kB in memory; where the machine does not allow one, the case can't be made. */
function onSmallDisk(folder: string, words: readonly string[]): readonly string[] | undefined {
  const disk = path.join(folder, 'disk');
  try {
    execFileSync('mkdir', [disk]);
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=128k', 'tmpfs', disk], { stdio: 'ignore' });
  } catch {
    return undefined;
  }
  return [...words, '--out', path.join(disk, 'out')];
}

function unmount(folder: string): void {
  try {
    execFileSync('umount', [path.join(folder, 'disk')], { stdio: 'ignore' });
  } catch {
    // It was never mounted.
  }
}

/** A PDF of one empty sheet, as no version of this program makes one. */
function tinyPdf(trailer = ''): string {
  const objects = [
    '<</Type/Catalog/Pages 2 0 R>>',
    '<</Type/Pages/Kids[3 0 R]/Count 1>>',
    '<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]>>',
  ];
  let text = '%PDF-1.7\n';
  let table = 'xref\n0 4\n0000000000 65535 f \n';
  for (const [i, object] of objects.entries()) {
    table += `${String(text.length).padStart(10, '0')} 00000 n \n`;
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
  }
  return `${text}${table}trailer\n<</Size 4/Root 1 0 R${trailer}>>\nstartxref\n${text.length}\n%%EOF\n`;
}

async function verifying(folder: string, pdf: string): Promise<string[]> {
  const file = path.join(folder, 'packet.pdf');
  await writeFile(file, pdf);
  return ['verify', file];
}
