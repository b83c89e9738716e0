/** What stands before a list goes for its members: a heading with a colon, a year, a deed, who did it. */

import { has, type Unit, wordOf } from '../words/units.js';
import type { Attribute, Phrase } from './phrase.js';

/** A heading with a colon, or "In 2026 …", goes for what follows. */
export function withHeadings(
  units: readonly Unit[],
  phrases: readonly Phrase[],
  loose: readonly Attribute[],
): Phrase[] {
  // "updated in 2024 incl. roof and windows" heads a list as a colon does.
  const deed = loose.find(({ kind }) => kind === 'newness');
  const list = units.find((unit) => deed !== undefined && unit.from > deed.to && /^incl/.test(unit.word));
  const colon = units.find(({ sign }) => sign === ':') ?? dashBehindHeading(units) ?? list;
  const leading = loose.filter((one) => {
    if (
      (one.kind === 'newness' && one.id !== 'original' && one.id !== 'old') ||
      (one.kind === 'convey' && one.from !== list?.from) ||
      one.kind === 'permit' ||
      one.kind === 'who'
    )
      return colon !== undefined && one.to <= colon.from;
    return (
      one.kind === 'number' &&
      (one.number.kind === 'year' || one.number.kind === 'within') &&
      !BOUNDS_TIME.test(wordBefore(units, one.from)) &&
      ((colon !== undefined && one.to <= colon.from) || one.from <= (units[2]?.from ?? 0))
    );
  });
  // "permits final for panel, bath and furnace"
  const papers = loose.filter(
    (one) => (one.kind === 'permit' || one.kind === 'unpermitted') && FOR.test(wordAfter(units, one.to)),
  );
  const doers = [...loose, ...subjects(units)].filter((one) => one.kind === 'who');
  const giving = loose.filter(
    (one) => one.kind === 'convey' && one.from !== list?.from && GIVING.test(wordAt(units, one.from)),
  );
  const headed = newList(units, phrases);
  return phrases.map((phrase) => {
    const heading = [...leading, ...headed(phrase)].filter((one) => {
      if (one.to > phrase.from) return false;
      if (one.kind === 'number')
        return (
          !phrase.attributes.some((own) => own.kind === 'number' && own.number.kind !== 'count') &&
          (phrase.attributes.some(({ kind }) => kind === 'newness') || colon !== undefined)
        );
      return !phrase.attributes.some((own) => own.kind === one.kind);
    });
    const given = giving.filter(
      (one) =>
        one.to <= phrase.from && !phrase.place && !phrase.attributes.some(({ kind }) => kind === 'convey'),
    );
    const doer = doers.filter(
      (one) =>
        one.to <= phrase.from &&
        !phrase.place &&
        phrase.attributes.some(
          (own) =>
            own.kind === 'newness' &&
            own.before &&
            !own.shared &&
            own.from >= one.to &&
            own.from - one.to < 14,
        ) &&
        !phrase.attributes.some(({ kind }) => kind === 'who'),
    );
    if (doer.length > 0)
      return {
        ...phrase,
        attributes: [
          ...phrase.attributes,
          ...doer.slice(-1).map((one) => ({ ...one, before: false, shared: true })),
        ],
      };
    const paper = papers
      .filter(
        (one) =>
          one.to <= phrase.from && !phrase.place && !phrase.attributes.some(({ kind }) => kind === 'permit'),
      )
      .map((one) => ({ ...one, before: false, shared: true }));
    if (paper.length > 0) return { ...phrase, attributes: [...phrase.attributes, ...paper.slice(0, 1)] };
    return heading.length + given.length === 0
      ? phrase
      : {
          ...phrase,
          attributes: [
            ...phrase.attributes,
            ...[...heading.map((one) => ({ ...one, before: true })), ...given].map((one) => ({
              ...one,
              shared: true,
            })),
          ],
        };
  });
}

/** "Here since 2017, we did the counters": a year that bounds a time dates no deed. */
const BOUNDS_TIME = /^(since|before|after|until|till)$/;

const wordBefore = (units: readonly Unit[], from: number): string =>
  units.findLast((unit) => unit.to <= from)?.word ?? '';

/** Units that a heading has at most. */
const LONGEST_HEADING = 4;

/** "Replaced – furnace, water heater": a dash behind a deed that opens the line. */
function dashBehindHeading(units: readonly Unit[]): Unit | undefined {
  const at = units.findIndex(({ sign }) => sign === '—');
  if (at < 1 || at > LONGEST_HEADING) return undefined;
  const before = units.slice(0, at);
  return before.some((unit) => has(unit, 'newness') || has(unit, 'who') || has(unit, 'convey')) &&
    before.every((unit) => !has(unit, 'thing') || has(unit, 'newness'))
    ? units[at]
    : undefined;
}

/** "Kitchen: brand new top to bottom — cabinetry, counters, fridge": new goes for the list. */
function newList(units: readonly Unit[], phrases: readonly Phrase[]): (phrase: Phrase) => Attribute[] {
  const [head] = phrases;
  const word = head?.attributes.find((one) => one.kind === 'newness' && one.id === 'new' && !one.before);
  const whole = head?.attributes.some(({ kind, before }) => kind === 'all' && !before) === true;
  const last = Math.max(...(head?.attributes.map(({ to }) => to) ?? [0]));
  const sign = units.find((unit) => unit.from >= last);
  const opens = word !== undefined && (sign?.sign === ':' || (sign?.sign === '—' && whole));
  return (phrase) =>
    opens &&
    phrase !== head &&
    sign !== undefined &&
    phrase.from > sign.from &&
    !phrase.place &&
    !phrase.attributes.some(({ kind }) => kind === 'newness')
      ? [word]
      : [];
}

/** "Owner replaced the roof": who stands before the deed. */
function subjects(units: readonly Unit[]): Attribute[] {
  return units.flatMap((unit, at): Attribute[] => {
    if (!/^(owner|owners|seller|sellers|we|homeowner)$/.test(unit.word)) return [];
    const next = units.slice(at + 1, at + 4).find((one) => !has(one, 'copula') && !/ly$/.test(one.word));
    return next !== undefined && has(next, 'newness')
      ? [
          {
            from: unit.from,
            to: unit.to,
            before: false,
            shared: false,
            unlike: false,
            negated: false,
            kind: 'who',
            id: 'owner',
            trade: undefined,
          },
        ]
      : [];
  });
}

const FOR = /^(for|on|covering|cover|:)$/;

const wordAfter = (units: readonly Unit[], to: number): string => {
  const next = units.filter((unit) => unit.from >= to).slice(0, 2);
  return next.map((unit) => unit.sign ?? unit.word).find((word) => FOR.test(word)) ?? '';
};

const GIVING = /^(tak|keep|includ|come|exclud|leav|left|stay|convey|thrown|remain|less|minus|except)/;

const wordAt = (units: readonly Unit[], from: number): string =>
  wordOf(units.find((unit) => unit.from === from));
