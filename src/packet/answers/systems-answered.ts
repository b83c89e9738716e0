/** Pipes, wiring, heat, air, gas and alarms: what they are, as far as the record says. */
import { printDate } from '../../facts/date.js';
import type { System } from '../../facts/house.js';
import type { SystemAge } from '../../tally/ages.js';
import { HEATS_ROOMS } from '../../tally/heat-sources.js';
import { ROOF } from '../../tally/roof.js';
import { alarmEvidence } from '../alarm-words.js';
import { type Context, placeName } from '../context.js';
import { evidenceOf, markOf } from '../marks.js';
import { fullStop, link, rich, upperFirst } from '../rich.js';
import { permitState, systemWords } from '../tell.js';
import { agesOf, COOLING, DRAINS, PANEL, PIPES, systemName, WIRING } from './ages-answered.js';
import {
  type Answer,
  type AnswerOf,
  about,
  answerOf,
  DOES_NOT_ARISE,
  markOfNamed,
  type Named,
} from './answer.js';
import { conditionsLike, workLike } from './mentioned.js';

/** A system with what it is, as found or with its note. */
function described(context: Context, age: SystemAge, words = whatItIs(age.system)): Named {
  const { system } = age;
  const behind = [words, system.kept ? 'as found' : undefined, system.note].filter(
    (part) => part !== undefined && part !== '',
  );
  return {
    words: about(systemName(age), `system-${system.id}`, behind.join(', ')),
    known: evidenceOf(context, system),
  };
}

/** "copper, serves half bath": the general words after the first, or the material, whatever the name says already. */
function whatItIs(system: System): string {
  const [, ...general] = system.is.split(/,\s*/);
  const parts = [
    system.material ?? (general.join(', ') || undefined),
    system.serves && `serves ${system.serves}`,
  ].filter(Boolean);
  return parts.length === 0 ? systemWords(system) : parts.join(', ');
}

const madeOf =
  (pattern: RegExp, after?: string): AnswerOf =>
  (context) =>
    answerOf(
      context,
      agesOf(context, pattern).map((age) => described(context, age)),
      { between: '. ', ...(after === undefined ? {} : { after }) },
    );

/** A system, with its fuel, capacity and what it serves. */
const withWords =
  (pattern: RegExp, after?: string): AnswerOf =>
  (context) =>
    answerOf(
      context,
      agesOf(context, pattern).map((age) => described(context, age, systemWords(age.system))),
      { between: '. ', ...(after === undefined ? {} : { after }) },
    );

function panelSize(context: Context): Answer | undefined {
  const panels = agesOf(context, PANEL).filter(({ system }) => system.capacity?.value !== undefined);
  return answerOf(
    context,
    panels.map((age) => ({
      words: about(systemName(age), `system-${age.system.id}`, age.system.capacity?.value ?? ''),
      known: age.system.capacity ?? age.system,
    })),
  );
}

const OUTLET = /\b(gfci|gfi|afci|receptacle|outlet)s?\b/i;

const outlets: AnswerOf = (context) =>
  answerOf(
    context,
    [
      ...agesOf(context, OUTLET).map(
        (age): Named => ({
          words: about(
            systemName(age),
            `system-${age.system.id}`,
            age.system.installed?.value === undefined
              ? ''
              : `put in ${printDate(age.system.installed.value)}`,
          ),
          known: evidenceOf(context, age.system),
        }),
      ),
      ...conditionsLike(context, OUTLET),
    ],
    { between: '. ' },
  );

/** What burns gas. Where nothing is recorded to burn it, nothing is known of a line. */
function gas(context: Context): Answer | undefined {
  const burning = context.tally.ages.filter(
    ({ system }) => system.fuel === 'gas' || system.fuel === 'propane',
  );
  return answerOf(
    context,
    [
      ...burning.map(
        (age): Named => ({
          words: about(systemName(age), `system-${age.system.id}`, `runs on ${age.system.fuel}`),
          known: evidenceOf(context, age.system),
        }),
      ),
      ...workLike(context, /\bgas (line|pipe|valve)\b/i),
    ],
    { between: '. ' },
  );
}

function serviced(context: Context): Answer | undefined {
  const looked = [...agesOf(context, HEATS_ROOMS), ...agesOf(context, COOLING)].filter(
    (age, index, all) => age.system.serviced !== undefined && all.indexOf(age) === index,
  );
  return answerOf(
    context,
    looked.map(({ system }) => ({
      words: about(
        systemName({ system }),
        `system-${system.id}`,
        system.serviced === undefined ? '' : `last serviced ${printDate(system.serviced)}`,
      ),
      known: servicedBy(context, system) ?? evidenceOf(context, system),
    })),
  );
}

/** The work that tells of it has the paper. */
function servicedBy(context: Context, system: System): ReturnType<typeof evidenceOf> | undefined {
  const item = context.house.work.find(
    (one) => one.systems.includes(system.id) && (one.did === 'serviced' || one.did === 'cleaned'),
  );
  return item === undefined ? undefined : evidenceOf(context, item);
}

const CHIMNEY = /\b(chimney|fireplace|flue|hearth|wood stove)\b/i;

const chimney: AnswerOf = (context) =>
  answerOf(
    context,
    [
      ...agesOf(context, CHIMNEY).map((age) => described(context, age)),
      ...workLike(context, CHIMNEY),
      ...conditionsLike(context, CHIMNEY),
    ],
    { between: '. ' },
  );

/** How many of the places have one, and what is past its date. None recorded is no finding that there is none. */
function alarms(context: Context): Answer | undefined {
  const { places, others, ends } = context.tally.alarms;
  const recorded = [...new Set([...places.flatMap((place) => place.recorded), ...others])];
  if (recorded.length === 0) return undefined;
  const held = (warns: 'smoke' | 'carbon-monoxide'): string => {
    const all = places.filter((place) => place.warns === warns);
    const with_ = all.filter((place) => place.recorded.length > 0);
    return all.length === 0
      ? ''
      : `${with_.length} of ${all.length} ${all.length === 1 ? 'place' : 'places'}`;
  };
  const gasPlaces = held('carbon-monoxide');
  const due = ends.filter((end) => end.due === true);
  const where = due.map(({ alarm }) => placeName(context, alarm.where).toLowerCase());
  return {
    text: rich(
      link('Alarms', 'alarm-places'),
      ` are recorded: smoke in ${held('smoke') || 'no place that is looked for'}${gasPlaces === '' ? '' : `, carbon monoxide in ${gasPlaces}`}.`,
      due.length === 0 ? undefined : ` Past the date: ${where.join(', ')}.`,
    ),
    mark: markOfNamed(
      context,
      recorded.map((alarm) => ({ words: [], known: { evidence: alarmEvidence(context, alarm) } })),
    ),
  };
}

const ROOF_WORK = /\b(roof|roofing|underlayment|shingles?)\b/i;

/** What it is, and the permit of the roof itself or of work on it. */
function roofMaterial(context: Context): Answer | undefined {
  const permitWords = (id: string | undefined): string | undefined => {
    const permit = context.house.permits.find((one) => one.id === id);
    return permit && `permit ${permit.number ?? 'without a number'}, ${permitState(permit)}`;
  };
  const roofs = agesOf(context, ROOF).map(({ system }): Named => {
    const material = system.material ?? (system.is.split(/,\s*/).slice(1).join(', ') || 'material not said');
    return {
      words: about(
        systemName({ system }),
        `system-${system.id}`,
        `${material}; ${permitWords(system.permit) ?? 'no permit is named'}`,
      ),
      known: evidenceOf(context, system),
    };
  });
  const work = context.house.work.flatMap((item): Named[] => {
    const permit = permitWords(item.permit);
    if (permit === undefined || !ROOF_WORK.test(item.what)) return [];
    return [
      {
        words: about(upperFirst(item.what), `done-work-${item.id}`, `${item.did}; ${permit}`),
        known: evidenceOf(context, item),
      },
    ];
  });
  return roofs.length === 0 ? undefined : answerOf(context, [...roofs, ...work], { between: '. ' });
}

/** Pools stand among the barriers or have a pump. */
function pool(context: Context): ReturnType<AnswerOf> {
  const systems = agesOf(context, /\bpool\b/i).map((age) => described(context, age, systemWords(age.system)));
  if (systems.length === 0 && context.house.pool === undefined) return DOES_NOT_ARISE;
  const known = [...systems, ...workLike(context, /\bpool\b/i), ...conditionsLike(context, /\bpool\b/i)];
  return answerOf(context, known, { between: '. ' });
}

/** The words for it before its value, which may be one word in any script. */
const HOUSE_WORDS = {
  water: 'Water supply',
  sewer: 'Waste water',
  foundation: 'Foundation',
  parking: 'Parking',
} as const;

/** "Where the water comes from" and the like: a fact of `house:` in the owner's words. */
const houseFact =
  (word: 'water' | 'sewer' | 'foundation' | 'parking'): AnswerOf =>
  (context) => {
    const fact = context.house.house[word];
    if (fact === undefined) return undefined;
    if (fact.value === undefined)
      return fact.note === undefined
        ? undefined
        : { text: rich(`Not known: ${fact.note}.`), mark: markOf(context, fact, false) };
    return {
      // A word or two is no sentence; with a remark behind it, it ends like one.
      text: rich(
        `${HOUSE_WORDS[word]}: ${fact.value}`,
        fact.note === undefined ? undefined : `. ${fullStop(upperFirst(fact.note))}`,
      ),
      mark: markOf(context, fact),
    };
  };

function siding(context: Context): Answer | undefined {
  const { exterior, construction } = context.house.house;
  return answerOf(
    context,
    [exterior, construction].flatMap((fact): Named[] =>
      fact?.value === undefined
        ? []
        : [
            {
              words: rich(upperFirst(fact.value), fact.note === undefined ? undefined : `, ${fact.note}`),
              known: fact,
            },
          ],
    ),
    { between: '. ' },
  );
}

export const SYSTEMS_ANSWERED = {
  'supply-pipes': madeOf(PIPES, 'A pipe out of sight may be another.'),
  'drain-pipes': madeOf(DRAINS, 'A pipe out of sight may be another.'),
  'water-source': houseFact('water'),
  sewer: houseFact('sewer'),
  wiring: madeOf(WIRING, 'This is what is recorded; wires out of sight may be others.'),
  'panel-size': panelSize,
  outlets,
  'heat-fuel': withWords(HEATS_ROOMS),
  cooling: withWords(COOLING),
  gas,
  serviced,
  chimney,
  alarms,
  foundation: houseFact('foundation'),
  parking: houseFact('parking'),
  'roof-material': roofMaterial,
  siding,
  pool,
} satisfies Record<string, AnswerOf>;
