/** Bags for tests: written by the program into a folder of their own, or laid out by hand. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Keys } from '../../src/archive/age-file.js';
import { BagUnreadable } from '../../src/archive/bag-source.js';
import { openBag } from '../../src/archive/open-bag.js';
import { type BagReport, unreadable, verifyBag } from '../../src/archive/verify-bag.js';
import { type BagOrder, type BagResult, bagHouse, type PayloadFile } from '../../src/archive/write-bag.js';

const made: string[] = [];

export function freshFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'sillplate-bag-'));
  made.push(folder);
  return folder;
}

export function removeFolders(): void {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
}

/** Path → text or bytes. */
export type Files = Readonly<Record<string, string | Uint8Array>>;

export function layOut(folder: string, files: Files): string {
  for (const [name, content] of Object.entries(files)) {
    const file = path.join(folder, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
  return folder;
}

export const PAYLOAD: Files = {
  'originals/house.yaml': 'house: { name: Test Lane }\n',
  'originals/photos/IMG_1.jpg': new Uint8Array([0xff, 0xd8, 0, 1, 2, 3]),
  'originals/documents/receipt é.pdf': '%PDF-1.7\n',
  'originals/documents/empty.txt': '',
  'packets/buyer/index.html': '<p>Test Lane</p>\n',
  'how-to-read.txt': 'read it\n',
};

const asPayload = (files: Files): PayloadFile[] =>
  Object.entries(files).map(([name, content]) => ({
    path: name,
    source: { bytes: typeof content === 'string' ? new TextEncoder().encode(content) : content },
  }));

/** Writes a bag of `payload`; what is not said is that of a small house. */
export function bag(
  to: string,
  order: Partial<BagOrder> & { readonly files?: Files } = {},
): Promise<BagResult> {
  const { files, ...rest } = order;
  return bagHouse({
    house: 'test-lane',
    asOf: '2026-04-11',
    to,
    shown: 'archive/test-lane',
    form: 'folder',
    description: 'The record of Test Lane',
    program: 'sillplate 0.0.0',
    payload: asPayload(files ?? PAYLOAD),
    ...rest,
  });
}

/** The name of the bag that was written; throws, with what went wrong, if none was. */
export async function written(to: string, order: Parameters<typeof bag>[1] = {}): Promise<string> {
  const result = await bag(to, order);
  if (result.kind !== 'written') throw new Error(JSON.stringify(result));
  return path.join(to, path.basename(result.shown));
}

export async function verify(file: string, keys: Keys = {}): Promise<BagReport> {
  try {
    return await verifyBag(await openBag(file, keys), 'bag');
  } catch (thrown) {
    if (thrown instanceof BagUnreadable) return unreadable('bag', thrown);
    throw thrown;
  }
}

export const messages = (report: BagReport, severity?: string): string[] =>
  report.diagnostics
    .filter((one) => severity === undefined || one.severity === severity)
    .map((one) => one.message);
