/**
 * HEIC pictures become pixels, in other threads.
 *
 * The decoder (`libheif-js`) is an optional dependency, for its size and its licence (LGPL-3.0); where it is not
 * installed, `canReadHeic` says so before anything is tried.
 */
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';

export interface HeicPixels {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and alpha, a byte each, row by row from the top left of the upright picture. */
  readonly data: Uint8Array;
}

/** Twelve million pixels take one second; a file that takes this long does not end. */
const PATIENCE_MS = 90_000;

/** The same file for `src/intake` and `dist/intake`: a thread is started from a compiled file. */
const WORKER = fileURLToPath(new URL('../../dist/intake/heic-worker.js', import.meta.url));

/** What to install, in the version that this program was tried with. */
export const HEIC_PACKAGE = 'libheif-js@1.23.2';

/** Version of the decoder that is installed, on which the pixels may depend. */
export function heicVersion(): string | undefined {
  try {
    return (createRequire(import.meta.url)('libheif-js/package.json') as { version: string }).version;
  } catch {
    return undefined;
  }
}

/** Whether the decoder is installed. */
export function canReadHeic(name = 'libheif-js/wasm-bundle.js'): boolean {
  try {
    createRequire(import.meta.url).resolve(name);
    return true;
  } catch {
    return false;
  }
}

/** Threads that decode; none is started before the first picture comes. */
export class HeicDecoder {
  #pool: Tinypool | undefined;
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  /** Rejects if the file is no HEIC picture that the decoder knows, or takes longer than a minute and a half. */
  async decode(bytes: Uint8Array): Promise<HeicPixels> {
    this.#pool ??= new Tinypool({
      filename: WORKER,
      runtime: 'worker_threads',
      minThreads: 0,
      maxThreads: this.#most,
      // A thread that has the decoder loaded waits for the next photo; `close` ends it.
      idleTimeout: 60_000,
    });
    return (await this.#pool.run(bytes, { signal: AbortSignal.timeout(PATIENCE_MS) })) as HeicPixels;
  }

  /** Ends the threads. */
  async close(): Promise<void> {
    await this.#pool?.destroy();
  }
}
