/** Sentences that came out wrong once. */
import { describe, expect, it } from 'vitest';
import { isAsked } from '../../src/packet/age-words.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { allWords, packetOf, text } from './packet-of.js';

const lead = (spec: PartialSpec): string => text(packetOf(spec), 'short-lead');
const fact = (spec: PartialSpec, id: string): string | undefined =>
  packetOf(spec).keyFacts.find((one) => one.id === id)?.value;

describe('in short', () => {
  it.each([
    ['1948', 'A house of 1948.'],
    ['1948~', 'A house of about 1948.'],
    ['1970/1985', 'A house, built between 1970 and 1985.'],
    ['1969/1970', 'A house, built in 1969 or 1970.'],
    ['../1970', 'A house, built in 1970 or before.'],
  ])('says when it was built: %s', (built, words) => {
    const kind = 'detached' as const;
    expect(lead({ house: { built, kind } })).toContain(words);
  });

  it.each([
    ['2026-02-17', 'Bought on 17 February 2026.'],
    ['2026-02', 'Bought in February 2026.'],
    ['2019~', 'Bought about 2019.'],
    ['2015/2019', 'Bought between 2015 and 2019.'],
  ])('says when it was bought: %s', (bought, words) => {
    expect(lead({ house: { bought } })).toContain(words);
  });

  it.each([
    ['Cellar', 'with a cellar'],
    ['Unfinished basement', 'with an unfinished basement'],
    ['Lower level', 'with a level below grade'],
  ])('calls a level below grade a cellar only where its name does: %s', (name, words) => {
    expect(lead({ levels: [{ id: 'low', name, grade: 'below' }] })).toContain(words);
  });

  it('does not count what nobody described', () => {
    expect(fact({}, 'key-bedrooms')).toBe('not described');
    const spec: PartialSpec = {
      levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
      rooms: [{ id: 'kitchen', level: 'main', use: 'kitchen' }],
    };
    expect(fact(spec, 'key-bedrooms')).toBe('not described');
  });

  it('says of known conditions that there are some, never that there are none', () => {
    const work = [{ id: 'rail', what: 'handrail', did: 'new' as const }];
    const without = text(packetOf({ work }), 'short-done');
    expect(without).toMatch(/^One thing was done: 1 /);
    expect(without).not.toContain('known condition');
    expect(text(packetOf({ work, conditions: [{ what: 'a crack' }] }), 'short-done')).toContain(
      'One known condition was left as found.',
    );
  });
});

describe('papers and people', () => {
  it('counts one receipt as one', () => {
    const packet = packetOf({ documents: [{ id: 'a', what: 'receipt', kind: 'receipt' }] });
    expect(text(packet, 'documents-priced')).toMatch(/^One receipt or invoice is on file/);
  });

  it.each([
    ['Plumber', 'by a hired plumber'],
    ['master electrician', 'by a hired master electrician'],
    ['HVAC technician', 'by a hired HVAC technician'],
    ['floor', 'by a hired firm (floor)'],
    ['plaster', 'by a hired firm (plaster)'],
    ['timber', 'by a hired firm (timber)'],
  ])('takes only a person for a person: %s', (trade, words) => {
    const packet = packetOf(
      {
        people: [{ id: 'beck', name: 'Beck', trade }],
        work: [{ id: 'w', what: 'floor', did: 'repaired', by: 'beck' }],
      },
      'agent',
    );
    expect(allWords(packet)).toContain(words);
  });
});

describe('warranties', () => {
  it('are printed as their end was written', () => {
    const packet = packetOf({
      systems: [{ id: 'roof', is: 'roof', warranty: { until: '2030~' } }],
    });
    expect(text(packet, 'warranties')).toContain('about 2030');
    expect(text(packet, 'warranties')).not.toContain('2031');
  });
});

describe('systems that are asked for first', () => {
  it.each([
    ['electrical panel', true],
    ['panel, 200 A', true],
    ['solar panels', false],
    ['panels, solar', false],
    ['roof, shingle', true],
    ['roof vent', false],
    ['range, gas', true],
    ['range hood', false],
    ['sump pump', false],
  ])('%s: %s', (is, asked) => {
    const [system] = houseFrom({ systems: [{ id: 'one', is }] }).systems;
    expect(system && isAsked(system)).toBe(asked);
    const packet = packetOf({ systems: [{ id: 'one', is, installed: '2019' }] }, 'agent');
    expect(allWords(packet).includes('Also described')).toBe(!asked);
    if (is.includes('solar')) expect(allWords(packet)).not.toContain('How old:');
  });
});
