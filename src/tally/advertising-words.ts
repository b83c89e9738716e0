/**
 * A text as the words that a reader sees, each with its place in the text.
 *
 * Case, accents, curly quotes, hyphens, line breaks, invisible characters and letters borrowed from another
 * alphabet don't make another word. Takes time in proportion to the text.
 */
import { stemOf } from './stem.js';

export interface AdvertisingWord {
  /** In small letters, without accents. A comma is a word of its own; all other marks between sentences are ".". */
  readonly word: string;
  /** The singular, roughly: the same for `church` and `churches`. */
  readonly stem: string;
  /** UTF-16 offsets in the text. */
  readonly from: number;
  readonly to: number;
  /** A hyphen ties it to the word before. */
  readonly joined: boolean;
}

/** One character as it is seen, with where it stands. */
interface Seen {
  readonly letter: string;
  readonly from: number;
  readonly to: number;
}

/** Characters that take no room: controls of direction, joiners, soft hyphens, marks, and letters drawn as nothing. */
const UNSEEN = /\p{Cf}|\p{M}|[\u115f\u1160\u3164\uffa0]/u;

/** Letters of other alphabets that look like Latin ones, each before its Latin one. */
const LOOKALIKES: Readonly<Record<string, string>> = Object.fromEntries(
  'аa еe оo рp сc хx уy іi ѕs јj һh ԁd νv οo αa ιi ρp κk τt ıi'.split(' ').map((pair) => [...pair]),
);

/**
 * The words of a text. `unseen`: an invisible character within letters is `nothing`, or it is a `gap` between two
 * words; both are looked at, since nobody can tell which the writer meant.
 */
export function wordsInAdvertisement(
  text: string,
  unseen: 'nothing' | 'gap' = 'nothing',
): readonly AdvertisingWord[] {
  const words: AdvertisingWord[] = [];
  let letters: Seen[] = [];
  let joined = false;
  const finish = (): void => {
    if (letters.length === 0) return;
    words.push(wordOf(letters, joined));
    letters = [];
    joined = false;
  };
  for (const seen of inReadingOrder(text, unseen)) {
    if (isLetter(seen.letter)) {
      letters.push(seen);
      continue;
    }
    // An apostrophe within a word belongs to it.
    if (/['’ʼ‘`]/u.test(seen.letter) && letters.length > 0) {
      letters.push({ ...seen, letter: "'" });
      continue;
    }
    const before = letters;
    finish();
    if (/[-‐‑]/u.test(seen.letter) && before.length > 0) joined = true;
    else if (seen.letter.trim() !== '') joined = false;
    if (seen.letter === ',') words.push(mark(',', seen));
    else if (/[.!?;:…•]/u.test(seen.letter) && words.at(-1)?.word !== 'st') words.push(mark('.', seen));
  }
  finish();
  return words;
}

/** A letter or digit; most are of the first hundred characters, and are known without a search. */
const isLetter = (letter: string): boolean =>
  letter < '\u0080' ? /[a-z0-9]/.test(letter) : /[\p{L}\p{N}]/u.test(letter);

/** Whether invisible characters stand in a text, so that it has to be read in both ways. */
export const holdsUnseen = (text: string): boolean => /\p{Cf}/u.test(text);

const mark = (word: string, { from, to }: Seen): AdvertisingWord => ({
  word,
  stem: word,
  from,
  to,
  joined: false,
});

function wordOf(letters: readonly Seen[], joined: boolean): AdvertisingWord {
  const word = letters
    .map(({ letter }) => letter)
    .join('')
    .replace(/'+$/u, '')
    .replace(/'s$/u, '')
    .replaceAll("'", '');
  // Written from right to left the last letter stands first.
  const [first, last] = [letters[0] as Seen, letters.at(-1) as Seen];
  return {
    word,
    stem: stemOf(word),
    from: Math.min(first.from, last.from),
    to: Math.max(first.to, last.to),
    joined,
  };
}

const LEFTWARDS = '\u202e';
const ENDS_LEFTWARDS = /[\u202c\n]/u;

/** Characters in the order in which they are seen: what a direction override turns round is turned round. */
function inReadingOrder(text: string, unseen: 'nothing' | 'gap'): Seen[] {
  const all: Seen[] = [];
  let turned: Seen[] | undefined;
  let at = 0;
  const endTurned = (): void => {
    // Not spread into one call: an overlong list of arguments would end the program.
    for (const seen of turned?.reverse() ?? []) all.push(seen);
    turned = undefined;
  };
  for (const character of text) {
    const [from, to] = [at, at + character.length];
    at = to;
    if (character === LEFTWARDS) {
      endTurned();
      turned = [];
      continue;
    }
    if (turned !== undefined && ENDS_LEFTWARDS.test(character)) endTurned();
    for (const letter of lettersOf(character, unseen)) (turned ?? all).push({ letter, from, to });
  }
  endTurned();
  return all;
}

function lettersOf(character: string, unseen: 'nothing' | 'gap'): readonly string[] {
  if (character < '\u0080') return [character.toLowerCase()];
  if (UNSEEN.test(character)) return unseen === 'gap' && /\p{Cf}/u.test(character) ? [' '] : [];
  return [...character.normalize('NFKD').toLowerCase()]
    .filter((letter) => !UNSEEN.test(letter))
    .map((letter) => LOOKALIKES[letter] ?? letter);
}
