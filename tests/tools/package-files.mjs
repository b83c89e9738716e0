/**
 * Which files the published package may hold, by pattern: neither how many nor what each is called, so that the compiled
 * program may be laid out anew.
 */
const ALLOWED = [
  /^(package\.json|README\.md|LICENSE|\.eleventy\.js)$/,
  /^templates\/([\w-]+\/)*[\w-]+\.(njk|css)$/,
  /^dist\/([\w-]+\/)*[\w-]+\.js$/,
  /^dist\/([\w-]+\/)*[\w-]+\.d\.ts$/,
  /^dist\/tally\/tables\/made\/([\w-]+\/)*[\w-]+\.json$/,
  /^dist\/fonts\/[\w-]+\.(ttf|woff2)$/,
  /^dist\/fonts\/OFL-\w+\.txt$/,
  /^dist\/house\.schema\.json$/,
];

const NEEDED = [
  'LICENSE',
  'README.md',
  'dist/cli.js',
  'dist/build.js',
  'dist/build.d.ts',
  'dist/house.schema.json',
];

/** What was compiled from code that is no part of the program. */
const FOREIGN = /\.test\.|^dist\/(tests?|bench|attack)\//;

/** Packed, the program is 3 MB; who adds a tenth of that ought to know. */
const MOST_BYTES = 7_500_000;

/** The kinds of files with their sizes, and what is wrong with the list, a line each. */
export function judgePackage(files) {
  const kinds = new Map();
  for (const { path, size } of files) {
    const kind = /(\.d\.ts|\.\w+)$/.exec(path)?.[0] ?? path;
    const { count, bytes } = kinds.get(kind) ?? { count: 0, bytes: 0 };
    kinds.set(kind, { count: count + 1, bytes: bytes + size });
  }
  const names = files.map(({ path }) => path);
  const whole = files.reduce((sum, { size }) => sum + size, 0);
  return {
    kinds: [...kinds].sort(([, one], [, other]) => other.bytes - one.bytes),
    wrong: [
      ...names
        .filter((name) => FOREIGN.test(name) || !ALLOWED.some((pattern) => pattern.test(name)))
        .map((name) => `${name} is in the package, and no kind of file that it may hold`),
      ...NEEDED.filter((name) => !names.includes(name)).map((name) => `${name} is not in the package`),
      ...names
        .filter((name) => /\.(ttf|woff2)$/.test(name))
        .map((name) => `dist/fonts/OFL-${/([^/]+)-\w+\.\w+$/.exec(name)?.[1]}.txt`)
        .filter((licence) => !names.includes(licence))
        .map((licence) => `${licence} is not in the package, and its typeface is`),
      ...(whole > MOST_BYTES ? [`the package unpacks to ${whole} bytes; the most is ${MOST_BYTES}`] : []),
    ],
  };
}
