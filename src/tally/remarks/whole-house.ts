/** What is said of no thing: of the house as a whole. */
import { factsOf } from './item-words.js';
import { judgeCondition } from './judge-conditions.js';
import { judgeDate } from './judge-dates.js';
import { judgeNewness } from './judge-newness.js';
import { judgePermit, judgeTrade, judgeWho } from './judge-people.js';
import type { Judgement, Known } from './known.js';
import { reversed } from './negated-claims.js';
import { saysOpen } from './open-permits.js';
import type { Attribute, Phrase } from './phrase.js';
import { itemsAt, itemsFor, placesOf } from './pick-items.js';
import type { Find } from './read-sentence.js';

/** What is said of no thing: of the house as a whole. */
export function whole(
  known: Known,
  phrases: readonly Phrase[],
  loose: readonly Attribute[],
  done: ReadonlySet<Attribute>,
  find: Find,
  text: string,
): void {
  const all = loose.filter(({ kind }) => kind === 'all');
  const year = loose.find((one) => one.kind === 'number' && one.number.kind === 'year' && !done.has(one));
  for (const one of loose) {
    if (one.kind === 'condition')
      find(one.from, one.to, judgeCondition(known, one.id, nearThing(phrases, one)));
    if (
      one.kind === 'newness' &&
      !one.unlike &&
      !one.negated &&
      (one.id === 'updated' || (one.id === 'new' && all.length > 0)) &&
      !phrases.some((phrase) => phrase.aside === undefined && near(phrase, one))
    ) {
      const judgement = judgeNewness(known, itemsFor(known, 'house'), {
        word: one.id,
        all: all.length > 0,
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
    if (one.kind === 'permit') find(one.from, one.to, loosePermit(known, phrases, one, all.length > 0, text));
    const measured = one.kind === 'who' && MEASURED.test(text.slice(Math.max(0, one.from - 24), one.from));
    if (measured && one.kind === 'who') {
      const judgement = judgeMeasured(known, one.id);
      if (judgement !== undefined) find(one.from, one.to, judgement);
    } else if (one.kind === 'who' && one.trade !== undefined) {
      const trade = judgeTrade(known, one.id, one.trade);
      if (trade !== undefined) find(one.from, one.to, trade);
    } else if (
      one.kind === 'who' &&
      one.id === 'licensed' &&
      all.length === 0 &&
      !/\b(everything|all|every)\b/i.test(text.slice(Math.max(0, one.from - 24), one.from))
    ) {
      find(one.from, one.to, anyLicensed(known));
    } else if (one.kind === 'who' && one.id !== 'professional')
      find(
        one.from,
        one.to,
        judgeWho(
          itemsFor(known, 'work').filter(({ kind }) => kind === 'work'),
          one.id,
          one.trade,
        ),
      );
  }
}

/** A permit of no thing named beside it: of what was spoken of before, else of all the work. */
function loosePermit(
  known: Known,
  phrases: readonly Phrase[],
  one: Attribute,
  all: boolean,
  text: string,
): Judgement {
  const before = phrases
    .filter((phrase) => phrase.to <= one.from && phrase.aside === undefined && !phrase.place)
    .at(-1);
  const open = saysOpen(text, one.from, one.to);
  const own =
    before !== undefined && !all && !/^(house|work|system)$/.test(before.thing) ? before : undefined;
  const room = own === undefined ? undefined : own.rooms[0];
  const judgement =
    own === undefined
      ? judgePermit(
          known,
          itemsFor(known, 'work').filter(({ kind }) => kind === 'work'),
          { all: true, thing: 'work', words: '' },
        )
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
    because: 'what the folder tells of is electric',
    facts: factsOf(electric, 3),
  };
}

export const near = (phrase: Phrase, one: Attribute): boolean =>
  Math.abs(phrase.from - one.to) < 25 || Math.abs(one.from - phrase.to) < 25;

const nearThing = (phrases: readonly Phrase[], one: Attribute): string[] =>
  phrases.filter((phrase) => near(phrase, one)).map(({ thing }) => thing);

const MEASURED = /\b(measured|taped|tape|sized|drawn)\W+(\w+\W+)?$/i;

/** "Measured by the owner". */
function judgeMeasured({ house }: Known, id: string): Judgement | undefined {
  const { measured } = house;
  if (measured === undefined) return undefined;
  const fits = (id === 'owner') === (measured.by === 'owner');
  return {
    verdict: fits ? 'backed' : 'contradicted',
    rule: 'who.measured',
    because: `the folder says that ${measured.by === 'owner' ? 'the owner' : 'someone hired'} measured it`,
    facts: [
      {
        path: ['measured'],
        words: `measured by ${measured.by === 'owner' ? 'the owner' : measured.by}`,
        evidence: measured.evidence,
      },
    ],
    instead: fits ? undefined : 'measured by the owner',
  };
}

/** "Handled by a certified firm", of no thing that a table knows: whether anybody stated a licence. */
function anyLicensed({ house }: Known): Judgement {
  const index = house.people.findIndex(({ licence }) => licence?.value !== undefined);
  const person = house.people[index];
  if (person === undefined)
    return {
      verdict: 'no-fact',
      rule: 'who.licensed',
      because: 'the folder does not state a licence',
      facts: [],
    };
  return {
    verdict: 'backed',
    rule: 'who.licensed',
    because: 'the folder names somebody with a stated licence',
    facts: [
      {
        path: ['people', index],
        words: `${person.trade ?? 'hired'}: licence stated`,
        evidence: person.licence?.evidence ?? [],
      },
    ],
  };
}
