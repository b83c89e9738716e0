/**
 * Packets that were given to somebody, held against what the house tells now: for the later packet, which lists it, and
 * for the owner, who is warned of each fact that somebody was told otherwise.
 */
import path from 'node:path';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import type { FactPath } from './diagnostics/fact-path.js';
import { recipientKey } from './facts/delivery.js';
import type { House } from './facts/house.js';
import { quoted } from './find-houses.js';
import { type DeliveryOnDisk, readDeliveries } from './intake/read-deliveries.js';
import { isNumbered } from './packet/changes-pairs.js';
import { factPathOf } from './packet/changes-path.js';
import {
  aboutOf,
  type ChangesSince,
  changesSince,
  type Delivered,
  type Present,
  presentOf,
  sameWords,
  shownWords,
  type ToldOtherwise,
} from './packet/changes-since.js';
import type { CollectedFact } from './packet/collect-facts.js';
import { cutWords } from './packet/cut-words.js';
import { isoDate } from './packet/date-words.js';
import { EDITIONS, houseFor } from './packet/edition-house.js';
import { type FactsFile, readFactsFile } from './packet/facts-file.js';
import type { EditionName, Packet } from './packet/packet.js';
import { counted, upperFirst } from './packet/rich.js';
import { whereTheyDiffer } from './packet/where-they-differ.js';

/** A delivery as it lies there, with what it said. */
export interface DeliveredOnDisk extends Delivered {
  readonly on: DeliveryOnDisk;
}

export interface ReadDelivered {
  /** In the order they were given. */
  readonly delivered: readonly DeliveredOnDisk[];
  /** Warnings on those that can't be relied on. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Everything that was delivered of a house. `shown` is its folder as the writer would type it. */
export async function readDelivered(folder: string, shown: string): Promise<ReadDelivered> {
  const { deliveries, diagnostics } = await readDeliveries(folder, shown);
  const delivered: DeliveredOnDisk[] = [];
  const odd: Diagnostic[] = [];
  for (const on of deliveries) {
    const said = readFactsFile(on.facts);
    const edition = (Object.keys(EDITIONS) as EditionName[]).find((name) => name === on.record.edition);
    const fits =
      said !== undefined &&
      edition !== undefined &&
      said.edition === edition &&
      said.digest === on.record.digest &&
      said.asOf === on.record['as-of'];
    if (!fits) odd.push(notAPacket(on));
    else
      delivered.push({
        number: on.record.number,
        name: on.name,
        to: on.record.to,
        note: on.record.note,
        given: on.record.given,
        edition,
        said,
        on,
      });
  }
  return { delivered, diagnostics: [...diagnostics, ...odd] };
}

const notAPacket = ({ shown }: DeliveryOnDisk): Diagnostic => ({
  code: 'intake.delivery',
  severity: 'warning',
  file: `${shown}/facts.json`,
  message: `facts.json of ${path.posix.basename(shown)} is no packet’s data, or of another packet than delivery.yaml says; nothing is said of what was delivered there`,
  hints: [
    'take that folder from a copy of the house, for example from a bag of  sillplate archive',
    'if a later version of the program wrote it, use that version',
  ],
});

/** What changed since a delivery. */
export type SinceDelivery = ChangesSince & { readonly delivered: DeliveredOnDisk };

/** Those of an edition; the house file tells of all. */
export const changesFor = (edition: EditionName, all: readonly SinceDelivery[]): readonly SinceDelivery[] =>
  edition === 'file' ? all : all.filter(({ delivered }) => delivered.edition === edition);

/** Makes an edition of the present facts for another day, without what tells of deliveries. */
export type MakeAgain = (edition: EditionName, asOf: string) => Packet;

/**
 * What changed since each delivery, in the order of delivery. Each edition is made once for each day. Deliveries that
 * lie ahead of `asOf` are left out: a packet of an earlier day is none that follows them.
 */
export function changesSinceAll(
  delivered: readonly DeliveredOnDisk[],
  asOf: string,
  house: House,
  makeAgain: MakeAgain,
): readonly SinceDelivery[] {
  const made = new Map<string, Present>();
  return delivered
    .filter(({ said }) => said.asOf <= asOf)
    .map((one) => {
      const key = `${one.edition} ${one.said.asOf}`;
      const present =
        made.get(key) ??
        presentOf(makeAgain(one.edition, one.said.asOf), house, houseFor(house, one.edition, one.said.asOf));
      made.set(key, present);
      // A folder that was renamed since is the same house.
      return { ...changesSince(one, present), delivered: one };
    });
}

/** A delivered fact that is told otherwise now, to one or several people who have not been told since. */
interface Wrong {
  readonly since: SinceDelivery;
  readonly to: readonly string[];
  readonly path: FactPath | undefined;
  readonly was: string;
  readonly is: string;
  readonly about: string;
  readonly correction: CollectedFact | undefined;
}

/**
 * A warning for each fact that somebody was told and that is told otherwise now, until they are given a packet that says
 * so. What follows from one fact is one warning. New facts are none: nobody was told anything wrong.
 */
export function warnOfDelivered(
  all: readonly SinceDelivery[],
  house: House,
  houseTyped: string,
): Diagnostic[] {
  return all.flatMap((since) => {
    const facts = wrongIn(since, all, house);
    const groups = new Map<string, Wrong[]>();
    for (const one of facts) {
      const key = JSON.stringify([one.path ?? null, one.to]);
      groups.set(key, [...(groups.get(key) ?? []), one]);
    }
    return [...groups.values()].map((group) => warning(group, houseTyped));
  });
}

function wrongIn(since: SinceDelivery, all: readonly SinceDelivery[], house: House): Wrong[] {
  const { delivered } = since;
  /** Those of its recipients who were not given the present words later. */
  const untold = (isTold: (later: SinceDelivery) => boolean): string[] =>
    delivered.to.filter(
      (person) =>
        !all.some(
          (later) =>
            later.delivered.number > delivered.number &&
            later.delivered.to.some((other) => recipientKey(other) === recipientKey(person)) &&
            isTold(later),
        ),
    );
  // A later packet of the same edition has taken the place of this one; one of another edition may say the same.
  const replaced = (later: SinceDelivery): boolean => later.delivered.edition === delivered.edition;
  const told = since.told
    .filter((one) => one.wasKnown === undefined)
    .map((one): Wrong => {
      const to = untold((later) => replaced(later) || saysAsNow(later, one));
      return {
        since,
        to,
        path: one.correction?.path ?? factPathOf(one.id, house),
        about: one.about,
        was: one.oldWords,
        is: one.is,
        correction: one.correction,
      };
    });
  const gone = since.gone.map((fact): Wrong => {
    return {
      since,
      to: untold(replaced),
      path: undefined,
      about: aboutOf(fact),
      was: shownWords(fact),
      is: '',
      correction: undefined,
    };
  });
  const head = since.head.map(
    ({ id, about, was, is }): Wrong => ({
      since,
      to: untold(replaced),
      path: HEAD_PATHS[id],
      about,
      was,
      is,
      correction: undefined,
    }),
  );
  return [...told, ...gone, ...head].filter(({ to }) => to.length > 0);
}

/** Where the head of a packet stands in the folder; its title is the program's. */
const HEAD_PATHS: Readonly<Record<ChangesSince['head'][number]['id'], FactPath | undefined>> = {
  name: ['house', 'name'],
  place: ['house', 'address'],
  title: undefined,
};

/**
 * Whether a later packet, of another edition, holds this statement and holds it as it is told now. An id that only counts
 * may be another thing's there: of such a statement the words must be the same.
 */
function saysAsNow(later: SinceDelivery, one: ToldOtherwise): boolean {
  const { facts }: FactsFile = later.delivered.said;
  const { id } = one;
  if (isNumbered(one)) return facts.some((said) => said.id === id && sameWords(said, one.now));
  return (
    facts.some((said) => said.id === id) &&
    !later.told.some((other) => other.id === id) &&
    !later.gone.some((fact) => fact.id === id)
  );
}

/** Characters of old or new words in one message. */
const LONGEST = 120;

function warning(group: readonly Wrong[], houseTyped: string): Diagnostic {
  // The shortest is nearest to the fact; a correction is the fact itself.
  const [shortest] = [...group].sort((a, b) => a.was.length - b.was.length);
  const correction = group.find((one) => one.correction !== undefined)?.correction;
  const first: Wrong = {
    ...(shortest as Wrong),
    ...(correction === undefined
      ? {}
      : { about: upperFirst(correction.words), was: correction.before ?? 'nothing', is: correction.printed }),
  };
  const { delivered } = first.since;
  const more = group.length - (correction === undefined ? 1 : 0);
  const [was, is] =
    first.was.length > LONGEST || first.is.length > LONGEST
      ? whereTheyDiffer(first.was, first.is)
      : [first.was, first.is];
  const title = EDITIONS[delivered.edition].title.toLowerCase();
  const statements = counted(more, correction === undefined ? 'more statement' : 'statement');
  const also =
    more === 0
      ? ''
      : first.path === undefined
        ? `; so ${more === 1 ? 'is' : 'are'} ${statements} of that packet that rest on several facts`
        : `; ${statements} of that packet ${correction === undefined ? 'changed with it' : more === 1 ? 'follows from it' : 'follow from it'}`;
  const now = first.is === '' ? 'that is no longer told' : `now it is told: “${cut(is)}”`;
  return {
    code: 'packet.delivered',
    severity: 'warning',
    ...(first.path === undefined
      ? delivered.on.place === undefined
        ? { file: `${delivered.on.shown}/delivery.yaml` }
        : { place: delivered.on.place }
      : { path: first.path }),
    message: `${first.about}: ${first.to.join(' and ')} ${first.to.length === 1 ? 'was' : 'were'} told “${cut(was)}” in the ${title} of ${isoDate(delivered.given)} (digest ${delivered.said.digest}); ${now}${correction !== undefined ? ', as a correction' : ''}${also}`,
    hints: [
      `give them the packet as it is now:  sillplate deliver ${houseTyped} --edition ${delivered.edition} ${first.to.map((one) => `--to ${quoted(one)}`).join(' ')}${delivered.edition === 'file' ? ' --private' : ''}`,
    ],
  };
}

const cut = (words: string): string => cutWords(words, 2 * LONGEST);
