/** Kinds that a folder would name: a farmhouse sink, a jetted tub, a walk-in shower, custom cabinets. */
import { remarkClasses } from '../../tables/remarks.js';
import { isOfContext } from '../items/context-ties.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { Judgement } from '../items/known.js';
import { itemsFor } from '../items/pick-items.js';
import { inOnePlace } from '../items/places.js';
import { asTyped } from '../judge/judged.js';
import { sinceLast } from '../words/cut-at.js';
import type { ClassSense } from '../words/lexicon.js';
import { thing } from '../words/taxonomy.js';
import { attributesOfKind, type ClaimCase } from './claim-case.js';

/** Whether a folder that describes the thing would have said that it is of this kind. */
const isMarked = ({ group, id }: ClassSense): boolean =>
  remarkClasses().groups[group]?.members[id]?.marked === true;

const PLAIN_NAME = /^\W*\w+\W*$/;

/** "cast iron, 5 ft, coated white": more than the bare name of the thing. */
const isDescribed = ({ classes, what }: Item): boolean => classes.length > 0 || !PLAIN_NAME.test(what);

/** A kind that leaps to the eye, of a thing that the folder describes without it. */
/** "plain concrete, uncovered" */
const saysNot = ({ kind, what, words }: Item, word: string): boolean =>
  kind !== 'work' &&
  /^[a-z]+$/.test(word) &&
  new RegExp(`\\b(un${word}|not ${word}|no ${word})\\b`, 'i').test(`${what} ${words}`);

export function describedWithout(
  items: readonly Item[],
  senses: readonly ClassSense[],
  word: string,
): Judgement | undefined {
  const denied = items.filter((item) => saysNot(item, word));
  if (denied.length > 0 && denied.length === items.filter(({ kind }) => kind !== 'work').length)
    return {
      verdict: 'contradicted',
      rule: `kind.${senses[0]?.group}`,
      because: `the folder says not ${asTyped(word)}`,
      facts: factsOf(denied, 3),
      instead: undefined,
    };
  const things = items.filter(({ kind }) => kind === 'finish' || kind === 'system');
  const marked = senses.find(isMarked);
  if (things.length === 0 || marked === undefined || !things.every(isDescribed)) return undefined;
  return {
    verdict: 'contradicted',
    rule: `kind.${marked.group}`,
    because: `the folder describes it, and not as “${asTyped(word)}”`,
    facts: factsOf(things, 3),
  };
}

const WALK_IN = /\b(walk[\s-]?in|stall|separate|stand[\s-]?up|roll[\s-]?in|step[\s-]?in)\b[\w\s-]*$/i;

const OVER_TUB = /^(?!.*\b(walk[\s-]?in|stall|beside|next to|separate|own)\b).*\btub\b/i;

/** "Walk-in shower" in a bath whose shower the folder puts over its tub. */
export function showerIsOverTub(one: ClaimCase): Judgement | undefined {
  const { known, phrase, sentence, places } = one;
  const from = Math.max(0, phrase.from - 30);
  const ahead = sinceLast(sentence.text.slice(from, phrase.to), /[.,;!?\n]/);
  if (phrase.thing !== 'shower' || !WALK_IN.test(ahead)) return undefined;
  const near = places.length > 0 ? places : sentence.context === undefined ? [] : [sentence.context.place];
  const baths = known.house.rooms.filter(
    ({ id, use, bath }) =>
      use === 'bath' && bath !== 'half' && (near.length === 0 || near.some(({ ids }) => ids.includes(id))),
  );
  const tubs = itemsFor(known, 'tub').filter(({ kind }) => kind === 'finish');
  const showers = itemsFor(known, 'shower').filter(({ kind }) => kind === 'finish');
  const isOverTub = (id: string): boolean =>
    tubs.some(({ where }) => where.includes(id)) &&
    showers.every(
      ({ where, words, things }) => !where.includes(id) || things.includes('tub') || OVER_TUB.test(words),
    );
  if (baths.length === 0 || !baths.every(({ id }) => isOverTub(id))) return undefined;
  const there = tubs.filter(({ where }) => baths.some(({ id }) => where.includes(id)));
  return {
    verdict: 'contradicted',
    rule: 'not-there',
    because: 'the folder tells of a tub there, and of no shower of its own',
    facts: factsOf(there, 2),
  };
}

/** "Pedestal sink" in baths that the folder gives a vanity or a basin of another kind. */
export function pedestalNotThere(one: ClaimCase): Judgement | undefined {
  const { known, phrase, places, sentence } = one;
  // The tables know a pedestal sink as a vanity of its own.
  const pedestal =
    /\bpedestal\b/i.test(sentence.text.slice(phrase.from, phrase.to)) ||
    attributesOfKind(one, 'class').some(({ senses }) => senses.some(({ id }) => id === 'pedestal-sink'));
  if ((phrase.thing !== 'sink' && phrase.thing !== 'vanity') || !pedestal) return undefined;
  const near = places.length > 0 ? places : sentence.context === undefined ? [] : [sentence.context.place];
  const baths = known.house.rooms.filter(
    ({ id, use }) => use === 'bath' && (near.length === 0 || near.some(({ ids }) => ids.includes(id))),
  );
  const basins = known.items.filter(
    ({ kind, things, where }) =>
      kind === 'finish' &&
      things.some((id) => id === 'vanity' || id === 'sink') &&
      baths.some(({ id }) => where.includes(id)),
  );
  const isTold = baths.every(({ id }) => basins.some(({ where }) => where.includes(id)));
  if (basins.length === 0 || !isTold || basins.some(({ words }) => /pedestal/i.test(words))) return undefined;
  return {
    verdict: 'contradicted',
    rule: 'kind.sink-mount',
    because: `the folder tells of another there`,
    facts: factsOf(basins, 3),
  };
}

const CUSTOM =
  /\b(custom(?:[\s-](?:built|made|crafted))?|bespoke|hand[\s-]?crafted|handmade|hand[\s-]?built|made[\s-]to[\s-]measure|one[\s-]of[\s-]a[\s-]kind|designer)\s+([\w-]+\s+){0,3}$/i;

/** "Custom cabinetry" where the old boxes were kept. */
export function cabinetsKept(one: ClaimCase): Judgement | undefined {
  const { phrase, sentence, found } = one;
  if (phrase.thing !== 'cabinet') return undefined;
  const ahead = sentence.text.slice(Math.max(0, phrase.from - 50), phrase.from);
  if (!CUSTOM.test(ahead)) return undefined;
  const own = found.filter(({ kind }) => kind === 'finish');
  const isOld = ({ kept, deed, words }: Item): boolean =>
    kept || ((deed === 'painted' || deed === 'refinished') && !/custom/i.test(words));
  if (own.length === 0 || !own.every(isOld)) return undefined;
  return {
    verdict: 'contradicted',
    rule: 'newness.original',
    because: 'the folder says that the old ones were kept',
    facts: factsOf(own, 2),
  };
}

/** A generator of which the folder has only the inlet or the switch. */
export function onlyInlet(one: ClaimCase): Judgement | undefined {
  const { phrase, found, sentence } = one;
  const systems = found.filter(({ kind }) => kind === 'system');
  if (phrase.thing !== 'generator' || systems.length === 0) return undefined;
  if (INLET.test(sentence.text.slice(phrase.from, phrase.to + 24))) return undefined;
  if (!systems.every(({ what, label }) => INLET.test(`${what} ${label}`))) return undefined;
  return {
    verdict: 'contradicted',
    rule: 'not-there',
    because: 'the folder tells of a place to plug one in, and of no generator that stays',
    facts: factsOf(systems, 2),
  };
}

const INLET =
  /\b(inlet|hook-?\s?up|interlock|transfer switch|plug|connection|ready|switch|outlet|pre-?wired)\b/i;

/** A counter in a bath: "vanity top", "double vanity with a granite top". */
export function isVanityTop({ phrase, sentence }: Pick<ClaimCase, 'phrase' | 'sentence'>): boolean {
  const { text } = sentence;
  // "Quartz vanity" tells of its top.
  if (phrase.thing === 'vanity')
    return phrase.attributes.some(
      (one) => one.kind === 'class' && one.senses.some(({ group }) => group === 'counter-top'),
    );
  return (
    phrase.thing === 'counter' &&
    (/vanity|bath/i.test(text.slice(phrase.from, phrase.to)) ||
      (thing(sentence.context?.thing ?? 'house').room === 'bath' && isOfContext(phrase, sentence)) ||
      VANITY_WITH.test(text.slice(Math.max(0, phrase.from - 60), phrase.from)))
  );
}

const VANITY_WITH =
  /\b(vanity|vanities|basins?|sinks?)\b[^.,;!?]{0,24}\b(with|w|in|has|under|and)\b\W+(an?\s|the\s|its\s)?([\w-]+\s){0,3}$/i;

/** The tops of vanities: as counters of a bath, or as what the folder says of the vanity. */
export function vanityTops({
  known,
  places,
  sentence,
}: Pick<ClaimCase, 'known' | 'places' | 'sentence'>): readonly Item[] {
  const near = places.length > 0 ? places : sentence.context === undefined ? [] : [sentence.context.place];
  const baths = known.house.rooms.filter(({ use }) => use === 'bath').map(({ id }) => id);
  const tops = known.items.filter(
    ({ kind, things, where, classes }) =>
      kind === 'finish' &&
      things.some((id) => id === 'vanity' || id === 'counter') &&
      where.some((id) => baths.includes(id)) &&
      classes.some(({ group }) => group === 'counter-top'),
  );
  const there = tops.filter(({ where }) => near.some((place) => inOnePlace(where, place)));
  return there.length > 0 ? there : tops;
}
