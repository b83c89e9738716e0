/**
 * Observations against the figures of model codes and agencies, at and one step beyond each limit.
 *
 * The limits are the publishers', as named in `src/tally/tables/safety.yaml` and beside each test; the houses are
 * constructed. None of the answers says that a house meets a code.
 */
import { describe, expect, test } from 'vitest';
import { deriveObservations } from '../../src/tally/observations.js';
import { houseFrom, type PartialSpec } from '../rooms/house-from.js';

const WITHIN = 'at or within the figure';
const BEYOND = 'outside the figure';
const OPEN = 'not recorded';

type Topic = ReturnType<typeof deriveObservations>[number]['topic'];
const stands = (spec: PartialSpec, topic: Topic) =>
  deriveObservations(houseFrom(spec))
    .filter((one) => one.topic === topic)
    .map((one) => one.stands);

describe('International Residential Code R310.2, as a window maker’s page quotes it', () => {
  /** A bedroom whose window was taped so; the sill is at the limit unless it is what the test is about. */
  const window = (width: string, height: string, extra: object = {}) =>
    stands(
      {
        levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
        rooms: [
          {
            id: 'bed',
            level: 'main',
            use: 'bedroom',
            windows: [{ 'clear-width': width, 'clear-height': height, sill: '44"', ...extra }],
          },
        ],
      },
      'escape opening',
    )[0];

  test.each([
    // The smallest sides together are 480 sq in, far below 820.8.
    ['20"', '24"', {}, BEYOND],
    ['20"', '41"', {}, BEYOND],
    ['20"', '42"', {}, WITHIN],
    // A web page calls this enough; it is 816 sq in, 4.8 short.
    ['34"', '24"', {}, BEYOND],
    // At ground level 5.0 sq ft are 720 sq in exactly.
    ['20"', '36"', { 'at-grade': true }, WITHIN],
    // 820.8 sq in exactly; in binary square feet it comes out a hair below 5.7.
    ['20"', '41.04"', {}, WITHIN],
    ['20"', '41.039"', {}, BEYOND],
    ['20"', '35.999"', { 'at-grade': true }, BEYOND],
    // Area alone is not enough: a side too short.
    ['19 15/16"', '60"', {}, BEYOND],
    ['60"', '23 15/16"', {}, BEYOND],
  ])('%s wide by %s high, %o: %s', (width, height, extra, expected) => {
    expect(window(width, height, extra)).toBe(expected);
  });

  test('binary fractions would have failed the exact fit', () => {
    expect((20 * 41.04) / 144).toBeLessThan(5.7);
  });

  test('the sill: 44 in is within, 44 1/2 in is not', () => {
    expect(window('20"', '42"', { sill: '44"' })).toBe(WITHIN);
    expect(window('20"', '42"', { sill: '44 1/2"' })).toBe(BEYOND);
    expect(window('20"', '42"', { sill: undefined })).toBe(OPEN);
    // A part that fails decides, whatever wasn't measured.
    expect(window('20"', '41"', { sill: undefined })).toBe(BEYOND);
  });
});

describe('handrails', () => {
  const flight = (risers: number, handrail: 'yes' | 'no' | 'not known', height?: string) =>
    deriveObservations(
      houseFrom({
        stairs: [
          { id: 'cellar', risers, handrail, ...(height === undefined ? {} : { 'rail-height': height }) },
        ],
      }),
    )[0];

  test('new work: looked for from the fourth riser on (R311.7.8, on a page about codes and a town’s own)', () => {
    expect(flight(3, 'no')?.stands).toBe(WITHIN);
    expect(flight(4, 'no')?.stands).toBe(BEYOND);
    expect(flight(4, 'not known')?.stands).toBe(OPEN);
    expect(flight(4, 'yes')?.stands).toBe(OPEN);
  });

  test('new work: 34 to 38 in above the nosings, both included', () => {
    expect(flight(9, 'yes', '34"')?.stands).toBe(WITHIN);
    expect(flight(9, 'yes', '38"')?.stands).toBe(WITHIN);
    expect(flight(9, 'yes', '33 15/16"')?.stands).toBe(BEYOND);
    expect(flight(9, 'yes', '38 1/16"')?.stands).toBe(BEYOND);
  });

  test('an existing house’s looser rule is told beside it (Philadelphia Property Maintenance Code, PM-307.1)', () => {
    // At four risers the two differ: new work asks for a rail, the maintenance code only above four.
    const { stands: answer, figure } = flight(4, 'no') ?? {};
    expect(answer).toBe(BEYOND);
    expect(figure).toMatch(/new work: a rail from 4 risers on, 34 to 38 in/);
    expect(figure).toMatch(/maintenance code: above 4 risers, 30 to 42 in/);
  });
});

describe('steps of new work (R311.7, riser and tread on a town’s page; spread, width and headroom from memory)', () => {
  const GOOD = {
    'highest-riser': '7 3/4"',
    'lowest-riser': '7 3/8"',
    tread: '10"',
    width: '36"',
    headroom: `6'8"`,
  };
  const steps = (change: object) => {
    const stair = { id: 'cellar', risers: 3, handrail: 'no' as const, ...GOOD, ...change };
    return stands({ stairs: [stair] }, 'stair')[1];
  };

  test('all at their limits are within', () => {
    expect(steps({})).toBe(WITHIN);
  });

  test.each([
    [{ 'highest-riser': '7 13/16"', 'lowest-riser': '7 13/16"' }],
    [{ 'lowest-riser': '7 5/16"' }],
    [{ tread: '9 15/16"' }],
    [{ width: '35 15/16"' }],
    [{ headroom: `6'7 15/16"` }],
    // Highest and lowest exchanged by the writer.
    [{ 'highest-riser': '7 1/2"', 'lowest-riser': '7 7/8"' }],
  ])('one step beyond is not: %o', (change) => {
    expect(steps(change)).toBe(BEYOND);
  });

  test('risers of 7 1/2, 7 5/8 and 7 7/8 in: the spread of 3/8 is within, the highest is not', () => {
    expect(steps({ 'highest-riser': '7 7/8"', 'lowest-riser': '7 1/2"' })).toBe(BEYOND);
    expect(steps({ 'highest-riser': '7 3/4"', 'lowest-riser': '7 3/8"' })).toBe(WITHIN);
  });

  test('what wasn’t taped leaves it open', () => {
    expect(steps({ headroom: undefined })).toBe(OPEN);
    expect(steps({ 'lowest-riser': undefined })).toBe(OPEN);
  });
});

describe('guards (R312.1: drop and ball on a town’s page, height from memory)', () => {
  const guard = (drop: string, there: 'yes' | 'no' | 'not known', extra: object = {}) =>
    stands({ guards: [{ what: 'porch, east side', drop, guard: there, ...extra }] }, 'guard')[0];

  test('looked for over a drop of more than 30 in: not at 30, at 30 1/4', () => {
    expect(guard('30"', 'no')).toBe(WITHIN);
    expect(guard('30 1/4"', 'no')).toBe(BEYOND);
    expect(guard('30 1/4"', 'not known')).toBe(OPEN);
  });

  test('36 in high and closed to a 4 in ball', () => {
    expect(guard('34"', 'yes', { height: '36"', gap: '3 15/16"' })).toBe(WITHIN);
    expect(guard('34"', 'yes', { height: '36"', gap: '4"' })).toBe(BEYOND);
    expect(guard('34"', 'yes', { height: '35 3/4"', gap: '3"' })).toBe(BEYOND);
    expect(guard('34"', 'yes', { height: '36"' })).toBe(OPEN);
  });

  test('towns that ask for one at exactly 30 in are named beside the figure', () => {
    const [observation] = deriveObservations(
      houseFrom({ guards: [{ what: 'porch', drop: '30"', guard: 'no' }] }),
    );
    expect(observation?.figure).toMatch(/some places: 30 in or more/);
  });
});

describe('the relief pipe of a water heater (IPC 504.6, quoted by a plumbing contractor)', () => {
  const pipe = (end: string | undefined, extra: object = {}) =>
    stands(
      {
        systems: [
          {
            id: 'heater',
            is: 'water heater, tank, electric',
            'relief-pipe': {
              diameter: '3/4"',
              threaded: 'no',
              valve: 'no',
              ...(end === undefined ? {} : { 'ends-above-floor': end }),
              ...extra,
            },
          },
        ],
      },
      'relief pipe',
    )[0];

  test('of a 3/4 in pipe ends 1 1/2 to 6 in above the floor', () => {
    expect(pipe('1"')).toBe(BEYOND);
    expect(pipe('1 1/2"')).toBe(WITHIN);
    expect(pipe('6"')).toBe(WITHIN);
    expect(pipe('7"')).toBe(BEYOND);
    // Two diameters of a wider pipe.
    expect(pipe('1 1/2"', { diameter: '1"' })).toBe(BEYOND);
  });

  test('has no thread and no valve, and what nobody looked at stays open', () => {
    expect(pipe('4"', { threaded: 'yes' })).toBe(BEYOND);
    expect(pipe('4"', { valve: 'yes' })).toBe(BEYOND);
    expect(pipe('4"', { valve: 'not known' })).toBe(OPEN);
    expect(pipe(undefined)).toBe(OPEN);
  });
});

describe('hot water (consumer agency’s advice and burn times, quoted by a children’s doctor)', () => {
  const heater = (extra: object) =>
    deriveObservations(
      houseFrom({ systems: [{ id: 'heater', is: 'water heater, tank, gas', ...extra }] }),
    ).find((one) => one.topic === 'hot water');

  test.each([
    ['120 F', WITHIN, undefined],
    ['121 F', BEYOND, 300],
    ['129 F', BEYOND, 300],
    ['130 F', BEYOND, 30],
    ['140 F', BEYOND, 6],
    ['150 °F', BEYOND, 2],
    ['160 F', BEYOND, 2],
  ])('set to %s: %s, deep burns in %s seconds', (set, expected, seconds) => {
    const observation = heater({ 'set-to': set });
    expect(observation?.stands).toBe(expected);
    if (seconds === undefined) expect(observation?.observed).not.toMatch(/burn/);
    else expect(observation?.observed).toContain(`burn deeply in ${seconds} seconds`);
  });

  test('a mixing valve is told, and no setting is not known', () => {
    expect(heater({ 'set-to': '140 F', 'mixing-valve': 'yes' })?.observed).toMatch(/mixing valve: yes/);
    expect(heater({})?.stands).toBe(OPEN);
  });
});

describe('a pool’s barrier (agency’s publication 362, in a stored copy)', () => {
  const GOOD = {
    what: 'fence',
    height: '48"',
    'gap-below': '4"',
    'widest-gap': '3 15/16"',
    gate: 'no',
  } as const;
  const barrier = (change: object) =>
    stands({ pool: { barriers: [{ ...GOOD, ...change }] } }, 'pool barrier')[0];

  test('48 in high outside, at most 4 in above the ground, closed to a 4 in ball', () => {
    expect(barrier({})).toBe(WITHIN);
    expect(barrier({ height: '47 1/2"', 'gap-below': '3"' })).toBe(BEYOND);
    expect(barrier({ 'gap-below': '4 1/16"' })).toBe(BEYOND);
    expect(barrier({ 'widest-gap': '4"' })).toBe(BEYOND);
    expect(barrier({ height: undefined })).toBe(OPEN);
  });

  test('a gate opens outward and closes by itself', () => {
    const gate = { gate: 'yes', 'closes-itself': 'yes', 'opens-outward': 'yes' };
    expect(barrier(gate)).toBe(WITHIN);
    expect(barrier({ ...gate, 'closes-itself': 'no' })).toBe(BEYOND);
    expect(barrier({ ...gate, 'opens-outward': 'no' })).toBe(BEYOND);
    expect(barrier({ gate: 'yes' })).toBe(OPEN);
    expect(barrier({ gate: 'not known' })).toBe(OPEN);
    expect(barrier({ gate: undefined })).toBe(OPEN);
    expect(barrier({ gate: 'no' })).toBe(WITHIN);
  });
});
