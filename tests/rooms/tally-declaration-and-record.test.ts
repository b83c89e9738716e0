/** What is said beside the size: who measured, why it is not to the standard, and what may explain another figure. */
import { describe, expect, it, test } from 'vitest';
import { main, measure, type Plain } from './measured-house.js';

const SQUARE = { size: `30' x 40'` };
const room = (id: string, more: Plain): Plain => ({ id, level: 'main', use: 'living', ...more });

describe('the declaration', () => {
  const MEASURED = { by: 'owner', date: '2026-06-14', method: 'ansi-z765-2021' };
  const declared = (spec: Plain, kind?: string) => {
    const { areas, diagnostics } = measure({ levels: [main(SQUARE)], measured: MEASURED, ...spec }, kind);
    return { how: areas.declaration[0], refused: diagnostics.map(({ message }) => message) };
  };
  const refusal = (reason: string) => ({
    how: `Measured 14 June 2026 by the owner. Not measured to ANSI Z765-2021: ${reason}.`,
    refused: [`the size can’t be called measured to ANSI Z765-2021: ${reason}`],
  });

  it.each<readonly [string, Plain, string | undefined, string]>([
    [
      'a manufactured house',
      {},
      'manufactured',
      'it is written for detached and attached single-family houses',
    ],
    ['a unit of apartment style', {}, 'apartment-style', 'it is not meant for apartment-style units'],
    ['no level', { levels: [] }, undefined, 'no level is given'],
    [
      'one level by its rooms',
      { levels: [main()], rooms: [room('hall', { size: `10' x 10'` })] },
      undefined,
      'Main level has inside sizes only',
    ],
    [
      'two levels by their rooms',
      {
        levels: [main(), main({ id: 'upper', name: 'Upper level' })],
        rooms: [room('hall', { size: `10' x 10'` }), room('den', { level: 'upper', size: `10' x 10'` })],
      },
      undefined,
      'Main level and Upper level have inside sizes only',
    ],
    [
      'a level that nobody measured',
      { levels: [main(SQUARE), main({ id: 'upper', name: 'Upper level' })] },
      undefined,
      'the area of Upper level is not known',
    ],
    [
      'a wall that nobody knows',
      { levels: [main({ ...SQUARE, measured: 'inside', walls: { north: '6"', south: '6"', east: '6"' } })] },
      undefined,
      'some walls of Main level are not included',
    ],
  ])('names %s as what stands against the standard', (_, spec, kind, reason) => {
    const { how, refused } = declared(spec, kind);
    expect(how).toBe(refusal(reason).how);
    expect(refused).toContain(refusal(reason).refused[0]);
  });

  it.each([
    ['owner', 'the owner'],
    ['surveyor', 'a person who was hired'],
    ['Hollow Surveys', 'Hollow Surveys'],
  ])('measured by: %s is told as %s', (by, who) => {
    const people = [{ id: 'surveyor', name: 'Hollow Surveys' }];
    expect(declared({ people, measured: { ...MEASURED, by } }).how).toBe(
      `Measured 14 June 2026 by ${who} to the outside finished faces of the walls, following ANSI Z765-2021. Finished area above grade and below grade is stated apart.`,
    );
  });

  test('tells of a finished room without heat, with its size where that is known', () => {
    const { areas } = measure({
      levels: [main(SQUARE)],
      rooms: [
        room('hall', { heated: 'no', size: `10' x 10'` }),
        room('den', { heated: 'no' }),
        room('store', { heated: 'no', finish: 'unfinished', size: `5' x 5'` }),
      ],
    });
    const counted =
      'has no permanent heat. It is counted here; some state guides, such as North Carolina’s, leave it out of living area.';
    expect(areas.declaration.filter((words) => /permanent heat/.test(words))).toEqual([
      `Hall (100 sq ft inside) ${counted}`,
      `Den ${counted}`,
    ]);
  });
});

describe('the public record', () => {
  const record = (area: string, spec: Plain = {}, more: Plain = {}) =>
    measure({ levels: [main(SQUARE)], record: { area, ...more }, ...spec }).areas.record;
  const causes = (...args: Parameters<typeof record>) => record(...args)?.causes;

  test('is named by what is known of it', () => {
    expect(record('1,200 sq ft')?.words).toBe(
      'The public record says 1,200 sq ft. The finished area above grade given here is 1,200 sq ft, the same.',
    );
    expect(record('1,500 sq ft', {}, { date: '2019', source: 'county card' })?.words).toBe(
      'The public record (county card, 2019) says 1,500 sq ft. The finished area above grade given here is 1,200 sq ft, 300 sq ft less than the record.',
    );
    expect(record('1,500 sq ft', { levels: [main()] })?.words).toBe(
      'The public record says 1,500 sq ft. No level of the house is measured, so there is nothing to compare.',
    );
  });

  test('may be one and a half times a floor; a level that nobody measured is none', () => {
    const shortcut =
      'The record’s figure is 1.5 times the area of Main level: an old shortcut for a half storey, not a measurement.';
    const upper = main({ id: 'upper', name: 'Upper level' });
    expect(causes('1,800 sq ft', { levels: [main(SQUARE), upper] })).toEqual([shortcut]);
    expect(causes('1,801 sq ft', { levels: [main(SQUARE), upper] })).toEqual([shortcut]);
    expect(causes('1,803 sq ft', { levels: [main(SQUARE), upper] })).toEqual([]);
  });

  test('may hold a garage, but not one that nobody measured', () => {
    const garage = (size: Plain) => ({ structures: [{ id: 'garage', is: 'garage', ...size }] });
    expect(causes('1,600 sq ft', garage({ size: `20' x 20'` }))).toEqual([
      'The record may count the garage as living area: Garage (400 sq ft).',
    ]);
    expect(causes('1,600 sq ft', garage({}))).toEqual([]);
  });

  test('is older than later work on the structure, or may be; work without a date says nothing', () => {
    const wing = (done?: string) => ({
      work: [
        {
          id: 'wing',
          what: 'rear wing',
          did: 'added',
          structural: true,
          ...(done === undefined ? {} : { done }),
        },
      ],
    });
    const older = (done?: string) => causes('1,100 sq ft', wing(done), { date: '2019' });
    expect(older('2021')).toEqual(['The record (2019) is older than work on the structure: rear wing.']);
    expect(older('2018/2021')).toEqual([
      'The record (2019) may be older than work on the structure: rear wing.',
    ]);
    expect(older('2018/..')).toEqual([
      'The record (2019) may be older than work on the structure: rear wing.',
    ]);
    expect(older('2018')).toEqual([]);
    expect(older()).toEqual([]);
    expect(causes('1,100 sq ft', wing('2021'), { date: '2019/..' })).toEqual([]);
  });

  test('may hold what an estimate here leaves out', () => {
    const levels = [main()];
    expect(causes('1,500 sq ft', { levels, rooms: [room('hall', { size: `30' x 40'` })] })).toEqual([
      'The figure here is an estimate that leaves out walls or rooms; the record’s may hold them.',
    ]);
    expect(causes('1,000 sq ft', { levels, rooms: [room('hall', { size: `30' x 40'` })] })).toEqual([]);
  });

  test('may have been measured inside, where the walls were added here', () => {
    const inside = main({ size: `29' x 39'`, measured: 'inside', walls: { all: '6"' } });
    expect(causes('1,131 sq ft', { levels: [inside], rooms: [room('all', { size: `29' x 39'` })] })).toEqual([
      'The record may have been measured inside: the finished rooms above grade add up to 1,131 sq ft between their walls.',
    ]);
  });
});
