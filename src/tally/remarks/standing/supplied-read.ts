/**
 * Power, water and heat of a shed, a garage or a room: "shed with power", "workshop wired for tools", "heated porch",
 * where the folder says of that place that it has none.
 */
import { nameOf } from '../../../facts/place-name.js';
import { sensesIn } from '../items/item-meaning.js';
import type { FactSaid, Judgement, Known } from '../items/known.js';
import { thing } from '../words/taxonomy.js';
import { matches, type SetPhrase } from './set-phrases.js';

const PLACES =
  /\b(?:tool ?|florida |fla\.? |garden |storage |potting |work|wood|back ?yard |detached |attached |utility |covered |screened |enclosed |sun ?|pool |bonus |three[- ]season |four[- ]season |all[- ]season ){0,2}(?:sheds?|garages?|workshops?|shops?|barns?|carports?|studios?|cottages?|cabins?|greenhouses?|porch(?:es)?|decks?|outbuildings?|buildings?|rooms?|rms?|sunrooms?|sun ?room|pool ?house|gazebos?|attic|loft)\b/gi;

/** What stands between a place and what it is said to have. */
const JOINED = String.raw`\s*(?:(?:that |which )?(?:with|w\/|has|have|having|featur\w+|includ\w+|comes? with|complete with|offers?|boasts?|enjoys?|is|are|out back|in back|fully|already|is also|plus|even has|:|\(|-|–)\s*){1,4}(?:(?:its|own|a|an|the|full|fully|already|both|new|plenty of|good|electric|and|lights?|power|heat|water|separate|\d+[- ]?(?:amps?|v|volt)|for|year[- ]round|,|&|\+)\s*){0,5}`;

interface Supply {
  readonly id: 'power' | 'heat' | 'cooling' | 'water' | 'insulation';
  /** Said behind the place. */
  readonly behind: RegExp;
  /** Said before it: "heated garage". */
  readonly ahead: RegExp;
  /** What the folder says against it. */
  readonly none: RegExp;
}

const supply = (id: Supply['id'], words: string, ahead: string, none: string): Supply => ({
  id,
  behind: new RegExp(`^${JOINED}(?:${words})\\b`, 'i'),
  ahead: new RegExp(`\\b(?:${ahead})(?:,? (?:and|&) \\w+)?[ ,-]+(?:\\w+[ -])?$`, 'i'),
  none: new RegExp(none, 'i'),
});

const SUPPLIES: readonly Supply[] = [
  supply(
    'power',
    String.raw`power(?:ed)?|electric(?:al|ity|s)?|electrified|wired|wiring|outlets?|receptacles?|lights?|lighting|lit|(?:110|120|220|240)(?: ?v\w*)?|sub-?panel|circuits?|a\/?c|air[- ]condition\w*|mini[- ]?split|plugs?`,
    'powered|wired|electrified|lit|lighted|air[- ]conditioned',
    String.raw`\b(?:no|without|lacks?|neither) (?:electric\w*|power|current|wiring|lights?|water (?:or|and|nor) (?:power|electric\w*)|heat (?:or|and|nor) (?:power|electric\w*))\b|\b(?:unwired|not wired|unpowered|not powered|unlit|not electrified)\b`,
  ),
  supply(
    'heat',
    String.raw`heat(?:ed|er|ing)?|climate[- ]control\w*|furnace|mini[- ]?split|radiators?|conditioned`,
    'heated|climate[- ]controlled|conditioned|year[- ]round|four[- ]season|all[- ]season',
    String.raw`\b(?:no|without|lacks?|neither) (?:heat\w*|(?:electric\w*|power|water|cooling) (?:or|and|nor) heat\w*)\b|\b(?:unheated|not heated|three[- ]season|unconditioned)\b`,
  ),
  supply(
    'cooling',
    String.raw`(?:heat(?:ed|ing)? (?:and|&) )?(?:a\/?c|air[- ]condition\w*|air|cool(?:ed|ing)|mini[- ]?split|ductless)`,
    'cooled|air[- ]conditioned',
    String.raw`\b(?:no|not|without|lacks?|neither|nor)\b[^.;,]{0,24}\b(?:cool\w*|air[- ]condition\w*|a\/?c)\b|\bunconditioned\b`,
  ),
  supply(
    'water',
    '(?:running )?water|plumb(?:ed|ing)|sink|spigot|toilet|bath(?:room)?|hydrant',
    'plumbed',
    String.raw`\b(?:no|without|lacks?|neither) (?:running )?(?:water|plumbing|(?:electric\w*|power|heat\w*) (?:or|and|nor) (?:water|plumbing))\b|\b(?:not plumbed|unplumbed)\b`,
  ),
  supply(
    'insulation',
    'insulat(?:ed|ion)',
    '(?:fully |well[- ]?)?insulated',
    String.raw`\b(?:no|without|lacks?) insulation\b|\b(?:uninsulated|not insulated)\b`,
  ),
];

export function suppliedRead(known: Known, sentence: string): SetPhrase[] {
  if (!SAYS_SUPPLY.test(sentence)) return [];
  return matches(PLACES, sentence).flatMap((found) => {
    const [from, to] = [found.index, found.index + found[0].length];
    const behind = sentence.slice(to, to + 70);
    const ahead = sentence.slice(Math.max(0, from - 40), from);
    return SUPPLIES.flatMap((one) => {
      const [after = ''] = one.behind.exec(behind) ?? [];
      const [before = ''] = one.ahead.exec(ahead) ?? [];
      if (after + before === '' || DENIED.test(after) || DENIED.test(ahead)) return [];
      const fact = noneOf(known, found[0], one);
      if (fact === undefined) return [];
      const judgement: Judgement = {
        verdict: 'contradicted',
        rule: 'supply',
        because: 'the folder says that it has none',
        facts: [fact],
      };
      return [{ from: from - before.length, to: to + after.length, judgement }];
    });
  });
}

const SAYS_SUPPLY =
  /power|electri|wired|wiring|outlet|recept|light|lit\b|volt|\b[12][1-4]0|panel|circuit|a\/?c\b|condition|split|plug|heat|climate|cool|air\b|ductless|furnace|radiator|season|year|water|plumb|sink|spigot|toilet|bath|hydrant|insulat/i;

const DENIED =
  /\b(no|not|without|never|non|un\w*|could|would|can|ready|future|add|needs?|lacks?|bring|near|under)\b/i;

/** Sheds and their like, by which a shop or an outbuilding may be meant. */
const OUTBUILDING = /^(shed|barn|other|studio|greenhouse)/i;

/** The sentence of the folder that says a place has none; undefined where another place that may be meant has it open. */
function noneOf({ house }: Known, words: string, { id, none }: Supply): FactSaid | undefined {
  const meant = sensesIn(words).filter(({ tag }) => tag === 'thing');
  const called = words.toLowerCase().replace(/s$/, '');
  // "Room" alone names every room.
  const last = /\broom$/.test(called) ? called : called.replace(/.*[\s-]/s, '');
  const isCalled = (one: { id: string; name?: string | undefined }, is: string): boolean =>
    `${nameOf(one)} ${is}`.toLowerCase().includes(last) ||
    meant.some((sense) => thing(sense.id).structure === is || thing(sense.id).room === is);
  const named = [
    ...house.structures.map((one, at) => ({
      one,
      is: one.is,
      path: ['structures', at] as const,
      heated: undefined,
    })),
    ...house.rooms.map((one, at) => ({ one, is: one.use, path: ['rooms', at] as const, heated: one.heated })),
  ].filter(({ one, is }) => isCalled(one, is));
  const places =
    named.length > 0 || !/shop|building/i.test(words)
      ? named
      : house.structures
          .map((one, at) => ({ one, is: one.is, path: ['structures', at] as const, heated: undefined }))
          .filter(({ is }) => OUTBUILDING.test(is));
  const said = places.map(({ one, path, heated }): FactSaid | undefined => {
    const told = [
      one.note ?? '',
      ...house.conditions.filter(({ where }) => where === one.id).map(({ what }) => what),
      ...house.answers
        .filter(({ ask }) => ask.toLowerCase().includes(nameOf(one).toLowerCase()))
        .map(({ answer }) => answer.value ?? ''),
    ].find((text) => none.test(text));
    if (told !== undefined) return { path: [...path], words: `${nameOf(one)}: ${told}`, evidence: [] };
    return id === 'heat' && heated === 'no'
      ? { path: [...path, 'heated'], words: `${nameOf(one)}: not heated`, evidence: [] }
      : undefined;
  });
  return said.length > 0 && said.every((fact) => fact !== undefined) ? said[0] : undefined;
}
