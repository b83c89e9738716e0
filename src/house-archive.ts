/** What of a house goes into its bag: the folder as it lies, every packet that was made, exports, and the guide. */
import path from 'node:path';
import type { Seal } from './archive/age-file.js';
import { tellLeftOut } from './archive/bag-left-out.js';
import { readTrouble } from './archive/bag-source.js';
import type { FolderSeen } from './archive/folder-digest.js';
import { alone } from './archive/folder-lock.js';
import { isInside } from './archive/is-inside.js';
import { type Survey, surveyFolder } from './archive/survey-folder.js';
import { type BagResult, bagHouse, type PayloadFile } from './archive/write-bag.js';
import { changedSince, changedTrouble } from './as-it-was-read.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { isFolder } from './find-houses.js';
import { version } from './version.js';

export interface ArchiveOrder {
  /** The house folder. */
  readonly folder: string;
  /** The same as the writer would type it. */
  readonly shown: string;
  /** Name of the house folder. */
  readonly house: string;
  /** YYYY-MM-DD. */
  readonly asOf: string;
  /** Where packets lie: `out/<house>/<edition>/`. */
  readonly out: string;
  readonly outShown: string;
  /** Where bags lie: `archive/<house>/<bag>`. */
  readonly to: string;
  readonly toShown: string;
  readonly form: 'folder' | 'zip' | 'tar';
  readonly seal?: Seal;
  /** One sentence on what the bag holds. */
  readonly description: string;
  /** Go to `data/exports/`; paths below it. */
  readonly exports: readonly { readonly path: string; readonly bytes: Uint8Array }[];
  /** `data/how-to-read.txt`. */
  readonly guide: string;
  /** The house folder before its packets were made: the bag holds this state or none. */
  readonly before?: FolderSeen;
  readonly onBytes?: (done: number, all: number) => void;
}

export interface ArchiveResult {
  /** Undefined where something that must go in could not. */
  readonly bag: Exclude<BagResult, { readonly kind: 'failed' }> | undefined;
  readonly diagnostics: readonly Diagnostic[];
  /** No bag was made since something was changed meanwhile: it may go well the next time. */
  readonly again?: true;
  /** What is good to know of what the bag holds, told with it. */
  readonly notes: readonly Diagnostic[];
}

/** Writes the bag of a house. The packets must have been made. */
export async function archiveHouse(order: ArchiveOrder): Promise<ArchiveResult> {
  const misplaced = (await isFolder(order.folder)) ? await placeTrouble(order) : noFolder(order);
  if (misplaced !== undefined) return { bag: undefined, diagnostics: [misplaced], notes: [] };
  const packetsShown = path.posix.join(order.outShown, order.house);
  const originals = await survey(order.folder, order.shown);
  const changed = await changedSince(order.folder, order.before);
  if (changed !== undefined) {
    const trouble = changedTrouble(path.posix.join(order.shown, changed), 'no bag was made');
    return { bag: undefined, diagnostics: [trouble], again: true, notes: [] };
  }
  const made = await packetsIn(order.out, order.house, packetsShown);
  const diagnostics = [...originals.diagnostics, ...(made?.diagnostics ?? [])];
  if (made === undefined || made.files.length === 0) diagnostics.push(noPackets(order, packetsShown));
  if (diagnostics.some((one) => one.severity === 'error')) return { bag: undefined, diagnostics, notes: [] };
  const payload: PayloadFile[] = [
    ...originals.files.map((one) => ({ path: `originals/${one.path}`, source: one })),
    ...(made?.files ?? []).map((one) => ({ path: `packets/${one.path}`, source: one })),
    ...order.exports.map((one) => ({ path: `exports/${one.path}`, source: { bytes: one.bytes } })),
    { path: 'how-to-read.txt', source: { bytes: new TextEncoder().encode(order.guide) } },
  ];
  const { house, asOf, form, description } = order;
  const result = await bagHouse({
    house,
    asOf,
    form,
    description,
    to: path.join(order.to, house),
    shown: path.posix.join(order.toShown, house),
    program: `sillplate ${version()}`,
    payload,
    ...(order.seal === undefined ? {} : { seal: order.seal }),
    ...(order.onBytes === undefined ? {} : { onBytes: order.onBytes }),
  });
  return result.kind === 'failed'
    ? {
        bag: undefined,
        diagnostics: [...diagnostics, ...result.diagnostics],
        ...(result.again === true ? { again: true } : {}),
        notes: [],
      }
    : {
        bag: result,
        diagnostics: result.kind === 'same' ? diagnostics : [...diagnostics, ...result.diagnostics],
        notes: [
          ...leftOut(order.shown, originals),
          ...(made === undefined ? [] : leftOut(packetsShown, made)),
        ],
      };
}

/** Looked at when no build puts others in their place. Undefined: there are none. */
async function packetsIn(out: string, house: string, shown: string): Promise<Survey | undefined> {
  const packets = path.join(out, house);
  const look = async (): Promise<Survey | undefined> =>
    (await isFolder(packets)) ? survey(packets, shown) : undefined;
  if (!(await isFolder(out))) return undefined;
  try {
    return await alone(out, house, look);
  } catch (thrown) {
    // Where nothing can be written, no build is at work either.
    const { code = '' } = thrown as NodeJS.ErrnoException;
    if (!['EACCES', 'EPERM', 'EROFS', 'ENOSPC'].includes(code)) throw thrown;
    return look();
  }
}

async function survey(folder: string, shown: string): Promise<Survey> {
  try {
    return await surveyFolder(folder, shown);
  } catch (thrown) {
    const trouble = readTrouble(thrown);
    if (trouble === undefined) throw thrown;
    const diagnostic: Diagnostic = {
      code: 'archive.bag',
      severity: 'error',
      file: shown,
      message: `${shown} ${trouble}`,
      hints: ['check who may read it, and type the same command again'],
    };
    return { files: [], leftOut: [], diagnostics: [diagnostic] };
  }
}

const leftOut = (shown: string, survey: Survey): Diagnostic[] =>
  survey.leftOut.length === 0
    ? []
    : [
        {
          code: 'archive.bag',
          severity: 'note',
          file: shown,
          message: `left out, being no record of anybody’s: ${tellLeftOut(survey.leftOut)}`,
          hints: ['give a file another name if it is a record after all'],
        },
      ];

/** A bag in the house folder would hold the bags before it, and those the bags before them. */
async function placeTrouble(order: ArchiveOrder): Promise<Diagnostic | undefined> {
  for (const [what, inner, shown, option] of [
    ['bags', path.join(order.to, order.house), order.toShown, '--to ../archive'],
    ['packets', path.join(order.out, order.house), order.outShown, '--out ../out'],
  ] as const)
    if (await isInside(inner, order.folder))
      return {
        code: 'archive.place',
        severity: 'error',
        file: shown,
        message: `the ${what} in ${shown} lie in the house folder, so each bag would hold those before it`,
        hints: [`name a folder beside it:  ${option}`],
      };
  return undefined;
}

const noFolder = ({ shown }: ArchiveOrder): Diagnostic => ({
  code: 'intake.no-folder',
  severity: 'error',
  file: shown,
  message: `there is no folder ${shown}`,
  hints: ['type the house’s name as its folder bears it, or the folder itself'],
});

const noPackets = ({ house }: ArchiveOrder, shown: string): Diagnostic => ({
  code: 'archive.bag',
  severity: 'error',
  file: shown,
  message: `there are no packets of ${house} in ${shown} to keep`,
  hints: [`make them first:  sillplate build ${house}`],
});
