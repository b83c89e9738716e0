import { type HouseDate, printDate } from '../../facts/date.js';
import type { Person } from '../../facts/house.js';
import { inTimeOrder } from '../../tally/photo-days.js';
import { columns } from '../columns.js';
import { type Context, photoAnchor, photoIn } from '../context.js';
import { holdsPrices } from '../edition-house.js';
import { markOf } from '../marks.js';
import type { Block, Run, Section } from '../packet.js';
import { photoCaption } from '../photo-words.js';
import { rich, say, upperFirst, verbatim } from '../rich.js';
import { permitState } from '../tell.js';
import { warrantyTable } from './warranties.js';

/** Permits, people hired, warranties, and the papers behind the statements. */
export function papers(context: Context): Section {
  return {
    id: 'papers',
    title: 'Papers',
    blocks: [
      ...permits(context),
      ...people(context),
      ...warrantyTable(context),
      ...documents(context),
      ...labels(context),
    ],
  };
}

const dateOr = (date: HouseDate | undefined, otherwise: string): string =>
  date === undefined ? otherwise : printDate(date);

function permits(context: Context): Block[] {
  const list = context.house.permits;
  if (list.length === 0)
    return [
      {
        kind: 'paragraph',
        id: 'permits-none',
        size: 'body',
        text: rich('No permit is recorded. Whether any was needed is for the local office to say.'),
      },
    ];
  return [
    {
      kind: 'table',
      id: 'permits',
      caption: 'Permits',
      columns: columns(['Number', 20], ['For', 34], ['Issued', 20], ['How it stands', 26]),
      rows: list.map((permit) => ({
        id: `paper-${permit.id}`,
        cells: [
          rich(permit.number === undefined ? 'no number' : verbatim(permit.number)),
          rich(
            upperFirst(permit.what ?? 'not said'),
            permit.office === undefined ? undefined : `, ${permit.office}`,
          ),
          rich(dateOr(permit.issued, 'date not known')),
          rich(permitState(permit)),
        ],
        mark: markOf(context, permit, permit.state !== 'not-known'),
      })),
    },
  ];
}

function licenceRun({ licence }: Person): Run {
  if (licence === undefined) return say('not stated');
  return licence.value === undefined ? say('not known') : verbatim(licence.value);
}

function people(context: Context): Block[] {
  const list = context.house.people;
  if (list.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'people',
      caption: 'People who were hired',
      columns: columns(['Name', 40], ['Trade', 25], ['Licence, as they stated it', 35]),
      rows: list.map((person) => ({
        id: `person-${person.id}`,
        cells: [rich(person.name), rich(person.trade ?? 'not said'), rich(licenceRun(person))],
        mark: markOf(
          context,
          { evidence: person.licence?.evidence ?? [], from: person.licence?.from },
          person.licence?.value !== undefined,
        ),
      })),
      note: rich(
        'Licences were not checked by this program. The state’s licence board can say whether one is in force.',
      ),
    },
  ];
}

function documents(context: Context): Block[] {
  const list = context.house.documents;
  const priced = context.whole.documents.filter((one) => holdsPrices(one)).length;
  const blocks: Block[] = [];
  if (list.length > 0) {
    blocks.push({
      kind: 'table',
      id: 'documents',
      caption: 'Other papers',
      columns: columns(['What', 55], ['Kind', 20], ['Date', 25]),
      rows: list.map((document) => ({
        id: `paper-${document.id}`,
        cells: [
          rich(upperFirst(document.what)),
          rich(document.kind),
          rich(dateOr(document.date, 'not dated')),
        ],
      })),
      note: rich('The owner keeps the papers; ask to see them.'),
    });
  }
  if (priced > 0 && !context.rules.everything) {
    blocks.push({
      kind: 'paragraph',
      id: 'documents-priced',
      size: 'small',
      text: rich(
        priced === 1
          ? 'One receipt or invoice is on file with the owner. It shows prices and is not part of this paper.'
          : `${priced} receipts and invoices are on file with the owner. They show prices and are not part of this paper.`,
      ),
    });
  }
  if (blocks.length === 0)
    blocks.push({
      kind: 'paragraph',
      id: 'documents-none',
      size: 'body',
      text: rich('No paper is on file.'),
    });
  return blocks;
}

/** Label photos: evidence in themselves. */
function labels(context: Context): Block[] {
  const photos = Object.entries(context.house.photos)
    .filter(([, photo]) => photo.when === 'label')
    .map(([id]) => photoIn(context, id))
    .filter((photo) => photo !== undefined);
  if (photos.length === 0) return [];
  return [
    { kind: 'heading', id: 'label-photos', level: 3, text: 'Labels' },
    {
      kind: 'photos',
      form: 'row',
      id: 'label-photo-list',
      photos: inTimeOrder(photos).map((photo) => ({
        id: photoAnchor(context, photo.id),
        photo: photo.id,
        caption: rich(photoCaption(photo, 'full')),
      })),
    },
  ];
}
