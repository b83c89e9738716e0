/**
 * Listing fields under RESO Data Dictionary names, for the agent to copy.
 *
 * Only what the facts settle; what is not known is left out and never guessed. Field and lookup names follow
 * the RESO Data Dictionary 2.0, (c) RESO, used under the RESO End User License Agreement; this project is
 * neither certified nor endorsed by RESO.
 */
import type { Context } from './context.js';
import type { PacketExport } from './packet.js';
import { countRooms } from './sections/in-short.js';

type FieldValue = string | number | boolean | readonly string[];

const LEVELS: Record<string, string> = {
  one: 'One',
  'one-and-a-half': 'One and One Half',
  two: 'Two',
  'two-and-a-half': 'Two',
  three: 'Three Or More',
  'split-level': 'Multi/Split',
};

export function listingFields(context: Context): Readonly<Record<string, FieldValue>> {
  const { house, tally } = context;
  const fields: Record<string, FieldValue> = {};
  const put = (name: string, value: FieldValue | undefined): void => {
    if (value !== undefined) fields[name] = value;
  };
  const built = house.house.built.value;
  if (built !== undefined && built.precision !== 'span' && built.precision !== 'decade' && !built.about)
    put('YearBuilt', Number(built.latest?.slice(0, 4)));
  put(
    'Levels',
    house.house.storeys === undefined || house.house.storeys === 'two-and-a-half'
      ? undefined
      : [LEVELS[house.house.storeys] ?? ''],
  );
  if (house.rooms.length > 0) {
    const rooms = countRooms(house);
    put('BedroomsTotal', rooms.bedrooms);
    put('BathroomsFull', rooms.fullBaths);
    put('BathroomsThreeQuarter', rooms.threeQuarterBaths);
    put('BathroomsHalf', rooms.halfBaths);
  }
  const area = (name: string, squareFeet: number): void => {
    if (squareFeet === 0) return;
    put(name, squareFeet);
    put(`${name}Units`, 'Square Feet');
    put(
      `${name}Source`,
      tally.areas.estimate
        ? 'Estimated'
        : house.measured?.method === 'plans'
          ? 'Plans'
          : house.measured?.by === 'owner'
            ? 'Owner'
            : 'Other',
    );
  };
  area('AboveGradeFinishedArea', tally.areas.byClass['above-finished'].squareFeet);
  area('BelowGradeFinishedArea', tally.areas.byClass['below-finished'].squareFeet);
  if (tally.areas.toStandard && fields.AboveGradeFinishedArea !== undefined)
    put('GrossLivingAreaAnsi', fields.AboveGradeFinishedArea);
  const lot = house.house.lot?.value;
  if (lot !== undefined) {
    // Two decimals at most; an acre is 43,560 square feet.
    put('LotSizeAcres', Number(((lot.area * 1000n) / (43_560n * 3_048_000n ** 2n) + 5n) / 10n) / 100);
    put('LotSizeSource', 'Owner');
  }
  const garages = house.structures.filter((one) => one.is === 'garage');
  put('GarageYN', house.structures.length > 0 ? garages.length > 0 : undefined);
  if (garages.length > 0)
    put(
      'AttachedGarageYN',
      garages.some((one) => one.attached),
    );
  if (house.pool !== undefined) put('PoolPrivateYN', true);
  if (house.house.kind === 'detached') put('PropertySubType', 'Single Family Residence');
  const stays = [
    ...house.systems.filter((one) => one.conveys === 'yes').map((one) => one.name ?? one.is),
    ...house.conveys.filter((one) => one.stays === 'yes').map((one) => one.what),
  ];
  const goes = [
    ...house.systems.filter((one) => one.conveys === 'no').map((one) => one.name ?? one.is),
    ...house.conveys.filter((one) => one.stays === 'no').map((one) => one.what),
  ];
  if (stays.length > 0) put('Inclusions', stays.join('; '));
  if (goes.length > 0) put('Exclusions', goes.join('; '));
  return fields;
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
  const inert = /^[=+\-@\t\r]/.test(text) && !/^-?\d+(\.\d+)?$/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
