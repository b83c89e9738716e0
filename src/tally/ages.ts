/** How old each system and appliance is, as a span, set against published lives. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { type AgeSpan, ageSpan, inMonths } from '../facts/age.js';
import { type HouseDate, mayBeOneDay, printDate } from '../facts/date.js';
import type { Fact } from '../facts/fact.js';
import type { House, System } from '../facts/house.js';
import { inFuture } from './future-dates.js';
import { readLabel } from './label.js';
import {
  type AgeInMonths,
  type Component,
  compareWithLives,
  componentNames,
  findComponent,
  type LifeComparison,
  type Lives,
  livesOf,
} from './published-lives.js';
import { isThere } from './still-there.js';

export interface SystemAge {
  readonly system: System;
  readonly path: FactPath;
  /** Which date the age counts from: when made if that is known, else when installed. */
  readonly basis: 'made' | 'label' | 'installed' | 'not known';
  readonly date: HouseDate | undefined;
  /** The fact behind the date, for its evidence. Undefined for a label and where no date was given. */
  readonly fact: Fact<HouseDate> | undefined;
  readonly age: AgeSpan | undefined;
  readonly component: Component | undefined;
  readonly lives: Lives | undefined;
  readonly comparison: LifeComparison;
}

/** Ages of what is still there. Dates of what was taken out are checked all the same. */
export function deriveAges(
  house: House,
  asOf: string,
): { ages: readonly SystemAge[]; diagnostics: readonly Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const ages = house.systems.map((system, index): SystemAge => {
    const path: FactPath = ['systems', index];
    const dated = dateOf(system, asOf, path, diagnostics);
    const age = dated.date === undefined ? undefined : ageSpan(dated.date, asOf);
    // Dates that were written are checked with all others; this one was worked out here.
    if (dated.basis === 'label' && dated.date?.earliest !== undefined && dated.date.earliest > asOf)
      diagnostics.push(inFuture([...path, 'label'], dated.date.earliest, asOf));
    checkOrder(system, dated, path, diagnostics);
    const component = findComponent(system.is);
    if (component === undefined && isThere(system)) diagnostics.push(noLife(system, path));
    const lives = component === undefined ? undefined : livesOf(component);
    return {
      system,
      path,
      ...dated,
      age: age?.future ? undefined : age,
      component,
      lives,
      comparison: compareWithLives(age === undefined || age.future ? {} : spanInMonths(age), {
        span: lives?.span,
      }),
    };
  });
  return { ages: ages.filter(({ system }) => isThere(system)), diagnostics };
}

type Dated = Pick<SystemAge, 'basis' | 'date' | 'fact'>;

function dateOf(system: System, asOf: string, path: FactPath, diagnostics: Diagnostic[]): Dated {
  const labelled = labelDate(system, asOf, path, diagnostics);
  const made = system.made?.value;
  if (made !== undefined) {
    if (labelled !== undefined && !mayBeOneDay(made, labelled))
      diagnostics.push(labelSaysOtherwise(labelled, path));
    return { basis: 'made', date: made, fact: system.made };
  }
  if (labelled !== undefined) return { basis: 'label', date: labelled, fact: undefined };
  if (system.installed?.value !== undefined)
    return { basis: 'installed', date: system.installed.value, fact: system.installed };
  return { basis: 'not known', date: undefined, fact: system.made ?? system.installed };
}

/** The date that the label gives by the writer's pattern; a pattern that does not fit is reported. */
function labelDate(
  system: System,
  asOf: string,
  path: FactPath,
  diagnostics: Diagnostic[],
): HouseDate | undefined {
  const { label } = system;
  if (label?.reads === undefined) return undefined;
  const read = readLabel(label.serial, label.reads, asOf);
  if (read.ok) return read.value;
  diagnostics.push({
    code: 'tally.label',
    severity: 'error',
    path: [...path, 'label', 'reads'],
    message: read.problem,
    hints: [read.hint],
  });
  return undefined;
}

const labelSaysOtherwise = (labelled: HouseDate, path: FactPath): Diagnostic => ({
  code: 'tally.label',
  severity: 'error',
  path: [...path, 'made'],
  message: `the label of the same system says ${printDate(labelled)}`,
  hints: ['check the serial number and how it is read, or correct  made:'],
});

function checkOrder(system: System, dated: Dated, path: FactPath, diagnostics: Diagnostic[]): void {
  const made = dated.date?.earliest;
  const installed = system.installed?.value?.latest;
  if (made === undefined || installed === undefined || made <= installed) return;
  diagnostics.push({
    code: 'tally.date-order',
    severity: 'error',
    path: [...path, 'installed'],
    message: `“${system.is}” can’t have been installed before it was made`,
    hints: [
      'check both: the label says when it was made, the receipt or permit when it was installed',
      'if that day is when it was last worked on, write it as  serviced:',
    ],
  });
}

function noLife(system: System, path: FactPath): Diagnostic {
  const words = system.is
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word.length > 3);
  const like = componentNames().filter((name) => words.some((word) => name.toLowerCase().includes(word)));
  return {
    code: 'tally.no-life',
    severity: 'note',
    path: [...path, 'is'],
    message: `no published table of lives knows “${system.is}”; its age is printed without one`,
    hints:
      like.length === 0
        ? ['leave it so, or name it as the tables do']
        : [`if it is one of these, write it so: ${like.slice(0, 6).join(' · ')}`],
  };
}

function spanInMonths(age: AgeSpan): AgeInMonths {
  return {
    youngestMonths: age.youngest && inMonths(age.youngest),
    oldestMonths: age.oldest && inMonths(age.oldest),
  };
}
