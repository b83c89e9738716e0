/** A statement is documented only by a paper that can say it, and one thing has one mark wherever it is told. */
import { describe, expect, it } from 'vitest';
import type { PartialSpec } from './house-from.js';
import { mark, packetOf, rowsOf } from './packet-of.js';

const PAPERS: PartialSpec = {
  documents: [
    { id: 'receipt', what: 'receipt', kind: 'receipt' },
    { id: 'card', what: 'warranty card', kind: 'warranty' },
    { id: 'report', what: 'report', kind: 'report' },
  ],
  permits: [
    { id: 'final', what: 'rail', state: 'final' },
    { id: 'none', what: 'wiring', state: 'none-found' },
    { id: 'unknown', what: 'wiring', state: 'not-known' },
  ],
};

describe('a mark', () => {
  it.each(['none', 'unknown'])('takes no permit for a paper that nobody has: %s', (id) => {
    const packet = packetOf({ ...PAPERS, conditions: [{ what: 'old wiring', evidence: [id] }] });
    expect(mark(packet, 'condition-1')).toBe('Owner’s statement');
  });

  it('counts such a permit in no sum of several either', () => {
    const packet = packetOf({
      ...PAPERS,
      work: [
        { id: 'a', what: 'wiring', did: 'new', evidence: ['none'] },
        { id: 'b', what: 'rail', did: 'new', evidence: ['report'] },
      ],
    });
    expect(mark(packet, 'short-done')).toBe('Documented in part · 1 of 2');
  });

  it('is the same for one improvement in every list that tells of it', () => {
    const spec: PartialSpec = {
      ...PAPERS,
      work: [{ id: 'rail', what: 'handrail', did: 'new', safety: true, permit: 'final' }],
    };
    const buyer = packetOf(spec);
    const marks = [
      mark(buyer, 'done-work-rail'),
      mark(buyer, 'safety-work-rail'),
      mark(buyer, 'short-done'),
      mark(packetOf(spec, 'agent'), 'improvement-work-rail'),
    ];
    expect(new Set(marks)).toEqual(new Set(['Documented · permit']));
  });

  it('of a finish counts its permit in the rooms as in what was done', () => {
    const packet = packetOf({
      ...PAPERS,
      levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
      rooms: [
        {
          id: 'hall',
          level: 'main',
          use: 'hall',
          finishes: [{ on: 'floor', what: 'oak', done: '2026-04', permit: 'final' }],
        },
      ],
    });
    expect(mark(packet, 'finish-hall-0')).toBe('Documented · permit');
    expect(mark(packet, 'done-surfaces-hall-1')).toBe('Documented · permit');
  });
});

describe('a receipt or permit for a system', () => {
  const system = (evidence: string[], did?: 'removed'): PartialSpec => ({
    ...PAPERS,
    systems: [
      {
        id: 'fridge',
        is: 'refrigerator',
        conveys: 'yes',
        warranty: { until: '2032-04' },
        evidence,
        ...(did === undefined ? {} : { did }),
      },
    ],
  });

  it.each(['conveys-fridge', 'warranty-1'])('documents no promise about it: %s', (id) => {
    expect(mark(packetOf(system(['receipt', 'final'])), id)).toBe('Owner’s statement');
    expect(mark(packetOf(system(['receipt', 'card'])), id)).toBe('Documented · warranty');
  });

  it('that was taken out says nothing of what stays', () => {
    const packet = packetOf({
      ...system([], 'removed'),
      conveys: [{ what: 'bench', stays: 'yes' }],
    });
    expect(rowsOf(packet, 'conveys').map((row) => row.id)).toEqual(['conveys-1']);
  });
});

describe('alarms', () => {
  const HOUSE: PartialSpec = {
    ...PAPERS,
    levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
    rooms: [
      { id: 'hall', level: 'main', use: 'hall' },
      { id: 'bed', level: 'main', use: 'bedroom' },
      { id: 'kitchen', level: 'main', use: 'kitchen' },
    ],
    systems: [{ id: 'furnace', is: 'heat pump', fuel: 'electric' }],
  };

  it('one with a paper documents itself and not the count', () => {
    const packet = packetOf({
      ...HOUSE,
      alarms: [
        { is: 'smoke', where: 'hall', evidence: ['report'] },
        { is: 'smoke', where: 'bed' },
      ],
    });
    expect(mark(packet, 'alarms-count')).toBe('Documented in part · 1 of 2');
    expect(rowsOf(packet, 'alarm-places').map((row) => mark(packet, row.id))).toEqual([
      'Owner’s statement',
      'Documented · report',
    ]);
  });

  it('that stand where none is looked for are recorded all the same', () => {
    const packet = packetOf({ ...HOUSE, alarms: [{ is: 'carbon-monoxide', where: 'kitchen' }] });
    const [other] = rowsOf(packet, 'alarm-places').filter((row) => row.id === 'alarm-other-1');
    expect(other?.cells.map((cell) => cell.map((run) => run.text).join(''))).toEqual([
      'Also recorded: kitchen',
      'carbon monoxide',
      'carbon monoxide',
      'no date read',
    ]);
  });
});

describe('paint disturbed by several pieces of work', () => {
  it('is documented as far as each piece is', () => {
    const packet = packetOf({
      ...PAPERS,
      levels: [{ id: 'main', name: 'Main level', grade: 'above' }],
      rooms: [{ id: 'bed', level: 'main', use: 'bedroom' }],
      work: [
        {
          id: 'a',
          what: 'trim',
          did: 'painted',
          where: ['bed'],
          'paint-disturbed': '3 sq ft',
          done: '2026-04-01',
          evidence: ['report'],
        },
        {
          id: 'b',
          what: 'door',
          did: 'painted',
          where: ['bed'],
          'paint-disturbed': '2 sq ft',
          done: '2026-04-05',
        },
      ],
    });
    expect(mark(packet, 'lead-job-1')).toBe('Documented in part · 1 of 2');
  });
});

describe('the declaration', () => {
  const MEASURED: PartialSpec = {
    ...PAPERS,
    measured: { by: 'owner', method: 'ansi-z765-2021', date: '2026-06-14', evidence: ['report'] },
    levels: [{ id: 'main', name: 'Main level', grade: 'above', size: "40' x 30'", ceiling: "8'" }],
  };

  it('is documented only where it says who measured', () => {
    for (const edition of ['buyer', 'agent'] as const)
      expect(mark(packetOf(MEASURED, edition), 'declaration')).toBe('Documented · report');
    const packet = packetOf(MEASURED);
    const section = packet.sections.find((one) => one.id === 'size');
    const rest = section?.blocks.filter((one) => /^declaration-/.test(one.id)) ?? [];
    expect(rest.length).toBeGreaterThan(1);
    expect(rest.map((one) => one.kind)).toEqual(rest.map(() => 'paragraph'));
  });

  it('is the owner’s own where no paper is behind it, said once', () => {
    const packet = packetOf({
      ...MEASURED,
      measured: { by: 'owner', method: 'ansi-z765-2021', date: '2026-06-14' },
    });
    expect(mark(packet, 'short-size')).toBe('Owner’s statement · measured on 14 June 2026');
  });
});
