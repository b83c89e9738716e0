/**
 * Independent check: of a house in which every file talks, no word and no picture that is private reaches anybody.
 *
 * ExifTool and hand-written chunks put words into photos, receipts and a cost workbook wherever those hold any; what is
 * private is painted in colours that nothing else has. Then every byte of every edition, and every picture that can be got
 * out of it (its files, those in texts, those that pdfimages takes out of PDFs, and whatever else begins as one), is searched.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Decrypter, generateX25519Identity, identityToRecipient } from 'age-encryption';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildHouse, EDITION_NAMES } from '../../src/build.js';
import type { EditionName } from '../../src/packet/packet.js';
import { type AskedPreview, previewOf } from '../tools/asked-preview.js';
import { filesBelow } from '../tools/built-houses.js';
import { textsIn } from '../tools/every-byte.js';
import { typed } from '../tools/gallery.js';
import { lacking } from '../tools/outside-programs.js';
import { coloursIn, everyDot, type FoundPicture, picturesIn } from '../tools/rare-colours.js';
import {
  AS_OF,
  digestsBelow,
  NAME,
  PAINTED,
  type PaintedThing,
  type SecretiveHouse,
  writeOpenHouse,
  writeSecretiveHouse,
} from '../tools/secretive-house.js';
import { WHERE_AND_WHEN } from '../tools/talking-photo.js';
import { toldBelow } from '../tools/told-below.js';

/** Who was given a packet, and what was remarked of it. */
const TO = 'qzrecipientxj & partner';
const NOTE = 'qznoteonitxj';

const { some: lacks, words: without } = lacking('exiftool', 'pdfimages', 'pdftotext');
const PUBLISHED = EDITION_NAMES.filter((name) => name !== 'file');

const isPublished = (name: string): boolean =>
  PUBLISHED.some((edition) => name.startsWith(`${NAME}/${edition}/`));

/** Where somebody who knows the folders might look for them in the preview. */
const WAYS_IN = [
  '',
  `${NAME}/`,
  `${NAME}/file/`,
  `${NAME}/buyer/`,
  `${NAME}/buyer/../file/`,
  `${NAME}/buyer/..%2ffile%2f`,
  `${NAME}/buyer/..%2f..%2f..%2f`,
  `content/${NAME}/`,
  `..%2f..%2fcontent%2f${NAME}%2f`,
  'out/',
];

/** The house file's copies of the owner's own files. */
const isCopy = (name: string): boolean => /^(originals|papers)\//u.test(name);

async function build({ root, folder }: SecretiveHouse, editions: readonly EditionName[]): Promise<string> {
  const out = path.join(root, 'out');
  const { located, made } = await buildHouse({
    folder,
    shown: `content/${NAME}`,
    asOf: AS_OF,
    editions,
    out,
    outShown: 'out',
    paper: 'letter',
  });
  const wrong = located.filter(({ diagnostic }) => diagnostic.severity === 'error');
  expect(wrong.map(({ diagnostic }) => diagnostic.message)).toEqual([]);
  expect(made).toHaveLength(editions.length);
  return path.join(out, NAME);
}

const thingsIn = (pictures: readonly FoundPicture[]): Set<string> =>
  new Set(pictures.flatMap(({ pixels }) => [...coloursIn(pixels, PAINTED)]));

describe.skipIf(lacks)(`a house in which every file talks${without}`, () => {
  let scratch: string;
  let house: SecretiveHouse;
  let out: string;
  let preview: AskedPreview | undefined;

  beforeAll(async () => {
    scratch = mkdtempSync(path.join(tmpdir(), 'secretive-'));
    house = await writeSecretiveHouse(path.join(scratch, 'closed'));
    out = await build(house, EDITION_NAMES);
  });

  afterAll(async () => {
    await preview?.stop();
    rmSync(scratch, { recursive: true, force: true });
  });

  const named = (texts: Iterable<string>): string[] => [...texts].map((text) => house.words.whereOf(text));

  it('holds each word and each colour where the search finds it: the check can fail', async () => {
    const words = house.words.texts('nobody', 'owner');
    expect(words.length).toBeGreaterThan(100);
    const told = toldBelow(house.root, [...words, ...WHERE_AND_WHEN], (name) => !name.startsWith('out/'));
    expect(named([...words, ...WHERE_AND_WHEN].filter((text) => !told.has(text)))).toEqual([]);
    const pictures = await picturesIn(house.folder, scratch);
    // A PDF receipt is drawn and no picture; the house file makes one of it.
    const drawn: readonly PaintedThing[] = ['a receipt as PDF', 'a private paper'];
    const things = Object.keys(PAINTED).filter((thing) => !drawn.some((one) => one === thing));
    expect([...thingsIn(pictures)].sort()).toEqual(things.sort());
  });

  it.each(PUBLISHED)('tells no word of it, and no digest, to anybody: %s', (edition) => {
    const words = house.words.texts('nobody', 'owner');
    const digests = digestsBelow(house.folder);
    const told = toldBelow(path.join(out, edition), [...words, ...WHERE_AND_WHEN, ...digests.keys()]);
    expect([...told].map((text) => digests.get(text) ?? house.words.whereOf(text))).toEqual([]);
  });

  it('tells the owner, in the house file, what the rows and the papers say and nothing that lies beside', () => {
    const file = path.join(out, 'file');
    const owners = house.words.texts('owner');
    const told = toldBelow(
      file,
      [...house.words.texts('nobody'), ...owners, ...WHERE_AND_WHEN],
      (name) => !isCopy(name),
    );
    expect(named([...told].filter((text) => !owners.includes(text)))).toEqual([]);
    const copies = toldBelow(file, owners, isCopy);
    expect(named(owners.filter((text) => !told.has(text) && !copies.has(text)))).toEqual([
      'name of the listing text',
    ]);
  });

  it.each(PUBLISHED)('shows no dot of what is private: %s', async (edition) => {
    const pictures = await picturesIn(path.join(out, edition), scratch);
    expect([...thingsIn(pictures)].sort()).toEqual([]);
    // The sheet at the sign and the care book have no place for a photo of a kitchen.
    if (edition === 'agent' || edition === 'buyer') expect(pictures.length).toBeGreaterThan(4);
  });

  it('shows the owner, in the house file, everything but what is hidden and what lies within the originals', async () => {
    const pictures = await picturesIn(path.join(out, 'file'), scratch, (name) => !isCopy(name));
    const never: readonly PaintedThing[] = [
      'a hidden part',
      'what was rubbed out in a photo',
      'the small copy in a photo',
      'the second picture in a photo’s file',
      'the second page of a photo',
    ];
    const things = Object.keys(PAINTED).filter((thing) => !never.some((one) => one === thing));
    expect([...thingsIn(pictures)].sort()).toEqual(things.sort());
  });

  it('shows it in every kind of picture where nothing is private: the check can fail', async () => {
    const open = await build(writeOpenHouse(house, path.join(scratch, 'open')), ['buyer']);
    const pictures = await picturesIn(path.join(open, 'buyer'), scratch);
    for (const thing of [
      'a private photo',
      'a photo that waits for its day',
      'a hidden part',
      'a photo without words',
    ] as const) {
      const having = pictures.filter(({ pixels }) => coloursIn(pixels, PAINTED).has(thing));
      expect(new Set(having.map(({ kind }) => kind)), thing).toEqual(
        new Set(['picture file', 'written into a text', 'drawn in a PDF', 'lying in other bytes']),
      );
      expect(new Set(having.map(({ where }) => path.extname(where))), thing).toContain('.avif');
    }
  });

  describe('of which something is handed out', () => {
    const secrets = (): string[] => [...house.words.texts('nobody', 'owner'), ...WHERE_AND_WHEN];

    it('tells nothing of it in a draft of the listing text', async () => {
      for (const format of ['text', 'json']) {
        const words = ['remarks', house.folder, '--draft', '--format', format, '--as-of', AS_OF];
        const { said, status } = await typed(words);
        expect(status, said).toBe(0);
        expect(said).toMatch(/counter/iu);
        expect(named(textsIn(Buffer.from(said), secrets()))).toEqual([]);
      }
    });

    it('tells and shows nothing of it in the preview, whatever is asked for', async () => {
      preview = await previewOf(house.folder, path.dirname(out), AS_OF);
      const all = await preview.everything();
      const ending = (end: string): string[] => [...all.keys()].filter((address) => address.endsWith(end));
      expect(ending('.pdf')).toHaveLength(PUBLISHED.length);
      expect(ending('.avif').length).toBeGreaterThan(0);
      for (const [address, bytes] of all) {
        expect(named(textsIn(bytes, secrets())), address).toEqual([]);
        if (/\.(avif|jpg)$/u.test(address))
          expect([...coloursIn(await everyDot(bytes), PAINTED)], address).toEqual([]);
      }
      // Whatever lies in the house folder and beside the editions, by the ways in which it might be asked for.
      const made = filesBelow(path.dirname(out)).filter((name) => !isPublished(name));
      expect(made.some((name) => name.startsWith('.photo-cache/'))).toBe(true);
      expect(made.some((name) => name.startsWith(`${NAME}/file/`))).toBe(true);
      const given: string[] = [];
      for (const name of [...filesBelow(house.folder), ...made])
        for (const before of WAYS_IN) {
          const { status, bytes } = await preview.get(`/${before}${name}`);
          // An address that leads nowhere is said back.
          const body = bytes.toString('latin1').replaceAll(name, '');
          if (status !== 404 || secrets().some((text) => body.includes(text))) given.push(before + name);
        }
      expect(given).toEqual([]);
    });

    it('tells nothing of it in a packet as it is delivered; who got it stands in the record beside it alone', async () => {
      for (const edition of PUBLISHED) {
        const to = ['--to', TO, '--note', NOTE, '--on', AS_OF, '--as-of', AS_OF, '--out', path.dirname(out)];
        const { said, status } = await typed(['deliver', house.folder, '--edition', edition, ...to]);
        expect(status, said).toBe(0);
      }
      const folder = path.join(house.folder, 'deliveries');
      const isRecord = (name: string): boolean => name.endsWith('/delivery.yaml');
      expect(filesBelow(folder).filter(isRecord)).toHaveLength(PUBLISHED.length);
      const digests = [...digestsBelow(path.join(house.folder, 'documents')).keys()];
      const texts = [...secrets(), ...digests, TO.slice(0, 13), NOTE];
      expect(named(toldBelow(folder, texts, (name) => !isRecord(name)))).toEqual([]);
      expect([...toldBelow(folder, texts, isRecord)].sort()).toEqual([NOTE, TO.slice(0, 13)].sort());
      const pictures = await picturesIn(folder, scratch);
      expect(pictures.length).toBeGreaterThan(4);
      expect([...thingsIn(pictures)]).toEqual([]);
    });

    it('tells nothing of it in a sealed bag, which holds all of it', async () => {
      const identity = await generateX25519Identity();
      const to = path.join(scratch, 'archive');
      const seal = ['--seal-for', await identityToRecipient(identity), '--to', to];
      const order = ['--as-of', AS_OF, '--out', path.dirname(out)];
      const { said, status } = await typed(['archive', house.folder, ...seal, ...order]);
      expect(status, said).toBe(0);
      const files = filesBelow(to);
      expect(files.every((name) => name.endsWith('.age'))).toBe(true);
      expect(named(toldBelow(to, secrets()))).toEqual([]);
      const decrypter = new Decrypter();
      decrypter.addIdentity(identity);
      const opened = Buffer.from(await decrypter.decrypt(readFileSync(path.join(to, files[0] ?? ''))));
      expect(opened.includes(house.words.texts('owner')[0] ?? '?')).toBe(true);
    });
  });
});
