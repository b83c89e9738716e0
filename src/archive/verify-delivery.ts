/**
 * Whether a delivery is whole: each file of its folder against the manifest that was written with it.
 *
 * Takes a folder, gives what differs. Follows no link and writes nothing.
 */
import { createHash } from 'node:crypto';
import { lstat } from 'node:fs/promises';
import path from 'node:path';
import { LARGEST_MANIFEST, MANIFEST } from '../diagnostics/delivery-names.js';
import { parseManifest } from './bag-manifest.js';
import { bytesOf, digestFile, inLanes } from './file-digest.js';
import { walkFolder } from './walk-folder.js';

export interface DeliveryLook {
  /** "pages/index.html was changed", in the order of the manifest. */
  readonly differs: readonly string[];
  /** SHA-256 of the manifest, for the delivery that names this one; undefined where it can't be read. */
  readonly manifest: string | undefined;
}

/** Never throws for what lies in the folder. */
export async function lookAtDelivery(folder: string): Promise<DeliveryLook> {
  const text = await manifestOf(folder);
  if (typeof text !== 'string') return { differs: [`${MANIFEST} ${text.what}`], manifest: undefined };
  const { entries, faults } = parseManifest(text, 'sha256', true);
  const differs = faults.map(({ line, what }) => `line ${line} of ${MANIFEST} ${what}`);
  const answers = new Map<string, string>();
  await inLanes(entries, async ({ path: inner, digest }, lane) => {
    const file = path.join(folder, ...inner.split('/'));
    const what = await lookAt(folder, file, async () => {
      const { digests } = await digestFile(file, ['sha256'], lane);
      return digests.get('sha256') === digest;
    });
    if (what !== undefined) answers.set(inner, `${inner} ${what}`);
  });
  differs.push(...entries.flatMap(({ path: inner }) => answers.get(inner) ?? []));
  const listed = new Set([MANIFEST, ...entries.map((one) => one.path)]);
  try {
    const added: string[] = [];
    for await (const one of walkFolder(folder))
      if (one.kind !== 'folder' && !listed.has(one.path)) added.push(`${one.path} was added`);
    differs.push(...added.sort());
  } catch (thrown) {
    differs.push(`its folder can’t be read (${(thrown as NodeJS.ErrnoException).code ?? 'unknown reason'})`);
  }
  return { differs, manifest: createHash('sha256').update(text).digest('hex') };
}

async function manifestOf(folder: string): Promise<string | { readonly what: string }> {
  try {
    const found = await lstat(path.join(folder, MANIFEST));
    if (!found.isFile()) return { what: 'is no plain file' };
    if (found.size > LARGEST_MANIFEST) return { what: 'is larger than any list of a packet’s files' };
    return (await bytesOf(path.join(folder, MANIFEST))).toString('utf8');
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    return { what: code === 'ENOENT' ? 'is missing' : `can’t be read (${code ?? 'unknown reason'})` };
  }
}

/** What is wrong with one file; undefined if nothing is. A folder of the way may be a link as well. */
async function lookAt(
  folder: string,
  file: string,
  isSame: () => Promise<boolean>,
): Promise<string | undefined> {
  try {
    const parts = path.relative(folder, file).split(path.sep);
    for (let n = 1; n <= parts.length; n++) {
      const found = await lstat(path.join(folder, ...parts.slice(0, n)));
      if (found.isSymbolicLink()) return 'is a link now';
      if (n === parts.length && !found.isFile()) return 'is no plain file';
    }
    return (await isSame()) ? undefined : 'was changed';
  } catch (thrown) {
    const { code } = thrown as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return 'is missing';
    return code === undefined ? 'was changed while it was read' : `can’t be read (${code})`;
  }
}
