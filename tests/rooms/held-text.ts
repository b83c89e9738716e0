/** Texts that were reviewed lie beside the tests that hold them; `ACCEPT=1` takes a change over that is meant. */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** What the text in `file`, below this folder, has to be. */
export function heldText(file: string, text: string): string {
  const place = fileURLToPath(new URL(file, import.meta.url));
  if (process.env.ACCEPT === '1') writeFileSync(place, text);
  return readFileSync(place, 'utf8');
}
