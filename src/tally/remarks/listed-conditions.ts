/** What the folder lists as missing or not mended. */
import { type ClaimCase, wordsBehind } from './claim-case.js';
import { sensesIn } from './item-meaning.js';
import { factsOf } from './item-words.js';
import type { Judgement, Known } from './known.js';
import type { Phrase } from './phrase.js';
import { belongsTo } from './taxonomy.js';

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
        instead: undefined,
      };
}

/** "cracked tiles fixed" where the folder lists them as not mended. */
export function stillListed({ house }: Known, phrase: Phrase): Judgement | undefined {
  const index = house.conditions.findIndex(({ what }) =>
    sensesIn(what).some((sense) => sense.tag === 'thing' && belongsTo(sense.id, phrase.thing)),
  );
  const one = house.conditions[index];
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
    instead: one.what,
  };
}

/** Words that call a thing sound. */
const SOUND =
  /\b(fine|perfect(ly)?|flawless(ly)?|sound|solid|intact|tight|sealed|good as gold|works|working|functional|functions|operational|smooth(ly)?|in (good|great|excellent|perfect|tip-?top|top|fine|working|mint) (order|shape|condition|working order|repair|nick)|no (known )?(issues?|problems?|cracks?|leaks?|trouble))\b/i;
const UNSOUND = /\b(not|isn't|aren't|doesn't|don't|no longer|needs?|except|but|never|other than)\b/i;
/** Words of a note by which a thing is out of use. */
const OUT_OF_USE =
  /\b(by-?passed|disconnected|not in use|unused|switched off|turned off|capped|does not (run|work|start)|not connected|not working)\b/i;
const IN_USE =
  /\b(in use|works|working|running|runs|functional|functions|operational|hooked up|connected)\b/i;

/** "Septic lid? Fine": a thing called sound that the folder lists as known and not mended. */
export function praisedThoughListed(one: ClaimCase): Judgement | undefined {
  const { known, phrase } = one;
  const behind = clauseBehind(one);
  const said = SOUND.exec(behind);
  if (said === null || UNSOUND.test(behind.slice(0, said.index))) return undefined;
  const index = known.house.conditions.findIndex(
    (listed) => speaksOf(listed.what, phrase.thing) && isThere(one, listed.where),
  );
  const listed = known.house.conditions[index];
  if (listed === undefined) return undefined;
  return {
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
    instead: listed.what,
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
    instead: undefined,
  };
}

/** The words behind a thing up to the end of what is said of it; a question mark right behind it asks and goes on. */
const clauseBehind = (one: ClaimCase): string =>
  /^(\W*\w+)?\s*\??[^,.;:!?\n—(]*/.exec(wordsBehind(one, 46))?.[0] ?? '';

/** The first thing that a condition names is what is wrong; where it is comes behind. */
function speaksOf(what: string, id: string): boolean {
  const first = sensesIn(what).find((sense) => sense.tag === 'thing' && sense.id !== 'house');
  return (
    first !== undefined &&
    (belongsTo(first.id, id) || belongsTo(id, first.id)) &&
    !/^(house|work|system|wall|lot)$/.test(id)
  );
}

function isThere({ places }: ClaimCase, where: string | undefined): boolean {
  return places.length === 0 || where === undefined || places.some((place) => place.ids.includes(where));
}
