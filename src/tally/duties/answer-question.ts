/** One question of a rule’s condition, answered from what is known. */
import type { Question } from '../tables/duties.js';
import type { DutyFact, Span } from './duty-fact.js';
import { anyOf, notOf, type Truth } from './truth.js';

/** A value that lies somewhere between two ends is only said to be above or below when all of it is. */
export function answerQuestion({ op, value }: Question, { is }: Pick<DutyFact, 'is'>): Truth {
  if (is === undefined) return 'not known';
  if (Array.isArray(value)) return anyOf(value.map((one) => equals(is, one)));
  if (op === 'eq') return equals(is, value);
  if (op === 'ne') return notOf(equals(is, value));
  if (typeof is === 'string') return 'not known';
  if (op === 'lt') return isBelow(is, value);
  if (op === 'gte') return notOf(isBelow(is, value));
  if (op === 'gt') return isAbove(is, value);
  return notOf(isAbove(is, value));
}

function equals(is: string | Span, value: string | number): Truth {
  if (typeof is === 'string') return is === value ? 'yes' : 'no';
  if (is.low !== undefined && is.low === is.high) return is.low === value ? 'yes' : 'no';
  return anyOf([isBelow(is, value), isAbove(is, value)]) === 'yes' ? 'no' : 'not known';
}

function isBelow({ low, high }: Span, value: string | number): Truth {
  if (high !== undefined && high < value) return 'yes';
  return low !== undefined && low >= value ? 'no' : 'not known';
}

function isAbove({ low, high }: Span, value: string | number): Truth {
  if (low !== undefined && low > value) return 'yes';
  return high !== undefined && high <= value ? 'no' : 'not known';
}
