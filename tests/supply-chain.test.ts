/**
 * What the program stands on and what is published of it: every library has a reason and a licence that goes with ours, runs
 * nothing when it is installed, and works on the oldest Node; the package holds what is needed and no more.
 *
 * Read from package-lock.json and the installed packages; `npm run check:package` tries the package itself.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';

const require = createRequire(import.meta.url);
const { satisfies, minVersion } = require('semver') as {
  satisfies(version: string, range: string): boolean;
  minVersion(range: string): { readonly version: string } | null;
};

interface LockEntry {
  readonly version: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly deprecated?: string;
  readonly hasInstallScript?: true;
  readonly os?: readonly string[];
  readonly engines?: { readonly node?: string };
}
type RuntimePackage = LockEntry & { readonly name: string; readonly folder: string };
interface PackedFile {
  readonly path: string;
  readonly size: number;
}

const at = (file: string): string => new URL(`tools/${file}`, import.meta.url).href;
const { runtimePackages, licencesTable } = (await import(at('runtime-packages.mjs'))) as {
  runtimePackages(): RuntimePackage[];
  licencesTable(packages: readonly Pick<RuntimePackage, 'name' | 'license'>[]): string;
};
const { judgePackage } = (await import(at('package-files.mjs'))) as {
  judgePackage(files: readonly PackedFile[]): { readonly wrong: readonly string[] };
};

const { innerFiles } = (await import(at('inner-files.mjs'))) as { innerFiles(): string[] };

const read = (file: string): string => readFileSync(file, 'utf8');
const json = (file: string) => JSON.parse(read(file));
const project = json('package.json');
const lock: Readonly<Record<string, LockEntry>> = json('package-lock.json').packages;
const developers = read('DEVELOPERS.md');
const packages = runtimePackages();
const installed = packages.filter(({ folder }) => existsSync(path.join(folder, 'package.json')));
const direct: Readonly<Record<string, string>> = { ...project.dependencies, ...project.optionalDependencies };

/** What a licence's text says somewhere, blanks taken as one. */
const TEXTS: Readonly<Record<string, RegExp>> = {
  MIT: /Permission is hereby granted, free of charge|Licensed under the MIT license/i,
  ISC: /Permission to use, copy, modify,? and\/or distribute this software|ISC License/i,
  '0BSD': /Permission to use, copy, modify, and\/or distribute this software/i,
  'BSD-2-Clause': /Redistribution and use in source and binary forms/i,
  'BSD-3-Clause': /Redistribution and use in source and binary forms.*Neither the name/i,
  'BDS-3-Clause':
    /BSD 3-Clause License.*Redistribution and use in source and binary forms.*Neither the name/i,
  'Apache-2.0': /Apache License,? Version 2\.0/i,
  'BlueOak-1.0.0': /Blue Oak Model License/i,
  'Python-2.0': /PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2/i,
  'PSF-2.0': /PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2/i,
  'MPL-2.0': /Mozilla Public License,? (Version|v\.) ?2\.0/i,
  'LGPL-3.0': /GNU LESSER GENERAL PUBLIC LICENSE Version 3/i,
};
/** Ask more than a notice, and so are looked at one by one (DEVELOPERS.md, Licences). */
const ASK_MORE: Readonly<Record<string, RegExp>> = {
  'MPL-2.0': /^exifreader$/,
  'LGPL-3.0': /^libheif-js$/,
  'LGPL-3.0-or-later': /^@img\/sharp-(libvips|win32|wasm32)/,
};

/** Undefined where a licence goes with publishing ours under MIT. */
function objection({
  name,
  license = 'no licence',
}: Pick<RuntimePackage, 'name' | 'license'>): string | undefined {
  const fits = license
    .split(' AND ')
    .every((one) => ASK_MORE[one]?.test(name) ?? (TEXTS[one] !== undefined && !one.startsWith('LGPL')));
  return fits ? undefined : `${name}: ${license}`;
}

/** The names in the first column of the table of reasons. */
function reasonedNames(text: string): string[] {
  const table =
    /### Runtime dependencies.*?\n\| package \| for \|\n\|---\|---\|\n((?:\|[^\n]*\n)+)/s.exec(text)?.[1] ??
    '';
  return table
    .trim()
    .split('\n')
    .flatMap((row) => [...(row.split('|')[1] ?? '').matchAll(/`([^`]+)`/g)].map(([, name]) => name ?? ''));
}

describe('libraries', () => {
  it('are seen, direct ones and those they bring along', () => {
    expect(packages.length).toBeGreaterThan(200);
    expect(installed.length).toBeGreaterThan(200);
    for (const name of Object.keys(direct)) expect(lock[`node_modules/${name}`], name).toBeDefined();
  });

  it('have a reason each in DEVELOPERS.md, and no row is about another', () => {
    const forks = Object.values(direct).flatMap((version) => /^npm:(.+)@/.exec(version)?.[1] ?? []);
    expect(reasonedNames(developers).sort()).toEqual([...Object.keys(direct), ...forks].sort());
    expect(
      reasonedNames('### Runtime dependencies\n\n| package | for |\n|---|---|\n| `a` and `b` | `c` |\n'),
    ).toEqual(['a', 'b']);
  });

  it('have licences that go with ours', () => {
    expect(packages.flatMap((one) => objection(one) ?? [])).toEqual([]);
    for (const license of ['GPL-3.0', 'LGPL-3.0', 'MIT AND AGPL-3.0', 'UNLICENSED', undefined])
      expect(objection({ name: 'made-up', license }), license).toBeDefined();
  });

  it('say of themselves what the lock says of them, in package.json and in the text beside it', () => {
    const wrong = installed.flatMap(({ name, folder, version, license = '' }) => {
      const own = json(path.join(folder, 'package.json'));
      const texts = readdirSync(folder)
        .filter((file) => /^licen[cs]e/i.test(file))
        .map((file) => read(path.join(folder, file)).replace(/\s+/g, ' '));
      const agrees = texts.length === 0 || texts.some((text) => TEXTS[license]?.test(text));
      return own.license === license && own.version === version && agrees
        ? []
        : [`${name} ${own.version}: ${own.license}`];
    });
    expect(wrong).toEqual([]);
    expect(TEXTS.MIT?.test(read('LICENSE'))).toBe(true);
    expect(TEXTS['Apache-2.0']?.test(read('LICENSE'))).toBe(false);
  });

  it('are listed by licence in DEVELOPERS.md', () => {
    const listed = /<!-- licences:begin -->\n([\s\S]*?)<!-- licences:end -->/.exec(developers)?.[1];
    expect(listed, 'run node tests/tools/write-docs.mjs').toBe(licencesTable(packages));
    expect(licencesTable([{ name: 'a', license: 'X' }])).toContain('| X | 1 | `a` |');
  });

  it('are kept: none is called deprecated', () => {
    expect(packages.filter(({ deprecated }) => deprecated !== undefined).map(({ name }) => name)).toEqual([]);
  });

  it('run on the oldest Node that we promise', () => {
    const oldest = minVersion(project.engines.node)?.version ?? '';
    expect(oldest).toBe('20.19.0');
    const refuse = packages.filter(
      ({ engines }) => engines?.node !== undefined && !satisfies(oldest, engines.node),
    );
    expect(refuse.map(({ name, engines }) => `${name}: ${engines?.node}`)).toEqual([]);
    expect(satisfies('20.18.0', lock['node_modules/@noble/curves']?.engines?.node ?? '')).toBe(false);
  });

  it('run nothing when they are installed, but for one that then looks for a word we do not have', () => {
    expect(packages.filter(({ hasInstallScript }) => hasInstallScript).map(({ name }) => name)).toEqual([
      'exifreader',
    ]);
    // It builds itself anew, with tools from the registry, only for a package.json above it with a word `exifreader`.
    expect(json('node_modules/exifreader/package.json').scripts.postinstall).toBe(
      'node bin/build.js --only-with-config',
    );
    expect(project.exifreader).toBeUndefined();
    const scripts = installed.filter(({ folder }) =>
      ['preinstall', 'install', 'postinstall'].some(
        (word) => json(path.join(folder, 'package.json')).scripts?.[word],
      ),
    );
    expect(scripts.map(({ name }) => name)).toEqual(['exifreader']);
  });

  it('bring compiled code in the packages that are known for it, and in no other', () => {
    const compiled = installed.filter(({ folder }) =>
      readdirSync(folder, { recursive: true }).some((file) =>
        /\.(node|wasm|so(\.\d+)*|dylib|dll|exe)$/.test(String(file)),
      ),
    );
    const names = compiled.map(({ name }) => name).filter((name) => !name.startsWith('@img/sharp'));
    expect(names).toEqual(
      ['@hyzyla/pdfium', 'harfbuzzjs', 'libheif-js'].filter((name) => names.includes(name)),
    );
    expect(names).toContain('harfbuzzjs');
  });
});

describe('package-lock.json', () => {
  const entries = Object.entries(lock).filter(([folder]) => folder !== '');

  it('names no registry and no other address that something is fetched from', () => {
    expect(entries.filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
    expect(entries.filter(([, { version }]) => !/^\d+\.\d+\.\d+/.test(version))).toEqual([]);
    // What is left are pages that ask for money.
    expect(read('package-lock.json').match(/https?:\/\/[^"]*(registry|\.tgz)[^"]*/g)).toBeNull();
  });

  it('has the digest of every package', () => {
    expect(
      entries.filter(([, { integrity }]) => !/^sha512-/.test(integrity ?? '')).map(([folder]) => folder),
    ).toEqual([]);
  });

  it('is of this package.json, whose versions are exact', () => {
    for (const words of ['dependencies', 'optionalDependencies', 'devDependencies'] as const) {
      expect((lock[''] as unknown as Record<string, unknown>)[words]).toEqual(project[words]);
      for (const [name, version] of Object.entries<string>(project[words]))
        expect(/^(npm:@?[\w/-]+@)?\d+\.\d+\.\d+$/.test(version), `${name} ${version}`).toBe(true);
    }
  });
});

describe('the package', () => {
  it('holds what is needed, and nothing else', () => {
    const said = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
      encoding: 'utf8',
      maxBuffer: 2 ** 26,
    });
    const [{ files: all }] = JSON.parse(said) as [{ files: PackedFile[] }];
    // What `prepack` takes away before npm packs.
    const inner = new Set(innerFiles());
    const files = all.filter((file) => !inner.has(file.path));
    expect(files.length).toBeLessThan(all.length);
    expect(files.length).toBeGreaterThan(20);
    expect(judgePackage(files).wrong).toEqual([]);
    for (const odd of [
      'dist/cli.js.map',
      'src/cli.ts',
      'tests/a.test.ts',
      'dist/a.test.js',
      'content/a/house.yaml',
      '.npmrc',
    ])
      expect(judgePackage([...files, { path: odd, size: 1 }]).wrong, odd).toHaveLength(1);
    const lacking = files.filter(({ path: file }) => !/LICENSE|OFL-SourceSans3|cli\.js/.test(file));
    expect(judgePackage(lacking).wrong.join()).toMatch(/LICENSE.*cli\.js.*OFL-SourceSans3/);
    expect(judgePackage([...files, { path: 'dist/big.js', size: 1e7 }]).wrong.join()).toContain(
      'the most is',
    );
  });

  it('carries the licence of the typefaces beside them and in them, and that of the code that it took in', () => {
    const fonts = readdirSync('dist/fonts');
    for (const family of ['SourceSerif4', 'SourceSans3']) {
      expect(read(`dist/fonts/OFL-${family}.txt`)).toMatch(
        /Copyright .*Adobe[\s\S]*SIL OPEN FONT LICENSE Version 1\.1/,
      );
      const files = fonts.filter((file) => file.startsWith(family));
      expect(files).toHaveLength(6);
      for (const file of files) {
        const { name } = create(readFileSync(`dist/fonts/${file}`)) as unknown as {
          name: { records: Record<string, Record<string, string>> };
        };
        expect(name.records.license?.en, file).toContain('SIL Open Font License');
      }
    }
    expect(read('dist/browser/search-engine.js')).toContain(
      read('node_modules/minisearch/LICENSE.txt').split('\n')[0],
    );
  });
});
