/**
 * What of a house an edition may know.
 *
 * An edition is an allow-list: sections take words only from what this file lets through, so what is not
 * named here can't reach a page, a sheet, an attachment or a file name.
 */
import type { Document, House } from '../facts/house.js';
import type { EditionName } from './packet.js';

export interface EditionRules {
  readonly title: string;
  /** Whom the edition is for. */
  readonly reader: string;
  readonly arrangement: 'one-page' | 'page-per-section';
  /** Names of people who were hired. */
  readonly people: boolean;
  /** Serial and model numbers. */
  readonly serials: boolean;
  /** Everything else that is marked private, with receipts and contacts. */
  readonly everything: boolean;
}

export const EDITIONS: Readonly<Record<EditionName, EditionRules>> = {
  agent: {
    title: 'Improvements sheet',
    reader: 'For the listing agent and the appraiser',
    arrangement: 'one-page',
    people: false,
    serials: false,
    everything: false,
  },
  buyer: {
    title: 'Buyer packet',
    reader: 'For buyers, their agents and inspectors',
    arrangement: 'page-per-section',
    people: true,
    serials: false,
    everything: false,
  },
  care: {
    title: 'Care book',
    reader: 'For the next owner',
    arrangement: 'page-per-section',
    people: true,
    serials: true,
    everything: false,
  },
  file: {
    title: 'House file',
    reader: 'For the owner only; never published',
    arrangement: 'page-per-section',
    people: true,
    serials: true,
    everything: true,
  },
};

/** Papers with prices on them stay on file; published editions say that there is one, and its date. */
export const holdsPrices = (document: Document): boolean =>
  document.kind === 'receipt' || document.kind === 'invoice';

export function houseFor(house: House, edition: EditionName): House {
  const rules = EDITIONS[edition];
  if (rules.everything) return house;
  const { address } = house.house;
  const { parcel: _parcel, ...identity } = house.house;
  return {
    ...house,
    house: {
      ...identity,
      address: {
        city: address.city,
        state: address.state,
        show: address.show,
        ...(address.show === 'full' ? { street: address.street, zip: address.zip } : {}),
        ...(address.show === 'city-only' ? {} : { county: address.county }),
      },
    },
    people: rules.people ? house.people.map(({ contact: _contact, ...person }) => person) : [],
    systems: rules.serials
      ? house.systems
      : house.systems.map(({ label: _label, model: _model, ...system }) => system),
    documents: house.documents
      .filter((document) => !document.private && !holdsPrices(document))
      .map(({ file: _file, kept: _kept, ...document }) => document),
    photos: Object.fromEntries(
      Object.entries(house.photos).filter(([, photo]) => !photo.private && photo.alt !== undefined),
    ),
    'private-notes': [],
  };
}
