/** Words in place of a claim about age or a deed. */
import { answerOf } from '../items/answer-of.js';
import { sensesIn } from '../items/item-meaning.js';
import type { Item } from '../items/items.js';
import type { Known } from '../items/known.js';
import { thing } from '../words/taxonomy.js';
import { dateOf, listed, otherDeed, partOf, yearOf, yearsOf } from './state.js';
import { newnessIn, type Parts, partsAt, type Stretch } from './stretch.js';

/** Best first; each is tried. */
export function newnessWords(
  known: Known,
  stretch: Stretch,
  rule: string,
  items: readonly Item[],
  isWide: boolean,
): string[] {
  const word = rule.replace('newness.', '');
  const at = newnessIn(stretch);
  if (!MENDABLE.test(word)) return [];
  if (at === undefined) return shared(known, stretch, word, items, isWide);
  const parts = partsAt(stretch, at);
  const so = items.filter((item) => answerOf(known, item, word) === 'yes');
  const not = items.filter((item) => !so.includes(item));
  const main = not.find(({ deed }) => deed !== 'serviced' && deed !== 'cleaned') ?? not[0];
  const isWhole =
    OF_ALL.test(stretch.says) && known.items.some((item) => answerOf(known, item, word) === 'yes');
  if ((isWide && so.length > 0) || isWhole) return partly(stretch, parts, so);
  if (main === undefined) return [];
  const year = YEAR_BEHIND.test(`${parts.behind}${stretch.behind}`) || YEAR_BEHIND.test(stretch.behind);
  if (parts.attributive) return before(parts, main, year);
  if (
    parts.before === '' &&
    parts.behind === '' &&
    /^ [\p{L}]/u.test(stretch.behind) &&
    !GOES_ON.test(stretch.behind)
  )
    return beforeOther(main, year);
  // "torn out for a new one": what goes on behind it is about the deed that was not done.
  return /^\s+(?:for|with|to|by|a|an|the)\b/i.test(stretch.behind) || NAMES_ITS_THING.test(parts.word)
    ? []
    : behindIt(parts, main, year);
}

/** "new furnace, A/C": a thing that a list's first word is said of. */
function shared(
  known: Known,
  { says, behind }: Stretch,
  word: string,
  items: readonly Item[],
  isWide: boolean,
): string[] {
  const not = items.find((item) => answerOf(known, item, word) !== 'yes' && item.deed !== 'serviced');
  if (!/^[\p{L}][\p{L}\s/&-]*$/u.test(says) || NO_THING.test(says)) return [];
  if (isWide) return word === 'new' || word === 'replaced' ? [`some new ${says}`] : [];
  if (not === undefined) return [];
  const parts: Parts = { word: '', before: '', behind: says, attributive: true };
  return before(parts, not, YEAR_BEHIND.test(behind)).filter((words) => words !== says);
}

const NO_THING = /^(?:the|to|in|from|a|an|our|its|all|by|with)\b/i;

/** Words whose opposite is told by a date or another deed. */
const MENDABLE =
  /^(?:new|newer|replaced|updated|remade|recently|refinished|painted|repaired|refaced|original|discarded)$/;
const OF_ALL = /\b(?:top to bottom|head to toe|throughout|whole|entire|everything|inside and out)\b/i;
/** "rewired": of the house, and its wiring is what is dated. */
const NAMES_ITS_THING = /(?:wire|pipe|plumb|roof|side|duct|carpet|floor|tile|shingle)d?(?:ed)?$/i;
/** A year follows, so that another one beside it says nothing. */
const YEAR_BEHIND =
  /^\W*(?:in|from|as of|for|since|circa)?\W*(?:(?:19|20)\d\d|['’]\d\d|about (?:19|20)\d\d)/i;
const GOES_ON =
  /^ (?:in|on|at|by|with|and|or|to|for|from|as|of|is|are|was|last|this|since|under|w\/|a|an|the)\b/i;

const PARTICIPLE = /(?:(?<!unus)ed|built|done|redone|rebuilt|new|newer|updated)$/i;

/** What is true of some of it. */
function partly({ ahead, behind: after }: Stretch, parts: Parts, so: readonly Item[]): string[] {
  const { word, before: pre, behind } = parts;
  const deed = /new/i.test(word) ? 'new' : word.toLowerCase();
  const isNew = /^(?:new|replaced|fresh|installed)$/.test(deed);
  if (parts.attributive && /^(?:newer|recent|newish|late[ -]model)$/.test(deed)) return [behind];
  // "has replaced all the plumbing"
  const whole = /^(?:all|every|the whole|the entire)\s+(?:of\s+)?(?:the|its|our|their)\s+(.+)$/i.exec(behind);
  if (parts.attributive && whole !== null) return [`${deed} part of the ${whole[1]}`];
  if (parts.attributive && /^(?:all|every|the|its|our|a|an)\b/i.test(behind)) return [];
  if (parts.attributive) {
    const free =
      !/\b(?:a|an|the|this|its|our|your|their|his|her|\d+|one|two|three|four)(?:\s+[\p{L}-]+)?\s*$/iu.test(
        ahead,
      );
    const finishes = so.filter(({ kind }) => kind === 'finish').map(partOf);
    const room = isRoom(behind) && finishes.length > 0 && !/^\s*(?:with|w\/|and|,|&)/i.test(after);
    return [
      ...(room ? [`${behind} with new ${listed(finishes.slice(0, 2))}`] : []),
      ...(free && (isNew || deed === 'original') && !isRoom(behind) && !OF_EACH.test(behind)
        ? [`some ${isNew ? 'new' : deed} ${behind}`]
        : []),
      ...(OF_EACH.test(behind) ? [] : [`partly ${isNew ? 'new' : deed} ${behind}`]),
      behind,
    ];
  }
  const rest = behind.replace(WHOLE, '').trim();
  const tail = rest === '' ? '' : ` ${rest}`;
  const some = pre.replace(/^(?:all|every|both)\b(?:\s+(?:of\s+)?the\b)?/i, 'some');
  const head = pre === '' ? '' : `${pre} `;
  return [
    ...(/^(?:all|both)\b/i.test(pre) && /s\b/.test(some) ? [`${some} ${deed}${tail}`] : []),
    ...(PARTICIPLE.test(deed) && !/install|added|laid/.test(deed) ? [`${head}partly ${deed}${tail}`] : []),
    ...(REDONE.test(deed) ? [`${head}partly updated${tail}`] : []),
  ];
}

const OF_EACH = /\b(?:every|each|all|both|throughout)\b/i;
const WHOLE = /(?:from )?(?:top to bottom|head to toe)|to the studs|throughout|inside and out/gi;
const REDONE =
  /(?:updat|renovat|remodel|redone|redo|rebuil|rehab|reno|overhaul|gut|remade|made over|stripped)/i;

const isRoom = (words: string): boolean => {
  const last = sensesIn(words).findLast(({ tag }) => tag === 'thing');
  return last !== undefined && thing(last.id).room !== undefined;
};

/** "new range" → "second-hand range", "2009 furnace", "roof from about 1991", "refinished tub". */
function before({ behind: rest }: Parts, item: Item, yearFollows: boolean): string[] {
  const date = item.made ?? item.done;
  const other = otherDeed(item);
  const year = yearFollows ? undefined : (yearOf(dateOf(item)) ?? yearOf(date));
  return [
    ...(item.secondHand ? [`second-hand ${rest}`] : []),
    ...(other === undefined ? [] : [`${other} ${rest}`]),
    ...(other === undefined && year !== undefined && !item.secondHand ? [`${year} ${rest}`] : []),
    ...(other === undefined && date !== undefined && year === undefined && !yearFollows
      ? [`${rest} from ${yearsOf(date)}`]
      : []),
    rest,
  ];
}

/** "new" alone, before a thing that another claim is about. */
function beforeOther(item: Item, yearFollows: boolean): string[] {
  const other = otherDeed(item);
  const year = yearFollows ? undefined : yearOf(dateOf(item));
  if (item.secondHand) return ['second-hand'];
  return other !== undefined ? [other] : year !== undefined ? [year] : [];
}

const COPULA =
  /\s+(?:is|are|was|were|has been|have been|has|have|had been|had|being|got|just|all|both|were all|is all|are all)$/i;

/** "furnace is new" → "furnace is from 2009"; "roof replaced" → "roof from 2019". */
function behindIt({ before: pre, behind: post, word }: Parts, item: Item, yearFollows: boolean): string[] {
  const other = otherDeed(item);
  const date = dateOf(item);
  const bare = pre
    .replace(COPULA, '')
    .replace(COPULA, '')
    .replace(/^(?:all|both|every)\s+(?:of\s+)?(?:the\s+)?/i, '');
  if (/(?:\b(?:and|or|with|of)|[&,])$/i.test(bare)) return [];
  const hasCopula = bare !== pre && bare !== '' && !/[?:]$/.test(bare);
  const many =
    /\b(?:are|were|have)\b/i.test(pre.slice(bare.length)) || /[^su]s$/i.test(bare) || / and /.test(bare);
  const [copula, past] = hasCopula ? (many ? [' are', ' were'] : [' is', ' was']) : ['', ''];
  const keep = /^(?:in|for|as of|this|last|[\d(])/i.test(post) || post === '' ? '' : ` ${post}`;
  const year = item.done === undefined || yearFollows ? '' : ` in ${yearsOf(item.done)}`;
  const said = (words: string): string =>
    /^\p{Lu}/u.test(word) && /[?:]$/.test(bare) ? upperFirst(words) : words;
  return [
    ...(other === undefined
      ? []
      : [`${bare}${past} ${said(other)}${year}${keep}`, `${bare}${past} ${said(other)}${keep}`]),
    ...(item.secondHand ? [`${bare}${copula} ${said('second-hand')}${keep}`] : []),
    ...(date === undefined || other !== undefined || yearFollows
      ? []
      : [`${bare}${copula} ${said('from')} ${yearsOf(date)}${keep}`]),
    ...(hasCopula || bare === '' || /[?:]$/.test(bare) ? [] : [`${bare}${keep}`]),
  ].map((one) => one.trim());
}

const upperFirst = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
