import { sensesIn } from '../items/item-meaning.js';
import type { Item } from '../items/items.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { belongsTo } from '../words/taxonomy.js';

/** Holds "stay", "included", "does not convey" against what the folder says stays. */
export function judgeConvey(
  known: Known,
  items: readonly Item[],
  claim: {
    readonly id: string;
    readonly things: readonly string[];
    readonly words: string;
    readonly all: boolean;
  },
): Judgement {
  const rule = `conveys.${claim.id}`;
  const { house } = known;
  const listed = house.conveys.flatMap((one, index) => {
    const things = sensesIn(one.what).flatMap((sense) => (sense.tag === 'thing' ? [sense.id] : []));
    const meant =
      claim.things.some((id) => things.some((other) => belongsTo(other, id))) ||
      sharesWord(one.what, claim.words);
    return meant
      ? [
          {
            what: one.what,
            stays: one.stays,
            fact: {
              path: ['conveys', index],
              words: `${one.what}: ${STAYS[one.stays]}`,
              evidence: [] as string[],
            },
          },
        ]
      : [];
  });
  // "Curtains" beside blinds: of entries of one thing, those that the folder calls so.
  const called = listed.filter(({ what }) => sharesWord(what, claim.words));
  const own = called.length > 0 && !claim.all ? called : listed;
  const systems = items.flatMap((item) =>
    item.conveys === undefined
      ? []
      : [
          {
            stays: item.conveys,
            fact: {
              path: item.path,
              words: `${item.label}: ${STAYS[item.conveys]}`,
              evidence: item.evidence,
            },
          },
        ],
  );
  const all: { stays: 'yes' | 'no' | 'not known'; fact: FactSaid }[] = [...own, ...systems];
  const settled = all.filter(({ stays }) => stays !== 'not known');
  if (settled.length === 0)
    return {
      verdict: 'no-fact',
      rule,
      because:
        all.length > 0 ? 'whether it stays is not settled' : 'the folder does not say whether it stays',
      facts: all.map(({ fact }) => fact),
    };
  const wanted = claim.id === 'goes' ? 'no' : 'yes';
  const fits = settled.filter(({ stays }) => stays === wanted);
  const not = all.filter(({ stays }) => stays !== wanted);
  if (claim.id === 'open')
    return {
      verdict: 'contradicted',
      rule,
      because: 'the folder has settled it',
      facts: settled.map(({ fact }) => fact),
    };
  if (fits.length > 0 && (not.length === 0 || (!claim.all && fits.length >= not.length)))
    return {
      verdict: 'backed',
      rule,
      because: wanted === 'yes' ? 'the folder says that it stays' : 'the folder says that it goes',
      facts: fits.slice(0, 4).map(({ fact }) => fact),
    };
  if (fits.length > 0)
    return {
      verdict: 'wider',
      rule,
      because: 'not all of it',
      facts: not.slice(0, 4).map(({ fact }) => fact),
    };
  return {
    verdict: 'contradicted',
    rule,
    because: wanted === 'yes' ? 'the folder says that it goes' : 'the folder says that it stays',
    facts: not.slice(0, 4).map(({ fact }) => fact),
  };
}

const STAYS = { yes: 'stays', no: 'goes', 'not known': 'not settled' } as const;

const SMALL = new Set('with that this from over into and the all will seller house home'.split(' '));

function sharesWord(what: string, words: string): boolean {
  const known = new Set(
    what
      .toLowerCase()
      .split(/[^a-z]+/)
      .map(stem),
  );
  return words
    .toLowerCase()
    .split(/[^a-z]+/)
    .some((word) => word.length > 3 && !SMALL.has(word) && known.has(stem(word)));
}

const stem = (word: string): string => word.replace(/(es|s)$/, '');
