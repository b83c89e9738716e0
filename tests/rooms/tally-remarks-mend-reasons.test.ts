/** How a thing stands, in a few words, and the reason why a claim about it does not hold. */
import { describe, expect, it } from 'vitest';
import { reasonOf } from '../../src/tally/remarks/mend/reasons.js';
import { hindrance, nameOf, partOf } from '../../src/tally/remarks/mend/state.js';
import {
  findingOf,
  houseOf,
  itemOf,
  KITCHEN,
  knownFrom,
  THINGS,
  type Thing,
} from './tally-remarks-mend-case.js';

describe('how a thing stands', () => {
  it.each(Object.keys(THINGS) as Thing[])('%s', (thing) => {
    expect(hindrance(itemOf(THINGS[thing]))).toBe(thing);
  });

  it('put in anew by an earlier owner and kept, it is left as found', () => {
    expect(hindrance(itemOf({ kept: true, did: 'new', installed: '2026' }))).toBe('left as found');
    expect(hindrance(itemOf({ did: 'repaired' }))).toBe('repaired');
  });

  it.each([
    [{ is: 'roof', name: 'Roof, house' }, 'house roof'],
    [{ is: 'toilet', name: 'Toilet, half bath' }, 'half bath toilet'],
    [{ is: 'pipes', name: 'Supply pipes, old runs' }, 'supply pipes'],
    [{ is: 'hvac', name: 'HVAC' }, 'HVAC'],
  ])('%j is called %s', (system, name) => {
    expect(nameOf(itemOf(system))).toBe(name);
  });

  it('finishes are called by their room, and by their part alone', () => {
    const { items } = knownFrom({ ...KITCHEN, alarms: [{ id: 'a', is: 'smoke', where: 'kitchen' }] });
    expect(items.map(nameOf)).toEqual([
      'kitchen floor',
      'kitchen counter',
      'kitchen cabinet boxes',
      'kitchen alarm',
    ]);
    expect(items.slice(0, 3).map(partOf)).toEqual(['floor', 'counters', 'cabinets']);
  });
});

describe('the reason', () => {
  const known = houseOf(
    'of 2009',
    'of about 1991',
    'left as found',
    'only serviced',
    'of 2026',
    'second-hand',
    'moved',
  );
  const { items } = known;
  const reason = (rule: string, more: Parameters<typeof findingOf>[0] = {}, of = items) =>
    reasonOf(known, findingOf({ rule, ...more }), of);
  const fact = (words: string) => ({ path: ['house'], words, evidence: [] });

  it('of newness is how each stands, three of them; service says nothing beside', () => {
    expect(reason('newness.new')).toBe('of 2009: furnace; of about 1991: furnace; left as found: furnace');
    expect(reason('newness.new', {}, items.slice(3, 4))).toBe('only serviced: furnace');
    expect(reason('newness.new', {}, items.slice(4, 5))).toBeUndefined();
  });

  it('of newness tells several that stand alike together', () => {
    const alike = knownFrom({
      systems: [
        { id: 'a', is: 'furnace', installed: '2009' },
        { id: 'b', is: 'roof', installed: '2009' },
        { id: 'c', is: 'range', installed: '2009' },
      ],
    });
    expect(reasonOf(alike, findingOf({ rule: 'newness.new' }), alike.items)).toBe(
      'of 2009: furnace, roof and range',
    );
  });

  it.each([
    ['newer', '2019', 'of 2019, older than five years: furnace'],
    ['newer', '2009', 'of 2009, older than ten years: furnace'],
    ['updated', '2009', 'of 2009, older than ten years: furnace'],
    ['new', '2019', 'of 2019: furnace'],
  ])('of “%s” where it is of %s tells how old that is', (word, installed, expected) => {
    const house = knownFrom({ systems: [{ id: 'it', is: 'furnace', installed, did: 'replaced' }] });
    expect(reasonOf(house, findingOf({ rule: `newness.${word}` }), house.items)).toBe(expected);
  });

  it('of “newer” tells no age of what has none', () => {
    const { items: kept } = houseOf('only serviced');
    expect(reason('newness.newer', {}, kept)).toBe('only serviced: furnace');
  });

  it('of a kind is told where it is so of some', () => {
    const house = knownFrom({
      ...KITCHEN,
      systems: [
        { id: 'it', is: 'water heater, tank, electric', name: 'Water heater' },
        { id: 'roof', is: 'roof' },
      ],
    });
    const [heater, roof, floor] = house.items;
    if (heater === undefined || roof === undefined || floor === undefined) throw new Error('no items');
    const ofKind = (list: typeof house.items, more: Parameters<typeof findingOf>[0]) =>
      reasonOf(house, findingOf({ rule: 'kind.fuel', ...more }), list);
    expect(ofKind([heater, floor], { verdict: 'wider' })).toBe(
      'the folder says water heater: tank, electric; kitchen floor: oak strip',
    );
    expect(ofKind([heater], { because: 'not in all' })).toBe('the folder says water heater: tank, electric');
    expect(ofKind([heater], { because: 'otherwise than that' })).toBe(
      'the folder says water heater: tank, electric',
    );
    expect(ofKind([roof], { verdict: 'wider' })).toBeUndefined();
    expect(ofKind([heater], {})).toBeUndefined();
  });

  it('of who did it is two facts', () => {
    const facts = ['a', 'b', 'c'].map(fact);
    expect(reason('who.licensed', { verdict: 'wider', facts })).toBe('a; b');
    expect(reason('who.licensed', { because: 'not of all', facts })).toBe('a; b');
    expect(reason('who.licensed', { verdict: 'wider' })).toBeUndefined();
    expect(reason('who.licensed', { facts })).toBeUndefined();
  });

  it('of a date is the deed that it was', () => {
    const because = 'the folder tells another deed';
    const painted = itemOf({ is: 'tub', did: 'painted', installed: '2025' });
    expect(reason('date.year', { because }, [painted])).toBe('tub: painted in 2025');
    expect(reason('date.year', { because }, items.slice(6))).toBe('furnace: moved');
    expect(reason('date.year', { because }, [])).toBeUndefined();
    expect(reason('date.year', {}, [painted])).toBeUndefined();
  });

  it('of a condition is the first thing that speaks against it, without its question', () => {
    const facts = [fact('Has water come in? Yes, once; in 2019')];
    expect(reason('condition.dry', { facts })).toBe('the folder lists: Yes, once');
    expect(reason('condition.dry', { facts: [fact('known and not mended: a leak. And more')] })).toBe(
      'the folder lists: a leak',
    );
    expect(reason('condition.dry', { verdict: 'wider', facts })).toBeUndefined();
    expect(reason('condition.dry', {})).toBeUndefined();
    expect(reason('condition.out-of-use', { facts })).toBeUndefined();
  });

  it('of permits is each that is not closed', () => {
    const facts = [
      fact('permit PL-26, water heater: closed 1 May 2026'),
      fact('permit, front steps, rail: the permit is still open'),
      fact('permit B-7, garage: the office found no permit'),
      fact('by the owner'),
    ];
    const told = 'the permit is still open: front steps, rail; the office found no permit: garage';
    expect(reason('permit', { because: 'not all', facts })).toBe(told);
    expect(reason('permit', { because: 'the folder says: open', facts })).toBe(told);
    expect(reason('permit', { because: 'not all', facts: facts.slice(0, 1) })).toBeUndefined();
    expect(reason('permit', { facts })).toBeUndefined();
  });

  it('of anything else is the judge’s', () => {
    expect(reason('count.bedrooms')).toBeUndefined();
  });
});
