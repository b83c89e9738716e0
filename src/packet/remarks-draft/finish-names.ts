/** Finishes in the few words of a listing text. Common practice, no source: how the trade names them. */
import type { Finish } from '../../facts/house.js';

/** What a material is called, most exact first. Only what stands in the fact is told. */
const MATERIALS: readonly (readonly [RegExp, string])[] = [
  [/\bquartzite\b/i, 'quartzite'],
  [/\bquartz\b/i, 'quartz'],
  [/\bgranite\b/i, 'granite'],
  [/\bmarble\b(?<!cultured marble)/i, 'marble'],
  [/\bcultured marble\b/i, 'cultured marble'],
  [/\bsoapstone\b/i, 'soapstone'],
  [/\bbutcher ?block\b/i, 'butcher block'],
  [/\bsolid surface\b/i, 'solid surface'],
  [/\blaminate\b/i, 'laminate'],
  [/\bhexagon mosaic tile\b/i, 'hexagon mosaic tile'],
  [/\bmosaic tile\b/i, 'mosaic tile'],
  [/\bglazed tile\b/i, 'glazed tile'],
  [/\bporcelain plank\b/i, 'porcelain plank'],
  [/\bporcelain (wall |floor )?tile\b/i, 'porcelain tile'],
  [/\bceramic (wall |floor )?tile\b/i, 'ceramic tile'],
  [/\bluxury vinyl plank\b/i, 'luxury vinyl plank'],
  [/\bvinyl plank\b/i, 'vinyl plank'],
  [/\bvinyl tile\b/i, 'vinyl tile'],
  [/\bsheet vinyl\b/i, 'sheet vinyl'],
  [/\btile\b/i, 'tile'],
  [/\boak strip\b/i, 'oak strip'],
  [/\bengineered (oak|wood|hardwood)\b/i, 'engineered wood'],
  [/\b(oak|maple|pine|fir|cherry|walnut|hickory|birch|bamboo|hardwood)\b/i, ''],
  [/\bcarpet\b/i, 'carpet'],
  [/\bstainless steel\b/i, 'stainless steel'],
  [/\bcast iron\b/i, 'cast iron'],
  [/\bfiberglass\b/i, 'fiberglass'],
  [/\bacrylic\b/i, 'acrylic'],
  [/\bconcrete\b/i, 'concrete'],
];

/** The material in a finish's words; undefined where none is named that a listing would tell. */
function materialOf(what: string): string | undefined {
  for (const [pattern, word] of MATERIALS) {
    const found = pattern.exec(what);
    if (found !== null) return word === '' ? found[0].toLowerCase() : word;
  }
  return undefined;
}

/** "quartz counters", "hexagon mosaic tile floor"; undefined for what a listing does not tell of. */
export function finishName(finish: Finish): string | undefined {
  const material = materialOf(finish.what);
  const withMaterial = (noun: string): string => (material === undefined ? noun : `${material} ${noun}`);
  switch (finish.on) {
    case 'floor':
      return material === undefined ? undefined : `${floorMaterial(finish, material)} floor`;
    case 'counter':
      return withMaterial('counters');
    case 'cabinets':
      return 'cabinets';
    case 'backsplash':
      return withMaterial('backsplash');
    case 'sink':
      return withMaterial('sink');
    case 'tub':
      return withMaterial('tub');
    case 'vanity':
      return vanityName(finish.what);
    case 'shower':
      return showerName(finish.what);
    default:
      return undefined;
  }
}

/** Floors of several rooms: "oak strip floors"; carpet stays carpet. Undefined: the material is not told. */
export function floorName(finish: Finish): string | undefined {
  const material = finish.on === 'floor' ? materialOf(finish.what) : undefined;
  if (material === undefined) return undefined;
  return material === 'carpet' ? 'carpet' : `${floorMaterial(finish, material)} floors`;
}

/** Boards of a wood are called so: "pine board". */
const floorMaterial = ({ what }: Finish, material: string): string =>
  /\bboards\b/i.test(what) && !material.includes(' ') ? `${material} board` : material;

function vanityName(what: string): string {
  const basins = /\b(two|double)\b/i.test(what) ? 'two-basin vanity' : 'vanity';
  const top = /\b(\w+) top\b/i.exec(what)?.[1];
  return top === undefined ? basins : `${top.toLowerCase()}-top ${basins}`;
}

function showerName(what: string): string {
  const material = materialOf(what);
  if (/\bwalk-in\b/i.test(what))
    return material === undefined ? 'walk-in shower' : `walk-in shower with ${material}`;
  const place = /\btub\b/i.test(what) ? 'tub surround' : 'shower';
  return material === undefined ? place : `${material} ${place}`;
}
