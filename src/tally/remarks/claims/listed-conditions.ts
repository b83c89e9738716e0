/** What the folder lists as missing or not mended. */

import { sensesIn } from '../items/item-meaning.js';
import { factsOf } from '../items/item-words.js';
import type { Judgement, Known } from '../items/known.js';
import type { Attribute, Phrase } from '../sentence/phrase.js';
import { belongsTo } from '../words/taxonomy.js';
import { type ClaimCase, type Told, wordsBehind } from './claim-case.js';

/** A thing that the folder lists as missing. */
export function missingByCondition({ house }: Known, phrase: Phrase): Judgement | undefined {
  const index = house.conditions.findIndex(
    ({ what }) =>
      /\b(missing|no longer there|taken out|was removed|is gone|there is no)\b/i.test(what) &&
      sensesIn(what).some((sense) => sense.tag === 'thing' && belongsTo(sense.id, phrase.thing)),
  );
  const one = house.conditions[index];
  return one === undefined
    ? undefined
    : {
        verdict: 'contradicted',
        rule: 'condition.listed',
        because: 'the folder says that it is missing',
        facts: [{ path: ['conditions', index], words: one.what, evidence: one.evidence }],
      };
}

/** "cracked tiles fixed" where the folder lists them as not mended. */
export function stillListed({ house }: Known, phrase: Phrase): Judgement | undefined {
  const index = house.conditions.findIndex(({ what }) => speaksOf(what, phrase.thing));
  const one = house.conditions[index];
  if (one !== undefined && MENDED.test(one.what) && !NOT_MENDED.test(one.what))
    return {
      verdict: 'backed',
      rule: 'newness.repaired',
      because: 'the folder says so',
      facts: [{ path: ['conditions', index], words: one.what, evidence: one.evidence }],
    };
  if (
    one === undefined ||
    house.work.some(
      (item) =>
        item.did === 'repaired' &&
        sensesIn(item.what).some((sense) => sense.tag === 'thing' && belongsTo(sense.id, phrase.thing)),
    )
  )
    return undefined;
  return {
    verdict: 'contradicted',
    rule: 'condition.listed',
    because: 'the folder lists it as known and not mended',
    facts: [{ path: ['conditions', index], words: one.what, evidence: one.evidence }],
  };
}

/** "Leaked in heavy rain; patched in 2025": the entry itself tells of the mending. */
const MENDED =
  /\b(patched|repaired|fixed|mended|filled|sealed|caulked|re-?pointed|stabili[sz]ed|glued|braced|replaced|treated|painted over)\b/i;
const NOT_MENDED =
  /\b(not|never|to be|needs?|un)[ -]?(?:yet |been )?(?:patched|repaired|fixed|mended|filled|sealed)/i;

/** Words that call a thing sound. */
const SOUND =
  /\b(fine|perfect(ly)?|flawless(ly)?|sound|solid|intact|tight|good as gold|works|working|functional|functions|operational|smooth(ly)?|in (good|great|excellent|perfect|tip-?top|top|fine|working|mint) (order|shape|condition|working order|repair|nick)|no (known )?(issues?|problems?|cracks?|leaks?|trouble)|never (?:(?:once|ever|had|has|been|given|caused|a|an|any|one|single|lick of|moment's|us|them|the sellers?) ){1,5}(?:problems?|issues?|trouble|leaks?|cracks?|complaints?|repairs?)|(?:problem|trouble|issue)-?free|mint condition|works? (?:beautifully|great|well|fine|like new)|(?:glides?|slides?|opens?|closes?|shuts?|drains?|heats?|latch(?:es)?|locks?|rolls?) (?:easily|smoothly|freely|well|perfectly|fine|properly|like new|effortlessly|with ease|beautifully))\b/i;
const UNSOUND = /\b(no|not|isn't|aren't|doesn't|don't|no longer|needs?|except|but|never|other than)\b/i;
/** What may stand behind such a word: "a freshly sealed floor", "perfect for a fire" praise nothing before them. */
const PREDICATE_ENDS =
  /^\s*($|[.,;:!?)—–]|(and|as|but|at|in|on|to|great|well|fine|perfectly|smoothly|properly|beautifully|flawlessly|like|without|throughout|now|again|today|every|after|since|too|order|shape|condition)\b)/i;
/** Words of a note by which a thing is out of use. */
const OUT_OF_USE =
  /\b(by-?passed|disconnected|not in use|unused|switched off|turned off|capped|does not (run|work|start)|not connected|not working)\b/i;
const IN_USE =
  /\b(in use|works|working|running|runs|functional|functions|operational|hooked up|connected)\b/i;

/** The words of praise as a part of the text: the finding stands on them, and not on the thing. */
const saidAt = ({ phrase }: ClaimCase, said: RegExpExecArray): Attribute => ({
  kind: 'word',
  word: said[0],
  from: phrase.to + said.index,
  to: phrase.to + said.index + said[0].length,
  before: false,
  shared: false,
  unlike: false,
  negated: false,
});

/** "Septic lid? Fine": a thing called sound that the folder lists as known and not mended. */
export function praisedThoughListed(one: ClaimCase): Told | undefined {
  const { known, phrase } = one;
  const behind = clauseBehind(one);
  const said = SOUND.exec(behind);
  if (said === null || UNSOUND.test(behind.slice(0, said.index))) return undefined;
  const rest = one.sentence.text.slice(phrase.to + said.index + said[0].length);
  if (!PREDICATE_ENDS.test(rest)) return undefined;
  const index = known.house.conditions.findIndex(
    (listed) => speaksOf(listed.what, phrase.thing) && isThere(one, listed.where),
  );
  const listed = known.house.conditions[index];
  if (listed === undefined) return neverMended(one, said);
  return {
    judgement: {
      verdict: 'contradicted',
      rule: 'condition.listed',
      because: 'the folder lists it as known and not mended',
      facts: [
        {
          path: ['conditions', index],
          words: `known and not mended: ${listed.what}`,
          evidence: listed.evidence,
        },
      ],
    },
    attributes: [saidAt(one, said)],
  };
}

/** "The slab never had a problem", where the folder tells of its repair. */
function neverMended(one: ClaimCase, said: RegExpExecArray): Told | undefined {
  if (!/^never\b/i.test(said[0])) return undefined;
  const mended = one.known.items.filter(
    ({ kind, deed, things }) =>
      kind === 'work' && deed === 'repaired' && things.some((id) => belongsTo(id, one.phrase.thing)),
  );
  if (mended.length === 0 || /^(house|work|system|wall|lot)$/.test(one.phrase.thing)) return undefined;
  return {
    judgement: {
      verdict: 'contradicted',
      rule: 'condition.listed',
      because: 'the folder tells of a repair of it',
      facts: factsOf(mended, 2),
    },
    attributes: [saidAt(one, said)],
  };
}

/** "Softener in use", of what a note calls bypassed. */
export function deadByNote(one: ClaimCase): Judgement | undefined {
  const behind = clauseBehind(one);
  const said = IN_USE.exec(behind);
  if (said === null || UNSOUND.test(behind.slice(0, said.index))) return undefined;
  const dead = one.found.filter(({ kind, words }) => kind === 'system' && OUT_OF_USE.test(words));
  if (dead.length === 0 || dead.length < one.found.filter(({ kind }) => kind === 'system').length)
    return undefined;
  return {
    verdict: 'contradicted',
    rule: 'condition.out-of-use',
    because: 'a note in the folder says that it is not in use',
    facts: factsOf(dead),
  };
}

/** The words behind a thing up to the end of what is said of it; a question mark right behind it asks and goes on. */
const clauseBehind = (one: ClaimCase): string =>
  wordsBehind(one, 46).replace(/^((?:\W*\w+)?\s*\??[^,.;:!?\n—(]*).*$/s, '$1');

const PARTS =
  /\b(?:in|of|at|on|to|from|by|near|between|has|have|is|are|was|were|does|do|did|takes?|stands?|no)\b/i;

/** The first part of a condition that names a thing says what is wrong; where it is comes behind: "crack in the hall bath tub". */
function speaksOf(what: string, id: string): boolean {
  if (/^(house|work|system|wall|lot)$/.test(id)) return false;
  for (const part of what.split(PARTS)) {
    const last = sensesIn(part)
      .map((sense) => (sense.tag === 'thing' ? sense.id : sense.head))
      .findLast((one) => one !== undefined && one !== 'house' && one !== 'panel');
    if (last !== undefined) return belongsTo(last, id) || belongsTo(id, last);
  }
  return false;
}

/** A floor without more is one of the house, and not the garage's. */
const SURFACE = /^(floor|wall|ceiling|door|window|light|tile|trim|counter)$/;

function isThere({ places, phrase, known }: ClaimCase, where: string | undefined): boolean {
  const outside = known.house.structures.some(({ id }) => id === where);
  if (places.length === 0 && outside && SURFACE.test(phrase.thing)) return false;
  return places.length === 0 || where === undefined || places.some((place) => place.ids.includes(where));
}
