import type { SystemAge } from '../../tally/ages.js';
import { type LifeSource, printLife } from '../../tally/published-lives.js';
import { ageWords, datesWords, whenWords } from '../age-words.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { placeName } from '../context.js';
import { type AgeRow, drawAges, lastYearOf } from '../draw-ages.js';
import { markOf, markOfFact } from '../marks.js';
import type { Block, EvidenceMark, Section, TableRow } from '../packet.js';
import { rich, soft, strong, upperFirst } from '../rich.js';

/** Points: two such drawings fit one page of paper. */
const TALLEST_DRAWING = 270;

/** Every system and appliance with its age beside published lives, drawn and in a table. */
export function howOld(context: Context): Section {
  const { ages } = context.tally;
  if (ages.length === 0) {
    return {
      id: 'how-old',
      title: 'How old things are',
      blocks: [
        {
          kind: 'paragraph',
          id: 'ages-none',
          size: 'body',
          text: rich('No system or appliance is described.'),
        },
      ],
    };
  }
  const letters = lettersFor(ages);
  const drawn = ages
    .filter((age) => age.age !== undefined || (age.lives?.rows.length ?? 0) > 0)
    .map((age) => ageRow(age, letters));
  const last = lastYearOf(drawn);
  const pieces = piecesThatFit(drawn, last);
  const blocks: Block[] = pieces.map((rows, index) => ({
    kind: 'drawing',
    id: `ages-drawing-${index + 1}`,
    drawing: drawAges(rows, 'wide', last),
    narrow: drawAges(rows, 'narrow', last),
    alt: `Ages of ${rows.map((row) => row.name.toLowerCase()).join(', ')} on one axis beside published lives. The table below says the same.`,
    caption: rich(
      'Years before the as-of date. The bar is the age; its dark end is the span that the dates leave open.',
      index === pieces.length - 1
        ? ' A bracket or cross is a published life, by the letter of its source.'
        : undefined,
    ),
  }));
  blocks.push(agesTable(context, letters), sourcesTable(letters), warning());
  return { id: 'how-old', title: 'How old things are', blocks };
}

/** As few drawings as keep below the tallest, and of about one height. */
function piecesThatFit(rows: readonly AgeRow[], last: number): AgeRow[][] {
  const height = (piece: readonly AgeRow[]): number => drawAges(piece, 'wide', last).height;
  const most = height(rows) / Math.ceil(height(rows) / TALLEST_DRAWING);
  const pieces: AgeRow[][] = [];
  for (const row of rows) {
    const piece = pieces.at(-1);
    if (piece === undefined || height(piece) >= most || height([...piece, row]) > TALLEST_DRAWING)
      pieces.push([row]);
    else piece.push(row);
  }
  return pieces;
}

type Letters = ReadonlyMap<string, { readonly letter: string; readonly source: LifeSource }>;

function lettersFor(ages: readonly SystemAge[]): Letters {
  const letters = new Map<string, { letter: string; source: LifeSource }>();
  for (const age of ages) {
    for (const { source } of age.lives?.rows ?? []) {
      if (!letters.has(source.id))
        letters.set(source.id, { letter: String.fromCharCode(97 + letters.size), source });
    }
  }
  return letters;
}

function ageRow(age: SystemAge, letters: Letters): AgeRow {
  const years = (end: { years: number; months: number } | undefined): number | undefined =>
    end === undefined ? undefined : end.years + end.months / 12;
  return {
    name: upperFirst(age.system.name ?? age.system.is),
    when: whenWords(age) ?? 'date not known',
    youngest: years(age.age?.youngest),
    oldest: years(age.age?.oldest),
    lives: (age.lives?.rows ?? []).map((row) => ({
      letter: letters.get(row.source.id)?.letter ?? '',
      low: row.low,
      high: row.high,
      open: row.open,
    })),
  };
}

function agesTable(context: Context, letters: Letters): Block {
  return {
    kind: 'table',
    id: 'ages',
    caption: 'Ages and published lives',
    columns: columns(['What', 32], ['Date and age', 30], ['Published lives, in years', 38]),
    rows: context.tally.ages.map((age) => agesRow(context, age, letters)),
    note: rich(
      'Behind the published lives stands how the age compares with them. Where the dates of making and of installing are both known, the age counts from making.',
    ),
  };
}

function agesRow(context: Context, age: SystemAge, letters: Letters): TableRow {
  const { system, lives } = age;
  const place = system.where === undefined ? undefined : placeName(context, system.where).toLowerCase();
  const where = place !== undefined && (system.name ?? '').toLowerCase().includes(place) ? undefined : place;
  const published = (lives?.rows ?? [])
    .map((row) => `${letters.get(row.source.id)?.letter ?? ''} ${printLife(row).replace(/ years/, '')}`)
    .join(' · ');
  return {
    id: `system-${system.id}`,
    cells: [
      rich(
        upperFirst(system.name ?? system.is),
        where === undefined ? undefined : soft(`, ${where}`),
        system.kept ? soft(', as found') : undefined,
      ),
      rich(
        upperFirst(datesWords(age)),
        age.age === undefined ? undefined : ': ',
        age.age === undefined ? undefined : strong(ageWords(age)),
      ),
      published === '' ? rich(soft('No published life was found')) : rich(`${published}. `, standsWords(age)),
    ],
    mark: markOfAge(context, age),
  };
}

/** The four words of comparison; where the dates leave two of them open, both. */
function standsWords({ age, comparison }: SystemAge): string {
  if (age === undefined) return 'Its age is not known.';
  const { words, straddles, ifYoungest, ifOldest } = comparison;
  if (!straddles) return words === 'not known' ? 'No comparison is possible.' : `${upperFirst(words)}.`;
  const ends = [ifYoungest, ifOldest].filter((end) => end !== 'not known');
  if (ends.length === 2 && ifYoungest.startsWith('younger') && ifOldest.startsWith('older'))
    return 'Its dates leave open whether it is younger or older than the published lives.';
  return `${upperFirst(ends.join(' or '))}; its dates leave that open.`;
}

export function markOfAge(context: Context, age: SystemAge): EvidenceMark {
  if (age.date === undefined)
    return markOf(context, { evidence: [], from: age.fact?.from ?? age.system.from }, false);
  if (age.fact !== undefined && age.fact.evidence.length > 0) return markOfFact(context, age.fact);
  return markOf(context, { from: age.fact?.from ?? age.system.from, evidence: age.system.evidence });
}

function sourcesTable(letters: Letters): Block {
  return {
    kind: 'table',
    id: 'life-sources',
    caption: 'Where the published lives are from',
    columns: columns(['Letter', 8], ['Source', 45], ['What its years mean', 25], ['How it was read', 25]),
    rows: [...letters.values()].map(({ letter, source }) => ({
      id: `source-${source.id}`,
      cells: [
        rich(letter),
        rich(`${source.publisher}: ${source.title}, ${source.date}`),
        rich(source.basis),
        rich(source.read),
      ],
    })),
  };
}

const warning = (): Block => ({
  kind: 'paragraph',
  id: 'ages-warning',
  size: 'small',
  text: rich(
    'A published life is an average or an opinion about many houses. It is no promise, no warranty and no forecast for this one.',
  ),
});
