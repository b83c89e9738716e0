/** What is lacking of systems and appliances: whether they are there, how old they are, what they run on. */

import type { FactPath } from '../diagnostics/fact-path.js';
import type { System } from '../facts/house.js';
import { burns } from './carbon-monoxide.js';
import { addItem, addLine, EVERYONE, freeId, type Gap, type GapSources, rankOf, SALE } from './gap.js';
import { isWaterHeater } from './observed-water-heater.js';
import { isThere } from './still-there.js';
import { systemName } from './system-name.js';
import { deriveWarranties } from './warranties.js';

interface Asked {
  readonly name: string;
  readonly pattern: RegExp;
  readonly id: string;
  /** The rest of an item to type. */
  readonly example: string;
}

const HEATING = /^(?!.*water heater).*(furnace|boiler|heat pump|heating|baseboard|radiator|\bheat\b)/i;

/** The systems every buyer asks the age of, in the order they ask. */
const ASKED: readonly Asked[] = [
  {
    name: 'roof',
    pattern: /\broof/i,
    id: 'roof',
    example: 'is: "roof, architectural shingle", installed: 2019~',
  },
  {
    name: 'heating',
    pattern: HEATING,
    id: 'furnace',
    example: 'is: "furnace, gas", made: 2008/2009, fuel: gas',
  },
  {
    name: 'cooling',
    pattern: /^(?!.*water heater).*(air condition|heat pump|cooling|mini-split)/i,
    id: 'ac',
    example: 'is: "air conditioner, central", made: 2015',
  },
  {
    name: 'water heater',
    pattern: /water heater/i,
    id: 'water-heater',
    example: 'is: "water heater, tank, electric", made: 2020',
  },
  {
    name: 'electrical panel',
    pattern: /(?<!(solar|radiant) )\bpanel(?!l?(ing|ed))/i,
    id: 'panel',
    example: 'is: electrical panel, capacity: 150 A, installed: not known',
  },
  {
    name: 'supply pipes',
    pattern: /supply pipe|pipes?, (copper|pex|cpvc|galvanized|polybutylene)/i,
    id: 'supply-pipes',
    example: 'is: "supply pipes, copper", installed: ../1990',
  },
  {
    name: 'windows',
    pattern: /^(?!.*(air condition|\bfan\b)).*window/i,
    id: 'windows',
    example: 'is: "window, vinyl", installed: not known',
  },
];

export function systemGaps(sources: GapSources): Gap[] {
  const { house } = sources;
  return [
    ...unmentioned(sources),
    ...sources.ages.flatMap(ageUnknown),
    ...house.systems.flatMap((system, index) =>
      isThere(system)
        ? [
            ...fuelUnknown(system, ['systems', index]),
            ...settingUnknown(system, ['systems', index]),
            ...stayUnknown(system, ['systems', index]),
          ]
        : [],
    ),
    ...warranties(sources),
  ];
}

function unmentioned({ house }: GapSources): Gap[] {
  return ASKED.flatMap(({ name, pattern, id, example }, order): Gap[] =>
    house.systems.some((system) => isThere(system) && pattern.test(system.is))
      ? []
      : [
          {
            path: ['systems'],
            audiences: SALE,
            lacks: `nothing is written about the ${name}`,
            hint: addItem('systems', `{ id: ${freeId(house, id)}, ${example} }`),
            rank: rankOf('big system', order),
          },
        ],
  );
}

function ageUnknown({ system, path, basis }: GapSources['ages'][number]): Gap[] {
  if (basis !== 'not known') return [];
  const asked = ASKED.findIndex(({ pattern }) => pattern.test(system.is));
  return [
    {
      path,
      audiences: EVERYONE,
      lacks: `the age of “${systemName(system)}” is not known`,
      hint: 'look at its label or the permit; a span will do, for example  made: 2005/2012',
      rank: asked < 0 ? rankOf('age') : rankOf('age of a big system', asked),
    },
  ];
}

/** Fuel decides whether carbon monoxide alarms are looked for, and of heating every buyer asks it. */
function fuelUnknown(system: System, path: FactPath): Gap[] {
  const told =
    system.fuel !== undefined || /electric|heat pump|gas|propane|oil|wood|pellet|solar/i.test(system.is);
  if (burns(system) !== undefined && (told || !HEATING.test(system.is))) return [];
  return [
    {
      path,
      audiences: SALE,
      lacks: `what “${systemName(system)}” runs on is not said`,
      hint: `${addLine('fuel: gas', 'fuel: electric')}  or propane, oil, wood`,
      rank: rankOf('fuel'),
    },
  ];
}

function settingUnknown(system: System, path: FactPath): Gap[] {
  if (!isWaterHeater(system) || system['set-to'] !== undefined) return [];
  return [
    {
      path,
      audiences: ['buyer', 'care'],
      lacks: `how hot “${systemName(system)}” is set is not recorded`,
      hint: 'read its dial, then add  set-to: 120 F',
      rank: rankOf('hot water'),
    },
  ];
}

const APPLIANCE = /range|dishwasher|refrigerator|washer|dryer|microwave|freezer|disposal/i;

function stayUnknown(system: System, path: FactPath): Gap[] {
  if (!system.kept || system.conveys !== undefined || !APPLIANCE.test(system.is)) return [];
  return [
    {
      path,
      audiences: SALE,
      lacks: `whether “${systemName(system)}” stays with the house is not said`,
      hint: addLine('conveys: yes', 'conveys: no'),
      rank: rankOf('appliance'),
    },
  ];
}

/** Of warranties that may still run; those on what was taken out have no next owner. */
const warranties = ({ house, asOf }: GapSources): Gap[] =>
  deriveWarranties(house, asOf).flatMap(({ warranty, on, path, running }): Gap[] => {
    if (running === false || warranty['moves-to-buyer'] !== 'not known') return [];
    const name = on.kind === 'system' ? systemName(on.item) : on.item.what;
    return [
      {
        path,
        audiences: ['buyer', 'care'],
        lacks: `whether the warranty on “${name}”${warranty.of === undefined ? '' : ` (${warranty.of})`} moves to the next owner is not known`,
        hint: 'read its terms, then write  moves-to-buyer: yes  or  moves-to-buyer: no',
        rank: rankOf('warranty'),
      },
    ];
  });
