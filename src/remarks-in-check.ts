/**
 * What `sillplate check` says of a house's draft of its listing text: one message each for claims, words and length. All
 * of it is told by `sillplate remarks`.
 */
import path from 'node:path';
import { type CheckedDraft, checkDraft, countOf, isTooLong } from './check-draft.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import type { ReadHouse } from './intake/read-house.js';
import { readRemarksOf } from './intake/read-remarks.js';
import type { Context } from './packet/context.js';
import { wordMessage } from './remarks-as-data.js';
import { tooLongWords } from './remarks-head.js';
import type { Tally } from './tally/tally.js';

export interface RemarksInCheck {
  readonly folder: string;
  /** The folder as its writer would type it. */
  readonly shown: string;
  /** How its name is typed behind a command. */
  readonly typed: string;
  readonly read: ReadHouse;
  readonly tally: Tally;
  /** Of the house file. */
  readonly context: () => Context;
}

/** Warnings only: a packet never holds the draft. */
export async function remarksInCheck(order: RemarksInCheck): Promise<Diagnostic[]> {
  const { folder, shown, typed, read, tally, context } = order;
  const house = read.found?.house;
  if (house === undefined) return [];
  const name = house.listing?.remarks ?? 'remarks.txt';
  const draft = await readRemarksOf(folder, name, path.posix.join(shown, name));
  if ('trouble' in draft) {
    // Nobody has to write one; only what is named has to be there.
    const named = isNamed(read);
    if (draft.trouble.code === 'intake.no-file' && !named) return [];
    return [{ ...draft.trouble, severity: 'warning', ...(named ? { path: ['listing', 'remarks'] } : {}) }];
  }
  return warnings(checkDraft({ draft, house, tally, read, context: context() }), name, typed);
}

function isNamed({ spec }: ReadHouse): boolean {
  const { listing } = spec;
  return typeof listing === 'object' && listing !== null && Object.hasOwn(listing, 'remarks');
}

function warnings(checked: CheckedDraft, name: string, typed: string): Diagnostic[] {
  const { draft, claims, words } = checked;
  const at = (from: number, to: number): Pick<Diagnostic, 'place'> => ({
    place: draft.placeOf({ start: from, end: to }),
  });
  const see = `to see all of it marked, type  sillplate remarks ${typed}`;
  const told: Diagnostic[] = [];
  const wrong = claims.filter(({ verdict }) => verdict === 'contradicted' || verdict === 'wider');
  const [first] = wrong;
  if (first !== undefined)
    told.push({
      code: 'remarks.claims',
      severity: 'warning',
      ...at(first.from, first.to),
      message: `${name} claims ${claimsWords(checked)}; the first is “${first.says}”: ${first.because}`,
      hints: [see, ...(first.instead === undefined ? [] : [`write here  ${first.instead}`])],
    });
  const minded = words.filter(({ level }) => level !== 'date');
  const word = minded.find(({ level }) => level === 'block') ?? minded[0];
  if (word !== undefined)
    told.push({
      code: 'remarks.wording',
      severity: 'warning',
      ...at(word.from, word.to),
      message: `${minded.length === 1 ? 'words' : `words in ${minded.length} places`} that rules for advertisements name, in ${name}; ${minded.length === 1 ? 'here' : 'for one'} ${wordMessage(word)}`,
      hints: [see, ...(word.instead === undefined ? [] : [word.instead])],
    });
  if (isTooLong(checked))
    told.push({
      code: 'remarks.length',
      severity: 'warning',
      ...at(checked.stop?.to ?? 0, (checked.stop?.to ?? 0) + 1),
      message: `${name} has ${tooLongWords(checked)}`,
      hints: ['shorten it', `to have one written that fits, type  sillplate remarks --draft ${typed}`],
    });
  return told;
}

/** "8 things that the facts contradict and 6 that are wider than they are". */
function claimsWords(checked: CheckedDraft): string {
  const [against, wide] = [countOf(checked, 'contradicted'), countOf(checked, 'wider')];
  const things = (n: number): string => `${n} ${n === 1 ? 'thing' : 'things'}`;
  const are = (n: number): string => (n === 1 ? 'is' : 'are');
  if (wide === 0) return `${things(against)} that the facts contradict`;
  if (against === 0) return `${things(wide)} that ${are(wide)} wider than the facts`;
  return `${things(against)} that the facts contradict and ${wide} that ${are(wide)} wider than they are`;
}
