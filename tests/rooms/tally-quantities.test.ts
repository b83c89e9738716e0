import { describe, expect, test } from 'vitest';
import { SQUARE_FOOT } from '../../src/facts/floor-area.js';
import { FOOT } from '../../src/facts/length.js';
import { deriveQuantities, type RoomMeasures } from '../../src/tally/finish-quantities.js';
import { listImprovements } from '../../src/tally/improvements.js';
import { houseFrom, type PartialSpec } from './house-from.js';

type RoomSpec = NonNullable<PartialSpec['rooms']>[number];
type FinishSpec = NonNullable<RoomSpec['finishes']>[number];

const sqFt = (whole: number): bigint => BigInt(whole) * SQUARE_FOOT;
/** A room of 12 by 10 ft, 8 ft high. */
const MEASURED: RoomMeasures = {
  roomFloors: new Map([['den', sqFt(120)]]),
  roomWalls: new Map([['den', { perimeter: 44 * FOOT, height: 8 * FOOT }]]),
};

function quantities(finishes: FinishSpec[], measures = MEASURED, room: Partial<RoomSpec> = {}) {
  const house = houseFrom({
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [{ id: 'den', level: 'main', use: 'living', finishes, ...room }],
  });
  return deriveQuantities(house, measures);
}
const one = (...args: Parameters<typeof quantities>) => {
  const [first] = quantities(...args);
  if (first === undefined) throw new Error('no quantity');
  return first;
};
const finish = (on: FinishSpec['on'], what: string, extra: Partial<FinishSpec> = {}): FinishSpec => ({
  on,
  what,
  ...extra,
});

describe('which finishes have a quantity', () => {
  test('floors, walls, ceilings and what has a stated area, by the ids of the improvements', () => {
    const finishes = [
      finish('floor', 'vinyl plank', { done: '2026-04' }),
      finish('faucet', 'chrome', { done: '2026-04' }),
      finish('backsplash', 'tile', { done: '2026-04', area: '30 sq ft' }),
      finish('ceiling', 'paint', { done: '2026-04' }),
      finish('floor', 'carpet', { did: 'removed' }),
    ];
    const house = houseFrom({
      levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
      rooms: [{ id: 'den', level: 'main', use: 'living', finishes }],
      structures: [{ id: 'deck', is: 'deck', finishes: [finish('floor', 'paint', { area: '200 sq ft' })] }],
    });
    const found = deriveQuantities(house, MEASURED);
    expect(found.map((each) => each.id)).toEqual([
      'finish-den-0',
      'finish-den-2',
      'finish-den-3',
      'finish-deck-0',
    ]);
    expect(found.at(-1)?.path).toEqual(['structures', 0, 'finishes', 0]);
    const { done, kept } = listImprovements(house);
    const ids = [...done, ...kept].map((each) => each.id);
    for (const each of found) expect(ids).toContain(each.id);
  });

  test('each is counted by what it is', () => {
    const kinds: [FinishSpec, string][] = [
      [finish('floor', 'vinyl plank'), 'flooring'],
      [finish('floor', 'oak'), 'flooring'],
      [finish('floor', 'sheet vinyl'), 'other'],
      [finish('floor', 'carpet'), 'other'],
      [finish('floor', 'carpet tile'), 'tile'],
      [finish('floor', 'porcelain tile'), 'tile'],
      [finish('floor', 'painted concrete'), 'paint'],
      [finish('floor', 'concrete'), 'other'],
      [finish('walls', 'paint'), 'paint'],
      [finish('walls', 'limewash', { coats: 2 }), 'paint'],
      [finish('walls', 'paintable wallpaper'), 'other'],
      [finish('walls', 'cedar boards', { box: '20 sq ft' }), 'flooring'],
    ];
    for (const [spec, kind] of kinds) expect(one([spec]).kind, spec.what).toBe(kind);
  });
});

describe('the area of a finish', () => {
  test('stated goes before measured', () => {
    expect(one([finish('floor', 'oak', { area: '38 sq ft' })])).toMatchObject({
      area: sqFt(38),
      basis: 'stated',
      how: 'Area as stated: 38 sq ft.',
    });
    expect(one([finish('floor', 'oak')])).toMatchObject({ area: sqFt(120), basis: 'floor of the room' });
    expect(one([finish('ceiling', 'paint')]).area).toBe(sqFt(120));
  });

  test('walls: doors nobody counted take nothing off, and that is said', () => {
    const walls = (room: Partial<RoomSpec>) => one([finish('walls', 'paint')], MEASURED, room);
    expect(walls({}).area).toBe(sqFt(352));
    expect(walls({}).how).toBe(
      'Perimeter times height, nothing taken off; doors weren’t counted and no window is recorded.',
    );
    expect(walls({ doors: 0 }).how).toBe('Perimeter times height, nothing taken off; no window is recorded.');
    expect(walls({ doors: 2, windows: [{}, {}] }).area).toBe(sqFt(352 - 40 - 30));
    expect(walls({ doors: 2, windows: [{}, {}] }).how).toBe(
      'Perimeter times height, less 20 sq ft a door (2) and 15 sq ft a window (2) as is usual without measures.',
    );
  });

  test('is not known, with the reason, where a measure lacks', () => {
    const none: RoomMeasures = { roomFloors: new Map(), roomWalls: new Map() };
    const unknown = { area: undefined, basis: 'not known', paint: undefined, flooring: undefined, rule: '' };
    expect(one([finish('floor', 'oak')], none)).toMatchObject(unknown);
    expect(one([finish('walls', 'paint')], none).how).toMatch(/size of the room/);
    const low = { ...MEASURED, roomWalls: new Map([['den', { perimeter: 44 * FOOT, height: undefined }]]) };
    expect(one([finish('walls', 'paint')], low)).toMatchObject(unknown);
    expect(one([finish('walls', 'paint')], low).how).toMatch(/height/);
    expect(one([finish('walls', 'paint')], MEASURED, { doors: 18 })).toMatchObject(unknown);
    const sloped = { ceiling: { highest: "8'", pitch: '12 in 12' } };
    expect(one([finish('ceiling', 'paint')], MEASURED, sloped)).toMatchObject(unknown);
    expect(one([finish('floor', 'oak')], MEASURED, sloped).area).toBe(sqFt(120));
  });

  test('two finishes of one surface are said to overlap', () => {
    const [paint, tile] = quantities([
      finish('walls', 'paint'),
      finish('walls', 'tile', { area: '40 sq ft' }),
    ]);
    expect(paint?.how).toMatch(/Other finishes of the same walls are in it/);
    expect(tile?.how).not.toMatch(/Other finishes/);
  });
});

describe('the convention used', () => {
  const percent = (what: string, pattern?: FinishSpec['pattern']) => {
    const { flooring, rule } = one([finish('floor', what, pattern === undefined ? {} : { pattern })]);
    return [flooring?.wastePercent, /from memory/.test(rule), /higher is used/.test(rule)];
  };

  // Trade practice. From memory: all of tile, and the patterns of flooring; 10 % was read on a dealer’s page.
  test.each([
    ['vinyl plank', undefined, 10, false, false],
    ['vinyl plank', 'straight', 7, true, true],
    ['vinyl plank', 'diagonal', 15, true, false],
    ['vinyl plank', 'herringbone', 25, true, true],
    ['vinyl plank', 'pattern', 25, true, true],
    ['tile', undefined, 10, true, false],
    ['tile', 'straight', 10, true, false],
    ['tile', 'diagonal', 15, true, false],
    ['tile', 'pattern', 20, true, true],
    ['tile', 'herringbone', 20, true, true],
  ] as const)('%s, %s: %i %%', (what, pattern, figure, memory, higher) => {
    expect(percent(what, pattern)).toEqual([figure, memory, higher]);
  });

  test('each sentence names its status', () => {
    expect(one([finish('floor', 'oak')]).rule).toMatch(/^Trade practice, not a standard: 10 % more/);
    expect(one([finish('floor', 'oak', { waste: 12 })]).rule).toBe(
      'Waste of 12 % as stated; boxes are rounded up.',
    );
    expect(one([finish('walls', 'paint', { coverage: 400, coats: 2 })]).rule).toBe(
      '400 sq ft a gallon and coat, as on the label.',
    );
    expect(one([finish('walls', 'paint')]).rule).toMatch(
      /^Trade practice, not a standard: 350 .* 300 to 400.*Coats not recorded: the figures are for one\.$/,
    );
    expect(one([finish('floor', 'carpet')]).rule).toBe('');
  });

  test('no coats stated: figures for one coat, marked so', () => {
    const { paint } = one([finish('walls', 'paint')]);
    expect(paint).toMatchObject({ coats: 1, coatsStated: false, gallonsWords: '1.01', buy: 2 });
    expect(one([finish('walls', 'paint', { coats: 1 })]).paint?.coatsStated).toBe(true);
  });

  test('rough or bare board takes more paint', () => {
    expect(one([finish('walls', 'paint', { over: 'bare board' })]).paint?.coverage).toBe(300);
    expect(one([finish('walls', 'paint', { over: 'old paint' })]).paint?.coverage).toBe(350);
  });

  test('a label that covers nothing gives no figure', () => {
    expect(one([finish('walls', 'paint', { coverage: 0 })]).paint).toBeUndefined();
  });

  test('no box, no boxes; defects only for wood whose waste nobody stated', () => {
    expect(one([finish('floor', 'oak')]).flooring).toMatchObject({
      boxes: undefined,
      defects: { percent: 5 },
    });
    expect(one([finish('floor', 'oak', { waste: 12 })]).flooring?.defects).toBeUndefined();
    for (const what of ['vinyl plank, oak look', 'laminate', 'wood-look tile'])
      expect(one([finish('floor', what)]).flooring?.defects, what).toBeUndefined();
  });
});

describe('how an area was come by', () => {
  const SLOPED = { ceiling: { 'at-7-ft': `9' x 10'`, 'at-5-ft': `12' x 10'` } };
  const BESIDE = 'Other finishes of the same floor are in it: their part wasn’t taken off.';
  const floor = finish('floor', 'oak');

  test.each<readonly [string, FinishSpec[], Partial<RoomSpec>, number | undefined, string]>([
    ['a floor', [floor], {}, 120, 'Floor inside.'],
    ['a floor beside another', [floor, finish('floor', 'tile')], {}, 120, `Floor inside. ${BESIDE}`],
    ['a floor beside walls', [floor, finish('walls', 'tile')], {}, 120, 'Floor inside.'],
    [
      'a floor whose carpet is gone',
      [floor, finish('floor', 'carpet', { did: 'removed' })],
      {},
      120,
      'Floor inside.',
    ],
    ['a floor under a slope', [floor], SLOPED, 120, 'Floor inside.'],
    [
      'a flat ceiling',
      [finish('ceiling', 'tile')],
      { ceiling: `8'` },
      120,
      'Flat ceiling, as large as the floor inside.',
    ],
    [
      'a ceiling that nobody taped',
      [finish('ceiling', 'tile')],
      {},
      120,
      'Flat ceiling, as large as the floor inside.',
    ],
    [
      'a slope',
      [finish('ceiling', 'tile')],
      SLOPED,
      undefined,
      'Not known: the ceiling slopes, and its own area isn’t stated.',
    ],
  ])('of %s', (_, finishes, room, area, how) => {
    const found = one(finishes, MEASURED, room);
    expect([found.area, found.how]).toEqual([area === undefined ? undefined : sqFt(area), how]);
  });

  test('walls that are all openings have no area', () => {
    // 5 windows of 15 sq ft are 75; of 76 sq ft one is left.
    const windows = Array.from({ length: 5 }, () => ({}));
    const of = (perimeter: number) =>
      one(
        [finish('walls', 'paint')],
        {
          roomFloors: new Map(),
          roomWalls: new Map([['den', { perimeter: perimeter * FOOT, height: FOOT }]]),
        },
        { windows },
      ).area;
    expect([of(76), of(75)]).toEqual([sqFt(1), undefined]);
  });
});
