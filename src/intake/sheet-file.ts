/** Which files of a house folder hold the costs, miles and hours, and their rows. */
import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { readCsv } from './csv-cells.js';
import { listing } from './documents.js';
import { readPlainFile } from './read-plain-file.js';
import { safePath } from './safe-path.js';
import { LISTS, type List, MOST_BYTES, MOST_ROWS, type SheetRows, unreadable } from './sheet-rows.js';
import type { WorkbookSheet } from './workbook-cells.js';

export interface FoundSheets {
  readonly sheets: ReadonlyMap<List, SheetRows>;
  readonly diagnostics: readonly Diagnostic[];
}

/** A list's rows and how their source is called in a message. */
interface Source {
  readonly words: string;
  readonly sheet: SheetRows;
}

interface SheetFile {
  readonly list: List;
  readonly name: string;
  readonly ending: string;
}

/** Other kinds of sheets, which are told of rather than passed over. */
const OTHER_ENDINGS = ['.tsv', '.tab', '.txt', '.xls', '.xlsm', '.xlsb', '.ods', '.numbers'];

/** `shown`: the folder as the writer would type it. */
export async function findSheets(folder: string, shown: string): Promise<FoundSheets> {
  const files = (await listing(folder)).flatMap((name): SheetFile[] => {
    const ending = path.extname(name).toLowerCase();
    const list = LISTS.find((one) => one === path.basename(name, path.extname(name)).toLowerCase());
    return list === undefined ? [] : [{ list, name, ending }];
  });
  const sources = new Map<List, Source[]>(LISTS.map((list) => [list, []]));
  let diagnostics: readonly Diagnostic[] = [];
  for (const file of files) {
    const shownFile = path.posix.join(shown, file.name);
    if (file.ending !== '.csv' && file.ending !== '.xlsx') continue;
    const read = await readBytes(folder, file, shownFile);
    if ('wrong' in read) diagnostics = [...diagnostics, read.wrong];
    else if (file.ending === '.csv') {
      const { sheet, diagnostics: found } = readCsv(read.bytes, file.name, shownFile, file.list);
      diagnostics = [...diagnostics, ...found];
      if (sheet !== undefined) sources.get(file.list)?.push({ words: file.name, sheet });
    } else diagnostics = [...diagnostics, ...(await takeWorkbook(read.bytes, file, shownFile, sources))];
  }
  const sheets = new Map<List, SheetRows>();
  const wrong: Diagnostic[] = [];
  const lost = unread(diagnostics);
  for (const [list, [first, ...more]] of sources) {
    if (first === undefined || lost.has(list)) continue;
    if (more.length > 0) wrong.push(twoSources(list, [first, ...more]));
    else if (first.sheet.rows.length > MOST_ROWS) wrong.push(tooManyRows(list, first.sheet));
    else sheets.set(list, first.sheet);
  }
  for (const file of files.filter(({ ending }) => OTHER_ENDINGS.includes(ending)))
    wrong.push(otherKind(file, path.posix.join(shown, file.name), sources.get(file.list)?.[0]));
  return { sheets, diagnostics: [...diagnostics, ...wrong] };
}

/** Lists of which a file could not be read: it may have been the newer one. */
const unread = (diagnostics: readonly Diagnostic[]): Set<unknown> =>
  new Set(diagnostics.filter(({ path: of }) => of?.length === 1).map(({ path: of }) => of?.[0]));

async function readBytes(
  folder: string,
  { list, name }: SheetFile,
  file: string,
): Promise<{ readonly bytes: Buffer } | { readonly wrong: Diagnostic }> {
  const safe = await safePath(folder, name);
  if (!safe.ok && safe.why === 'closed')
    return {
      wrong: unreadable(
        list,
        file,
        `${file} can’t be read: you may not`,
        ['check who may read it'],
        'intake.no-file',
      ),
    };
  if (!safe.ok)
    return {
      wrong:
        safe.why === 'outside'
          ? unreadable(
              list,
              file,
              `${file} is a link that leads out of the house folder`,
              ['put the file itself into the folder'],
              'intake.outside',
            )
          : unreadable(
              list,
              file,
              `${file} is no plain file`,
              ['put the sheet there, or take it out'],
              'intake.no-file',
            ),
    };
  try {
    const { size } = await stat(safe.absolute);
    if (size > MOST_BYTES)
      return {
        wrong: unreadable(
          list,
          file,
          `${name} has ${Math.ceil(size / 1e6)} million bytes; the rows of a house fit in ${MOST_BYTES / 1e6} million`,
          ['check that it is the right file'],
          'intake.too-big',
        ),
      };
    return { bytes: await readPlainFile(safe.absolute) };
  } catch (thrown) {
    const why = (thrown as NodeJS.ErrnoException).code ?? 'unknown reason';
    return {
      wrong: unreadable(
        list,
        file,
        `${file} can’t be read (${why})`,
        ['check who may read it'],
        'intake.no-file',
      ),
    };
  }
}

/** A workbook may hold sheets for the other lists as well; of those without such a name the first is its own list. */
async function takeWorkbook(
  bytes: Buffer,
  { list, name }: SheetFile,
  file: string,
  sources: ReadonlyMap<List, Source[]>,
): Promise<readonly Diagnostic[]> {
  // Most houses keep CSV; what reads workbooks takes a fifth of a second to load.
  const { readWorkbook } = await import('./workbook-cells.js');
  const { sheets, diagnostics } = await readWorkbook(bytes, name, file, list);
  if (diagnostics.length > 0) return diagnostics;
  const listOf = (sheet: WorkbookSheet): List | undefined =>
    LISTS.find((one) => one === sheet.title.trim().toLowerCase());
  const own =
    sheets.find((sheet) => listOf(sheet) === list) ?? sheets.find((sheet) => listOf(sheet) === undefined);
  let found: readonly Diagnostic[] = [];
  for (const sheet of sheets) {
    const goesTo = sheet === own ? list : listOf(sheet);
    if (goesTo !== undefined) {
      sources.get(goesTo)?.push({ words: `${name}, sheet ${sheet.title}`, sheet });
      found = [...found, ...failedCells(goesTo, sheet, file)];
    } else if (sheet.rows.length > 0) found = [...found, notRead(sheet, name, file)];
  }
  if (own !== undefined) return found;
  return [
    ...found,
    unreadable(list, file, `${name} has no sheet called ${list}`, [
      `call the sheet with the ${list}  ${list}`,
    ]),
  ];
}

const failedCells = (list: List, { failed, placeOf }: WorkbookSheet, file: string): Diagnostic[] =>
  failed.map(({ row, column, sign }) => {
    const place = placeOf(row, column);
    return {
      code: 'intake.cell',
      severity: 'error',
      path: [list, row],
      ...(place === undefined ? { file } : { place }),
      message:
        sign === ''
          ? 'the formula of this cell was never worked out'
          : `the formula of this cell failed (${sign})`,
      hints: ['write the value itself, or open the sheet in the spreadsheet, mend the formula and save it'],
    };
  });

const notRead = ({ title }: WorkbookSheet, name: string, file: string): Diagnostic => ({
  code: 'intake.sheet',
  severity: 'note',
  file,
  message: `the sheet “${title}” of ${name} is not read`,
  hints: [`if it is one of the lists, call it ${LISTS.slice(0, -1).join(', ')} or ${LISTS.at(-1)}`],
});

/** Somebody who keeps another kind and saves it as CSV each time has both; that is only worth a word. */
function otherKind({ list, name, ending }: SheetFile, file: string, read: Source | undefined): Diagnostic {
  if (read !== undefined)
    return {
      code: 'intake.sheet',
      severity: 'note',
      file,
      message: `${name} is not read; the ${list} are those of ${read.words}`,
      hints: [`if ${name} is newer, save it as ${read.sheet.name} again`],
    };
  if (['.tsv', '.tab', '.txt'].includes(ending))
    return unreadable(list, file, `${name} is not read under that ending`, [
      `call it ${list}.csv; tabs are understood`,
    ]);
  return unreadable(list, file, `${name} is a kind of sheet that is not read`, [
    `save it as ${list}.xlsx or as “CSV UTF-8” ${list}.csv`,
  ]);
}

const twoSources = (list: List, sources: readonly Source[]): Diagnostic =>
  unreadable(
    list,
    sources[0]?.sheet.file ?? list,
    `the ${list} stand in two places: ${sources.map(({ words }) => words).join(' and ')}`,
    [`keep the newer one and delete the other: ${sources.map(({ words }) => words).join(' or ')}`],
  );

const tooManyRows = (list: List, { file, name, rows }: SheetRows): Diagnostic =>
  unreadable(
    list,
    file,
    `${name} has ${rows.length} rows; a house has ${MOST_ROWS / 1000},000 at most`,
    ['check that it is the right file'],
    'intake.too-big',
  );
