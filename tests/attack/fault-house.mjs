/**
 * A folder with all that a fault may hit: two houses with facts, photos, receipts, costs, deliveries and what an import
 * remembers, their packets, a bag, and a bank's file.
 */
import { cpSync, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';

export const HOUSE = 'test-lane';
export const OTHER = 'other-lane';

/**
 * Paths of folders in `scratch`, by their names.
 * @template {string} Name
 * @param {string} scratch
 * @param {Name[]} names
 */
export const foldersIn = (scratch, ...names) =>
  /** @type {Record<Name, string>} */ (
    Object.fromEntries(names.map((name) => [name, path.join(scratch, name)]))
  );

/** Comments, an order of its own and line ends that must stay. */
const factsOf = (/** @type {string} */ name) => `# the house of the attacks
house:
  name: ${name}
  address: { city: Fallow Mills, state: OH }
  kind: detached
  built: 2001
levels: [{ id: main, name: Main level, grade: above }]
rooms:
  - { id: kitchen, level: main, use: kitchen, size: 10' x 12' }   # a comment that must stay
# what was done
work:
  # the floor first
  - id: floor        # oak
    what: kitchen floor
    did: new
    where: [kitchen]
    started: 2026-04-13
    done: 2026-04-17
    by: owner
documents:
  - { id: bill, what: receipt for boards, kind: receipt, file: bill.pdf, date: 2026-01-05 }
photos:
  IMG_0001: { shows: kitchen floor, when: before, alt: A floor., where: kitchen }
  # more to come
`;
const COSTS =
  'date,what,payee,amount,bucket,receipt\r\n2026-01-05,boards,Lane Lumber,120.50,improvement,bill\r\n';

/** @param {number} from @param {number} rows */
const bankOf = (from, rows) =>
  `Posting Date,Description,Amount\n${Array.from(
    { length: rows },
    (_, n) =>
      `2026-02-${String(((from + n) % 28) + 1).padStart(2, '0')},Shop ${from + n},-${10 + from + n}.25`,
  ).join('\n')}\n`;

/** A PDF of one empty sheet. */
const PDF =
  '%PDF-1.7\n1 0 obj\n<</Type/Catalog/Pages 2 0 R>>\nendobj\n2 0 obj\n<</Type/Pages/Kids[3 0 R]/Count 1>>\nendobj\n3 0 obj\n<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]>>\nendobj\nxref\n0 4\n0000000000 65535 f \n0000000009 00000 n \n0000000054 00000 n \n0000000105 00000 n \ntrailer\n<</Size 4/Root 1 0 R>>\nstartxref\n172\n%%EOF\n';

/** @param {string} when @param {string} colour */
const photo = (when, colour) =>
  sharp({ create: { width: 120, height: 90, channels: 3, background: colour } })
    .withExif({ IFD2: { DateTimeOriginal: when } })
    .jpeg()
    .toBuffer();

/** @param {string} home */
export const houseIn = (home, name = HOUSE) => path.join(home, 'content', name);

/** Writes the folder anew; nothing has been made of it yet. @param {string} home */
export async function writeFaultHouse(home) {
  rmSync(home, { recursive: true, force: true });
  const pictures = [
    ['IMG_0001.jpg', await photo('2026:04:10 09:14:02', '#94a3a8')],
    ['IMG_0002.jpg', await photo('2026:04:17 17:00:00', '#a8a394')],
  ];
  for (const [name, title] of [
    [HOUSE, 'Test Lane'],
    [OTHER, 'Other Lane'],
  ]) {
    const folder = houseIn(home, name);
    mkdirSync(path.join(folder, 'photos'), { recursive: true });
    mkdirSync(path.join(folder, 'documents'));
    mkdirSync(path.join(folder, 'imports'));
    writeFileSync(path.join(folder, 'house.yaml'), factsOf(title ?? ''));
    writeFileSync(path.join(folder, 'costs.csv'), COSTS);
    writeFileSync(path.join(folder, 'documents', 'bill.pdf'), PDF);
    // What an import of a month before remembers.
    writeFileSync(
      path.join(folder, 'imports', 'seen.csv'),
      'date,amount,text,reference,nth,became,payee\n2026-02-01,-10.25,Shop 0,,1,left-out,\n',
    );
    for (const [file = '', bytes = ''] of pictures)
      writeFileSync(path.join(folder, 'photos', String(file)), bytes);
  }
  writeFileSync(path.join(home, 'bank.csv'), bankOf(0, 40));
}

/** A copy of a folder that was made before, with the times of its files. @param {string} from @param {string} to */
export function copyHome(from, to) {
  rmSync(to, { recursive: true, force: true });
  if (existsSync(from)) cpSync(from, to, { recursive: true, preserveTimestamps: true });
}
