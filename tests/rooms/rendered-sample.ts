/** Renders packets for the tests of the web room, and reads their HTML without a browser. */
import { copyFile, mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { OutputFile } from '../../src/packet/packet.js';

/** The pages among the files: path and HTML. */
export function htmlOf(files: readonly OutputFile[]): Map<string, string> {
  const pages = new Map<string, string>();
  for (const file of files)
    if (file.path.endsWith('.html') && 'text' in file) pages.set(file.path, file.text);
  return pages;
}

const ENTITIES: Record<string, string> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  '#39': "'",
  '#92': '\\',
  '#96': '`',
};

/** Undoes escaping. Enough for what autoescape writes; an unknown entity throws. */
export function decoded(html: string): string {
  return html.replace(/&([a-z0-9#]+);/g, (_, name: string) => {
    const character = ENTITIES[name];
    if (character === undefined) throw new Error(`entity ${name} is not one that autoescape writes`);
    return character;
  });
}

/** What a reader sees of a page, with spaces made single. */
export function textOf(html: string): string {
  return spaced(decoded(html.replace(/<[^>]*>/g, '')));
}

export function spaced(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/** All values of one attribute, decoded, in order. */
export function attributes(html: string, name: string): string[] {
  return [...html.matchAll(new RegExp(`\\s${name}="([^"]*)"`, 'g'))].map((match) => decoded(match[1] ?? ''));
}

/** Writes files into a new temporary folder and answers with its path. */
export async function writtenToDisk(files: readonly OutputFile[]): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'sample-pages-'));
  for (const file of files) {
    const to = join(folder, file.path);
    await mkdir(dirname(to), { recursive: true });
    if ('copyOf' in file) await copyFile(file.copyOf, to);
    else await writeFile(to, 'text' in file ? file.text : file.bytes);
  }
  return folder;
}
