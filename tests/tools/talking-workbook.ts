/**
 * A cost sheet as an office suite leaves it: rows, and words in every place of the file that is no cell of them. ECMA-376,
 * part 1: comments (18.7), hidden sheets, rows and columns (18.2.19, 18.3.1.73, 18.3.1.13), defined names (18.2.5), headers of
 * paper (18.3.1.46), what a cell asks for (18.3.1.32), document properties (15.2.12).
 */
import { packedParts } from './packed-parts.js';
import type { WordFor } from './talking-photo.js';

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const KIND = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** `rows`: the first one has the headings; a number is a number, all else text. Rows named in `hidden` (from 1) are hidden. */
export async function talkingWorkbook(
  rows: readonly (readonly (string | number)[])[],
  hidden: { readonly rows: readonly number[]; readonly columns: readonly number[] },
  wordFor: WordFor,
): Promise<Buffer> {
  const cell = (value: string | number, at: string): string =>
    typeof value === 'number'
      ? `<c r="${at}"><v>${value}</v></c>`
      : `<c r="${at}" t="inlineStr"><is><t>${value}</t></is></c>`;
  const row = (cells: readonly (string | number)[], nth: number): string =>
    `<row r="${nth}"${hidden.rows.includes(nth) ? ' hidden="1"' : ''}>${cells.map((value, at) => cell(value, `${String.fromCharCode(65 + at)}${nth}`)).join('')}</row>`;
  const sheet = (inner: string, after = ''): string =>
    `<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}/relationships">${inner}${after}</worksheet>`;
  const columns = hidden.columns.map((nth) => `<col min="${nth}" max="${nth}" hidden="1"/>`).join('');
  const aside = (where: string): string =>
    sheet(`<sheetData>${row(['words', wordFor(where)], 1)}</sheetData>`);
  const relations = (...all: readonly (readonly [kind: string, target: string])[]): string =>
    `<Relationships xmlns="${PACKAGE}/relationships">${all.map(([kind, target], at) => `<Relationship Id="rId${at + 1}" Type="${kind.includes('/') ? kind : `${OFFICE}/relationships/${kind}`}" Target="${target}"/>`).join('')}</Relationships>`;
  const type = (part: string, kind: string): string =>
    `<Override PartName="/${part}" ContentType="${kind}"/>`;
  return packedParts({
    '[Content_Types].xml': `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${[
      type('xl/workbook.xml', `${KIND}.sheet.main+xml`),
      ...[1, 2, 3].map((nth) => type(`xl/worksheets/sheet${nth}.xml`, `${KIND}.worksheet+xml`)),
      type('xl/comments1.xml', `${KIND}.comments+xml`),
      type('xl/sharedStrings.xml', `${KIND}.sharedStrings+xml`),
      type('docProps/core.xml', 'application/vnd.openxmlformats-package.core-properties+xml'),
      type('docProps/app.xml', 'application/vnd.openxmlformats-officedocument.extended-properties+xml'),
      type('docProps/custom.xml', 'application/vnd.openxmlformats-officedocument.custom-properties+xml'),
    ].join('')}</Types>`,
    '_rels/.rels': relations(
      ['officeDocument', 'xl/workbook.xml'],
      [`${PACKAGE}/relationships/metadata/core-properties`, 'docProps/core.xml'],
      ['extended-properties', 'docProps/app.xml'],
      ['custom-properties', 'docProps/custom.xml'],
    ),
    'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}/relationships"><sheets><sheet name="costs" sheetId="1" r:id="rId1"/><sheet name="${wordFor('hidden sheet’s name')}" sheetId="2" state="hidden" r:id="rId2"/><sheet name="kept aside" sheetId="3" state="veryHidden" r:id="rId3"/></sheets><definedNames><definedName name="${wordFor('defined name')}" comment="${wordFor('defined name’s comment')}">costs!$A$1</definedName></definedNames></workbook>`,
    'xl/_rels/workbook.xml.rels': relations(
      ['worksheet', 'worksheets/sheet1.xml'],
      ['worksheet', 'worksheets/sheet2.xml'],
      ['worksheet', 'worksheets/sheet3.xml'],
      ['sharedStrings', 'sharedStrings.xml'],
    ),
    'xl/worksheets/sheet1.xml': sheet(
      `<cols>${columns}</cols><sheetData>${rows.map((cells, at) => row(cells, at + 1)).join('')}</sheetData>`,
      `<dataValidations count="1"><dataValidation type="whole" sqref="D2" showInputMessage="1" promptTitle="${wordFor('cell’s prompt')}" prompt="${wordFor('cell’s prompt')}"><formula1>1</formula1></dataValidation></dataValidations><headerFooter><oddHeader>&amp;C${wordFor('header of paper')}</oddHeader></headerFooter>`,
    ),
    'xl/worksheets/_rels/sheet1.xml.rels': relations(['comments', '../comments1.xml']),
    'xl/worksheets/sheet2.xml': aside('hidden sheet'),
    'xl/worksheets/sheet3.xml': aside('very hidden sheet'),
    'xl/comments1.xml': `<comments xmlns="${MAIN}"><authors><author>${wordFor('comment’s author')}</author></authors><commentList><comment ref="B2" authorId="0"><text><t>${wordFor('cell’s comment')}</t></text></comment></commentList></comments>`,
    'xl/sharedStrings.xml': `<sst xmlns="${MAIN}" count="1" uniqueCount="1"><si><t>${wordFor('text of a deleted cell')}</t></si></sst>`,
    'docProps/core.xml': `<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:creator>${wordFor('document’s author')}</dc:creator><cp:lastModifiedBy>${wordFor('who saved it last')}</cp:lastModifiedBy></cp:coreProperties>`,
    'docProps/app.xml': `<Properties xmlns="${OFFICE}/extended-properties"><Company>${wordFor('document’s company')}</Company></Properties>`,
    'docProps/custom.xml': `<Properties xmlns="${OFFICE}/custom-properties" xmlns:vt="${OFFICE}/docPropsVTypes"><property fmtid="{D5CDD505-2E9C-101B-9397-08002B2CF9AE}" pid="2" name="loan"><vt:lpwstr>${wordFor('document’s own property')}</vt:lpwstr></property></Properties>`,
  });
}
