import type { House, Photo } from '../facts/house.js';
import { nameOfPlace } from '../facts/place-name.js';
import type { MoneyTally } from '../tally/money/money-tally.js';
import type { Tally } from '../tally/tally.js';
import { EDITIONS, type EditionRules } from './edition-house.js';
import type { EditionName } from './packet.js';

/** What intake knows of a photo, as far as a packet tells it. */
export interface PhotoOnDisk {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** Day and time by the camera's clock, `2026-02-21T09:14:02`. */
  readonly takenAt: string | undefined;
  /** The file's name below photos/. Printed in the house file alone. */
  readonly name: string;
  /** SHA-256 of the original's bytes, so that another picture under the same name changes the digest. */
  readonly content: string;
}

/** Pages of a paper as pictures, and where the paper itself lies beside the pages. */
export interface PlatesOnDisk {
  readonly pages: readonly PhotoOnDisk[];
  /** How many pages the paper has; the first few are shown. */
  readonly of: number;
  /** Below documents/. */
  readonly file: string;
}

/** Everything a section may look at. `house` holds only what the edition may know. */
export interface Context {
  readonly folder: string;
  readonly edition: EditionName;
  readonly rules: EditionRules;
  readonly house: House;
  /** The whole house: for the standing of evidence and the number of papers, never for what they are. */
  readonly whole: House;
  readonly tally: Omit<Tally, 'money'>;
  /** What was paid, driven and worked. The house file's alone. */
  readonly money: MoneyTally | undefined;
  /** Those that the facts name, by their id. */
  readonly photos: ReadonlyMap<string, PhotoOnDisk>;
  /** Those that no fact names. The house file's alone. */
  readonly unnamed: readonly PhotoOnDisk[];
  /** Receipts and invoices as pictures, by the document's id. The house file's alone. */
  readonly plates: ReadonlyMap<string, PlatesOnDisk>;
}

export function contextFor(
  folder: string,
  whole: House,
  house: House,
  tally: Tally,
  edition: EditionName,
  photos: ReadonlyMap<string, PhotoOnDisk>,
  unnamed: readonly PhotoOnDisk[],
  plates: ReadonlyMap<string, PlatesOnDisk>,
): Context {
  const rules = EDITIONS[edition];
  const { money, ...rest } = tally;
  return {
    folder,
    edition,
    rules,
    house,
    whole,
    tally: rest,
    money: rules.everything ? money : undefined,
    photos,
    unnamed: rules.everything ? unnamed : [],
    plates: rules.everything ? plates : new Map(),
  };
}

/** Printed name of a level, room, stair or structure. */
export const placeName = ({ house }: Context, id: string): string => nameOfPlace(house, id);

/** A photo that this edition may show and that lies in the folder. */
export function photoIn(
  { house, photos }: Context,
  id: string | undefined,
): (Photo & PhotoOnDisk) | undefined {
  if (id === undefined) return undefined;
  const fact = house.photos[id];
  const file = photos.get(id);
  return fact === undefined || file === undefined ? undefined : { ...fact, ...file };
}

/** Anchors are numbered: an original's file name tells when and with what it was taken. */
export function photoAnchor({ house }: Context, id: string): string {
  return `photo-${Object.keys(house.photos).indexOf(id) + 1}`;
}
