/** The files of documents: their size and digest, and one paper under two names. */
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readLedger } from '../../src/intake/read-ledger.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const folder = mkdtempSync(path.join(tmpdir(), 'sillplate-papers-'));
mkdirSync(path.join(folder, 'documents'));
const put = (name: string, bytes: string | Buffer): void =>
  writeFileSync(path.join(folder, 'documents', name), bytes);
put('a.pdf', 'one');
put('b.pdf', 'one');
put('c.pdf', Buffer.alloc(3_000_000, 7));
symlinkSync(tmpdir(), path.join(folder, 'documents', 'out'));
afterAll(() => rmSync(folder, { recursive: true }));

type DocumentSpec = NonNullable<PartialSpec['documents']>[number];

const read = async (...documents: Omit<DocumentSpec, 'what'>[]) => {
  const house = houseFrom({ documents: documents.map((one) => ({ what: 'paper', ...one }) as DocumentSpec) });
  const { ledger, diagnostics } = await readLedger(folder, 'house', house);
  return {
    papers: [...ledger.papers],
    said: diagnostics.map(
      ({ severity, code, path: where, message }) => `${severity} ${code} ${where?.join('.')} ${message}`,
    ),
    hints: diagnostics.flatMap(({ hints }) => hints),
  };
};

describe('the papers', () => {
  it('are known by their bytes, in the order of the documents', async () => {
    const { papers, said } = await read(
      { id: 'large', kind: 'record', file: 'c.pdf' },
      { id: 'kept', kind: 'record', kept: 'binder' },
      { id: 'small', kind: 'receipt', file: 'a.pdf' },
    );
    expect(said).toEqual([]);
    expect(papers.map(([id, { file, bytes, sha256 }]) => [id, file, bytes, sha256])).toEqual([
      ['large', 'c.pdf', 3_000_000, createHash('sha256').update(Buffer.alloc(3_000_000, 7)).digest('hex')],
      // FIPS 180-4 digest of "one", as sha256sum prints it.
      ['small', 'a.pdf', 3, '7692c3ad3540bb803c020b3aee66cd8887123234ea0c6e7143c0add73ff431ed'],
    ]);
    expect(papers[1]?.[1].path).toMatch(/documents[/\\]a\.pdf$/);
  });

  it('two receipts or invoices with the same bytes are an error', async () => {
    const { said, hints } = await read(
      { id: 'first', kind: 'receipt', file: 'a.pdf' },
      { id: 'second', kind: 'invoice', file: 'b.pdf' },
    );
    expect(said).toEqual([
      'error intake.receipt-twice documents.1.file “second” is the same paper as “first”: their files are alike to the last byte',
    ]);
    expect(hints).toEqual([
      'take second out under documents:, and write first into its rows of the cost sheet',
    ]);
  });

  it('any other two are a warning', async () => {
    const { said } = await read(
      { id: 'first', kind: 'receipt', file: 'a.pdf' },
      { id: 'second', kind: 'warranty', file: 'a.pdf' },
    );
    expect(said).toEqual([
      'warning intake.receipt-twice documents.1.file “second” and “first” are one file, documents/a.pdf',
    ]);
  });

  it('that are not there or lie outside are left to where documents are checked', async () => {
    expect(
      await read(
        { id: 'x', kind: 'receipt', file: 'absent.pdf' },
        { id: 'y', kind: 'receipt', file: '../x.pdf' },
        { id: 'z', kind: 'receipt', file: 'out' },
      ),
    ).toEqual({ papers: [], said: [], hints: [] });
  });
});
