/** Words in place of a wrong count, size, sum or year of building. */
import type { Stretch } from './stretch.js';

const ONES = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** `truth`: the figure as the judge words it: "3 bedrooms", "1,436 sq ft", "0.21-acre lot", "built 1991". */
export function figureWords(stretch: Stretch, rule: string, truth: string): string[] {
  if (rule === 'count.baths') return bathWords(stretch, truth);
  if (rule === 'date.built' && !/\d/.test(stretch.says)) return [];
  if (rule === 'count.storeys' && !/stor|level|floor/i.test(stretch.says)) return [];
  if (rule === 'count.storeys') return [storeyWords(stretch, truth)];
  if (rule === 'size.lot') return lotWords(stretch, truth);
  if (rule === 'dues') return duesWords(stretch, truth);
  return swapped(stretch, truth);
}

/** The figure of the truth where the draft has its own. */
function swapped({ says, units }: Stretch, truth: string): string[] {
  const figure = /\d[\d,./ ]*\d|\d/.exec(truth)?.[0];
  const word = /\b(?:one|two|three|four|five|six|seven|eight|nine|ten)\b/i.exec(truth)?.[0];
  const number = units.find((unit) => unit.number !== undefined || /^\d/.test(unit.word));
  const value = figure ?? (word === undefined ? undefined : String(ONES.indexOf(word.toLowerCase())));
  if (number === undefined || value === undefined) return /^[\p{L}-]+$/u.test(says) ? [] : [truth];
  const said = says.slice(number.from, number.to);
  // A unit that the number holds stays as the draft writes it.
  const digits = /(?:\d[\d,]*(?:\.\d+)?(?:\s*-?\s*\d\/\d)?|\.\d+)/.exec(said);
  const spelt = /\b(?:one|two|three|four|five|six|seven|eight|nine|ten)\b/i.exec(said);
  const spelling = spelled(value);
  const put =
    digits !== null
      ? said.replace(digits[0], value)
      : spelt !== null && spelling !== undefined
        ? said.replace(spelt[0], spelling)
        : undefined;
  const bare = says.slice(0, number.from).replace(HEDGE, '');
  const post = says.slice(number.to).replace(/^\+/, '');
  if (put === undefined) return [truth];
  const all = `${put.replace(/\+/, '')}${post}`;
  // The noun may be part of the number: "2 cars".
  const one = value === '1' ? all.replace(/(bed|bath|car|level|room|fireplace)s\b/i, '$1') : all;
  return [`${bare}${one}`, truth];
}

const spelled = (value: string): string | undefined =>
  /^\d+$/.test(value) ? ONES[Number(value)] : undefined;

const HEDGE =
  /(?:\b(?:over|under|nearly|almost|about|around|approx\.?|approximately|more than|less than|some|close to|just over|just under|up to|a generous|well over)\s*)+$/i;

const BATHS_BEHIND =
  /^\s*(?:and|&|,|\+|\/|w\/|plus)+\s*(?:\d|a|one|two)?\w*[\s-]*(?:half|full|three|powder|1\/2|½)/i;
const BATHS_AHEAD =
  /\b(?:full|half|three-quarter)(?:\s+(?:baths?|bathrooms?))?\s*(?:and|&|,|\+|\/|plus)\s*$/i;

const BATHS = /^(\d+) (.*?) ?baths?$/;

/** "1 full bath and 1 half bath": as the draft writes numbers, the noun said once. */
function bathWords({ says, ahead, behind }: Stretch, truth: string): string[] {
  const told = truth.split(' and ');
  if (!told.every((part) => BATHS.test(part))) return [truth];
  const all = told.map((part) => ({ count: part.replace(BATHS, '$1'), kind: part.replace(BATHS, '$2') }));
  // "2F | /1H baths"
  if (/^\d\s?F$/.test(says)) return [`${all.find(({ kind }) => kind === 'full')?.count ?? '0'}F`];
  // "1 full bath | and 2 half baths": the other kinds are told beside it.
  const kind = /\b(?:full|half|three-quarter)\b/i.exec(says)?.[0].toLowerCase();
  const isOneOfSeveral = kind !== undefined && (BATHS_BEHIND.test(behind) || BATHS_AHEAD.test(ahead));
  const parts = isOneOfSeveral ? all.filter((part) => part.kind === kind) : all;
  if (parts.length === 0) return [];
  const inWords = !/\d/.test(says);
  const counts = parts.map((part) => `${(inWords && spelled(part.count)) || part.count} ${part.kind}`);
  const noun = /bathrooms?/i.test(says) ? 'bathroom' : 'bath';
  const lastMany = parts.at(-1)?.count !== '1';
  const joined =
    counts.length < 3 ? counts.join(' and ') : `${counts.slice(0, -1).join(', ')} and ${counts.at(-1)}`;
  return [`${joined} ${noun}${lastMany ? 's' : ''}`, ...(isOneOfSeveral ? [] : [truth])];
}

/** As the draft spells it, and as an adjective where a noun follows. */
function storeyWords({ says, behind }: Stretch, truth: string): string {
  const word = /stor(?:e)?y|storeys/i.exec(says)?.[0].toLowerCase() === 'storey' ? 'storey' : 'story';
  const level = /level/i.test(says) ? 'level' : word;
  const many = level === 'level' ? 'levels' : word === 'story' ? 'stories' : 'storeys';
  const noun = /(?:s|ies)$/i.test(says) || !/^\s+[\p{L}]/u.test(behind);
  const head = /^stor(?:e)?(?:y|ys|ies)\b:?(?=\s*(?:\d|one\b|two\b|three\b))/i.exec(says)?.[0];
  if (head !== undefined) return `${head} ${truth.replace(/[\s-]*storeys?$/, '').replace(/^single$/, 'one')}`;
  return truth
    .replace(
      /^single-storey$/,
      noun && / /.test(says) && /(?:levels|stories|storeys)$/i.test(says)
        ? `one ${level}`
        : `single-${level}`,
    )
    .replace(/\bstoreys\b/, noun ? many : level)
    .replace(/ (?=(?:story|level|storey)$)/, noun ? ' ' : '-');
}

/** "on a | quarter acre" → "on a 0.21-acre lot". */
function lotWords({ says, ahead, behind }: Stretch, truth: string): string[] {
  const acres = truth.replace(/-acre lot$/, '');
  // "The lot is over a quarter acre": the article goes with it.
  if (/\ban?\s/i.test(says))
    return /\b(?:lot|yard|parcel)\b/i.test(`${ahead}${says}`) ? [`${acres} acre`] : [`a ${acres}-acre lot`];
  const lot = /\b(?:lot|yard|parcel|site|homesite|property)\b/i.exec(says)?.[0];
  if (/^\s*(?:lot|yard|parcel|homesite|site|corner)\b/i.test(behind))
    return [`${acres}-acre`, `${acres} acre`];
  if (lot !== undefined && /^lot\b/i.test(says))
    return [`${says.slice(0, 3)}${/^lot:/i.test(says) ? ':' : ''} ${acres} acre`];
  if (/\ba(?:n)?\s+$/i.test(ahead) || lot !== undefined) return [`${acres}-acre ${lot ?? 'lot'}`];
  return [`${acres} acre`];
}

/** "NO association fees" → "association dues $64.00 a month". */
function duesWords({ says, behind }: Stretch, truth: string): string[] {
  const sum = /\$[\d,.]+(?: (?:an? \w+|once))?/.exec(truth)?.[0]?.replace(/\.00\b/, '');
  if (sum === undefined) return [];
  const only = /^\s*(?:\/|per|a|an|monthly|month)\b/i.test(behind) ? sum.replace(/ an? \w+$/, '') : sum;
  if (/\$\s?\d/.test(says))
    return [
      says.replace(/\$\s?[\d,.]*\d(?:\s*(?:\/|per|a|an)\s*(?:mo\b\.?|month|year|yr\b|quarter))?/i, only),
    ];
  const noun = says.replace(/\b(?:no|zero|low|never any|without)\b\s*/gi, '').trim();
  return [`${noun === '' ? 'dues' : noun} ${sum}`];
}
