/** Tables as the build lays them down beside the program. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { hasTable, madeTable, tablesRead } from '../../src/tally/read-table.js';
import { askedQuestions } from '../../src/tally/tables/questions.js';

const folder = mkdtempSync(path.join(tmpdir(), 'sillplate-tables-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a table made when the program was built', () => {
  test('is read where it lies', () => {
    writeFileSync(path.join(folder, 'sills.json'), '{"sill":44}');
    const there = pathToFileURL(`${folder}/`);
    expect(madeTable('sills', there)).toEqual({ sill: 44 });
    expect(madeTable('lintels', there)).toBeUndefined();
  });

  test('is not there beside the source, which is read itself', () => {
    expect(madeTable('questions')).toBeUndefined();
    expect(hasTable('questions')).toBe(true);
    expect(hasTable('duties/us-zz')).toBe(false);
    const { length } = askedQuestions();
    expect(tablesRead().get('questions')).toMatchObject({ questions: { length } });
  });
});
