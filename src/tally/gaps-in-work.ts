/** What is lacking of the work: when, by whom, under which permit, and the other half of a pair of photos. */
import type { FactPath } from '../diagnostics/fact-path.js';
import type { WorkItem } from '../facts/house.js';
import { addLine, BUYER, EVERYONE, type Gap, type GapSources, rankOf, SALE } from './gap.js';

export function workGaps({ house, asOf }: GapSources): Gap[] {
  return house.work.flatMap((item, index) => {
    const path: FactPath = ['work', index];
    return [
      ...dateUnsaid(item, path, asOf),
      ...whoUnsaid(item, path),
      ...permitUnsaid(item, path),
      ...pair(item, path),
    ];
  });
}

function dateUnsaid(item: WorkItem, path: FactPath, asOf: string): Gap[] {
  if (item.done !== undefined) return [];
  const year = asOf.slice(0, 4);
  return [
    {
      path,
      audiences: EVERYONE,
      lacks: `when “${item.what}” was done is not said`,
      hint: addLine(`done: ${asOf.slice(0, 7)}`, `done: ${year}`),
      rank: rankOf('when work was done'),
    },
  ];
}

function whoUnsaid(item: WorkItem, path: FactPath): Gap[] {
  if (item.by !== undefined) return [];
  return [
    {
      path,
      audiences: BUYER,
      lacks: `who did “${item.what}” is not said`,
      hint: `${addLine('by: owner', 'by: family', 'by: not-known')}  or a person’s id`,
      rank: rankOf('who did it'),
    },
  ];
}

const UNDER_PERMIT =
  /electric|circuit|\boutlet|\bpanel(?!l?(ing|ed))|wiring|plumb|pipe|\bgas\b|furnace|heater|heat pump|structur|beam|\b(re)?roof|\baddition\b/i;

function permitUnsaid(item: WorkItem, path: FactPath): Gap[] {
  const upkeep = item.did === 'cleaned' || item.did === 'serviced';
  if (item.permit !== undefined || upkeep || !UNDER_PERMIT.test(`${item.what} ${item.trade ?? ''}`))
    return [];
  return [
    {
      path,
      audiences: BUYER,
      lacks: `no permit is named for “${item.what}”, and buyers ask`,
      hint: 'add  permit:  with the id of one in the list of permits (none-found is a state, too)',
      rank: rankOf('permit'),
    },
  ];
}

/** A picture before says little without the one after it, and the other way round. */
function pair(item: WorkItem, path: FactPath): Gap[] {
  const { before, after } = item.photos ?? {};
  if ((before === undefined) === (after === undefined)) return [];
  const [there, lacking] = before === undefined ? ['after', 'before'] : ['before', 'after'];
  return [
    {
      path: [...path, 'photos'],
      audiences: SALE,
      // Without a name, so that all such work is told in one line.
      lacks: `work has a photo from ${there} it, and none from ${lacking} it`,
      hint: `if one was taken, add  ${lacking}:  with its name under photos:`,
      rank: rankOf('other half of a photo pair'),
    },
  ];
}
