import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli.js';
import { retyped } from '../../src/retyped-commands.js';
import { quietProgress } from '../tools/quiet-progress.js';

const plain = { npx: false, content: undefined };
const npx = { ...plain, npx: true };
const houses = { ...plain, content: 'houses' };

describe('a command in a message', () => {
  it.each([
    ['to see it, type  sillplate check elm  again', npx, 'to see it, type  npx sillplate check elm  again'],
    ['  sillplate build elm\n', npx, '  npx sillplate build elm\n'],
    ['Examples:\n  sillplate serve  look', npx, 'Examples:\n  npx sillplate serve  look'],
    ['type  sillplate --help  to see', npx, 'type  npx sillplate --help  to see'],
    ['all of them:  sillplate deliveries\n', houses, 'all of them:  sillplate deliveries --content houses\n'],
    ['start  sillplate serve  again', houses, 'start  sillplate serve --content houses  again'],
    [
      '  do: type  sillplate remarks draft.txt elm\u001b[0m\n',
      houses,
      '  do: type  sillplate remarks draft.txt elm --content houses\u001b[0m\n',
    ],
    [
      'type  sillplate remarks - elm < a.txt\n',
      houses,
      'type  sillplate remarks - elm < a.txt --content houses\n',
    ],
    [
      'type  sillplate costs import a.csv elm',
      { npx: true, content: '"my houses"' },
      'type  npx sillplate costs import a.csv elm --content "my houses"',
    ],
  ])('is told as it works there: %j', (text, called, expected) => {
    expect(retyped(text, called)).toBe(expected);
  });

  it.each([
    // Its house says the folder, it takes none, or it says one.
    ['type  sillplate check houses/elm  again', houses],
    ['type  sillplate new houses/elm  to begin one', houses],
    ['type  sillplate --help  to see', houses],
    ['type  sillplate check --content b  again', houses],
    ['type  sillplate check --help  to see', houses],
    // Words of a house, and no command.
    ['the sillplate of the porch is new', npx],
    ['  sillplate of the porch', npx],
    ['made by sillplate check', npx],
    ['type  sillplate check elm  again', plain],
  ])('stays as it is: %j', (text, called) => {
    expect(retyped(text, called)).toBe(text);
  });
});

describe('the program', () => {
  async function said(words: readonly string[], npx: boolean): Promise<string> {
    let all = '';
    const write = (text: string): void => {
      all += text;
    };
    await run(words, { out: write, error: write, colour: false, npx, progress: quietProgress });
    return all;
  }

  it('says how it was started and where its houses lie', async () => {
    expect(await said(['check', 'nohouse', '--content', 'tests/houses'], true)).toContain(
      'npx sillplate new tests/houses/',
    );
    expect(await said(['deliver', '--content', 'tests/houses', '--edition', 'buyer'], false)).toContain(
      ' --content tests/houses\n',
    );
    expect(await said(['--help'], true)).toContain('\n  npx sillplate check my-house  ');
  });

  it('says nothing of it to a program', async () => {
    const json = await said(['check', 'nohouse', '--content', 'tests/houses', '--format', 'json'], true);
    expect(json).toContain('sillplate new');
    expect(json).not.toContain('npx');
  });
});
