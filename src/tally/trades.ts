/**
 * Which trade a thing belongs to, and which trades a buyer asks about first.
 * Common practice, no source: what is dear or dangerous when it fails comes before what is seen at a glance.
 */
import type { Finish } from '../facts/house.js';

export const TRADES = [
  'roofing',
  'structure',
  'heating and cooling',
  'plumbing',
  'electrical',
  'windows and doors',
  'kitchen and bath',
  'flooring',
  'tile',
  'carpentry',
  'pool',
  'outside',
  'painting',
  'appliances',
  'other',
] as const;

export type Trade = (typeof TRADES)[number];

/** Words looked for in the name of a system or work item, most telling first. */
const TELLING: readonly (readonly [Trade, RegExp])[] = [
  ['pool', /\bpool\b/],
  ['roofing', /\broof|\bshingle|underlayment|gutter|flashing|chimney/],
  ['structure', /\bjoist|\bbeam|foundation|(?<!window )\bsill\b|framing|bearing|addition|footing/],
  [
    'heating and cooling',
    /furnace|boiler|heat pump|air condition|\bduct|thermostat|heating|cooling|mini-split|radiator|exhaust fan|ceiling fan|insulation/,
  ],
  [
    'plumbing',
    /water heater|\bpipe|\bdrain|faucet|toilet|\bsink|\b(bath)?tubs?\b|shower valve|plumb|sump|softener|hose bib|disposal|relief/,
  ],
  [
    'electrical',
    /\bpanel(?!l?ing)|wiring|outlet|circuit|gfci|afci|(?<!(range|oven|cooktop|dryer).*)electric(?!.*(range|heater|oven|cooktop|dryer))|\b(flood|spot|down)?light|receptacle|switch|alarm|generator|solar/,
  ],
  ['windows and doors', /window|door(?!.*opener)|screen/],
  [
    'appliances',
    /\brange|\boven|dishwasher|refrigerator|washer|dryer|microwave|\bhood|freezer|opener|compactor|cooktop/,
  ],
  ['tile', /\btile|grout/],
  ['flooring', /floor|carpet|plank|subfloor/],
  ['kitchen and bath', /kitchen|cabinet|counter|vanity|bath/],
  ['carpentry', /carpent|\brail|handrail|\bstair|guard|trim|deck|porch|fence|step|shelf|closet/],
  ['painting', /paint|stain|varnish/],
  ['outside', /siding|yard|garden|drive|walk|grading|landscap|patio|stucco|\btrees?\b/],
];

export function tradeOf(words: string, stated?: string): Trade {
  const lower = (stated ?? words).toLowerCase();
  const exact = TRADES.find((trade) => trade === lower);
  if (exact !== undefined) return exact;
  return (
    TELLING.find(([, pattern]) => pattern.test(lower))?.[0] ??
    (stated === undefined ? 'other' : tradeOf(words))
  );
}

const BY_SURFACE: Partial<Record<Finish['on'], Trade>> = {
  floor: 'flooring',
  walls: 'painting',
  ceiling: 'painting',
  trim: 'painting',
  doors: 'painting',
  cabinets: 'kitchen and bath',
  counter: 'kitchen and bath',
  vanity: 'kitchen and bath',
  backsplash: 'tile',
  shower: 'tile',
  tub: 'plumbing',
  sink: 'plumbing',
  faucet: 'plumbing',
  toilet: 'plumbing',
  lights: 'electrical',
  windows: 'windows and doors',
  hardware: 'carpentry',
  stairs: 'carpentry',
  fireplace: 'structure',
  siding: 'outside',
};

export function tradeOfFinish(finish: Finish): Trade {
  if (/tile/.test(finish.what.toLowerCase()) && finish.on !== 'counter') return 'tile';
  return BY_SURFACE[finish.on] ?? tradeOf(finish.what);
}
