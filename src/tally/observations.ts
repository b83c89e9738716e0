/**
 * What was counted and taped where somebody can be hurt, beside the figure of a published rule.
 *
 * Every observation states both and defers to local code and a licensed inspection. None says that anything
 * is safe or meets a code.
 */
import type { FactPath } from '../diagnostics/fact-path.js';
import { SQUARE_INCH } from '../facts/floor-area.js';
import type { House, Room, RoomWindow, Stair, System } from '../facts/house.js';
import { INCH, type Length, printLength } from '../facts/length.js';
import { nameOf } from '../facts/place-name.js';
import { type SafetyRules, safetyRules } from './tables/safety.js';

export interface Observation {
  readonly id: string;
  readonly path: FactPath;
  readonly topic:
    | 'escape opening'
    | 'stair'
    | 'guard'
    | 'hot water'
    | 'relief pipe'
    | 'range'
    | 'pool barrier';
  readonly what: string;
  /** What was seen or measured. */
  readonly observed: string;
  /** The published figure it is set against. */
  readonly figure: string;
  /** Where the figure is from. */
  readonly source: string;
  /** How the two stand. `not recorded`: something the figure asks for was not measured. */
  readonly stands: 'at or within the figure' | 'outside the figure' | 'not recorded';
  readonly caution: string;
  readonly evidence: readonly string[];
}

interface Finding {
  readonly observed: string;
  readonly figure: string;
  readonly stands: Observation['stands'];
}

type Rule = SafetyRules[keyof SafetyRules];

function observe(
  base: {
    id: string;
    path: FactPath;
    topic: Observation['topic'];
    what: string;
    evidence: readonly string[];
  },
  rule: Rule,
  finding: Finding,
): Observation {
  const { title, section, edition } = rule.source;
  return { ...base, ...finding, source: `${title}, ${section} (${edition})`, caution: rule.caution };
}

const inches = (n: number): string => `${n} in`;
const atLeast = (length: Length, whole: number): boolean => length.units >= whole * INCH;
const atMost = (length: Length, whole: number): boolean => length.units <= whole * INCH;
const judged = (ok: boolean | undefined): Observation['stands'] =>
  ok === undefined ? 'not recorded' : ok ? 'at or within the figure' : 'outside the figure';

/** All parts must hold; one that fails decides, one that is unknown leaves it open. */
const all = (...parts: readonly (boolean | undefined)[]): boolean | undefined =>
  parts.includes(false) ? false : parts.includes(undefined) ? undefined : true;

export function deriveObservations(house: House): Observation[] {
  return [
    ...house.rooms.flatMap((room, index) =>
      room.use === 'bedroom' ? [escapeOpening(room, ['rooms', index])] : [],
    ),
    ...house.stairs.flatMap((stair, index) => stairs(stair, ['stairs', index])),
    ...guards(house),
    ...house.systems.flatMap((system, index) => systemObservations(system, ['systems', index])),
    ...poolBarriers(house),
  ];
}

/** The window of a bedroom that comes nearest to an escape opening. */
function escapeOpening(room: Room, path: FactPath): Observation {
  const rules = safetyRules();
  const { figures } = rules.escapeOpening;
  const measured = room.windows.map((window) => ({ window, ok: escapeHolds(window, rules) }));
  const best =
    measured.find((one) => one.ok === true) ?? measured.find((one) => one.ok === undefined) ?? measured[0];
  const limit = (tenths: number): string => `${tenths / 10} sq in (${tenths / 1440} sq ft)`;
  const figure = `clear opening ${limit(figures.minTenthsOfSquareInch)}, at ground level ${limit(figures.minTenthsOfSquareInchAtGrade)}; ${figures.minHeightInches} in high and ${figures.minWidthInches} in wide at least; sill ${rules.escapeSill.figures.maxSillInches} in above the floor at most`;
  return observe(
    {
      id: `escape-${room.id}`,
      path: [...path, 'windows'],
      topic: 'escape opening',
      what: nameOf(room),
      evidence: best?.window.evidence ?? [],
    },
    rules.escapeOpening,
    {
      observed: best === undefined ? 'no window recorded' : escapeWords(best.window),
      figure,
      stands: judged(best?.ok),
    },
  );
}

/** Exact: compared in tenths of a square inch, never in decimal square feet. */
export function escapeHolds(window: RoomWindow, rules: SafetyRules): boolean | undefined {
  const width = window['clear-width'];
  const height = window['clear-height'];
  const { figures } = rules.escapeOpening;
  const asked = BigInt(
    window['at-grade'] ? figures.minTenthsOfSquareInchAtGrade : figures.minTenthsOfSquareInch,
  );
  const area =
    width === undefined || height === undefined
      ? undefined
      : BigInt(width.units) * BigInt(height.units) * 10n >= asked * SQUARE_INCH;
  return all(
    area,
    width === undefined ? undefined : atLeast(width, figures.minWidthInches),
    height === undefined ? undefined : atLeast(height, figures.minHeightInches),
    window.sill === undefined ? undefined : atMost(window.sill, rules.escapeSill.figures.maxSillInches),
  );
}

function escapeWords(window: RoomWindow): string {
  const width = window['clear-width'];
  const height = window['clear-height'];
  const opening =
    width === undefined || height === undefined
      ? 'clear opening not measured'
      : `${printLength(width)} wide and ${printLength(height)} high clear, ${squareInches(width, height)} sq in`;
  const sill =
    window.sill === undefined ? 'sill not measured' : `sill ${printLength(window.sill)} above the floor`;
  return [window.name, opening, sill, ...(window['at-grade'] ? ['at ground level'] : [])]
    .filter(Boolean)
    .join('; ');
}

/** Cut, not rounded, to a tenth: an opening is never shown larger than it is. */
function squareInches(width: Length, height: Length): string {
  const tenths = (BigInt(width.units) * BigInt(height.units) * 10n) / SQUARE_INCH;
  return `${tenths / 10n}${tenths % 10n === 0n ? '' : `.${tenths % 10n}`}`;
}

function stairs(stair: Stair, path: FactPath): Observation[] {
  const rules = safetyRules();
  const name = nameOf(stair);
  const { handrailNewWork, maintenanceStairs, stairNewWork } = rules;
  const looked = stair.risers >= handrailNewWork.figures.fromRisers;
  const height = stair['rail-height'];
  const rail = `${stair.risers} risers; handrail: ${stair.handrail}${height === undefined ? '' : `, ${printLength(height)} above the nosings`}`;
  const list = [
    observe(
      {
        id: `handrail-${stair.id}`,
        path,
        topic: 'stair',
        what: `${name}, handrail`,
        evidence: stair.evidence,
      },
      handrailNewWork,
      {
        observed: rail,
        figure: `new work: a rail from ${handrailNewWork.figures.fromRisers} risers on, ${handrailNewWork.figures.minHeightInches} to ${handrailNewWork.figures.maxHeightInches} in high; existing houses in places under a maintenance code: above ${maintenanceStairs.figures.overRisers} risers, ${maintenanceStairs.figures.minHandrailInches} to ${maintenanceStairs.figures.maxHandrailInches} in`,
        stands: judged(
          looked
            ? all(
                stair.handrail === 'not known' ? undefined : stair.handrail === 'yes',
                height === undefined
                  ? undefined
                  : atLeast(height, handrailNewWork.figures.minHeightInches) &&
                      atMost(height, handrailNewWork.figures.maxHeightInches),
              )
            : true,
        ),
      },
    ),
  ];
  const highest = stair['highest-riser'];
  if ([highest, stair.tread, stair.width, stair.headroom].every((part) => part === undefined)) return list;
  const { figures } = stairNewWork;
  const SIXTEENTH = INCH / 16;
  const lowest = stair['lowest-riser'];
  list.push(
    observe(
      { id: `steps-${stair.id}`, path, topic: 'stair', what: `${name}, steps`, evidence: stair.evidence },
      stairNewWork,
      {
        observed: [
          highest && `highest riser ${printLength(highest)}`,
          lowest && `lowest ${printLength(lowest)}`,
          stair.tread && `shallowest tread ${printLength(stair.tread)}`,
          stair.width && `width ${printLength(stair.width)}`,
          stair.headroom && `headroom ${printLength(stair.headroom)}`,
        ]
          .filter(Boolean)
          .join('; '),
        figure: `new work: riser 7 3/4 in at most, tread ${figures.minTreadInches} in at least, risers within 3/8 in of each other, width ${figures.minWidthInches} in, headroom ${inches(figures.minHeadroomInches)}`,
        stands: judged(
          all(
            highest === undefined
              ? undefined
              : Math.max(highest.units, lowest?.units ?? 0) <= figures.maxRiserSixteenths * SIXTEENTH,
            highest === undefined || lowest === undefined
              ? undefined
              : Math.abs(highest.units - lowest.units) <= figures.maxSpreadSixteenths * SIXTEENTH,
            stair.tread === undefined ? undefined : atLeast(stair.tread, figures.minTreadInches),
            stair.width === undefined ? undefined : atLeast(stair.width, figures.minWidthInches),
            stair.headroom === undefined ? undefined : atLeast(stair.headroom, figures.minHeadroomInches),
          ),
        ),
      },
    ),
  );
  return list;
}

function guards(house: House): Observation[] {
  const rule = safetyRules().guardNewWork;
  const { figures } = rule;
  return house.guards.map((guard, index) => {
    const looked = guard.drop.units > figures.dropOverInches * INCH;
    return observe(
      {
        id: `guard-${index}`,
        path: ['guards', index],
        topic: 'guard',
        what: guard.what,
        evidence: guard.evidence,
      },
      rule,
      {
        observed: [
          `drop ${printLength(guard.drop)}`,
          `guard: ${guard.guard}`,
          guard.height && `${printLength(guard.height)} high`,
          guard.gap && `widest gap ${printLength(guard.gap)}`,
        ]
          .filter(Boolean)
          .join('; '),
        figure: `new work: a guard where the drop is more than ${figures.dropOverInches} in (some places: ${figures.dropOverInches} in or more), ${figures.minHeightInches} in high, no gap that a ${figures.ballInches} in ball passes`,
        stands: judged(
          looked
            ? all(
                guard.guard === 'not known' ? undefined : guard.guard === 'yes',
                guard.height === undefined ? undefined : atLeast(guard.height, figures.minHeightInches),
                guard.gap === undefined ? undefined : guard.gap.units < figures.ballInches * INCH,
              )
            : true,
        ),
      },
    );
  });
}

function systemObservations(system: System, path: FactPath): Observation[] {
  const rules = safetyRules();
  const base = (topic: Observation['topic'], part: string) => ({
    id: `${part}-${system.id}`,
    path: [...path, part],
    topic,
    what: system.name ?? system.is,
    evidence: system.evidence,
  });
  const found: Observation[] = [];
  if (/water heater/i.test(system.is)) {
    found.push(hotWater(system, base('hot water', 'set-to'), rules));
    // A tankless heater may have no relief pipe; where one is recorded it is told.
    if (!/tankless/i.test(system.is) || system['relief-pipe'] !== undefined)
      found.push(relief(system, base('relief pipe', 'relief-pipe'), rules));
  }
  if (/\brange\b(?! *(hood|vent|outlet|circuit|cord))/i.test(system.is)) {
    const bracket = system['anti-tip'] ?? 'not known';
    const { figures } = rules.rangeTip;
    found.push(
      observe(base('range', 'anti-tip'), rules.rangeTip, {
        observed:
          bracket === 'not known' ? 'anti-tip bracket: not known' : `anti-tip bracket holds it: ${bracket}`,
        figure: `freestanding ranges made since ${figures.sinceYear} are to stay upright with ${figures.doorPounds} lb on the open door, by a bracket`,
        stands: judged(bracket === 'not known' ? undefined : bracket === 'yes'),
      }),
    );
  }
  return found;
}

type Base = Parameters<typeof observe>[0];

function hotWater(system: System, base: Base, rules: SafetyRules): Observation {
  const { figures } = rules.hotWater;
  const set = system['set-to'];
  const valve = system['mixing-valve'] ?? 'not known';
  const hot = set === undefined ? undefined : figures.burns.filter((burn) => set.value >= burn.fahrenheit)[0];
  return observe(base, rules.hotWater, {
    observed: `${set === undefined ? 'setting not recorded' : `set to ${set.written}`}; mixing valve: ${valve}${hot === undefined || set === undefined || set.value <= figures.adviceFahrenheit ? '' : `; at ${hot.fahrenheit} °F water can burn deeply in ${hot.seconds} seconds`}`,
    figure: `advice: ${figures.adviceFahrenheit} °F`,
    stands: judged(set === undefined ? undefined : set.value <= figures.adviceFahrenheit),
  });
}

function relief(system: System, base: Base, rules: SafetyRules): Observation {
  const pipe = system['relief-pipe'];
  const { figures } = rules.reliefPipe;
  const end = pipe?.['ends-above-floor'];
  const yesNo = (value: string | undefined): boolean | undefined =>
    value === undefined || value === 'not known' ? undefined : value === 'no';
  return observe({ ...base, evidence: pipe?.evidence ?? system.evidence }, rules.reliefPipe, {
    observed:
      pipe === undefined
        ? 'relief pipe not recorded'
        : [
            `pipe ${printLength(pipe.diameter)}`,
            end === undefined ? 'end not measured' : `ends ${printLength(end)} above the floor`,
            pipe.threaded && `threaded end: ${pipe.threaded}`,
            pipe.valve && `valve or tee in it: ${pipe.valve}`,
          ]
            .filter(Boolean)
            .join('; '),
    figure: `ends at most ${figures.maxEndInches} in above floor or pan and at least ${figures.minEndDiameters} pipe diameters; no thread at its end, no valve, tee or trap`,
    stands: judged(
      pipe === undefined
        ? undefined
        : all(
            end === undefined
              ? undefined
              : atMost(end, figures.maxEndInches) &&
                  end.units >= figures.minEndDiameters * pipe.diameter.units,
            yesNo(pipe.threaded),
            yesNo(pipe.valve),
          ),
    ),
  });
}

function poolBarriers(house: House): Observation[] {
  const rule = safetyRules().poolBarrier;
  const { figures } = rule;
  return (house.pool?.barriers ?? []).map((barrier, index) => {
    const gate = barrier.gate === 'yes';
    const gateOpen = barrier.gate === 'not known' ? [undefined] : [];
    const asked = (value: string | undefined): boolean | undefined =>
      value === undefined || value === 'not known' ? undefined : value === 'yes';
    return observe(
      {
        id: `barrier-${index}`,
        path: ['pool', 'barriers', index],
        topic: 'pool barrier',
        what: barrier.what,
        evidence: barrier.evidence,
      },
      rule,
      {
        observed: [
          barrier.height ? `${printLength(barrier.height)} high` : 'height not measured',
          barrier['gap-below'] && `gap below ${printLength(barrier['gap-below'])}`,
          barrier['widest-gap'] && `widest opening ${printLength(barrier['widest-gap'])}`,
          gate &&
            `gate closes and latches by itself: ${barrier['closes-itself'] ?? 'not known'}, opens outward: ${barrier['opens-outward'] ?? 'not known'}`,
          barrier['latch-height'] && `latch release ${printLength(barrier['latch-height'])} high`,
        ]
          .filter(Boolean)
          .join('; '),
        figure: `federal guidance: ${figures.minHeightInches} in high outside, gap below ${figures.maxBottomGapInches} in at most, no opening that a ${figures.ballInches} in ball passes; gates open outward, close and latch by themselves`,
        stands: judged(
          all(
            barrier.height === undefined ? undefined : atLeast(barrier.height, figures.minHeightInches),
            barrier['gap-below'] === undefined
              ? undefined
              : atMost(barrier['gap-below'], figures.maxBottomGapInches),
            barrier['widest-gap'] === undefined
              ? undefined
              : barrier['widest-gap'].units < figures.ballInches * INCH,
            ...gateOpen,
            ...(gate ? [asked(barrier['closes-itself']), asked(barrier['opens-outward'])] : []),
          ),
        ),
      },
    );
  });
}
