/** Texts that may not be found where they are not allowed: planted in every field that an edition must not show. */
import type { HouseSpec } from '../../src/facts/house.js';
import type { EditionName } from '../../src/packet/packet.js';

interface Canary {
  readonly text: string;
  readonly where: string;
  /** Editions whose output may not hold it, in any form. */
  readonly keptFrom: readonly EditionName[];
  /** A packet may carry it, for the renderers to find a picture by; nothing they write may. */
  readonly mayBeCarried?: true;
}

const PUBLISHED: readonly EditionName[] = ['agent', 'visit', 'buyer', 'care'];

/** Long enough never to come about by chance, in bytes, in hexadecimal or in a digest. */
const song = (name: string): string => `qzcanary${name}xj`;

interface Planted {
  readonly spec: HouseSpec;
  /** File below the house folder → text. */
  readonly files: Readonly<Record<string, string>>;
  readonly canaries: readonly Canary[];
  /** Stands in every page and every sheet: shows that the search can find something. */
  readonly sung: string;
  /** File name of a photo that no fact names. */
  readonly unnamed: string;
  /** Who was given the packets, and what was noted of it. */
  readonly delivered: { readonly to: string; readonly note: string };
}

/** Plants canaries in a spec, its sheets and its file names. The photos themselves are `photo-files` of the caller. */
export function plantCanaries(spec: HouseSpec): Planted {
  const canaries: Canary[] = [];
  const plant = (where: string, keptFrom: readonly EditionName[] = PUBLISHED): string => {
    const text = song(where.replace(/[^a-z]/gu, ''));
    canaries.push({ text, where, keptFrom });
    return text;
  };
  // A sum is printed with commas between its thousands, in pages and sheets, and without them in data.
  const sum = (text: string): string => {
    const printed = text.replace(/\B(?=(\d{3})+\.)/gu, ',');
    for (const form of new Set([text, printed, text.replace('.', '')]))
      canaries.push({ text: form, where: `sum ${form}`, keptFrom: PUBLISHED });
    return text;
  };
  // A day is printed in words, and in data as it was written. These lie where no other day of a made house does.
  const day = (iso: string, words: string): string => {
    for (const form of [iso, words]) canaries.push({ text: form, where: `day ${iso}`, keptFrom: PUBLISHED });
    return iso;
  };
  const show = spec.house.address.show ?? 'full';
  const whenWithheld = show === 'full' ? [] : PUBLISHED;
  const sung = song('sung');
  const secretPaper = plant('documents.id');
  const plainReceipt = plant('receipt.id');
  const secretPhoto = plant('photos.id.private');
  const heldPhoto = plant('photos.id.held');
  const shownPhoto = song('photosidshown');
  canaries.push({ text: shownPhoto, where: 'photos.id.shown', keptFrom: PUBLISHED, mayBeCarried: true });
  const planted: HouseSpec = {
    ...spec,
    house: {
      ...spec.house,
      name: `${spec.house.name} ${sung}`,
      address: {
        ...spec.house.address,
        street: `77 ${plant('house.address.street', whenWithheld)} Street`,
        county: plant('house.address.county', show === 'city-only' ? PUBLISHED : []),
      },
      parcel: plant('house.parcel'),
      // The open-house sheet prints it, as a code and in words.
      web: `https://${plant('house.web', ['agent', 'buyer', 'care'])}.example/`,
    },
    people: [
      ...(spec.people ?? []),
      {
        id: 'hired',
        name: `${plant('people.name', ['agent', 'visit'])} Trades`,
        trade: 'plumber',
        licence: plant('people.licence', ['agent', 'visit']),
        contact: plant('people.contact'),
      },
    ],
    systems: [
      ...(spec.systems ?? []),
      {
        id: 'labelled',
        is: 'water heater, tank, electric',
        installed: '2025-02',
        by: 'hired',
        model: plant('systems.model', ['agent', 'visit', 'buyer']),
        label: {
          serial: `${plant('systems.label.serial', ['agent', 'visit', 'buyer'])}2301`,
          reads: 'YYWW at 29',
        },
        evidence: [secretPaper, plainReceipt],
      },
    ],
    work: [
      ...(spec.work ?? []),
      {
        id: 'hidden-work',
        what: 'pipe behind the wall',
        did: 'replaced',
        done: '2025-03',
        by: 'hired',
        photos: { before: secretPhoto, during: [heldPhoto], after: shownPhoto },
        evidence: [secretPhoto, heldPhoto, secretPaper, plainReceipt],
      },
    ],
    documents: [
      ...(spec.documents ?? []),
      {
        id: secretPaper,
        what: plant('documents.what'),
        kind: 'report',
        date: '2025-03-03',
        file: `${plant('documents.file')}.pdf`,
        kept: plant('documents.kept'),
        private: true,
      },
      {
        id: plainReceipt,
        what: plant('receipt.what'),
        kind: 'receipt',
        date: '2025-03-04',
        file: `${plant('receipt.file')}.pdf`,
        kept: plant('receipt.kept'),
        total: sum('73914.37'),
      },
    ],
    listing: { service: plant('listing.service'), remarks: `${plant('listing.remarks')}.txt` },
    money: {
      role: 'dealer',
      'in-business': 'yes',
      sale: { closed: '2026-04-01', price: sum('917364.58'), from: plant('money.sale.from') },
      payees: [
        { name: plant('money.payees.name'), sells: 'services', relation: plant('money.payees.relation') },
      ],
      budget: [{ for: 'all', amount: sum('81736.45') }],
      'hour-rate': sum('4173.96'),
      'gross-receipts': [{ year: 2025, amount: sum('6193847.25') }],
      'held-up': [{ from: '2026-03-04', to: '2026-03-05', 'waiting-for': plant('money.held-up') }],
      reductions: [{ what: 'other', amount: sum('57391.84'), note: plant('money.reductions.note') }],
    },
    duties: {
      contract: day('1688-03-09', '9 March 1688'),
      closing: day('2188-04-11', '11 April 2188'),
      association: 'yes',
      given: [
        {
          duty: 'us-lead-attachment',
          on: day('1687-02-08', '8 February 1687'),
          evidence: [secretPaper],
          note: plant('duties.given.note'),
        },
        { duty: plant('duties.given.duty'), on: day('1686-01-07', '7 January 1686') },
      ],
    },
    photos: {
      ...spec.photos,
      [secretPhoto]: {
        file: `${plant('photos.file.private')}.jpg`,
        shows: plant('photos.shows'),
        alt: plant('photos.alt'),
        private: true,
      },
      [heldPhoto]: {
        file: `${plant('photos.file.held')}.jpg`,
        shows: plant('photos.shows.held'),
        alt: plant('photos.alt.held'),
        'not-before': '2199-01-01',
      },
      [shownPhoto]: {
        file: `${plant('photos.file.shown')}.jpg`,
        shows: 'pipe behind the wall, new',
        alt: 'A pipe in an open wall.',
        when: 'after',
        where: spec.rooms?.[0]?.id,
      },
    },
    'private-notes': [plant('private-notes')],
  };
  const text = (name: string): string => `paper of ${name}\n`;
  return {
    spec: JSON.parse(JSON.stringify(planted)) as HouseSpec,
    canaries,
    unnamed: `${plant('photos.unnamed')}.jpg`,
    sung,
    delivered: { to: `${plant('deliveries.to')} & partner`, note: plant('deliveries.note') },
    files: {
      [`documents/${planted.documents?.at(-2)?.file}`]: text(plant('documents.content')),
      [`documents/${planted.documents?.at(-1)?.file}`]: text(plant('receipt.content')),
      'costs.csv': `date,payee,what,amount,bucket,place,paid,receipt\n2026-03-03,${plant('costs.payee')},${plant('costs.what')},${sum('73914.37')},improvement,,check,${plainReceipt}\n`,
      'miles.csv': `date,from,to,purpose,miles\n2026-03-03,${plant('miles.from')},${plant('miles.to')},${plant('miles.purpose')},${sum('1987.643')}\n`,
      // Whatever else lies in a house folder is nobody's but the owner's.
      'remarks.txt': `New floors in the kitchen. ${plant('file.remarks')}\n`,
      'notes.txt': `${plant('file.notes')}\n`,
      '.env': `${plant('file.hidden')}\n`,
      '.sillplate-imports/mine.csv': `${plant('file.imports')}\n`,
      'photos/list.txt': `${plant('file.beside-photos')}\n`,
      'documents/unnamed.pdf': text(plant('file.unnamed-paper')),
      // Facts in a file of their own, with a remark of the writer.
      'more.yaml': `# ${plant('yaml.comment')}\nlead: { known: none } # ${plant('yaml.comment-behind')}\n`,
      'hours.csv': `date,who,what,place,hours\n2026-03-03,owner,${plant('hours.what')},,7.5\n`,
    },
  };
}
