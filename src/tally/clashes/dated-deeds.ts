/** Everything that was put in or done on a day, in one list: work, systems, finishes, alarms. */
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { HouseDate } from '../../facts/date.js';
import type { Finish, House, System, WorkItem } from '../../facts/house.js';
import { nameOf } from '../../facts/place-name.js';
import type { Deed } from '../improvements.js';
import { systemName } from '../system-name.js';

export interface DatedDeed {
  readonly kind: 'work' | 'system' | 'finish' | 'alarm';
  /** In quotes, as a message names it. */
  readonly name: string;
  readonly path: FactPath;
  /** The word of its date in the folder. */
  readonly word: 'done' | 'installed';
  readonly date: HouseDate;
  readonly did: Deed | undefined;
  readonly by: string | undefined;
  readonly permit: string | undefined;
  /** Ids of places. */
  readonly where: readonly string[];
  /** Papers and photos behind its date, or behind the whole of it. */
  readonly evidence: readonly string[];
  /** Those of its date alone. */
  readonly evidenceOfDate: readonly string[];
  /** Its own photos, which are held against its day elsewhere. */
  readonly photos: readonly (string | undefined)[];
  readonly kept: boolean;
  /** All that is said beside it: who says so, and remarks. */
  readonly said: string;
}

/**
 * Each once: a finish that a work item tells of is told there, and so is a system whose date is that of its work.
 */
export function datedDeeds(house: House): DatedDeed[] {
  return [
    ...house.work.flatMap((item, at) => ofWork(item, ['work', at])),
    ...house.systems.flatMap((system, at) =>
      toldInWork(house, system) ? [] : ofSystem(system, ['systems', at]),
    ),
    ...(['rooms', 'structures'] as const).flatMap((top) =>
      house[top].flatMap((home, at) =>
        home.finishes.flatMap((finish: Finish, index) =>
          house.work.some((item) => item.id === finish.work && item.done !== undefined)
            ? []
            : ofFinish(finish, home, [top, at, 'finishes', index]),
        ),
      ),
    ),
    ...house.alarms.flatMap((alarm, at): DatedDeed[] =>
      alarm.installed === undefined
        ? []
        : [
            {
              kind: 'alarm',
              name: `the ${alarm.is === 'both' ? 'smoke and carbon monoxide' : alarm.is.replace('-', ' ')} alarm`,
              path: ['alarms', at],
              word: 'installed',
              date: alarm.installed,
              did: undefined,
              by: undefined,
              permit: undefined,
              where: [alarm.where],
              evidence: alarm.evidence,
              evidenceOfDate: [],
              photos: [],
              kept: false,
              said: said(alarm),
            },
          ],
    ),
  ];
}

/** What is written beside a thing that may explain it. */
const said = (
  ...parts: readonly (
    | { readonly from?: string | undefined; readonly note?: string | undefined }
    | undefined
  )[]
): string =>
  parts
    .flatMap((one) => [one?.from, one?.note])
    .join(' ')
    .toLowerCase();

function toldInWork(house: House, { id, installed }: System): boolean {
  const day = installed?.value?.written;
  return house.work.some((item) => item.systems.includes(id) && item.done?.written === day);
}

function ofWork(item: WorkItem, path: FactPath): DatedDeed[] {
  if (item.done === undefined) return [];
  return [
    {
      kind: 'work',
      name: `“${item.what}”`,
      path,
      word: 'done',
      date: item.done,
      did: item.did,
      by: item.by,
      permit: item.permit,
      where: item.where,
      evidence: item.evidence,
      evidenceOfDate: [],
      photos: [item.photos?.before, item.photos?.after, ...(item.photos?.during ?? [])],
      kept: false,
      said: said(item),
    },
  ];
}

function ofSystem(system: System, path: FactPath): DatedDeed[] {
  const { installed } = system;
  if (installed?.value === undefined) return [];
  return [
    {
      kind: 'system',
      name: `“${systemName(system)}”`,
      path,
      word: 'installed',
      date: installed.value,
      did: system.did,
      by: system.by,
      permit: system.permit,
      where: system.where === undefined ? [] : [system.where],
      evidence: [...installed.evidence, ...system.evidence],
      evidenceOfDate: installed.evidence,
      photos: [],
      kept: system.kept,
      said: said(system, installed),
    },
  ];
}

function ofFinish(
  finish: Finish,
  home: { readonly id: string; readonly name?: string | undefined },
  path: FactPath,
): DatedDeed[] {
  if (finish.done === undefined) return [];
  return [
    {
      kind: 'finish',
      name: `“${finish.what}” (${finish.on}, ${nameOf(home)})`,
      path,
      word: 'done',
      date: finish.done,
      did: finish.did,
      by: finish.by,
      permit: finish.permit,
      where: [home.id],
      evidence: finish.evidence,
      evidenceOfDate: [],
      photos: [],
      kept: finish.kept,
      said: said(finish),
    },
  ];
}

/** The verb of a deed. */
export const wasDone = ({ word }: DatedDeed): string => (word === 'done' ? 'was done' : 'was installed');
