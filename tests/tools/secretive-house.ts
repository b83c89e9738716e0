/**
 * A house folder in which everything talks: photos, receipts and a cost workbook with words and pictures in every place that
 * no reader shows, remarks in YAML, columns that mean nothing, a bank's file, names of files. Each word, and each colour that
 * something is painted in, is nobody else's.
 */
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { filesBelow } from './built-houses.js';
import { typed } from './gallery.js';
import { PlantedWords } from './planted-words.js';
import { type Colour, GREY, hue } from './rare-colours.js';
import { talkingPdf, talkingPng } from './talking-papers.js';
import { rubbedOut, talkingJpeg, twoPages } from './talking-photo.js';
import { talkingWorkbook } from './talking-workbook.js';

export const NAME = 'quiet-house';
export const AS_OF = '2026-11-20';

/** What is painted in a colour of its own, by what it is. */
export const PAINTED = {
  'a private photo': hue(0),
  'a photo that waits for its day': hue(1),
  'a hidden part': hue(2),
  'a label': hue(3),
  'a photo that no fact names': hue(4),
  'a photo without words': hue(5),
  'the small copy in a photo': hue(6),
  'the second picture in a photo’s file': hue(7),
  'what was rubbed out in a photo': [96, 0, 160],
  'the second page of a photo': [160, 80, 0],
  'a receipt as PDF': hue(8),
  'a receipt as PNG': hue(9),
  'a receipt as JPEG': hue(10),
  'a private paper': hue(11),
} as const satisfies Record<string, Colour>;
export type PaintedThing = keyof typeof PAINTED;

export interface SecretiveHouse {
  /** Holds `content/`. */
  readonly root: string;
  readonly folder: string;
  readonly words: PlantedWords;
}

export async function writeSecretiveHouse(root: string): Promise<SecretiveHouse> {
  const words = new PlantedWords();
  const folder = path.join(root, 'content', NAME);
  const owners = (where: string): string => words.plant(where, 'owner');
  const nobodys = (where: string): string => words.plant(where, 'nobody');
  const write = (name: string, bytes: string | Buffer): void => {
    const file = path.join(folder, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, bytes);
  };
  const photo = async (file: string, left: Colour, right: Colour = left): Promise<void> => {
    const beside = {
      small: PAINTED['the small copy in a photo'],
      second: PAINTED['the second picture in a photo’s file'],
    };
    write(`photos/${file}`, await talkingJpeg({ left, right }, beside, words.in('a photo')));
  };
  const name = (where: string, ending: string): string => `${owners(`name of ${where}`)}.${ending}`;
  const photos = {
    // Everybody sees this one; its file's name is nobody's business.
    shown: { file: name('a shown photo', 'jpg'), more: '' },
    secret: { file: name('a private photo', 'jpg'), more: KEPT_BACK.private },
    waits: { file: name('a waiting photo', 'jpg'), more: KEPT_BACK.early },
    covered: { file: name('a covered photo', 'jpg'), more: KEPT_BACK.hidden },
    tag: { file: name('a label', 'jpg'), more: '' },
    mute: { file: name('a photo without words', 'jpg'), more: '' },
    rubbed: { file: name('a photo that was rubbed out in part', 'png'), more: '' },
    paged: { file: name('a photo of two pages', 'tif'), more: '' },
  } as const;
  await photo(photos.shown.file, GREY, [90, 100, 110]);
  await photo(photos.secret.file, PAINTED['a private photo']);
  await photo(photos.waits.file, PAINTED['a photo that waits for its day']);
  await photo(photos.covered.file, GREY, PAINTED['a hidden part']);
  await photo(photos.tag.file, PAINTED['a label']);
  await photo(photos.mute.file, PAINTED['a photo without words']);
  write(`photos/${photos.rubbed.file}`, await rubbedOut(PAINTED['what was rubbed out in a photo']));
  write(`photos/${photos.paged.file}`, await twoPages(GREY, PAINTED['the second page of a photo']));
  await photo(name('an unnamed photo', 'jpg'), PAINTED['a photo that no fact names']);
  const papers = {
    till: name('a PDF receipt', 'pdf'),
    scan: name('a PNG receipt', 'png'),
    snap: name('a JPEG receipt', 'jpg'),
    report: name('a private paper', 'pdf'),
  };
  const beside = { small: GREY, second: GREY };
  const snap = PAINTED['a receipt as JPEG'];
  write(`documents/${papers.till}`, await talkingPdf(PAINTED['a receipt as PDF'], words.in('a PDF receipt')));
  write(`documents/${papers.scan}`, await talkingPng(PAINTED['a receipt as PNG'], words.in('a PNG receipt')));
  write(
    `documents/${papers.snap}`,
    await talkingJpeg({ left: snap, right: snap }, beside, words.in('a JPEG receipt')),
  );
  write(
    `documents/${papers.report}`,
    await talkingPdf(PAINTED['a private paper'], words.in('a private paper')),
  );
  write(
    `documents/${nobodys('name of a paper that no fact names')}.pdf`,
    await talkingPdf(GREY, words.in('a paper that no fact names')),
  );
  const kitchen = 'shows: kitchen, where: kitchen, when: after';
  write(
    'house.yaml',
    `# ${nobodys('a remark above the YAML')}
house:
  name: Quiet House # ${nobodys('a remark behind a fact')}
  address: { street: 7 Still Lane, city: Fallow Mills, state: OH, zip: "45000" }
  kind: detached
  built: 1948
levels: [{ id: main, name: Main level, grade: above }]
rooms: [{ id: kitchen, level: main, use: kitchen, size: "10' x 12'" }]
systems: [{ id: heater, is: "water heater, tank, electric", installed: 2025-02, evidence: [till] }]
work:
  # private-notes: [${nobodys('a fact that is struck out')}]
  - { id: counter, what: counter, did: replaced, done: 2026-03, where: [kitchen], evidence: [till, scan, snap, report, secret] }
documents:
  - { id: till, what: "${owners('a PDF receipt')}", kind: receipt, date: 2026-03-03, total: "1,417.31", file: ${papers.till} }
  - { id: scan, what: "${owners('a PNG receipt')}", kind: receipt, date: 2026-03-04, file: ${papers.scan} }
  - { id: snap, what: "${owners('a JPEG receipt')}", kind: invoice, date: 2026-03-05, file: ${papers.snap} }
  - { id: report, what: "${owners('a private paper')}", kind: report, date: 2026-03-06, file: ${papers.report}, private: true }
photos:
${Object.entries(photos)
  .map(([id, { file, more }]) => {
    const said = id === 'tag' ? 'shows: label of the heater, when: label, where: kitchen' : kitchen;
    return `  ${id}: { file: ${file}, ${said}${id === 'mute' ? '' : ALT}${more} }`;
  })
  .join('\n')}
...
# ${nobodys('a remark below the end of the YAML')}
`,
  );
  write(
    `${nobodys('name of a file of facts')}.yaml`,
    `listing: { remarks: ${owners('name of the listing text')}.txt } # ${nobodys('a remark in it')}\n`,
  );
  write(
    `${owners('name of the listing text')}.txt`,
    `A new counter. ${nobodys('a draft of the listing text')}\n`,
  );
  const cost = (nth: string, amount: number, receipt: string): (string | number)[] => {
    const [payee, what, note] = ['payee', 'what', 'note'].map((cell) => owners(`${cell} of ${nth}`));
    return [
      '2026-03-03',
      payee ?? '',
      what ?? '',
      amount,
      'improvement',
      receipt,
      note ?? '',
      nobodys(`stray of ${nth}`),
    ];
  };
  const columns = [
    'date',
    'payee',
    'what',
    'amount',
    'bucket',
    'receipt',
    'note',
    nobodys('a stray heading'),
  ];
  write(
    'costs.xlsx',
    await talkingWorkbook(
      [columns, cost('a row', 1417.31, 'till'), cost('a hidden row', 2718.29, 'report')],
      { rows: [3], columns: [7] },
      words.in('the cost workbook'),
    ),
  );
  write(
    'miles.csv',
    `date,from,to,purpose,miles,note,${nobodys('a stray heading of the miles')}\n2026-03-03,${owners('from of a trip')},${owners('to of a trip')},${owners('purpose of a trip')},18.4,${owners('note of a trip')},${nobodys('stray of a trip')}\n`,
  );
  write(
    'hours.csv',
    `date,who,what,place,hours,note,${nobodys('a stray heading of the hours')}\n2026-03-03,owner,${owners('what of an hour')},kitchen,7.5,${owners('note of an hour')},${nobodys('stray of an hour')}\n`,
  );
  await importBank(folder, words);
  return { root, folder, words };
}

const KEPT_BACK = {
  private: ', private: true',
  early: ', not-before: 2199-01-01',
  hidden: ', hide: [[0.5, 0, 0.5, 1]]',
} as const;
const ALT = ', alt: "A kitchen."';

/** The same house with nothing private, hidden or early, and words for each photo: everything is shown that can be. */
export function writeOpenHouse({ folder, words }: SecretiveHouse, root: string): SecretiveHouse {
  const copy = path.join(root, 'content', NAME);
  cpSync(folder, copy, { recursive: true });
  let yaml = readFileSync(path.join(copy, 'house.yaml'), 'utf8');
  for (const [from, to] of [
    ...Object.values(KEPT_BACK).map((kept) => [kept, ''] as const),
    [/(mute: .*) \}$/gmu, `$1${ALT} }`] as const,
  ]) {
    const opened = yaml.replaceAll(from, to);
    if (opened === yaml) throw new Error(`nothing to open: ${from}`);
    yaml = opened;
  }
  writeFileSync(path.join(copy, 'house.yaml'), yaml);
  return { root, folder: copy, words };
}

/** What a bank says of the owner's payments, and what the program keeps of it. */
async function importBank(folder: string, words: PlantedWords): Promise<void> {
  const word = words.in('a bank’s file');
  const bank = path.join(folder, 'imports', `${word('name')}.csv`);
  mkdirSync(path.dirname(bank));
  const row = (day: string, amount: string, nth: string): string =>
    `${day},${word(`text of ${nth}`)},${amount},${word(`reference of ${nth}`)},${word(`memo of ${nth}`)}\n`;
  writeFileSync(
    bank,
    `Date,Description,Amount,Reference,Memo\n${row('03/09/2026', '-61.17', 'one row')}${row('03/10/2026', '-62.18', 'another row')}`,
  );
  const order = ['--yes', '--days', 'month-first', '--columns', 'date=Date,payee=Description,amount=Amount'];
  const { said, status } = await typed(['costs', 'import', bank, folder, ...order]);
  if (status !== 0) throw new Error(said);
  const seen = readFileSync(path.join(folder, 'imports', 'seen.csv'), 'utf8');
  if (!seen.includes(word('text of one row')))
    throw new Error('the program keeps nothing of the bank’s rows');
}

/** SHA-256, SHA-1 and MD5 of every file of the folder, in hexadecimal: by a digest it could be asked for what it is. */
export function digestsBelow(folder: string): Map<string, string> {
  const digests = new Map<string, string>();
  for (const file of filesBelow(folder))
    for (const kind of ['sha256', 'sha1', 'md5'])
      digests.set(
        createHash(kind)
          .update(readFileSync(path.join(folder, file)))
          .digest('hex'),
        `${kind} of ${file}`,
      );
  return digests;
}
