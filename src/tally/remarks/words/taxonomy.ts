/** What belongs to what: things to wider things, materials to wider materials, and which exclude each other. */
import { type RemarkThing, remarkClasses, remarkThings } from '../../tables/remarks.js';

// Asked for every fact and word, so every answer is kept once it was worked out: the tables never change.
let byId: ReadonlyMap<string, RemarkThing> | undefined;
const wider = new Map<string, ReadonlySet<string>>();
const sayable = new Map<string, Map<string, boolean>>();
const kinds = new Map<string, Map<string, ReadonlySet<string>>>();
const excluded = new Map<string, Map<string, Map<string, boolean>>>();

const things = (): ReadonlyMap<string, RemarkThing> => {
  byId ??= new Map(remarkThings().map((one) => [one.id, one]));
  return byId;
};

export function thing(id: string): RemarkThing {
  const found = things().get(id);
  if (found === undefined) throw new Error(`the tables of remarks have no thing “${id}”`);
  return found;
}

/** Whether `id` is `wide` or belongs to it. */
export const belongsTo = (id: string, wide: string): boolean => id === wide || widerThan(id).has(wide);

/** All that a thing belongs to, and itself. */
function widerThan(id: string): ReadonlySet<string> {
  const before = wider.get(id);
  if (before !== undefined) return before;
  // The use of a room is asked for as well, and may be no thing of the tables: nothing is wider than that.
  const next = things().get(id)?.is ?? [];
  const found = new Set([id, ...next.flatMap((one) => [...widerThan(one)])]);
  wider.set(id, found);
  return found;
}

/** Whether a member of the group can be said of the thing, or of anything that belongs to it. */
export function canBeSaidOf(group: string, id: string): boolean {
  const answers = within(sayable, group);
  let answer = answers.get(id);
  if (answer === undefined) {
    const of = remarkClasses().groups[group]?.of;
    answer = of?.some((one) => belongsTo(id, one) || belongsTo(one, id)) === true;
    answers.set(id, answer);
  }
  return answer;
}

/** Whether `member` is `wide` or a kind of it, within one group. */
export const isKindOf = (group: string, member: string, wide: string): boolean =>
  member === wide || kindsOf(group, member).has(wide);

/** All that a member is a kind of, and itself. */
function kindsOf(group: string, member: string): ReadonlySet<string> {
  const members = within(kinds, group);
  const before = members.get(member);
  if (before !== undefined) return before;
  const is = remarkClasses().groups[group]?.members[member]?.is ?? [];
  const found = new Set([member, ...is.flatMap((one) => [...kindsOf(group, one)])]);
  members.set(member, found);
  return found;
}

/** Whether a thing that is `one` can't be `other`. */
export function exclude(group: string, one: string, other: string): boolean {
  const answers = within(within(excluded, group), one);
  let answer = answers.get(other);
  if (answer === undefined) {
    answer =
      !isKindOf(group, one, other) &&
      !isKindOf(group, other, one) &&
      !remarkClasses().mixes.some((pair) => pair.includes(one) && pair.includes(other));
    answers.set(other, answer);
  }
  return answer;
}

function within<T>(maps: Map<string, Map<string, T>>, key: string): Map<string, T> {
  let found = maps.get(key);
  if (found === undefined) {
    found = new Map();
    maps.set(key, found);
  }
  return found;
}
