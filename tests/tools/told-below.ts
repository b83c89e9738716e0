/** Whatever a folder of files tells to somebody who looks into all of them with the programs there are. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { filesBelow } from './built-houses.js';
import { textsIn } from './every-byte.js';
import { run } from './outside-programs.js';

/** Which of the texts are told: in a file's bytes, packed or plain, in its name, by pdftotext or by ExifTool. */
export function toldBelow(
  folder: string,
  texts: readonly string[],
  isLookedAt = (_name: string): boolean => true,
): Set<string> {
  const told = new Set<string>();
  const look = (bytes: Buffer): void => {
    for (const text of textsIn(bytes, texts)) told.add(text);
  };
  // Typefaces ship with the program and are the same for every house.
  const files = filesBelow(folder).filter((name) => isLookedAt(name) && !name.endsWith('.woff2'));
  look(Buffer.from(files.join('\n')));
  for (const name of files) {
    const file = path.join(folder, name);
    look(readFileSync(file));
    if (name.endsWith('.pdf')) look(run('pdftotext', '-raw', '-enc', 'UTF-8', file, '-'));
  }
  const tagged = files.filter((name) => /\.(pdf|jpg|avif|png)$/u.test(name));
  const paths = tagged.map((name) => path.join(folder, name));
  if (paths.length > 0) look(run('exiftool', '-a', '-u', '-ee', '-n', ...paths));
  return told;
}
