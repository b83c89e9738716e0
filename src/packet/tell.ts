/** Facts told in sentences: what was done, by whom, under which permit. */
import { compareDates, type HouseDate, printDate } from '../facts/date.js';
import type { Finish, Permit, System } from '../facts/house.js';
import { printLength } from '../facts/length.js';
import { printProductSize } from '../facts/size.js';
import type { Improvement } from '../tally/improvements.js';
import type { Who } from '../tally/who.js';
import { type Context, placeName } from './context.js';
import { evidenceOf, markOf } from './marks.js';
import type { EvidenceMark, Rich, Run } from './packet.js';
import { fullStop, inWords, link, lowerFirst, rich, say, strong, upperFirst } from './rich.js';

export interface Told {
  readonly text: Rich;
  readonly mark: EvidenceMark;
}

/** ", kitchen and bath" behind a subject, without the places that the subject names already. */
export function placeBehind(context: Context, improvement: Improvement): string {
  const subject = subjectOf(improvement).toLowerCase();
  const places = improvement.where
    .map((id) => placeName(context, id).toLowerCase())
    .filter((place) => !subject.includes(place));
  return places.length === 0 ? '' : `, ${inWords(places)}`;
}

/** The name of what an improvement is about. */
export function subjectOf(improvement: Improvement): string {
  const { source } = improvement;
  if (source.kind === 'work') return upperFirst(source.item.what);
  if (source.kind === 'system') return upperFirst(source.item.name ?? source.item.is);
  return source.item.on === 'other' ? upperFirst(source.item.what) : upperFirst(source.item.on);
}

/** One improvement as a sentence or two: what was done in bold, then what exactly, when, by whom, permit. */
export function tellImprovement(
  context: Context,
  improvement: Improvement,
  naming: 'with place' | 'without place',
): Told {
  const { source } = improvement;
  const place = naming === 'with place' ? placeBehind(context, improvement) : '';
  const head = strong(`${subjectOf(improvement)}${place}, ${improvement.did}.`);
  const body =
    source.kind === 'work'
      ? workBody(context, improvement)
      : source.kind === 'finish'
        ? finishWords(source.item)
        : systemWords(source.item);
  const permit = permitRuns(context, source.item.permit);
  const when = improvement.done === undefined ? 'Date not known' : upperFirst(printDate(improvement.done));
  const started =
    source.kind === 'work' && source.item.started !== undefined
      ? `${upperFirst(printDate(source.item.started))} to `
      : '';
  return {
    text: rich(
      head,
      body === '' ? undefined : ` ${upperFirst(fullStop(body))}`,
      ` ${started}${started === '' ? when : lowerFirst(when)}, ${whoWords(context, improvement.who)}`,
      ...(permit.length === 0 ? [] : [say('; '), ...permit]),
      '.',
      source.item.note === undefined ? undefined : ` ${fullStop(upperFirst(source.item.note))}`,
    ),
    mark: markOf(context, evidenceOf(context, source.item)),
  };
}

/** What exactly, what was put in, and why: a sentence each. */
function workBody(context: Context, improvement: Improvement): string {
  if (improvement.source.kind !== 'work') return '';
  const { item, systems } = improvement.source;
  // What was put in: systems, and the finishes that this work brought. The same plank in four rooms is one.
  const finishes = context.tally.improvements.flatMap((one) =>
    one.partOf === item.id && one.source.kind === 'finish'
      ? [[one.source.item.what, one.source.item.colour].filter(Boolean).join(', ')]
      : [],
  );
  const brought = ['new', 'replaced', 'added', 'moved'].includes(item.did)
    ? systems.filter((system) => !system.kept)
    : [];
  const put = [
    ...brought.map((system) => [system.name ?? system.is, systemWords(system)].filter(Boolean).join(', ')),
    ...new Set(finishes),
  ];
  return [
    item.how,
    put.length === 0 ? undefined : `Put in: ${put.join('; ')}`,
    item.why === undefined ? undefined : `Why: ${item.why}`,
  ]
    .filter((part) => part !== undefined && part !== '')
    .map((part) => upperFirst(fullStop(part ?? '')))
    .join(' ');
}

/** "vinyl plank, ash, 7″ × 48″, laid straight, east–west, over levelled plywood" */
export function finishWords(finish: Finish): string {
  return [
    finish.what,
    finish.product,
    finish.colour,
    finish.sheen,
    finish.plank && printProductSize(finish.plank),
    finish.tile && printProductSize(finish.tile),
    finish.thickness && `${printLength(finish.thickness)} thick`,
    finish.pattern &&
      (finish.pattern === 'straight'
        ? 'laid straight'
        : finish.pattern === 'pattern'
          ? 'laid in a pattern'
          : `laid ${finish.pattern === 'herringbone' ? 'in herringbone' : 'diagonally'}`),
    finish.direction && `running ${finish.direction}`,
    finish.over && `over ${finish.over}`,
    finish.coats && `${finish.coats} ${finish.coats === 1 ? 'coat' : 'coats'}`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** What of the general name ("furnace, gas") the printed name ("Furnace") does not say already: "gas". */
function generalWords(system: System): string | undefined {
  if (system.name === undefined) return undefined;
  const name = system.name.toLowerCase();
  const said = (part: string): boolean =>
    part
      .toLowerCase()
      .split(/[^a-z]+/)
      .every((word) => word.length < 3 || name.includes(word.replace(/s$/, '')));
  const left = system.is.split(/,\s*/).filter((part) => !said(part));
  return left.length === 0 ? undefined : left.join(', ');
}

export function systemWords(system: System): string {
  const beyond = (word: string | undefined): string | undefined =>
    word === undefined || system.is.toLowerCase().includes(word.toLowerCase()) ? undefined : word;
  return [
    generalWords(system),
    system.capacity?.value,
    system.fuel === 'none' ? undefined : beyond(system.fuel),
    beyond(system.material),
    system.serves && `serves ${system.serves}`,
    system.made?.value && `made ${printDate(system.made.value)}`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** Trades whose last word names a person; "floor", "plaster" and "timber" only look like it. */
const PERSON =
  /\b(architect|arborist|bricklayer|builder|carpenter|cleaner|contractor|drywaller|electrician|engineer|excavator|fencer|framer|gardener|glazier|handyman|inspector|installer|insulator|joiner|landscaper|locksmith|mason|mover|painter|plasterer|plumber|roofer|setter|surveyor|sweep|technician|tiler|welder)$/i;

/** "plumber" is a person; any other trade, and a list of what a firm does, is put behind the firm. */
function hiredWords(stated: string | undefined): string {
  const trade = stated?.split(',')[0]?.trim();
  if (trade === undefined) return 'firm';
  return PERSON.test(trade) ? trade.replace(/^[A-Z](?=[a-z])/, lowerFirst) : `firm (${trade})`;
}

const NAMELESS_WORDS = {
  owner: 'by the owner',
  family: 'by the owner’s family',
  'not-known': 'by whom is not known',
} as const;

/** The name alone; the licence stands where the work is told in full and in the list of people. */
export function whoShort(context: Context, who: Who): string {
  return who.kind === 'hired' && context.rules.people ? `by ${who.person.name}` : whoWords(context, who);
}

export function whoWords(context: Context, who: Who): string {
  if (who.kind !== 'hired') return NAMELESS_WORDS[who.kind];
  const { person } = who;
  if (!context.rules.people)
    return `by a hired ${hiredWords(person.trade)}${person.licence?.value === undefined ? '' : ', licence number stated'}`;
  const licence =
    person.licence === undefined
      ? 'licence not stated'
      : person.licence.value === undefined
        ? 'licence not known'
        : `licence as stated ${person.licence.value}`;
  return `by ${person.name}${person.trade === undefined ? '' : ` (${person.trade})`}, ${licence}`;
}

function permitRuns(context: Context, id: string | undefined): Run[] {
  const permit = context.house.permits.find((one) => one.id === id);
  if (permit === undefined) return [];
  if (permit.state === 'none-found') return [link('no permit found when asked', `paper-${permit.id}`)];
  return [
    link(`permit${permit.number === undefined ? '' : ` ${permit.number}`}`, `paper-${permit.id}`),
    say(`, ${permitState(permit)}`),
  ];
}

export function permitState(permit: Permit): string {
  const on = (date: HouseDate | undefined): string => (date === undefined ? '' : ` ${printDate(date)}`);
  switch (permit.state) {
    case 'final':
      return `final${on(permit.final)}`;
    case 'open':
      return 'open, not yet final';
    case 'expired':
      return 'expired without a final inspection on record';
    case 'none-found':
      return 'none found when asked';
    case 'not-known':
      return 'state not known';
  }
}

/** "6 April 2026", "6 April 2026 to 27 May 2026": from the first to the last of several. */
export function datesSpan(list: readonly Improvement[]): string {
  const dates = list.flatMap((one) => (one.done === undefined ? [] : [one.done])).sort(compareDates);
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return 'date not known';
  const known =
    first.written === last.written ? printDate(first) : `${printDate(first)} to ${printDate(last)}`;
  return dates.length === list.length ? known : `${known}, in part not known`;
}
