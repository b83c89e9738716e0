/** Listing fields under RESO names: only what the facts settle. */
import { describe, expect, it } from 'vitest';
import { composePacket } from '../../src/packet/compose.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

function exportsOf(spec: PartialSpec): { json: Record<string, unknown>; csv: string } {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, '2026-06-30');
  const packet = composePacket({ folder: 'test-house', house, tally, edition: 'agent', photos: new Map() });
  const texts = packet.exports.filter((one) => 'text' in one);
  const text = (file: string): string => texts.find((one) => one.file === file)?.text ?? '';
  const parsed = JSON.parse(text('listing-fields.json')) as Record<string, unknown>;
  const fields = (parsed.fields ?? parsed.value ?? parsed) as Record<string, unknown>;
  return { json: fields, csv: text('listing-fields.csv') };
}

const LEVEL = { id: 'main', name: 'Main level', grade: 'above', size: `40' x 26'`, ceiling: `8'` } as const;

describe('listing fields', () => {
  it('hold what the facts settle', () => {
    const { json } = exportsOf({
      house: { storeys: 'one', built: 1948, lot: '0.21 acre' },
      measured: { by: 'owner', method: 'ansi-z765-2021' },
      levels: [LEVEL],
      rooms: [
        { id: 'bed', level: 'main', use: 'bedroom', size: `10' x 12'` },
        { id: 'bath', level: 'main', use: 'bath', bath: 'full', size: `6' x 8'` },
      ],
    });
    expect(json).toMatchObject({
      YearBuilt: 1948,
      BedroomsTotal: 1,
      BathroomsFull: 1,
      AboveGradeFinishedArea: 1040,
      AboveGradeFinishedAreaUnits: 'Square Feet',
      LotSizeAcres: 0.21,
    });
  });

  it.each(['1948~', '1948?', '1946/1950', '../1950', '194X', '1948-24', 'not known'])(
    'leave out a year that is not one year: %s',
    (built) => {
      expect(exportsOf({ house: { built } }).json).not.toHaveProperty('YearBuilt');
    },
  );

  it('leave out rooms, size and lot that nobody described, and never say none or 0', () => {
    const { json } = exportsOf({});
    expect(Object.keys(json).filter((name) => /Bed|Bath|Area|Lot|Garage/u.test(name))).toEqual([]);
  });

  const HOME = { rooms: [{ id: 'kitchen', level: 'main', use: 'kitchen' as const }], levels: [LEVEL] };

  it('count the rooms that are described, and never 0', () => {
    expect(Object.keys(exportsOf(HOME).json).filter((name) => /Bed|Bath/u.test(name))).toEqual([]);
    const baths = (...kinds: ('full' | 'half' | undefined)[]) => {
      const rooms = kinds.map((bath, at) => ({
        id: `b${at}`,
        level: 'main',
        use: 'bath' as const,
        ...(bath && { bath }),
      }));
      const { json } = exportsOf({ levels: [LEVEL], rooms });
      return Object.entries(json).filter(([name]) => name.startsWith('Bath'));
    };
    expect(baths('full', 'half')).toEqual([
      ['BathroomsFull', 1],
      ['BathroomsHalf', 1],
    ]);
    // A bath of no stated kind may be of any.
    expect(baths('full', undefined)).toEqual([]);
  });

  it('never say that there is no garage', () => {
    const garage = (spec: PartialSpec) => {
      const { GarageYN, AttachedGarageYN } = exportsOf(spec).json;
      return [GarageYN, AttachedGarageYN];
    };
    expect(garage({ structures: [{ id: 'shed', is: 'shed' }] })).toEqual([undefined, undefined]);
    expect(garage({ structures: [{ id: 'g', is: 'garage', attached: false }] })).toEqual([true, false]);
    expect(garage({ levels: [LEVEL], rooms: [{ id: 'car', level: 'main', use: 'garage' }] })).toEqual([
      true,
      true,
    ]);
    expect(
      garage({
        levels: [LEVEL],
        rooms: [{ id: 'car', level: 'main', use: 'garage' }],
        structures: [{ id: 'deck', is: 'deck' }],
      }),
    ).toEqual([true, true]);
  });

  it('say who measured only where somebody did', () => {
    const source = (spec: PartialSpec) =>
      exportsOf({ levels: [LEVEL], ...spec }).json.AboveGradeFinishedAreaSource;
    expect(source({})).toBeUndefined();
    expect(source({ measured: { by: 'owner', method: 'other' } })).toBe('Owner');
    expect(source({ measured: { by: 'owner', method: 'plans' } })).toBe('Plans');
  });

  it('say where the size of the lot is from, in the words there are', () => {
    const source = (fact: object, spec: PartialSpec = {}) =>
      exportsOf({ ...spec, house: { lot: { is: '0.21 acre', ...fact } } }).json.LotSizeSource;
    expect(source({})).toBe('Owner');
    expect(source({ from: 'owner' })).toBe('Owner');
    expect(source({ from: 'county record' })).toBe('Public Records');
    expect(source({ from: 'survey of 1998' })).toBe('Other');
    expect(source({ from: 'seller' })).toBeUndefined();
    const documents = [{ id: 'plat', what: 'boundary survey', kind: 'survey' as const }];
    expect(source({ evidence: ['plat'] }, { documents })).toBe('Other');
  });

  it('leave out what was taken out of the house', () => {
    const systems = [
      { id: 'old', is: 'oven', did: 'removed' as const, conveys: 'yes' as const },
      { id: 'new', is: 'range', conveys: 'yes' as const },
    ];
    expect(exportsOf({ systems }).json.Inclusions).toBe('range');
  });

  it('have no word for two and a half storeys', () => {
    expect(exportsOf({ house: { storeys: 'two-and-a-half' } }).json).not.toHaveProperty('Levels');
    expect(exportsOf({ house: { storeys: 'two' } }).json.Levels).toEqual(['Two']);
  });

  it('stand in the CSV file as in the JSON file, quoted as RFC 4180 has it', () => {
    const { json, csv } = exportsOf({
      house: { built: 1948 },
      levels: [LEVEL],
      conveys: [{ what: 'bench, "the old one"', stays: 'yes' }],
    });
    expect(csv.endsWith('\r\n')).toBe(true);
    const lines = csv.split('\r\n').slice(0, -1);
    expect(lines[0]).toBe('Field,Value');
    expect(lines.slice(1).map((line) => line.split(',')[0])).toEqual(Object.keys(json));
  });
});
