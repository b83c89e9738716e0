import { type HouseDate, printDate, readDate } from '../../facts/date.js';
import type { AlarmPlace } from '../../tally/alarms.js';
import type { Observation } from '../../tally/observations.js';
import { leadAsbestosRules } from '../../tally/tables/lead-asbestos.js';
import { safetyRules } from '../../tally/tables/safety.js';
import { columns } from '../columns.js';
import { type Context, placeName } from '../context.js';
import { markOf } from '../marks.js';
import type { Block, Section, TableRow } from '../packet.js';
import { fullStop, link, rich, upperFirst } from '../rich.js';
import { deedWords, subjectOf, whoWords } from '../tell.js';

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
          link(`${subjectOf(one)}, ${deedWords(one.did)}`, `done-${one.id}`),
          `. ${one.done === undefined ? 'Date not known' : upperFirst(printDate(one.done))}, ${whoWords(context, one.who)}.`,
        ),
        mark: markOf(context, one.source.item),
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
        `By rooms and levels a smoke alarm is looked for in ${smoke} ${smoke === 1 ? 'place' : 'places'}${gas > 0 ? ` and a carbon monoxide alarm in ${gas}` : ''}. ${missing.length === 0 ? 'One is recorded for each.' : `None is recorded for ${missing.length} of them.`} ${carbonMonoxideWords(context)}`,
      ),
      mark: markOf(
        context,
        { evidence: context.house.alarms.flatMap((alarm) => alarm.evidence) },
        plan.places.length > 0,
      ),
    },
    {
      kind: 'table',
      id: 'alarm-places',
      caption: 'Where alarms are looked for, and what is recorded',
      columns: columns(['Place', 36], ['Warns of', 16], ['Recorded', 26], ['Replace by', 22]),
      rows: plan.places.map((place, index) => alarmRow(context, place, index)),
      note: rich(`${rule.rule} ${rule.caution}`),
    },
  ];
}

function carbonMonoxideWords(context: Context): string {
  const { asked, because } = context.tally.alarms.carbonMonoxide;
  const reason = because.join('; ');
  if (asked === 'yes') return `Carbon monoxide alarms are looked for because ${reason}.`;
  if (asked === 'no') return `Carbon monoxide alarms are not looked for: ${reason}.`;
  return `Whether carbon monoxide alarms are called for is not known: ${reason}.`;
}

function alarmRow(context: Context, place: AlarmPlace, index: number): TableRow {
  const { ends } = context.tally.alarms;
  const recorded = place.recorded.map(
    (alarm) =>
      `${alarm.is === 'both' ? 'smoke and carbon monoxide' : alarm.is.replace('-', ' ')}, ${placeName(context, alarm.where).toLowerCase()}${alarm.power === undefined ? '' : `, ${alarm.power.replaceAll('-', ' ')}`}`,
  );
  const replace = place.recorded.map((alarm) => {
    const end = ends.find(
      (one) =>
        one.alarm === alarm ||
        (one.alarm.id === alarm.id && one.alarm.where === alarm.where && one.alarm.is === alarm.is),
    );
    if (end?.replaceBy === undefined) return 'no date read';
    return `${isoDate(end.replaceBy)} (${end.basis})${end.due ? ', due' : ''}`;
  });
  return {
    id: `alarm-place-${index + 1}`,
    cells: [
      rich(upperFirst(place.where)),
      rich(place.warns === 'smoke' ? 'smoke' : 'carbon monoxide'),
      rich(recorded.length === 0 ? 'none recorded' : recorded.join('; ')),
      rich(replace.length === 0 ? '' : [...new Set(replace)].join('; ')),
    ],
    mark: markOf(
      context,
      { evidence: place.recorded.flatMap((alarm) => [...alarm.evidence, ...(alarm.made?.evidence ?? [])]) },
      place.recorded.length > 0,
    ),
  };
}

/** An ISO day in words. */
export function isoDate(iso: string): string {
  const read = readDate(iso);
  return read.ok ? printDate(read.value satisfies HouseDate) : iso;
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
        caption: `Seen and measured: ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
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
            rich(`${upperFirst(job.areaWords)}; ${job.verdictWords}`),
            rich(context.rules.people ? job.whoWords : ''),
          ],
          mark: markOf(context, { evidence: job.items.flatMap((item) => item.evidence) }),
        })),
        note: rich(leadAsbestosRules().leadMinorRepair.rule),
      });
    }
  }
  if (lead.asbestos.length > 0) {
    blocks.push(
      { kind: 'heading', id: 'asbestos', level: 3, text: 'Materials that may hold asbestos' },
      {
        kind: 'list',
        id: 'asbestos-list',
        items: lead.asbestos.map((caution) => ({
          id: caution.id,
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
