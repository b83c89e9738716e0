/**
 * Listing fields under RESO Data Dictionary names, for the agent to copy.
 *
 * Only what the facts settle; what is not known is left out and never guessed. Field and lookup names follow
 * the RESO Data Dictionary 2.0, (c) RESO, used under the RESO End User License Agreement; this project is
 * neither certified nor endorsed by RESO.
 */
import type { HouseDate } from '../facts/date.js';
import { ACRE } from '../facts/floor-area.js';
import type { House } from '../facts/house.js';
import { asInert } from '../facts/inert-text.js';
import { isThere } from '../tally/still-there.js';
import type { Context } from './context.js';
import type { PacketExport } from './packet.js';
import { countRooms } from './sections/in-short.js';

type FieldValue = string | number | boolean | readonly string[];

const LEVELS: Record<string, string> = {
  one: 'One',
  'one-and-a-half': 'One and One Half',
  two: 'Two',
  three: 'Three Or More',
  'split-level': 'Multi/Split',
};

export function listingFields(context: Context): Readonly<Record<string, FieldValue>> {
  const { house, tally } = context;
  const fields: Record<string, FieldValue> = {};
  const put: Put = (name, value) => {
    if (value !== undefined) fields[name] = value;
  };
  put('YearBuilt', yearOf(house.house.built.value));
  // Two and a half storeys have no word there.
  const levels = house.house.storeys === undefined ? undefined : LEVELS[house.house.storeys];
  if (levels !== undefined) put('Levels', [levels]);
  putRooms(house, put);
  const source = areaSource(context);
  const area = (name: string, squareFeet: number): void => {
    if (squareFeet === 0) return;
    put(name, squareFeet);
    put(`${name}Units`, 'Square Feet');
    put(`${name}Source`, source);
  };
  area('AboveGradeFinishedArea', tally.areas.byClass['above-finished'].squareFeet);
  area('BelowGradeFinishedArea', tally.areas.byClass['below-finished'].squareFeet);
  if (tally.areas.toStandard && fields.AboveGradeFinishedArea !== undefined)
    put('GrossLivingAreaAnsi', fields.AboveGradeFinishedArea);
  const lot = house.house.lot?.value;
  if (lot !== undefined) {
    // Two decimals at most.
    put('LotSizeAcres', Number(((lot.area * 1000n) / ACRE + 5n) / 10n) / 100);
    put('LotSizeSource', lotSource(context));
  }
  // A house without a garage in its facts may have one that nobody described, so it is never said to have none.
  const garages = house.structures.filter((one) => one.is === 'garage');
  const within = house.rooms.some((room) => room.use === 'garage');
  if (within || garages.length > 0) {
    put('GarageYN', true);
    put('AttachedGarageYN', within || garages.some((one) => one.attached));
  }
  if (house.pool !== undefined) put('PoolPrivateYN', true);
  if (house.house.kind === 'detached') put('PropertySubType', 'Single Family Residence');
  const systems = house.systems.filter(isThere);
  const stays = [
    ...systems.filter((one) => one.conveys === 'yes').map((one) => one.name ?? one.is),
    ...house.conveys.filter((one) => one.stays === 'yes').map((one) => one.what),
  ];
  const goes = [
    ...systems.filter((one) => one.conveys === 'no').map((one) => one.name ?? one.is),
    ...house.conveys.filter((one) => one.stays === 'no').map((one) => one.what),
  ];
  if (stays.length > 0) put('Inclusions', stays.join('; '));
  if (goes.length > 0) put('Exclusions', goes.join('; '));
  return fields;
}

type Put = (name: string, value: FieldValue | undefined) => void;

/** The one year that a date is in; undefined where it may be another. */
function yearOf(date: HouseDate | undefined): number | undefined {
  if (date === undefined || date.about || date.uncertain) return undefined;
  const year = date.earliest?.slice(0, 4);
  return year !== undefined && year === date.latest?.slice(0, 4) ? Number(year) : undefined;
}

/** Rooms that were described. That none of a kind was says nothing, and a bath of no stated kind may be any. */
function putRooms(house: House, put: Put): void {
  const rooms = countRooms(house);
  const some = (count: number): number | undefined => (count > 0 ? count : undefined);
  put('BedroomsTotal', some(rooms.bedrooms));
  if (house.rooms.some((room) => room.use === 'bath' && room.bath === undefined)) return;
  put('BathroomsFull', some(rooms.fullBaths));
  put('BathroomsThreeQuarter', some(rooms.threeQuarterBaths));
  put('BathroomsHalf', some(rooms.halfBaths));
}

/** Who measured; undefined where nobody says so. */
function areaSource({ house, tally }: Context): string | undefined {
  if (tally.areas.estimate) return 'Estimated';
  if (house.measured === undefined) return undefined;
  if (house.measured.method === 'plans') return 'Plans';
  return house.measured.by === 'owner' ? 'Owner' : 'Other';
}

/** Words of a lot's origin, and of the kinds of papers behind it; a survey has no word of its own there. */
const LOT_SOURCES: readonly (readonly [RegExp, string])[] = [
  [/survey/i, 'Other'],
  [/assessor/i, 'Assessor'],
  [/record|county|\btax\b|\bdeed\b|\bplat\b/i, 'Public Records'],
  [/apprais/i, 'Appraiser'],
  [/builder/i, 'Builder'],
  [/\bplans?\b|drawing/i, 'Plans'],
  [/^(the )?owner$/i, 'Owner'],
];

/** Where the size of the lot is from; nothing said and no paper behind it makes it the owner's word. */
function lotSource({ house, whole }: Context): string | undefined {
  const { from, evidence } = house.house.lot ?? { from: undefined, evidence: [] };
  const kinds = evidence.map((id) => whole.documents.find((paper) => paper.id === id)?.kind ?? 'paper');
  const words = [...(from === undefined ? [] : [from]), ...kinds];
  if (words.length === 0) return 'Owner';
  return LOT_SOURCES.find(([pattern]) => words.some((word) => pattern.test(word)))?.[1];
}

export function listingExports(context: Context): PacketExport[] {
  const fields = listingFields(context);
  const rows = Object.entries(fields).map(([name, value]) => [
    name,
    Array.isArray(value) ? value.join(';') : String(value),
  ]);
  return [
    {
      file: 'listing-fields.json',
      title: 'Listing fields, RESO names (JSON)',
      mediaType: 'application/json',
      text: `${JSON.stringify(fields, null, 2)}\n`,
    },
    {
      file: 'listing-fields.csv',
      title: 'Listing fields, RESO names (CSV)',
      mediaType: 'text/csv',
      text: [['Field', 'Value'], ...rows]
        .map((row) => row.map(cell).join(','))
        .map((line) => `${line}\r\n`)
        .join(''),
    },
  ];
}

/** RFC 4180 quoting; a cell that a spreadsheet would take for a formula gets an apostrophe before it. */
function cell(text: string): string {
  const inert = /^-?\d+(\.\d+)?$/.test(text) ? text : asInert(text);
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
