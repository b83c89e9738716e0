/**
 * What a house tells otherwise than a packet that was given to somebody.
 *
 * Takes what the packet said and the same edition of the present facts, made for the same day: that time passes is no
 * change. Gives what changed, fact by fact, corrections known as such. Old words that this edition does not say now are
 * kept back.
 */
import type { House } from '../facts/house.js';
import { follows, toldBefore } from './changes-corrected.js';
import { pairFacts, plainWords } from './changes-pairs.js';
import { type MaySayAgain, maySayAgain } from './changes-withheld.js';
import { type CollectedFact, collectFacts } from './collect-facts.js';
import { cutWords } from './cut-words.js';
import { FACTS_NAME, type FactsFile, readFactsFile, type SaidFact } from './facts-file.js';
import type { EditionName, EvidenceMark, Packet } from './packet.js';

/** A packet that was given to somebody. */
export interface Delivered {
  /** Running number of the delivery. */
  readonly number: number;
  /** Name of its folder. */
  readonly name: string;
  /** The owner's to know: printed in the house file alone. */
  readonly to: readonly string[];
  readonly note: string | undefined;
  /** YYYY-MM-DD it was handed over. */
  readonly given: string;
  readonly edition: EditionName;
  readonly said: FactsFile;
}

/** A statement that is told with other words. */
export interface ToldOtherwise {
  /** Of the statement as it is now. */
  readonly id: string;
  readonly section: string;
  /** What it is about: a row's heading, an entry's label, a question, or what it stands under. */
  readonly about: string;
  /** Undefined where its old words may not be repeated in this edition. */
  readonly was: string | undefined;
  /** Its old words in any case, for the owner alone. */
  readonly oldWords: string;
  readonly is: string;
  readonly mark: EvidenceMark | undefined;
  /** The words are the same, and how it is known isn't: so it was known. */
  readonly wasKnown: string | undefined;
  /** The correction that it follows from. */
  readonly correction: CollectedFact | undefined;
  /** The whole statement as it is now. */
  readonly now: SaidFact;
}

export interface ChangesSince {
  readonly delivered: Delivered;
  /** Facts that were corrected since, as their writer names it. */
  readonly corrections: readonly CollectedFact[];
  readonly told: readonly ToldOtherwise[];
  readonly added: readonly { readonly fact: SaidFact; readonly mark: EvidenceMark | undefined }[];
  /** What is no longer said. Its words may have been withheld since. */
  readonly gone: readonly SaidFact[];
  /** Statements with the same words and the same standing that name other papers. */
  readonly otherPapers: number;
  /** Headings below which statements stand that stood elsewhere. */
  readonly movedTo: readonly string[];
  readonly pictures: { readonly added: number; readonly exchanged: number; readonly gone: number };
  /** Drawings that were made anew; what they show is told in words as well. */
  readonly drawings: number;
  /** What stands at the head of the packet: the house's name, where it stands, the title. */
  readonly head: readonly {
    readonly id: 'name' | 'place' | 'title';
    readonly about: string;
    readonly was: string;
    readonly is: string;
  }[];
  /** Another version of the program made it, and may have worded the same facts in another way. */
  readonly otherProgram: boolean;
}

/** Ids of what tells of deliveries itself begin so; it is compared with nothing. */
export const CHANGES_PREFIX = 'changes-';

/** Ids of the sections that tell what was said once: of a published edition, and of the house file. */
export const CHANGES_SECTION = 'changes';
export const DELIVERIES_SECTION = 'deliveries';

/** An edition of the present facts, made ready to be held against what was delivered. */
export interface Present {
  /** The house as this edition may know it. */
  readonly shown: House;
  readonly is: FactsFile;
  readonly drawings: ReadonlySet<string>;
  readonly marks: ReadonlyMap<string, EvidenceMark>;
  readonly mayBeSaid: MaySayAgain;
}

/** `now` is the edition of the present facts, made for the day of the delivered packet. */
export function presentOf(now: Packet, whole: House, shown: House): Present {
  const is = factsOf(now);
  return {
    shown,
    is,
    drawings: drawingsIn(now),
    marks: marksIn(now),
    mayBeSaid: maySayAgain(whole, shown, is),
  };
}

export function changesSince(delivered: Delivered, present: Present): ChangesSince {
  const was = delivered.said;
  const { shown, is, drawings, marks } = present;
  const told = comparable(was, drawings);
  const { pairs, added, gone } = pairFacts(told, comparable(is, drawings));
  const isPicture = ({ picture }: SaidFact): boolean => picture !== undefined;
  const corrections = newCorrections(delivered, shown);
  const changed = pairs.filter((pair) => !isPicture(pair.is));
  const otherwise = changed.flatMap((pair): ToldOtherwise[] => {
    const from = corrections.filter((each) => follows(pair.was, pair.is, each, shown));
    const one = toldOtherwise(pair.was, pair.is, marks.get(pair.is.id), (text) =>
      present.mayBeSaid(text, from),
    );
    return one === undefined ? [] : [{ ...one, correction: from[0] }];
  });
  const listed = new Set(is.facts.filter(({ id }) => CORRECTION.test(id)).map(correctionWords));
  return {
    delivered,
    // One that the edition lists, or that a statement follows from: a fact that it does not print is not told here either.
    corrections: corrections.filter(
      (each) =>
        otherwise.some((one) => one.correction === each) ||
        (listed.has(wordsOfCorrection(each)) && saidBefore(was, each, shown)),
    ),
    told: otherwise,
    added: added.filter((fact) => !isPicture(fact)).map((fact) => ({ fact, mark: marks.get(fact.id) })),
    gone: gone.filter((fact) => !isPicture(fact)),
    otherPapers: changed.filter(
      ({ was: a, is: b }) => sameWords(a, b) && same(a.known, b.known) && !same(a.by, b.by),
    ).length,
    movedTo: [
      ...new Set(
        changed
          .filter((pair) => standsUnder(pair.was) !== standsUnder(pair.is))
          .map(({ is: { section, under } }) => under?.at(-1) ?? section),
      ),
    ],
    pictures: {
      added: added.filter(isPicture).length,
      exchanged: pairs.filter(
        ({ was: a, is: b }) => isPicture(b) && (a.picture !== b.picture || !sameWords(a, b)),
      ).length,
      gone: gone.filter(isPicture).length,
    },
    drawings: is.facts.filter(
      (fact) => drawings.has(fact.id) && !was.facts.some((one) => one.id === fact.id && sameWords(one, fact)),
    ).length,
    head: headOf(was, is),
    otherProgram: was.program !== is.program,
  };
}

/** Whether there is nothing to tell. */
export const nothingChanged = (one: ChangesSince): boolean =>
  one.corrections.length + one.told.length + one.added.length + one.gone.length + one.otherPapers === 0 &&
  one.movedTo.length + one.drawings + one.head.length === 0 &&
  one.pictures.added + one.pictures.exchanged + one.pictures.gone === 0;

/** What a packet says, as its own data tell it. */
export function factsOf(packet: Packet): FactsFile {
  const found = packet.exports.find(({ file }) => file === FACTS_NAME);
  const facts = found === undefined || !('text' in found) ? undefined : readFactsFile(found.text);
  if (facts === undefined) throw new Error('a packet without its own data');
  return facts;
}

/** Rows of the list of corrections: those that are new are told as corrections, with their own words. */
const CORRECTION = /^correction-\d+$/u;

/** Drawings show what is told in words as well, and are counted by themselves. */
const comparable = ({ facts }: FactsFile, drawings: ReadonlySet<string>): SaidFact[] =>
  facts.filter(
    ({ id }) =>
      !id.startsWith(CHANGES_PREFIX) && !CORRECTION.test(id) && !drawings.has(id) && !DRAWN.test(id),
  );

/** Ids of drawings that the present packet may no longer have. */
const DRAWN = /^(?:ages-drawing-\d+|drawn-.+|plan-.+)$/u;

const drawingsIn = ({ sections }: Packet): ReadonlySet<string> =>
  new Set(
    sections.flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === 'drawing' ? [block.id] : []))),
  );

/** Corrections that the delivered packet did not know: dated on its day or later, and not in its own list. */
function newCorrections({ said }: Delivered, shown: House): CollectedFact[] {
  const known = new Set(said.facts.filter(({ id }) => CORRECTION.test(id)).map(correctionWords));
  return collectFacts(shown).filter(
    (each) =>
      each.fact.was !== undefined &&
      (each.fact.corrected?.latest ?? said.asOf) >= said.asOf &&
      !known.has(wordsOfCorrection(each)),
  );
}

const correctionWords = ({ about, says }: SaidFact): string => {
  const cells = typeof says === 'string' ? [says] : says.map(({ cell }) => cell);
  return plainWords([about ?? '', ...cells.slice(0, 2)].join('\n')).toLowerCase();
};
const wordsOfCorrection = ({ words, before, printed }: CollectedFact): string =>
  plainWords([words, before ?? '', printed].join('\n')).toLowerCase();

/** Whether a packet told the earlier value: to whom it was never told, nothing has to be corrected. */
const saidBefore = ({ facts }: FactsFile, correction: CollectedFact, house: House): boolean =>
  facts.some((said) => {
    const { before = '' } = correction;
    if (!CORRECTION.test(said.id)) return toldBefore(said, correction, house);
    // Of an earlier correction only what it was corrected to.
    const now = typeof said.says === 'string' ? '' : (said.says[1]?.cell ?? '');
    return same(said.about?.toLowerCase(), correction.words.toLowerCase()) && same(now, before);
  });

/** All that a statement says, with what it is about. */
function wordsOf({ about, says }: SaidFact): string {
  const said =
    typeof says === 'string' ? says : says.map(({ column, cell }) => `${column}: ${cell}`).join('; ');
  return about === undefined ? said : `${about}: ${said}`;
}

const same = (a: string | undefined, b: string | undefined): boolean =>
  plainWords(a ?? '') === plainWords(b ?? '');
/** Whether two statements say the same of the same; signs and blanks are no difference. */
export const sameWords = (a: SaidFact, b: SaidFact): boolean => same(wordsOf(a), wordsOf(b));
const standsUnder = ({ section, under }: SaidFact): string =>
  plainWords([section, ...(under ?? [])].join('\n'));

/** Undefined where it says the same and is known in the same way. */
function toldOtherwise(
  was: SaidFact,
  is: SaidFact,
  mark: EvidenceMark | undefined,
  mayBeSaid: (text: string) => boolean,
): Omit<ToldOtherwise, 'correction'> | undefined {
  const head = {
    id: is.id,
    section: is.section,
    about: aboutOf(is),
    mark,
    now: is,
  };
  if (sameWords(was, is)) {
    if (same(was.known, is.known)) return undefined;
    const words = shownWords(is);
    return { ...head, was: words, oldWords: words, is: words, wasKnown: was.known ?? 'no mark' };
  }
  const [before, after] = wordsThatDiffer(was, is);
  return {
    ...head,
    was: mayBeSaid(before) ? before : undefined,
    oldWords: before,
    is: after,
    wasKnown: undefined,
  };
}

/** What a statement is about: a row's heading, a question, or how it begins, below its heading where that says little. */
export function aboutOf(fact: SaidFact): string {
  const { about, under, section } = fact;
  if (about !== undefined) return about;
  const lead = leadOf(fact);
  const over = under?.at(-1) ?? section;
  if (lead === '') return over;
  return lead.length < SHORT_LEAD && under !== undefined
    ? `${over}: ${lead.charAt(0).toLowerCase()}${lead.slice(1)}`
    : lead;
}

/** Characters of a beginning that says little by itself ("Floor"), and of one that is too long for a name. */
const SHORT_LEAD = 16;
const LONGEST_LEAD = 70;

/** The first words of a text, up to its first stop or colon. */
function leadOf({ says }: SaidFact): string {
  if (typeof says !== 'string') return '';
  const lead = /^[^.:;!?\n]+/u.exec(says)?.[0].trim() ?? '';
  return cutWords(lead, LONGEST_LEAD);
}

/** What a statement says behind how it begins. */
export function restOf(fact: SaidFact): string {
  const words = shownWords(fact);
  const lead = leadOf(fact);
  if (fact.about !== undefined || lead === '') return words;
  return lead.endsWith(' …') ? words : words.slice(lead.length).replace(/^[\s.:;!?]+/u, '');
}

/** What a statement says behind what it is about. */
export const shownWords = ({ says }: SaidFact): string =>
  typeof says === 'string'
    ? says
    : says
        .filter(({ cell }) => cell !== '')
        .map(({ column, cell }) => (says.length === 1 ? cell : `${column}: ${cell}`))
        .join('; ');

/** Of two rows only the cells that differ; with what they are about, where that differs. */
function wordsThatDiffer(was: SaidFact, is: SaidFact): [string, string] {
  const named = (fact: SaidFact, words: string): string =>
    same(was.about, is.about) || fact.about === undefined ? words : `${fact.about}: ${words}`;
  if (typeof was.says === 'string' || typeof is.says === 'string' || was.says.length !== is.says.length)
    return [named(was, shownWords(was)), named(is, shownWords(is))];
  const [a, b] = [was.says, is.says];
  const differs = a.map((cell, n) => !same(cell.cell, b[n]?.cell) || !same(cell.column, b[n]?.column));
  const only = (fact: SaidFact, cells: typeof a): SaidFact => ({
    ...fact,
    says: cells.filter((_cell, n) => differs[n] === true),
  });
  return [named(was, emptied(shownWords(only(was, a)))), named(is, emptied(shownWords(only(is, b))))];
}

const emptied = (words: string): string => (words === '' ? 'nothing' : words);

function headOf(was: FactsFile, is: FactsFile): ChangesSince['head'] {
  const heads = [
    ['name', 'the name of the house', was.house.name, is.house.name],
    ['place', 'where it stands', was.house.place, is.house.place],
    ['title', 'the title', was.title, is.title],
  ] as const;
  return heads.flatMap(([id, about, before, after]) =>
    same(before, after) ? [] : [{ id, about, was: before, is: after }],
  );
}

/** How each statement of a packet is known, by its id. */
function marksIn({ sections }: Packet): ReadonlyMap<string, EvidenceMark> {
  const marks = new Map<string, EvidenceMark>();
  const take = (id: string, mark: EvidenceMark | undefined): void => {
    if (mark !== undefined) marks.set(id, mark);
  };
  for (const block of sections.flatMap(({ blocks }) => blocks)) {
    if (block.kind === 'statement' || block.kind === 'question') take(block.id, block.mark);
    if (block.kind === 'list') for (const item of block.items) take(item.id, item.mark);
    if (block.kind === 'table') for (const row of block.rows) take(row.id, row.mark);
    if (block.kind === 'record') for (const entry of block.entries) take(entry.id, block.mark);
  }
  return marks;
}
