/** Which questions and which answers a fact is held against: each word that is looked for, and one near it that is not. */
import { describe, expect, it } from 'vitest';
import { clashesOf, placesOf } from './clashes-as-text.js';
import type { PartialSpec } from './house-from.js';

const answered = (ask: string, answer: string, more: PartialSpec = {}): string[] =>
  placesOf({ spec: { ...more, answers: [{ ask, answer }] } });
const CLASH = ['answers[0].answer'];

describe('how old a thing is', () => {
  const furnace: PartialSpec = { systems: [{ id: 'f', is: 'furnace, gas', installed: 1998 }] };
  it.each([
    'How old is furnace',
    'How old is your furnace??',
    'How old are the furnace?',
    'When was the furnace put in?',
    'When were the furnace installed ?',
    'What year is the furnace from?',
    'Age of the furnace',
  ])('is asked by “%s”', (ask) => {
    expect(answered(ask, 'Installed in 2005.', furnace)).toEqual(CLASH);
  });
  it.each(['Say how old is the furnace', 'How old is the furnace filter?', 'How old is the furnace 2?'])(
    'is not asked by “%s”',
    (ask) => {
      expect(answered(ask, 'Installed in 2005.', furnace)).toEqual([]);
    },
  );
  it.each([
    'Installed in 1985.',
    'It was installed in 2005.',
    'The gas furnace is from 2005.',
    'They were put in in 2005.',
    'New 2105.',
    'Of 2005; its filter of 2019.',
  ])('is answered by “%s”', (answer) => {
    expect(answered('How old is the furnace?', answer, furnace)).toEqual(CLASH);
  });
  it.each([
    'We had it installed in 2005.',
    'The no. 5 furnace was installed in 2005.',
    'Installed in 1505.',
    'Installed perhaps in 2005.',
    'Installed in 2005?',
    'New about 2005.',
  ])('is left open by “%s”', (answer) => {
    expect(answered('How old is the furnace?', answer, furnace)).toEqual([]);
  });
});

describe('sewer or septic tank', () => {
  it.each([
    'Is it on sewer?',
    'Is it on a sewer?',
    'Is it on the public sewer?',
    'Is the house on town sewer?',
    'Is the sewer connected?',
    'What kind of sewer is there?',
    ' Septic? ',
    'Is there a septic tank?',
    'Do you have a septic tank?',
    'Where does the sewer pipe go?',
  ])('is asked by “%s”', (ask) => {
    expect(answered(ask, ' Septic tank.', { house: { sewer: 'public' } })).toEqual(CLASH);
  });
  it.each(['Who cleans the septic tank?', 'Is the old sewer sound?'])('is not asked by “%s”', (ask) => {
    expect(answered(ask, 'Septic tank.', { house: { sewer: 'public' } })).toEqual([]);
  });
  it('is not known where the fact names neither', () => {
    expect(answered('Sewer or septic?', 'Septic tank.', { house: { sewer: 'see the survey' } })).toEqual([]);
    expect(
      answered('Sewer or septic?', 'Ask me of the septic tank.', { house: { sewer: 'public' } }),
    ).toEqual([]);
    expect(answered('City water?', 'Ask me.', { house: { water: 'private well' } })).toEqual([]);
    expect(answered('Sewer or septic?', 'not known', { house: { sewer: 'public' } })).toEqual([]);
  });
});

describe('a well or town water', () => {
  it.each([
    'Is it well water?',
    'Is the water public?',
    'City water?',
    'Where does the water come from?',
    'What is the source of the water?',
    'Who has the water supply?',
  ])('is asked by “%s”', (ask) => {
    expect(answered(ask, 'Public.', { house: { water: 'private well' } })).toEqual(CLASH);
  });
  it.each([
    'Is the water hot?',
    'Does well water come into the house by the cellar?',
    'Is the cellar water from a well?',
    'Can the well water be seen in the basement?',
    'Was the well water tested?',
    'Who made the test of the city water?',
    'What is the city water bill?',
    'What is the pressure of the town water?',
  ])('is not asked by “%s”', (ask) => {
    expect(answered(ask, 'Public.', { house: { water: 'private well' } })).toEqual([]);
  });
});

describe('dues', () => {
  const none = (ask: string, answer = 'none', to = 'Heron Lane Owners'): string[] =>
    answered(ask, answer, { dues: [{ to, amount: '64.00', per: 'month' }] });
  it.each([
    'Are there association dues?',
    'Is there an HOA',
    ' Are there any dues? ',
    'are there owners’ dues?',
  ])('are asked for by “%s”', (ask) => {
    expect(none(ask)).toEqual(CLASH);
  });
  it.each([
    'Say, are there dues?',
    'Are there taxes?',
    'Are there unpaid dues?',
    'Are there overdue association dues?',
    'Are there late dues?',
    'Are there special dues of the association?',
    'Are there planned increases of the dues?',
    'Is there an increase of dues to come?',
    'Is there a lawsuit of the association?',
    'Are there violations of the rules of the association?',
    'Are there other dues?',
    'Is there a violation known to the association?',
    'Is there a rule of the association?',
  ])('are not asked for by “%s”', (ask) => {
    expect(none(ask)).toEqual([]);
  });
  it('are denied by none and by no, and by nothing that says more', () => {
    for (const answer of ['None.', '(no)', 'No']) expect(none('Are there dues?', answer)).toEqual(CLASH);
    for (const answer of ['There are none.', 'None until 2026.', 'not known'])
      expect(none('Are there dues?', answer)).toEqual([]);
  });
  it('of a district are none of an association’s', () => {
    expect(none('Are there association dues?', 'none', 'lighting district')).toEqual([]);
    expect(none('Are there dues?', 'none', 'lighting district')).toEqual(CLASH);
  });
});

describe('lead', () => {
  const lead = (known: string, more: PartialSpec): string[] =>
    placesOf({ spec: { ...more, lead: { known } } });
  const noted = (what: string): PartialSpec => ({ conditions: [{ what }] });
  const FOUND = noted('lead paint was found');

  it.each([
    '“None known”',
    'Nothing found',
    'no lead',
    'no known lead',
    'No hazard known',
    'no hazards',
    'no test found any',
    'no tests showed any',
  ])('is denied by “%s”', (known) => {
    expect(lead(known, FOUND)).toEqual(['lead.known']);
  });
  it.each([
    'Lead paint; none was removed',
    'no report',
    'none, except the porch',
    'nothing other than the porch',
  ])('is not denied by “%s”', (known) => {
    expect(lead(known, FOUND)).toEqual([]);
  });

  it.each([
    'positive of lead',
    'lead was found',
    'lead paint were detected',
    'lead-based paint is present',
    'the test found lead',
    'rooms with known lead paint',
    'it has confirmed lead-based paint',
  ])('is told by “%s”', (what) => {
    expect(lead('none known', noted(what))).toEqual(['lead.known']);
  });
  it.each([
    ...['no', 'not', 'never', 'without', 'if', 'whether', 'may', 'unless', 'until', 'water', 'solder'],
    ...['pipe', 'pipes', 'soil', 'isn’t', "isn't"],
  ])('is not told by words with “%s”', (word) => {
    expect(lead('none known', noted(`${word} lead was found`))).toEqual([]);
  });

  const yes = (ask: string, answer = 'Yes.'): string[] => lead('none known', { answers: [{ ask, answer }] });
  it.each([
    ' Is there lead paint? ',
    'Are there any known lead hazards?',
    'Were there lead paints?',
    'Was any lead found?',
    'Has lead paint been found?',
    'Was lead-based paint detected?',
    'Was lead detected?',
    'Did the paint test positive for lead?',
  ])('is what a bare yes says to “%s”', (ask) => {
    expect(yes(ask, '– yes.')).toEqual(['lead.known']);
    expect(yes(ask, 'Ask me, I say yes.')).toEqual([]);
    expect(yes(ask, 'Yes, perhaps.')).toEqual([]);
  });
  it.each([
    'Say, is there lead paint?',
    'Was there a test for lead?',
    'Is there lead in the water?',
    'Are there lead pipes?',
    'Is there any lead pipe?',
    'Is there lead solder?',
    'Is there lead in the soil?',
    'Is there lead flashing?',
    'Did the water test positive for lead?',
  ])('is not what a bare yes says to “%s”', (ask) => {
    expect(yes(ask)).toEqual([]);
  });
  it('is told by its sentence, and by the first of a bare yes', () => {
    expect(yes('Is there lead paint?', 'Yes? Perhaps.')).toEqual([]);
    expect(yes('Is there lead paint?', 'Yes; not much. It is dry.')).toEqual(['lead.known']);
    expect(yes('Is there lead paint?', 'Yes, not sure. It is dry.')).toEqual([]);
    const [clash] = clashesOf({
      spec: { ...noted('Dry. At 2.5 ft lead paint was found.'), lead: { known: 'none known' } },
    });
    expect(clash?.message).toContain('another place says “At 2.5 ft lead paint was found”');
  });
});
