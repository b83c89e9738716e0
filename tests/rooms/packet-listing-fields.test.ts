/** Listing fields under RESO names: only what the facts settle. */
import { describe, expect, it } from 'vitest';
import { composePacket } from '../../src/packet/compose.js';
import { valuesIn } from '../../src/packet/listing-words.js';
import { resoTable } from '../../src/tally/tables/reso.js';
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

  it('leave out a count with more digits than the standard has', () => {
    const beds = (count: number): unknown => {
      const rooms = Array.from({ length: count }, (_, n) => ({
        id: `bed-${n}`,
        level: 'main',
        use: 'bedroom' as const,
      }));
      return exportsOf({ levels: [LEVEL], rooms }).json.BedroomsTotal;
    };
    expect([beds(999), beds(1000)]).toEqual([999, undefined]);
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
      ['BathroomsTotalInteger', 2],
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
    expect(exportsOf({ systems }).json.Inclusions).toBe('Range');
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
    const rows = lines.slice(1).map((line) => line.split(','));
    const filled = rows.filter(([, ...value]) => value.join(',') !== '').map(([name]) => name);
    expect(filled).toEqual(Object.keys(json));
    // What is not known has its row, with nothing in it.
    expect(lines).toContain('Roof,');
    expect(rows.length).toBeGreaterThan(50);
  });

  it('turn a house’s own words into the standard’s, and leave out what no row settles', () => {
    const { json } = exportsOf({
      house: {
        storeys: 'two',
        construction: 'wood frame, brick veneer to the sills',
        exterior: {
          is: 'painted wood siding, aluminium trim at the gables',
          was: 'vinyl siding',
          corrected: '2026-01',
        },
        foundation: 'full cellar, concrete block',
        water: 'public',
        sewer: 'septic tank',
        parking: 'detached garage, two cars, and a gravel drive',
        lot: '8,712 sq ft',
      },
      levels: [LEVEL, { id: 'cellar', name: 'Cellar', grade: 'below', finish: 'unfinished' }],
      structures: [
        { id: 'garage', is: 'garage', attached: false },
        { id: 'porch', name: 'Front porch', is: 'porch' },
      ],
      rooms: [
        {
          id: 'living',
          level: 'main',
          use: 'living',
          finishes: [
            { on: 'floor', what: 'oak strip' },
            { on: 'fireplace', what: 'brick' },
          ],
        },
        {
          id: 'hall',
          level: 'main',
          use: 'hall',
          finishes: [{ on: 'floor', what: 'porcelain plank, wood look' }],
        },
        { id: 'den', level: 'main', use: 'office', finishes: [{ on: 'floor', what: 'rush matting' }] },
        { id: 'wash', name: 'Laundry', level: 'cellar', use: 'laundry' },
      ],
      systems: [
        { id: 'roof', is: 'roof, architectural shingle' },
        { id: 'roof-2', is: 'roof, metal', where: 'garage' },
        { id: 'furnace', is: 'furnace', fuel: 'gas' },
        { id: 'ac', is: 'air conditioner, central' },
        { id: 'wh', is: 'water heater, tank, electric', fuel: 'electric', conveys: true },
        { id: 'range', is: 'range', fuel: 'gas', conveys: true },
        { id: 'dryer', is: 'clothes dryer', fuel: 'electric', conveys: 'not known' },
        { id: 'panel', is: 'electrical panel', capacity: '150 A' },
      ],
      alarms: [{ is: 'both', where: 'hall' }],
    });
    expect(json).toMatchObject({
      Stories: 2,
      ConstructionMaterials: ['Frame', 'Brick Veneer', 'Wood Siding'],
      FoundationDetails: ['Block'],
      BasementYN: true,
      Basement: ['Full', 'Unfinished'],
      WaterSource: ['Public'],
      Sewer: ['Septic Tank'],
      GarageSpaces: 2,
      ParkingFeatures: ['Garage', 'Detached', 'Driveway', 'Gravel'],
      LotSizeSquareFeet: 8712,
      PatioAndPorchFeatures: ['Porch', 'Front Porch'],
      Flooring: ['Hardwood', 'Tile'],
      FireplaceYN: true,
      FireplaceFeatures: ['Living Room'],
      LaundryFeatures: ['Laundry Room', 'In Basement', 'Electric Dryer Hookup'],
      Roof: ['Shingle'],
      HeatingYN: true,
      Heating: ['Forced Air', 'Natural Gas'],
      Cooling: ['Central Air'],
      Appliances: ['Electric Water Heater', 'Gas Range'],
      Electric: ['150 Amp Service'],
      SecurityFeatures: ['Smoke Detector(s)', 'Carbon Monoxide Detector(s)'],
    });
    // A total that a partial description can't give, and the fee of an association that nobody named.
    for (const name of ['FireplacesTotal', 'RoomsTotal', 'BuildingAreaTotal', 'AssociationFee'])
      expect(json).not.toHaveProperty(name);
  });

  it('take nothing from words on parking that are of another garage than the one described', () => {
    const { json } = exportsOf({
      house: { parking: 'attached garage, two cars, and a gravel drive' },
      structures: [{ id: 'garage', is: 'garage', attached: false }],
    });
    expect(json).toMatchObject({
      GarageYN: true,
      AttachedGarageYN: false,
      ParkingFeatures: ['Garage', 'Detached'],
    });
    expect(json).not.toHaveProperty('GarageSpaces');
  });

  it('take no heat pump of a water heater or a dryer for air conditioning, and none that only heats', () => {
    const of = (is: string) => {
      const { CoolingYN, Cooling, HeatingYN } = exportsOf({
        systems: [{ id: 'it', is, conveys: 'yes' }],
      }).json;
      return [HeatingYN, CoolingYN, Cooling];
    };
    const none = [undefined, undefined, undefined];
    for (const is of [
      'water heater, heat pump',
      'heat pump water heater',
      'clothes dryer, heat pump',
      'heat pump dryer',
    ])
      expect(of(is), is).toEqual(none);
    expect(of('pool heater, heat pump')).toEqual(none);
    expect(of('heat pump, heating only')).toEqual([true, undefined, undefined]);
    expect(of('heat pump, air source')).toEqual([true, true, ['Heat Pump']]);
  });

  it('name no material that another one only looks like', () => {
    const floor = (what: string) =>
      exportsOf({
        levels: [LEVEL],
        rooms: [{ id: 'hall', level: 'main', use: 'hall', finishes: [{ on: 'floor', what }] }],
      }).json.Flooring;
    expect(floor('laminate, oak pattern')).toEqual(['Laminate']);
    expect(floor('vinyl plank, oak colour')).toEqual(['Vinyl']);
    expect(floor('luxury vinyl plank, slate pattern')).toEqual(['Luxury Vinyl']);
    expect(floor('porcelain tile, walnut strip pattern')).toEqual(['Tile']);
    expect(floor('carpet over concrete')).toEqual(['Carpet']);
    expect(floor('oak strip, maple border')).toEqual(['Hardwood']);
    expect(exportsOf({ house: { construction: 'steel frame' } }).json.ConstructionMaterials).toEqual([
      'Steel Frame',
    ]);
  });

  it.each(Object.keys(resoTable().words))('settle %s by each phrase of a row as the row says', (field) => {
    for (const { says, values } of resoTable().words[field] ?? [])
      for (const phrase of says)
        expect([phrase, ...valuesIn(field, [phrase]).sort()]).toEqual([phrase, ...[...values].sort()]);
  });

  it('take nothing that is set into a roof for its material', () => {
    const roof = (...kinds: string[]) =>
      exportsOf({ systems: kinds.map((is, at) => ({ id: `r${at}`, is })) }).json.Roof;
    expect(
      roof('roof vent, aluminum', 'roof window, wood', 'roof fan, copper', 'roof hatch, metal'),
    ).toBeUndefined();
    expect(roof('roof vent, aluminum', 'roof, slate')).toEqual(['Slate']);
  });

  it('let no word count that is denied, and no ceiling fan cool a house', () => {
    const { json } = exportsOf({
      house: { water: 'no public water', foundation: 'formerly stone' },
      levels: [LEVEL],
      rooms: [{ id: 'hall', level: 'main', use: 'hall' }],
      systems: [{ id: 'fan', is: 'ceiling fan', where: 'hall' }],
    });
    expect(json.WaterSource).toBeUndefined();
    expect(json.FoundationDetails).toBeUndefined();
    expect(json.Cooling).toEqual(['Ceiling Fan(s)']);
    expect(json.CoolingYN).toBeUndefined();
  });

  it('name a living area only where every rule would count the same', () => {
    const of = (finish: 'finished' | 'unfinished') =>
      exportsOf({ levels: [LEVEL, { ...LEVEL, id: 'low', name: 'Basement', grade: 'below', finish }] }).json;
    expect(of('unfinished')).toMatchObject({ LivingArea: 1040, BelowGradeUnfinishedArea: 1040 });
    expect(of('finished')).toMatchObject({ AboveGradeFinishedArea: 1040, BelowGradeFinishedArea: 1040 });
    expect(of('finished')).not.toHaveProperty('LivingArea');
  });

  it('keep to the standard’s length by whole things', () => {
    const conveys = Array.from({ length: 60 }, (_, at) => ({
      what: `shelf number ${at} of the long wall`,
      stays: 'yes' as const,
    }));
    const { Inclusions } = exportsOf({ conveys }).json;
    expect(String(Inclusions).length).toBeLessThanOrEqual(1024);
    expect(Inclusions).toMatch(/^Shelf number 0 of the long wall; .*wall; and more, see the packet$/);
  });

  it('reads two things of one text apart, and the fuel behind its thing', () => {
    expect(valuesIn('Appliances', ['gas cooktop, electric oven'])).toEqual(['Gas Cooktop', 'Electric Oven']);
    expect(valuesIn('Appliances', ['range, gas', 'water heater, tank, gas'])).toEqual([
      'Gas Water Heater',
      'Gas Range',
    ]);
  });

  it('offer nothing that is known not to work without a word, and write all things alike', () => {
    const { json } = exportsOf({
      systems: [
        { id: 'opener', is: 'garage door opener', conveys: true },
        { id: 'soft', is: 'water softener', name: 'Softener', conveys: true },
        { id: 'range', is: 'range', name: 'Range', conveys: true },
      ],
      conveys: [{ what: 'window shades', stays: 'yes' }],
      conditions: [
        { what: 'garage door opener does not run' },
        { what: 'water softener is bypassed and was not tried' },
        { what: 'range hood does not run' },
      ],
    });
    expect(json.Inclusions).toBe(
      'Garage door opener (does not run); Softener (bypassed and was not tried); Range; Window shades',
    );
  });

  it.each([
    ['month', 'Monthly'],
    ['quarter', 'Quarterly'],
    ['half-year', 'Semi-Annually'],
    ['year', 'Annually'],
  ] as const)('tell the dues of an association by the %s', (per, frequency) => {
    const to = 'Owners’ Association';
    expect(exportsOf({ dues: [{ to, amount: '64.50', per }] }).json).toMatchObject({
      AssociationYN: true,
      AssociationFee: 64.5,
      AssociationFeeFrequency: frequency,
    });
  });

  it('tell no sum of dues where two are asked, or only once, and nothing of a district', () => {
    const once = { to: 'Owners’ Association', amount: '150.00', per: 'once' } as const;
    const month = { ...once, per: 'month' } as const;
    const two = exportsOf({ dues: [month, { ...month, to: 'Lane Association' }] }).json;
    expect([two.AssociationYN, two.AssociationFee]).toEqual([true, undefined]);
    expect(exportsOf({ dues: [once] }).json.AssociationFee).toBeUndefined();
    const district = exportsOf({ dues: [{ ...month, to: 'Library district' }] }).json;
    expect(district.AssociationYN).toBeUndefined();
  });

  it('take a stoop for no patio', () => {
    const patio = { id: 'stoop', is: 'patio', attached: true } as const;
    expect(
      exportsOf({ structures: [{ ...patio, name: 'Back stoop' }] }).json.PatioAndPorchFeatures,
    ).toBeUndefined();
    expect(exportsOf({ structures: [patio] }).json.PatioAndPorchFeatures).toBeUndefined();
    expect(exportsOf({ structures: [{ ...patio, id: 'court' }] }).json.PatioAndPorchFeatures).toEqual([
      'Patio',
    ]);
  });
});
