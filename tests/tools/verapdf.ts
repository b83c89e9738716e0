/** veraPDF, from its published Maven artifacts: resolved once, run as a Java source file. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const FOLDER = fileURLToPath(new URL('verapdf', import.meta.url));

/** For a run of a minute beside other tests: one thread collects garbage, and nothing is compiled twice. */
const JVM = ['-XX:+UseSerialGC', '-XX:TieredStopAtLevel=1'];

/** The class path; undefined where there is no Java, no Maven, or no way to what Maven asks for. */
export function resolveVeraPdf(): string | undefined {
  if (['java', 'mvn'].some((tool) => spawnSync(tool, ['-version']).status !== 0)) return undefined;
  const list = path.join(mkdtempSync(path.join(tmpdir(), 'verapdf-')), 'class-path');
  const goal = 'org.apache.maven.plugins:maven-dependency-plugin:3.6.1:build-classpath';
  const words = ['-q', '-B', '-f', path.join(FOLDER, 'pom.xml'), goal, `-Dmdep.outputFile=${list}`];
  const run = spawnSync('mvn', words, { timeout: 300_000 });
  return run.status === 0 ? readFileSync(list, 'utf8').trim() : undefined;
}

export interface Validated {
  readonly file: string;
  /** `3b` or `ua1`. */
  readonly profile: string;
  readonly checks: number;
  /** Clause, test, and what of the first place that failed it. */
  readonly failed: readonly string[];
}

export function validate(classPath: string, files: readonly string[]): Validated[] {
  const said = execFileSync(
    'java',
    [...JVM, '-cp', classPath, path.join(FOLDER, 'Validate.java'), ...files],
    {
      encoding: 'utf8',
      maxBuffer: 2 ** 26,
      stdio: ['ignore', 'pipe', 'ignore'],
    },
  );
  const lines = said.split('\n').map((line) => line.split('\t'));
  return lines
    .filter(([kind]) => kind === 'checked')
    .map(([, file = '', profile = '', checks = '']) => ({
      file,
      profile,
      checks: Number(checks),
      failed: lines
        .filter((line) => line[0] === 'failed' && line[1] === file && line[2] === profile)
        .map(([, , , rule, what]) => `${rule} ${what}`),
    }));
}
