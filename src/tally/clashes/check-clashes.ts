/** All that can't be true together, over the whole folder: one family of pairs a file. Start reading at `clash.ts`. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { answersAndFacts } from './answers-and-facts.js';
import { answersAndDues, answersAndServices } from './answers-and-services.js';
import { bedrooms } from './bedrooms.js';
import type { ClashSources } from './clash.js';
import { costsAndWork } from './costs-and-work.js';
import { evidenceDates } from './evidence-dates.js';
import { finishAndWork } from './finish-and-work.js';
import { keptAndDone } from './kept-and-done.js';
import { leadKnown } from './lead-known.js';
import { lotAndFootprint } from './lot-and-footprint.js';
import { newInWords } from './new-in-words.js';
import { olderThanHouse } from './older-than-house.js';
import { oneThingTwoWords } from './one-thing-two-words.js';
import { ownerAndDates } from './owner-and-dates.js';
import { paidImprovements } from './paid-improvements.js';
import { parkingAndGarage } from './parking-and-garage.js';
import { permitsAndWork } from './permits-and-work.js';
import { saleWords } from './sale-words.js';
import { staysAndGoes } from './stays-and-goes.js';

/**
 * A finding for each pair. Two dates of one thing are held against each other in `date-order.ts`, days to come in
 * `future-dates.ts`, photos of work in `photo-dates.ts`, rooms against their level with the areas, and the record in
 * `record-compare.ts`; nothing is said here that is said there.
 */
export const checkClashes = (sources: ClashSources): Diagnostic[] =>
  [
    olderThanHouse,
    ownerAndDates,
    permitsAndWork,
    bedrooms,
    evidenceDates,
    lotAndFootprint,
    newInWords,
    costsAndWork,
    keptAndDone,
    staysAndGoes,
    oneThingTwoWords,
    answersAndFacts,
    answersAndServices,
    answersAndDues,
    finishAndWork,
    leadKnown,
    paidImprovements,
    parkingAndGarage,
    saleWords,
  ].flatMap((check) => check(sources));
