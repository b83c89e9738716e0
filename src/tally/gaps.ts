/**
 * What each edition needs and the folder lacks, most asked-for first.
 *
 * A gap is no mistake: the packet prints "not known" and stays true. The list tells the writer which answer
 * is worth an evening. The order is common practice, no source: what buyers, agents and inspectors ask first.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import type { House, System } from '../facts/house.js';
import type { SystemAge } from './ages.js';
import { nameOf } from '../facts/place-name.js';
import type { AlarmPlan } from './alarms.js';
import type { Areas } from './area.js';

export type Audience = 'agent' | 'buyer' | 'care';

export interface Gap {
  readonly path: FactPath;
  readonly audiences: readonly Audience[];
  /** What is lacking, in a sentence without a full stop. */
  readonly lacks: string;
  readonly hint: string;
  /** Smaller is asked for more often. */
  readonly rank: number;
}

const EVERYONE: readonly Audience[] = ['agent', 'buyer', 'care'];
const SALE: readonly Audience[] = ['agent', 'buyer'];

export interface GapSources {
  readonly house: House;
  readonly ages: readonly SystemAge[];
  readonly areas: Areas;
  readonly alarms: AlarmPlan;
}

export function listGaps(sources: GapSources): Gap[] {
  const gaps = [
    ...bigSystems(sources),
    ...size(sources),
    ...ages(sources),
    ...permits(sources),
    ...alarms(sources),
    ...finishes(sources),
    ...told(sources),
    ...photos(sources),
  ];
  return gaps
    .map((gap, order) => ({ gap, order }))
    .sort((a, b) => a.gap.rank - b.gap.rank || a.order - b.order)
    .map(({ gap }) => gap);
}

export function gapDiagnostics(gaps: readonly Gap[]): Diagnostic[] {
  return gaps.map((gap) => ({
    code: 'tally.gap',
    severity: 'note',
    path: gap.path,
    rank: gap.rank,
    message: `${gap.lacks} (${gap.audiences.join(', ')})`,
    hints: [gap.hint],
  }));
}

/** The systems every buyer asks the age of, in the order they ask. */
const ASKED: readonly (readonly [name: string, pattern: RegExp, example: string])[] = [
  ['roof', /\broof/i, '{ id: roof, is: "roof, architectural shingle", installed: 2019~ }'],
  [
    'heating',
    /furnace|boiler|heat pump|heating|baseboard|radiator/i,
    '{ id: furnace, is: "furnace, gas", made: 2008/2009, fuel: gas }',
  ],
  [
    'cooling',
    /air condition|heat pump|cooling|mini-split/i,
    '{ id: ac, is: "air conditioner, central", made: 2015 }',
  ],
  [
    'water heater',
    /water heater/i,
    '{ id: water-heater, is: "water heater, tank, electric", made: 2026-01 }',
  ],
  [
    'electrical panel',
    /panel/i,
    '{ id: panel, is: electrical panel, capacity: "150 A", installed: not known }',
  ],
  [
    'supply pipes',
    /supply pipe|pipe, (copper|pex|cpvc|galvanized|polybutylene)/i,
    '{ id: supply-pipe, is: "supply pipe, copper", installed: ../1990 }',
  ],
  ['windows', /window/i, '{ id: windows, is: "window, vinyl", installed: not known }'],
];

function bigSystems({ house }: GapSources): Gap[] {
  return ASKED.flatMap(([name, pattern, example], order) =>
    house.systems.some((system) => pattern.test(system.is))
      ? []
      : [
          {
            path: ['systems'],
            audiences: SALE,
            lacks: `nothing is written about the ${name}`,
            hint: `add under systems:  - ${example}`,
            rank: 10 + order,
          },
        ],
  );
}

function size({ house, areas }: GapSources): Gap[] {
  if (house.levels.length === 0) {
    return [
      {
        path: ['levels'],
        audiences: SALE,
        lacks: 'no level is described, so no size can be worked out',
        hint: `add under levels:  - { id: main, name: Main level, grade: above, size: 40' x 26' }`,
        rank: 1,
      },
    ];
  }
  const gaps: Gap[] = areas.levels.flatMap((level, index) =>
    level.gross === undefined
      ? [
          {
            path: ['levels', index],
            audiences: SALE,
            lacks: `the size of ${level.name} is not known`,
            hint: `give its outline or size`,
            rank: 1,
          },
        ]
      : [],
  );
  if (house.measured === undefined) {
    gaps.push({
      path: ['measured'],
      audiences: SALE,
      lacks: 'nobody says who measured the house, when and how',
      hint: 'add  measured: { by: owner, date: 2026-06-14, method: ansi-z765-2021 }',
      rank: 2,
    });
  } else if (house.measured.date === undefined) {
    gaps.push({
      path: ['measured'],
      audiences: SALE,
      lacks: 'the date of the measuring is missing',
      hint: 'add  date: 2026-06-14',
      rank: 3,
    });
  }
  if (house.record === undefined) {
    gaps.push({
      path: ['record'],
      audiences: SALE,
      lacks: 'the public record’s figure is not given, and buyers see it',
      hint: 'add  record: { area: 1,410 sq ft, source: county card }',
      rank: 5,
    });
  }
  return gaps;
}

function ages({ ages: all }: GapSources): Gap[] {
  return all.flatMap(({ system, path, basis }): Gap[] => {
    const asked = ASKED.findIndex(([, pattern]) => pattern.test(system.is));
    const name = system.name ?? system.is;
    const gaps: Gap[] = [];
    if (basis === 'not known') {
      gaps.push({
        path,
        audiences: EVERYONE,
        lacks: `the age of “${name}” is not known`,
        hint: 'look at its label or the permit; a span will do, for example  made: 2005/2012',
        rank: asked < 0 ? 60 : 20 + asked,
      });
    }
    if (system.kept && system.conveys === undefined && isAppliance(system)) {
      gaps.push({
        path,
        audiences: SALE,
        lacks: `whether “${name}” stays with the house is not said`,
        hint: 'add  conveys: yes  or  conveys: no',
        rank: 45,
      });
    }
    for (const warranty of [system.warranty ?? []].flat()) {
      if (warranty['moves-to-buyer'] === 'not known') {
        gaps.push({
          path: [...path, 'warranty'],
          audiences: ['buyer', 'care'],
          lacks: `whether the warranty on “${name}” moves to the next owner is not known`,
          hint: 'read its terms, then write  moves-to-buyer: yes  or  no',
          rank: 55,
        });
      }
    }
    return gaps;
  });
}

const isAppliance = (system: System): boolean =>
  /range|dishwasher|refrigerator|washer|dryer|microwave|freezer|disposal/i.test(system.is);

function permits({ house }: GapSources): Gap[] {
  return house.work.flatMap((item, index): Gap[] => {
    const path: FactPath = ['work', index];
    const gaps: Gap[] = [];
    if (item.done === undefined) {
      gaps.push({
        path,
        audiences: EVERYONE,
        lacks: `when “${item.what}” was done is not said`,
        hint: 'add  done: 2026-05  or  done: 2025/2026',
        rank: 30,
      });
    }
    if (item.by === undefined) {
      gaps.push({
        path,
        audiences: ['buyer'],
        lacks: `who did “${item.what}” is not said`,
        hint: 'add  by: owner, family, not-known or a person’s id',
        rank: 31,
      });
    }
    const asks =
      /electric|circuit|outlet|panel|wiring|plumb|pipe|gas|furnace|heater|heat pump|structur|beam|roof|addition/i.test(
        `${item.what} ${item.trade ?? ''}`,
      );
    if (asks && item.permit === undefined && item.did !== 'cleaned' && item.did !== 'serviced') {
      gaps.push({
        path,
        audiences: ['buyer'],
        lacks: `no permit is named for “${item.what}”, and buyers ask`,
        hint: 'add  permit:  with its id, or a permit of state  none-found  after asking the office',
        rank: 33,
      });
    }
    return gaps;
  });
}

function alarms({ house, alarms: plan }: GapSources): Gap[] {
  return plan.places.flatMap((place): Gap[] => {
    if (place.recorded.length > 0) return [];
    const at = house.rooms.findIndex((room) => room.id === place.at);
    return [
      {
        path: at < 0 ? ['alarms'] : ['rooms', at],
        audiences: ['buyer'],
        lacks:
          `no ${place.warns === 'smoke' ? 'smoke' : 'carbon monoxide'} alarm is recorded ${place.why === 'storey' ? 'on' : place.why === 'outside bedrooms' ? '' : 'in'} ${place.where}`.replace(
            '  ',
            ' ',
          ),
        hint: `if one hangs there, add under alarms:  - { is: ${place.warns}, where: ${place.at}, made: 2026-01 }`,
        rank: 35,
      },
    ];
  });
}

function finishes({ house }: GapSources): Gap[] {
  return house.rooms.flatMap((room, index): Gap[] => {
    const path: FactPath = ['rooms', index];
    const gaps: Gap[] = [];
    const living =
      !['closet', 'storage', 'mechanical', 'attic', 'garage', 'stair'].includes(room.use) &&
      room.finish !== 'unfinished';
    const unfinishedLevel = house.levels.find((level) => level.id === room.level)?.finish === 'unfinished';
    if (living && !unfinishedLevel && !room.finishes.some((finish) => finish.on === 'floor')) {
      gaps.push({
        path,
        audiences: EVERYONE,
        lacks: `the floor of ${nameOf(room)} is not described`,
        hint: 'add under its finishes:  - { on: floor, what: oak strip, kept: yes }',
        rank: 50,
      });
    }
    for (const [at, finish] of room.finishes.entries()) {
      const here: FactPath = [...path, 'finishes', at];
      const painted = /paint/i.test(finish.what);
      const missing = painted
        ? (['colour', 'code', 'base', 'sheen'] as const).filter((word) => finish[word] === undefined)
        : [];
      if (missing.length > 0 && !finish.kept) {
        gaps.push({
          path: here,
          audiences: ['care'],
          lacks: `the paint on the ${finish.on} of ${nameOf(room)} lacks its ${missing.join(', ')}; name and code alone do not fix a colour`,
          hint: `read it off the lid, for example  ${missing[0]}: ${missing[0] === 'code' ? '"X-104"' : missing[0] === 'base' ? 'white base' : missing[0] === 'sheen' ? 'eggshell' : 'oat'}`,
          rank: 70,
        });
      }
      if (/tile|plank|carpet|laminate/i.test(finish.what) && finish.lot === undefined && !finish.kept) {
        gaps.push({
          path: here,
          audiences: ['care'],
          lacks: `the lot of the ${finish.what} in ${nameOf(room)} is not recorded`,
          hint: 'read it off the box, for example  lot: "A2219"',
          rank: 72,
        });
      }
      if (!finish.kept && finish.done === undefined) {
        gaps.push({
          path: here,
          audiences: EVERYONE,
          lacks: `when the ${finish.on} of ${nameOf(room)} was done is not said`,
          hint: 'add  done: 2026-04  or  kept: yes',
          rank: 52,
        });
      }
    }
    return gaps;
  });
}

const ALWAYS_ASKED: readonly (readonly [pattern: RegExp, ask: string])[] = [
  [/water|flood|leak|damp/i, 'Has water ever come in?'],
  [/insur|claim/i, 'Were there insurance claims?'],
  [/pest|termite|insect/i, 'Were there termites or other pests?'],
];

function told({ house }: GapSources): Gap[] {
  const gaps: Gap[] = ALWAYS_ASKED.flatMap(([pattern, ask], order) =>
    house.answers.some((answer) => pattern.test(answer.ask))
      ? []
      : [
          {
            path: ['answers'],
            audiences: ['buyer'],
            lacks: `the question “${ask}” has no answer yet`,
            hint: `add under answers:  - { ask: "${ask}", answer: not known }`,
            rank: 40 + order,
          },
        ],
  );
  if (house.conveys.length === 0) {
    gaps.push({
      path: ['conveys'],
      audiences: SALE,
      lacks: 'nothing says what stays and what goes',
      hint: 'add under conveys:  - { what: refrigerator, stays: yes }',
      rank: 44,
    });
  }
  if (house.care.length === 0) {
    gaps.push({
      path: ['care'],
      audiences: ['care'],
      lacks: 'there is no care task',
      hint: 'add under care:  - { what: change the furnace filter, every: 3 months, next: 2026-12-01 }',
      rank: 75,
    });
  }
  return gaps;
}

function photos({ house }: GapSources): Gap[] {
  return Object.entries(house.photos).flatMap(([id, photo]): Gap[] =>
    photo.private || photo.alt !== undefined
      ? []
      : [
          {
            path: ['photos', id],
            audiences: SALE,
            lacks: 'the photo has no words for those who can’t see it, so it is left out',
            hint: `add  alt: ${proposeAlt(photo.shows, photo.when)}   (a proposal; say what is to be seen)`,
            rank: 36,
          },
        ],
  );
}

const proposeAlt = (shows: string, when: string | undefined): string =>
  `${shows.charAt(0).toUpperCase()}${shows.slice(1)}${when === 'before' || when === 'after' ? `, ${when} the work` : ''}.`;
