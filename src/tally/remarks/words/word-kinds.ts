/** Words that describe, words that join, and words that no table knows. */
import type { Sense } from './lexicon.js';
import type { Unit } from './units.js';

/** What can stand between the beginning of a noun phrase and its head. */
const ATTRIBUTIVE = new Set<Sense['tag']>([
  'newness',
  'class',
  'all',
  'both',
  'some',
  'who',
  'trade',
  'unlike',
  'opinion',
  'place',
  'permit',
  'unpermitted',
  'inspected',
  'condition',
  'storeys',
  'unit',
  'hedge',
]);

export const isAttributive = (unit: Unit): boolean =>
  unit.number !== undefined || unit.senses.some(({ tag }) => ATTRIBUTIVE.has(tag));

/** A word that no table knows and that is no verb, preposition or determiner: an adjective, as far as one can tell. */
export const isPlainWord = (unit: Unit | undefined): boolean =>
  unit !== undefined &&
  unit.sign === undefined &&
  unit.number === undefined &&
  unit.senses.length === 0 &&
  /\p{L}/u.test(unit.word) &&
  !GLUE.test(unit.word);

export const GLUE =
  /^(and|or|but|&|that|which|who|where|when|while|so|too|only|even|still|there|here|it|they|we|you|he|she|i|not)$/;
