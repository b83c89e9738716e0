/** What is said of no thing: of the house as a whole. */

import { reversed } from '../claims/negated-claims.js';
import { factsOf } from '../items/item-words.js';
import type { Judgement, Known } from '../items/known.js';
import { saysIssued, saysOpen } from '../items/open-permits.js';
import { itemsAt, itemsFor, placesOf } from '../items/pick-items.js';
import { judgeCondition } from '../judge/judge-conditions.js';
import { judgeDate } from '../judge/judge-dates.js';
import { judgeNewness } from '../judge/judge-newness.js';
import { judgePermit } from '../judge/judge-permits.js';
import type { Find } from '../read-sentence.js';
import type { Attribute, Phrase } from '../sentence/phrase.js';
import { thing } from '../words/taxonomy.js';
import { ofEverything } from './all-of-it.js';
import { type Around, judgeLooseWho } from './loose-people.js';
import { isParkingPermit } from './parking-permits.js';

/** What is said of no thing: of the house as a whole. */
export function whole(
  known: Known,
  phrases: readonly Phrase[],
  loose: readonly Attribute[],
  done: ReadonlySet<Attribute>,
  find: Find,
  text: string,
  around: Around,
): void {
  const all = loose.filter(({ kind }) => kind === 'all');
  const year = loose.find((one) => one.kind === 'number' && one.number.kind === 'year' && !done.has(one));
  for (const one of loose) {
    // "No grounded outlets" claims nothing good.
    if (one.kind === 'condition' && !one.negated)
      find(
        one.from,
        one.to,
        judgeCondition(known, one.id, nearThing(phrases, one, text), roomsBehind(phrases, one, text)),
      );
    const everything =
      one.kind === 'newness' && !one.unlike ? ofEverything(known, phrases, one, text) : undefined;
    if (everything !== undefined) find(one.from, one.to, everything);
    else if (
      one.kind === 'newness' &&
      !one.unlike &&
      !one.negated &&
      (one.id === 'updated' || one.id === 'remade' || (one.id === 'new' && all.length > 0)) &&
      !phrases.some(
        (phrase) => phrase.aside === undefined && near(phrase, one) && !isApart(phrase, one, text),
      )
    ) {
      const judgement = judgeNewness(known, itemsFor(known, 'house'), {
        word: one.id,
        all: all.length > 0 || ALL_OF_IT.test(text.slice(Math.max(0, one.from - 14), one.to)),
        many: true,
        whole: true,
      });
      const from = Math.min(
        one.from,
        ...all.filter(({ to }) => to <= one.from && one.from - to < 3).map((word) => word.from),
      );
      if (year?.kind === 'number' && year.number.kind === 'year' && judgement.verdict !== 'contradicted') {
        const dated = judgeDate(
          known,
          itemsFor(known, 'house').filter(({ deed, kept }) => deed !== undefined && !kept),
          { moment: year.number, hedge: year.hedge, deed: undefined },
        );
        find(from, Math.max(one.to, year.to), dated.verdict === 'contradicted' ? dated : judgement);
      } else find(from, one.to, judgement);
    }
    if (one.kind === 'permit' && !isParkingPermit(text, one.from, one.to))
      find(
        one.from,
        one.to,
        loosePermit(known, phrases, one, all.length > 0 || opensWithAll(around), around),
      );
    if (one.kind === 'who') {
      const who = judgeLooseWho(known, one, around);
      if (who !== undefined) find(one.from, one.to, who);
    }
  }
}

/** "Fully renovated", "totally updated": nothing was left. */
const ALL_OF_IT = /\b(fully|totally|completely|entirely|thoroughly|100\s?%|wholly)[\s-]+\S*$/i;

/** "All signed off by the town": the first word says of what. */
const opensWithAll = ({ text, from }: Around): boolean =>
  /^\W*(all|everything|every|each)\b/i.test(text.slice(from, from + 14));

/** "… with a permit that closed": of the thing that the sentence before spoke of, where its permit is known. */
function permitOfSpoken(known: Known, spoken: Around['spoken']): Judgement | undefined {
  if (spoken === undefined || /^(house|work|system)$/.test(spoken.thing)) return undefined;
  const all = itemsFor(known, spoken.thing);
  const ids = spoken.context?.place.ids ?? [];
  const there = all.filter(({ where }) => where.some((id) => ids.includes(id)));
  const judgement = judgePermit(known, there.length > 0 ? there : all, {
    all: false,
    thing: spoken.thing,
    words: '',
  });
  return judgement.verdict === 'no-fact' ? undefined : judgement;
}

/** A permit of no thing named beside it: of what was spoken of before, else of all the work. */
function loosePermit(
  known: Known,
  phrases: readonly Phrase[],
  one: Attribute,
  all: boolean,
  { text, spoken }: Around,
): Judgement {
  const before = phrases
    .filter((phrase) => phrase.to <= one.from && phrase.aside === undefined && !phrase.place)
    .at(-1);
  const open = saysOpen(text, one.from, one.to);
  // "Those permits": of what was told before, and "issued" says only that there was one.
  if (OF_BEFORE.test(text.slice(Math.max(0, one.from - 14), one.from)) || saysIssued(text, one.to))
    return { verdict: 'no-fact', rule: 'permit', because: 'which permit is meant is not plain', facts: [] };
  const own =
    before !== undefined && !all && !/^(house|work|system)$/.test(before.thing) ? before : undefined;
  const room = own === undefined ? undefined : own.rooms[0];
  const judgement =
    own === undefined
      ? (permitOfSpoken(known, before === undefined && !all ? spoken : undefined) ??
        judgePermit(
          known,
          itemsFor(known, 'work').filter(({ kind }) => kind === 'work'),
          { all: true, thing: 'work', words: '' },
        ))
      : judgePermit(known, itemsAt(known, own, placesOf(known, own)), {
          all: false,
          thing: own.thing,
          words: text
            .slice(room === undefined ? own.from : Math.min(room.from, own.from), own.to)
            .toLowerCase(),
        });
  if (!open) return judgement;
  // "No permit for the rest": true of some, and no claim of all.
  return own === undefined || judgement.verdict === 'wider'
    ? { ...judgement, verdict: 'no-fact', because: 'which permit is meant is not plain' }
    : reversed(judgement);
}

const OF_BEFORE = /\b(those|these)\s+(\w+\s+)?$/i;

/** "All electric": nothing in the folder burns anything. */
export function judgeAllElectric(known: Known): Judgement {
  const burning = known.items.filter(
    ({ kind, classes }) =>
      kind === 'system' &&
      classes.some(
        ({ group, id }) => group === 'fuel' && id !== 'electric' && id !== 'induction' && id !== 'solar-fuel',
      ),
  );
  const electric = known.items.filter(({ classes }) => classes.some(({ id }) => id === 'electric'));
  if (burning.length > 0)
    return {
      verdict: 'contradicted',
      rule: 'kind.fuel',
      because: 'the folder tells of something that burns',
      facts: factsOf(burning),
      instead: undefined,
    };
  return {
    verdict: electric.length > 0 ? 'backed' : 'no-fact',
    rule: 'kind.fuel',
    because:
      electric.length > 0
        ? 'what the folder tells of is electric'
        : 'the folder does not say what anything runs on',
    facts: factsOf(electric, 3),
  };
}

const near = (phrase: Phrase, one: Attribute): boolean =>
  Math.abs(phrase.from - one.to) < 25 || Math.abs(one.from - phrase.to) < 25;

/** "Gutted & rebuilt: rewired …": a heading says it of no single thing. */
const isApart = (phrase: Phrase, one: Attribute, text: string): boolean =>
  one.kind === 'newness' &&
  one.id === 'remade' &&
  one.to <= phrase.from &&
  /[:.,;!]/.test(text.slice(one.to, phrase.from));

/** "Grounded outlets in the kitchen": where it is said to be so. */
const roomsBehind = (phrases: readonly Phrase[], one: Attribute, text: string): string[] =>
  phrases
    .filter(
      ({ place, from }) =>
        place && from >= one.to && from - one.to < 20 && !/[,;:.!?\n]/.test(text.slice(one.to, from)),
    )
    .map((phrase) => phrase.thing)
    .filter((id) => thing(id).room !== undefined);

/** What a condition is said of; a comma ends that: "no known issues, this brick ranch". */
const nearThing = (phrases: readonly Phrase[], one: Attribute, text: string): string[] =>
  phrases
    .filter(
      (phrase) =>
        near(phrase, one) &&
        !/[,;:.!?\n]|\b(and|but|while)\b/i.test(
          phrase.to <= one.from ? text.slice(phrase.to, one.from) : text.slice(one.to, phrase.from),
        ),
    )
    .map(({ thing }) => thing);
