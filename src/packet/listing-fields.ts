/**
 * Listing fields under RESO Data Dictionary names, for the agent to copy.
 *
 * Only what the facts settle; what is not known is left empty and never guessed. Field and lookup names follow the
 * RESO Data Dictionary 2.0, (c) RESO, used under the RESO End User License Agreement; this project is neither
 * certified nor endorsed by RESO. Names, types and values stand in `src/tally/tables/reso.yaml`.
 */
import type { HouseDate } from '../facts/date.js';
import type { Fact } from '../facts/fact.js';
import { ACRE, SQUARE_FOOT, wholeSquareFeet } from '../facts/floor-area.js';
import type { House, System } from '../facts/house.js';
import { asInert } from '../facts/inert-text.js';
import type { AreaClass } from '../tally/area.js';
import { isThere } from '../tally/still-there.js';
import { resoTable } from '../tally/tables/reso.js';
import type { Context } from './context.js';
import { buildingFields } from './listing-building.js';
import { type FieldValue, type ListingFields, type SomeFields, strayFields } from './listing-check.js';
import { systemFields } from './listing-systems.js';
import { valuesIn } from './listing-words.js';
import type { PacketExport } from './packet.js';
import { upperFirst } from './rich.js';
import { countRooms } from './sections/in-short.js';

const LEVELS: Record<string, string> = {
  one: 'One',
  'one-and-a-half': 'One and One Half',
  two: 'Two',
  three: 'Three Or More',
  'split-level': 'Multi/Split',
};

/** The standard counts whole storeys. */
const STORIES: Record<string, number> = { one: 1, two: 2, three: 3 };

const SUB_TYPES: Partial<Record<House['house']['kind'], string>> = {
  detached: 'Single Family Residence',
  manufactured: 'Manufactured Home',
};

/**
 * In the order of the standard's table.
 *
 * @throws Error if a field or value lies outside the standard: our own mistake.
 */
function listingFields(context: Context): ListingFields {
  const { house } = context;
  const { kind, storeys, built } = house.house;
  const year = yearOf(built.value);
  const found: SomeFields = {
    PropertySubType: SUB_TYPES[kind],
    ...roomFields(house),
    // Two and a half storeys have no word there.
    Levels: storeys === undefined || LEVELS[storeys] === undefined ? undefined : [LEVELS[storeys]],
    Stories: storeys === undefined ? undefined : STORIES[storeys],
    YearBuilt: year,
    YearBuiltSource: year === undefined ? undefined : sourceOf(context, built, 'YearBuiltSource'),
    ...areaFields(context),
    ...lotFields(context),
    ...buildingFields(house),
    ...systemFields(house),
    ...associationFields(house),
    ...conveyed(house),
  };
  const order = fieldNames();
  const known = Object.entries(found)
    .filter((entry): entry is [string, FieldValue] => entry[1] !== undefined)
    .sort(([a], [b]) => order.indexOf(a) - order.indexOf(b));
  const fields = Object.fromEntries(known);
  const stray = strayFields(fields);
  if (stray.length > 0) throw new Error(`listing fields outside the standard: ${stray.join('; ')}`);
  return fields;
}

/** Every field that the program knows how to fill. */
const fieldNames = (): string[] => Object.keys(resoTable().fields);

/** The one year that a date is in; undefined where it may be another. */
function yearOf(date: HouseDate | undefined): number | undefined {
  if (date === undefined || date.about || date.uncertain) return undefined;
  const year = date.earliest?.slice(0, 4);
  return year !== undefined && year === date.latest?.slice(0, 4) ? Number(year) : undefined;
}

/** Rooms that were described. That none of a kind was says nothing, and a bath of no stated kind may be any. */
function roomFields(house: House): SomeFields {
  const rooms = countRooms(house);
  // The standard’s counts of rooms have three digits.
  const some = (count: number): number | undefined => (count > 0 && count < 1000 ? count : undefined);
  const beds = { BedroomsTotal: some(rooms.bedrooms) };
  const baths = house.rooms.filter((room) => room.use === 'bath');
  if (baths.some((room) => room.bath === undefined)) return beds;
  return {
    ...beds,
    BathroomsTotalInteger: some(baths.length),
    BathroomsFull: some(rooms.fullBaths),
    BathroomsThreeQuarter: some(rooms.threeQuarterBaths),
    BathroomsHalf: some(rooms.halfBaths),
  };
}

function areaFields(context: Context): SomeFields {
  const { areas } = context.tally;
  const source = areaSource(context);
  const area = (name: string, squareFeet: number): SomeFields =>
    squareFeet === 0
      ? {}
      : { [name]: squareFeet, [`${name}Units`]: 'Square Feet', [`${name}Source`]: source };
  const feet = (name: AreaClass): number => areas.byClass[name].squareFeet;
  const unfinished = (grade: 'above' | 'below'): number =>
    wholeSquareFeet(
      areas.levels
        .filter((level) => level.grade === grade)
        .reduce((sum, level) => sum + level.byClass.unfinished, 0n),
    );
  const above = feet('above-finished');
  // What else counts as living area is for the listing service’s own rule to say; where there is nothing else, none is needed.
  const plain = (['below-finished', 'non-standard', 'disconnected'] as const).every(
    (name) => feet(name) === 0,
  );
  return {
    ...(plain ? area('LivingArea', above) : {}),
    GrossLivingAreaAnsi: areas.toStandard && above > 0 ? above : undefined,
    ...area('AboveGradeFinishedArea', above),
    ...area('AboveGradeUnfinishedArea', unfinished('above')),
    ...area('BelowGradeFinishedArea', feet('below-finished')),
    ...area('BelowGradeUnfinishedArea', unfinished('below')),
  };
}

/** Who measured; undefined where nobody says so. */
function areaSource({ house, tally }: Context): string | undefined {
  if (tally.areas.estimate) return 'Estimated';
  if (house.measured === undefined) return undefined;
  if (house.measured.method === 'plans') return 'Plans';
  return house.measured.by === 'owner' ? 'Owner' : 'Other';
}

function lotFields(context: Context): SomeFields {
  const { lot } = context.house.house;
  if (lot?.value === undefined) return {};
  const { area, written } = lot.value;
  return {
    // Two decimals at most.
    LotSizeAcres: Number(((area * 1000n) / ACRE + 5n) / 10n) / 100,
    // Acres are written too coarsely to be told in feet.
    LotSizeSquareFeet:
      /\b(ft|feet|foot|sf)\b|ft²/i.test(written) && area % SQUARE_FOOT === 0n
        ? Number(area / SQUARE_FOOT)
        : undefined,
    LotSizeSource: sourceOf(context, lot, 'LotSizeSource'),
  };
}

/** Where a figure is from; nothing said and no paper behind it makes it the owner's word. */
function sourceOf({ whole }: Context, { from, evidence }: Fact<unknown>, lookup: string): string | undefined {
  const kinds = evidence.map((id) => whole.documents.find((paper) => paper.id === id)?.kind ?? 'paper');
  const words = [...(from === undefined ? [] : [from]), ...kinds];
  const isOwners = words.length === 0 || words.some((word) => /^(the )?owner$/i.test(word));
  const [first = isOwners ? 'Owner' : undefined] = valuesIn('Source', words);
  return first !== undefined && resoTable().lookups[lookup]?.includes(first) ? first : undefined;
}

function conveyed(house: House): SomeFields {
  const systems = house.systems.filter(isThere);
  const those = (stays: 'yes' | 'no'): string[] =>
    [
      ...systems
        .filter((one) => one.conveys === stays)
        .map((one) => `${one.name ?? one.is}${stays === 'yes' ? faultOf(house, one) : ''}`),
      ...house.conveys.filter((one) => one.stays === stays).map((one) => one.what),
    ].map(upperFirst);
  return {
    Inclusions: wholeThings('Inclusions', those('yes')),
    Exclusions: wholeThings('Exclusions', those('no')),
  };
}

/** " (does not run)": what stays and is known not to work is never offered without a word. */
function faultOf(house: House, system: System): string {
  const names = [system.name, system.is, system.is.split(',')[0]].map((name) => (name ?? '').toLowerCase());
  for (const { what } of house.conditions) {
    const name = names.find((one) => one !== '' && what.toLowerCase().startsWith(`${one} `));
    const rest = name === undefined ? '' : what.slice(name.length).trim();
    // A range hood is no range: behind the name stands what it does.
    if (SAYS_OF_IT.test(rest) && FAULT.test(rest)) return ` (${rest.replace(/^is\b\s*/i, '')})`;
  }
  return '';
}

const SAYS_OF_IT = /^(is|was|has|does|did|will|can|cannot|doesn.t|won.t|no longer|leaks?)\b/i;

const FAULT =
  /\b((does|do|did|will) not|doesn.t|won.t|can ?not|no longer|not (work|run|tried|tested)\w*|broken|dead|bypassed|disconnected|leaks?|inoperable|out of order|stuck)\b/i;

/** Dues of an association in the one amount and rhythm that the standard has room for; where several are asked, none. */
function associationFields(house: House): SomeFields {
  const all = house.dues.filter(({ to }) => /\b(association|hoa|condo\w*|owners)\b/i.test(to));
  const [due, second] = all.filter(({ per }) => per !== 'once');
  if (all.length === 0) return {};
  const known = due !== undefined && second === undefined ? due : undefined;
  return {
    AssociationYN: true,
    AssociationFee: known === undefined ? undefined : Number(known.amount) / 100,
    AssociationFeeFrequency: known === undefined ? undefined : FREQUENCIES[known.per],
  };
}

const FREQUENCIES: Partial<Record<House['dues'][number]['per'], string>> = {
  month: 'Monthly',
  quarter: 'Quarterly',
  'half-year': 'Semi-Annually',
  year: 'Annually',
};

const AND_MORE = '; and more, see the packet';

/** As many whole things as the standard's length takes. */
function wholeThings(field: string, things: readonly string[]): string | undefined {
  const known = resoTable().fields[field];
  const most = known !== undefined && 'length' in known ? known.length : 0;
  const fits = (text: string): boolean => [...text].length <= most;
  const all = things.join('; ');
  if (things.length === 0 || fits(all)) return things.length === 0 ? undefined : all;
  let count = 0;
  while (count < things.length && fits(`${things.slice(0, count + 1).join('; ')}${AND_MORE}`)) count += 1;
  return count === 0 ? undefined : `${things.slice(0, count).join('; ')}${AND_MORE}`;
}

/** Both files. In JSON what is not known is left out; in CSV its row is there, with nothing in it. */
export function listingExports(context: Context): PacketExport[] {
  const fields = listingFields(context);
  const rows = fieldNames().map((name) => {
    const value = fields[name] ?? '';
    return [name, Array.isArray(value) ? value.join(';') : String(value)];
  });
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
