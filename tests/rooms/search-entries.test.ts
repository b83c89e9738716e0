/** The search of the terminal and of the pages: spoken questions, both spellings, slips of the keys, and inert data. */
import { runInNewContext } from 'node:vm';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Find, openSearch, type SearchEntry } from '../../src/packet/answers/find-entries.js';
import { searchDataOf } from '../../src/packet/answers/search-entries.js';
import { composePacket } from '../../src/packet/compose.js';
import type { Packet } from '../../src/packet/packet.js';
import { searchDataScript } from '../../src/web/search-data.js';
import { demoOrder, SPOKEN } from './ask-house.js';
import { packetOf } from './packet-of.js';

const findIn = (packet: Packet): Find<SearchEntry> => {
  const { entries, words } = searchDataOf(packet);
  return openSearch(entries, words);
};

describe.each(['quarry-road', 'larkspur-court'])('in the packet of %s', (house) => {
  let find: Find<SearchEntry>;
  let packet: Packet;
  const titles = (asked: string): string[] => find(asked).map(({ entry }) => entry.title);

  beforeAll(async () => {
    packet = composePacket(await demoOrder(house));
    find = findIn(packet);
  });

  it.each(SPOKEN)('“%s” finds its question first', (asked, first) => {
    expect(titles(asked)[0]).toMatch(first);
  });

  it('finds the ages of both heaters first', () => {
    expect(titles('how old is the heater').slice(0, 2).join(' ')).toMatch(/water heater/);
    expect(titles('how old is the heater').slice(0, 2).join(' ')).toMatch(/heating|heat pump/);
  });

  it.each([
    ['aluminum wiring', 'aluminium wiring'],
    ['basement', 'cellar'],
    ['paint colors', 'paint colours'],
    ['mold', 'mould'],
    ['licensed electrician', 'licenced electrician'],
    ['galvanized pipes', 'galvanised pipes'],
    ['breaker box', 'panel'],
  ])('finds the same for “%s” and “%s”', (one, other) => {
    expect(titles(one).length).toBeGreaterThan(0);
    expect(titles(one).slice(0, 2)).toEqual(titles(other).slice(0, 2));
  });

  it.each([
    ['roofe age', /roof/i],
    ['termits', /termite/i],
    ['furnance', /heat/i],
    ['refrigirator', /refrigerator|What stays/i],
    ['warr', /warrant/i],
  ])('forgives “%s”', (asked, first) => {
    expect(titles(asked)[0]).toMatch(first);
  });

  it.each([
    '',
    '   ',
    '?!',
    'how is the',
    'zebra opera',
    'how old is the zeppelin',
    'is the property haunted',
  ])('finds nothing for “%s”', (asked) => {
    expect(titles(asked)).toEqual([]);
  });

  it.each(
    house === 'quarry-road'
      ? [
          ['does the garage door opener work?', 'Garage door opener does not run (as bought).'],
          ['will the fridge stay', 'Stays: refrigerator.'],
          ['who did the electrical work', 'Electrical: by the owner (1), by Ridge Street Electric (2).'],
          ['is the bathtub original', /^(Tub refinished\. 8 May 2026|.*cast iron)/],
        ]
      : [
          [
            'does the water softener work',
            'Water softener is bypassed and was not tried (garage, as bought).',
          ],
          ['do the washer and dryer come with it', 'Stays: clothes washer; clothes dryer.'],
          ['why did you redo the primary bath', /^No reason is written down for: .*primary bath\.$/],
          ['is the bathtub original', /Fiberglass tub and surround, as found/],
        ],
  )('answers “%s” with its own part alone', (asked, told) => {
    const [first] = find(String(asked));
    if (typeof told === 'string') expect(first?.entry.text).toBe(told);
    else expect(first?.entry.text).toMatch(told);
  });

  it('finds what stands outside of the questions, too', () => {
    expect(find(house === 'quarry-road' ? 'workbench' : 'citrus').map(({ entry }) => entry.kind)).toContain(
      'fact',
    );
  });

  it('gives the same data twice', async () => {
    expect(searchDataScript(composePacket(await demoOrder(house)))).toBe(searchDataScript(packet));
  });
});

it('does nothing with patterns that a question may hold', () => {
  const packet = packetOf({ conditions: [{ what: 'a (loose) tread on the stairs' }] });
  const find = findIn(packet);
  expect(find('loose tread').map(({ entry }) => entry.text)[0]).toContain('tread');
  expect(find('(.*+?^$|[\\]{})')).toEqual([]);
  expect(find('.*')).toEqual([]);
  // Signs beside a word change nothing of what is found.
  expect(find('(loose) tread.* [a-z]{9}?')[0]?.entry).toEqual(find('loose tread')[0]?.entry);
});

describe('a fact with markup in it', () => {
  const evil = '</script><img src=x onerror=alert(1)> \u2028\u2029 <!-- & "quoted" \\ `x`';
  const packet = packetOf({
    conditions: [{ what: `a crack ${evil}` }],
    answers: [{ ask: `Is ${evil} there?`, answer: evil }],
  });
  const script = searchDataScript(packet);

  it('can’t end the script that carries it, nor a line of it', () => {
    expect(script).toContain('onerror');
    expect(script).not.toMatch(/[<>&\u2028\u2029]/u);
    expect(script.split('\n')).toHaveLength(2);
  });

  it('comes back as it was written', () => {
    const world: { sillplateSearchData?: { entries: SearchEntry[] } } = {};
    runInNewContext(script, world);
    const told = (world.sillplateSearchData?.entries ?? []).map(({ title }) => title).join('\n');
    expect(told).toContain('</script><img src=x onerror=alert(1)>');
  });
});
