/** "Parking for two cars", "off-street parking", "driveway parking": where the folder parks every car on the street. */
import type { Judgement, Known } from '../items/known.js';
import { parksOnStreet } from '../items/shelters.js';
import { matches, type SetPhrase } from './set-phrases.js';

const ON_THE_LOT =
  /\b(?:off[- ]street|private|assigned|deeded|reserved|gated|covered|on[- ]?site|rear|side|secured?)(?: and \w+)? parking\b|\bparking (?:pad|space|spot|stall|place)s?\b|\b(?:two|three|four|\d)[- ](?:car|vehicle|space) parking\b|\b(?:two|three|four|\d) (?:parking (?:spaces|spots|stalls|places)|off[- ]street (?:spaces|spots))\b|\bpark(?:ing)? (?:for )?(?:two|three|four|\d|several|multiple|your) (?:cars?|vehicles?)\b|\broom (?:to park|for) (?:two|three|four|\d) (?:cars?|vehicles?)\b|\bparking (?:in the rear|out back|behind|in back|on the lot|on site)\b/gi;

const NOT_SO =
  /\b(no|not|without|street|never|lacks?|nor|permit|neighbou?rhood|nearby|could|add)\b[^.;!?]{0,24}$/i;

export function streetParking(known: Known, sentence: string): SetPhrase[] {
  const { parking } = known.house.house;
  if (!/park|cars|vehicles/i.test(sentence) || parking === undefined || !parksOnStreet(known.house))
    return [];
  const judgement: Judgement = {
    verdict: 'contradicted',
    rule: 'other-kind',
    because: 'the folder says that cars are parked on the street',
    facts: [{ path: ['house', 'parking'], words: `parking: ${parking.value}`, evidence: parking.evidence }],
    instead: 'street parking',
  };
  return matches(ON_THE_LOT, sentence).flatMap(({ index, 0: said }) =>
    NOT_SO.test(sentence.slice(0, index)) ? [] : [{ from: index, to: index + said.length, judgement }],
  );
}
