/**
 * Writes src/packet/face-widths.ts, the packet's own table of how wide letters are, from the faces that print draws
 * drawings with. Run `npm run compile` first, after a change of faces or of a drawing's letters.
 * `tests/rooms/packet-letter-widths.test.ts` fails where the table has fallen behind.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const FILE = 'src/packet/face-widths.ts';
const LAST_CODE_POINT = 0x10ffff;
const DIGITS = '0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ-_';
const LINE = 100;

let faces;
try {
  faces = (await import('../../dist/print/faces.js')).loadFaces();
} catch (error) {
  if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
  process.stderr.write('dist/ is missing: run npm run compile first\n');
  process.exit(1);
}
const cuts = { upright: faces.sans, italic: faces['sans-italic'] };

/** Those that all cuts have; a drawing's letters differ in their cut alone. */
const codePoints = Array.from({ length: LAST_CODE_POINT + 1 }, (_, codePoint) => codePoint).filter(
  (codePoint) => Object.values(cuts).every((face) => face.has(codePoint)),
);

/** `20-7e a0-17f …` */
function stretches() {
  const found = [];
  for (const codePoint of codePoints) {
    const last = found.at(-1);
    if (last?.[1] === codePoint - 1) last[1] = codePoint;
    else found.push([codePoint, codePoint]);
  }
  return found.map(([from, to]) =>
    from === to ? from.toString(16) : `${from.toString(16)}-${to.toString(16)}`,
  );
}

/** As print shapes it by itself. */
function widthOf(face, codePoint) {
  const glyphs = face.shape(String.fromCodePoint(codePoint), 'tabular');
  const width = glyphs.reduce((sum, glyph) => sum + glyph.advance, 0);
  if (!Number.isInteger(width) || width < 0 || width >= DIGITS.length ** 2)
    throw new Error(`U+${codePoint.toString(16)} is ${width} wide: two digits can't say that`);
  return DIGITS[Math.floor(width / DIGITS.length)] + DIGITS[width % DIGITS.length];
}

/** Parts in lines, with `between` them. */
function inLines(parts, between) {
  const lines = [''];
  for (const part of parts) {
    const line = lines.at(-1);
    if (line === '') lines[lines.length - 1] = part;
    else if (line.length + between.length + part.length > LINE) lines.push(part);
    else lines[lines.length - 1] += between + part;
  }
  return lines.join('\n');
}

const widths = (face) =>
  inLines(
    codePoints.map((codePoint) => widthOf(face, codePoint)),
    '',
  );

const text = `/**
 * How wide each character is in the faces that drawings are lettered in: Source Sans 3, upright and italic, with
 * figures of one width. Written by tests/tools/write-letter-widths.mjs; not to be edited by hand.
 */

/** The ${codePoints.length} characters that both faces have: code points in base 16, single ones and stretches. */
export const CHARACTERS = \`
${inLines(stretches(), ' ')}
\`;

/** What the two digits of a width are taken from, the least first. */
export const DIGITS = '${DIGITS}';

/** The widths of these characters, in their order: two digits each, in thousandths of the type size. */
export const WIDTHS = {
  upright: \`
${widths(cuts.upright)}
\`,
  italic: \`
${widths(cuts.italic)}
\`,
} as const;
`;

writeFileSync(fileURLToPath(new URL(`../../${FILE}`, import.meta.url)), text);
process.stdout.write(`${FILE}: ${codePoints.length} characters\n`);
