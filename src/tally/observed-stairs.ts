/** Flights of stairs with their handrails, and drops with their guards. */
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House, Stair } from '../facts/house.js';
import { INCH, printLength } from '../facts/length.js';
import { nameOf } from '../facts/place-name.js';
import {
  all,
  answered,
  atLeast,
  atMost,
  inOneLine,
  judged,
  type Observation,
  observe,
  taped,
} from './observation.js';
import { safetyRules } from './tables/safety.js';

const SIXTEENTH = INCH / 16;

export function observeStairs(house: House): Observation[] {
  return house.stairs.flatMap((stair, index) => {
    const path: FactPath = ['stairs', index];
    const measures = [stair['highest-riser'], stair.tread, stair.width, stair.headroom];
    return measures.every((one) => one === undefined)
      ? [handrail(stair, path)]
      : [handrail(stair, path), steps(stair, path)];
  });
}

function handrail(stair: Stair, path: FactPath): Observation {
  const { handrailNewWork, maintenanceStairs } = safetyRules();
  const { figures } = handrailNewWork;
  const height = stair['rail-height'];
  return observe(
    {
      id: `handrail-${stair.id}`,
      path,
      topic: 'stair',
      what: `${nameOf(stair)}, handrail`,
      evidence: stair.evidence,
    },
    handrailNewWork,
    {
      observed: `${stair.risers} ${stair.risers === 1 ? 'riser' : 'risers'}; handrail: ${stair.handrail}${height === undefined ? '' : `, ${printLength(height)} above the nosings`}`,
      figure: `new work: a rail from ${figures.fromRisers} risers on, ${figures.minHeightInches} to ${figures.maxHeightInches} in high; existing houses in places under a maintenance code: above ${maintenanceStairs.figures.overRisers} risers, ${maintenanceStairs.figures.minHandrailInches} to ${maintenanceStairs.figures.maxHandrailInches} in`,
      stands: judged(
        stair.risers < figures.fromRisers ||
          all(
            answered(stair.handrail),
            taped(
              height,
              (rail) => atLeast(rail, figures.minHeightInches) && atMost(rail, figures.maxHeightInches),
            ),
          ),
      ),
    },
  );
}

function steps(stair: Stair, path: FactPath): Observation {
  const { stairNewWork } = safetyRules();
  const { figures } = stairNewWork;
  const highest = stair['highest-riser'];
  const lowest = stair['lowest-riser'];
  return observe(
    {
      id: `steps-${stair.id}`,
      path,
      topic: 'stair',
      what: `${nameOf(stair)}, steps`,
      evidence: stair.evidence,
    },
    stairNewWork,
    {
      observed: inOneLine(
        highest && `highest riser ${printLength(highest)}`,
        lowest && `lowest ${printLength(lowest)}`,
        stair.tread && `shallowest tread ${printLength(stair.tread)}`,
        stair.width && `width ${printLength(stair.width)}`,
        stair.headroom && `headroom ${printLength(stair.headroom)}`,
      ),
      figure: `new work: riser 7 3/4 in at most, tread ${figures.minTreadInches} in at least, risers within 3/8 in of each other, width ${figures.minWidthInches} in, headroom ${figures.minHeadroomInches} in`,
      stands: judged(
        all(
          taped(
            highest,
            ({ units }) => Math.max(units, lowest?.units ?? 0) <= figures.maxRiserSixteenths * SIXTEENTH,
          ),
          highest === undefined || lowest === undefined
            ? undefined
            : Math.abs(highest.units - lowest.units) <= figures.maxSpreadSixteenths * SIXTEENTH,
          taped(stair.tread, (tread) => atLeast(tread, figures.minTreadInches)),
          taped(stair.width, (width) => atLeast(width, figures.minWidthInches)),
          taped(stair.headroom, (headroom) => atLeast(headroom, figures.minHeadroomInches)),
        ),
      ),
    },
  );
}

export function observeGuards(house: House): Observation[] {
  const rule = safetyRules().guardNewWork;
  const { figures } = rule;
  return house.guards.map((guard, index) =>
    observe(
      {
        id: `guard-${index}`,
        path: ['guards', index],
        topic: 'guard',
        what: guard.what,
        evidence: guard.evidence,
      },
      rule,
      {
        observed: inOneLine(
          `drop ${printLength(guard.drop)}`,
          `guard: ${guard.guard}`,
          guard.height && `${printLength(guard.height)} high`,
          guard.gap && `widest gap ${printLength(guard.gap)}`,
        ),
        figure: `new work: a guard where the drop is more than ${figures.dropOverInches} in (some places: ${figures.dropOverInches} in or more), ${figures.minHeightInches} in high, no gap that a ${figures.ballInches} in ball passes`,
        stands: judged(
          atMost(guard.drop, figures.dropOverInches) ||
            all(
              answered(guard.guard),
              taped(guard.height, (height) => atLeast(height, figures.minHeightInches)),
              taped(guard.gap, (gap) => gap.units < figures.ballInches * INCH),
            ),
        ),
      },
    ),
  );
}
