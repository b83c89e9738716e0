/**
 * A bag in a tar file, read from its beginning to its end.
 *
 * Where the manifests stand first, as in the bags of this program, one reading is enough: files are hashed as they
 * pass. Where they don't, the tar is read a second time.
 */
import { type Algorithm, isAlgorithm } from './bag-manifest.js';
import { type BagListing, type BagSource, BagUnreadable, type Digested, isTag } from './bag-source.js';
import { digestBytes, Hashes } from './file-digest.js';
import { PackListing } from './pack-listing.js';
import { inStream } from './stream-pieces.js';

/** `open` begins the reading anew; it may throw `BagUnreadable`, and so may the stream. */
export function readBagTar(open: () => Promise<ReadableStream<Uint8Array>>): BagSource {
  const passed = new Map<string, Digested>();
  let tags: BagListing['tags'] = new Map();
  return {
    list: async () => {
      const seen = new Set<Algorithm>();
      const listing = await walkTar(
        open,
        () => seen,
        (path, digests) => passed.set(path, digests),
        (name) => {
          const algorithm = /^(?:tag)?manifest-([a-z0-9]+)\.txt$/u.exec(name)?.[1];
          if (algorithm !== undefined && isAlgorithm(algorithm)) seen.add(algorithm);
        },
      );
      tags = listing.tags;
      return listing;
    },
    digest: async (wanted, onBytes) => {
      // Tag files are here already, also those that came by before any manifest.
      for (const [path, algorithms] of wanted) {
        const bytes = tags.get(path);
        if (bytes !== undefined) passed.set(path, digestBytes(bytes, algorithms));
      }
      const isPassed = [...wanted].every(([path, algorithms]) => {
        const found = passed.get(path);
        return found instanceof Map && [...algorithms].every((name) => found.has(name));
      });
      if (isPassed) return passed;
      const found = new Map<string, Digested>();
      await walkTar(
        open,
        (path) => wanted.get(path) ?? [],
        (path, digests) => found.set(path, digests),
        () => undefined,
        onBytes,
      );
      return found;
    },
  };
}

async function walkTar(
  open: () => Promise<ReadableStream<Uint8Array>>,
  algorithmsFor: (path: string) => Iterable<Algorithm>,
  digested: (path: string, digests: Digested) => void,
  named: (path: string) => void,
  onBytes?: (n: number) => void,
): Promise<BagListing> {
  const { createTarDecoder } = await import('modern-tar');
  const listing = new PackListing();
  try {
    const entries = (await open()).pipeThrough(createTarDecoder({ strict: true }));
    for await (const { header, body } of inStream(entries)) {
      const path = listing.take(header.name, kindOf(header), header.size);
      if (path === undefined) {
        await body.cancel();
        continue;
      }
      named(path);
      const hashes = new Hashes(algorithmsFor(path));
      const pieces: Uint8Array[] = [];
      for await (const piece of inStream(body)) {
        hashes.update(piece);
        onBytes?.(piece.length);
        if (isTag(path)) pieces.push(Uint8Array.from(piece));
      }
      digested(path, hashes.end());
      if (isTag(path)) listing.keepTag(path, Buffer.concat(pieces));
    }
  } catch (thrown) {
    throw asUnreadable(thrown);
  }
  return listing.end();
}

/** The types of a tar's entries that are files by another name are read as files. */
function kindOf({ type }: { readonly type?: string }): Parameters<PackListing['take']>[1] {
  if (type === 'directory') return 'folder';
  if (type === 'link' || type === 'symlink') return { what: 'is a link, and a bag holds files' };
  if (type === 'file' || type === undefined) return 'file';
  return { what: 'is a pipe, a socket or a device' };
}

function asUnreadable(thrown: unknown): unknown {
  if (thrown instanceof BagUnreadable || !(thrown instanceof Error)) return thrown;
  if (thrown instanceof TypeError || thrown instanceof ReferenceError) return thrown;
  const { code, syscall } = thrown as NodeJS.ErrnoException;
  if (code !== undefined && syscall !== undefined)
    return new BagUnreadable(`can’t be read: the system says ${code}`, 'check who may read it');
  return new BagUnreadable(
    `can’t be read as a tar file: ${thrown.message.slice(0, 200)}`,
    'it is cut short or damaged; take another copy of it',
  );
}
