/** How old things are, with the day that ages are counted to. */
import { ageSpan, printAge } from '../../facts/age.js';
import { printDate } from '../../facts/date.js';
import type { SystemAge } from '../../tally/ages.js';
import { HEATS_ROOMS } from '../../tally/heat-sources.js';
import { ROOF } from '../../tally/roof.js';
import { ageWords, datesWords } from '../age-words.js';
import type { Context } from '../context.js';
import { type Known, markOfFact } from '../marks.js';
import { lowerFirst, rich, upperFirst } from '../rich.js';
import { markOfAge } from '../sections/how-old.js';
import {
  type Answer,
  type AnswerOf,
  about,
  answerOf,
  DOES_NOT_ARISE,
  inShort,
  type Named,
} from './answer.js';

export const COOLING =
  /^(?!.*\b(water heater|pool|spa|dryer|heating only)\b).*(air condition|heat pump(?! water)|mini.?split|evaporative|swamp cooler)/i;
const WATER_HEATER = /water heater/i;
const WINDOW = /^(window|skylight)\b/i;
export const PANEL =
  /\b(electrical|service|breaker|main) panel\b|^(?!.*(solar|radiant|photovoltaic|control)).*\bpanel(?!l)/i;
export const PIPES = /\b(supply|water) pipes?\b|\bwater lines?\b/i;
export const DRAINS = /\bdrain|waste pipe|sewer/i;
export const WIRING = /\bwiring\b/i;
const RANGE = /^range\b(?! (hood|outlet))|oven|cooktop|^stove/i;
const REFRIGERATOR = /refrigerator|freezer/i;
const DISHWASHER = /dishwasher/i;
const LAUNDRY = /^(?!.*dish).*(washer|dryer)/i;
/** What has a question of its own above. */
const ASKED = [
  ROOF,
  HEATS_ROOMS,
  COOLING,
  WATER_HEATER,
  WINDOW,
  PANEL,
  PIPES,
  DRAINS,
  WIRING,
  RANGE,
  REFRIGERATOR,
  DISHWASHER,
  LAUNDRY,
];

/** Systems and appliances that are still there, by what they are. */
export const agesOf = ({ tally }: Context, pattern: RegExp): SystemAge[] =>
  tally.ages.filter(({ system }) => pattern.test(system.is));

export const systemName = ({ system }: Pick<SystemAge, 'system'>): string =>
  upperFirst(system.name ?? system.is);

const isDated = (age: SystemAge): boolean => age.date !== undefined;

function named(age: SystemAge): Named {
  const { system } = age;
  const years = age.age === undefined ? '' : ` (${ageWords(age)})`;
  const words = isDated(age) ? `${datesWords(age)}${years}` : 'age not known';
  return {
    words: about(systemName(age), `system-${system.id}`, words),
    known: behindAge(age),
    isKnown: isDated(age),
  };
}

/** The date's own papers, and where it has none the system's: as in the table of ages. */
const behindAge = ({ fact, system }: SystemAge): Known => ({
  from: fact?.from ?? system.from,
  evidence: fact !== undefined && fact.evidence.length > 0 ? fact.evidence : system.evidence,
});

/** Each with its dates and age. Where none has a date, what was noted of why. */
function answerAges(context: Context, ages: readonly SystemAge[]): Answer | undefined {
  if (ages.length === 0) return undefined;
  const mark = ages.length === 1 && ages[0] !== undefined ? markOfAge(context, ages[0]) : undefined;
  if (!ages.some(isDated)) {
    const notes = ages.flatMap(({ fact }) => (fact?.note === undefined ? [] : [fact.note]));
    const [first] = ages;
    if (notes.length === 0 || first === undefined) return undefined;
    return { text: rich(`Not known: ${notes.join('; ')}.`), mark: mark ?? markOfAge(context, first) };
  }
  // The day that ages are counted to stands once, above all of them.
  const answer = answerOf(context, ages.map(named), { between: '. ' });
  return answer === undefined ? undefined : { ...answer, mark: mark ?? answer.mark };
}

const ageOf =
  (pattern: RegExp): AnswerOf =>
  (context) =>
    answerAges(context, agesOf(context, pattern));

/** An appliance that is not in the record may not be in the house. */
const ageIfThere =
  (pattern: RegExp): AnswerOf =>
  (context) => {
    const ages = agesOf(context, pattern);
    return ages.length === 0 ? DOES_NOT_ARISE : answerAges(context, ages);
  };

const FOUR = [
  ['Roof', ROOF],
  ['Electrical', PANEL],
  ['Plumbing', PIPES],
  ['Heating', HEATS_ROOMS],
] as const;

/** The four that insurers ask about, each known or not. Undefined where none of them is dated. */
function insurerAges(context: Context): Answer | undefined {
  const four = FOUR.map(([word, pattern]): Named & { readonly dated: boolean } => {
    const ages = agesOf(context, pattern);
    const dated = ages.filter(isDated);
    const words = dated.map((age) => {
      const said = `${datesWords(age)}${age.age === undefined ? '' : ` (${ageWords(age)})`}`;
      return dated.length === 1 ? said : `${lowerFirst(systemName(age))} ${said}`;
    });
    const rest = ages.length > dated.length && dated.length > 0 ? ', and older parts of unknown age' : '';
    const [first] = dated.length > 0 ? dated : ages;
    const said = dated.length === 0 ? 'not known' : `${words.join('; ')}${rest}`;
    return {
      words:
        first === undefined ? rich(`${word}: not known`) : about(word, `system-${first.system.id}`, said),
      known: { evidence: dated.flatMap((age) => behindAge(age).evidence) },
      isKnown: dated.length > 0,
      dated: dated.length > 0,
    };
  });
  return four.some(({ dated }) => dated) ? answerOf(context, four, { between: '. ' }) : undefined;
}

function otherAges(context: Context): Answer | undefined | typeof DOES_NOT_ARISE {
  const others = context.tally.ages.filter(({ system }) => !ASKED.some((pattern) => pattern.test(system.is)));
  if (others.length === 0) return DOES_NOT_ARISE;
  const dated = others.filter(isDated);
  const rest = others.filter((age) => !isDated(age)).map((age) => systemName(age).toLowerCase());
  const after = rest.length === 0 ? {} : { after: `Age not known: ${rest.join('; ')}.` };
  const short = dated.map(
    (age): Named => ({
      ...named(age),
      words: about(systemName(age), `system-${age.system.id}`, ageWords(age)),
    }),
  );
  return inShort(answerOf(context, short, after), `${others.length} of them`, 'How old things are', 'ages');
}

function built(context: Context): Answer | undefined {
  const fact = context.house.house.built;
  if (fact.value === undefined) return undefined;
  const span = ageSpan(fact.value, context.tally.asOf);
  const age = span.future ? '' : ` (${printAge(span)})`;
  return {
    text: rich(`${upperFirst(printDate(fact.value))}${age}.`),
    mark: markOfFact(context, fact),
  };
}

export const AGES_ANSWERED = {
  'roof-age': ageOf(ROOF),
  'heating-age': ageOf(HEATS_ROOMS),
  'cooling-age': ageOf(COOLING),
  'water-heater-age': ageOf(WATER_HEATER),
  'window-age': ageOf(WINDOW),
  'panel-age': ageOf(PANEL),
  'pipe-age': (context) => answerAges(context, [...agesOf(context, PIPES), ...agesOf(context, DRAINS)]),
  'wiring-age': ageOf(WIRING),
  'insurer-ages': insurerAges,
  'range-age': ageIfThere(RANGE),
  'refrigerator-age': ageIfThere(REFRIGERATOR),
  'dishwasher-age': ageIfThere(DISHWASHER),
  'laundry-age': ageIfThere(LAUNDRY),
  'appliance-ages': otherAges,
  built,
} satisfies Record<string, AnswerOf>;
