import type { FactPath } from '../diagnostics/fact-path.js';
import type { HouseDate } from '../facts/date.js';
import { printDate, readDate } from '../facts/date.js';
import type { Fact } from '../facts/fact.js';
import type { House } from '../facts/house.js';
import { nameOf } from '../facts/place-name.js';
import { alarmWords } from './alarm-words.js';

export interface CollectedFact {
  /** What the fact is about: "lot", "age of the furnace, made". */
  readonly words: string;
  /** Where it stands in the house. */
  readonly path: FactPath;
  readonly fact: Fact<unknown>;
  /** What stood there before a correction, as printed. */
  readonly before: string | undefined;
  /** Its value as printed; "not known" if it has none. */
  readonly printed: string;
}

/** Every fact that can carry its own evidence, in the order of the folder. Answers are left out: they have a section. */
export function collectFacts(house: House): CollectedFact[] {
  const found: CollectedFact[] = [];
  const take = (owner: string | undefined, thing: object, path: FactPath): void => {
    for (const [word, value] of Object.entries(thing)) {
      if (!isFact(value)) continue;
      found.push({
        words: owner === undefined ? (FACT_WORDS[word] ?? word) : `${owner}, ${FACT_WORDS[word] ?? word}`,
        path: [...path, word],
        fact: value,
        before: printedBefore(value),
        printed: print(value.value),
      });
    }
  };
  take(undefined, house.house, ['house']);
  for (const [at, person] of house.people.entries()) take(person.name, person, ['people', at]);
  for (const [at, system] of house.systems.entries()) take(system.name ?? system.is, system, ['systems', at]);
  for (const [at, alarm] of house.alarms.entries()) {
    const room = house.rooms.find((one) => one.id === alarm.where);
    take(`${alarmWords(alarm)} alarm, ${nameOf(room ?? { id: alarm.where }).toLowerCase()}`, alarm, [
      'alarms',
      at,
    ]);
  }
  if (house.lead !== undefined) take('lead paint', house.lead, ['lead']);
  return found;
}

const FACT_WORDS: Record<string, string> = {
  built: 'year built',
  lot: 'size of the lot',
  water: 'water supply',
  sewer: 'sewer',
  made: 'date of manufacture',
  installed: 'date of installation',
  licence: 'licence',
  known: 'what is known',
  parcel: 'parcel number',
};

/** A checked fact: the only thing that has both a value and a list of evidence. */
function isFact(value: unknown): value is Fact<unknown> {
  return (
    typeof value === 'object' && value !== null && 'value' in value && 'evidence' in value && 'was' in value
  );
}

function print(value: unknown): string {
  if (value === undefined) return 'not known';
  if (typeof value === 'string') return value;
  if (typeof value === 'object' && value !== null && 'precision' in value)
    return printDate(value as HouseDate);
  if (typeof value === 'object' && value !== null && 'written' in value) return String(value.written);
  return String(value);
}

/** A date that was corrected is printed in words like any other. */
function printedBefore({ was, value }: Fact<unknown>): string | undefined {
  if (was === undefined) return undefined;
  const isDate = typeof value === 'object' && value !== null && 'precision' in value;
  const read = isDate ? readDate(was) : undefined;
  return read?.ok ? printDate(read.value) : was;
}
