/** The sentences that are printed beside the area figures, in our own words, and whether a standard may be named. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { printDate } from '../facts/date.js';
import type { House } from '../facts/house.js';
import type { LevelArea, OpenReading } from './area-answer.js';
import type { RoomFloor } from './area-rooms.js';
import { areaWords, listWords } from './area-words.js';

/** The standard's name with its edition; the editions differ, so it's never printed without. */
const STANDARD = 'ANSI Z765-2021';

export interface DeclarationInput {
  readonly house: House;
  readonly levels: readonly LevelArea[];
  readonly rooms: readonly RoomFloor[];
  /** What was estimated or assumed, a sentence each. */
  readonly remarks: readonly string[];
  readonly readings: readonly OpenReading[];
}

export interface Declaration {
  readonly sentences: readonly string[];
  /** The standard may be named as followed. */
  readonly toStandard: boolean;
  readonly diagnostics: readonly Diagnostic[];
}

/** Composes the declaration. A figure may be called measured to the standard only if all of it was followed. */
export function declare(input: DeclarationInput): Declaration {
  const { house, levels, rooms, remarks, readings } = input;
  const claimed = house.measured?.method === 'ansi-z765-2021';
  const against = reasonsAgainst(house, levels);
  const toStandard = claimed && against.length === 0;
  const unknown = levels.filter((level) => level.basis === 'none').map((level) => level.name);
  const sentences = [
    ...methodSentences(house, against, toStandard),
    ...remarks,
    ...(unknown.length === 0
      ? []
      : [`The area of ${listWords(unknown)} is not known and is in none of these figures.`]),
    ...rooms.filter((room) => isCounted(room, levels)).flatMap(heatSentence),
    ...readings.map((reading) => `Open reading, ${reading.room}: ${reading.words}`),
    'Each figure is rounded once, from its finished sum, to the nearest whole square foot, halves up (the standard has no rule for halves).',
    'This is not an appraisal. Whoever relies on the size should measure for themselves.',
  ];
  return { sentences, toStandard, diagnostics: claimed && !toStandard ? [notAllowed(against)] : [] };
}

function reasonsAgainst(house: House, levels: readonly LevelArea[]): string[] {
  const names = (wanted: (level: LevelArea) => boolean) =>
    listWords(levels.filter(wanted).map((level) => level.name));
  const unknown = names((level) => level.basis === 'none');
  const inside = names((level) => level.basis === 'rooms-only');
  const estimated = names((level) => level.estimate && level.basis !== 'rooms-only');
  const reasons: string[] = [];
  if (house.house.kind === 'apartment-style') reasons.push('it is not meant for apartment-style units');
  if (house.house.kind === 'manufactured')
    reasons.push('it is written for detached and attached single-family houses');
  if (levels.length === 0) reasons.push('no level is given');
  if (unknown !== '') reasons.push(`the area of ${unknown} is not known`);
  if (inside !== '') reasons.push(`${inside} ${/ and /.test(inside) ? 'have' : 'has'} inside sizes only`);
  if (estimated !== '') reasons.push(`some walls of ${estimated} are not included`);
  return reasons;
}

function methodSentences(house: House, against: readonly string[], toStandard: boolean): string[] {
  const { measured } = house;
  const apartment =
    house.house.kind === 'apartment-style'
      ? [
          `${STANDARD} is not meant for apartment-style units, where the area inside the outer walls is usual.`,
        ]
      : [];
  if (measured === undefined) return ['Who measured the house, when and how is not stated.', ...apartment];
  const who = measured.by === 'owner' ? 'the owner' : measurerOf(house, measured.by);
  const when = measured.date === undefined ? 'on a date that is not stated' : printDate(measured.date);
  const how = {
    'ansi-z765-2021': toStandard
      ? `Measured ${when} by ${who} to the outside finished faces of the walls, following ${STANDARD}. Finished area above grade and below grade is stated apart.`
      : `Measured ${when} by ${who}. Not measured to ${STANDARD}: ${against.join('; ')}.`,
    'inside-only': `Measured ${when} by ${who}, inside only. Not measured to ${STANDARD}.`,
    plans: `Taken ${when} by ${who} from plan dimensions, not from the house; it may differ as built. Not measured to ${STANDARD}.`,
    other: `Measured ${when} by ${who} in another way than ${STANDARD}.`,
  }[measured.method];
  return [
    how,
    ...apartment,
    ...(measured['inside-seen'] ? [] : ['The inside of the house was not seen when measuring.']),
    ...(measured.estimated.length === 0
      ? []
      : [`Not measured directly, but estimated: ${measured.estimated.join('; ')}.`]),
  ];
}

/** Who was hired is named only by editions that name people; the declaration is printed in all of them. */
const measurerOf = (house: House, by: string): string =>
  house.people.some((person) => person.id === by) ? 'a person who was hired' : by;

/** Whether a figure holds the room: those of a level that isn’t known don’t, nor a sum of rooms one without a size. */
function isCounted({ room, floor }: RoomFloor, levels: readonly LevelArea[]): boolean {
  const level = levels.find(({ id }) => id === room.level);
  return (
    level !== undefined && level.basis !== 'none' && (level.corners !== undefined || floor !== undefined)
  );
}

/** Heat is no part of the standard's own words; some states' guides ask for it. */
function heatSentence({ room, name, floor, rest }: RoomFloor): string[] {
  if (room.heated !== 'no') return [];
  if (rest !== 'above-finished' && rest !== 'below-finished') return [];
  const size = floor === undefined ? '' : ` (${areaWords(floor)} inside)`;
  return [
    `${name}${size} has no permanent heat. It is counted here; some state guides, such as North Carolina’s, leave it out of living area.`,
  ];
}

function notAllowed(against: readonly string[]): Diagnostic {
  return {
    code: 'tally.method',
    severity: 'warning',
    path: ['measured', 'method'],
    message: `the size can’t be called measured to ${STANDARD}: ${against.join('; ')}`,
    hints: [
      'measure every level at its outside faces, or inside with its walls, and give each an outline or a size',
      'on a half-finished level, call the level finished and its unfinished rooms unfinished, so that walls are counted',
      'write  method: other  (inside-only, plans)',
    ],
  };
}
