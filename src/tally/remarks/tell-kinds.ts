/** What a phrase says its thing is of: materials, fuels, colours, how it stands. */

import { nameOf } from '../../facts/place-name.js';
import { type AttributeOf, attributesOfKind, type ClaimCase, tell } from './claim-case.js';
import { factsOf } from './item-words.js';
import { judgeClass, sortByClass } from './judge-class.js';
import { paintItems } from './meant-items.js';
import { itemsAt, itemsFor } from './pick-items.js';
import { tellElsewhere } from './tell-bare-kinds.js';

export type Kind = AttributeOf<'class'>;

/** Tells the kinds, and narrows the facts to those that the kinds leave. */
export function tellKinds(one: ClaimCase): void {
  const { known, phrase, found } = one;
  tellAlarms(one);
  tellTileEverywhere(one);
  const painted = attributesOfKind(one, 'newness').some(({ id }) => id === 'painted');
  if (painted && /^(house|paint|siding)$/.test(phrase.thing)) one.items = paintItems(known, phrase, found);
  for (const kind of attributesOfKind(one, 'class')) tellKind(one, kind);
}

function tellKind(one: ClaimCase, kind: Kind): void {
  const { known, phrase, found, places, sentence } = one;
  const senses = kind.senses.filter(({ group }) => group !== undefined);
  const all = attributesOfKind(one, 'all');
  if (phrase.bare && tellElsewhere(one, kind)) return;
  const said = judgeClass(found.length > 0 ? found : itemsFor(known, phrase.thing), {
    senses,
    word: kind.word,
    all:
      (all.length > 0 && isOfAll(all, kind)) ||
      EVERYWHERE.test(sentence.text.slice(phrase.to, phrase.to + 40)),
    places,
  });
  if (said === undefined) return;
  if (kind.negated || phrase.negated) {
    if (said.verdict === 'backed')
      tell(one, { ...said, verdict: 'contradicted', because: 'the folder says that it is' }, kind);
    return;
  }
  if (said.verdict === 'contradicted' && isExcused(one, kind)) return;
  if (said.verdict === 'no-fact' && found.length === 0) return;
  tell(one, said, kind);
  // What is known to be of another kind is not meant by the rest of the phrase.
  const { fits, others } = sortByClass(one.items, senses);
  if (fits.some(({ kind: own }) => own === 'system' || own === 'finish')) one.items = fits;
  else if (fits.length > 0) one.items = one.items.filter((item) => !others.includes(item));
}

const EVERYWHERE = /^\s*(on|in|across) (both|all|every|each) (the )?(level|floor|stor|room|bed|bath)/i;

/** "Clawfoot replaced", "walnut-coloured vinyl plank": another word of the phrase says the kind. */
function isExcused(one: ClaimCase, kind: Kind): boolean {
  const { found, sentence } = one;
  // "converted to gas" says what it is now.
  if (/convert\w* (in)?to\W+$/i.test(sentence.text.slice(Math.max(0, kind.from - 16), kind.from)))
    return false;
  const groups = new Set(kind.senses.map(({ group }) => group));
  if (kind.before && attributesOfKind(one, 'newness').some((word) => word.id === 'replaced' && !word.before))
    return true;
  return attributesOfKind(one, 'class').some(
    (other) =>
      other !== kind &&
      other.senses.some(({ group }) => groups.has(group)) &&
      sortByClass(found, other.senses).fits.length > 0,
  );
}

/** "full cellar", "entire kitchen": in front of a kind it says how much; elsewhere "throughout". */
const isOfAll = (all: readonly AttributeOf<'all'>[], kind: Kind): boolean =>
  all.some((word) => !(word.before && kind.before && word.from > kind.from));

/** "Tile throughout": floors are meant. */
function tellTileEverywhere(one: ClaimCase): void {
  const { known, phrase, places } = one;
  const all = attributesOfKind(one, 'all').filter(({ before }) => !before);
  if (phrase.thing !== 'tile' || all.length === 0 || places.length > 0 || one.sentence.context !== undefined)
    return;
  const floors = itemsAt(known, { ...phrase, thing: 'floor' }, []).filter(({ kind }) => kind === 'finish');
  const tile = [{ tag: 'class', group: 'floor-covering', id: 'tile-floor' }] as const;
  if (floors.length > 0)
    tell(
      one,
      judgeClass(floors, { senses: tile, word: 'tile', all: true, places }),
      all[0] as AttributeOf<'all'>,
    );
}

/** "Alarms in every bedroom": the rooms in which the folder lists none. */
function tellAlarms(one: ClaimCase): void {
  const { known, phrase, found } = one;
  const all = attributesOfKind(one, 'all');
  if (phrase.thing !== 'alarm' || all.length === 0 || found.length === 0) return;
  const bare = known.house.rooms.filter(
    (room) => room.use === 'bedroom' && !found.some(({ where }) => where.includes(room.id)),
  );
  if (bare.length === 0) return;
  const rooms = bare.slice(0, 3).map((room) => ({
    path: ['rooms', known.house.rooms.indexOf(room)],
    words: `${nameOf(room)}: no alarm listed`,
    evidence: [],
  }));
  tell(
    one,
    {
      verdict: 'wider',
      rule: 'all.alarms',
      because: 'the folder lists none in some of the rooms',
      facts: [...rooms, ...factsOf(found, 2)],
      instead: found.map(({ label }) => label).join(', '),
    },
    ...all.slice(0, 1),
  );
}
