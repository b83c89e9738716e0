/** "By a flooring crew": whoever no table names. */
import { has, isBoundary, type Unit, wordOf } from '../words/units.js';
import { isPlainWord } from '../words/word-kinds.js';

/** "tiled by a flooring crew": whoever no table names, behind a deed. */
export function isAgent(units: readonly Unit[], at: number): boolean {
  if (units[at]?.word !== 'by') return false;
  const next = units.slice(at + 1, at + 5).filter((unit) => !has(unit, 'determiner'));
  const until = next.findIndex(
    (unit) => isBoundary(unit) || has(unit, 'preposition') || unit.number !== undefined,
  );
  const words = until < 0 ? next : next.slice(0, until);
  if (
    words.length === 0 ||
    words.some(
      (unit) => has(unit, 'who') || has(unit, 'trade') || has(unit, 'thing') || OWN_PEOPLE.test(unit.word),
    )
  )
    return false;
  if (words.some((unit) => HIRED.test(unit.word))) return true;
  const deed = units[at - 1];
  return (
    deed !== undefined &&
    (has(deed, 'newness') ||
      /^(done|set|laid|built|put|hung|made)$|(?<!tuck|locat|surround|follow|cover|clos)ed$/.test(
        deed.word,
      )) &&
    isPlainWord(words[0]) &&
    MAKER.test(wordOf(words.at(-1))) &&
    !NO_AGENT.test(wordOf(words[0]))
  );
}

/** Whoever is told so works for money. */
const HIRED =
  /^(hired|crew|crews|firm|firms|company|companies|team|contractor|contractors|specialist|specialists|shop|outfit|tradesman|tradesmen|tradespeople|journeyman|vendor|installer|installers)$/;

const MAKER = /(er|ers|or|ors|ian|ians|ist|ists|son|sons|smith|smiths|wright|works|co|llc|inc)$/;

const OWN_PEOPLE = /owner|seller|family|^son$|daughter|brother|sister|father|uncle|cousin|nephew|self|selves/;

const NO_AGENT =
  /^(previous|prior|former|earlier|last|design|then|mistake|far|hand|summer|winter|number|order|october|november|september|december)$/;
