/** What laws ask of this sale and of the work before it, by when, and what the folder records. The house file’s alone. */
import type { Duty } from '../../tally/duties/duty.js';
import { MOMENTS } from '../../tally/tables/duties.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { isoDate } from '../date-words.js';
import { readingSentences } from '../how-read.js';
import { markOf } from '../marks.js';
import type { Block, EvidenceMark, RecordBlock, Rich, Section } from '../packet.js';
import { fullStop, link, lowerFirst, rich, soft, strong, upperFirst, verbatim } from '../rich.js';
import { citation } from './notices-citation.js';

export function duties(context: Context): Section {
  const all = context.tally.duties.duties;
  const applying = all.filter(({ result }) => result === 'applies');
  return {
    id: 'duties',
    title: 'What a law asks of this sale',
    blocks: [
      intro(context),
      ...overview(
        context,
        applying.filter(({ rule }) => rule.kind === 'tell'),
      ),
      ...renovation(applying.filter(({ rule }) => rule.kind === 'work' || rule.kind === 'caution')),
      ...notKnown(all.filter(({ result }) => result === 'not known')),
      ...details(
        context,
        all.filter(({ result }) => result !== 'does not apply'),
      ),
      ...notApplying(all.filter(({ result }) => result === 'does not apply')),
    ],
  };
}

function intro({ tally: { duties: found } }: Context): Block {
  const whose =
    found.pack === undefined
      ? `These are federal rules. For ${found.state} this program has none: ask the agent or the state’s real estate commission what is asked there.`
      : `These are the federal rules and those of ${found.pack} that this program knows, last read ${isoDate(found.lastRead)}.`;
  return {
    kind: 'paragraph',
    id: 'duties-intro',
    size: 'body',
    text: rich(
      `${whose} The list is not complete, rules change, and a county or town may ask for more. It says what was recorded, not whether a law was met; it is no legal advice, and forms come from the state or the agent. This section is for the owner alone and stands in no other edition.`,
    ),
  };
}

const anchor = ({ rule }: Duty): string => `duty-${rule.id}`;
const toDetails = (duty: Duty): Rich => rich(link(duty.rule.title, anchor(duty)));

/** Nearest day first; what no day fixes yet in the order of the sale. */
function overview(context: Context, tell: readonly Duty[]): Block[] {
  if (tell.length === 0) return [];
  const order = (duty: Duty): string =>
    `${duty.due?.day ?? '9999'} ${MOMENTS.indexOf(duty.rule.due?.by ?? 'while-working')}`;
  const inOrder = tell.toSorted((a, b) => (order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0));
  return [
    {
      kind: 'table',
      id: 'duties-asked',
      caption: 'To tell or to hand to the buyer',
      columns: columns(['What', 28], ['By when', 30], ['Told or given', 26], ['Papers kept through', 16]),
      rows: inOrder.map((duty) => ({
        id: `asked-${duty.rule.id}`,
        cells: [
          toDetails(duty),
          rich(upperFirst(duty.due?.words ?? 'no day named')),
          recordWords(duty),
          keepWords(duty),
        ],
        mark: recordMark(context, duty),
      })),
    },
  ];
}

const recordMark = (context: Context, { record }: Duty): EvidenceMark =>
  markOf(context, { evidence: record.evidence }, record.state === 'recorded' || record.state === 'late');

function recordWords({ record }: Duty): Rich {
  if (record.state === 'missing') return rich(strong('Missing'), `: ${record.words}`);
  return rich(upperFirst(record.words));
}

function keepWords({ keep }: Duty): Rich {
  if (keep === undefined) return rich(soft('no time named'));
  return keep.through === undefined
    ? rich(`${keep.years} years from ${keep.from}`)
    : rich(isoDate(keep.through));
}

function renovation(list: readonly Duty[]): Block[] {
  if (list.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'duties-renovation',
      caption: 'About the work before the sale',
      columns: columns(['What', 28], ['Why it is named here', 50], ['Records kept through', 22]),
      rows: list.map((duty) => ({
        id: `work-${duty.rule.id}`,
        cells: [toDetails(duty), rich(upperFirst(reasons(duty))), keepWords(duty)],
      })),
    },
  ];
}

function notKnown(list: readonly Duty[]): Block[] {
  if (list.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'duties-open',
      caption: 'Not known yet whether it is asked',
      columns: columns(['What', 34], ['It depends on', 40], ['To type', 26]),
      rows: list.map((duty) => ({
        id: `open-${duty.rule.id}`,
        cells: [
          toDetails(duty),
          rich(duty.missing.map(({ asks }) => upperFirst(asks)).join('; ')),
          rich(
            ...duty.missing.flatMap(({ hint }, index) => [index === 0 ? '' : ' and ', verbatim(hint)]),
            ', or what is so',
          ),
        ],
      })),
    },
  ];
}

/** "built 1948; it has a bedroom", with what was taken as making it apply. */
function reasons({ because, assumed }: Duty): string {
  const words = [
    ...because.map((fact) => fact.words),
    ...assumed.map(({ words: not }) => `${not}, and counted as if it made the rule apply`),
  ];
  return words.length === 0 ? 'for every sale' : words.join('; ');
}

function details(context: Context, list: readonly Duty[]): Block[] {
  if (list.length === 0) return [];
  return [
    { kind: 'heading', id: 'duties-details', level: 3, text: 'Each of them, with its law' },
    ...list.map((duty) => detail(context, duty)),
  ];
}

function detail(context: Context, duty: Duty): RecordBlock {
  const { rule, result } = duty;
  const entries: (readonly [string, string, Rich | undefined])[] = [
    ['asked', 'Asked', rich(`Of ${rule.asked}: ${ruleWords(context, duty)}`)],
    [
      'why',
      result === 'applies' ? 'Applies' : 'Not known',
      rich(
        upperFirst(result === 'applies' ? reasons(duty) : duty.missing.map(({ words }) => words).join('; ')),
      ),
    ],
    ['version', 'Version', versionWords(duty)],
    ['due', 'By when', duty.due && rich(upperFirst(duty.due.words))],
    ['late', 'If late', rule.late === undefined ? undefined : rich(rule.late)],
    ['form', 'Form', rule.form && rich(`${upperFirst(rule.form.title)}; from ${rule.form.from}`)],
    ['record', 'On record', rule.kind === 'tell' && result === 'applies' ? recordWords(duty) : undefined],
    [
      'keep',
      'Keep',
      duty.keep &&
        rich(
          `${duty.keep.years} years from ${duty.keep.from}`,
          duty.keep.through === undefined ? '' : `: through ${isoDate(duty.keep.through)}`,
        ),
    ],
    [
      'work',
      'Hired work',
      rule.prints === 'contractor-work' && result === 'applies'
        ? rich(link('the list in the notices', 'work-since-purchase'))
        : undefined,
    ],
    ['law', 'Law', lawWords(duty)],
  ];
  return {
    kind: 'record',
    id: anchor(duty),
    title: rich(rule.title, ' ', soft(rule.id)),
    entries: entries.flatMap(([id, label, value]) =>
      value === undefined ? [] : [{ id: `${anchor(duty)}-${id}`, label, value }],
    ),
    ...(rule.kind === 'tell' && result === 'applies' ? { mark: recordMark(context, duty) } : {}),
  };
}

function versionWords({ rule, versions }: Duty): Rich | undefined {
  if (rule.versions === undefined || versions.length === 0) return undefined;
  const told = versions.map(({ says, asks }) => `${says}${asks.length === 0 ? '' : `: ${asks.join('; ')}`}`);
  const open = versions.length > 1 ? 'No contract date settles which: ' : '';
  return rich(fullStop(`${open}${told.join(' or ')}`));
}

/** The rule behind a colon; one that begins with the state’s name keeps its capital. */
const ruleWords = ({ tally }: Context, { rule }: Duty): string =>
  tally.duties.pack !== undefined && rule.rule.startsWith(tally.duties.pack)
    ? rule.rule
    : lowerFirst(rule.rule);

function lawWords({ rule }: Duty): Rich {
  const { address } = rule.source;
  return rich(
    `${citation(rule.source)}. `,
    soft(readingSentences(rule)),
    ...(address === undefined ? [] : [' ', verbatim(address)]),
  );
}

function notApplying(list: readonly Duty[]): Block[] {
  if (list.length === 0) return [];
  return [
    { kind: 'heading', id: 'duties-not', level: 3, text: 'Looked at, and not asked here' },
    {
      kind: 'list',
      id: 'duties-not-list',
      items: list.map((duty) => ({
        id: `not-${duty.rule.id}`,
        text: rich(
          `${duty.rule.title}: ${duty.because.map(({ words }) => words).join('; ')} `,
          soft(duty.rule.id),
        ),
      })),
    },
  ];
}
