/**
 * Writes made-up houses for the timings: no photos, no papers on disk, and no two alike.
 *
 * The same number always gives the same house. What varies is drawn from a small generator started with the
 * house's number; nothing here is anybody's house, and every name is invented.
 */

import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { dump } from 'js-yaml';
import { seeded } from '../tools/seeded.mjs';

/** How much one made house holds, besides its levels. */
export const MADE = { rooms: 12, systems: 15, work: 15 };

const TOWNS = ['Fallow Mills', 'Dry Lake Wells', 'Upper Sedge', 'Quarrel Bend', 'Tansy Hollow', 'Lower Marl'];
const STATES = ['OH', 'AZ', 'PA', 'NC', 'OR', 'MN'];
const COLOURS = ['Oat 12', 'Barley 08', 'Reed 14', 'Pond Mist 19', 'Sage 31', 'Linen White', 'Rust 27'];
const SHEENS = ['flat', 'eggshell', 'satin', 'semi-gloss'];
const PEOPLE = [
  ['plumbing', 'Cooper Lane Plumbing', 'plumber'],
  ['electric', 'Third Pole Electric', 'electrician'],
  ['carpentry', 'Plumb and Level Carpentry', 'carpenter'],
  ['heating', 'Warm Sill Heating', 'heating and cooling'],
];
const ROOMS = [
  ['living', 'living', 14, 17],
  ['dining', 'dining', 10, 11],
  ['kitchen', 'kitchen', 11, 12],
  ['bath', 'bath', 6, 8],
  ['bedroom-1', 'bedroom', 11, 12],
  ['bedroom-2', 'bedroom', 10, 11],
  ['hall', 'hall', 4, 12],
  ['entry', 'entry', 6, 7],
  ['bedroom-3', 'bedroom', 11, 13],
  ['office', 'office', 8, 9],
  ['laundry', 'laundry', 7, 8],
  ['storage', 'storage', 6, 9],
];
const SYSTEMS = [
  ['furnace', 'furnace, gas', 'gas'],
  ['air-conditioner', 'air conditioner, central', 'electric'],
  ['water-heater', 'water heater, tank, electric', 'electric'],
  ['thermostat', 'thermostat', undefined],
  ['ducts', 'ducts', undefined],
  ['range', 'range, electric', 'electric'],
  ['dishwasher', 'dishwasher', 'electric'],
  ['refrigerator', 'refrigerator', 'electric'],
  ['range-hood', 'range hood', 'electric'],
  ['washer', 'clothes washer', 'electric'],
  ['dryer', 'clothes dryer', 'electric'],
  ['bath-fan', 'exhaust fan', 'electric'],
  ['toilet', 'toilet', undefined],
  ['disposal', 'garbage disposal', 'electric'],
  ['ceiling-fan', 'ceiling fan', 'electric'],
];
const WORK = [
  ['kitchen floor', 'new', 'flooring', 'two old layers taken out, boards levelled, plank laid floating'],
  ['kitchen fronts', 'replaced', 'carpentry', 'old boxes kept and squared, new fronts made and painted'],
  ['bath tile', 'replaced', 'tile', 'to the studs, cement board, membrane, tile'],
  ['bath fixtures', 'replaced', 'plumbing', 'vanity, toilet and faucet'],
  ['oak floors', 'refinished', 'flooring', 'sanded in three passes, three coats'],
  ['walls and ceilings', 'painted', 'painting', 'two coats over a primer'],
  ['kitchen circuits', 'added', 'electrical', 'three circuits from the panel'],
  ['handrail of the stair', 'new', 'carpentry', 'on the wall side, full length, returned at both ends'],
  ['porch steps', 'repaired', 'carpentry', 'two treads and the lower stringer end'],
  ['downspouts', 'added', 'outside', 'extensions at the two low corners'],
  ['furnace', 'serviced', 'heating and cooling', 'burners brushed, filter changed'],
  ['dryer vent', 'cleaned', 'outside', 'from the wall cap inward'],
  ['window locks', 'repaired', 'carpentry', 'eleven of fourteen'],
  ['attic hatch', 'new', 'carpentry', 'with a gasket and latches'],
  ['smoke alarms', 'new', 'electrical', 'one a bedroom, one a level'],
];

/** @param {number} number from 1 */
export const madeName = (number) => `made-${String(number).padStart(4, '0')}`;

/**
 * Writes `count` houses below `content`, as `made-0001` onwards. Fails with the file system's error.
 * @param {string} content folder to write into; made if it is not there
 * @param {number} count
 * @returns {Promise<{ folder: string, shown: string }[]>} in order
 */
export async function writeMadeHouses(content, count) {
  const houses = [];
  for (let number = 1; number <= count; number += 1) {
    const name = madeName(number);
    const folder = path.join(content, name);
    await mkdir(folder, { recursive: true });
    for (const [file, text] of Object.entries(madeHouse(number)))
      await writeFile(path.join(folder, file), text);
    houses.push({ folder, shown: `content/${name}` });
  }
  return houses;
}

/**
 * The files of one made house: name → text.
 * @param {number} number from 1; the same number gives the same house
 * @returns {Record<string, string>}
 */
export function madeHouse(number) {
  const draw = drawer(number);
  const year = 1921 + draw.upTo(90);
  const levels = madeLevels(draw);
  const facts = {
    house: {
      name: `Made House ${number}`,
      address: {
        street: `${100 + draw.upTo(800)} Example Lane`,
        city: draw.from(TOWNS),
        state: draw.from(STATES),
        show: 'street-withheld',
      },
      kind: 'detached',
      built: { is: String(year), from: 'county record', evidence: ['county-card'] },
      lot: { is: `0.${10 + draw.upTo(80)} acre`, from: 'county record', evidence: ['county-card'] },
      bought: '2026-02-17',
      listed: '2026-06-20',
    },
    people: PEOPLE.map(([id, name, trade]) => ({ id, name, trade, licence: 'not known' })),
    measured: { by: 'owner', date: '2026-06-14', method: 'ansi-z765-2021' },
    levels,
    rooms: ROOMS.map((room, index) => madeRoom(draw, room, levels[index % levels.length]?.id ?? 'main')),
    systems: SYSTEMS.map((system) => madeSystem(draw, system)),
    work: WORK.map((work, index) => madeWork(draw, work, index)),
    conditions: [
      { what: 'one storm window sticks', where: draw.from(ROOMS)[0], since: 'as bought' },
      { what: 'hairline crack in the drive', since: 'not known' },
    ],
    permits: [
      {
        id: 'permit-1',
        number: `EX-26-${1000 + draw.upTo(9000)}`,
        what: 'plumbing and wiring of kitchen and bath',
        office: 'county building office',
        issued: '2026-03-30',
        final: '2026-05-20',
        state: 'final',
      },
    ],
    documents: madeDocuments(draw),
    conveys: [{ what: 'workbench', stays: true }],
    answers: [
      { ask: 'Has water ever come in?', answer: draw.from(['not known', 'Not since it was bought.']) },
      { ask: 'Is there a survey?', answer: 'not known' },
    ],
    care: [{ what: 'change the furnace filter', for: 'furnace', every: '3 months', next: '2026-12-01' }],
    lead: { known: 'not known' },
  };
  return {
    'house.yaml': dump(facts, { lineWidth: 120, noRefs: true }),
    'costs.csv': madeCosts(draw),
    'miles.csv': madeMiles(draw),
    'hours.csv': madeHours(draw),
  };
}

/** @typedef {{ upTo: (limit: number) => number, from: <T>(list: readonly T[]) => T, chance: (part: number) => boolean }} Draw */

/**
 * @param {number} seed neighbouring ones are far apart
 * @returns {Draw}
 */
function drawer(seed) {
  const next = seeded(Math.imul(seed, 0x9e3779b1));
  return {
    upTo: (limit) => Math.floor(next() * limit),
    from: (list) => /** @type {typeof list[number]} */ (list[Math.floor(next() * list.length)]),
    chance: (part) => next() < part,
  };
}

/** @param {Draw} draw */
function madeLevels(draw) {
  const [upper, cellar] = [draw.chance(0.6), draw.chance(0.5)];
  // Twelve rooms on one level need a wider house, or the program would rightly doubt the tape.
  const east = (upper || cellar ? 32 : 46) + draw.upTo(10);
  const north = (upper || cellar ? 30 : 36) + draw.upTo(8);
  const levels = [
    {
      id: 'main',
      name: 'Main level',
      grade: 'above',
      outline: draw.chance(0.5) ? rectangle(east, north) : withWing(east, north, 8 + draw.upTo(6)),
      ceiling: "8'",
    },
  ];
  if (upper)
    levels.push({
      id: 'upper',
      name: 'Upper level',
      grade: 'above',
      outline: rectangle(east - 2, north - 2),
      ceiling: "8'",
    });
  if (cellar)
    levels.unshift({
      id: 'cellar',
      name: 'Cellar',
      grade: 'below',
      outline: rectangle(east, north),
      ceiling: '7\'2"',
    });
  return levels;
}

/**
 * @param {number} east feet
 * @param {number} north feet
 */
const rectangle = (east, north) => [`east ${east}'`, `north ${north}'`, `west ${east}'`, `south ${north}'`];

/**
 * @param {number} east feet
 * @param {number} north feet
 * @param {number} wing feet that the east part reaches further north
 */
const withWing = (east, north, wing) => [
  `east ${east}'`,
  `north ${north + wing}'`,
  `west 14'6"`,
  `south ${wing}'`,
  `west ${east - 15}'6"`,
  `south ${north}'`,
];

/**
 * @param {Draw} draw
 * @param {readonly (string | number)[]} room id, use, feet east, feet north
 * @param {string} level
 */
function madeRoom(draw, [id, use, east, north], level) {
  const by = draw.from(['owner', 'family', 'carpentry']);
  const month = 3 + draw.upTo(3);
  const done = `2026-0${month}-${10 + draw.upTo(18)}`;
  const evidence = [`receipt-${1 + draw.upTo(6)}`];
  const finishes = [
    draw.chance(0.7)
      ? {
          on: 'floor',
          what: 'oak strip',
          did: 'refinished',
          plank: `2 1/4" x 40"`,
          sheen: 'satin',
          done,
          by,
          evidence,
        }
      : { on: 'floor', what: 'boards, as found', kept: true },
    {
      on: 'walls',
      what: 'paint',
      colour: draw.from(COLOURS),
      code: `C-${10 + draw.upTo(90)}`,
      sheen: draw.from(SHEENS),
      base: 'white base',
      coats: 2,
      done,
      by,
      evidence,
    },
    { on: 'ceiling', what: 'paint', colour: 'Ceiling White', sheen: 'flat', coats: 1, done, by },
    ...(draw.chance(0.5) ? [{ on: 'trim', what: 'pine, painted', kept: true }] : []),
  ];
  return {
    id,
    level,
    use,
    ...(use === 'bath' ? { bath: 'full' } : {}),
    size: `${Number(east) + draw.upTo(2)}'${draw.upTo(12)}" x ${Number(north) + draw.upTo(2)}'`,
    heated: true,
    doors: 1 + draw.upTo(3),
    windows: use === 'bedroom' ? [{ 'clear-width': '30"', 'clear-height': '24"', sill: '28"' }] : [],
    finishes,
  };
}

/**
 * @param {Draw} draw
 * @param {readonly (string | undefined)[]} system id, what it is, fuel
 */
function madeSystem(draw, [id, is, fuel]) {
  const common = { id, is, ...(fuel === undefined ? {} : { fuel }), conveys: true };
  if (draw.chance(0.4))
    return {
      ...common,
      made: '2026-01',
      installed: `2026-04-${10 + draw.upTo(18)}`,
      by: draw.from(PEOPLE)[0],
      permit: 'permit-1',
      warranty: { of: 'parts', until: `203${1 + draw.upTo(6)}-04`, 'moves-to-buyer': 'not known' },
      evidence: [`receipt-${1 + draw.upTo(6)}`],
    };
  const made = 1996 + draw.upTo(26);
  return {
    ...common,
    made: draw.from([String(made), `${made}~`, `${made}/${made + 3}`, `../${made}`, 'not known']),
    kept: true,
  };
}

/**
 * @param {Draw} draw
 * @param {readonly string[]} work what, deed, trade, how
 * @param {number} index
 */
function madeWork(draw, [what, did, trade, how], index) {
  const hired = draw.chance(0.4);
  return {
    id: `work-${index + 1}`,
    what,
    did,
    how,
    where: [draw.from(ROOMS)[0]],
    why: draw.from(['worn', 'loose', 'none was there', 'cracked']),
    trade,
    ...(draw.chance(0.3) ? { safety: true } : {}),
    done: `2026-0${3 + draw.upTo(3)}-${10 + draw.upTo(18)}`,
    by: hired ? draw.from(PEOPLE)[0] : draw.from(['owner', 'family']),
    ...(hired ? { permit: 'permit-1' } : {}),
    evidence: [`receipt-${1 + draw.upTo(6)}`],
  };
}

/** @param {Draw} draw */
function madeDocuments(draw) {
  const receipts = Array.from({ length: 6 }, (_, index) => ({
    id: `receipt-${index + 1}`,
    what: draw.from(['receipt, paint', 'receipt, boards', 'invoice, pipes', 'invoice, wiring']),
    kind: 'receipt',
    date: `2026-0${3 + draw.upTo(3)}-${10 + draw.upTo(18)}`,
    kept: 'binder',
  }));
  return [
    { id: 'county-card', what: 'county property card', kind: 'record', date: '2026-02-17', kept: 'binder' },
    ...receipts,
  ];
}

/** @param {Draw} draw */
function madeCosts(draw) {
  const rows = ['date,payee,what,amount,bucket,place,paid,receipt'];
  rows.push(`2026-02-17,Seller,price of the house,${90_000 + draw.upTo(150_000)}.00,purchase,,transfer,`);
  for (let index = 0; index < 30; index += 1) {
    const amount = `${20 + draw.upTo(900)}.${10 + draw.upTo(90)}`;
    rows.push(
      `2026-0${3 + draw.upTo(3)}-${10 + draw.upTo(18)},Corner Supply,material ${index + 1},${amount},${draw.from(['improvement', 'repair', 'tool'])},${draw.from(ROOMS)[0]},card,receipt-${1 + draw.upTo(6)}`,
    );
  }
  return `${rows.join('\n')}\n`;
}

/** @param {Draw} draw */
function madeMiles(draw) {
  const rows = Array.from(
    { length: 10 },
    () =>
      `2026-0${3 + draw.upTo(3)}-${10 + draw.upTo(18)},home,the house,material,${4 + draw.upTo(30)}.${draw.upTo(10)}`,
  );
  return `date,from,to,purpose,miles\n${rows.join('\n')}\n`;
}

/** @param {Draw} draw */
function madeHours(draw) {
  const rows = Array.from(
    { length: 12 },
    () =>
      `2026-0${3 + draw.upTo(3)}-${10 + draw.upTo(18)},${draw.from(['owner', 'family'])},work on it,${draw.from(ROOMS)[0]},${2 + draw.upTo(7)}`,
  );
  return `date,who,what,place,hours\n${rows.join('\n')}\n`;
}
