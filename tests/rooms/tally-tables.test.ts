import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import {
  type AgeAgainstLives,
  compareWithLives,
  componentNames,
  findComponent,
  livesOf,
  printLife,
} from '../../src/tally/published-lives.js';
import { parseTable, readTable } from '../../src/tally/read-table.js';
import { leadAsbestosRules } from '../../src/tally/tables/lead-asbestos.js';
import { tradeQuantities } from '../../src/tally/tables/quantities.js';
import { safetyRules } from '../../src/tally/tables/safety.js';
import { timeFrameOf, updateWords } from '../../src/tally/tables/updates.js';

/** The component of that name; a test with a misspelt name fails. */
function component(name: string) {
  const found = findComponent(name);
  if (found === undefined) throw new Error(`no component is named ${name}`);
  return found;
}
const lives = (name: string) => livesOf(component(name));

describe('readTable', () => {
  const shape = z.strictObject({ sill: z.int() });

  test('says which file is broken, and how', () => {
    expect(() => parseTable('tables/made.yaml', 'sill: [', shape)).toThrow(/^tables\/made\.yaml is not YAML/);
    expect(() => parseTable('tables/made.yaml', 'sill: high', shape)).toThrow(
      /^tables\/made\.yaml does not have.*sill/s,
    );
    expect(() => parseTable('tables/made.yaml', 'sill: 44\nlintel: 80', shape)).toThrow(/lintel/);
    expect(() => readTable('no-such-table', shape)).toThrow('tables/no-such-table.yaml is missing');
  });

  test('keeps dates as text', () => {
    expect(parseTable('made', 'day: 2024-05-09', z.strictObject({ day: z.string() }))).toEqual({
      day: '2024-05-09',
    });
  });

  test('reads a table once and lets nobody change it', () => {
    expect(safetyRules()).toBe(safetyRules());
    expect(() => {
      safetyRules().escapeSill.figures.maxSillInches = 45;
    }).toThrow(TypeError);
  });

  test('every table of ours can be read', () => {
    const own = ['lead-asbestos', 'lives', 'quantities', 'safety', 'updates'];
    const there = readdirSync(new URL('../../src/tally/tables/', import.meta.url));
    expect(there).toEqual(expect.arrayContaining(own.map((name) => `${name}.yaml`)));
    for (const read of [leadAsbestosRules, tradeQuantities, safetyRules, updateWords])
      expect(read()).toBeTruthy();
    expect(componentNames().length).toBeGreaterThan(100);
  });
});

describe('component names', () => {
  test('are found whatever their capitals, punctuation and order', () => {
    for (const text of ['furnace, gas', 'Gas furnace', 'FURNACE (gas)', 'furnace-gas'])
      expect(findComponent(text)?.id).toBe('furnace-gas');
    expect(component('3-tab shingle roof').name).toBe('roof, three-tab shingle');
    expect(component('Smoke detector').name).toBe('smoke alarm');
    expect(component('LVP').name).toBe('floor, vinyl plank');
  });

  test('are never guessed', () => {
    for (const text of ['', '…', 'water heater', 'furnace', 'range', 'roof', 'pipes', 'wiring', 'window'])
      expect(findComponent(text), text).toBeUndefined();
  });

  test('each finds itself, and no text means two components', () => {
    const names = componentNames();
    expect(new Set(names).size).toBe(names.length);
    // The index throws on a text that two components claim, so that finding all is the proof.
    for (const name of names) {
      const found = component(name);
      expect(found.name).toBe(name);
      for (const alias of found.aliases) expect(findComponent(alias)?.id).toBe(found.id);
    }
    expect([...names].map((n) => n.toLowerCase())).toEqual([...names].map((n) => n.toLowerCase()).sort());
  });
});

describe('published lives', () => {
  const all = componentNames().map((name) => ({ name, found: lives(name) }));

  test('a component has rows, or none and a reason', () => {
    for (const { name, found } of all) {
      const bare = found.rows.length === 0;
      expect(found.span === undefined, name).toBe(bare);
      expect(found.reason !== undefined, name).toBe(bare);
    }
    expect(all.filter(({ found }) => found.rows.length === 0).length).toBeGreaterThan(15);
    expect(() => livesOf({ id: 'no-such-component' })).toThrow('no-such-component');
  });

  test('the file’s rows, sources and names fit together', () => {
    const text = readFileSync(new URL('../../src/tally/tables/lives.yaml', import.meta.url), 'utf8');
    const file = parseTable(
      'lives',
      text,
      z.looseObject({
        sources: z.record(z.string(), z.unknown()),
        names: z.record(
          z.string(),
          z.looseObject({ none: z.boolean().optional(), reason: z.string().optional() }),
        ),
        lives: z.array(z.looseObject({ component: z.string(), source: z.string() })),
      }),
    );
    for (const row of file.lives) {
      expect(file.sources, JSON.stringify(row)).toHaveProperty(row.source);
      expect(file.names, JSON.stringify(row)).toHaveProperty(row.component);
    }
    for (const id of Object.keys(file.sources))
      expect(
        file.lives.some((row) => row.source === id),
        id,
      ).toBe(true);
    for (const [id, name] of Object.entries(file.names)) {
      const has = file.lives.some((row) => row.component === id);
      expect(name.none === true, id).toBe(!has);
      expect(name.reason !== undefined, id).toBe(!has);
    }
    // One row for a component and source.
    expect(new Set(file.lives.map((row) => `${row.component} ${row.source}`)).size).toBe(file.lives.length);
  });

  test('each row says something, and only what its kind can say', () => {
    for (const { name, found } of all)
      for (const row of found.rows) {
        const text = `${name}, ${row.source.label}`;
        if (row.open) expect([row.high, row.upTo], text).toEqual([undefined, false]);
        else expect(row.high, text).toBeDefined();
        expect(row.low === undefined, text).toBe(row.upTo || (row.open && row.low === undefined));
        if (row.low !== undefined && row.high !== undefined)
          expect(row.low, text).toBeLessThanOrEqual(row.high);
        expect(row.source.read.length, text).toBeGreaterThan(20);
      }
  });

  test('tax periods, advice to replace and the table whose cover limits its use stay out', () => {
    const labels = new Set(all.flatMap(({ found }) => found.rows.map((row) => row.source.label)));
    expect([...labels].sort()).toEqual([
      'ASHRAE',
      'CO alarm makers',
      'DEER 2026',
      'DOE 2020',
      'DOE Scout',
      'EIA 2023',
      'HUD CNA',
      'Inspectors’ chart',
      'NAHB 1997',
      'NAHB 2007',
      'NFPA 72',
    ]);
  });

  // Spans worked out by hand over the rows that were read, by component.
  test.each([
    ['water heater, tank, gas', '10 to 25 years'],
    ['water heater, tank, electric', '10 to 15.1 years'],
    ['water heater, tankless', '20 years or longer'],
    ['air conditioner, central', '8 to 18 years'],
    ['heat pump, air source', '15 to 23 years'],
    ['furnace, gas', '15 to 30 years'],
    ['refrigerator', '9 to 17 years'],
    ['dishwasher', '9 to 15 years'],
    ['range, gas', '15 to 19 years'],
    ['range, electric', '13 to 17 years'],
    ['clothes washer', '5 to 15 years'],
    ['clothes dryer', '10 to 14 years'],
    ['roof, asphalt shingle', '15 to 30 years'],
    ['roof, architectural shingle', '15 to 30 years'],
    ['cabinets, kitchen', '15 to 50 years'],
    ['floor, vinyl sheet', '25 to 50 years'],
    ['countertop, laminate', '10 to 30 years'],
    ['paint, exterior', '7 years or longer'],
    ['GFCI receptacle', 'up to 30 years'],
    ['fence, vinyl', 'as long as the house'],
    ['thermostat', '35 years'],
  ])('%s: %s', (name, words) => {
    const { span } = lives(name);
    expect(span && printLife(span)).toBe(words);
  });

  test.each([
    'floor, vinyl plank',
    'mini-split',
    'septic system',
    'pipes, polybutylene',
    'pipes, galvanised',
    'pipes, CPVC',
  ])('%s: no published life, no figure', (name) => {
    const found = lives(name);
    expect(found).toEqual({ rows: [], span: undefined, reason: expect.stringMatching(/\w/) });
    expect(found.reason).not.toMatch(/\d/);
    expect(compareWithLives({ youngestMonths: 60, oldestMonths: 60 }, found).words).toBe('not known');
  });

  test('rows are printed in their own kind of words', () => {
    const printed = lives('cabinets, kitchen').rows.map((row) => `${row.source.label}: ${printLife(row)}`);
    expect(printed).toEqual([
      'NAHB 2007: up to 50 years',
      'NAHB 1997: 15 to 20 years',
      'Inspectors’ chart: 50 years',
    ]);
    expect(lives('toilet').rows.map(printLife)).toEqual([
      'as long as the house',
      '50 years',
      '100 years or longer',
    ]);
    expect(printLife({ low: 14.5, high: 14.5, open: false })).toBe('14.5 years');
  });
});

describe('an age against published lives', () => {
  const at = (months: number) => ({ youngestMonths: months, oldestMonths: months });
  const words = (
    age: Parameters<typeof compareWithLives>[0],
    span: NonNullable<ReturnType<typeof lives>['span']>,
  ) => compareWithLives(age, { span }).words;
  const younger: AgeAgainstLives = 'younger than every published life';
  const within: AgeAgainstLives = 'within the published lives';
  const older: AgeAgainstLives = 'older than every published life';
  const tenTo25 = { low: 10, high: 25, open: false };

  test('both ends of the span are within it', () => {
    expect([119, 120, 300, 301].map((months) => words(at(months), tenTo25))).toEqual([
      younger,
      within,
      within,
      older,
    ]);
  });

  test('half years and tenths are met exactly', () => {
    // 14.5 years are 174 months; 15.1 years are 181.2, 7.3 are 87.6.
    const half = { low: 14.5, high: 14.5, open: false };
    expect([173, 174, 175].map((months) => words(at(months), half))).toEqual([younger, within, older]);
    const tenth = { low: 7.3, high: 15.1, open: false };
    expect([87, 88, 181, 182].map((months) => words(at(months), tenth))).toEqual([
      younger,
      within,
      within,
      older,
    ]);
  });

  test('nothing is older than a life without an end, or younger than one without a beginning', () => {
    expect(words(at(5000), { low: 20, high: undefined, open: true })).toBe(within);
    expect(words(at(5000), { low: 7, high: 10, open: true })).toBe(within);
    expect(words(at(0), { low: undefined, high: 30, open: false })).toBe(within);
    expect(words(at(361), { low: undefined, high: 30, open: false })).toBe(older);
  });

  test('“as long as the house” alone gives no figure to compare with', () => {
    expect(compareWithLives(at(60), lives('fence, vinyl')).words).toBe('not known');
  });

  test('a span over a boundary is within, and says that it straddles', () => {
    expect(compareWithLives({ youngestMonths: 110, oldestMonths: 125 }, { span: tenTo25 })).toEqual({
      words: within,
      straddles: true,
      ifYoungest: younger,
      ifOldest: within,
    });
    expect(compareWithLives({ youngestMonths: 290, oldestMonths: 310 }, { span: tenTo25 })).toEqual({
      words: within,
      straddles: true,
      ifYoungest: within,
      ifOldest: older,
    });
    expect(compareWithLives({ youngestMonths: 130, oldestMonths: 200 }, { span: tenTo25 }).straddles).toBe(
      false,
    );
    // 181.2 months lie between these two, though neither month is within.
    expect(words({ youngestMonths: 181, oldestMonths: 182 }, { low: 15.1, high: 15.1, open: false })).toBe(
      within,
    );
  });

  test('an age known at one end only answers where that end settles it', () => {
    expect(words({ youngestMonths: 301 }, tenTo25)).toBe(older);
    expect(words({ oldestMonths: 100 }, tenTo25)).toBe(younger);
    expect(words({ youngestMonths: 200 }, tenTo25)).toBe(within);
    expect(words({ youngestMonths: 60 }, tenTo25)).toBe('not known');
    expect(words({ oldestMonths: 400 }, tenTo25)).toBe('not known');
    expect(compareWithLives({}, { span: tenTo25 })).toEqual({
      words: 'not known',
      straddles: false,
      ifYoungest: 'not known',
      ifOldest: 'not known',
    });
  });

  test('agrees with fractions, for any life in tenths and any age', () => {
    const tenths = fc.integer({ min: 1, max: 1200 });
    fc.assert(
      fc.property(tenths, tenths, fc.boolean(), fc.nat(1500), fc.nat(50), (a, b, open, youngest, more) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const span = { low: low / 10, high: high / 10, open };
        // m / 12 years against low / 10 years, multiplied out.
        const expected = (m: number) =>
          m * 10 < low * 12 ? younger : m * 10 > high * 12 && !open ? older : within;
        const result = compareWithLives(
          { youngestMonths: youngest, oldestMonths: youngest + more },
          { span },
        );
        expect([result.ifYoungest, result.ifOldest]).toEqual([expected(youngest), expected(youngest + more)]);
        expect(result.straddles).toBe(result.ifYoungest !== result.ifOldest);
        expect(result.words).toBe(result.straddles ? within : result.ifYoungest);
      }),
      { seed: 6 },
    );
  });
});

describe('safety figures', () => {
  const rules = safetyRules();

  test('an escape opening is compared in tenths of a square inch', () => {
    const { minTenthsOfSquareInch, minTenthsOfSquareInchAtGrade, minHeightInches, minWidthInches } =
      rules.escapeOpening.figures;
    // 5.7 and 5.0 square feet of 144 square inches.
    expect(minTenthsOfSquareInch).toBe((57 * 1440) / 10);
    expect(minTenthsOfSquareInchAtGrade).toBe(5 * 1440);
    // A web page calls 34 by 24 inches enough; it is 816 square inches, 4.8 short.
    expect(34 * 24 * 10).toBeLessThan(minTenthsOfSquareInch);
    expect(20 * 41 * 10).toBeLessThan(minTenthsOfSquareInch);
    expect(20 * 42 * 10).toBeGreaterThanOrEqual(minTenthsOfSquareInch);
    expect(minHeightInches * minWidthInches * 10).toBeLessThan(minTenthsOfSquareInchAtGrade);
  });

  test('sixteenths are the fractions of the rule', () => {
    expect(rules.stairNewWork.figures.maxRiserSixteenths).toBe(7.75 * 16);
    expect(rules.stairNewWork.figures.maxSpreadSixteenths).toBe((3 / 8) * 16);
    expect(rules.poolBarrier.figures.latchGapSixteenths).toBe(16 / 2);
  });

  test('the looser rule for existing houses stays looser', () => {
    const { maintenanceStairs, handrailNewWork, guardNewWork } = rules;
    expect(maintenanceStairs.figures.overRisers + 1).toBeGreaterThan(handrailNewWork.figures.fromRisers);
    expect(maintenanceStairs.figures.minGuardInches).toBeLessThan(guardNewWork.figures.minHeightInches);
  });

  test('hotter water burns sooner', () => {
    const { burns, adviceFahrenheit } = rules.hotWater.figures;
    expect(burns.map(({ seconds }) => seconds)).toEqual([2, 6, 30, 300]);
    expect(burns.map(({ fahrenheit }) => fahrenheit)).toEqual([150, 140, 130, adviceFahrenheit]);
  });

  test('figures that nobody read are named, and exist', () => {
    const rows = { ...rules, ...leadAsbestosRules(), ...tradeQuantities() };
    for (const [key, row] of Object.entries(rows)) {
      for (const figure of row.remembered) expect(Object.keys(row.figures), key).toContain(figure);
      if (row.remembered.length > 0 || row.read === 'from memory')
        expect(row.how, key).toMatch(/from memory/i);
    }
    expect(rules.poolBarrier.remembered).toEqual(['highLatchInches']);
    expect(leadAsbestosRules().asbestosPresumed.read).toBe('from memory');
    expect(tradeQuantities().tileWaste.read).toBe('from memory');
  });

  test('every rule of safety has its caution', () => {
    for (const [key, row] of Object.entries({ ...rules, ...leadAsbestosRules() })) {
      expect(row.caution, key).toMatch(/[.!]$/);
      expect(`${row.rule} ${row.caution}`, key).not.toMatch(/up to code|code compliant|lead-free|is safe/i);
    }
  });
});

describe('lead and asbestos', () => {
  const rules = leadAsbestosRules();

  test('the Lead Warning Statement is the federal text, word for word', () => {
    // Copied a second time from EPA Form 9600-040 (OMB 2070-0151), 130 words.
    const federal = [
      'Every purchaser of any interest in residential real property on which a residential dwelling',
      'was built prior to 1978 is notified that such property may present exposure to lead from',
      'lead-based paint that may place young children at risk of developing lead poisoning.',
      'Lead poisoning in young children may produce permanent neurological damage, including',
      'learning disabilities, reduced intelligence quotient, behavioral problems, and impaired',
      'memory.',
      'Lead poisoning also poses a particular risk to pregnant women.',
      'The seller of any interest in residential real property is required to provide the buyer',
      'with any information on lead-based paint hazards from risk assessments or inspections in the',
      "seller's possession and notify the buyer of any known lead-based paint hazards.",
      'A risk assessment or inspection for possible lead-based paint hazards is recommended prior',
      'to purchase.',
    ].join(' ');
    const { statement } = rules.leadWarning.figures;
    expect(statement).toBe(federal);
    expect(statement).toHaveLength(877);
    expect(statement.split(' ')).toHaveLength(130);
  });

  test('the limits are the rule’s', () => {
    expect(rules.targetHousing.figures).toEqual({ builtBeforeYear: 1978, childUnderYears: 6 });
    expect(rules.leadTestPeriod.figures.days).toBe(10);
    expect(rules.leadDisclosureKept.figures.years).toBe(3);
    expect(rules.leadRecordsKept.figures.years).toBe(3);
    expect(rules.leadMinorRepair.figures).toMatchObject({
      insideSquareFeet: 6,
      outsideSquareFeet: 20,
      sameJobDays: 30,
    });
    expect(rules.asbestosPresumed.figures.installedThroughYear).toBe(1980);
  });
});

describe('quantities and update words', () => {
  test('published sums come out', () => {
    const { paintCoverage, floorWaste } = tradeQuantities();
    // A floor of 500 sq ft with 10 % is 550 sq ft on a flooring dealer’s page.
    expect((500 * (100 + floorWaste.figures.usualPercent)) / 100).toBe(550);
    // A how-to reference paints a 10 by 15 ft room with 8 ft walls, 400 sq ft, with one gallon: the upper label rate.
    expect((2 * (10 + 15) * 8) / paintCoverage.figures.labelsSquareFeet.high).toBe(1);
    expect(paintCoverage.figures.usualSquareFeet).toBe(350);
  });

  test('time frames change at 1, 6, 11 and 16 completed years', () => {
    // The wordings are the form’s; the boundaries are this project’s reading.
    const frames = [0, 1, 5, 6, 10, 11, 15, 16].map(timeFrameOf);
    expect(frames).toEqual([
      'less than one year ago',
      'one to five years ago',
      'one to five years ago',
      'six to ten years ago',
      'six to ten years ago',
      'eleven to fifteen years ago',
      'eleven to fifteen years ago',
      undefined,
    ]);
    expect(timeFrameOf(undefined)).toBe('timeframe unknown');
  });

  test('the classes are the form’s three words', () => {
    const { classes, timeFrames } = updateWords();
    expect(classes.list.map(({ word }) => word)).toEqual(['not updated', 'updated', 'remodeled']);
    expect(timeFrames.list.at(-1)?.toYears).toBe(timeFrames.lookBackYears);
    for (const [i, frame] of timeFrames.list.entries())
      expect(frame.fromYears).toBe(i === 0 ? 0 : (timeFrames.list[i - 1]?.toYears ?? 0) + 1);
  });
});
