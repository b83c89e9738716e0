/**
 * Entries of a ZIP or a tar become the files of one bag.
 *
 * A packed bag holds one folder, the bag. What would be unpacked elsewhere, what stands beside it, and more than any
 * bag holds is refused.
 */
import { LARGEST_TAG, MOST_ENTRIES, MOST_NAMES, MOST_TAGS } from './bag-limits.js';
import { pathFault } from './bag-manifest.js';
import { type BagListing, BagUnreadable, isTag } from './bag-source.js';

export class PackListing {
  readonly #files = new Map<string, number>();
  readonly #tags = new Map<string, Uint8Array>();
  readonly #odd: BagListing['odd'][number][] = [];
  #name: string | undefined;
  #entries = 0;
  #names = 0;
  #tagBytes = 0;

  /**
   * Takes the next entry. Answers with its path in the bag if it is a file to be read, undefined otherwise. `what`
   * is set for what is neither file nor folder.
   */
  take(
    rawName: string,
    kind: 'file' | 'folder' | { readonly what: string },
    size: number,
  ): string | undefined {
    this.#entries += 1;
    this.#names += rawName.length;
    if (this.#entries > MOST_ENTRIES || this.#names > MOST_NAMES)
      throw new BagUnreadable('holds more files than any bag of this program', 'unpack it yourself');
    const plain = rawName.replace(/^(\.\/)+/u, '').replace(/\/$/u, '');
    if (plain === '' || plain === '.') return undefined;
    const wrong = pathFault(plain);
    if (wrong !== undefined)
      throw new BagUnreadable(
        `holds an entry whose path ${wrong}: ${rawName.slice(0, 200)}`,
        'do not unpack it; ask for it again from where it came',
      );
    const [top = '', ...rest] = plain.split('/');
    if (this.#name !== undefined && top !== this.#name)
      throw new BagUnreadable(
        `holds more than one folder at its top, ${this.#name} and ${top.slice(0, 200)}, and a packed bag holds one`,
        'unpack it, and verify the folders one by one',
      );
    if (rest.length === 0 && kind !== 'folder')
      throw new BagUnreadable(
        `holds ${top.slice(0, 200)} outside of any folder, and a packed bag is one folder`,
        'unpack it into a folder of its own, and verify that',
      );
    this.#name = top;
    const path = rest.join('/');
    if (kind === 'folder') return undefined;
    if (kind !== 'file') {
      this.#odd.push({
        path,
        what: kind.what,
        hint: 'do not unpack it; ask for it again from where it came',
      });
      return undefined;
    }
    if (this.#files.has(path)) {
      this.#odd.push({
        path,
        what: 'is packed twice, and programs differ in which one they unpack',
        hint: 'unpack it yourself, look at both, and make a new bag',
      });
      return undefined;
    }
    this.#files.set(path, size);
    if (isTag(path)) {
      this.#tagBytes += size;
      if (size > LARGEST_TAG || this.#tagBytes > MOST_TAGS)
        throw new BagUnreadable(`has a ${path} larger than that of any bag`, 'unpack it yourself');
    }
    return path;
  }

  keepTag(path: string, bytes: Uint8Array): void {
    this.#tags.set(path, bytes);
  }

  end(): BagListing {
    if (this.#name === undefined) throw new BagUnreadable('is empty', 'ask for it again from where it came');
    return { name: this.#name, files: this.#files, tags: this.#tags, odd: this.#odd };
  }
}
