/**
 * A house folder becomes facts, their places, its photos and documents.
 *
 * Takes a folder. Gives the checked `House`, the places of its facts, and what lies beside them. Never
 * computes, chooses or repairs anything in silence. Start reading at `readHouse`.
 */
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { FactPath } from '../diagnostics/fact-path.js';
import { withoutKnockOns } from '../diagnostics/knock-on.js';
import { eitherBook, NOWHERE, type PlaceBook, withLines } from '../diagnostics/place.js';
import { checkAddress } from '../facts/check-address.js';
import { checkCorrections } from '../facts/check-corrections.js';
import { checkHouse } from '../facts/check-house.js';
import { checkReferences } from '../facts/check-references.js';
import type { House } from '../facts/house.js';
import type { Ledger } from '../facts/ledger.js';
import {
  coverTaxpayerNumbers,
  findTaxpayerNumbers,
  withoutTaxpayerNumbers,
} from '../facts/taxpayer-number.js';
import { checkDocuments } from './documents.js';
import type { PhotoFile } from './look-at-photo.js';
import { findPhotos } from './photo-files.js';
import { readFacts, type WrittenFacts } from './read-facts.js';

export interface HouseOnDisk {
  /** Name of the folder. */
  readonly folder: string;
  readonly house: House;
  /** By the photo's id in the facts. */
  readonly photos: ReadonlyMap<string, PhotoFile>;
  /** The photos that lie in the folder and that no fact names; empty unless they were asked for. */
  readonly unnamed: readonly PhotoFile[];
  /** Costs, miles and hours; undefined unless they were asked for. */
  readonly ledger: Ledger | undefined;
}

export interface ReadHouse {
  /** Undefined if too little could be read to go on. */
  readonly found: HouseOnDisk | undefined;
  readonly places: PlaceBook;
  readonly diagnostics: readonly Diagnostic[];
  /** Path in the checked house → path in what was written. */
  readonly writtenPath: (path: FactPath) => FactPath;
  /** What YAML gave, before checking. */
  readonly spec: Readonly<Record<string, unknown>>;
}

export interface ReadOptions {
  /** Also look at the photos that no fact names. */
  readonly everyPhoto?: boolean;
  /** Also read the sheets of costs, miles and hours. */
  readonly ledger?: boolean;
}

/** `shown` is the folder as the writer would type it, with forward slashes. */
export async function readHouse(
  folder: string,
  shown: string,
  { everyPhoto = false, ledger: wantsLedger = false }: ReadOptions = {},
): Promise<ReadHouse> {
  const facts = await readFacts(folder, shown);
  if (!('spec' in facts)) {
    return {
      found: undefined,
      places: NOWHERE,
      diagnostics: facts.diagnostics,
      writtenPath: (same) => same,
      spec: {},
    };
  }
  const checked = checkHouse(facts.spec, facts.written);
  const { house } = checked;
  // A terminal and a build's log keep what is shown there.
  const places = withLines(facts.places, coverTaxpayerNumbers);
  const rest = { places, writtenPath: checked.writtenPath, spec: facts.spec };
  // Found in what was written: also below a word that could not be read. What else is wrong with such a value is not said.
  const numbers = findTaxpayerNumbers(facts.spec);
  const isNumber = new Set(numbers.map((d) => JSON.stringify(d.path)));
  const own = checked.diagnostics.filter(
    (d) => !restsOnBroken(d, facts) && (d.onWord === true || !isNumber.has(JSON.stringify(d.path))),
  );
  const first = [...facts.diagnostics, ...own, ...numbers].map(withoutTaxpayerNumbers);
  const nothing = Object.keys(facts.spec).length === 0;
  if (house === undefined || nothing)
    return {
      found: undefined,
      ...rest,
      diagnostics: nothing ? facts.diagnostics.map(withoutTaxpayerNumbers) : first,
    };

  const references = facts.broken.length > 0 ? [] : checkReferences(house, facts.spec, doubledWords(facts));
  const photos = await findPhotos(folder, shown, house, everyPhoto);
  const documents = await checkDocuments(folder, house);
  // What reads sheets is loaded where they are asked for.
  const rows = wantsLedger
    ? await (await import('./read-ledger.js')).readLedger(folder, shown, house, facts.spec)
    : undefined;
  const later = [
    ...references,
    ...checkCorrections(house),
    ...checkAddress(house, path.basename(path.resolve(folder))),
    ...photos.diagnostics,
    ...documents,
    ...(rows?.diagnostics ?? []),
  ].map((diagnostic) =>
    withoutTaxpayerNumbers(
      diagnostic.path === undefined
        ? diagnostic
        : { ...diagnostic, path: checked.writtenPath(diagnostic.path) },
    ),
  );
  return {
    found: {
      folder: path.basename(path.resolve(folder)),
      house,
      photos: photos.files,
      unnamed: photos.unnamed,
      ledger: rows?.ledger,
    },
    ...rest,
    places: rows === undefined ? places : eitherBook(rows.places, places),
    diagnostics: [...first, ...withoutKnockOns(later, first)],
  };
}

/** Words at the top that stand twice, in one file or in two. */
const doubledWords = ({ diagnostics }: WrittenFacts): string[] =>
  diagnostics.flatMap(({ code, path = [] }) =>
    path.length === 1 && (code === 'intake.duplicate-word' || code === 'intake.two-files')
      ? [String(path[0])]
      : [],
  );

/** A word that could not be read is not also reported as missing. */
function restsOnBroken(diagnostic: Diagnostic, { broken, spec }: WrittenFacts): boolean {
  const top = String(diagnostic.path?.[0] ?? '');
  // `*`: a whole file was not read, and may hold whatever is nowhere else.
  return broken.includes(top) || (broken.includes('*') && !Object.hasOwn(spec, top));
}
