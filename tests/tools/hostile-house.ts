/** Houses whose every text tries to be something else, built in all editions; and the same house with plain words. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildHouse, EDITION_NAMES } from '../../src/build.js';
import type { Located } from '../../src/diagnostics/report.js';
import type { HouseSpec } from '../../src/facts/house.js';
import { everyWord } from './every-word.js';
import { photoWithSecrets } from './photo-with-secrets.js';

/** Beginnings that a spreadsheet may run, or that a program may take for an address. */
const STARTS = [
  ...['=1+1', '+1+1', '-1+1', '@SUM(1)', '"=1+1"', "'=1+1", 'x\n=1+1', 'x;=1+1;', 'x\t=1+1\t', '＝1+1'],
  ...[
    '=cmd|" /C calc"!A0',
    '=HYPERLINK("//evil.invalid/";"x")',
    '";=1+1;"',
    'x; =1+1;',
    '\u200B=1+1',
    ';\n"=1+1";',
  ],
  ...[
    'javascript:hit()',
    'java\tscript:hit()',
    'data:text/html,<script>hit()</script>',
    'file:///etc/passwd',
  ],
  ...['vbscript:hit', '//evil.invalid/x', 'https://evil.invalid/x', 'mailto:x@evil.invalid'],
];

/** Signs that turn a line about, have no width, or part lines; none of them is a control character, which is refused. */
export const HIDDEN =
  '\u202Eb\u2066c\u200Bd\u200Ee\u200Ff\u061Cg\uFEFFh\u2028i\u2029j\u2060k\u{E0041}l\u202Dm\uFFF9n';

/** What a text tries. Each is at most 190 characters: a name takes 200. `n` tells the fields apart. */
export const ATTACKS: Readonly<Record<string, (n: number) => string>> = {
  plain: (n) => `Plain words, as many as others have of them, so that the names are as long as theirs ${n}`,
  markup: (n) =>
    `</style></title></script>"><img src=x onerror="document.title='hit'">' onclick=hit() ]]> --> <!-- <script>hit()</script>{{7*7}}{%x%}{#x#}#{7*7}\${7*7}<%=7*7%>%s$&$\` ${n}`,
  start: (n) => `${STARTS[n % STARTS.length]}+${n}`,
  breaker: (n) =>
    `) Tj ET \\) endstream endobj 9 0 obj <</S/JavaScript/JS(hit())>> stream\nATTENDEE:x@evil.invalid\nBEGIN:VEVENT;,\\n "}]}</script> ${HIDDEN} ${n}`,
};

export interface HostileHouse {
  readonly folder: string;
  /** Holds one folder for each edition. */
  readonly out: string;
  readonly located: readonly Located[];
  /** Field → the text that stands in it. */
  readonly texts: ReadonlyMap<string, string>;
}

/** Some fields mean more than their words: these keep a value, and are attacked by tests of their own. */
const KEPT: Readonly<Record<string, string>> = {
  'listing.remarks': 'remarks.txt',
  'money.budget[].for': 'all',
  'measured.by': 'owner',
};

/** A paper of one empty page. */
const PAPER =
  '%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj 2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj 3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 99 99]>>endobj\nxref\n0 4\n0000000000 65535 f \n0000000009 00000 n \n0000000053 00000 n \n0000000104 00000 n \ntrailer<</Size 4/Root 1 0 R>>\nstartxref\n169\n%%EOF\n';

/** As one cell of a sheet. */
const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Writes and builds the house of one attack below `root`. */
export async function buildHostileHouse(root: string, attack: string): Promise<HostileHouse> {
  const say = ATTACKS[attack];
  if (say === undefined) throw new Error(`no attack is named ${attack}`);
  const folder = path.join(root, attack, 'content', 'hostile');
  for (const part of ['photos', 'documents']) mkdirSync(path.join(folder, part), { recursive: true });
  const texts = new Map<string, string>();
  let n = 0;
  const fileName = (text: string): string => text.replace(/[/\n]/gu, '_').slice(0, 80);
  // One photo with a name of its own, one that is only known by its key.
  const [photo, key] = [`${fileName(`1 ${say(997)}`)}.jpg`, fileName(`2 ${say(998)}`)];
  const textOf = (field: string, at: number): string => {
    if (field === 'documents[].file') return `${fileName(say(at))}.pdf`;
    // A serial number ends in its year and week, for its label to be read.
    if (field === 'systems[].label.serial') return `${say(at).slice(0, 80)}2601`;
    const serial = texts.get('systems[].label.serial') ?? '';
    if (field === 'systems[].label.reads') return `YYWW at ${serial.length - 3}`;
    return KEPT[field] ?? say(at);
  };
  const spec = everyWord((field, kind) => {
    if (kind !== 'text') return undefined;
    n += 1;
    const text = textOf(field, n);
    texts.set(field, text);
    return text;
  });
  spec.photos = {
    photo: { ...spec.photos?.photo, file: photo },
    [key]: { shows: say(995), alt: say(996), where: 'kitchen', when: 'as-found' },
  } as HouseSpec['photos'];
  writeFileSync(path.join(folder, 'house.yaml'), JSON.stringify(spec, null, 1));
  writeFileSync(path.join(folder, 'photos', photo), await photoWithSecrets('hostile'));
  writeFileSync(path.join(folder, 'photos', `${key}.jpg`), await photoWithSecrets('key'));
  writeFileSync(path.join(folder, 'documents', texts.get('documents[].file') ?? ''), PAPER);
  writeFileSync(path.join(folder, 'remarks.txt'), `${say(991)}\n`);
  const words = [1, 2, 3, 4, 5].map((i) => cell(say(900 + i)));
  writeFileSync(
    path.join(folder, 'costs.csv'),
    `date,payee,what,amount,bucket,place,paid,receipt,note\r\n2026-03-03,${words[0]},${words[1]},9.50,improvement,kitchen,check,,${words[2]}\r\n`,
  );
  writeFileSync(
    path.join(folder, 'miles.csv'),
    `date,from,to,purpose,miles,vehicle,note\r\n2026-03-03,${words[0]},${words[1]},${words[2]},9.5,${words[3]},${words[4]}\r\n`,
  );
  writeFileSync(
    path.join(folder, 'hours.csv'),
    `date,who,what,place,hours,note\r\n2026-03-03,owner,${words[1]},kitchen,2,${words[2]}\r\n`,
  );
  const out = path.join(root, attack, 'out');
  const { located, made } = await buildHouse({
    folder,
    shown: 'content/hostile',
    asOf: '2026-11-20',
    editions: EDITION_NAMES,
    out,
    outShown: 'out',
    paper: 'letter',
  });
  if (made.length !== EDITION_NAMES.length)
    throw new Error(
      located
        .filter(({ diagnostic }) => diagnostic.severity === 'error')
        .map(({ diagnostic }) => `${diagnostic.path?.join('.')}: ${diagnostic.message}`)
        .join('\n'),
    );
  return { folder, out: path.join(out, 'hostile'), located, texts };
}
