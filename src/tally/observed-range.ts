/** Whether a bracket keeps a range from tipping over. */

import type { House, System } from '../facts/house.js';
import { answered, judged, type Observation, observe } from './observation.js';
import { systemName } from './system-name.js';
import { safetyRules } from './tables/safety.js';

/** A range by any name that is still there, "gas stove" too; its hood, outlet and cord are none, nor is a stove for heat. */
export const isRange = (system: System): boolean =>
  /^(?!.*\b(wood|pellet|coal|heating|parlou?r)\b).*\b(range|(cook)?stove)\b(?! *(hood|vent|outlet|circuit|cord|pipe))/i.test(
    system.is,
  ) && system.did !== 'removed';

export function observeRanges(house: House): Observation[] {
  const rule = safetyRules().rangeTip;
  const { sinceYear, doorPounds } = rule.figures;
  return house.systems.flatMap((system, index) => {
    if (!isRange(system)) return [];
    const bracket = system['anti-tip'] ?? 'not known';
    return [
      observe(
        {
          id: `anti-tip-${system.id}`,
          path: ['systems', index, 'anti-tip'],
          topic: 'range',
          what: systemName(system),
          evidence: system.evidence,
        },
        rule,
        {
          observed:
            bracket === 'not known' ? 'anti-tip bracket: not known' : `anti-tip bracket holds it: ${bracket}`,
          figure: `freestanding ranges made since ${sinceYear} are to stay upright with ${doorPounds} lb on the open door, by a bracket`,
          stands: judged(answered(bracket)),
        },
      ),
    ];
  });
}
