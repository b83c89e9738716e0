/** What of a house an edition may know. */
import { describe, expect, it } from 'vitest';
import { composePacket } from '../../src/packet/compose.js';
import { EDITIONS, houseFor } from '../../src/packet/edition-house.js';
import type { EditionName, Packet } from '../../src/packet/packet.js';
import { wordsOf } from '../../src/packet/words-of.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const NAMES = Object.keys(EDITIONS) as EditionName[];
const PUBLISHED = NAMES.filter((name) => name !== 'file');

const SPEC: PartialSpec = {
  house: {
    address: { street: '12 Row', city: 'Fallow Mills', state: 'OH', zip: '44999', county: 'Fallow County' },
    parcel: '31-07',
  },
  people: [{ id: 'beck', name: 'Beck Electric', trade: 'electrician', contact: '555-0190' }],
  systems: [
    { id: 'wh', is: 'water heater', model: 'E50', label: { serial: 'X26' }, made: '2026-01', by: 'beck' },
  ],
  documents: [
    { id: 'card', what: 'county card', kind: 'record', file: 'card.pdf', kept: 'binder' },
    { id: 'letter', what: 'a private letter', kind: 'letter', private: true },
    { id: 'receipt', what: 'receipt of the shop', kind: 'receipt' },
    { id: 'bill', what: 'bill of the firm', kind: 'invoice' },
  ],
  photos: {
    shown: { shows: 'kitchen', alt: 'A kitchen.' },
    hidden: { shows: 'safe', alt: 'A safe.', private: true },
    wordless: { shows: 'cellar' },
    held: { shows: 'attic', alt: 'An attic.', 'not-before': '2026-07-01' },
    'held-a-month': { shows: 'attic', alt: 'An attic.', 'not-before': '2026-07' },
    'held-for-ever': { shows: 'attic', alt: 'An attic.', 'not-before': '2026-06-01/..' },
    freed: { shows: 'attic', alt: 'An attic.', 'not-before': '2026-06' },
  },
  'private-notes': ['a note'],
};

const houseOf = (edition: EditionName, show: 'full' | 'street-withheld' | 'city-only' = 'full') => {
  const house = houseFrom(SPEC);
  return houseFor(
    { ...house, house: { ...house.house, address: { ...house.house.address, show } } },
    edition,
    '2026-06-30',
  );
};

function packetOf(edition: EditionName, spec: PartialSpec = SPEC): Packet {
  const house = houseFrom(spec);
  const { tally } = deriveTally(house, '2026-06-30');
  return composePacket({ folder: 'test-house', house, tally, edition, photos: new Map() });
}

describe('an edition', () => {
  it.each(PUBLISHED)('%s has no contacts, notes, parcel, private papers, prices or file names', (edition) => {
    const house = houseOf(edition);
    expect(house.people.flatMap((person) => person.contact ?? [])).toEqual([]);
    expect(house['private-notes']).toEqual([]);
    expect(house.house.parcel).toBeUndefined();
    expect(house.documents.map((one) => one.id)).toEqual(['card']);
    expect(house.documents[0]?.file).toBeUndefined();
    expect(house.documents[0]?.kept).toBeUndefined();
    expect(Object.keys(house.photos)).toEqual(['shown', 'freed']);
  });

  it('file has everything', () => {
    expect(houseOf('file')).toEqual(houseFrom({ ...SPEC, house: { ...SPEC.house } }));
  });

  it.each([
    ['agent', [], false],
    ['visit', [], false],
    ['buyer', ['Beck Electric'], false],
    ['care', ['Beck Electric'], true],
    ['file', ['Beck Electric'], true],
  ] as const)('%s names people %j, serial and model numbers: %s', (edition, people, serials) => {
    const house = houseOf(edition);
    expect(house.people.map((person) => person.name)).toEqual(people);
    expect(house.systems[0]?.model !== undefined).toBe(serials);
    expect(house.systems[0]?.label !== undefined).toBe(serials);
  });

  it('lets only the sheet for visitors know the web address, besides the house file', () => {
    const web = 'https://test-house.example/packet/';
    const house = houseFrom({ house: { web } });
    const knowing = NAMES.filter((edition) => houseFor(house, edition, '2026-06-30').house.web === web);
    expect(knowing).toEqual(['visit', 'file']);
  });

  it.each([
    ['full', ['12 Row', '44999', 'Fallow County']],
    ['street-withheld', [undefined, undefined, 'Fallow County']],
    ['city-only', [undefined, undefined, undefined]],
  ] as const)('shows as much of the address as is wanted: %s', (show, [street, zip, county]) => {
    for (const edition of PUBLISHED) {
      const { address } = houseOf(edition, show).house;
      expect([address.street, address.zip, address.county]).toEqual([street, zip, county]);
    }
    expect(houseOf('file', show).house.address.street).toBe('12 Row');
  });
});

describe('a packet', () => {
  it.each(NAMES)(
    '%s has its title, a digest in three groups, and a section in every place of its contents',
    (edition) => {
      const packet = packetOf(edition);
      expect(packet.edition.title).toBe(EDITIONS[edition].title);
      expect(packet.digest).toMatch(/^[0-9a-f]{4}( [0-9a-f]{4}){2}$/u);
      expect(packet.sections.map((section) => section.id)).toEqual([
        ...new Set(packet.sections.map((section) => section.id)),
      ]);
      expect(
        packet.sections.every((section) => /^[a-z0-9-]+$/u.test(section.id) && section.title !== ''),
      ).toBe(true);
      expect(packet.standing).toContain('no inspection');
    },
  );

  it('of the agent is one page, of visitors one leaf, the others have a page a section', () => {
    expect(NAMES.map((name) => packetOf(name).arrangement)).toEqual([
      'one-page',
      'two-sides',
      'page-per-section',
      'page-per-section',
      'page-per-section',
    ]);
  });

  it('has another digest for any change in what it says, and the same for one in what it may not say', () => {
    const digest = (spec: PartialSpec): string => packetOf('buyer', spec).digest;
    expect(digest({ ...SPEC, conditions: [{ what: 'a new crack' }] })).not.toBe(digest(SPEC));
    expect(digest({ ...SPEC, 'private-notes': ['another note'] })).toBe(digest(SPEC));
  });

  it('never says more than "a paper on file" of a paper that is kept back', () => {
    const spec: PartialSpec = {
      ...SPEC,
      conditions: [{ what: 'a crack in the slab', evidence: ['letter'] }],
    };
    for (const edition of PUBLISHED.filter((name) => name === 'buyer')) {
      const words = packetOf(edition, spec).sections.flatMap((section) => section.blocks.flatMap(wordsOf));
      expect(words.some((text) => text.includes('a paper on file'))).toBe(true);
      expect(words.filter((text) => text.includes('private letter'))).toEqual([]);
    }
  });
});
