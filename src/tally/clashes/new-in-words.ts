/**
 * “All new windows”, where one window is kept as found: the owner’s own words against the facts.
 *
 * Only words that leave nothing out are looked for (all, every, throughout, everything). The agent’s draft is read
 * elsewhere and more closely.
 */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { Finish, House } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import { ROOF } from '../roof.js';
import { isThere } from '../still-there.js';
import { systemName } from '../system-name.js';
import { tradeOf } from '../trades.js';
import { type ClashSources, clashOf } from './clash.js';
import { textsOf } from './texts-of.js';

const KEPT = 'kept as found';

/** One thing that was not made new. */
interface Old {
  readonly name: string;
  readonly path: FactPath;
  /** "kept as found", "refinished". */
  readonly how: string;
  /** `on`: the surface of a finish. `is`: what a system is, empty for a finish. `room`: the use of its room. */
  readonly of: {
    readonly on: Finish['on'] | undefined;
    readonly is: string;
    readonly room: string | undefined;
  };
}

/** What people call a class of things, and which things are of it. */
const SUBJECTS: readonly (readonly [words: readonly string[], fits: (old: Old) => boolean])[] = [
  [['window', 'windows'], ({ of }) => of.on === 'windows' || /^window\b/i.test(of.is)],
  [['floor', 'floors', 'flooring'], ({ of }) => of.on === 'floor'],
  [['door', 'doors'], ({ of }) => of.on === 'doors'],
  [['cabinet', 'cabinets', 'cabinetry'], ({ of }) => of.on === 'cabinets'],
  [['counter', 'counters', 'countertop', 'countertops'], ({ of }) => of.on === 'counter'],
  [['paint', 'walls'], ({ of }) => of.on === 'walls'],
  [['trim'], ({ of }) => of.on === 'trim'],
  [['wiring', 'electrical'], ({ of }) => /^wiring\b/i.test(of.is)],
  [['plumbing', 'pipe', 'pipes', 'piping'], ({ of }) => /^(supply|drain) pipes\b/i.test(of.is)],
  [['roof', 'roofs', 'roofing'], ({ of }) => ROOF.test(of.is)],
  [['appliance', 'appliances'], ({ of }) => tradeOf(of.is) === 'appliances' && !/opener/.test(of.is)],
  [['toilet', 'toilets'], ({ of }) => of.on === 'toilet' || /^toilet\b/i.test(of.is)],
  [['faucet', 'faucets'], ({ of }) => of.on === 'faucet' || /^faucet\b/i.test(of.is)],
  [['light', 'lights', 'lighting'], ({ of }) => of.on === 'lights' || /^light\b/i.test(of.is)],
  [['kitchen', 'kitchens'], ({ of }) => of.room === 'kitchen'],
  [['bath', 'baths', 'bathroom', 'bathrooms'], ({ of }) => of.room === 'bath'],
  [['everything'], () => true],
];

/**
 * Words that leave nothing out; the first group holds what they are said of. “Not all windows are new” says no such
 * thing.
 */
const CLAIMS: readonly RegExp[] = [
  /(?<!\bnot )\b(?:all|entirely|completely|fully)[ -](?:of )?(?:the )?(?:brand )?new((?: [a-z-]+){1,3})/g,
  /(?<!\bnot )\b(?:all|every)((?: [a-z-]+){1,4}?) (?:is |are |was |were |has been |have been )?(?:brand )?(?:new|replaced|renewed)\b/g,
  /\bnew((?: [a-z-]+){1,3}) (?:throughout|everywhere|in every room|in all rooms)\b/g,
  /(?<!\bnot )\b(everything) (?:is|was|has been) (?:brand )?(?:new|replaced|renewed)\b/g,
];

/** Said of a part of the house only: “all new flooring in the kitchen”. “In May 2026” is no part of it. */
const SCOPE =
  /\bof the\b|\b(?:in|on|at) (?!(?:early |late |about )?(?:\d{4}|january|february|march|april|may|june|july|august|september|october|november|december|spring|summer|autumn|fall|winter)\b)/;
/** “In the kitchen, all new …”; whatever else stands before may be of another thing. */
const BEGINS_WITH_PLACE = /^\s*(?:in|on|at) /;
const WHOLE = /\b(in|of|throughout) (the (whole )?house|every room|all rooms)\b/;

export function newInWords({ house }: ClashSources): Diagnostic[] {
  const olds = oldThings(house);
  return ownWords(house).flatMap(([words, path]) =>
    claimsIn(words).flatMap(({ said, fits }): Diagnostic[] => {
      const [first, ...more] = olds.filter(fits);
      if (first === undefined) return [];
      const others = more.length === 0 ? '' : ` (and ${more.length} more)`;
      return [
        clashOf({
          severity: 'warning',
          path,
          beside: first.path,
          message: `“${said}” is said here, and ${first.name} is ${first.how}${others}`,
          hints: [
            'say which are new, and where, in place of all of them',
            first.how === KEPT
              ? 'if that one was changed as well, take out  kept:  there, and add  did:  and  done:'
              : 'if that one was made new as well, correct  did:  there',
          ],
        }),
      ];
    }),
  );
}

interface Claim {
  readonly said: string;
  /** Whether it is said of a thing. */
  readonly fits: (old: Old) => boolean;
  readonly at: number;
}

function claimsIn(words: string): Claim[] {
  const lower = words.toLowerCase();
  const found = CLAIMS.flatMap((pattern) =>
    [...lower.matchAll(pattern)].flatMap((match): Claim[] => {
      const [whole, about = ''] = match;
      const end = match.index + whole.length;
      const [clause = ''] = lower.slice(end).split(/[.;,]/);
      const [before = ''] = lower.slice(0, match.index).split(/[.;]/).slice(-1);
      const around = `${about.replace(/^ (?:of (?:the )?|the )/, ' ')}${clause.slice(0, 40)}`;
      const thing = thingIn(about.trim());
      if (thing === undefined || isOfPart(around) || (BEGINS_WITH_PLACE.test(before) && isOfPart(before)))
        return [];
      // The words after the thing say more of it or begin something else.
      const rest = whole.endsWith(about) ? about.trim().length - thing.end : 0;
      return [{ said: words.slice(match.index, end - rest), fits: thing.fits, at: match.index }];
    }),
  );
  // Two patterns can fit one phrase, or parts of one: it is one claim.
  const taken: Claim[] = [];
  for (const one of found) if (!taken.some((other) => overlap(one, other))) taken.push(one);
  return taken;
}

const isOfPart = (words: string): boolean => SCOPE.test(words) && !WHOLE.test(words);

const overlap = (one: Claim, other: Claim): boolean =>
  one.at < other.at + other.said.length && other.at < one.at + one.said.length;

/** One at most: no word is of two subjects. */
const subjectOf = (word: string): Claim['fits'] | undefined =>
  SUBJECTS.find(([words]) => words.includes(word))?.[1];

/** The first thing that is named, and where its name ends. “Kitchen cabinets” are those that are of both words. */
function thingIn(about: string): { readonly fits: Claim['fits']; readonly end: number } | undefined {
  const words = about.split(' ').map((word) => ({ word, fits: subjectOf(word) }));
  const first = words.findIndex(({ fits }) => fits !== undefined);
  if (first < 0) return undefined;
  const after = words.findIndex(({ fits }, at) => at > first && fits === undefined);
  const named = words.slice(0, after < 0 ? words.length : after);
  return {
    fits: (old) => named.every(({ fits }) => fits === undefined || fits(old)),
    end: named.map(({ word }) => word).join(' ').length,
  };
}

function oldThings(house: House): Old[] {
  const useOf = (id: string | undefined) => house.rooms.find((room) => room.id === id)?.use;
  return [
    ...house.rooms.flatMap((room, at) =>
      room.finishes.flatMap((finish, index): Old[] => {
        const how = finish.kept
          ? KEPT
          : finish.did === 'refinished' || finish.did === 'repaired'
            ? finish.did
            : undefined;
        return how === undefined
          ? []
          : [
              {
                name: `“${finish.what}” (${finish.on}, ${nameOf(room)})`,
                path: ['rooms', at, 'finishes', index, finish.kept ? 'kept' : 'did'],
                how,
                of: { on: finish.on, is: '', room: room.use },
              },
            ];
      }),
    ),
    ...house.systems.flatMap((system, at): Old[] =>
      system.kept && isThere(system)
        ? [
            {
              name: `“${systemName(system)}”`,
              path: ['systems', at, 'kept'],
              how: KEPT,
              of: { on: undefined, is: system.is, room: useOf(system.where) },
            },
          ]
        : [],
    ),
  ];
}

/** What the owner wrote in sentences, each with its path. */
function ownWords(house: House): (readonly [string, FactPath])[] {
  return [
    ...house.work.flatMap((item, at) => textsOf(['work', at], item, ['what', 'how', 'note'])),
    ...house.systems.flatMap((system, at) => textsOf(['systems', at], system, ['name', 'note'])),
    ...house.rooms.flatMap((room, at) => textsOf(['rooms', at], room, ['note'])),
    ...house.answers.flatMap(({ answer }, at): (readonly [string, FactPath])[] =>
      answer.value === undefined ? [] : [[answer.value, ['answers', at, 'answer']]],
    ),
    ...house.conveys.flatMap((one, at) => textsOf(['conveys', at], one, ['what', 'note'])),
    ...Object.entries(house.photos).flatMap(([id, photo]) =>
      textsOf(['photos', id], photo, ['shows', 'alt']),
    ),
  ];
}
