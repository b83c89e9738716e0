/** Which statement of one packet is which of another, and where each is written. */
import { describe, expect, it } from 'vitest';
import { pairFacts, plainWords } from '../../src/packet/changes-pairs.js';
import { factPathOf } from '../../src/packet/changes-path.js';
import { maySayAgain } from '../../src/packet/changes-withheld.js';
import type { CollectedFact } from '../../src/packet/collect-facts.js';
import { houseFor } from '../../src/packet/edition-house.js';
import type { FactsFile, SaidFact } from '../../src/packet/facts-file.js';
import { whereTheyDiffer } from '../../src/packet/where-they-differ.js';
import { houseOf } from '../properties/made-house.js';
import { leastMs } from '../tools/least-ms.js';

const said = (id: string, says: string, more: Partial<SaidFact> = {}): SaidFact => ({
  id,
  section: 'Left as found',
  says,
  ...more,
});
const told = (was: readonly SaidFact[], is: readonly SaidFact[]) => {
  const { pairs, added, gone } = pairFacts(was, is);
  return {
    changed: pairs.filter((one) => one.was.says !== one.is.says).map((one) => [one.was.says, one.is.says]),
    paired: pairs.length,
    added: added.map(({ says }) => says),
    gone: gone.map(({ says }) => says),
  };
};

const CRACK = 'Garage floor has a crack from the door to the back wall.';
const GATE = 'The gate of the side yard sticks.';
const STAIN = 'Damp mark at the foot of the north-east corner.';

describe('pairing', () => {
  it('is not led astray by numbers that only count', () => {
    const was = [said('condition-1', CRACK), said('condition-2', GATE)];
    const is = [said('condition-1', STAIN), said('condition-2', CRACK), said('condition-3', GATE)];
    expect(told(was, is)).toEqual({ changed: [], paired: 2, added: [STAIN], gone: [] });
    expect(told(is, was)).toEqual({ changed: [], paired: 2, added: [], gone: [STAIN] });
  });

  it('finds a counted statement that changed and moved at once', () => {
    const changed = CRACK.replace('a crack', 'a wider crack');
    const was = [said('condition-1', CRACK), said('condition-2', GATE)];
    const is = [said('condition-1', STAIN), said('condition-2', changed), said('condition-3', GATE)];
    expect(told(was, is)).toEqual({ changed: [[CRACK, changed]], paired: 2, added: [STAIN], gone: [] });
  });

  it('takes one that shares nothing but the number for another', () => {
    expect(told([said('condition-1', CRACK)], [said('condition-1', STAIN)])).toEqual({
      changed: [],
      paired: 0,
      added: [STAIN],
      gone: [CRACK],
    });
  });

  it('knows a question by what is asked, and a named thing by its name, whatever they say', () => {
    const asked = (id: string, says: string): SaidFact => said(id, says, { about: 'How old is the roof?' });
    expect(told([asked('question-1', 'Not known.')], [asked('question-2', 'Laid in 2017.')]).changed).toEqual(
      [['Not known.', 'Laid in 2017.']],
    );
    expect(
      told([said('system-roof', 'Installed 2019')], [said('system-roof', 'tin, not known when')]).changed,
    ).toEqual([['Installed 2019', 'tin, not known when']]);
  });

  it('knows a photo by its picture, whatever number it has', () => {
    const photo = (id: string, says: string, picture: string): SaidFact => said(id, says, { picture });
    const was = [photo('photo-1', 'Hall', 'aa'), photo('photo-2', 'Kitchen', 'bb')];
    const is = [photo('photo-1', 'Kitchen', 'bb'), photo('photo-2', 'Bath', 'cc')];
    expect(told(was, is)).toEqual({ changed: [], paired: 1, added: ['Bath'], gone: ['Hall'] });
  });

  it('loses and doubles nothing, whatever it is given', () => {
    let state = 7;
    const next = (most: number): number => {
      state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
      return (state >> 8) % most;
    };
    for (let n = 0; n < 300; n++) {
      const make = (): SaidFact[] =>
        Array.from({ length: next(9) }, () =>
          said(
            `${['condition', 'system', 'photo'][next(3)]}-${next(4)}`,
            [CRACK, GATE, STAIN][next(3)] ?? '',
          ),
        );
      const [was, is] = [make(), make()];
      const { pairs, added, gone } = pairFacts(was, is);
      expect(new Set([...pairs.map((one) => one.is), ...added]).size).toBe(is.length);
      expect(new Set([...pairs.map((one) => one.was), ...gone]).size).toBe(was.length);
      expect(pairs.length + added.length).toBe(is.length);
    }
  });

  it('takes no time over a thousand statements that were all reworded', async () => {
    const text = (n: number, word: string): string =>
      `Crack ${n} beside pipe ${n * 7} of wall ${n % 13} in the cellar was ${word} by the owner in spring`;
    const was = Array.from({ length: 1000 }, (_, n) => said(`condition-${n + 1}`, text(n, 'seen')));
    const is = Array.from({ length: 1000 }, (_, n) =>
      said(`condition-${n + 2}`, text(n, 'filled and painted')),
    );
    const { pairs, added, gone } = pairFacts(was, is);
    // 7 s where words were counted anew for each two; the bound leaves room for a slow machine.
    expect(await leastMs(() => pairFacts(was, is), 3000)).toBeLessThan(3000);
    expect([pairs.length, added.length, gone.length]).toEqual([1000, 0, 0]);
    // A statement that shares more with another than with the first that is like enough is paired with that.
    const near = told(
      [said('condition-1', CRACK), said('condition-2', `${CRACK} It is dry.`)],
      [said('condition-9', `${CRACK} It is quite dry.`)],
    );
    expect(near.gone).toEqual([CRACK]);
  });

  it('takes no blank, quotation mark or dash for another word', () => {
    expect(plainWords('It’s  “so” – 8′\u00a06″')).toBe(plainWords(`It's "so" - 8' 6"`));
    expect(plainWords('2019')).not.toBe(plainWords('2017'));
  });
});

describe('old words', () => {
  const spec = (show: string, street = '9 Tannery Steps') =>
    houseOf({
      house: {
        name: 'Test Lane',
        address: { street, city: 'Fallow Mills', state: 'OH', show },
        kind: 'detached',
        built: 1985,
      },
    } as never);
  const says = (...texts: string[]): FactsFile => ({
    form: 'sillplate-facts-1',
    program: 'sillplate 0.0.1',
    house: { folder: 'test-lane', name: 'Test Lane', place: 'Fallow Mills, OH' },
    edition: 'buyer',
    title: 'Buyer packet',
    asOf: '2026-06-12',
    digest: '7f3a 91c2 0d4e',
    facts: texts.map((text, n) => said(`condition-${n + 1}`, text)),
  });
  const may = (text: string, show: string, ...now: string[]): boolean => {
    const whole = spec(show);
    return maySayAgain(whole, houseFor(whole, 'buyer', '2026-06-12'), says(...now))(text, []);
  };

  it('are said again where each of them is still said, whatever stands between them', () => {
    expect(may('The gate sticks.', 'full', 'Gate is mended.', 'Door sticks.')).toBe(true);
    expect(may('The gate sticks, says Zoe.', 'full', 'Gate is mended.', 'Door sticks.')).toBe(false);
    expect(may('open, not yet final', 'full', 'Gate')).toBe(true);
  });

  it('tell no sum or figure that is a part of another one', () => {
    expect(may('gate 412', 'full', 'Gate 1412 and 412.50')).toBe(false);
    expect(may('gate 412.50', 'full', 'Gate, 412 or 50')).toBe(false);
  });

  it('tell no street that is withheld, with its number or without, though its words stand in the packet', () => {
    const now = ['Gate: steps to the house.', 'The tannery behind it.'];
    expect(may('gate to Tannery Steps', 'street-withheld', ...now)).toBe(false);
    expect(may('gate to tannery-steps', 'city-only', ...now)).toBe(false);
    expect(may('gate to Tannery Steps', 'full', ...now)).toBe(true);
    expect(may('gate to the steps', 'street-withheld', ...now)).toBe(true);
  });

  it('of a correction are said, and the age that followed from them', () => {
    const whole = spec('full');
    const say = maySayAgain(whole, houseFor(whole, 'buyer', '2026-06-12'), says('Roof installed June 2017'));
    const correction = { before: 'June 2019', printed: 'June 2017' } as CollectedFact;
    expect(say('Roof installed June 2019: 6 to 7 years', [correction])).toBe(true);
    expect(say('Roof installed June 2019: 6 to 7 years', [])).toBe(false);
    expect(say('Roof installed June 2019 by Zoe', [correction])).toBe(false);
  });
});

describe('of long texts', () => {
  it('the words that differ are told with a few around them', () => {
    const text = (year: string): string =>
      `${'one two three four five six seven eight '.repeat(3)}${year} ${'end '.repeat(20)}`;
    const [was, is] = whereTheyDiffer(text('2019').trim(), text('2017').trim());
    expect(was).toBe('… three four five six seven eight 2019 end end end end end end …');
    expect(is).toBe(was.replace('2019', '2017'));
  });
});

describe('where a statement is written', () => {
  const house = houseOf({
    house: {
      name: 'Test Lane',
      address: { city: 'Fallow Mills', state: 'OH' },
      kind: 'detached',
      built: 1985,
      lot: '0.2 acre',
    },
    levels: [{ id: 'main', name: 'Main', grade: 'above', size: "30' x 20'" }],
    rooms: [
      { id: 'hall', name: 'Hall', level: 'main', use: 'hall', finishes: [{ on: 'floor', what: 'oak' }] },
    ],
    systems: [{ id: 'roof', is: 'roof, architectural shingle', installed: '2019' }],
    work: [{ id: 'drain', what: 'drain', did: 'replaced', done: '2025' }],
    conditions: [{ what: 'gate sticks' }],
    permits: [{ id: 'pl-1', what: 'drain', state: 'open' }],
  } as never);

  it.each([
    ['system-roof', ['systems', 0]],
    ['age-roof', ['systems', 0]],
    ['kept-system-roof', ['systems', 0]],
    ['done-work-drain', ['work', 0]],
    ['finish-hall-0', ['rooms', 0, 'finishes', 0]],
    ['room-hall-size', ['rooms', 0]],
    ['paper-pl-1', ['permits', 0]],
    ['condition-1', ['conditions', 0]],
    ['short-lot', ['house', 'lot']],
    ['key-built', ['house', 'built']],
    ['short-systems', undefined],
    ['condition-9', undefined],
    ['system-nobody', undefined],
  ])('is found for %s', (id, path) => expect(factPathOf(id, house)).toEqual(path));
});
