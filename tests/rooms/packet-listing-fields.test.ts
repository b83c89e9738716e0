/** Listing fields under RESO names: only what the facts settle. */
import { describe, expect, it } from 'vitest';
import { composePacket } from '../../src/packet/compose.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

function exportsOf(spec: PartialSpec): { json: Record<string, unknown>; csv: string } {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, '2026-06-30');
  const packet = composePacket({ folder: 'test-house', house, tally, edition: 'agent', photos: new Map() });
  const text = (file: string): string => packet.exports.find((one) => one.file === file)?.text ?? '';
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

  it.each(['1948~', '1946/1950', '../1950', 'not known'])(
    'leave out a year that is not one year: %s',
    (built) => {
      expect(exportsOf({ house: { built } }).json).not.toHaveProperty('YearBuilt');
    },
  );

  it('leave out rooms, size and lot that nobody described, and never say none or 0', () => {
    const { json } = exportsOf({});
    expect(Object.keys(json).filter((name) => /Bed|Bath|Area|Lot|Garage/u.test(name))).toEqual([]);
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
