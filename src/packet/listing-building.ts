/** Listing fields of the building: what it is made of, what it stands on, its floors, roof, garage, porch and pool. */
import type { House, Level } from '../facts/house.js';
import { nameOf } from '../facts/place-name.js';
import { carsIn, garageOtherThanSaid } from '../tally/clashes/garage-words.js';
import { ROOF } from '../tally/roof.js';
import { isThere } from '../tally/still-there.js';
import { list, type SomeFields } from './listing-check.js';
import { valuesIn } from './listing-words.js';

export function buildingFields(house: House): SomeFields {
  const { construction, exterior, foundation, water, sewer } = house.house;
  return {
    ConstructionMaterials: list(valuesIn('ConstructionMaterials', [construction?.value, exterior?.value])),
    FoundationDetails: list(valuesIn('FoundationDetails', [foundation?.value])),
    ...basement(house),
    Roof: list(valuesIn('Roof', namesOf(house, ROOF))),
    WindowFeatures: list(valuesIn('WindowFeatures', namesOf(house, /^(window|skylight)\b/i))),
    Flooring: list(valuesIn('Flooring', floors(house))),
    WaterSource: list(valuesIn('WaterSource', [water?.value])),
    Sewer: list(valuesIn('Sewer', [sewer?.value])),
    ...laundry(house),
    ...fireplaces(house),
    ...parking(house),
    ...pool(house),
    ...outside(house),
  };
}

/** Names of what is of the house itself: neither of a building that stands apart nor of a level below the ground. */
function namesOf(house: House, kind: RegExp): string[] {
  const apart = house.structures.filter((one) => !one.attached).map(({ id }) => id);
  const below = house.levels.filter((level) => level.grade === 'below').map(({ id }) => id);
  const rooms = house.rooms.filter(({ level }) => below.includes(level)).map(({ id }) => id);
  const elsewhere = [...apart, ...below, ...rooms];
  return house.systems
    .filter(
      (one) =>
        isThere(one) && kind.test(one.is) && !(one.where !== undefined && elsewhere.includes(one.where)),
    )
    .map((one) => one.is);
}

const floors = (house: House): string[] =>
  house.rooms.flatMap((room) =>
    room.finishes.filter(({ on, did }) => on === 'floor' && did !== 'removed').map(({ what }) => what),
  );

const isCellar = ({ name }: Level): boolean => /cellar|basement/i.test(name);

/** A cellar is one where a level’s name or the foundation says so: a level below the ground may be something else. */
function basement(house: House): SomeFields {
  const { foundation } = house.house;
  const levels = house.levels.filter((level) => level.grade === 'below' && isCellar(level));
  const said = valuesIn('Basement', [foundation?.value]);
  if (levels.length === 0 && said.length === 0) return {};
  const finishes = levels.flatMap((level) => {
    const rooms = house.rooms.filter((room) => room.level === level.id);
    return [level.finish, ...rooms.map((room) => room.finish ?? level.finish)];
  });
  const unfinished = finishes.length > 0 && finishes.every((one) => one === 'unfinished');
  // A level is finished unless somebody says otherwise, which says too little to print it.
  const some = finishes.includes('unfinished') && finishes.includes('finished');
  return {
    BasementYN: levels.length > 0 ? true : undefined,
    Basement: list([...said, ...(unfinished ? ['Unfinished'] : []), ...(some ? ['Partially Finished'] : [])]),
  };
}

function laundry(house: House): SomeFields {
  const rooms = house.rooms.filter(({ use }) => use === 'laundry');
  // The lower level of a split is no basement.
  const where = (id: string): string[] => {
    const level = house.levels.find((one) => one.id === id);
    if (level?.grade !== 'below') return [];
    return [isCellar(level) ? 'In Basement' : 'Lower Level'];
  };
  const dryers = house.systems.filter((one) => isThere(one) && /\bdryer\b/i.test(one.is));
  return {
    LaundryFeatures: list([
      ...rooms.map((room) => (/closet/i.test(nameOf(room)) ? 'Laundry Closet' : 'Laundry Room')),
      ...rooms.flatMap(({ level }) => where(level)),
      ...dryers.flatMap(({ fuel }) =>
        fuel === 'electric' ? ['Electric Dryer Hookup'] : fuel === 'gas' ? ['Gas Dryer Hookup'] : [],
      ),
    ]),
  };
}

const FIREPLACE_ROOMS: Partial<Record<House['rooms'][number]['use'], string>> = {
  living: 'Living Room',
  family: 'Family Room',
  dining: 'Dining Room',
  kitchen: 'Kitchen',
  bedroom: 'Bedroom',
  bath: 'Bath',
  recreation: 'Recreation Room',
};

/** That there is one, and where. How many there are in all nobody says by describing one. */
function fireplaces(house: House): SomeFields {
  const rooms = house.rooms.filter((room) =>
    room.finishes.some(({ on, did }) => on === 'fireplace' && did !== 'removed'),
  );
  if (rooms.length === 0) return {};
  return {
    FireplaceYN: true,
    FireplaceFeatures: list(rooms.flatMap(({ use }) => FIREPLACE_ROOMS[use] ?? [])),
  };
}

/** A house without a garage in its facts may have one that nobody described, so it is never said to have none. */
function parking(house: House): SomeFields {
  const garages = house.structures.filter((one) => one.is === 'garage');
  const carports = house.structures.filter((one) => one.is === 'carport');
  const within = house.rooms.some((room) => room.use === 'garage');
  // Words that are of another garage than the one described say nothing of it.
  const said = garageOtherThanSaid(house) === undefined ? house.house.parking?.value : undefined;
  const hasGarage = within || garages.length > 0;
  const attached = within || garages.some((one) => one.attached);
  return {
    GarageYN: hasGarage ? true : undefined,
    AttachedGarageYN: hasGarage ? attached : undefined,
    GarageSpaces: garages.length + Number(within) === 1 ? carsIn(said) : undefined,
    CarportYN: carports.length > 0 ? true : undefined,
    ParkingFeatures: list([
      ...(hasGarage ? ['Garage'] : []),
      ...(attached ? ['Attached'] : []),
      ...(garages.some((one) => !one.attached) ? ['Detached'] : []),
      ...(garages.some((one) => one['opens-into-house']) ? ['Inside Entrance'] : []),
      ...carports.map((one) => (one.attached ? 'Attached Carport' : 'Detached Carport')),
      ...valuesIn('ParkingFeatures', [said]),
    ]),
  };
}

function pool(house: House): SomeFields {
  if (house.pool === undefined) return {};
  const stays = house.conveys.filter((one) => one.stays === 'yes').map((one) => one.what);
  const systems = house.systems.filter(isThere).map((one) => one.is);
  return { PoolPrivateYN: true, PoolFeatures: list(valuesIn('PoolFeatures', [...stays, ...systems])) };
}

const OUTSIDE: Partial<Record<House['structures'][number]['is'], string>> = {
  porch: 'Porch',
  deck: 'Deck',
  patio: 'Patio',
};

const OTHERS: Partial<Record<House['structures'][number]['is'], string>> = {
  shed: 'Shed(s)',
  workshop: 'Workshop',
  'guest-house': 'Guest House',
};

/** A landing at a door is written down as a patio, for want of a word, and is none to sit on. */
const isStoop = (one: House['structures'][number]): boolean => /\b(stoop|landing|steps)\b/i.test(nameOf(one));

function outside(house: House): SomeFields {
  const open = house.structures.filter((one) => OUTSIDE[one.is] !== undefined && !isStoop(one));
  return {
    PatioAndPorchFeatures: list([
      ...open.flatMap(({ is }) => OUTSIDE[is] ?? []),
      ...valuesIn('PatioAndPorchFeatures', open.map(nameOf)),
    ]),
    OtherStructures: list(
      house.structures.flatMap(({ is, attached }) => (attached ? [] : (OTHERS[is] ?? []))),
    ),
  };
}
