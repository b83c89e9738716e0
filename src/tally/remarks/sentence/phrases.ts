/**
 * Who is spoken of, and what is said of it: each thing that a sentence names, with the words that belong to it.
 *
 * No grammar of English: a thing takes what stands directly before it ("new 2019 roof"), what a verb or a bracket says
 * behind it ("roof (2019)", "roof was replaced"), and shares both along a list ("new roof, gutters and windows";
 * "washer and dryer stay").
 */

import { stretchOf } from '../words/stretch-of.js';
import { has, isBoundary, senseOf, type Unit } from '../words/units.js';
import { attributesOf, classesIn } from './attributes-of.js';
import { findHeads } from './heads.js';
import type { Attribute, Draft, Head, SentencePhrases } from './phrase.js';
import { placeThings } from './place-things.js';
import { repeat, shareAlongLists } from './share-lists.js';
import { tailOf } from './tail.js';

export function phrasesOf(units: readonly Unit[]): SentencePhrases {
  const heads = findHeads(units);
  const taken = new Set<number>();
  const drafts = heads.map((head, order) => draft(units, head, heads[order + 1], taken));
  shareAlongLists(units, drafts);
  repeat(units, drafts);
  placeThings(units, drafts);
  const loose = looseAttributes(units, taken);
  return { phrases: drafts.map(({ phrase }) => phrase), loose };
}

function draft(units: readonly Unit[], head: Head, next: Head | undefined, taken: Set<number>): Draft {
  const attributes: Attribute[] = [];
  const rooms: { thing: string; from: number; to: number; ordinal?: number }[] = [];
  let negated = false;
  if (deniedBefore(units, head.start)) negated = true;
  for (const [offset, unit] of units.slice(head.start, head.at + 1).entries()) {
    const at = head.start + offset;
    taken.add(at);
    if (has(unit, 'negation') && !has(unit, 'convey')) negated = true;
    const room = head.adjuncts.includes(at) ? senseOf(unit, 'thing') : undefined;
    if (room !== undefined) rooms.push({ thing: room.id, from: unit.from, to: unit.to });
    else attributes.push(...attributesOf(units, at, head, true));
  }
  for (const at of tailOf(units, head, next)) {
    taken.add(at);
    // "Cooling: none"
    if (units[at]?.word === 'none' && at <= head.at + 2) negated = true;
    attributes.push(...attributesOf(units, at, head, false));
  }
  const own = units.slice(head.at, head.at + 1);
  const bare = own.filter((unit) => !has(unit, 'thing'));
  return {
    head,
    phrase: {
      thing: head.thing,
      ...stretchOf(own),
      aside: own[0]?.aside,
      attributes,
      rooms,
      negated,
      place: head.place,
      bare: bare.length > 0,
      bareSenses: bare.flatMap(({ senses }) => classesIn(senses)),
      at: head.at,
    },
  };
}

/** "not a speck of laminate", "none of the carpet". */
function deniedBefore(units: readonly Unit[], start: number): boolean {
  if (units[start - 1]?.word !== 'of') return false;
  for (let at = start - 2; at >= Math.max(0, start - 5); at--) {
    const unit = units[at];
    if (unit === undefined || isBoundary(unit)) return false;
    if (has(unit, 'negation')) return true;
  }
  return false;
}

/** What is said of no thing named beside it: "fully renovated in 2026", "NEW: roof, gutters". */
function looseAttributes(units: readonly Unit[], taken: ReadonlySet<number>): Attribute[] {
  const nobody: Head = { at: -1, thing: 'house', start: 0, end: 0, adjuncts: [], place: false };
  return units.flatMap((unit, at) =>
    taken.has(at) || unit.aside !== undefined ? [] : attributesOf(units, at, nobody, false),
  );
}
