/**
 * What was done in one room, in a few words: the records behind "What was done", in their words, sorted by verb.
 *
 * A piece of work in one place is told by its own name. Work in several places is told in each by the finishes that
 * it brought there, where these are recorded: "floor" says more in a hall than "floors of four rooms".
 */
import type { House } from '../facts/house.js';
import type { Deed, Improvement } from '../tally/improvements.js';
import { type Context, placeName } from './context.js';
import { shortly } from './shortly.js';
import { subjectOf } from './tell.js';

export interface RoomDeeds {
  readonly deeds: readonly { readonly did: Deed; readonly subjects: readonly string[] }[];
  /** Work of several places that is told by the name of the whole. */
  readonly wholes: readonly Improvement[];
}

export function roomDeeds(context: Context, room: string): RoomDeeds {
  const here = context.tally.improvements.filter((one) => one.where.includes(room));
  const told = here.filter((one) => !isToldByOther(one, here) && !isToldBySafety(one));
  const byDeed = new Map<Deed, string[]>();
  for (const one of told) {
    const did = deedHere(context, one);
    const subjects = byDeed.get(did) ?? [];
    const words = shortly(withoutPlace(subjectOf(one), placeName(context, room)));
    byDeed.set(did, subjects.includes(words) ? subjects : [...subjects, words]);
  }
  return {
    deeds: [...byDeed].map(([did, subjects]) => ({ did, subjects })),
    wholes: told.filter((one) => one.where.length > 1),
  };
}

/** Verbs of work after which its finishes are there: a floor that came when carpet was removed was not removed. */
const LEAVES_FINISH: readonly Deed[] = [
  'new',
  'replaced',
  'added',
  'repaired',
  'refinished',
  'painted',
  'cleaned',
];

/** A finish that says nothing of its own was done as the work that it belongs to was. */
function deedHere(context: Context, one: Improvement): Deed {
  if (one.source.kind !== 'finish' || one.source.item.did !== undefined) return one.did;
  const work = context.house.work.find((item) => item.id === one.partOf);
  return work !== undefined && LEAVES_FINISH.includes(work.did) ? work.did : one.did;
}

/** A finish that its one-place work names already; and work of several places, where its own finishes stand for it here. */
function isToldByOther(one: Improvement, here: readonly Improvement[]): boolean {
  if (one.partOf !== undefined)
    return here.some((other) => isWork(other, one.partOf as string) && other.where.length === 1);
  if (one.source.kind !== 'work' || one.where.length === 1) return false;
  const { id } = one.source.item;
  return here.some((other) => other.partOf === id);
}

/** "Smoke and carbon monoxide alarms" of four rooms, written in one, would say that it has both: the plan of alarms knows. */
const isToldBySafety = (one: Improvement): boolean =>
  one.where.length > 1 && /\balarms?\b/i.test(subjectOf(one));

const isWork = ({ source }: Improvement, id: string): boolean =>
  source.kind === 'work' && source.item.id === id;

/** "Kitchen cabinet fronts" in the kitchen, "window casings, living room" in the living room: without the room. */
function withoutPlace(subject: string, place: string): string {
  const [whole, name] = [subject.toLowerCase(), place.toLowerCase()];
  if (whole === name) return 'the room';
  for (const behind of [`, ${name}`, ` of the ${name}`, ` of ${name}`])
    if (whole.endsWith(behind)) return subject.slice(0, -behind.length).toLowerCase();
  const rest = whole.startsWith(`${name} `) ? whole.slice(name.length + 1) : '';
  // "Kitchen and bath water lines" is more than the kitchen's.
  return rest === '' || /^(and|or|to|with)\b/.test(rest) ? whole : rest;
}

/** "Refinished: floor", a line for each verb. */
export const deedLines = ({ deeds }: RoomDeeds): string[] =>
  deeds.map(({ did, subjects }) => `${did.charAt(0).toUpperCase()}${did.slice(1)}: ${subjects.join(', ')}`);

/** "refinished floor; painted doors, walls", for running text. */
export const deedPhrase = ({ deeds }: RoomDeeds): string =>
  deeds.map(({ did, subjects }) => `${did} ${subjects.join(', ')}`).join('; ');

/** Where something was done, other than in the rooms of a list: ids of places, and '' for the whole house. */
export function placesBeside(
  house: House,
  improvements: readonly Improvement[],
  drawn: ReadonlySet<string>,
): string[] {
  const order = [...house.levels, ...house.rooms, ...house.stairs, ...house.structures].map(({ id }) => id);
  const named = new Set(improvements.flatMap((one) => (one.where.length === 0 ? [''] : one.where)));
  return [...named]
    .filter((id) => !drawn.has(id))
    .sort((one, other) => order.indexOf(one) - order.indexOf(other));
}
