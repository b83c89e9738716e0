/** What the folder's words for a thing mean, read with the lexicon of the draft. */

import { lexicon, type Sense } from '../words/lexicon.js';
import { canBeSaidOf, isKindOf } from '../words/taxonomy.js';
import { tokenize } from '../words/token.js';
import type { Item } from './items.js';

/** "wood look", "stone pattern": what a thing looks like, not what it is. */
const LIKENESS = /[\w-]+[ -](look|pattern|style|effect)\b/gi;

/** "tile over membrane, no curb": what lies under a thing. */
const BACKING = / over [^,]*/g;

/** "wall tile with a slate cap": what only trims a thing. */
const ACCENT = /,? with (an? )?[\w -]*\b(cap|trim|border|accent|niche|band|curb|sill|grout|threshold)\b/gi;

/** The things that a name speaks of, and the classes of all its words that can be said of them. */
export function meaningOf(
  name: string,
  description: string,
  given: readonly string[] = [],
): Pick<Item, 'things' | 'classes'> {
  const named = sensesIn(name).flatMap((sense) => (sense.tag === 'thing' ? [sense.id] : []));
  const heads =
    named.length + given.length > 0
      ? []
      : sensesIn(name).flatMap((sense) => (sense.head === undefined ? [] : [sense.head]));
  // A finish is what it is on, whatever else its words name: "wall tile, full height at the tub".
  const things = [...new Set(given.length > 0 ? given : [...named, ...heads])];
  const classes = sensesIn(
    description.replace(LIKENESS, '').replace(ACCENT, '').replace(BACKING, ''),
  ).flatMap((sense) =>
    sense.tag === 'class' && things.some((id) => canBeSaidOf(sense.group, id))
      ? [{ group: sense.group, id: sense.id }]
      : [],
  );
  return { things, classes: mostTelling(classes) };
}

/** "vinyl" beside "vinyl plank" adds nothing. */
const mostTelling = (classes: Item['classes']): Item['classes'] =>
  classes.filter(
    (one, index) =>
      classes.findIndex((other) => other.group === one.group && other.id === one.id) === index &&
      !classes.some(
        (other) => other.group === one.group && other.id !== one.id && isKindOf(one.group, other.id, one.id),
      ),
  );

// The facts' own words are asked for again with every phrase; a draft's words never come here.
const read = new Map<string, readonly Sense[]>();
const MOST_KEPT = 4000;

/** What the words of a text may mean, in their order. */
export function sensesIn(text: string): readonly Sense[] {
  const before = read.get(text);
  if (before !== undefined) return before;
  const tokens = tokenize(text);
  const found: Sense[] = [];
  for (let at = 0; at < tokens.length; ) {
    const hit = lexicon().at(tokens, at, tokens.length);
    found.push(...(hit?.senses ?? []));
    at += hit?.length ?? 1;
  }
  if (read.size >= MOST_KEPT) read.clear();
  read.set(text, found);
  return found;
}
