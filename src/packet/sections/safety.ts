import { printDate } from '../../facts/date.js';
import type { Alarm } from '../../facts/house.js';
import type { AlarmPlace } from '../../tally/alarms.js';
import type { LeadJob } from '../../tally/lead-jobs.js';
import type { Observation } from '../../tally/observations.js';
import { leadAsbestosRules } from '../../tally/tables/lead-asbestos.js';
import { safetyRules } from '../../tally/tables/safety.js';
import { alarmPlan } from '../alarm-plan.js';
import { alarmEvidence, alarmWords, replaceByWords } from '../alarm-words.js';
import { columns } from '../columns.js';
import { type Context, placeName } from '../context.js';
import { isoDate } from '../date-words.js';
import { evidenceOf, markOf, markOfSeveral } from '../marks.js';
import type { Block, Section, TableRow } from '../packet.js';
import { counted, fullStop, inWords, link, rich, soft, upperFirst } from '../rich.js';
import { subjectOf, whoWords } from '../tell.js';

/** Work done for safety, alarms, and what was measured where somebody can be hurt. */
export function safety(context: Context): Section {
  return {
    id: 'safety',
    title: 'Safety',
    blocks: [
      {
        kind: 'notice',
        id: 'safety-notice',
        title: 'Read this first',
        paragraphs: [
          rich(
            'What follows was seen, counted and measured by the owner. The figures beside it are those of published rules, most of them for new work. Local code and a licensed inspection govern, and only they can say what applies here.',
          ),
          rich(
            'Do not rely on this paper for gas, electricity, lead, asbestos or a way out in a fire. Have a licensed person look.',
          ),
        ],
      },
      ...work(context),
      ...alarms(context),
      ...observations(context),
      ...oldMaterials(context),
    ],
  };
}

function work(context: Context): Block[] {
  const done = context.tally.improvements.filter((one) => one.safety);
  if (done.length === 0) return [];
  return [
    { kind: 'heading', id: 'safety-work', level: 3, text: 'Done for safety' },
    {
      kind: 'list',
      id: 'safety-work-list',
      items: done.map((one) => ({
        id: `safety-${one.id}`,
        text: rich(
          link(`${subjectOf(one)}, ${one.did}`, `done-${one.id}`),
          `. ${one.done === undefined ? 'Date not known' : upperFirst(printDate(one.done))}, ${whoWords(context, one.who)}.`,
        ),
        mark: markOf(context, evidenceOf(context, one.source.item)),
      })),
    },
  ];
}

function alarms(context: Context): Block[] {
  const plan = context.tally.alarms;
  const missing = plan.places.filter((place) => place.recorded.length === 0);
  const rule = safetyRules().smokeAlarmPlaces;
  const smoke = plan.places.filter((place) => place.warns === 'smoke').length;
  const gas = plan.places.length - smoke;
  return [
    { kind: 'heading', id: 'safety-alarms', level: 3, text: 'Alarms' },
    {
      kind: 'statement',
      id: 'alarms-count',
      size: 'body',
      text: rich(
        `By rooms and levels a smoke alarm is looked for in ${smoke} ${smoke === 1 ? 'place' : 'places'}${gas > 0 ? ` and a carbon monoxide alarm in ${gas}` : ''}. ${missingWords(missing)} ${dueWords(context)}${carbonMonoxideWords(context)}`,
      ),
      mark: markOfSeveral(
        context,
        plan.places.map((place) => ({
          evidence: place.recorded.flatMap((alarm) => alarmEvidence(context, alarm)),
          known: place.recorded.length > 0,
        })),
      ),
    },
    ...alarmPlan(context),
    {
      kind: 'table',
      id: 'alarm-places',
      caption: 'Where alarms are looked for, and what is recorded',
      columns: columns(['Place', 36], ['Warns of', 16], ['Recorded', 26], ['Replace by', 22]),
      rows: [
        ...plan.places.map((place, index) => alarmRow(context, place, index)),
        ...plan.others.map((alarm, index) => otherAlarmRow(context, alarm, index)),
      ],
      note: rich(`${rule.rule} ${rule.caution}`),
    },
  ];
}

/** More places than these are left to the table. */
const MOST_NAMED = 4;

function missingWords(missing: readonly AlarmPlace[]): string {
  if (missing.length === 0) return 'One is recorded for each.';
  const count = missing.length === 1 ? 'one' : String(missing.length);
  if (missing.length > MOST_NAMED) return `None is recorded for ${count} of them.`;
  const places = missing.map(({ where, warns }) => `${where.toLowerCase()} (${alarmWords({ is: warns })})`);
  return `None is recorded for ${count} of them: ${inWords(places)}.`;
}

function carbonMonoxideWords(context: Context): string {
  const { asked, because } = context.tally.alarms.carbonMonoxide;
  const reason = because.join('; ');
  if (asked === 'yes') return `Carbon monoxide alarms are looked for because ${reason}.`;
  if (asked === 'no') return `Carbon monoxide alarms are not looked for: ${reason}.`;
  return `Whether carbon monoxide alarms are called for is not known: ${reason}.`;
}

function alarmRow(context: Context, place: AlarmPlace, index: number): TableRow {
  const recorded = place.recorded.map(
    (alarm) => `${alarmWords(alarm)}, ${placeName(context, alarm.where).toLowerCase()}${powerWords(alarm)}`,
  );
  const replace = place.recorded.map((alarm) => replaceWords(context, alarm));
  return {
    id: `alarm-place-${index + 1}`,
    cells: [
      rich(upperFirst(place.where)),
      rich(alarmWords({ is: place.warns })),
      rich(recorded.length === 0 ? 'none recorded' : recorded.join('; ')),
      rich([...new Set(replace)].join('; ')),
    ],
    mark: markOfSeveral(
      context,
      place.recorded.map((alarm) => ({ evidence: alarmEvidence(context, alarm), known: true })),
    ),
  };
}

/** An alarm that stands where none is looked for is there all the same. */
function otherAlarmRow(context: Context, alarm: Alarm, index: number): TableRow {
  return {
    id: `alarm-other-${index + 1}`,
    cells: [
      rich(soft('Also recorded: '), placeName(context, alarm.where).toLowerCase()),
      rich(alarmWords(alarm)),
      rich(`${alarmWords(alarm)}${powerWords(alarm)}`),
      rich(replaceWords(context, alarm)),
    ],
    mark: markOf(context, { evidence: alarmEvidence(context, alarm) }),
  };
}

/** An alarm past its date hangs there and may not warn: said in the first sentence, not only in the table. */
function dueWords({ tally }: Context): string {
  const due = tally.alarms.ends.filter((end) => end.due === true).length;
  if (due === 0) return '';
  return `${due === 1 ? 'One recorded alarm is' : `${due} recorded alarms are`} past ${due === 1 ? 'its' : 'their'} date. `;
}

const powerWords = ({ power }: Alarm): string =>
  power === undefined ? '' : `, ${power.replaceAll('-', ' ')}`;

function replaceWords(context: Context, alarm: Alarm): string {
  const end = context.tally.alarms.ends.find(
    (one) =>
      one.alarm === alarm ||
      (one.alarm.id === alarm.id && one.alarm.where === alarm.where && one.alarm.is === alarm.is),
  );
  if (end?.replaceBy === undefined) return 'no date read';
  return `${replaceByWords(end)} (${end.basis})`;
}

const TOPICS: readonly (readonly [Observation['topic'], string])[] = [
  ['escape opening', 'Ways out of bedrooms and basements'],
  ['stair', 'Stairs and handrails'],
  ['guard', 'Drops and guards'],
  ['hot water', 'Hot water'],
  ['relief pipe', 'Relief pipe of the water heater'],
  ['range', 'Range'],
  ['pool barrier', 'Around the pool'],
];

function observations(context: Context): Block[] {
  return TOPICS.flatMap(([topic, title]): Block[] => {
    const list = context.tally.observations.filter((one) => one.topic === topic);
    if (list.length === 0) return [];
    const cautions = [...new Set(list.map((one) => one.caution))];
    const sources = [...new Set(list.map((one) => one.source))];
    const figures = [...new Set(list.map((one) => one.figure))];
    return [
      { kind: 'heading', id: `observed-${topic.replaceAll(' ', '-')}`, level: 3, text: title },
      {
        kind: 'table',
        id: `observations-${topic.replaceAll(' ', '-')}`,
        caption: 'Seen and measured',
        columns: columns(['Where', 26], ['Observed', 48], ['Beside the figure', 26]),
        rows: list.map((one) => ({
          id: `observed-${one.id}`,
          cells: [rich(upperFirst(one.what)), rich(upperFirst(one.observed)), rich(one.stands)],
          mark: markOf(context, { evidence: one.evidence }, one.stands !== 'not recorded'),
        })),
        note: rich(`Figure: ${figures.join('; ')}. From ${sources.join('; ')}. ${cautions.join(' ')}`),
      },
    ];
  });
}

/** Lead paint and materials that may hold asbestos: what is known, what was disturbed and by whom. */
function oldMaterials(context: Context): Block[] {
  const { lead } = context.tally;
  const blocks: Block[] = [];
  if (lead.treatAsTarget) {
    const known = context.house.lead?.known;
    blocks.push(
      { kind: 'heading', id: 'lead', level: 3, text: 'Lead paint' },
      {
        kind: 'statement',
        id: 'lead-known',
        size: 'body',
        text: rich(
          `${lead.because} `,
          known?.value === undefined
            ? 'Whether there is lead paint is not known.'
            : fullStop(`What is known of lead paint: ${known.value}`),
          known?.note === undefined ? undefined : ` ${fullStop(upperFirst(known.note))}`,
        ),
        mark: markOf(
          context,
          {
            from: known?.from,
            evidence: [...(known?.evidence ?? []), ...(context.house.lead?.reports ?? [])],
          },
          known?.value !== undefined,
        ),
      },
    );
    if (lead.jobs.length > 0) {
      blocks.push({
        kind: 'table',
        id: 'lead-jobs',
        caption: 'Painted surface disturbed by work',
        columns: columns(['Where', 26], ['How much', 40], ['By whom', 34]),
        rows: lead.jobs.map((job, index) => ({
          id: `lead-job-${index + 1}`,
          cells: [
            rich(job.where),
            rich(`${upperFirst(job.areaWords)}; ${job.verdictWords}${keptWords(job)}`),
            rich(context.rules.people ? job.whoWords : ''),
          ],
          mark: markOfSeveral(
            context,
            job.items.map((item) => evidenceOf(context, item)),
          ),
        })),
        note: rich(leadAsbestosRules().leadMinorRepair.rule),
      });
    }
    blocks.push(...leadToAsk(context), ...whereDutiesAre(context));
  }
  if (lead.asbestos.length > 0) {
    blocks.push(
      { kind: 'heading', id: 'asbestos', level: 3, text: 'Materials that may hold asbestos' },
      {
        kind: 'list',
        id: 'asbestos-list',
        items: lead.asbestos.map((caution) => ({
          id: `asbestos-${caution.id}`,
          text: rich(upperFirst(fullStop(caution.words))),
          mark: markOf(context, { evidence: caution.evidence }),
        })),
      },
      {
        kind: 'paragraph',
        id: 'asbestos-caution',
        size: 'small',
        text: rich([...new Set(lead.asbestos.map((caution) => caution.caution))].join(' ')),
      },
    );
  }
  return blocks;
}

const keptWords = ({ keepRecordsThrough: through }: LeadJob): string =>
  through === undefined ? '' : `; its records are to be kept through ${isoDate(through)} at least`;

/** What the record leaves open about disturbed paint. */
function leadToAsk(context: Context): Block[] {
  const { ask, unrecorded } = context.tally.lead;
  const sentences = [
    // A question for the owner to ask an agency; it is no statement about the house.
    context.rules.everything ? ask : undefined,
    unrecorded.length === 0
      ? undefined
      : `For ${counted(unrecorded.length, 'more piece', 'more pieces')} of work of a kind that often disturbs paint, no area is recorded.`,
  ].filter((sentence) => sentence !== undefined);
  return sentences.map((sentence, index) => ({
    kind: 'paragraph',
    id: `lead-ask-${index + 1}`,
    size: 'body',
    text: rich(sentence),
  }));
}

/** What is due before a buyer is bound is the owner’s list; a buyer gets the notices themselves. */
function whereDutiesAre(context: Context): Block[] {
  if (!context.rules.everything) return [];
  return [
    {
      kind: 'paragraph',
      id: 'lead-duties',
      size: 'small',
      text: rich(
        'What federal lead rules ask of a sale, and what this record has of it, stands under ',
        link('What a law asks of this sale', 'duties'),
        '.',
      ),
    },
  ];
}
