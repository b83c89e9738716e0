/**
 * What of a house an edition may know.
 *
 * An edition is an allow-list: sections take words only from what this file lets through, so what is not
 * named here can't reach a page, a sheet, an attachment or a file name.
 */
import type { Document, House, Identity, Person, Photo, System } from '../facts/house.js';
import { heldBack } from '../tally/photo-consent.js';
import type { Arrangement, EditionName } from './packet.js';

export interface EditionRules {
  readonly title: string;
  /** Whom the edition is for. */
  readonly reader: string;
  readonly arrangement: Arrangement;
  /** Names of people who were hired. */
  readonly people: boolean;
  /** Serial and model numbers. */
  readonly serials: boolean;
  /** Where the packet's pages stand on the web. */
  readonly web: boolean;
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
    web: false,
    everything: false,
  },
  visit: {
    title: 'Open-house sheet',
    reader: 'For visitors, at the sign and on the table',
    arrangement: 'two-sides',
    people: false,
    serials: false,
    web: true,
    everything: false,
  },
  buyer: {
    title: 'Buyer packet',
    reader: 'For buyers, their agents and inspectors',
    arrangement: 'page-per-section',
    people: true,
    serials: false,
    web: false,
    everything: false,
  },
  care: {
    title: 'Care book',
    reader: 'For the next owner',
    arrangement: 'page-per-section',
    people: true,
    serials: true,
    web: false,
    everything: false,
  },
  file: {
    title: 'House file',
    reader: 'For the owner only; never published',
    arrangement: 'page-per-section',
    people: true,
    serials: true,
    web: true,
    everything: true,
  },
};

/** Papers with prices on them stay on file; published editions say that there is one, and its date. */
export const holdsPrices = (document: Document): boolean =>
  document.kind === 'receipt' || document.kind === 'invoice';

/** Every word of a thing, each decided by name: a new word does not compile here until somebody decides it. */
type Decided<T> = Record<keyof T, unknown>;

const WITHHELD = undefined;

/** Whether a photo may leave the house file on that day: not marked private, and its `not-before` has come. */
export const mayLeaveFile = (photo: Photo, asOf: string): boolean => heldBack(photo, asOf) === undefined;

/** `asOf` is the day, YYYY-MM-DD, that the packet is made for. */
export function houseFor(house: House, edition: EditionName, asOf: string): House {
  const rules = EDITIONS[edition];
  if (rules.everything) return house;
  return {
    house: identityFor(house.house, rules),
    people: rules.people ? house.people.map(personFor) : [],
    measured: house.measured,
    record: house.record,
    levels: house.levels,
    structures: house.structures,
    rooms: house.rooms,
    systems: house.systems.map((system) => systemFor(system, rules)),
    alarms: house.alarms,
    stairs: house.stairs,
    guards: house.guards,
    pool: house.pool,
    work: house.work,
    conditions: house.conditions,
    permits: house.permits,
    documents: house.documents
      .filter((document) => !document.private && !holdsPrices(document))
      .map(documentFor),
    photos: Object.fromEntries(
      // A label shows its serial number, in the picture and mostly in its words, too.
      Object.entries(house.photos).filter(
        ([, photo]) =>
          mayLeaveFile(photo, asOf) && photo.alt !== undefined && (rules.serials || photo.when !== 'label'),
      ),
    ),
    conveys: house.conveys,
    dues: house.dues,
    answers: house.answers,
    care: house.care,
    lead: house.lead,
    // Contract, closing and what was given are between seller and buyer. Printed notices come from the tally.
    duties: WITHHELD,
    listing: WITHHELD,
    money: WITHHELD,
    'private-notes': [],
  } satisfies Decided<House>;
}

function identityFor(identity: Identity, rules: EditionRules): Identity {
  const { address } = identity;
  const full = address.show === 'full';
  return {
    name: identity.name,
    address: {
      street: full ? address.street : WITHHELD,
      city: address.city,
      state: address.state,
      zip: full ? address.zip : WITHHELD,
      county: address.show === 'city-only' ? WITHHELD : address.county,
      show: address.show,
    } satisfies Decided<Identity['address']>,
    kind: identity.kind,
    storeys: identity.storeys,
    built: identity.built,
    lot: identity.lot,
    construction: identity.construction,
    foundation: identity.foundation,
    exterior: identity.exterior,
    water: identity.water,
    sewer: identity.sewer,
    parking: identity.parking,
    parcel: WITHHELD,
    bought: identity.bought,
    listed: identity.listed,
    web: rules.web ? identity.web : WITHHELD,
    'photos-within': WITHHELD,
  } satisfies Decided<Identity>;
}

const personFor = (person: Person): Person =>
  ({
    id: person.id,
    name: person.name,
    trade: person.trade,
    licence: person.licence,
    contact: WITHHELD,
  }) satisfies Decided<Person>;

const documentFor = (document: Document): Document =>
  ({
    id: document.id,
    what: document.what,
    kind: document.kind,
    date: document.date,
    total: WITHHELD,
    file: WITHHELD,
    kept: WITHHELD,
    private: document.private,
  }) satisfies Decided<Document>;

const systemFor = (system: System, rules: EditionRules): System =>
  ({
    id: system.id,
    is: system.is,
    name: system.name,
    where: system.where,
    made: system.made,
    label: rules.serials ? system.label : WITHHELD,
    installed: system.installed,
    did: system.did,
    by: system.by,
    permit: system.permit,
    fuel: system.fuel,
    capacity: system.capacity,
    model: rules.serials ? system.model : WITHHELD,
    material: system.material,
    serves: system.serves,
    warranty: system.warranty,
    serviced: system.serviced,
    manual: system.manual,
    'set-to': system['set-to'],
    'mixing-valve': system['mixing-valve'],
    'relief-pipe': system['relief-pipe'],
    'anti-tip': system['anti-tip'],
    kept: system.kept,
    conveys: system.conveys,
    from: system.from,
    evidence: system.evidence,
    note: system.note,
  }) satisfies Decided<System>;
