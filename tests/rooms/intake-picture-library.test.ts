/** Where the library of pictures is not installed for this machine, photos and papers are left out, and it is said why. */
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { undrawnPapers } from '../../src/house-photos.js';
import { lookAtPhoto } from '../../src/intake/look-at-photo.js';
import { paperPlates } from '../../src/intake/paper-plates.js';
import { houseFrom } from './house-from.js';

vi.mock('sharp', () => {
  throw new Error('Could not load the "sharp" module using the linux-x64 runtime');
});

const content = fileURLToPath(new URL('../../content/quarry-road/', import.meta.url));
const WHY = 'the part that reads and draws pictures is not installed for this machine';
let root: string;
beforeAll(() => {
  root = mkdtempSync(path.join(tmpdir(), 'sillplate-no-library-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

it('a photo that is whole is not called broken', async () => {
  const name = 'IMG_0412.jpg';
  const looked = await lookAtPhoto({
    id: 'one',
    name,
    original: path.join(content, 'photos', name),
    huge: false,
  });
  expect(looked).toEqual({
    trouble: {
      message: `photos/${name} can’t be read: ${WHY}`,
      hints: ['install sillplate again, with what npm calls optional:  npm install --include=optional'],
    },
  });
});

it('a paper that is whole is not called damaged, and nothing is kept that would say so later', async () => {
  const file = 'receipt.pdf';
  const bytes = readFileSync(path.join(content, 'documents/permit-bp.pdf'));
  const paper = {
    file,
    path: path.join(content, 'documents/permit-bp.pdf'),
    bytes: bytes.length,
    sha256: createHash('sha256').update(bytes).digest('hex'),
  };
  const cache = path.join(root, 'cache');
  const plates = await paperPlates({ papers: new Map([['receipt', paper]]), cache });
  expect(plates.get('receipt')).toEqual({ pages: [], of: 0, noLibrary: true });
  expect(existsSync(cache)).toBe(false);
  const house = houseFrom({ documents: [{ id: 'receipt', what: 'Receipt', kind: 'receipt', file }] });
  const said = undrawnPapers(new Map([...plates].map(([id, drawn]) => [id, { ...drawn, paper }])), house);
  expect(said.map(({ message }) => message)).toEqual([
    `documents/${file} can’t be shown beside its rows: ${WHY}`,
  ]);
});
