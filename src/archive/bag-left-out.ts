/**
 * What lies in a house folder and no person put there as a record: leftovers of killed runs, the insides of version
 * control, and what systems and editors keep for themselves. A bag leaves it out and says so; all else goes in.
 */

/** Names that file managers, disks and version control give (common practice, no source); in small letters. */
const NAMES: ReadonlySet<string> = new Set([
  '.ds_store',
  '.fseventsd',
  '.git',
  '.hg',
  '.spotlight-v100',
  '.svn',
  '.trashes',
  'desktop.ini',
  'thumbs.db',
]);

/** Names that programs give while they work (common practice of theirs, no source). */
const PATTERNS: readonly RegExp[] = [
  // This program's own: half-written files, locks, folders that were being made.
  /^\.sillplate-(?:writing|lock|making)-/u,
  // vi and its heirs, Emacs, LibreOffice, Microsoft Office. A copy such as `house.yaml~` is kept: it holds facts.
  /^\..*\.sw[a-p]$/iu,
  /^\.#/u,
  /^#.+#$/u,
  /^\.~lock\..+#$/u,
  /^~\$.+/u,
];

/** The note of an import that was cut off; nothing else is called that there. */
const NOTE = 'imports/.unfinished.json';

/** `path` is that of a file or folder, from the surveyed folder, with forward slashes. */
export function isLeftOut(path: string): boolean {
  const name = path.slice(path.lastIndexOf('/') + 1);
  return path === NOTE || NAMES.has(name.toLowerCase()) || PATTERNS.some((one) => one.test(name));
}

const MOST_TOLD = 12;

/** In one line: a path that is the only one of its name, else the name and how often; no more than a dozen. */
export function tellLeftOut(paths: readonly string[]): string {
  const byName = new Map<string, string[]>();
  for (const path of paths) {
    const name = path.slice(path.lastIndexOf('/') + 1);
    byName.set(name, [...(byName.get(name) ?? []), path]);
  }
  const told = [...byName].map(([name, all]) =>
    all.length === 1 ? (all[0] ?? name) : `${name} (${all.length} times)`,
  );
  const more = told.length - MOST_TOLD;
  return `${told.slice(0, MOST_TOLD).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}
