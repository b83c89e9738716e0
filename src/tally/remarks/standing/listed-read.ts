/**
 * What the folder lists as known and not mended, by its own words: "the crack in the tub was repaired", "damper closes
 * fully", "broiler works fine". Parts that no table knows are found here by the noun that heads the entry.
 */
import { sensesIn } from '../items/item-meaning.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { thing } from '../words/taxonomy.js';
import { matches, type SetPhrase } from './set-phrases.js';

/** What is wrong, by its name; the stem of each is looked for in the text. */
const DAMAGE =
  /\b(crack|rust|fog|stain|leak|rot|hole|dent|scratch|chip|drip|seep|gap|sag|mould|mold|split|tear|burn|loose|broken|missing|draft|damp(?!er))/i;

const MENDED =
  /\b(?:(?:was|were|is|are|been|got|has been|have been|since|all|now|professionally|just|recently|fully)\s+){0,4}(?:repaired|fixed|patched|sealed|filled|mended|addressed|resolved|corrected|remedied|cured|replaced|taken care of|sorted(?: out)?|dealt with|welded|stopped|eliminated|gone|no longer|re-?grouted|reglazed|rebuilt|redone|made good)\b/i;

const WORKS =
  /^[^,.;:!?\n]{0,24}?\b(?:works?|working|functions?|runs?|operates?|seals?|closes?|opens?|latch(?:es)?|locks?|drains?|heats?|lights?|turns?|is|are|in)\b(?: \w+){0,2}? ?(?:fully|perfectly|well|fine|great|tight(?:ly)?|smoothly|properly|like (?:new|it should|a charm)|as (?:it should|new|designed)|beautifully|sound|intact|flawless(?:ly)?|(?:in )?(?:good|great|perfect|excellent|mint|working) (?:shape|order|condition|repair))\b/i;

const DENIED =
  /\b(no|not|never|n['’]t|without|except|but|needs?|should|could|would|will|to be|awaits?|buyer|before|credit|old)\b/i;

/** "drain does not close fully": what the thing is said not to do. */
const DOES_NOT = /\b(?:do(?:es)?|did|will|can) ?not ([a-z]+)/i;

const PARTS =
  /\b(?:in|of|at|on|to|from|by|near|between|under|behind|has|have|is|are|was|were|does|do|did|will|can|takes?|stands?|stood|came|drags?|drips?|sticks?|leaks?|sags?|rattles?|squeaks?)\b/i;

const wordsOf = (text: string): string[] =>
  matches(/[a-z]{3,}/g, text.toLowerCase()).map(([word]) => word.replace(/(es|s)$/, ''));

const PLAIN =
  /^(the|and|for|with|one|two|three|some|has|have|not|does|that|this|its|lower|upper|known|found|front|back|corner|side|foot|end|part|hairline|small|old|since|house|room|wall|open|fully|only|take|about)$/;

interface Listed {
  readonly where: string | undefined;
  /** "One of the windows", "left": which of several. */
  readonly which: string | undefined;
  readonly fact: FactSaid;
  /** The noun that heads the entry: "damper". */
  readonly head: string | undefined;
  readonly damage: string | undefined;
  /** All other nouns of it. */
  readonly names: readonly string[];
  readonly fails: string | undefined;
  readonly isOver: boolean;
}

const read = new WeakMap<Known['house'], readonly Listed[]>();

function listedOf({ house }: Known): readonly Listed[] {
  const before = read.get(house);
  if (before !== undefined) return before;
  const found = house.conditions.map(({ what, where, note, evidence }, index): Listed => {
    const [first = ''] = what.split(PARTS).filter((part) => /[a-z]{3}/i.test(part));
    const head = wordsOf(first).at(-1);
    const damage = DAMAGE.exec(what)?.[1]?.toLowerCase();
    return {
      where,
      which: ONE_OF.exec(what)?.[0].toLowerCase(),
      fact: { path: ['conditions', index], words: `known and not mended: ${what}`, evidence },
      head:
        head === undefined || DAMAGE.test(head) || PLAIN.test(head) || head === 'water' ? undefined : head,
      damage,
      names: wordsOf(what).filter((word) => !PLAIN.test(word) && !DAMAGE.test(word)),
      fails: DOES_NOT.exec(what)?.[1]?.toLowerCase(),
      // "Not since the wall was repaired": it may be called mended.
      isOver:
        /\b(not since|none since|since (repaired|fixed|mended)|was (repaired|fixed|sealed|caulked))\b/i.test(
          note ?? '',
        ),
    };
  });
  read.set(house, found);
  return found;
}

export function listedRead(known: Known, sentence: string): SetPhrase[] {
  return listedOf(known).flatMap((one) =>
    [...clausesOf(sentence)].flatMap(([from, clause]) => {
      const said = mended(known, one, clause) ?? works(known, one, clause);
      return said === undefined
        ? []
        : [{ from: from + said[0], to: from + said[1], judgement: judgement(one.fact) }];
    }),
  );
}

/** "The crack in the tub has been repaired." */
function mended(known: Known, one: Listed, clause: string): [number, number] | undefined {
  const { damage, head, names, where, isOver } = one;
  const deed = MENDED.exec(clause);
  if (isOver || deed === null || DENIED.test(clause.replace(/no longer/i, ''))) return undefined;
  const said = new Set(wordsOf(clause));
  const noun = damage === undefined ? -1 : clause.toLowerCase().search(new RegExp(`\\b${damage}`));
  const at =
    noun >= 0 ? noun : head === undefined ? -1 : clause.toLowerCase().search(new RegExp(`\\b${head}`));
  // A damage alone may be another one; its thing or its place must be named too.
  if (at < 0 || at > deed.index || (noun >= 0 && !names.some((word) => said.has(word)))) return undefined;
  // "Septic lid replaced": a head is enough where the entry is told by it, and no work tells of it.
  if (noun < 0 && (names.filter((word) => said.has(word)).length < 2 || isElsewhere(known, where, clause)))
    return undefined;
  return isWorkedOn(known, one) ? undefined : [at, deed.index + deed[0].length];
}

const PUT_RIGHT = /^(repaired|replaced|new|added|refinished|serviced)$/;

/** Whether some work of the folder may be what mended it. */
function isWorkedOn({ house }: Known, { names, damage, head, where }: Listed): boolean {
  const level = house.rooms.find(({ id }) => id === where)?.level;
  return house.work.some(({ what, why, how, did, where: there }) => {
    if (!PUT_RIGHT.test(did)) return false;
    const said = wordsOf(`${what} ${why ?? ''}`);
    // A part that some work names may have been put right wherever it is.
    if (damage === undefined && head !== undefined && wordsOf(`${what} ${how ?? ''}`).includes(head))
      return true;
    if (where !== undefined && !there.some((id) => id === where || id === level)) return false;
    return names.filter((word) => said.includes(word)).length > 1 || said.includes(damage ?? '-');
  });
}

/** "Damper closes fully", "every window latches". */
function works(
  known: Known,
  { which, head, fails, names, where }: Listed,
  clause: string,
): [number, number] | undefined {
  if (head === undefined || DENIED.test(clause)) return undefined;
  // An entry about one of several speaks against "every window latches", and against that one only.
  if (which !== undefined && !ALL.test(clause) && !clause.toLowerCase().includes(which)) return undefined;
  const noun = new RegExp(`\\b${head}(?:es|s)?\\b`, 'i').exec(clause);
  if (noun === null || isElsewhere(known, where, clause)) return undefined;
  const behind = clause.slice(noun.index + noun[0].length);
  const end = noun.index + noun[0].length;
  const verb =
    fails === undefined
      ? null
      : new RegExp(`^ (?:\\w+ ){0,2}?${fails}(?:es|s)?\\b(?! (?:to|into|onto|up)\\b)`, 'i').exec(behind);
  if (verb !== null) return [noun.index, end + verb[0].length];
  const ofOther = names.filter((word) => word !== head);
  const isKnown = sensesIn(head).some(({ tag }) => tag === 'thing');
  // What a table knows is judged where its place is known.
  const sound =
    isKnown && !ofOther.some((word) => clause.toLowerCase().includes(word)) ? null : WORKS.exec(behind);
  // "Is fully lined", "is well lit": the word goes with what stands behind it.
  if (sound === null || !SAYS_NO_MORE.test(behind.slice(sound[0].length))) return undefined;
  return [noun.index, end + sound[0].length];
}

const SAYS_NO_MORE = /^\s*($|(and|as|but|since|after|again|now|today|every|year|all|for)\b)/i;

const ONE_OF =
  /\b(one|two|three|some|left|right|rear|front|north|south|east|west|upper|lower|first|second|back|side)\b/i;
const ALL = /\b(all|every|each|both|everything|throughout)\b/i;

/** Whether the clause names a room or a level that is not the one of the entry. */
function isElsewhere({ house }: Known, where: string | undefined, clause: string): boolean {
  if (/\b(upstairs|upper|downstairs|main[- ](?:floor|level))\b/i.test(clause)) return true;
  const room = house.rooms.find(({ id }) => id === where);
  if (room === undefined) return false;
  const named = sensesIn(clause).flatMap((sense) =>
    sense.tag === 'thing' && thing(sense.id).room !== undefined ? [sense.id] : [],
  );
  return named.length > 0 && !named.some((id) => id === room.use || thing(id).room === room.use);
}

function* clausesOf(sentence: string): Generator<[number, string]> {
  for (const found of matches(/[^.,;:!?\n()•*—]+/g, sentence)) yield [found.index, found[0]];
}

const judgement = (fact: FactSaid): Judgement => ({
  verdict: 'contradicted',
  rule: 'condition.listed',
  because: 'the folder lists it as known and not mended',
  facts: [fact],
});
