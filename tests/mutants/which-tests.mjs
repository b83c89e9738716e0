/**
 * Which tests judge the mutants of which folder: pure ones, quick, without another program beside them. What judges a folder
 * also with other parts in its way is left to that part's own tests; a survivor costs every test that meets it.
 */
import { readdirSync } from 'node:fs';
import path from 'node:path';

const TABLES = /^tests\/rooms\/tally-(tables|gaps)\.test\.ts$/;
/** By folder of `src/tally`, the first that fits. @type {readonly (readonly [folder: RegExp, tests: readonly RegExp[]])[]} */
const JUDGES = [
  [
    /^remarks\//,
    [
      /^tests\/rooms\/(tally-remarks(?!-corpus|-length)|remarks-)[^/]*\.test\.ts$/,
      /^tests\/properties\/remarks\.test\.ts$/,
    ],
  ],
  [
    /^money\//,
    [/^tests\/rooms\/tally-money[^/]*\.test\.ts$/, /^tests\/outside\/irs-examples\.test\.ts$/, TABLES],
  ],
  [/^clashes\//, [/^tests\/(rooms|properties)\/(tally-)?clashes[^/]*\.test\.ts$/]],
  [
    /^duties\//,
    [/^tests\/rooms\/tally-(duties|lead)[^/]*\.test\.ts$/, /^tests\/outside\/(duties|lead)-[^/]*\.test\.ts$/],
  ],
  [
    /^/,
    [
      // The tables that the build makes are tested with a folder on disk.
      /^tests\/rooms\/tally-(?!remarks|made-tables)[^/]*\.test\.ts$/,
      /^tests\/rooms\/tally-remarks-length\.test\.ts$/,
      /^tests\/outside\/(advertising|ages|duties|lead|measuring|quantities|safety)-[^/]*\.test\.ts$/,
      /^tests\/outside\/(areas-d3-polygon|irs-examples)\.test\.ts$/,
    ],
  ],
];

/**
 * Tests that are not run: those that measure time, which an instrumented program and a busy machine both stretch, and those
 * that take long to say again of many texts at once what others say of one.
 */
export const NOT_HERE = new RegExp(
  [
    'takes time in step',
    'how long it takes',
    'are all told of that the labelled remarks bring up',
    'underlines whole characters of the draft',
    'takes odd text without a word',
    'what the program writes is never objected to',
    'checking a draft (never throws|says the same twice|marks below)',
    'is marked nowhere again',
  ].join('|'),
);

/**
 * @param {string} root the project's folder
 * @param {readonly string[]} changed files of the program that hold mutants
 */
export function testFiles(root, changed) {
  const judges = new Set(
    changed.flatMap((file) => {
      const place = path.relative(path.join(root, 'src/tally'), file);
      return JUDGES.find(([folder]) => folder.test(place))?.[1] ?? [];
    }),
  );
  return ['tests/rooms', 'tests/outside', 'tests/properties']
    .flatMap((folder) => readdirSync(path.join(root, folder)).map((name) => `${folder}/${name}`))
    .filter((file) => [...judges].some((one) => one.test(file)))
    .sort()
    .map((file) => path.join(root, file));
}
