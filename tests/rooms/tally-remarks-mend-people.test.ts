/** Words in place of a wrong kind, worker, permit or place, and of what stays or goes. */
import { describe, expect, it } from 'vitest';
import { kindWords } from '../../src/tally/remarks/mend/mend-kinds.js';
import {
  conveyWords,
  otherWords,
  permitWords,
  placeWords,
  whoWords,
} from '../../src/tally/remarks/mend/mend-people.js';
import type { PartialSpec } from './house-from.js';
import { itemOf, knownFrom, stretchIn } from './tally-remarks-mend-case.js';

type Row = readonly [draft: string, words: readonly string[]];

const FLOORS: PartialSpec = {
  levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
  rooms: [
    { id: 'kitchen', level: 'main', use: 'kitchen', finishes: [{ on: 'floor', what: 'sheet vinyl' }] },
    { id: 'bath', level: 'main', use: 'bath', finishes: [{ on: 'floor', what: 'ceramic tile, hexagon' }] },
    { id: 'hall', level: 'main', use: 'hall', finishes: [{ on: 'counter', what: 'quartz' }] },
  ],
};

describe('what a thing is', () => {
  const heater = itemOf({ is: 'water heater', fuel: 'electric' });
  it.each<Row>([
    ['[Gas water heater]', ['electric water heater', 'water heater']],
    ['[water heater is gas]', ['water heater is electric']],
    ['[gas]', ['electric']],
    ['[water heater]', []],
  ])('an electric water heater: “%s”', (draft, words) => {
    expect(kindWords(stretchIn(draft), 'kind.fuel', [heater], false)).toEqual(words);
  });

  it('of some of them only: the word that is wrong of the others goes', () => {
    expect(kindWords(stretchIn('[Gas water heater]'), 'kind.fuel', [heater], true)).toEqual(['water heater']);
    expect(kindWords(stretchIn('[gas]'), 'kind.fuel', [heater], true)).toEqual([]);
  });

  const floors = knownFrom(FLOORS).items.filter(({ kind }) => kind === 'finish');
  it.each<Row>([
    ['[hardwood]', ['vinyl floors', 'ceramic floors', 'hexagon floors']],
    ['[hardwoods]', ['vinyl floors', 'ceramic floors', 'hexagon floors']],
    ['[hardwood floors]', ['vinyl floors', 'ceramic floors', 'hexagon floors', 'floors']],
    ['[carpet]', ['vinyl', 'ceramic', 'hexagon']],
    ['[carpeting]', ['vinyl', 'ceramic', 'hexagon']],
    ['[carpeted]', []],
    ['[carpeted floors]', ['floors']],
  ])('floors of vinyl and of tile, each once: “%s”', (draft, words) => {
    expect(kindWords(stretchIn(draft), 'kind.floor-covering', floors, false)).toEqual(words);
  });

  it.each<Row>([
    ['[finished cellar]', ['unfinished cellar', 'cellar']],
    ['[cellar is finished]', ['cellar is unfinished']],
  ])('what is not finished: “%s”', (draft, words) => {
    expect(kindWords(stretchIn(draft), 'kind.finished-state', [], false)).toEqual(words);
  });

  it('a word of the folder that is no fact of the thing serves where nothing else does', () => {
    const { items } = knownFrom({ systems: [{ id: 'it', is: 'detached shelter' }] });
    expect(kindWords(stretchIn('[Attached garage]'), 'kind.attachment', items, false)).toEqual([
      'detached garage',
      'garage',
    ]);
  });

  it.each([
    ['[boiler]', 'furnace, gas', ['gas furnace', 'furnace']],
    ['[NEW boiler]', 'furnace, gas', ['furnace']],
    ['[boiler]', 'heat pump, air source', ['heat pump', 'heat pump']],
    ['[boiler]', 'furnace', ['furnace', 'furnace']],
  ])('another thing: “%s” where it is a %s', (draft, truth, words) => {
    expect(otherWords(stretchIn(draft), truth)).toEqual(words);
  });
});

describe('who did it', () => {
  const hired = itemOf({ by: 'joe' }, { people: [{ id: 'joe', name: 'Joe' }] });
  const BY = {
    owner: itemOf({ by: 'owner' }),
    family: itemOf({ by: 'family' }),
    hired,
    nobody: itemOf({}),
  } as const;

  it.each<[keyof typeof BY, string, readonly string[]]>([
    ['owner', '[by a licensed roofer]', ['by the owner']],
    ['family', '[by a licensed roofer]', ['by family']],
    ['hired', '[by the owner]', ['by a contractor']],
    ['nobody', '[by a licensed roofer]', []],
    ['owner', '[installed by a pro] last year', []],
    ['owner', '[installed by a pro], last year', ['installed by the owner']],
    ['owner', '[professionally installed]', ['installed']],
    ['nobody', '[expertly installed]', ['installed']],
    [
      'owner',
      '[professionally installed by Joe]',
      ['professionally installed by the owner', 'installed by Joe'],
    ],
    ['owner', '[professional ]', []],
    ['hired', '[themselves]', ['by a contractor']],
    ['hired', '[installed ourselves]', ['installed by a contractor']],
    ['hired', 'we [installed ourselves]', []],
    ['owner', '[ourselves]', []],
    ['hired', '[DIY]', ['by a contractor']],
    ['hired', '[furnace: DIY].', ['furnace: by a contractor']],
    // No "by" before a noun.
    ['hired', 'a [DIY project]', []],
    ['hired', '[DIY project]', []],
    ['hired', '[DIY] project', []],
    ['hired', 'It was the [owner-built].', []],
    ['hired', '[owner-built]', ['by a contractor']],
  ])('%s: “%s”', (who, draft, words) => {
    expect(whoWords(stretchIn(draft), [BY[who]], false)).toEqual(words);
  });

  it('of some of it only, or of nothing that the folder has: praise alone is taken out', () => {
    expect(whoWords(stretchIn('[by a licensed roofer]'), [BY.owner], true)).toEqual([]);
    expect(whoWords(stretchIn('[professionally installed]'), [BY.owner], true)).toEqual(['installed']);
    expect(whoWords(stretchIn('[by a licensed roofer]'), [], false)).toEqual([]);
  });
});

const PERMITS = [
  { id: 'furnace', what: 'furnace and ducts', state: 'final' },
  { id: 'heater', what: 'water heater', state: 'final' },
  { id: 'wiring', what: 'house wiring', state: 'final' },
  { id: 'roof', what: 'roof covering', state: 'final' },
  { id: 'circuits', what: 'kitchen circuits', state: 'open' },
  { id: 'boiler', what: 'new furnace', state: 'open' },
  { id: 'zoning', what: 'Zoning; variance', state: 'open' },
  { id: 'steps', what: 'front steps, rail', state: 'expired' },
  { id: 'ducts', what: 'furnace ducts', state: 'expired' },
  { id: 'shed', what: 'shed', state: 'none-found' },
] as const satisfies PartialSpec['permits'];
type PermitId = (typeof PERMITS)[number]['id'];

describe('a permit', () => {
  const words = (draft: string, all: boolean, ids: readonly PermitId[]) =>
    permitWords(
      stretchIn(draft),
      all,
      knownFrom({ permits: PERMITS.filter(({ id }) => ids.includes(id)) }).house.permits,
    );
  const ALL = '[All work permitted]';

  it.each<[string, readonly PermitId[], readonly string[]]>([
    [ALL, ['furnace'], ['heating permit closed']],
    [
      ALL,
      ['furnace', 'circuits', 'steps'],
      [
        'heating permit closed; electrical permit open; porch steps permit expired',
        'some permits closed; electrical permit open; porch steps permit expired',
        'electrical permit open; porch steps permit expired',
      ],
    ],
    [
      ALL,
      ['furnace', 'heater', 'wiring', 'roof', 'zoning'],
      [
        'heating, plumbing and electrical permits closed; zoning permit open',
        'some permits closed; zoning permit open',
        'zoning permit open',
      ],
    ],
    [ALL, ['circuits', 'zoning'], ['electrical and zoning permits open']],
    [ALL, ['steps', 'ducts'], ['porch steps and heating permits expired']],
    [ALL, ['shed'], []],
    ['[work all permitted]', ['furnace'], []],
    // Of two for one trade the one that is not closed is told.
    [ALL, ['furnace', 'boiler'], ['heating permit open']],
    [ALL, ['furnace', 'ducts'], ['heating permit expired']],
    [ALL, ['furnace', 'boiler', 'ducts'], ['heating permit open']],
  ])('of all work: “%s” with %s', (draft, ids, expected) => {
    expect(words(draft, true, ids)).toEqual(expected);
  });

  it.each<[string, readonly PermitId[], readonly string[]]>([
    ['[permitted fence]', ['zoning'], ['fence']],
    ['[fence is permitted]', ['zoning'], ['fence permit is open']],
    ['[fence was fully permitted in 2020]', ['zoning'], ['fence permit is open']],
    ['[fence is permitted] and painted', ['zoning'], []],
    ['[permit closed]', ['zoning'], ['permit open']],
    ['[permits signed off]', ['zoning'], ['permits open']],
    ['fence, [fully permitted].', ['zoning'], ['permit open']],
    ['fence, [permitted] deck', ['zoning'], []],
    ['fence [permitted]', ['zoning'], []],
    ['fence, [with permits]', ['zoning'], []],
    // Not where the open one is not the only one.
    ['[fence is permitted]', ['zoning', 'roof'], []],
    ['[fence is permitted]', ['zoning', 'shed'], []],
    ['[fence is permitted]', ['steps'], []],
  ])('of one work: “%s” with %s', (draft, ids, expected) => {
    expect(words(draft, false, ids)).toEqual(expected);
  });
});

describe('what stays', () => {
  it.each<[string, string | undefined]>([
    ['[trees included]', 'trees not included'],
    ['[trees also included]', 'trees not included'],
    ['[trees not included]', 'trees included'],
    ['[washer excluded]', 'washer included'],
    ['[shades are included]', 'shades not included'],
    ['[washer does not convey]', 'washer stays'],
    ['[shades do not stay]', 'shades stay'],
    ['[washer stays]', 'washer not included'],
    ['[shades all remain]', 'shades not included'],
    ['[washer that stays]', 'washer that is not included'],
    ['[washer which is not included]', 'washer which is included'],
    ['[washer that does not stay]', undefined],
    ['[washer conveys] with the house', undefined],
    ['[stays]', undefined],
    ['[a washer]', undefined],
  ])('“%s”', (draft, words) => {
    expect(conveyWords(stretchIn(draft), false)).toEqual(words === undefined ? [] : [words]);
  });

  it('of some of it only nothing short is true', () => {
    expect(conveyWords(stretchIn('[washer stays]'), true)).toEqual([]);
  });
});

describe('where it is', () => {
  const SPEC: PartialSpec = {
    levels: [
      { id: 'main', name: 'Main level', grade: 'above' },
      { id: 'cellar', name: 'Cellar', grade: 'below' },
    ],
    rooms: [
      { id: 'laundry', level: 'cellar', use: 'laundry' },
      { id: 'mechanical', name: 'Mechanical room', level: 'cellar', use: 'mechanical' },
    ],
  };
  const heater = (where: string) => itemOf({ is: 'water heater', where }, SPEC);
  const words = (draft: string, rooms: number[], where?: string) =>
    placeWords(knownFrom(SPEC), stretchIn(draft), rooms, where === undefined ? [] : [heater(where)]);

  it.each<[string, number[], string | undefined, string | undefined]>([
    ['[Laundry on main level]', [0], undefined, 'Laundry in the cellar'],
    ['[Main-level laundry]', [0], undefined, 'laundry in the cellar'],
    ['[upstairs laundry]', [0], undefined, 'laundry in the cellar'],
    ['[laundry]', [0], undefined, undefined],
    ['[heater in the attic]', [], 'mechanical', 'heater in the mechanical room'],
    ['[heater in the attic]', [], 'main', 'heater on the main level'],
    // A room without a name of its own is called by its id.
    ['[heater in the attic]', [], 'laundry', 'heater in the laundry'],
    ['[heater in the attic]', [], undefined, undefined],
  ])('“%s”, rooms %j, a heater in %s', (draft, rooms, where, expected) => {
    expect(words(draft, rooms, where)).toEqual(expected === undefined ? [] : [expected]);
  });
});
