/** Programs that the outside checks compare with: which of them this machine lacks, and the words that say so. */
import { execFileSync, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface Lacking {
  readonly some: boolean;
  /** For the end of a test's name; empty if nothing is lacking. */
  readonly words: string;
}

export function lacking(...programs: readonly string[]): Lacking {
  const missing = programs.filter((program) => !isHere(program));
  return {
    some: missing.length > 0,
    words: missing.length === 0 ? '' : ` (skipped: ${missing.join(' and ')} not on this machine)`,
  };
}

/** ImageMagick's `convert` has a namesake, so it has to say its name. */
function isHere(program: string): boolean {
  const { error, stdout } = spawnSync(program, [program === 'convert' ? '-version' : '-v'], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  return error === undefined && (program !== 'convert' || stdout.includes('ImageMagick'));
}

/** Runs a program to its end; what it prints. Throws, with its words, if it fails. */
export const run = (program: string, ...words: readonly string[]): Buffer =>
  execFileSync(program, words, { maxBuffer: 2 ** 28, stdio: ['ignore', 'pipe', 'pipe'] });

/** One HEIC file of one or more pictures, by libheif's own program. `options` are its own, for example `-p chroma=444`. */
export function heifEnc(to: string, from: readonly string[], ...options: readonly string[]): void {
  run('heif-enc', '-p', 'preset=ultrafast', '-q', '90', ...options, '-o', to, ...from);
}

/** Turns a HEIC file by quarters anticlockwise, as a phone held sideways does. */
export function turnHeic(from: string, to: string, quarters: number): void {
  run(process.execPath, fileURLToPath(new URL('turn-heic.mjs', import.meta.url)), from, to, String(quarters));
}

export type Tags = Readonly<Record<string, unknown>> & { readonly SourceFile: string };

/** Every tag of many files as numbers and texts, groups in front of the names, by ExifTool; in the order of the files. */
export function tagsOf(files: readonly string[], ...options: readonly string[]): Tags[] {
  if (files.length === 0) return [];
  return JSON.parse(run('exiftool', '-json', '-a', '-G1', '-n', ...options, ...files).toString()) as Tags[];
}
