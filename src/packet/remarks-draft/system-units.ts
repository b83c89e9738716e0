/** Systems and appliances with their year, the ones that buyers ask about first before all others. */

import type { HouseDate } from '../../facts/date.js';
import type { Fact } from '../../facts/fact.js';
import type { System } from '../../facts/house.js';
import type { SystemAge } from '../../tally/ages.js';
import { ASKED_FIRST, isAsked } from '../age-words.js';
import type { Context } from '../context.js';
import { evidenceOf, type Known } from '../marks.js';
import { asListed } from './as-listed.js';
import { backed, backedDeed, type DraftRules } from './backing.js';
import { type Backing, type DraftUnit, joining, type Piece } from './draft-unit.js';
import { permitPieces, stateWords } from './permit-words.js';
import { deedWords, fromYear, inYear, yearWords } from './when.js';

export interface SystemUnits {
  readonly units: readonly DraftUnit[];
  /** Ids of the systems told in them. */
  readonly told: ReadonlySet<string>;
}

export function systemUnits(rules: DraftRules): SystemUnits {
  const units: DraftUnit[] = [];
  const told = new Set<string>();
  for (const age of rules.context.tally.ages) {
    const unit = inKitchen(rules, age) ?? asked(rules, age);
    if (unit === undefined) continue;
    units.push(unit);
    told.add(age.system.id);
  }
  return { units, told };
}

/** An appliance that was put in new stands with the kitchen. */
function inKitchen(rules: DraftRules, { system, path }: SystemAge): DraftUnit | undefined {
  const { context } = rules;
  const kitchen = context.house.rooms.find((room) => room.id === system.where)?.use === 'kitchen';
  const date = system.installed?.value;
  if (!kitchen || system.kept || date === undefined || isUsed(system)) return undefined;
  if (!/^(dishwasher|refrigerator|range|oven|cooktop|microwave|garbage disposal|faucet)\b/i.test(system.is))
    return undefined;
  const tail = deedWords(context, 'new', date);
  const backing = backedDeed(rules, system, nameIn(rules.context, system), path);
  const aside = unfinished(rules, system);
  if (tail === undefined || backing === undefined || aside === undefined) return undefined;
  const name = nameIn(context, system).replace(/^kitchen /, '');
  return {
    sentence: 'kitchen',
    part: 'kitchen',
    rank: /^(faucet|garbage|range hood)/i.test(system.is) ? 35 : 18,
    pieces: [{ text: name, backing }],
    tail,
    aside,
  };
}

/** Made more than a year before it was put in: bought second-hand, or from stock, and not new by its date. */
function isUsed({ made, installed }: System): boolean {
  const [first, put] = [made?.value?.earliest, installed?.value?.earliest];
  return first !== undefined && put !== undefined && Number(first.slice(0, 4)) < Number(put.slice(0, 4)) - 1;
}

function asked(rules: DraftRules, age: SystemAge): DraftUnit | undefined {
  if (!isAsked(age.system)) return undefined;
  const dated = datedBy(rules, age);
  const permit = unfinished(rules, age.system);
  if (dated === undefined || permit === undefined) return undefined;
  const first = ASKED_FIRST.findIndex((pattern) => pattern.test(age.system.is));
  // Pipes and wires that were put in are told with the work, and its permit.
  if (first < 0 && rules.context.house.work.some(({ systems }) => systems.includes(age.system.id)))
    return undefined;
  const another = rules.context.tally.ages.find((one) => ASKED_FIRST[first]?.test(one.system.is) === true);
  return {
    sentence: 'systems',
    rank: first < 0 ? 32 : another === age ? 7 + first / 10 : 30,
    pieces: [
      { text: dated.told(withFuel(rules, age.system)), backing: dated.backing },
      ...(permit.length === 0 ? [] : [joining(' ('), ...permit.slice(0, 1), joining(')')]),
    ],
  };
}

/** What stands of a permit that was not closed, of the system or of the work that put it in. Undefined: it may not be told. */
function unfinished(rules: DraftRules, system: System): readonly Piece[] | undefined {
  const { permits, work } = rules.context.house;
  const ids = [
    system.permit,
    ...work.filter(({ systems }) => systems.includes(system.id)).map((one) => one.permit),
  ];
  const open = permits.find((one) => ids.includes(one.id) && one.state !== 'final');
  return permitPieces(rules, open?.id);
}

/** The year it was put in, else the year it was made, as far as a paper tells it. */
function datedBy(
  rules: DraftRules,
  { system, path }: SystemAge,
): { readonly told: (name: string) => string; readonly backing: Backing } | undefined {
  const tell = (
    fact: Fact<HouseDate> | undefined,
    did: 'put in' | 'made',
    known: Known | undefined,
    at: string,
  ) => {
    const year = yearWords(fact?.value);
    if (fact === undefined || year === undefined || known === undefined) return undefined;
    const backing = backed(rules, known, `${nameIn(rules.context, system)}, ${at}`, [...path, at]);
    return backing === undefined
      ? undefined
      : {
          told: (name: string): string =>
            `${withYear(name, did, year, inYear(fact.value) ?? year)}${sourceWords(rules, fact.from, known.evidence)}`,
          backing,
        };
  };
  const { installed, made } = system;
  return (
    (isUsed(system) ? undefined : tell(installed, 'put in', installed, 'installed')) ??
    // What this owner put in is shown by the receipt or permit that stands behind the system itself.
    (isUsed(system) || system.kept
      ? undefined
      : tell(installed, 'put in', evidenceOf(rules.context, system), 'installed')) ??
    tell(made, 'made', made, 'made')
  );
}

/**
 * "2019 house roof", "roof tiles from about 1991", "heat pump made in 2013": a year stands where it can't be taken for
 * the next thing's. Behind a place of several words it would be that place's: "windows of the family room from 2004".
 */
function withYear(name: string, did: 'put in' | 'made', year: string, when: string): string {
  if (did === 'made') return `${name} made ${when}`;
  const plain = /^\d{4}$/.test(year) && !/ (of|on|and) |\(/.test(name);
  return plain ? `${year} ${name}` : `${name} ${fromYear(year)}`;
}

/** " (permit closed June 2019)"; " (per the prior seller)", whose word it is although it stands on paper. */
function sourceWords({ context }: DraftRules, from: string | undefined, evidence: readonly string[]): string {
  if (from !== undefined && /\bseller\b/i.test(from)) return ' (per the prior seller)';
  const { permits, documents } = context.house;
  const closed = permits.find(
    (one) =>
      one.state === 'final' &&
      (evidence.includes(one.id) || one.evidence.some((paper) => evidence.includes(paper))),
  );
  if (closed !== undefined) return ` (${stateWords(closed, 'permit', '')})`;
  return documents.some((one) => one.kind === 'permit' && evidence.includes(one.id))
    ? ' (permit on file)'
    : '';
}

/** As it is printed, small at the start: "roof (garage)" of "Roof, garage". */
const nameIn = ({ house }: Context, system: System): string =>
  asListed(house, (system.name ?? general(system)).trim());

/** "clothes dryer, electric" without a name of its own: the most general words. */
const general = ({ is }: System): string => is.split(',')[0] ?? is;

/** "electric water heater": the fuel, where a paper stands behind the system. */
function withFuel(rules: DraftRules, system: System): string {
  const name = nameIn(rules.context, system);
  const { fuel } = system;
  if (fuel === undefined || fuel === 'none' || name.toLowerCase().includes(fuel)) return name;
  return backedDeed(rules, system, name, []) === undefined ? name : `${fuel} ${name}`;
}
