/** Words about people, words about property, and what hides the one or looks like it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { advertisingRule, advertisingStanding, checkAdvertising } from '../../src/tally/advertising.js';
import { stemOf } from '../../src/tally/stem.js';
import { advertisingTable } from '../../src/tally/tables/advertising.js';

const levels = (text: string): string[] =>
  checkAdvertising(text).map(({ level, words }) => `${level} ${words}`);

test.each([
  'no kids',
  'No pets or children.',
  'children not allowed',
  'Adults preferred',
  'mature adults',
  'adults-only living',
  'Christian family',
  'Catholic neighborhood',
  'Italian neighbourhood',
  'Mexican community nearby',
  'a black area',
  'English speakers only',
  'Christians preferred',
  'able-bodied only',
  'must be able bodied',
  'not suitable for children',
  'no handicapped',
  'women only',
  'no Muslims',
  'Middle Eastern community',
])('“%s” is refused', (text) => {
  expect(checkAdvertising(text).map(({ level }) => level)).toEqual(['block']);
});

test.each([
  'perfect for families',
  'Ideal for a young couple',
  'great for a growing family',
  'an empty nester’s dream',
  'safe street',
  'safe, quiet streets',
  'safe and friendly neighbourhood',
  'great schools',
  'award-winning school district',
  'top schools',
  'close to the synagogue',
  'two blocks from St. Mary’s Church',
  'walking distance to a mosque',
  'private community',
  'exclusive enclave',
  'deed-restricted community',
  'a traditional neighborhood',
  '55+ community',
  'bachelor pad',
])('“%s” is doubtful', (text) => {
  expect(checkAdvertising(text).map(({ level }) => level)).toEqual(['warn']);
});

test.each([
  '12 Church Street',
  'Near Church Street and Whitechapel Lane',
  'close to Temple University',
  'minutes to Chapel Hill',
  'private yard, private patio and a private entrance',
  'The backyard is private and fenced.',
  'a private primary bath',
  'traditional style house',
  'traditional two-story brick home',
  'integrated dishwasher',
  'integrated LED lighting and appliances',
  'price exclusive of closing costs',
  'exclusive use of one parking place',
  'parking restricted to one side',
  'white home with black shutters',
  'white family room',
  'trim in black, community pool',
  'Appliances: white\nCommunity pool',
  'sand-colored home',
  'cream colored house',
  'Spanish style home, French doors, Dutch colonial house',
  'Indian rug, Persian area rug, Mexican tile',
  'No Chinese drywall',
  'no black mold',
  'no wheelchair access',
  'no child safety gate at the stair',
  'single-family home',
  'a couple of blocks from the park',
  'single story, single owner',
  'master suite, mother-in-law apartment, walk-in closet',
  'perfect for entertaining',
  'ideal for a home office',
  'great for family dinners',
  'safe room, safety glass',
  'high school 0.4 miles away',
  'cathedral ceiling near the entry',
  'the island couples with the range',
  'no minor repairs left',
  'Amish-built cabinets, Christmas lights stay',
  'No steps. Children’s playhouse stays.',
  '',
  '   ',
])('“%s” describes property, or nothing', (text) => {
  expect(levels(text)).toEqual([]);
});

describe('a phrase is seen through', () => {
  test.each([
    ['doubled blanks', 'no   children'],
    ['a line break', 'no\r\nchildren'],
    ['an empty line', 'no\n\nchildren'],
    ['hyphens', 'no-children'],
    ['a dash', 'no — children'],
    ['a hyphen that is none', 'no\u2011children'],
    ['capitals', 'NO CHILDREN'],
    ['accents', 'nó chïldrén'],
    ['accents of their own', 'no\u0301 chi\u0308ldren'],
    ['a slash', 'no/children'],
    ['quotes', '“no” ‘children’'],
    ['asterisks', '*no* **children**'],
    ['a joiner of no width', 'no chil\u200ddren'],
    ['a blank of no width within a word', 'no chil\u200bdren'],
    ['a blank of no width between words', 'no\u200bchildren'],
    ['a soft hyphen', 'no chil\u00addren'],
    ['marks of direction', '\u200fno\u200e \u202achildren\u202c'],
    ['letters turned round', '\u202enerdlihc on\u202c'],
    ['full-width letters', 'ｎｏ ｃｈｉｌｄｒｅｎ'],
    ['Cyrillic letters', 'nо сhildrеn'],
    ['a possessive', 'no children’s'],
  ])('%s', (_how, text) => {
    const found = checkAdvertising(`Big lot. ${text}. Garage.`);
    expect(found).toMatchObject([{ level: 'block', rule: { id: 'F05' } }]);
  });

  it('and its place is exact, in UTF-16', () => {
    const text = '🏡🏡 Oak floors — perfect\n for  a family! Nó kids.';
    const found = checkAdvertising(text);
    expect(found.map(({ from, to, words }) => [text.slice(from, to) === words, words])).toEqual([
      [true, 'perfect\n for  a family'],
      [true, 'Nó kids'],
    ]);
    expect(found[0]?.from).toBe(text.indexOf('perfect'));
  });
});

it('findings stand in the order of the text, none over another', () => {
  const text =
    'Exclusive adult community, perfect for empty nesters; white private home. No Irish. Great schools near church.';
  const found = checkAdvertising(text);
  expect(found.map(({ level, words }) => [level, words])).toEqual([
    ['warn', 'Exclusive'],
    ['block', 'adult community'],
    ['warn', 'perfect for empty nesters'],
    ['block', 'white private home'],
    ['block', 'No Irish'],
    ['warn', 'Great schools'],
    ['warn', 'near church'],
  ]);
  for (const [i, one] of found.entries()) expect(one.from).toBeGreaterThanOrEqual(found[i - 1]?.to ?? 0);
  for (const one of found) {
    expect(one.because.length).toBeGreaterThan(20);
    expect(one.instead?.length).toBeGreaterThan(10);
    expect(one.rule).toMatchObject({ quoted: expect.stringMatching(/./u), publisher: 'US HUD' });
  }
});

it('its own advice is advice that it would not object to', () => {
  for (const { instead } of Object.values(advertisingTable().reasons))
    expect(levels(instead ?? '')).toEqual([]);
});

it('says where the guidance stands, what of photos, and what of claims', () => {
  expect(advertisingStanding()).toMatchObject({
    id: 'F07',
    quoted: 'guidance to HUD staff, not a safe harbour in court',
  });
  expect(advertisingStanding().says).toContain('withdrawn');
  expect(advertisingRule('F08')).toMatchObject({ id: 'F08', quoted: 'Equal Housing Opportunity' });
  expect(advertisingRule('F09')).toMatchObject({ id: 'F09', publisher: 'US Federal Trade Commission' });
});

it('every phrase has a reason and a status, and finds itself', () => {
  const { phrases, reasons } = advertisingTable();
  for (const { say, reason, level, status } of phrases) {
    expect(reasons).toHaveProperty(reason);
    expect(status).not.toBe('');
    // Those without choices or groups can be read as they stand.
    for (const phrase of say.filter((one) => !/[[{*,]/u.test(one))) {
      const found = checkAdvertising(phrase.replaceAll('=', ''));
      expect(
        found.map((one) => one.level),
        phrase,
      ).toEqual(level === 'fine' ? [] : [level]);
    }
  }
});

test.each([
  ['house', 'house'],
  ['churches', 'church'],
  ['families', 'family'],
  ['ladies', 'lady'],
  ['children', 'child'],
  ['nesters', 'nester'],
  ['access', 'access'],
  ['bus', 'bus'],
  ['this', 'this'],
])('the stem of %s is %s', (word, stem) => {
  expect(stemOf(word)).toBe(stem);
});

it('the demo houses’ descriptions of property give no false alarm, and the drafts’ one doubtful word none either', () => {
  const folder = new URL('../../content/', import.meta.url);
  for (const name of readdirSync(folder)) {
    const text = readFileSync(new URL(`${name}/remarks.txt`, folder), 'utf8');
    expect(levels(text)).toEqual([]);
  }
});
