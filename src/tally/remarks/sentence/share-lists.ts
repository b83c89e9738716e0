/** Lists: what stands before the first member is said of all, and what stands behind the last one too. */

import { belongsTo } from '../words/taxonomy.js';
import { has, isBoundary, type Unit, wordOf } from '../words/units.js';
import type { Attribute, Draft } from './phrase.js';

/** Lists: what stands before the first member is said of all, and what stands behind the last one too. */
export function shareAlongLists(units: readonly Unit[], drafts: readonly Draft[]): void {
  let list: Draft[] = [];
  for (const one of drafts) {
    const before = list.at(-1);
    if (before !== undefined && !isList(units, before, one)) {
      share(units, list);
      list = [];
    }
    list.push(one);
  }
  share(units, list);
}

export function isList(units: readonly Unit[], one: Draft, other: Draft): boolean {
  const between = units.slice(one.head.at + 1, other.head.start);
  if (between.length === 0) return true;
  return (
    between.every(
      (unit) =>
        unit.sign === ',' ||
        unit.sign === '&' ||
        unit.sign === '/' ||
        unit.sign === '+' ||
        /^(and|or|plus|as|well|also)$/.test(unit.word) ||
        has(unit, 'determiner'),
    ) && !(between.length > 0 && between.every((unit) => has(unit, 'determiner')))
  );
}

/** Of the kinds of a water supply, those that a sewer can be as well: public, private. */
const supplyOf = (one: Attribute): Attribute[] =>
  one.kind === 'class' && one.before && /^(public|city|municipal|town|county|village)$/.test(one.word)
    ? [{ ...one, senses: [{ tag: 'class', group: 'sewer-kind', id: 'public-sewer' }], shared: true }]
    : [];

/** "New roof and gutters" shares its word; "a coated floor and water softener" does not. */
const SHARED_AHEAD = /^(new|newer|replaced|updated)$/;

/** Figures that each thing has for itself. */
const OF_ONE = /^(count|dimensions|square-feet|feet|rating|cars)$/;

function share(units: readonly Unit[], list: readonly Draft[]): void {
  const [first, last] = [list[0], list.at(-1)];
  // One thing alone shares nothing.
  if (first === undefined || last === undefined || first === last) return;
  const closed = units
    .slice(first.head.at, last.head.at)
    .some((unit) => /^(and|&|\+|\/)$/.test(unit.sign ?? unit.word));
  const ahead = first.phrase.attributes.filter(
    (one) =>
      one.before &&
      ((one.kind === 'newness' && SHARED_AHEAD.test(one.id)) || one.kind === 'all' || one.kind === 'both'),
  );
  // "public water and sewer"
  if (first.head.thing === 'water-supply')
    for (const { phrase, head } of list.slice(1))
      if (head.thing === 'sewer' && !phrase.attributes.some(({ kind }) => kind === 'class'))
        phrase.attributes = [
          ...phrase.attributes,
          ...first.phrase.attributes.flatMap((one) => supplyOf(one)),
        ];
  const behind = last.phrase.attributes.filter(
    ({ kind, before, ...rest }) =>
      !before && kind !== 'word' && kind !== 'class' && !('number' in rest && OF_ONE.test(rest.number.kind)),
  );
  // "tile and toilet, oak floors refinished": behind a bare comma the last member is alone with its coat.
  const joined = /^(and|&|\+|\/)$/.test(
    [...units.slice(0, last.head.start)].reverse().find((unit) => !has(unit, 'determiner'))?.word ?? '',
  );
  for (const { phrase, head } of list) {
    const own = phrase.attributes.filter(({ kind }) => kind !== 'word');
    const kin = sameKind(first.head.thing, head.thing) && list.length >= 3;
    const plain =
      own.length === 0 && !units.slice(head.start, head.at).some((unit) => has(unit, 'determiner'));
    if (phrase !== first.phrase && plain && (closed || kin) && !first.phrase.aside)
      phrase.attributes = [...phrase.attributes, ...ahead.map((one) => ({ ...one, shared: true }))];
    if (phrase !== last.phrase && !phrase.attributes.some(({ before }) => !before))
      phrase.attributes = [
        ...phrase.attributes,
        ...behind
          .filter(
            (one) =>
              (closed || kin || list.length >= 3 || one.kind === 'convey') &&
              !isBracketed(units, one) &&
              !(
                one.kind === 'newness' &&
                SURFACE_DEED.test(one.id) &&
                !(joined && SURFACE.test(head.thing))
              ) &&
              // "new carpet, and its bath was gutted": what has a word of its own takes no other.
              !(one.kind === 'newness' && own.some(({ kind }) => kind === 'newness')),
          )
          .map((one) => ({ ...one, shared: true })),
      ];
    if (
      phrase !== first.phrase &&
      first.phrase.negated &&
      plain &&
      /^(or|nor)$/.test(wordOf(units[head.start - 1]))
    )
      phrase.negated = true;
  }
}

/** "condenser too", "gutters likewise": said of it as well what was said of the thing before. */
export function repeat(units: readonly Unit[], drafts: readonly Draft[]): void {
  let last: Draft['phrase'] | undefined;
  for (const { phrase, head } of drafts) {
    const before = last;
    if (!phrase.place) last = phrase;
    const behind = units.slice(head.at + 1, head.at + 4);
    const until = behind.findIndex((unit) => isBoundary(unit));
    const words = (until < 0 ? behind : behind.slice(0, until)).map(({ word }) => word).join(' ');
    if (
      before === undefined ||
      phrase.place ||
      !AS_WELL.test(words) ||
      phrase.attributes.some(
        ({ kind }) => kind === 'newness' || kind === 'convey' || kind === 'permit' || kind === 'condition',
      )
    )
      continue;
    const same = before.attributes.filter(
      ({ kind, ...rest }) =>
        kind === 'newness' ||
        kind === 'convey' ||
        kind === 'permit' ||
        kind === 'who' ||
        ('number' in rest &&
          rest.number.kind !== 'count' &&
          rest.number.kind !== 'rating' &&
          rest.number.kind !== 'square-feet'),
    );
    phrase.attributes = [
      ...phrase.attributes,
      ...same.map((one) => ({ ...one, before: true, shared: true })),
    ];
  }
}

const AS_WELL =
  /^(is |are |was |were |did |does |do |got |has |have )?(too|likewise|ditto|also|as well|similarly|same|the same|idem)\b(?! age)/;

const sameKind = (one: string, other: string): boolean =>
  ['appliance', 'bath-fixture', 'hvac', 'electrical', 'plumbing'].some(
    (wide) => belongsTo(one, wide) && belongsTo(other, wide),
  );

/** "1 full bath and 1 half bath (no permit found)": a permit in brackets is of the last one alone. */
export const isBracketed = (units: readonly Unit[], { kind, from }: Attribute): boolean =>
  (kind === 'permit' || kind === 'unpermitted') &&
  units[units.findIndex((unit) => unit.from === from) - 1]?.sign === '(';

/** Deeds done to a surface: "coated floor and water softener" says nothing of the softener. */
const SURFACE_DEED = /^(refinished|painted|repaired|refaced)$/;
const SURFACE =
  /^(floor|wall|ceiling|trim|door|front-door|cabinet|cabinet-front|counter|stair|rail|deck|porch|tub|shower|tile|siding|trim-outside|garage|fireplace|vanity|driveway|porch-steps|shed|fence)$/;
