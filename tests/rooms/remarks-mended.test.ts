/** The words that a report proposes fit in place of what it underlines, and are true. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { House } from '../../src/facts/house.js';
import { readHouse } from '../../src/intake/read-house.js';
import { checkRemarks } from '../../src/tally/remarks/check-remarks.js';
import { mendFindings } from '../../src/tally/remarks/mend/mend-findings.js';
import { deriveTally, type Tally } from '../../src/tally/tally.js';
import { LABELLED_AS_OF, labelledHouses } from '../remarks/corpus.js';
import { isWrong, markedAgain, mendText } from '../remarks/mend-text.js';

const root = new URL('../../', import.meta.url);
const DEMOS = ['quarry-road', 'larkspur-court'] as const;

interface Checked {
  readonly house: House;
  readonly tally: Tally;
}

async function checkedHouse(folder: string, name: string): Promise<Checked> {
  const { found } = await readHouse(folder, name, {});
  if (found === undefined) throw new Error(`${name} has errors`);
  return { house: found.house, tally: deriveTally(found.house, LABELLED_AS_OF).tally };
}

const demo = (name: string): Promise<Checked> =>
  checkedHouse(fileURLToPath(new URL(`content/${name}`, root)), name);

function mended(text: string, { house, tally }: Checked): ReturnType<typeof mendText> & { again: string[] } {
  const findings = mendFindings(text, checkRemarks(text, house, tally), house, tally);
  const done = mendText(text, findings);
  const again = markedAgain(done.put, checkRemarks(done.text, house, tally));
  return { ...done, again: again.map(({ finding }) => `“${finding.says}” → “${finding.instead}”`) };
}

describe('a mended draft', () => {
  it.each(DEMOS)(
    'of %s is marked nowhere again where words were put in, and keeps its limit',
    async (name) => {
      const known = await demo(name);
      const text = readFileSync(new URL(`content/${name}/remarks.txt`, root), 'utf8');
      const { text: after, put, again } = mended(text, known);
      expect(again).toEqual([]);
      expect(put.length).toBeGreaterThan(6);
      expect(after.trim().length).toBeLessThan(known.house.listing?.['remarks-limit'] ?? 0);
    },
  );

  it.each(labelledHouses(root, 'seen'))(
    'of $name in the seen half is marked nowhere again',
    async (labelled) => {
      const known = await checkedHouse(labelled.folder, labelled.name);
      const again = labelled.remarks.flatMap(({ id, text }) =>
        mended(text, known).again.map((words) => `${id} ${words}`),
      );
      expect(again).toEqual([]);
    },
  );
});

/** [draft, what is put in place of what]; undefined: to be left out. Of quarry-road. */
const WORDS: readonly (readonly [draft: string, says: string, instead: string | undefined])[] = [
  ['Enjoy the 2016 roof.', '2016 roof', '2019 roof'],
  ['It has a new electric range.', 'new electric range', 'second-hand electric range'],
  ['The bath has a new tub.', 'new tub', 'refinished tub'],
  ['Three bedrooms and two baths.', 'two baths', 'one full and one half bath'],
  ['3 BR / 2 BA on a nice lane.', '2 BA', '1 full and 1 half bath'],
  ['It sits on a quarter acre.', 'quarter acre', '0.21-acre lot'],
  ['Over 1,500 square feet of living space.', 'Over 1,500 square feet', '1,436 square feet'],
  ['All new plumbing.', 'All new plumbing', 'Some new plumbing'],
  ['BRAND NEW FURNACE.', 'BRAND NEW FURNACE', '2009 FURNACE'],
  ['Gas water heater.', 'Gas water heater', 'Electric water heater'],
  ['Granite counters in the kitchen.', 'Granite counters', 'Quartz counters'],
  ['The cellar is finished.', 'cellar is finished', 'cellar is unfinished'],
  ['It has a two-car garage.', 'two-car garage', 'one-car garage'],
  ['Laundry on main level.', 'Laundry on main level', 'Laundry in the cellar'],
  ['Attached garage.', 'Attached garage', 'Detached garage'],
  ['Dry cellar.', 'Dry cellar', undefined],
  ['Never flooded.', 'Never flooded', undefined],
];

describe('the words in place of what is wrong', async () => {
  const known = await demo('quarry-road');
  const { house, tally } = known;

  it.each(WORDS)('%s', (draft, says, instead) => {
    const wrong = mendFindings(draft, checkRemarks(draft, house, tally), house, tally).filter(isWrong);
    expect(wrong.map((one) => [one.says, one.instead])).toContainEqual([says, instead]);
  });

  it('say which permits are closed, and which is open', () => {
    const draft = 'Nice house. All work\r\npermitted. Come and see.';
    const [finding] = mendFindings(draft, checkRemarks(draft, house, tally), house, tally).filter(isWrong);
    expect(finding?.says).toBe('All work\r\npermitted');
    expect(finding?.instead).toBe('Plumbing, electrical and roof permits closed; porch steps permit open');
    expect(finding?.because).toContain('the permit is still open: front steps');
  });

  it('take the article that goes with them', () => {
    const draft = 'The cook gets a gas range.';
    const [finding] = mendFindings(draft, checkRemarks(draft, house, tally), house, tally).filter(isWrong);
    expect([finding?.says, finding?.instead]).toEqual(['a gas range', 'an electric range']);
  });

  it('name what is in the way', () => {
    const draft = 'A brand new kitchen with sage cabinets.';
    const [finding] = mendFindings(draft, checkRemarks(draft, house, tally), house, tally).filter(isWrong);
    expect(finding?.because).toBe('refinished in 2026: kitchen cabinet boxes');
  });
});
