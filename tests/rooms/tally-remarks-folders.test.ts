/** Drafts about the golden houses and about those of the labelled remarks that may be read: what each folder leaves open. */
import { expect, it } from 'vitest';
import { checkOf, linesFound } from './remarks-of.js';

/** A house, a draft, and all that is found in it: verdict, rule, the characters underlined. Judged by reading the folders. */
const CASES: readonly (readonly [house: string, draft: string, ...found: string[]])[] = [
  ['alder-square', 'The floors are operational', 'no-fact condition.works: floors are operational'],
  ['alder-square', 'The garage floor has no cracks', 'contradicted condition.listed: no cracks'],
  ['alder-square', 'The original kitchen', 'contradicted newness.original: original kitchen'],
  [
    'chandler-row',
    'The bath permit was pulled by a contractor',
    'backed who.professional: bath permit was pulled by a contractor',
    'backed permit: permit was pulled',
  ],
  ['chandler-row', 'The bedroom was not painted'],
  [
    'chandler-row',
    'The kitchen got its countertop with a permit',
    'no-fact permit: countertop with a permit',
  ],
  ['chandler-row', 'There is no working opener'],
  ['foundry-steps', 'Half bath: no permit', 'backed permit: Half bath: no permit'],
  ['foundry-steps', 'The appliances were not painted'],
  ['foundry-steps', 'The fireplaces are not working', 'backed there: fireplaces'],
  [
    'foundry-steps',
    'Wood-burning fireplace in the family room',
    'contradicted condition.out-of-use: fireplace',
  ],
  ['foundry-steps', 'street laundry permit'],
  ['larkspur-court', 'A door to the alcove upstairs'],
  [
    'larkspur-court',
    'A kitchen and a bright family room, about 2,162 square feet',
    'opinion praise: bright',
    'backed size.living-area: 2,162 square feet',
  ],
  ['larkspur-court', 'A pedestal sink'],
  ['larkspur-court', 'Stairs to the basement', 'contradicted other-kind: basement'],
  ['larkspur-court', 'The roof is a few years old', 'contradicted newness.young: roof is a few years old'],
  ['larkspur-court', 'Two bedrooms share a bath'],
  ['madrone-steps', 'The slab never had a problem', 'contradicted kind.foundation-kind: slab'],
  ['madrone-steps', 'Tub with a fresh glaze (Aug. WELL:', 'no-fact newness.new: WELL'],
  ['madrone-steps', 'Well: drilled at 400 ft', 'contradicted size.feet: 400 ft'],
  ['millrace-lane', 'Ducts throughout'],
  ['millrace-lane', 'Refaced cabinets', 'backed newness.refaced: Refaced cabinets'],
  [
    'millrace-lane',
    'The plumbing permit was pulled by the owner',
    'contradicted permit.taken: plumbing permit was pulled by the owner',
    'backed permit: permit was pulled',
  ],
  ['millrace-lane', 'works 2018, 10/2026.', 'backed date.year: works 2018'],
  ['pecan-bend', 'There is no second bath', 'contradicted not-there: bath'],
  [
    'pecan-bend',
    'Upstairs baths are new',
    'contradicted count.storeys: Upstairs baths',
    'contradicted place: baths',
  ],
  ['sedge-point', 'Not on city sewer', 'contradicted kind.sewer-kind: city sewer'],
  ['sedge-point', "The hall and the owner's bath, too"],
  [
    'sedge-point',
    'The interior was professionally redone',
    'backed newness.updated: interior was professionally redone',
    'backed who.professional: professionally',
  ],
  ['split-level', 'A bath off the hall'],
  ['split-level', 'A newer system', 'contradicted newness.newer: newer system'],
  ['split-level', 'A walk-out basement', 'no-fact there: walk-out basement'],
  ['split-level', 'Detached garage', 'contradicted other-kind: Detached garage'],
  ['split-level', 'Neither kitchen nor rec room was touched'],
  ['split-level', 'Refaced cabinets', 'no-fact newness.refaced: Refaced cabinets'],
  [
    'split-level',
    'The interior was done by a painter',
    'no-fact who.professional: interior was done by a painter',
  ],
  ['split-level', 'There is a second bath', 'contradicted count.baths: second bath'],
  [
    'tern-hammock',
    'recent repainted 2025;',
    'backed date.year: recent repainted 2025',
    'backed newness.painted: repainted',
  ],
  ['tiny-cottage', '200A panel', 'no-fact size.rating: 200A panel'],
  ['tiny-cottage', 'A bedroom built to code'],
  ['tiny-cottage', 'A steel tub in the bath', 'no-fact not-told: steel tub'],
  ['tiny-cottage', 'Knob and tube removed', 'no-fact kind.wiring-material: Knob and tube'],
  ['tiny-cottage', 'Living area: 18'],
  ['tiny-cottage', 'New furnace filter', 'no-fact not-told: New furnace filter'],
  ['tiny-cottage', 'The addition created a living area and was done with permits'],
  ['tiny-cottage', 'The baths were retiled.', 'backed newness.replaced: baths were retiled'],
  ['tiny-cottage', 'laundry not ours convey.', 'no-fact conveys.goes: laundry not ours convey'],
];

it.each(CASES.map(([house, draft, ...found]) => [house, draft, found] as const))(
  '%s: %s',
  async (house, draft, found) => {
    const check = await checkOf(house);
    expect(linesFound(check(draft))).toEqual(found);
  },
);
