/**
 * ICC profiles of colour spaces that are published as three primaries, a white and a curve: worked out here, so that
 * checks of colour do not rest on a profile that a library brings along.
 *
 * Layout: ICC.1:2010 (version 4.3), 7.2 and 9.2.44 to 10.16. White adapted to D50 by the Bradford matrix of its annex E.
 */

type Three = readonly [number, number, number];
type Matrix = readonly [Three, Three, Three];

export interface ColourSpace {
  readonly name: string;
  /** x and y of red, green and blue. */
  readonly primaries: readonly (readonly [number, number])[];
  readonly curve: 'srgb' | number;
}

/** CSS Color Module Level 4, 10.4 and 10.5; both with D65 (x 0.3127, y 0.3290). */
export const SRGB: ColourSpace = {
  name: 'made sRGB',
  primaries: [
    [0.64, 0.33],
    [0.3, 0.6],
    [0.15, 0.06],
  ],
  curve: 'srgb',
};
export const DISPLAY_P3: ColourSpace = {
  name: 'made Display P3',
  primaries: [
    [0.68, 0.32],
    [0.265, 0.69],
    [0.15, 0.06],
  ],
  curve: 'srgb',
};
/** Adobe RGB (1998) Color Image Encoding, version 2005-05, 4.3.1: gamma 2 51/256. */
export const ADOBE_RGB: ColourSpace = {
  name: 'made Adobe RGB',
  primaries: [
    [0.64, 0.33],
    [0.21, 0.71],
    [0.15, 0.06],
  ],
  curve: 2 + 51 / 256,
};

const D65 = [0.3127, 0.329] as const;
const D50: Three = [0.9642, 1, 0.8249];
const BRADFORD: Matrix = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
];

export function profileOf({ name, primaries, curve }: ColourSpace): Buffer {
  const columns = primaries.map(fromXy) as [Three, Three, Three];
  const white = fromXy(D65);
  const unscaled = transposed(columns);
  const scale = times(inverse(unscaled), white);
  const adapt = adaptation(white);
  const [red, green, blue] = columns.map((column, i) =>
    times(adapt, column.map((each) => each * (scale[i] ?? 0)) as unknown as Three),
  ) as [Three, Three, Three];
  const toneCurve = curveTag(curve);
  const tags: readonly (readonly [string, Buffer])[] = [
    ['desc', text(name)],
    ['cprt', text('none')],
    ['wtpt', xyz(D50)],
    ['chad', tag('sf32', ...adapt.flat().map(fixed))],
    ['rXYZ', xyz(red)],
    ['gXYZ', xyz(green)],
    ['bXYZ', xyz(blue)],
    ['rTRC', toneCurve],
    ['gTRC', toneCurve],
    ['bTRC', toneCurve],
  ];
  return file('RGB ', tags);
}

/** A grey space with a curve alone, as scanners and picture programs write it. */
export const greyProfile = (): Buffer =>
  file('GRAY', [
    ['desc', text('made grey')],
    ['cprt', text('none')],
    ['wtpt', xyz(D50)],
    ['kTRC', curveTag(2.2)],
  ]);

function file(colours: 'RGB ' | 'GRAY', tags: readonly (readonly [string, Buffer])[]): Buffer {
  let at = 128 + 4 + tags.length * 12;
  const table = [whole(tags.length)];
  for (const [signature, { length }] of tags) {
    table.push(Buffer.from(signature, 'latin1'), whole(at), whole(length));
    at += length;
  }
  const header = Buffer.alloc(128);
  header.writeUInt32BE(at, 0);
  header.writeUInt32BE(0x0430_0000, 8);
  header.write(`mntr${colours}XYZ `, 12, 'latin1');
  // A date has to stand here; any will do.
  header.writeUInt16BE(2000, 24);
  header.writeUInt16BE(1, 26);
  header.writeUInt16BE(1, 28);
  header.write('acsp', 36, 'latin1');
  D50.forEach((each, i) => {
    fixed(each).copy(header, 68 + 4 * i);
  });
  return Buffer.concat([header, ...table, ...tags.map(([, bytes]) => bytes)]);
}

const fromXy = ([x, y]: readonly [number, number]): Three => [x / y, 1, (1 - x - y) / y];

function adaptation(white: Three): Matrix {
  const [from, to] = [times(BRADFORD, white), times(BRADFORD, D50)];
  const scaled = BRADFORD.map((row, i) =>
    row.map((each) => (each * (to[i] ?? 0)) / (from[i] ?? 1)),
  ) as unknown as Matrix;
  return product(inverse(BRADFORD), scaled);
}

const times = (matrix: Matrix, vector: Three): Three =>
  matrix.map((row) => row.reduce((sum, each, i) => sum + each * (vector[i] ?? 0), 0)) as unknown as Three;

const transposed = (matrix: Matrix): Matrix =>
  [0, 1, 2].map((i) => matrix.map((row) => row[i] ?? 0)) as unknown as Matrix;

const product = (one: Matrix, other: Matrix): Matrix =>
  transposed(transposed(other).map((column) => times(one, column)) as unknown as Matrix);

function inverse([a, b, c]: Matrix): Matrix {
  const cross = (u: Three, v: Three): Three => [
    u[1] * v[2] - u[2] * v[1],
    u[2] * v[0] - u[0] * v[2],
    u[0] * v[1] - u[1] * v[0],
  ];
  const whole = cross(b, c).reduce((sum, each, i) => sum + each * (a[i] ?? 0), 0);
  const columns = [cross(b, c), cross(c, a), cross(a, b)];
  return transposed(columns.map((column) => column.map((each) => each / whole)) as unknown as Matrix);
}

function whole(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(value);
  return bytes;
}

/** s15Fixed16Number. */
function fixed(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeInt32BE(Math.round(value * 65_536));
  return bytes;
}

/** A tag's bytes: its type, four zeros, its body, filled up to a multiple of four. */
function tag(type: string, ...body: readonly Buffer[]): Buffer {
  const bytes = Buffer.concat([Buffer.from(`${type}\0\0\0\0`, 'latin1'), ...body]);
  return Buffer.concat([bytes, Buffer.alloc((4 - (bytes.length % 4)) % 4)]);
}

const xyz = (value: Three): Buffer => tag('XYZ ', ...value.map(fixed));

function text(words: string): Buffer {
  const letters = Buffer.from(words, 'utf16le').swap16();
  return tag(
    'mluc',
    whole(1),
    whole(12),
    Buffer.from('enUS', 'latin1'),
    whole(letters.length),
    whole(28),
    letters,
  );
}

/** parametricCurveType: 0 is a power alone, 3 a power with a straight beginning. */
function curveTag(curve: 'srgb' | number): Buffer {
  const of = (kind: number, values: readonly number[]): Buffer =>
    tag('para', Buffer.from([0, kind, 0, 0]), ...values.map(fixed));
  return curve === 'srgb' ? of(3, [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.040_45]) : of(0, [curve]);
}
