/** The page that lies in every bag of a house, for whoever finds it in twenty years and has no such program. */

export interface GuideFacts {
  /** The house's name, as its packets bear it. */
  readonly house: string;
  /** YYYY-MM-DD. */
  readonly asOf: string;
  /** The editions that are in the bag, with what each is for: `buyer`, "for the buyer and the inspector". */
  readonly editions: readonly {
    readonly name: string;
    readonly is: string;
    /** YYYY-MM-DD and digest at the foot of its sheets; left out where the packet does not say. */
    readonly asOf?: string;
    readonly digest?: string;
  }[];
  /** File names below `data/exports/`, with what each is. */
  readonly exports: readonly { readonly file: string; readonly is: string }[];
  /** `sillplate 1.2.3`. */
  readonly program: string;
}

const WIDTH = 78;

/** Plain text, at most 78 columns wide, lines ended by LF. The same facts give the same text. */
export function howToRead({ house, asOf, editions, exports, program }: GuideFacts): string {
  return [
    ...wrap(`HOW TO READ THIS: the record of ${house}, as of ${asOf}`),
    '',
    ...wrap(
      'This is a bag in the sense of BagIt (RFC 8493): plain files in plain folders, and lists of their digests. Nothing here needs the program that made it, and nothing needs a network.',
    ),
    '',
    'THIS IS PRIVATE. It holds what was paid, to whom, and the receipts.',
    'Give away single packets, never the whole bag.',
    '',
    'WHAT IS WHERE (below data/)',
    ...entry(
      'originals/',
      'the house folder as its owner kept it: facts in house.yaml (text), costs, miles and hours in sheets, photos, receipts and permits',
    ),
    ...entry('packets/', 'what was made of it, one folder an edition; open index.html or the PDF'),
    ...editions.flatMap((one) => entry(`  ${one.name}/`, withState(one))),
    ...(exports.length === 0 ? [] : entry('exports/', 'the same facts in forms for other programs')),
    ...exports.flatMap(({ file, is }) => entry(`  ${file}`, is)),
    '',
    'WHICH PROGRAM OPENS WHAT',
    ...entry('.txt .yaml', 'any text editor'),
    ...entry('.csv .xlsx', 'any spreadsheet; .csv is text with commas'),
    ...entry('.pdf', 'any PDF viewer'),
    ...entry('.html', 'any web browser, from this folder, without a network'),
    ...entry('.jpg .png', 'any picture viewer; .heic is a phone’s photo, newer viewers open it'),
    ...entry('.json', 'any text editor; where a schema lies beside it, that says what each word means'),
    ...entry(
      '.journal',
      'any text editor. It is double-entry bookkeeping in plain text, read by the programs hledger and ledger: each payment with its date, payee, and the accounts it went from and to',
    ),
    ...entry('.ics', 'any calendar'),
    '',
    'WHETHER IT IS STILL WHOLE',
    ...wrap(
      'manifest-sha256.txt lists every file below data/ with its SHA-256 digest, tagmanifest-sha256.txt the files beside data/. In the folder that holds bagit.txt, type',
    ),
    '    sha256sum -c --quiet manifest-sha256.txt tagmanifest-sha256.txt',
    ...wrap(
      '(on a Mac: shasum -a 256 -c --quiet and the two names). No answer means that nothing changed. Any BagIt program does the same and also finds files that were added. In the lists, %25 in a name stands for a percent sign.',
    ),
    ...wrap(
      'If a file is damaged, take it from another copy: keep two, in two places. The house folder, exports and costs are of the day above, each packet of its own day; a later state lies in a later bag.',
    ),
    '',
    `Made by ${program}.`,
    '',
  ].join('\n');
}

const withState = ({ is, asOf, digest }: GuideFacts['editions'][number]): string =>
  [
    is,
    ...(asOf === undefined ? [] : [`as of ${asOf}`]),
    ...(digest === undefined ? [] : [`digest ${digest}`]),
  ].join('; ');

const COLUMN = 16;

/** A name, and what it is beside it; a long name gets a line of its own. */
function entry(name: string, is: string): string[] {
  const head = `  ${name}`;
  const lines = wrap(is, WIDTH - COLUMN);
  const indent = ' '.repeat(COLUMN);
  const [first = '', ...rest] = lines;
  const begin = head.length < COLUMN ? [head.padEnd(COLUMN) + first] : [head, indent + first];
  return [...begin, ...rest.map((line) => indent + line)];
}

function wrap(text: string, width = WIDTH): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/u)) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
