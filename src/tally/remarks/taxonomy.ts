/** What belongs to what: things to wider things, materials to wider materials, and which exclude each other. */
import { type RemarkThing, remarkClasses, remarkThings } from '../tables/remarks.js';

let byId: ReadonlyMap<string, RemarkThing> | undefined;

export function thing(id: string): RemarkThing {
  byId ??= new Map(remarkThings().map((one) => [one.id, one]));
  const found = byId.get(id);
  if (found === undefined) throw new Error(`the tables of remarks have no thing “${id}”`);
  return found;
}

/** Whether `id` is `wide` or belongs to it. */
export function belongsTo(id: string, wide: string): boolean {
  if (id === wide) return true;
  return thing(id).is.some((one) => belongsTo(one, wide));
}

/** Whether a member of the group can be said of the thing, or of anything that belongs to it. */
export function canBeSaidOf(group: string, id: string): boolean {
  const { of } = remarkClasses().groups[group] ?? { of: [] };
  return of.some((one) => belongsTo(id, one) || belongsTo(one, id));
}

/** Whether `member` is `wide` or a kind of it, within one group. */
export function isKindOf(group: string, member: string, wide: string): boolean {
  if (member === wide) return true;
  const { is } = remarkClasses().groups[group]?.members[member] ?? { is: [] };
  return is.some((one) => isKindOf(group, one, wide));
}

const excluded = new Map<string, boolean>();

/** Whether a thing that is `one` can't be `other`. Asked for every fact and word, so kept once it was worked out. */
export function exclude(group: string, one: string, other: string): boolean {
  const key = `${group} ${one} ${other}`;
  let answer = excluded.get(key);
  if (answer === undefined) {
    answer =
      !isKindOf(group, one, other) &&
      !isKindOf(group, other, one) &&
      !remarkClasses().mixes.some((pair) => pair.includes(one) && pair.includes(other));
    excluded.set(key, answer);
  }
  return answer;
}
