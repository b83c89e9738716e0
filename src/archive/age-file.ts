/**
 * Sealed by age (https://age-encryption.org/v1): a bag for those who have a key or the passphrase, and nobody else.
 *
 * Sealing draws random numbers, as it must: the same bag sealed twice gives two different files. What is inside is
 * the same. Streams both ways; nothing is held as a whole.
 */
import { LARGEST_AGE_HEADER } from './bag-limits.js';
import { BagUnreadable } from './bag-source.js';
import { ChangedWhileRead, openPlain } from './file-digest.js';
import { inStream, streamOf } from './stream-pieces.js';

/** For whom a bag is sealed: the format allows a passphrase or keys, and not both. */
export type Seal =
  | { readonly recipients: readonly string[] }
  | { readonly passphrase: string /** For tests; 18 if left out. */; readonly workFactor?: number };

/** What opens it. */
export interface Keys {
  readonly passphrase?: string;
  /** Lines that begin with AGE-SECRET-KEY-. */
  readonly identities?: readonly string[];
}

/** Which of the recipients the format does not know. */
export async function unknownRecipients(recipients: readonly string[]): Promise<string[]> {
  const unknown: string[] = [];
  for (const one of recipients) {
    try {
      await sealer({ recipients: [one] });
    } catch {
      unknown.push(one);
    }
  }
  return unknown;
}

async function sealer(seal: Seal) {
  const { Encrypter } = await import('age-encryption');
  const encrypter = new Encrypter();
  if ('passphrase' in seal) {
    if (seal.workFactor !== undefined) encrypter.setScryptWorkFactor(seal.workFactor);
    encrypter.setPassphrase(seal.passphrase);
  } else for (const one of seal.recipients) encrypter.addRecipient(one);
  return encrypter;
}

export async function sealStream(
  stream: ReadableStream<Uint8Array>,
  seal: Seal,
): Promise<ReadableStream<Uint8Array>> {
  return (await sealer(seal)).encrypt(stream);
}

/** How a file is sealed. Throws `BagUnreadable` for what is no age file. */
export async function sealOf(file: string): Promise<'passphrase' | 'keys'> {
  const handle = await openPlain(file).catch((thrown: unknown) => {
    if (!(thrown instanceof ChangedWhileRead)) throw thrown;
    throw new BagUnreadable('is no file', 'name a folder, or a file ending in .zip, .tar or .tar.age');
  });
  try {
    const { bytesRead, buffer } = await handle.read(
      Buffer.alloc(LARGEST_AGE_HEADER),
      0,
      LARGEST_AGE_HEADER,
      0,
    );
    const text = buffer.toString('latin1', 0, bytesRead);
    if (text.startsWith('-----BEGIN AGE ENCRYPTED FILE-----'))
      throw new BagUnreadable(
        'is an age file written as text',
        'open it with the age program first:  age -d',
      );
    if (!text.startsWith('age-encryption.org/v1\n'))
      throw new BagUnreadable('is no age file', 'name the bag as it was written, ending in .tar.age');
    const header = /^[\s\S]*?\n--- [^\n]+\n/u.exec(text)?.[0];
    if (header === undefined) throw new BagUnreadable('is an age file cut short or damaged', ANOTHER_COPY);
    return header.includes('\n-> scrypt ') ? 'passphrase' : 'keys';
  } finally {
    await handle.close();
  }
}

const ANOTHER_COPY = 'take another copy of it';

/** Opens what is sealed. Lets `pieces` go if that fails. The stream itself throws `BagUnreadable` where a byte was changed. */
export async function openSealed(
  pieces: AsyncGenerator<Uint8Array>,
  keys: Keys,
): Promise<ReadableStream<Uint8Array>> {
  const { Decrypter } = await import('age-encryption');
  const decrypter = new Decrypter();
  if (keys.passphrase !== undefined) decrypter.addPassphrase(keys.passphrase);
  try {
    for (const one of keys.identities ?? []) decrypter.addIdentity(one);
  } catch {
    await pieces.return(undefined);
    throw new BagUnreadable(
      'can’t be opened: the identity file holds what is no age key',
      'name the file that age-keygen wrote, with  --identity FILE',
    );
  }
  try {
    return guarded(await decrypter.decrypt(streamOf(pieces)));
  } catch (thrown) {
    // The library leaves the stream as it is.
    await pieces.return(undefined);
    const message = (thrown as Error).message;
    if (/no identity matched/u.test(message))
      throw new BagUnreadable(
        keys.passphrase === undefined ? 'is sealed for another key' : 'is not opened by that passphrase',
        keys.passphrase === undefined
          ? 'name the key it was sealed for, with  --identity FILE'
          : 'type the passphrase again, letter by letter',
      );
    throw new BagUnreadable(`can’t be opened: ${message.slice(0, 200)}`, ANOTHER_COPY);
  }
}

async function* tellingDamage(stream: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  try {
    for await (const piece of inStream(stream)) yield piece;
  } catch (thrown) {
    if (thrown instanceof BagUnreadable) throw thrown;
    throw new BagUnreadable(
      'was changed or cut short after it was sealed, and what is inside can’t be trusted',
      ANOTHER_COPY,
    );
  }
}

const guarded = (stream: ReadableStream<Uint8Array>): ReadableStream<Uint8Array> =>
  streamOf(tellingDamage(stream));

/** The keys of a file that `age-keygen` wrote: comments and empty lines are passed over. */
export const readIdentities = (text: string): string[] =>
  text
    .split(/\r?\n/u)
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('#'));
