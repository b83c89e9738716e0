/** How a statement is known: its mark for the evidence margin. */
import { type HouseDate, printDate } from '../facts/date.js';
import type { Fact } from '../facts/fact.js';
import type { Document } from '../facts/house.js';
import { whenTaken } from '../tally/photo-days.js';
import { type Context, photoAnchor, photoIn } from './context.js';
import { mayLeaveFile } from './edition-house.js';
import type { EvidenceMark, Run } from './packet.js';
import { link, say, soft } from './rich.js';

/** Whatever says how it is known: a fact in its long form, or a thing with its evidence. */
export interface Known {
  readonly from?: string | undefined;
  readonly evidence: readonly string[];
  readonly note?: string | undefined;
  /** Printed as it stands behind an owner's statement, in place of "from …": "measured 14 June 2026". */
  readonly how?: string | undefined;
}

/** The papers and photos of a list, each once. A permit that was asked for and not found is no paper. */
function papersAmong(context: Context, ids: readonly string[]): string[] {
  const noPaper = context.house.permits.filter(
    ({ state }) => state === 'none-found' || state === 'not-known',
  );
  return [...new Set(ids)].filter((id) => !noPaper.some((permit) => permit.id === id));
}

/** What is behind a thing that was done, in every list that tells of it: a permit named beside it is a paper too. */
export function evidenceOf(
  context: Context,
  item: Known & { readonly permit?: string | undefined },
): Known & { readonly known: true } {
  const copied = item.evidence.some((id) =>
    context.whole.documents.some((one) => one.id === id && one.kind === 'permit'),
  );
  const permit = copied || item.permit === undefined ? [] : [item.permit];
  return { from: item.from, evidence: papersAmong(context, [...item.evidence, ...permit]), known: true };
}

/** Papers that can say what a warranty covers or what was agreed to stay; a receipt or permit for the thing can't. */
const PROMISES: readonly Document['kind'][] = ['warranty', 'letter', 'manual'];

/** A thing's evidence as far as it can be behind what somebody promised of it. */
export const promisedBy = (context: Context, known: Known): Known => ({
  from: known.from,
  evidence: known.evidence.filter((id) =>
    context.whole.documents.some((one) => one.id === id && PROMISES.includes(one.kind)),
  ),
});

export function markOf(context: Context, known: Known, isKnown = true): EvidenceMark {
  const evidence = papersAmong(context, known.evidence);
  if (!isKnown)
    return {
      standing: 'not-known',
      word: 'Not known',
      detail: known.from === undefined ? [] : [say(known.from)],
    };
  if (evidence.length === 0) {
    return {
      standing: 'owner',
      word: 'Owner’s statement',
      detail: known.from === undefined && known.how !== undefined ? [say(known.how)] : fromWords(known.from),
    };
  }
  const papers = papersOf(context, evidence);
  return {
    standing: 'documented',
    word: 'Documented',
    detail: papers.flatMap((run, index) => (index === 0 ? [run] : [say(', '), run])),
  };
}

export const markOfFact = <T>(context: Context, fact: Fact<T> | undefined): EvidenceMark =>
  fact === undefined ? NOT_KNOWN_MARK : markOf(context, fact, fact.value !== undefined);

const NOT_KNOWN_MARK: EvidenceMark = { standing: 'not-known', word: 'Not known', detail: [] };

/** Worked out by the program from other facts; rests on what those rest on. */
export function markOfSeveral(
  context: Context,
  facts: readonly (Known & { readonly known: boolean })[],
): EvidenceMark {
  const known = facts.filter((fact) => fact.known);
  if (known.length === 0) return NOT_KNOWN_MARK;
  const papered = known.filter((fact) => papersAmong(context, fact.evidence).length > 0);
  if (papered.length === 0) return { standing: 'owner', word: 'Owner’s statement', detail: [] };
  if (papered.length === facts.length && facts.length <= MOST_PAPERS)
    return markOf(context, { evidence: papered.flatMap((fact) => fact.evidence) });
  const count = [say(`${papered.length} of ${facts.length}`)];
  return papered.length === facts.length
    ? { standing: 'documented', word: 'Documented', detail: count }
    : { standing: 'owner', word: 'Documented in part', detail: count };
}

/** "owner" behind an owner's statement says nothing more. */
const fromWords = (from: string | undefined): Run[] =>
  from === undefined || /^(the )?owner$/i.test(from) ? [] : [say(`from ${from}`)];

/** More papers than these are counted instead of named. */
const MOST_PAPERS = 3;

function papersOf(context: Context, ids: readonly string[]): Run[] {
  const runs: Run[] = [];
  let onFile = 0;
  for (const id of ids) {
    const run = paper(context, id);
    if (run === undefined) onFile += 1;
    else if (!runs.some((one) => one.text === run.text)) runs.push(run);
  }
  if (onFile > 0) runs.push(soft(onFile === 1 ? 'a paper on file' : `${onFile} papers on file`));
  const most = context.rules.arrangement !== 'page-per-section' ? 1 : MOST_PAPERS;
  return runs.length <= most ? runs : [...runs.slice(0, most), soft(`${runs.length - most} more`)];
}

/** One paper in words. Undefined: this edition may say no more than that there is one. */
function paper(context: Context, id: string): Run | undefined {
  const permit = context.house.permits.find((one) => one.id === id);
  if (permit !== undefined)
    return link(permit.number === undefined ? 'permit' : `permit ${permit.number}`, `paper-${id}`);
  const document = context.house.documents.find((one) => one.id === id);
  if (document !== undefined)
    return link(
      withDate(
        context,
        document.kind === 'other' ? document.what : document.kind === 'label' ? 'label photo' : document.kind,
        document.date,
      ),
      `paper-${id}`,
    );
  const hidden = context.whole.documents.find((one) => one.id === id);
  // A paper with prices is named by its kind and date; one marked private by nothing at all.
  if (hidden !== undefined)
    return hidden.private ? undefined : soft(withDate(context, hidden.kind, hidden.date));
  const photo = photoIn(context, id);
  if (photo === undefined) return hiddenPhoto(context, id);
  return link(withDate(context, 'photo', whenTaken(photo)?.date), photoAnchor(context, id));
}

/** A label's photo shows serial numbers and is left out of some editions; that there is one may be said. */
function hiddenPhoto(context: Context, id: string): Run | undefined {
  const fact = context.whole.photos[id];
  const file = context.photos.get(id);
  if (
    fact === undefined ||
    file === undefined ||
    !mayLeaveFile(fact, context.tally.asOf) ||
    fact.when !== 'label'
  )
    return undefined;
  return soft(
    withDate(context, 'label photo', whenTaken({ taken: fact.taken, takenAt: file.takenAt })?.date),
  );
}

const withDate = (context: Context, words: string, date: HouseDate | undefined): string =>
  date === undefined || context.rules.arrangement !== 'page-per-section'
    ? words
    : `${words}, ${printDate(date)}`;
