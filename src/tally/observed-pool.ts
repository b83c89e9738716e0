/** What stands around a pool, side by side. */
import type { House, PoolBarrier } from '../facts/house.js';
import { INCH, printLength } from '../facts/length.js';
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

export function observePoolBarriers(house: House): Observation[] {
  const rule = safetyRules().poolBarrier;
  const { figures } = rule;
  return (house.pool?.barriers ?? []).map((barrier, index) =>
    observe(
      {
        id: `barrier-${index}`,
        path: ['pool', 'barriers', index],
        topic: 'pool barrier',
        what: barrier.what,
        evidence: barrier.evidence,
      },
      rule,
      {
        observed: barrierWords(barrier),
        figure: `federal guidance: ${figures.minHeightInches} in high outside, gap below ${figures.maxBottomGapInches} in at most, no opening that a ${figures.ballInches} in ball passes; gates open outward, close and latch by themselves`,
        stands: judged(
          all(
            taped(barrier.height, (height) => atLeast(height, figures.minHeightInches)),
            taped(barrier['gap-below'], (gap) => atMost(gap, figures.maxBottomGapInches)),
            taped(barrier['widest-gap'], (gap) => gap.units < figures.ballInches * INCH),
            ...gateParts(barrier),
          ),
        ),
      },
    ),
  );
}

/** What a gate is asked; nothing of a side that has none, and one open part where whether it has one is not known. */
function gateParts(barrier: PoolBarrier): (boolean | undefined)[] {
  const gate = hasGate(barrier);
  if (gate === undefined) return [undefined];
  return gate ? [answered(barrier['closes-itself']), answered(barrier['opens-outward'])] : [];
}

/** Where a gate is described there is one, whether or not that is said beside it. */
const hasGate = (barrier: PoolBarrier): boolean | undefined =>
  barrier['closes-itself'] !== undefined || barrier['opens-outward'] !== undefined
    ? true
    : answered(barrier.gate);

function barrierWords(barrier: PoolBarrier): string {
  const gate = `gate closes and latches by itself: ${barrier['closes-itself'] ?? 'not known'}, opens outward: ${barrier['opens-outward'] ?? 'not known'}`;
  return inOneLine(
    barrier.height ? `${printLength(barrier.height)} high` : 'height not measured',
    barrier['gap-below'] && `gap below ${printLength(barrier['gap-below'])}`,
    barrier['widest-gap'] && `widest opening ${printLength(barrier['widest-gap'])}`,
    hasGate(barrier) === undefined ? 'gate: not known' : hasGate(barrier) && gate,
    barrier['latch-height'] && `latch release ${printLength(barrier['latch-height'])} high`,
  );
}
