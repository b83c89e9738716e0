/** The sheet for visitors: chosen, bounded, and in the words of the other editions. */
import { describe, expect, it } from 'vitest';
import { composePacket } from '../../src/packet/compose.js';
import type { PhotoOnDisk } from '../../src/packet/context.js';
import type { Packet } from '../../src/packet/packet.js';
import { MOST } from '../../src/packet/sections/visit.js';
import { idsIn } from '../../src/packet/words-of.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';
import { allWords, mark, packetOf, plain, rowsOf, text } from './packet-of.js';

const WEB = 'https://test-house.example/packet/';

const USUAL: PartialSpec = {
  house: {
    web: WEB,
    built: { is: 1948, from: 'county record', evidence: ['card'] },
    lot: 'not known',
    parking: 'a gravel drive',
    water: { is: 'public', evidence: ['card'] },
    sewer: 'septic',
  },
  measured: { by: 'owner', date: '2026-06-14', method: 'other' },
  levels: [{ id: 'main', name: 'Main level', grade: 'above', size: `30' x 20'` }],
  rooms: [{ id: 'bed', level: 'main', use: 'bedroom' }],
  people: [{ id: 'beck', name: 'Beck Electric', trade: 'electrician', licence: 'X-7', contact: '555' }],
  systems: [
    { id: 'fridge', is: 'refrigerator', model: 'MM-1', installed: 2015, kept: true, conveys: true },
    { id: 'ac', is: 'air conditioner, central', installed: 2010 },
    { id: 'roof', is: 'roof, architectural shingle', installed: '2019~', kept: true },
  ],
  work: [
    { id: 'panel', what: 'service panel', did: 'replaced', done: '2026-05', by: 'beck', permit: 'p-1' },
    { id: 'door', what: 'front door', did: 'painted', done: '2026-04', by: 'owner' },
  ],
  conditions: [{ what: 'the gate sticks', note: 'since the winter' }],
  permits: [{ id: 'p-1', number: 'EL-9', what: 'panel', state: 'final', final: '2026-06-01' }],
  documents: [{ id: 'card', what: 'county card', kind: 'record' }],
};

const visit = (spec: PartialSpec = USUAL): Packet => packetOf(spec, 'visit');
const many = <T>(count: number, make: (n: number) => T): T[] =>
  Array.from({ length: count }, (_, n) => make(n));

describe('the sheet for visitors', () => {
  it('has the first section on side one, and ages, work, what was left and what stays on side two', () => {
    expect(visit().sections.map((section) => section.id)).toEqual([
      'at-a-glance',
      'how-old',
      'what-was-done',
      'left-as-found',
      'terms',
    ]);
  });

  it('gives each key fact its own mark', () => {
    const packet = visit();
    expect(rowsOf(packet, 'glance').map((row) => [...row.cells.map(plain), mark(packet, row.id)])).toEqual([
      ['Built', '1948', 'Documented · record'],
      ['Finished above grade', '600 sq ft', 'Owner’s statement · measured on 14 June 2026'],
      ['Bedrooms', '1', 'Owner’s statement'],
      ['Baths', 'not described', 'Not known'],
      ['Lot', 'not known', 'Not known'],
      ['Parking', 'a gravel drive', 'Owner’s statement'],
      ['Water and sewer', 'public; septic', 'Documented in part · 1 of 2'],
    ]);
    expect(packet.keyFacts).toEqual([]);
  });

  it('says of a thing what the other editions say, with the same mark', () => {
    const [sheet, agent, buyer] = [visit(), packetOf(USUAL, 'agent'), packetOf(USUAL, 'buyer')];
    for (const id of ['short-lead', 'short-done']) {
      expect(text(sheet, id)).toBe(text(agent, id));
      expect(mark(sheet, id)).toBe(mark(agent, id));
    }
    for (const id of ['age-ac', 'age-roof', 'age-fridge']) expect(mark(sheet, id)).toBe(mark(agent, id));
    expect(mark(sheet, 'renewed-work-panel')).toBe(mark(agent, 'improvement-work-panel'));
    expect(mark(sheet, 'condition-1')).toBe(mark(buyer, 'condition-1'));
    expect(text(sheet, 'terms-stays')).toBe(text(agent, 'terms-stays'));
  });

  it('tells the age of what buyers ask about first, first', () => {
    expect(text(visit(), 'ages-list').split('\n')[0]).toContain('Roof');
    expect(text(visit(), 'ages-list')).toMatch(/Roof[\s\S]*Air conditioner[\s\S]*Refrigerator/);
  });

  it('names new things with what was done, and no coat of paint', () => {
    expect(text(visit(), 'all-renewed')).toContain(
      'Service panel, replaced. May 2026, by a hired electrician',
    );
    expect(text(visit(), 'all-renewed')).not.toContain('Front door');
    expect(text(visit(), 'done-list')).toContain('Front door painted');
  });

  it('holds no name of anybody, no model, no remark and no price', () => {
    const words = allWords(
      visit({ ...USUAL, dues: [{ to: 'The Association', amount: '145.00', per: 'month' }] }),
    );
    for (const secret of ['Beck', 'X-7', '555', 'MM-1', '145', 'Association', 'since the winter'])
      expect(words).not.toContain(secret);
  });

  it('has the address as a code and in words, on paper alone', () => {
    const found = visit().sections[0]?.blocks.find((one) => one.kind === 'drawing');
    expect(found).toMatchObject({ id: 'packet-address', only: 'print' });
    expect(found?.kind === 'drawing' && plain(found.caption)).toContain(WEB);
    expect(found?.kind === 'drawing' && found.alt).toContain(WEB);
  });

  it('has neither code nor words about it without an address, and a gap says which line to type', () => {
    const spec = { ...USUAL, house: { ...USUAL.house, web: undefined } };
    const packet = visit(spec);
    expect(packet.sections[0]?.blocks.map((one) => one.kind)).not.toContain('drawing');
    expect(allWords(packet)).not.toMatch(/scan/i);
    const gaps = (of: PartialSpec) => deriveTally(houseFrom(of), '2026-06-30').tally.gaps;
    const [gap, ...others] = gaps(spec).filter((one) => one.audiences.includes('visit'));
    expect(others).toEqual([]);
    expect(gap).toMatchObject({ path: ['house'] });
    expect(gap?.hint).toContain('  web: https://');
    expect(gaps(USUAL).filter((one) => one.audiences.includes('visit'))).toEqual([]);
  });

  it('shows the front of the house and no other photo', () => {
    const house = houseFrom({
      ...USUAL,
      photos: {
        K: { shows: 'kitchen', alt: 'A kitchen.', when: 'after' },
        F: { shows: 'the house from the street', alt: 'A house.', when: 'after' },
      },
    });
    const file = (id: string): PhotoOnDisk => ({
      id,
      width: 1600,
      height: 1200,
      takenAt: undefined,
      name: `${id}.jpg`,
      content: id,
    });
    const packet = composePacket({
      folder: 'test-house',
      house,
      tally: deriveTally(house, '2026-06-30').tally,
      edition: 'visit',
      photos: new Map([
        ['K', file('K')],
        ['F', file('F')],
      ]),
    });
    expect(packet.photos.map((one) => one.id)).toEqual(['F']);
  });
});

describe('a house with very much of everything', () => {
  const packet = visit({
    house: { web: WEB },
    levels: [{ id: 'main', name: 'Main level', grade: 'above', size: `90' x 90'` }],
    rooms: many(60, (n) => ({
      id: `room-${n}`,
      level: 'main',
      use: 'bedroom' as const,
      finishes: [{ on: 'walls' as const, what: 'paint', did: 'painted' as const, done: '2026-04' }],
    })),
    systems: many(40, (n) => ({
      id: `s-${n}`,
      is: n % 2 === 0 ? 'window' : 'door bell',
      installed: n % 3 === 0 ? ('not known' as const) : 2015,
    })),
    work: many(60, (n) => ({
      id: `w-${n}`,
      what: `${['pipe', 'outlet', 'tile', 'roof', 'rail'][n % 5]} ${n}`,
      did: 'replaced' as const,
      done: '2026-05',
    })),
    conditions: many(30, (n) => ({ what: `crack ${n}` })),
    conveys: many(40, (n) => ({ what: `thing ${n}`, stays: true })),
  });
  const items = (id: string): number => {
    const found = packet.sections.flatMap((section) => section.blocks).find((one) => one.id === id);
    return found?.kind === 'list' ? found.items.length : -1;
  };

  it('has so many of each list, and says how many more there are', () => {
    expect(items('all-renewed')).toBe(MOST.renewed);
    expect(items('ages-list')).toBe(MOST.ages);
    expect(items('condition-list')).toBe(MOST.conditions);
    expect(items('done-list')).toBeLessThanOrEqual(MOST.trades);
    expect(text(packet, 'ages-more')).toContain(`${40 - MOST.ages} more`);
    expect(text(packet, 'condition-more')).toContain(`${30 - MOST.conditions} more`);
    expect(text(packet, 'not-known')).toContain(`and ${14 - MOST.notKnown} more in the buyer packet`);
    expect(text(packet, 'terms-stays')).toContain(` and ${40 - MOST.terms} more.`);
    expect(text(packet, 'done-list')).toContain(`and ${12 - MOST.ofOneTrade} more`);
  });
});

describe('a house of which next to nothing is known', () => {
  it('says so in every section, and no more', () => {
    const words = allWords(visit({ house: { built: 'not known' } }));
    expect(words).toContain('when built is not known');
    expect(words).toContain('No system or appliance is described.');
    expect(words).toContain('No work is recorded.');
    expect(words).toContain('That is no finding that there is none.');
    expect(words).not.toMatch(/\bmore\b/);
  });
});

describe('ids that an owner may choose', () => {
  it.each(['list', 'more', 'none', 'others', 'several', 'all', 'drawing-1'])(
    'give no anchor twice: %s',
    (id) => {
      for (const edition of ['agent', 'visit', 'buyer', 'care', 'file'] as const) {
        const packet = packetOf(
          {
            house: { web: WEB },
            levels: [{ id, name: 'Main level', grade: 'above', size: `30' x 20'` }],
            systems: [
              { id, is: 'roof, architectural shingle', installed: 2015 },
              ...many(14, (n) => ({ id: `s-${n}`, is: 'furnace, gas', installed: 2015 })),
            ],
            work: [{ id, what: 'a door', did: 'new', done: '2026-05', by: 'owner' }],
            documents: [{ id: `${id}-paper`, what: 'a card', kind: 'record' }],
          },
          edition,
        );
        const ids = idsIn(packet);
        expect(
          ids.filter((one, i) => ids.indexOf(one) !== i),
          edition,
        ).toEqual([]);
      }
    },
  );
});
