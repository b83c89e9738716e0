/** What a phrase says its thing is of: materials, fuels, colours, how it stands. */

import { nameOf } from '../../../facts/place-name.js';
import { isOfContext } from '../items/context-ties.js';
import { factsOf } from '../items/item-words.js';
import { paintItems } from '../items/meant-items.js';
import { itemsAt, itemsFor } from '../items/pick-items.js';
import { judgeClass, saysWords, sortByClass } from '../judge/judge-class.js';
import { lexicon } from '../words/lexicon.js';
import { exclude, thing } from '../words/taxonomy.js';
import { tokenize } from '../words/token.js';
import { type AttributeOf, attributesOfKind, type ClaimCase, tell } from './claim-case.js';
import { everyRoomOf } from './each-room.js';
import { leftOpen } from './open-questions.js';
import { isOfBefore, isSaidGone, judgeGone } from './past-kinds.js';
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
  const { senses } = kind;
  const all = attributesOfKind(one, 'all');
  if (phrase.bare && isOfAnother(one)) return;
  if (isOfRoomBelow(one, kind)) return;
  if (phrase.bare && tellElsewhere(one, kind)) return;
  const apart = phrase.bare && places.length === 0 && !isOfContext(phrase, sentence);
  // What the head of the folder says of the whole stands in no room: "full cellar, concrete block".
  const ofWhole =
    places.length > 0 && found.length > 0
      ? itemsFor(known, phrase.thing).filter(
          (item) => item.kind === 'identity' && item.where.length === 0 && !found.includes(item),
        )
      : [];
  const near = apart || isOfRest(one, kind) ? itemsAt(known, phrase, []) : [...found, ...ofWhole];
  const every = everyRoomOf(one);
  const asked = every === undefined ? near : itemsAt(known, phrase, [every]);
  const said = judgeClass(asked.length > 0 ? asked : itemsFor(known, phrase.thing), {
    senses,
    word: kind.word,
    all:
      every !== undefined ||
      (all.length > 0 && isOfAll(all, kind)) ||
      EVERYWHERE.test(sentence.text.slice(phrase.to, phrase.to + 40)),
    places,
  });
  if (isSaidGone(one) && !phrase.negated && !kind.negated) {
    tell(one, judgeGone(one, kind), kind);
    one.items = [];
    return;
  }
  if (said.verdict === 'contradicted' && isOfBefore(one, kind)) return;
  if (kind.negated || phrase.negated) {
    if (said.verdict === 'backed')
      tell(one, { ...said, verdict: 'contradicted', because: 'the folder says that it is' }, kind);
    return;
  }
  if (said.verdict === 'contradicted' && isExcused(one, kind)) return;
  if (said.verdict === 'no-fact' && found.length === 0) return;
  const open =
    said.verdict === 'backed' && all.length > 0 ? leftOpen(known, phrase.thing, senses) : undefined;
  tell(one, open ?? said, kind);
  // What is known to be of another kind is not meant by the rest of the phrase.
  const { fits, others } = sortByClass(one.items, senses);
  const written = one.items.filter((item) => saysWords(item, kind.word));
  if (fits.length === 0 && others.length === 0 && written.length > 0) one.items = written;
  else if (fits.some(({ kind: own }) => own === 'system' || own === 'finish')) one.items = fits;
  else if (fits.length > 0) one.items = one.items.filter((item) => !others.includes(item));
}

const ROOM_BEHIND =
  /^[\s-]+(media|rec|recreation|family|theater|theatre|bonus|play|game|guest|craft|exercise|hobby|work|laundry|storage|music|tv|den|office|gym|bath\w*|bedroom|room|suite|lounge|bar|studio|space|area)s?\b/i;

/** "Finished cellar media room": the room is finished, whatever the rest of the level is. */
function isOfRoomBelow({ known, phrase, sentence }: ClaimCase, { senses, before }: Kind): boolean {
  if (
    !before ||
    phrase.thing !== 'basement' ||
    !senses.some(({ group, id }) => group === 'finished-state' && id === 'finished')
  )
    return false;
  const { levels, rooms } = known.house;
  const below = new Set(levels.filter(({ grade }) => grade === 'below').map(({ id }) => id));
  return (
    ROOM_BEHIND.test(sentence.text.slice(phrase.to, phrase.to + 18)) &&
    rooms.some((room) => below.has(room.level) && room.finish === 'finished')
  );
}

/** "Slate dots", "oak mantels": a material of what no table knows. */
const isOfAnother = ({ phrase, sentence }: ClaimCase): boolean => {
  // "Vinyl soffits" are no floor of vinyl, "pine paneling" is none of pine.
  const behind = /^ ([a-z][a-z-]*(?: [a-z]+)?)/i.exec(sentence.text.slice(phrase.to, phrase.to + 30))?.[1];
  const tokens = tokenize(behind ?? '');
  const known = behind === undefined ? undefined : lexicon().at(tokens, 0, tokens.length);
  if (known?.senses.some(({ tag, id }) => tag === 'thing' && isPart(id)) === true) return true;
  if (PANELS.test(sentence.text.slice(phrase.to, phrase.to + 24))) return true;
  const next = /^ ([a-z]{3,}s)\b/.exec(sentence.text.slice(phrase.to, phrase.to + 24))?.[1];
  return next !== undefined && !AS_VERB.test(next) && lexicon().at(tokenize(next), 0, 1) === undefined;
};

/** A thing of its own, and no room in which the kind may be. */
const isPart = (id: string): boolean => {
  const { room, level, structure } = thing(id);
  return (
    room === undefined &&
    level === undefined &&
    structure === undefined &&
    !/^(house|lot|work|floor|tile|island)$/.test(id)
  );
};

/** "Pine paneling", "oak mantel": what the folder tells of walls and joinery elsewhere. */
const PANELS =
  /^ (?:wall )?(panell?ing|panels|panell?ed|wainscot\w*|beams?|mantel\w*|shel(f|ves|ving)|book(case|shel)\w*|bench\w*|railings?|banister|built-?\s?ins?)\b/i;

/** Words in s that are no things: "hardwood gleams", "granite always". */
const AS_VERB =
  /^(was|has|is|does|its|this|thus|always|perhaps|besides|gleams|glows|extends|spans|stretches|continues|greets|spreads|graces|warms|unites|abounds|replaces|matches|complements|remains|reigns|dominates|shimmers|dazzles|unifies|surrounds|accents|us)$/;

/** "Copper with PEX in the bath": the place is that of the second kind. */
const isOfRest = ({ phrase, sentence }: ClaimCase, kind: Kind): boolean => {
  const [room] = phrase.rooms;
  return (
    room !== undefined &&
    room.from > kind.to &&
    /\b(with|and|plus|but)\b/i.test(sentence.text.slice(kind.to, room.from))
  );
};

const EVERYWHERE = /^\s*(on|in|across) (both|all|every|each) (the )?(level|floor|stor|room|bed|bath)/i;

/** "Clawfoot replaced", "walnut-coloured vinyl plank": another word of the phrase says the kind. */
function isExcused(one: ClaimCase, kind: Kind): boolean {
  const { found, sentence } = one;
  // "converted to gas" says what it is now.
  if (/convert\w* (in)?to\W+$/i.test(sentence.text.slice(Math.max(0, kind.from - 16), kind.from)))
    return false;
  // "Water: well": the value of a key is claimed, whatever else stands before.
  if (!kind.before && /^\s*[:=]\s*$/.test(sentence.text.slice(one.phrase.to, kind.from))) return false;
  // "Stucco over brick": what lies on top is what is there to see.
  if (OVER.test(sentence.text.slice(kind.to, kind.to + 12))) return false;
  const groups = new Set(kind.senses.map(({ group }) => group));
  if (
    kind.before &&
    attributesOfKind(one, 'newness').some(
      (word) => word.id === 'replaced' && !word.before && TAKES_AWAY.test(word.word),
    )
  )
    return true;
  return attributesOfKind(one, 'class').some(
    (other) =>
      other !== kind &&
      other.senses.some(({ group }) => groups.has(group)) &&
      // "wide-plank hickory" is both at once, "walnut-coloured vinyl" only one of them.
      isOtherKind(kind, other) &&
      sortByClass(found, other.senses).fits.length > 0,
  );
}

/** "Installed" and "laid" bring the kind that is told; "replaced" takes it away. */
const TAKES_AWAY =
  /^(?:(?:all|just|newly|was|were|been) )?(?:re(?!cently)|swap|chang|switch|tor[en]|rip|pull|exchang|went out)/;

const OVER = /^\s*(over|on top of|atop)\s/i;

/** Whether no thing can be both at once. */
const isOtherKind = (kind: Kind, other: Kind): boolean =>
  kind.senses.some(({ group, id }) =>
    other.senses.some((one) => one.group === group && exclude(group, id, one.id)),
  );

/** "full cellar", "entire kitchen": in front of a kind it says how much; elsewhere "throughout". */
const isOfAll = (all: readonly AttributeOf<'all'>[], kind: Kind): boolean =>
  all.some((word) => !(word.before && kind.before && word.from > kind.from));

/** "Tile throughout": floors are meant. */
function tellTileEverywhere(one: ClaimCase): void {
  const { known, phrase, places } = one;
  const all = attributesOfKind(one, 'all').filter(({ before }) => !before);
  if (phrase.thing === 'tile' && places.length > 0 && one.found.length === 0) tellNoTile(one);
  if (phrase.thing !== 'tile' || all.length === 0 || places.length > 0 || one.sentence.context !== undefined)
    return;
  const floors = itemsAt(known, { ...phrase, thing: 'floor' }, []).filter(({ kind }) => kind === 'finish');
  if (floors.length > 0)
    tell(
      one,
      judgeClass(floors, { senses: [TILE_FLOOR], word: 'tile', all: true, places }),
      all[0] as AttributeOf<'all'>,
    );
}

/** "Tile in the laundry": where the folder tells of the floor there, and of no tile. */
function tellNoTile(one: ClaimCase): void {
  const { known, phrase, places } = one;
  const floors = itemsAt(known, { ...phrase, thing: 'floor' }, places).filter(
    ({ kind }) => kind === 'finish',
  );
  const { fits, others } = sortByClass(floors, [TILE_FLOOR]);
  if (floors.length === 0 || fits.length > 0 || others.length < floors.length) return;
  tell(one, {
    verdict: 'contradicted',
    rule: 'kind.floor-covering',
    because: 'the folder tells of another floor there, and of no tile',
    facts: factsOf(others, 3),
  });
}

const TILE_FLOOR = { tag: 'class', group: 'floor-covering', id: 'tile-floor' } as const;

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
    },
    ...all.slice(0, 1),
  );
}
