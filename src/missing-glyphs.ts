/**
 * Characters that the paper's typefaces lack are traced back to the facts that hold them: one message a fact, however
 * many characters and editions it concerns.
 */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import type { FactPath } from './diagnostics/fact-path.js';
import type { Packet } from './packet/packet.js';
import { printedBlocks, wordsOf } from './packet/words-of.js';
import { normaliseText } from './print/letters.js';
import { textsIn } from './texts-in.js';

/** A whole alphabet in one message helps nobody. */
const NAMED = 3;

/** `characters` are what no face of the paper has, of all the packets; `spec` is what was written. */
export function missingGlyphs(
  characters: readonly string[],
  packets: readonly Packet[],
  spec: unknown,
): Diagnostic[] {
  // Joiners and the like are drawn by nothing and missed by nobody.
  const lacking = new Set(characters.filter((character) => normaliseText(character) !== ''));
  if (lacking.size === 0) return [];
  const printed = packets.flatMap(textsOf).filter((text) => runsIn(text, lacking).length > 0);
  // A fact that is in no packet of these editions may hold the same character.
  const shown = new Set(printed.flatMap((text) => runsIn(text, lacking)));
  const facts = textsIn(spec).filter(({ text }) => runsIn(text, lacking).some((run) => shown.has(run)));
  const told = facts.map(({ text, path }) => diagnosticOf(runsIn(text, lacking), { path }));
  // From a sheet of costs, or cut short: no fact has it so.
  const written = facts.flatMap(({ text }) => runsIn(text, lacking));
  const others = printed.filter((text) =>
    runsIn(text, lacking).some((run) => !written.some((known) => known.includes(run))),
  );
  const runs = others.flatMap((text) => runsIn(text, lacking));
  const named = new Set([...written, ...runs].join(''));
  const unplaced = [...runs, ...[...lacking].filter((character) => !named.has(character))];
  return unplaced.length === 0 ? told : [...told, diagnosticOf(unplaced, { near: others[0] })];
}

/** Every string that the sheets of a packet show. */
function textsOf({ house, keyFacts, sections, standing }: Packet): string[] {
  const blocks = sections.flatMap(printedBlocks);
  return [
    house.name,
    house.place,
    ...keyFacts.flatMap(({ label, value }) => [label, value]),
    ...sections.map(({ title }) => title),
    ...blocks.flatMap(wordsOf),
    standing,
  ];
}

/** The stretches of a text that stand-ins are drawn for: a word of such letters, an emoji. */
function runsIn(text: string, lacking: ReadonlySet<string>): string[] {
  const runs: string[] = [];
  let open = false;
  for (const character of normaliseText(text)) {
    const lacks = lacking.has(character);
    if (lacks && open) runs[runs.length - 1] += character;
    else if (lacks) runs.push(character);
    open = lacks;
  }
  return runs;
}

const codePoint = (character: string): string =>
  `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;

function diagnosticOf(
  runs: readonly string[],
  at: { readonly path: FactPath } | { readonly near: string | undefined },
): Diagnostic {
  const all = [...new Set(runs.join(''))];
  const named = all.slice(0, NAMED).map((each) => `“${each}” (${codePoint(each)})`);
  const more = all.length > NAMED ? ` and ${all.length - NAMED} more` : '';
  const [signs, shows] =
    all.length === 1
      ? ['no sign', 'the PDF shows a stand-in, the pages show it']
      : ['no signs', 'the PDF shows stand-ins, the pages show them'];
  const near = 'near' in at && at.near !== undefined ? `, in “${shortened(at.near)}”` : '';
  return {
    code: 'print.no-glyph',
    severity: 'warning',
    ...('path' in at ? { path: at.path } : {}),
    message: `the paper’s typefaces have ${signs} for ${named.join(', ')}${more}${near}; ${shows}`,
    hints: ['write it in Latin, Greek or Cyrillic letters, or leave it so'],
  };
}

function shortened(text: string): string {
  const characters = [...text];
  return characters.length > 40 ? `${characters.slice(0, 39).join('')}…` : text;
}
