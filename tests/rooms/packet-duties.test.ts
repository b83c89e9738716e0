/** What the packets print of duties: notices for the buyer, the list for the owner. */
import { describe, expect, test } from 'vitest';
import type { EditionName, NoticeBlock, Packet } from '../../src/packet/packet.js';
import { citation } from '../../src/packet/sections/notices-citation.js';
import { federalDuties, stateDuties } from '../../src/tally/tables/duties.js';
import type { PartialSpec } from './house-from.js';
import { allWords, block, mark, packetOf, plain, rowsOf, text } from './packet-of.js';

const inState = (state: string, house: Partial<PartialSpec['house']> = {}): PartialSpec['house'] => ({
  built: 1990,
  bought: '2026-01-10',
  listed: '2026-06-01',
  ...house,
  address: { city: 'Fallow Mills', state },
});
const FLORIDA: PartialSpec = { house: inState('FL') };
const ids = (packet: Packet): string[] => packet.sections.flatMap(({ blocks }) => blocks.map(({ id }) => id));
const notice = (packet: Packet, id: string): NoticeBlock => {
  const found = block(packet, id);
  if (found.kind !== 'notice') throw new Error(`${id} is no notice`);
  return found;
};

describe('the buyer’s notices', () => {
  test('are word for word where a law fixes the words, with source, day and how closely they were read', () => {
    const packet = packetOf({ ...FLORIDA, duties: { association: 'yes', 'seaward-of-line': 'yes' } });
    for (const rule of stateDuties('FL')?.rules ?? []) {
      if (rule.notice === undefined) continue;
      const printed = notice(packet, `notice-${rule.id}`);
      const words = printed.paragraphs.map(plain);
      expect(words.slice(0, rule.notice.text.length), rule.id).toEqual(rule.notice.text);
      expect(words.at(-1), rule.id).toMatch(
        /no test result, no statement about this house and no legal advice/,
      );
      expect(plain(printed.source ?? []), rule.id).toMatch(
        rule.notice.read === 'from memory'
          ? /Florida Statutes.*Wording: from memory, read nowhere.*[^ ] Written down \d+ \w+ \d{4}\.$/
          : /Florida Statutes.*Wording: read [^ ].*[^ ] Last read \d+ \w+ \d{4}\.$/,
      );
    }
    expect(plain(notice(packet, 'notice-fl-coast').source ?? [])).toMatch(
      /Wording: from memory, read nowhere/,
    );
    expect(ids(packet)).not.toContain('notice-lead');
  });

  test('that hang on a fact nobody wrote are named, not printed; those that are surely not asked are neither', () => {
    expect(ids(packetOf(FLORIDA))).not.toContain('notice-fl-association');
    expect(text(packetOf(FLORIDA), 'notice-open')).toBe(
      'Not printed, since the record doesn’t say whether it is asked for: homeowners’ association disclosure summary and coastal property.',
    );
    const none = packetOf({ ...FLORIDA, duties: { association: 'no', 'seaward-of-line': 'no' } });
    expect(ids(none)).not.toContain('notice-open');
    expect(allWords(none)).not.toMatch(/homeowners’ association disclosure/i);
  });

  test('have the dues on record beside the blanks of an association’s summary', () => {
    const dues: PartialSpec['dues'] = [
      { to: 'Heron Lane Owners', amount: '64.00', per: 'month' },
      { to: 'Heron Lane Pool', amount: '90.00', per: 'half-year' },
    ];
    const words = notice(
      packetOf({ ...FLORIDA, dues, duties: { association: 'yes' } }),
      'notice-fl-association',
    ).paragraphs.map(plain);
    expect(words.at(-1)).toMatch(
      /Items 7 to 9.*Dues on record: \$?64\.00 a month to Heron Lane Owners and \$?90\.00 a half year to Heron Lane Pool\./,
    );
    expect(words[2]).toContain('$____ PER ____');
  });

  test('say whose rules were looked at, and that there are none for a state without', () => {
    expect(text(packetOf(FLORIDA), 'notice-state')).toMatch(
      /federal rules and rules of Florida.*No federal notice is printed here\. Of Florida, “Radon gas”, .* are printed above\..*Nothing here is legal advice\.$/,
    );
    expect(text(packetOf({ house: inState('CO') }), 'notice-state')).toMatch(
      /has none for CO\. Ask the agent or the state’s real estate commission.*legal advice\.$/,
    );
  });

  test('name those printed of each, and where the forms of a state come from that has none here', () => {
    const arizona = packetOf({
      house: inState('AZ', { built: 1948 }),
      pool: {},
      duties: { unincorporated: 'no', association: 'no' },
    });
    expect(text(arizona, 'notice-state')).toContain(
      'Of the federal rules, the Lead Warning Statement is printed above. No notice of Arizona is printed here; its forms come from the Arizona Department of Health Services and the agent.',
    );
    expect(notice(arizona, 'notice-pool').paragraphs.map(plain).at(-1)).toMatch(
      /own words and no state’s notice\.$/,
    );
    expect(
      text(packetOf({ house: inState('AZ'), duties: { pool: 'no', unincorporated: 'no' } }), 'notice-state'),
    ).toContain(
      'No federal notice is printed here. No notice of Arizona is printed here; its forms come from the state or the agent.',
    );
  });

  test('of lead go by the rule: none for a dwelling without a bedroom', () => {
    expect(ids(packetOf({ house: inState('OH', { built: 1950 }) }))).toContain('notice-lead');
    expect(ids(packetOf({ house: inState('OH', { built: 1950 }), duties: { studio: 'yes' } }))).not.toContain(
      'notice-lead',
    );
  });
});

const CALIFORNIA: PartialSpec = {
  house: inState('CA'),
  people: [{ id: 'firm', name: 'Some Electric', trade: 'electrician', contact: '555-0199' }],
  permits: [
    {
      id: 'p',
      number: 'EL-77',
      what: 'circuits',
      state: 'final',
      final: '2026-05-01',
      'taken-by': 'contractor',
    },
  ],
  work: [
    { id: 'a', what: 'kitchen circuits', did: 'new', by: 'firm', done: '2026-04', permit: 'p' },
    { id: 'b', what: 'shelves', did: 'new', by: 'owner', done: '2026-04' },
    { id: 'c', what: 'porch light', did: 'new', by: 'firm', done: '2026-05' },
  ],
};

describe('California’s list of work since the purchase', () => {
  test('has who, when and which permit, of hired work alone, and no contacts', () => {
    const packet = packetOf(CALIFORNIA);
    expect(rowsOf(packet, 'work-since-purchase').map(({ cells }) => cells.map(plain))).toEqual([
      ['Kitchen circuits', 'April 2026', 'Some Electric', 'EL-77'],
      ['Porch light', 'May 2026', 'Some Electric', 'none named'],
    ]);
    expect(allWords(packet)).not.toContain('555-0199');
  });

  test('keeps apart what may be older than the purchase, and leaves out what surely is', () => {
    const more: PartialSpec['work'] = [
      { id: 'd', what: 'cellar outlets', did: 'new', by: 'firm' },
      { id: 'e', what: 'attic fan', did: 'new', by: 'firm', done: '2024' },
    ];
    const work = [...(CALIFORNIA.work ?? []), ...more];
    const packet = packetOf({ ...CALIFORNIA, work });
    const what = (id: string): string[] => rowsOf(packet, id).map(({ cells }) => plain(cells[0] ?? []));
    expect(what('work-since-purchase')).toEqual(['Kitchen circuits', 'Porch light']);
    expect(what('work-perhaps-since')).toEqual(['Cellar outlets']);
    expect(ids(packetOf(CALIFORNIA))).not.toContain('work-perhaps-since');
    // Undated work alone doesn’t say that anybody was hired since.
    expect(ids(packetOf({ ...CALIFORNIA, work: more }))).not.toContain('work-since-purchase');
  });

  test('is not printed after eighteen months, nor elsewhere', () => {
    expect(ids(packetOf({ ...CALIFORNIA, house: inState('CA', { bought: '2024-12-30' }) }))).not.toContain(
      'work-since-purchase',
    );
    expect(ids(packetOf({ ...CALIFORNIA, house: inState('OH') }))).not.toContain('work-since-purchase');
  });
});

const OLD: PartialSpec = {
  house: inState('FL', { built: 1950 }),
  rooms: [{ id: 'bed', level: 'main', use: 'bedroom' }],
  levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
  documents: [{ id: 'signed', what: 'signed attachment', kind: 'other' }],
  duties: {
    contract: '2026-06-10',
    closing: '2026-06-29',
    'sinkhole-claim-paid': 'no',
    given: [
      { duty: 'us-lead-attachment', on: '2026-06-10', evidence: ['signed'], note: 'at the kitchen table' },
    ],
  },
};

describe('the owner’s list', () => {
  test('has what is asked, by when, what is recorded or missing, and until when papers are kept', () => {
    const packet = packetOf(OLD, 'file');
    const row = (id: string): string[] =>
      rowsOf(packet, 'duties-asked')
        .find((one) => one.id === `asked-${id}`)
        ?.cells.map(plain) ?? [];
    expect(row('us-lead-attachment')).toEqual([
      'Lead attachment to the contract',
      'With the contract, before the buyer is bound (contract 10 June 2026)',
      '10 June 2026, at the kitchen table',
      '29 June 2029',
    ]);
    expect(mark(packet, 'asked-us-lead-attachment')).toBe('Documented · signed attachment');
    expect(row('fl-radon')[2]).toBe('Missing: its day has passed and nothing is recorded');
    expect(mark(packet, 'asked-fl-radon')).toBe('Not known');
    expect(text(packet, 'duty-fl-flood')).toMatch(
      /form of 2025-10-01 with three questions: whether flooding is known/,
    );
    expect(text(packet, 'duties-not-list')).toMatch(/Paid sinkhole claim: no sinkhole claim was paid/);
    expect(text(packet, 'duties-intro')).toMatch(
      /no legal advice, and forms come from the state or the agent/,
    );
  });

  test('says what to type where a fact is missing', () => {
    const rows = rowsOf(packetOf(OLD, 'file'), 'duties-open').map(({ cells }) => cells.map(plain));
    expect(rows).toContainEqual([
      'Community development district',
      'Whether it lies in a community development district',
      'district: no, or what is so',
    ]);
  });

  test('tells a section that the title ends with once, and keeps the capital of a state’s name', () => {
    const printed = (state: string): string => allWords(packetOf({ house: inState(state) }, 'file'));
    expect(printed('NC')).toContain('N.C. General Statutes 47E-4.1; North Carolina General Assembly');
    expect(printed('CA')).toContain('California Civil Code 1102 et seq., 1102.6; California Legislature');
    expect(printed('TX')).toContain('Of whoever contracts: Texas licenses no general contractors');
    expect(printed('TX')).toContain('Of the seller: for a single dwelling: complete');
    for (const state of ['US', 'AZ', 'CA', 'FL', 'NC', 'NY', 'OH', 'TX'])
      for (const rule of (state === 'US' ? federalDuties() : stateDuties(state))?.rules ?? []) {
        expect(citation(rule.source)).not.toMatch(/(\b\d[\w.-]*\w), \1(?![\w.(-])/);
      }
    expect(
      citation({ title: 'California Civil Code 1102.6h', section: '1102.6h (AB 968)', publisher: 'X' }),
    ).toBe('California Civil Code 1102.6h (AB 968); X');
  });

  test('names for every rule its law and how closely it was read', () => {
    const packet = packetOf(OLD, 'file');
    const laws =
      packet.sections.find(({ id }) => id === 'duties')?.blocks.filter(({ kind }) => kind === 'record') ?? [];
    expect(laws.length).toBeGreaterThan(12);
    for (const { id } of laws)
      expect(text(packet, id), id).toMatch(
        /(Read in the publisher’s text|Read where others).*[^ ] Last read \d|From memory, read nowhere(?!.*[Ll]ast read).*[^ ] Written down \d/,
      );
    expect(laws.some(({ id }) => /read nowhere/.test(text(packet, id)))).toBe(true);
    expect(text(packet, 'duty-fl-not-material')).toMatch(/kept out of every packet/);
  });

  test('stands in the house file alone, and no other edition tells what is missing or when the contract was', () => {
    for (const edition of ['agent', 'visit', 'buyer', 'care'] as const satisfies readonly EditionName[]) {
      const packet = packetOf(OLD, edition);
      expect(packet.sections.map(({ id }) => id)).not.toContain('duties');
      const words = JSON.stringify(packet);
      for (const secret of [
        '10 June 2026',
        '2026-06-10',
        '29 June 2026',
        '2026-06-29',
        'kitchen table',
        'its day has passed',
      ])
        expect(words, `${edition}: ${secret}`).not.toContain(secret);
    }
  });
});
