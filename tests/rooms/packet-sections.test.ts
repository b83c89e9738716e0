/** What is worked out is printed: open readings, square metres, and what the lead rules ask. */
import { describe, expect, it } from 'vitest';
import type { PartialSpec } from './house-from.js';
import { allWords, mark, packetOf, rowsOf, text } from './packet-of.js';

describe('an open reading', () => {
  // A level within 2 ft of one below grade: the figures count it, word for word the rule would not.
  const SPLIT: PartialSpec = {
    levels: [
      { id: 'wing', name: 'Wing', grade: 'below', floor: "1'", size: "40' x 30'", ceiling: "8'" },
      { id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" },
    ],
  };

  it.each(['buyer', 'agent'] as const)('%s: says first what the figures use, and says it once', (edition) => {
    const packet = packetOf(SPLIT, edition);
    expect(text(packet, 'reading-1')).toContain('Counted here: 1,200 sq ft; by the other reading 0 sq ft.');
    expect(allWords(packet).split('Its floor is within 2 ft').length - 1).toBe(1);
    expect(allWords(packet)).not.toContain('from the rule can be read');
  });

  it('that is counted as nothing says so first', () => {
    const packet = packetOf({
      ...SPLIT,
      levels: SPLIT.levels?.slice(1) ?? [],
      structures: [
        {
          id: 'sun',
          name: 'Sunroom',
          is: 'sunroom',
          size: "10' x 10'",
          finished: 'yes',
          attached: 'yes',
        },
      ],
    } as PartialSpec);
    expect(text(packet, 'reading-1')).toContain('Counted here: 0 sq ft; by the other reading 100 sq ft.');
  });
});

describe('a house that was measured in metres', () => {
  const METRIC: PartialSpec = {
    measured: { by: 'owner', method: 'ansi-z765-2021' },
    levels: [{ id: 'main', name: 'Main level', grade: 'above', size: '12.2 m x 8 m', ceiling: '2.4 m' }],
  };

  it('has square metres behind square feet', () => {
    const packet = packetOf(METRIC);
    // 12.2 × 8 = 97.6 m² = 1050.6 sq ft (worked by hand).
    expect(text(packet, 'area-classes')).toContain('1,051 (97.6 m²)');
    expect(text(packet, 'short-size')).toContain('1,051 square feet (97.6 m²) finished above grade');
  });

  it('has metres on its plan', () => {
    const words = text(packetOf(METRIC), 'plan-main');
    expect(words).toContain('12.20 m');
    expect(words).not.toMatch(/′|ft$/m);
  });

  it('and one that was not has none', () => {
    const packet = packetOf({
      levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 26'" }],
    });
    expect(text(packet, 'area-classes')).not.toContain('m²');
    expect(text(packet, 'plan-main')).toContain('40′ 0″');
  });
});

describe('lead paint', () => {
  it('says in the notice what is known of the year', () => {
    const words = text(packetOf({ house: { built: '1970/1985' } }), 'notice-lead');
    expect(words).toContain('Built between 1970 and 1985, which may be before 1978');
    expect(words).not.toContain('is not known');
    expect(words).toContain('It belongs in an attachment');
  });

  const OLD: PartialSpec = {
    documents: [{ id: 'test', what: 'secret lead test', kind: 'report', private: true }],
    lead: { known: 'none known', reports: ['test'], 'pamphlet-given': '2026-06-22' },
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [{ id: 'bed', level: 'main', use: 'bedroom' }],
    work: [
      {
        id: 'trim',
        what: 'trim',
        did: 'painted',
        where: ['bed'],
        'paint-disturbed': '9 sq ft',
        done: '2026-04-01',
        by: 'owner',
      },
      { id: 'door', what: 'door', did: 'painted', trade: 'painting' },
    ],
  };

  it('tells the owner what is asked and what is recorded, and no private paper in what is published', () => {
    const packet = packetOf(OLD, 'file');
    const asked = rowsOf(packet, 'duties-asked').filter(({ id }) => id.startsWith('asked-us-lead-'));
    expect(asked).toHaveLength(6);
    expect(text(packet, 'duties-asked')).toContain('22 June 2026');
    expect(mark(packet, 'asked-us-lead-agents')).toBe('Not known');
    expect(mark(packet, 'asked-us-lead-pamphlet')).toBe('Owner’s statement');
    expect(text(packet, 'lead-duties')).toMatch(/stands under What a law asks of this sale/);
    expect(allWords(packetOf(OLD))).not.toContain('secret');
    expect(allWords(packetOf(OLD))).not.toMatch(/lead rules ask|What a law asks/);
  });

  it('says what to ask, what has no figure, and how long records are kept', () => {
    const packet = packetOf(OLD, 'file');
    expect(allWords(packetOf(OLD))).not.toContain('Something to ask about');
    expect(text(packet, 'lead-ask-1')).toMatch(/^Something to ask about: /);
    expect(text(packet, 'lead-ask-2')).toContain('one more piece of work');
    // Three years, 40 CFR 745.86.
    expect(text(packet, 'lead-jobs')).toContain('records are to be kept through 1 April 2029 at least');
  });

  it('tells none of it of a house that was built later, and no duties of a sale to the next owner', () => {
    expect(allWords(packetOf({ house: { built: 1990 } }))).not.toMatch(/lead rules ask|What a law asks/);
    expect(allWords(packetOf(OLD, 'care'))).not.toMatch(/lead rules ask|What a law asks/);
  });
});

describe('conditions', () => {
  it('say since when with one blank, whatever was typed', () => {
    const packet = packetOf({ conditions: [{ what: 'a crack', since: 'as  bought' }] });
    expect(text(packet, 'condition-1')).toBe('A crack. Since: as  bought.');
  });
});

describe('wood flooring', () => {
  it('says what defects would add, both ways of reckoning', () => {
    const packet = packetOf(
      {
        levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
        rooms: [
          {
            id: 'bed',
            level: 'main',
            use: 'bedroom',
            size: "20' x 21'",
            finishes: [{ on: 'floor', what: 'oak, solid wood', pattern: 'straight', done: '2026-04' }],
          },
        ],
      },
      'care',
    );
    expect(allWords(packet)).toMatch(/whether it is added or compounded isn’t settled/);
  });
});
