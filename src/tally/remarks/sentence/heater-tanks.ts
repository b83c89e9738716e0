/** "The water heater is a 40-gallon gas tank": a tank with a rating beside its heater is no tank of fuel. */
import { sensesIn } from '../items/item-meaning.js';
import { has, senseOf, type Unit } from '../words/units.js';

/** Gallons that a heater holds at most. */
const MOST_GALLONS = 120;

/** Units before it in which the heater is looked for. */
const FAR = 10;

export function nameHeaterTanks(units: readonly Unit[]): void {
  for (const [at, unit] of units.entries()) {
    if (senseOf(unit, 'thing')?.id !== 'fuel-tank') continue;
    const before = units.slice(Math.max(0, at - FAR), at);
    const rated = before.some(
      ({ number }) => number?.kind === 'rating' && number.unit === 'gallon' && number.value <= MOST_GALLONS,
    );
    const heater = before.some((one) =>
      one.senses.some(({ tag, id }) => tag === 'thing' && id === 'water-heater'),
    );
    if (
      !rated ||
      !heater ||
      before.some((one) => has(one, 'thing') && senseOf(one, 'thing')?.id !== 'water-heater')
    )
      continue;
    const fuel = unit.word.split(' ').slice(0, -1).join(' ');
    unit.senses = sensesIn(fuel).filter(({ group }) => group === 'fuel');
  }
}
