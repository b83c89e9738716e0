/** A sealed bag: opened by its key or passphrase, by nothing else, and told if a byte of it was changed. */
import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { generateX25519Identity, identityToRecipient } from 'age-encryption';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readIdentities, sealOf, sealStream, unknownRecipients } from '../../src/archive/age-file.js';
import { piecesOf } from '../../src/archive/file-digest.js';
import { inStream, streamOf } from '../../src/archive/stream-pieces.js';
import { bag, freshFolder, messages, PAYLOAD, removeFolders, verify, written } from '../tools/made-bags.js';

afterAll(removeFolders);

let identity: string;
let recipient: string;
/** Enough for a test, and too little for a secret. */
const passphrase = { passphrase: 'four plain words here', workFactor: 8 };

beforeAll(async () => {
  identity = await generateX25519Identity();
  recipient = await identityToRecipient(identity);
});

describe('a bag sealed for a key', () => {
  it('is one file, whole for who has the key', async () => {
    const to = freshFolder();
    const file = await written(to, { seal: { recipients: [recipient] } });
    expect(path.basename(file)).toBe('test-lane-2026-04-11.tar.age');
    expect(readFileSync(file).includes('Test Lane')).toBe(false);
    expect(await verify(file, { identities: [identity] })).toMatchObject({
      verdict: 'whole',
      diagnostics: [],
      files: Object.keys(PAYLOAD).length,
    });
  });

  it('may be sealed for several', async () => {
    const other = await generateX25519Identity();
    const file = await written(freshFolder(), {
      seal: { recipients: [recipient, await identityToRecipient(other)] },
    });
    for (const one of [identity, other])
      expect((await verify(file, { identities: [one] })).verdict).toBe('whole');
  });

  it('is opened by no other key, and not without one', async () => {
    const file = await written(freshFolder(), { seal: { recipients: [recipient] } });
    const other = { identities: [await generateX25519Identity()] };
    expect(messages(await verify(file, other))).toEqual(['bag is sealed for another key']);
    expect((await verify(file)).verdict).toBe('no-bag');
    expect(messages(await verify(file, { identities: ['nonsense'] })).join()).toContain('no age key');
  });

  it('is another file each time, with the same tar in it', async () => {
    const seal = { recipients: [recipient] };
    const [one, other] = [await written(freshFolder(), { seal }), await written(freshFolder(), { seal })];
    expect(readFileSync(one).equals(readFileSync(other))).toBe(false);
    expect(readFileSync(one)).toHaveLength(readFileSync(other).length);
  });

  it('can’t be compared with a later state, so that one is written', async () => {
    const to = freshFolder();
    const seal = { recipients: [recipient] };
    await written(to, { seal });
    expect(await bag(to, { seal })).toMatchObject({ kind: 'written', name: 'test-lane-2026-04-11-2' });
  });

  it('is told if a byte was changed or the end is cut off', async () => {
    const big = { 'originals/big.bin': new Uint8Array(200_000).fill(5) };
    const file = await written(freshFolder(), { seal: { recipients: [recipient] }, files: big });
    const bytes = readFileSync(file);
    for (const at of [bytes.length - 1, bytes.length - 100_000, 400]) {
      const copy = Buffer.from(bytes);
      copy[at] = (copy[at] ?? 0) ^ 1;
      writeFileSync(file, copy);
      const report = await verify(file, { identities: [identity] });
      expect(report.verdict, String(at)).toBe('no-bag');
      expect(messages(report).join()).toMatch(/changed or cut short|can’t be opened/u);
    }
    writeFileSync(file, bytes);
    truncateSync(file, bytes.length - 70_000);
    expect((await verify(file, { identities: [identity] })).verdict).toBe('no-bag');
  });

  it('is told by its inside as well', async () => {
    const plain = await written(freshFolder(), { form: 'tar' });
    const bytes = readFileSync(plain);
    const at = bytes.indexOf('<p>Test Lane</p>');
    bytes.write('X', at);
    writeFileSync(plain, bytes);
    const sealed = path.join(freshFolder(), 'forged.tar.age');
    const pieces: Uint8Array[] = [];
    const stream = await sealStream(streamOf(piecesOf(plain)), { recipients: [recipient] });
    for await (const piece of inStream(stream)) pieces.push(piece);
    writeFileSync(sealed, Buffer.concat(pieces));
    expect(messages(await verify(sealed, { identities: [identity] }), 'error')).toEqual([
      'data/packets/buyer/index.html was changed: it is not what manifest-sha256.txt says',
    ]);
  });

  it('may be a ZIP that somebody else sealed', async () => {
    const plain = await written(freshFolder(), { form: 'zip' });
    const sealed = path.join(freshFolder(), 'bag.zip.age');
    const pieces: Uint8Array[] = [];
    const stream = await sealStream(streamOf(piecesOf(plain)), { recipients: [recipient] });
    for await (const piece of inStream(stream)) pieces.push(piece);
    writeFileSync(sealed, Buffer.concat(pieces));
    expect((await verify(sealed, { identities: [identity] })).verdict).toBe('whole');
  });
});

describe('a bag sealed with a passphrase', () => {
  it('is opened by it alone', async () => {
    const file = await written(freshFolder(), { seal: passphrase });
    expect(await sealOf(file)).toBe('passphrase');
    expect((await verify(file, { passphrase: passphrase.passphrase })).verdict).toBe('whole');
    expect(messages(await verify(file, { passphrase: 'other' }))).toEqual([
      'bag is not opened by that passphrase',
    ]);
  });
});

describe('keys', () => {
  it('are read as age-keygen writes them', () => {
    expect(readIdentities('# created: 2026-04-11\n# public key: age1x\nAGE-SECRET-KEY-1X\r\n\n')).toEqual([
      'AGE-SECRET-KEY-1X',
    ]);
  });

  it('that are none are named', async () => {
    expect(await unknownRecipients([recipient, 'age1nonsense', identity, ''])).toEqual([
      'age1nonsense',
      identity,
      '',
    ]);
  });
});
