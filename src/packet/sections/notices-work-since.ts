/** What hired people did since the purchase, where a state asks a seller to list it. */
import { printDate } from '../../facts/date.js';
import type { HiredWork } from '../../tally/duties/contractor-work.js';
import { columns } from '../columns.js';
import type { Context } from '../context.js';
import { HOW_READ, lastReadWords } from '../how-read.js';
import type { Block, Rich, TableRow } from '../packet.js';
import { link, rich, soft, upperFirst } from '../rich.js';

export function workSincePurchase(context: Context): Block[] {
  const { duties, hired } = context.tally.duties;
  const duty = duties.find(({ rule, result }) => rule.prints === 'contractor-work' && result === 'applies');
  const sure = hired.filter(({ since }) => since === 'yes');
  if (duty === undefined || sure.length === 0) return [];
  const { rule } = duty;
  return [
    {
      kind: 'table',
      id: 'work-since-purchase',
      caption: 'What hired people did since the owner bought the house',
      columns: COLUMNS,
      rows: sure.map((one, index) => row(context, one, `work-since-${index + 1}`)),
      note: rich(
        `A list for the statement that ${rule.source.title} asks of a seller. Contacts, and copies of permits, come from the seller or the named firms. `,
        soft(
          `${rule.source.publisher}; ${HOW_READ[rule.read]}; ${lastReadWords(rule)}. No legal advice; forms come from the state or the agent.`,
        ),
      ),
    },
    ...perhapsSince(
      context,
      hired.filter(({ since }) => since !== 'yes'),
    ),
  ];
}

const COLUMNS = columns(['What', 36], ['When', 18], ['Who', 24], ['Permit', 22]);

/** Apart from the list, which would else say of it what nobody recorded. */
function perhapsSince(context: Context, hired: readonly HiredWork[]): Block[] {
  if (hired.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'work-perhaps-since',
      caption: 'Hired work that may be older than the purchase',
      columns: COLUMNS,
      rows: hired.map((one, index) => row(context, one, `work-perhaps-${index + 1}`)),
      note: rich('The record doesn’t say whether this was done before or after the owner bought the house.'),
    },
  ];
}

const row = (context: Context, one: HiredWork, id: string): TableRow => ({
  id,
  cells: [
    rich(upperFirst(one.what)),
    rich(one.done === undefined ? 'not recorded' : printDate(one.done)),
    rich(context.rules.people ? one.person.name : 'a hired firm'),
    permitWords(context, one),
  ],
});

function permitWords({ house }: Context, { permit }: HiredWork): Rich {
  const known = house.permits.find(({ id }) => id === permit);
  if (known === undefined) return rich('none named');
  if (known.state === 'none-found') return rich(link('asked for, none found', `paper-${known.id}`));
  return rich(link(known.number ?? known.what, `paper-${known.id}`));
}
