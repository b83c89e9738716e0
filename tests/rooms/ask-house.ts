/** The demo houses as an edition knows them, without their pictures: for the checks of answers and of the search. */
import { fileURLToPath } from 'node:url';
import { onDisk } from '../../src/house-photos.js';
import { readHouse } from '../../src/intake/read-house.js';
import type { ComposeOrder } from '../../src/packet/compose.js';
import type { EditionName } from '../../src/packet/packet.js';
import { deriveTally } from '../../src/tally/tally.js';

const DEMO_AS_OF = '2026-11-20';

/** Fails the test if the house can't be read. */
export async function demoOrder(house: string, edition: EditionName = 'buyer'): Promise<ComposeOrder> {
  const folder = fileURLToPath(new URL(`../../content/${house}`, import.meta.url));
  const { found } = await readHouse(folder, `content/${house}`, { everyPhoto: false });
  if (found === undefined) throw new Error(`${house} can’t be read`);
  const { tally } = deriveTally(found.house, DEMO_AS_OF);
  const photos = new Map([...found.photos].map(([id, file]) => [id, onDisk(file)]));
  return { folder: house, house: found.house, tally, edition, photos };
}

/** What somebody types or says, and the question that must come first. 40 and more, half in American spelling. */
export const SPOKEN: readonly (readonly [asked: string, first: RegExp])[] = [
  ['how old is the roof', /How old is the roof/],
  ['how old is the heater', /How old is the (water heater|heating)/],
  ['is there aluminum wiring', /aluminium/],
  ['has the basement ever flooded?', /Has water ever come in/],
  ['any termites', /termite/i],
  ['what year was the furnace made', /How old is the (heating|heat pump)/],
  ['how old is the AC', /How old is the (air conditioning|heat pump)/],
  ['hot water tank age', /How old is the water heater/],
  ['who did the work', /Who did the work/],
  ['was it all permitted', /permit/i],
  ['does the fridge stay', /What stays and what goes/],
  ['square footage', /How big is the house/],
  ['how many bathrooms', /bedrooms and baths/],
  ['lot size in acres', /How big is the lot/],
  ['HOA fees', /association dues/],
  ['city water or well', /public or from a well/],
  ['septic', /sewer/],
  ['what are the pipes made of', /pipes made of/],
  ['galvanized plumbing?', /pipes made of/],
  ['smoke detectors', /smoke and carbon monoxide/],
  ['lead paint', /lead paint/],
  ['asbestos', /asbestos/],
  ['utility bills', /(What do heat.* cost|What does cooling cost)/],
  ['is it noisy', /noisy/],
  ['paint colors for touch up', /Which paint was used/],
  ['has it ever been flooded', /Has water ever come in/],
  ['is it in a flood zone', /flood zone/],
  ['are the floors real hardwood', /floors made of/],
  ['are there hardwood floors', /floors made of/],
  ['what are the countertops made of', /counters made of/],
  ['when did you buy it', /How long has the owner had it/],
  ['how high are the ceilings', /How high are the ceilings/],
  ['who did the tile', /trade by trade/],
  ['who did the electrical work', /trade by trade/],
  ['who painted the house', /trade by trade/],
  ['what kind of insulation', /insulated/],
  ['when was the kitchen redone', /redone in the kitchen/],
  ['when was the bathroom remodeled', /redone in the baths/],
  ['how much did the renovation cost', /What did the renovation cost/],
  ['why are you selling', /Why is the house for sale/],
  ['what school district', /school district/],
  ['is the neighborhood safe', /neighbourhood/],
  ['is it safe', /Is the house safe/],
  ['is the house up to code', /up to code/],
  ['can I finish the basement', /May the cellar be finished/],
  ['are there trains', /noisy/],
  ['is the water safe to drink', /fit to drink/],
  ['what is the tax assessment', /property taxes/],
  ['are there any liens', /liens/],
  ['any easements', /easements/],
  ['boundary disputes', /boundary dispute/],
  ['HOA violations', /violations/],
  ['do the washer and dryer come with it', /What stays and what goes/],
  ['why did you redo the kitchen', /Why was it redone/],
  ['what is it worth', /What is the house worth/],
  ['hwo old is teh roof', /How old is the roof/],
  ['rof age', /How old is the roof/],
];
