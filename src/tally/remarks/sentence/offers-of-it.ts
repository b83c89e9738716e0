/** "Bring all offers on this 1,858 square foot gem", "your chance to own a three-bath home": the house is there, whatever is hoped of it. */
import { has, type Unit } from '../words/units.js';

const OF_BUYING = /^(own|buy|purchase|live|move|grab|snag|snap|acquire|secure|call|tour|view)$/;
const HOPES = /^(chance|opportunity|possibility|shot|bring)\b/;
const OFFERS = /^(offers?|all offers|your buyers?|buyers?|clients?|your clients?|checkbook|your agent)$/;

/** Takes the mark of what is merely hoped for off a house that is offered. */
export function takeOffersAsThey(units: readonly Unit[]): void {
  for (const [at, unit] of units.entries()) {
    if (unit.aside !== 'maybe' || !has(unit, 'maybe-ahead') || !HOPES.test(unit.word)) continue;
    const behind = units.slice(at + 1, at + 5);
    const verb = behind.findIndex(
      ({ word }) => OF_BUYING.test(word) || OFFERS.test(word) || /^(this|these)$/.test(word),
    );
    if (verb < 0 || behind.slice(0, verb).some((one) => has(one, 'thing'))) continue;
    for (const one of units.slice(at + 1)) {
      if (one.aside !== 'maybe') break;
      if (one !== unit && has(one, 'maybe-ahead')) break;
      one.aside = undefined;
    }
  }
}
