/** What others say of a PDF: poppler of its pages and tags, veraPDF of the two standards. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const VERAPDF = fileURLToPath(new URL('../tools/verapdf', import.meta.url));

/**
 * `undefined` where pdfinfo is not here.
 * @param {string} file
 * @returns {{ pages: number, tagged: boolean } | undefined}
 */
export function pdfinfo(file) {
  const run = spawnSync('pdfinfo', [file], { encoding: 'utf8' });
  if (run.status !== 0) return undefined;
  return {
    pages: Number(/^Pages:\s+(\d+)$/m.exec(run.stdout)?.[1]),
    tagged: /^Tagged:\s+yes$/m.test(run.stdout),
  };
}

/**
 * How many rules of each profile fail. `undefined` where there is no Java or no way to veraPDF's artifacts.
 * @param {readonly string[]} files
 * @returns {Map<string, { '3b': number, ua1: number }> | undefined} by file
 */
export function veraPdf(files) {
  if (['java', 'mvn'].some((tool) => spawnSync(tool, ['-version']).status !== 0)) return undefined;
  const folder = mkdtempSync(path.join(tmpdir(), 'verapdf-'));
  try {
    const list = path.join(folder, 'class-path');
    const goal = 'org.apache.maven.plugins:maven-dependency-plugin:3.6.1:build-classpath';
    const words = ['-q', '-B', '-f', path.join(VERAPDF, 'pom.xml'), goal, `-Dmdep.outputFile=${list}`];
    if (spawnSync('mvn', words, { timeout: 300_000 }).status !== 0) return undefined;
    const classPath = readFileSync(list, 'utf8').trim();
    const said = execFileSync('java', ['-cp', classPath, path.join(VERAPDF, 'Validate.java'), ...files], {
      encoding: 'utf8',
      maxBuffer: 2 ** 26,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    const lines = said.split('\n').map((line) => line.split('\t'));
    return new Map(
      files.map((file) => {
        const failed = (/** @type {string} */ profile) => {
          const ofIt = lines.filter((line) => line[1] === file && line[2] === profile);
          if (!ofIt.some(([kind]) => kind === 'checked')) throw new Error(`veraPDF said nothing of ${file}`);
          return ofIt.filter(([kind]) => kind === 'failed').length;
        };
        return [file, { '3b': failed('3b'), ua1: failed('ua1') }];
      }),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
