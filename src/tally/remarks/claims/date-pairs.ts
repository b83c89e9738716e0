/** "Heater and pump were put in in 2025 and 2024": of two years told of two things, each has the one that fits it. */
import { type AttributeOf, attributesOfKind, type ClaimCase, isDate } from './claim-case.js';

const AND = /^\s*(?:,|and|&|\/|, and)\s*(?:in\s+|about\s+)?$/i;

/** The dates that stand beside a date with nothing but "and" between. */
function partnersOf(one: ClaimCase, date: AttributeOf<'number'>): AttributeOf<'number'>[] {
  const { text } = one.sentence;
  return attributesOfKind(one, 'number').filter(
    (other) =>
      other !== date &&
      isDate(other.number) &&
      AND.test(other.from >= date.to ? text.slice(date.to, other.from) : text.slice(other.to, date.from)),
  );
}

/** Takes back what speaks against one year of a pair, where the other year of the pair is right for the thing. */
export function withoutPairs(one: ClaimCase): void {
  if (attributesOfKind(one, 'number').length < 2) return;
  const isRight = (date: AttributeOf<'number'>): boolean =>
    one.told.some(({ judgement, attributes }) => judgement.verdict === 'backed' && attributes.includes(date));
  for (const told of one.told.slice()) {
    const { judgement, attributes } = told;
    if (judgement.verdict !== 'contradicted' || !judgement.rule.startsWith('date.')) continue;
    const date = attributes.find((word) => word.kind === 'number');
    if (date !== undefined && partnersOf(one, date).some(isRight)) one.told.splice(one.told.indexOf(told), 1);
  }
}
