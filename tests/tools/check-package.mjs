/**
 * What `npm pack` gives, looked at and tried: which files are in it, and whether the program works from it in an empty
 * folder, installed in three ways. Run before a release:  npm run check:package
 *
 * It compiles a copy of the project and asks npm for the dependencies, from its cache where they are in it. That takes
 * about a minute of processor time and may need the registry, so it is no part of  npm test.
 */
import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { judgePackage } from './package-files.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const work = mkdtempSync(path.join(tmpdir(), 'sillplate-package-'));
const AS_OF = ['--as-of', '2026-11-20'];

const say = (line) => process.stdout.write(`${line}\n`);

/** Runs a program to its end and answers with what it said; throws where it ends otherwise than it should. */
function run(cwd, program, words, status = 0) {
  const ended = spawnSync(program, words, {
    cwd,
    encoding: 'utf8',
    maxBuffer: 2 ** 27,
    env: { ...process.env, CI: '1' },
  });
  const said = `${ended.stdout ?? ''}${ended.stderr ?? ''}`;
  if (ended.status !== status || /^ {4}at .+:\d+:\d+/m.test(said))
    throw new Error(
      `${path.basename(program)} ${words.join(' ')} ended with ${ended.status}:\n${ended.error ?? said}`,
    );
  return said;
}

function needs(said, words, what) {
  if (!said.includes(words)) throw new Error(`${what} does not say “${words}”:\n${said}`);
}

/** Packs a copy, so that dist/ stays as it is for whoever works with it. */
function pack() {
  const copy = path.join(work, 'copy');
  const files = run(root, 'git', ['ls-files', '-co', '--exclude-standard']).split('\n');
  for (const file of files.filter((one) => /^(?!content\/|tests\/(?!tools\/))./.test(one)))
    cpSync(path.join(root, file), path.join(copy, file));
  symlinkSync(path.join(root, 'node_modules'), path.join(copy, 'node_modules'));
  const said = run(copy, 'npm', ['pack', '--json', '--pack-destination', work]);
  return JSON.parse(said.slice(said.indexOf('[')))[0];
}

/** A new house, built, asked and archived, as somebody would who has only read how to begin. */
function tryProgram(folder, withPhoto) {
  const sillplate = (words, status) =>
    run(folder, path.join(folder, 'node_modules/.bin/sillplate'), words, status);
  run(folder, 'npx', ['--no-install', 'sillplate', '--version']);
  sillplate(['new', 'content/my-house', '--yes']);
  if (withPhoto) {
    cpSync(
      path.join(root, 'content/quarry-road/photos/IMG_0412.jpg'),
      path.join(folder, 'content/my-house/photos/hall.jpg'),
    );
    appendFileSync(
      path.join(folder, 'content/my-house/house.yaml'),
      '\nphotos:\n  hall: { shows: hall, when: as-found, file: hall.jpg, alt: A hall with a stair. }\n',
    );
  }
  sillplate(['check', 'my-house', ...AS_OF]);
  needs(sillplate(['build', 'my-house', ...AS_OF]), 'out/my-house/buyer/index.html', 'build');
  needs(sillplate(['ask', 'how old is the roof', 'my-house', ...AS_OF]), 'roof', 'ask');
  needs(sillplate(['archive', 'my-house', ...AS_OF]), 'archive/my-house/my-house-2026-11-20', 'archive');
  needs(sillplate(['verify', 'archive/my-house/my-house-2026-11-20']), 'It is whole', 'verify of the bag');
  const pdf = 'out/my-house/buyer/my-house-buyer.pdf';
  needs(sillplate(['verify', pdf]), 'makes, byte for byte', 'verify of the PDF');
  const photos = readdirSync(path.join(folder, 'out/my-house/buyer'), { recursive: true }).filter((one) =>
    /\.avif$/.test(one),
  );
  if (photos.length > 0 !== withPhoto) throw new Error(`${photos.length} pictures beside the pages`);
  return sillplate;
}

function installed(name, words, tarball) {
  const folder = path.join(work, name);
  mkdirSync(folder);
  run(folder, 'npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', ...words, tarball]);
  return folder;
}

/** Another program's source, checked against the declarations that are in the package, and those of libraries with them. */
function tryTypes(folder) {
  writeFileSync(
    path.join(folder, 'importer.mts'),
    `import { buildHouse, checkHouseFolder, packetsForEleventy } from 'sillplate';
import type { House, HouseSpec } from 'sillplate/facts';
import type { Packet } from 'sillplate/packet';
export const name = (house: House, spec: HouseSpec, packet: Packet): string[] => [
  house.house.name, spec.house.name, packet.house.name, typeof buildHouse, typeof checkHouseFolder, typeof packetsForEleventy,
];
`,
  );
  const typeRoots = ['--typeRoots', path.join(root, 'node_modules/@types'), '--types', 'node'];
  const options = [
    '--noEmit',
    '--strict',
    '--target',
    'es2022',
    '--lib',
    'es2023',
    '--module',
    'nodenext',
    ...typeRoots,
  ];
  run(folder, process.execPath, [
    path.join(root, 'node_modules/typescript/bin/tsc'),
    ...options,
    'importer.mts',
  ]);
}

try {
  const { files, filename, size, unpackedSize } = pack();
  const { kinds, wrong } = judgePackage(files);
  for (const [kind, { count, bytes }] of kinds)
    say(`${String(count).padStart(5)} ${kind.padEnd(8)} ${(bytes / 1000).toFixed(0).padStart(6)} kB`);
  say(`${files.length} files, ${(unpackedSize / 1e6).toFixed(1)} MB, packed ${(size / 1e6).toFixed(1)} MB`);
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
  const tarball = path.join(work, filename);

  const plain = installed('plain', [], tarball);
  const sillplate = tryProgram(plain, true);
  tryTypes(plain);
  say('as it is: works, with a photo; its types can be imported');
  rmSync(path.join(plain, 'node_modules/libheif-js'), { recursive: true });
  sillplate(['build', 'my-house', ...AS_OF]);
  say('without libheif-js: works');

  tryProgram(installed('no-scripts', ['--ignore-scripts'], tarball), true);
  say('--ignore-scripts: works, with a photo');

  // npm leaves the compiled half of sharp out as well, and no photo can be read then.
  const bare = installed('no-optional', ['--omit=optional'], tarball);
  const poor = tryProgram(bare, false);
  cpSync(path.join(plain, 'content'), path.join(bare, 'content'), { recursive: true });
  needs(poor(['check', 'my-house', ...AS_OF]), 'is not installed for this machine', 'check of a photo');
  say('--omit=optional: works without photos, and says why it can’t read one');
} catch (thrown) {
  process.exitCode = 1;
  say(`not as it should be: ${thrown.message}`);
} finally {
  rmSync(work, { recursive: true, force: true });
}
