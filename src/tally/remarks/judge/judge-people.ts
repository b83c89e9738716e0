/** Who did it. */

import type { Person } from '../../../facts/house.js';
import { factsOf } from '../items/item-words.js';
import type { Item } from '../items/items.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';

/** Whether somebody of the folder works in a trade of the tables. */
export const isOfTrade = ({ trade: own = '', name }: Person, trade: string): boolean =>
  TRADES[trade]?.test(`${own} ${name}`) === true;

const DEED = (item: Item): boolean =>
  item.deed !== undefined || item.kind === 'work' || item.who.kind === 'hired';

/** Words of a stated trade, by the trade that the draft names. */
const TRADES: Readonly<Record<string, RegExp>> = {
  electrician: /electri/i,
  plumber: /plumb/i,
  roofer: /roof|gutter/i,
  heating: /heat|cool|hvac|air/i,
  pool: /pool/i,
  carpenter: /carpent|build|renovat|remodel|contract|cabinet|joiner|fram|deck|trim|window|door/i,
  painter: /paint/i,
  mason: /mason|stone|brick|chimney|concrete|plaster|stucco/i,
  engineer: /engineer/i,
  tiler: /til(e|ing)|floor|mason|bath/i,
  flooring: /floor|carpet|til(e|ing)/i,
  glazier: /glaz|window|glass|door/i,
  cabinet: /cabinet|kitchen|joiner/i,
  landscaper: /landscap|garden|yard|irrigation/i,
  chimney: /chimney|mason|sweep/i,
  septic: /septic|drain|sewer|plumb/i,
  well: /well|pump|plumb/i,
  gutter: /gutter|roof/i,
  insulation: /insulat|weatheri[sz]|energy/i,
  fence: /fenc|landscap|carpent|pool/i,
  concrete: /concrete|pav(er|ing)|mason|asphalt/i,
  plasterer: /plaster|drywall|stucco|mason|paint/i,
  countertop: /counter|stone|granite|quartz|kitchen/i,
  pest: /pest|termite|exterminat/i,
  waterproofer: /waterproof|foundation|mason|drain/i,
  sider: /siding|carpent|exterior/i,
  designer: /design|architect|build/i,
};

/** Holds "by a licensed electrician", "professionally", "by owner" against who is named in the folder. */
export function judgeWho(
  items: readonly Item[],
  id: string,
  trade: string | undefined,
  all = true,
): Judgement {
  const rule = `who.${id}`;
  const done = items.filter(DEED).filter(({ kept, who }) => !kept || who.kind === 'hired');
  const known = done.filter(({ who }) => who.kind !== 'not-known');
  if (known.length === 0)
    return {
      verdict: 'no-fact',
      rule,
      because: 'the folder does not say who did it',
      facts: factsOf(items, 2),
    };
  const fits = known.filter((item) => didFit(item, id, trade) === true);
  const against = known.filter((item) => didFit(item, id, trade) === false);
  const facts = (of: readonly Item[]): FactSaid[] =>
    of.slice(0, 4).map((item) => ({
      path: item.path,
      words: `${item.label}: ${whoWords(item)}`,
      evidence: item.evidence,
    }));
  if (fits.length > 0 && against.length === 0)
    return { verdict: 'backed', rule, because: 'the folder names who did it', facts: facts(fits) };
  if (fits.length > 0 && !all && fits.length >= against.length)
    return { verdict: 'backed', rule, because: 'the folder names who did it', facts: facts(fits) };
  if (fits.length > 0)
    return {
      verdict: against.length > fits.length ? 'contradicted' : 'wider',
      rule,
      because: 'so of some, but not of all',
      facts: facts([...against, ...fits]),
    };
  if (against.length > 0)
    return {
      verdict: 'contradicted',
      rule,
      because: `the folder says ${whoWords(against[0] as Item)}`,
      facts: facts(against),
    };
  return { verdict: 'no-fact', rule, because: 'the folder does not state a licence', facts: facts(known) };
}

/** "licensed roofer", of no thing named: whether somebody of the trade was hired, and stated a licence. */
export function judgeTrade(known: Known, id: string, trade: string): Judgement | undefined {
  const people = known.house.people.filter((person) => isOfTrade(person, trade));
  if (people.length === 0) return undefined;
  const licensed = people.filter(({ licence }) => licence?.value !== undefined);
  const facts = people.map((person) => ({
    path: ['people', known.house.people.indexOf(person)],
    words: `${person.trade ?? 'hired'}: licence ${person.licence?.value === undefined ? 'not stated' : 'stated'}`,
    evidence: person.licence?.evidence ?? [],
  }));
  return id !== 'licensed' || licensed.length > 0
    ? { verdict: 'backed', rule: `who.${id}`, because: 'the folder names one', facts }
    : { verdict: 'no-fact', rule: `who.${id}`, because: 'the folder does not state a licence', facts };
}

/** "… by Ridge Street Plumbing": somebody of the folder named as the one who did it. */
export function judgeNamed(known: Known, items: readonly Item[], words: string): Judgement | undefined {
  const said = words.toLowerCase();
  const named = known.house.people.find((person) => said.includes(`by ${person.name.toLowerCase()}`));
  if (named === undefined) return undefined;
  const done = items.filter(({ who, kept }) => who.kind !== 'not-known' && !kept);
  if (done.length === 0) return undefined;
  const fits = done.filter(({ who }) => who.kind === 'hired' && who.person.id === named.id);
  const of = fits.length > 0 ? fits : done;
  return {
    verdict: fits.length > 0 ? 'backed' : 'contradicted',
    rule: 'who.named',
    because: fits.length > 0 ? 'the folder names who did it' : `the folder says ${whoWords(done[0] as Item)}`,
    facts: of.slice(0, 3).map((item) => ({
      path: item.path,
      words: `${item.label}: ${whoWords(item)}`,
      evidence: item.evidence,
    })),
  };
}

/** Of what the folder says who did it; undefined where a licence decides and none is stated. */
function didFit({ who }: Item, id: string, trade: string | undefined): boolean | undefined {
  if (id === 'owner') return who.kind !== 'hired';
  if (id === 'amateur')
    return who.kind === 'hired' && who.person.licence?.value !== undefined ? false : undefined;
  if (who.kind !== 'hired') return false;
  const pattern = trade === undefined ? undefined : TRADES[trade];
  if (
    pattern !== undefined &&
    who.person.trade !== undefined &&
    !pattern.test(`${who.person.trade} ${who.person.name}`)
  )
    return false;
  if (id === 'licensed') return who.person.licence?.value === undefined ? undefined : true;
  return true;
}

/** "tile setter" is somebody; "stone and quartz counters" is what they do. */
const IS_PERSON = /(?:er|or|ian|man|mason|company|firm|crew|specialist)$/i;

const NOT_HIRED = {
  owner: 'done by the owner',
  family: 'done by family',
  'not-known': 'by whom is not known',
} as const;

function whoWords({ who }: Item): string {
  if (who.kind !== 'hired') return NOT_HIRED[who.kind];
  const { trade, licence } = who.person;
  return `done by ${trade === undefined ? 'someone hired' : IS_PERSON.test(trade) ? `a hired ${trade}` : `someone hired (${trade})`}${licence?.value === undefined ? ', licence not stated' : ', licensed by their own word'}`;
}
