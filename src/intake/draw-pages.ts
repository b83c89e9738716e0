/**
 * Pages of PDF files become pixels, in another thread that is ended where a page asks for more time or memory than a paper
 * of a house can need: a few hundred bytes may ask for hours and gigabytes.
 */
import { Worker } from 'node:worker_threads';

export interface PaperQuestion {
  readonly bytes: Uint8Array;
  readonly mostPages: number;
  /** A page as large as a wall is drawn smaller. */
  readonly mostPixels: number;
  /** Of the thread's own, in bytes. */
  readonly mostMemory: number;
  /** Dots an inch. */
  readonly dpi: number;
}

export interface PagePixels {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and alpha, a byte each, row by row from the top left. */
  readonly pixels: Uint8Array;
}

export type PaperAnswer =
  | ({ readonly kind: 'page' } & PagePixels)
  /** All pages that were asked for are drawn; the file has so many. */
  | { readonly kind: 'end'; readonly of: number }
  /** It is no PDF, is locked or damaged, or asks for too much memory. */
  | { readonly kind: 'no' };

/** `too-long`: it may be that it can be drawn, and that the machine had other things to do. */
export type Drawn =
  | { readonly pages: readonly PagePixels[]; readonly of: number }
  | { readonly why: 'no' | 'too-long' };

export interface PageLimits {
  /** Processor time for one file. */
  readonly mostMs: number;
  readonly mostMemory: number;
}

/** A scanned page takes a tenth of a second, and a receipt a hundredth; the memory is that of a page of 80 million pixels. */
export const PAGE_LIMITS: PageLimits = { mostMs: 4_000, mostMemory: 320 * 2 ** 20 };

const LOOK_MS = 50;

/** The same file for `src/intake` and `dist/intake`: a thread is started from a compiled file. */
const WORKER = new URL('../../dist/intake/paper-worker.js', import.meta.url);

/** Draws one file after the other. The thread is started with the first. */
export class PageDrawer {
  #worker: Worker | undefined;
  readonly #limits: PageLimits;

  constructor(limits = PAGE_LIMITS) {
    this.#limits = limits;
  }

  async draw(question: Omit<PaperQuestion, 'mostMemory'>): Promise<Drawn> {
    // What the library says on its way out is kept back; what comes of it is told in one place.
    this.#worker ??= new Worker(WORKER, { stdout: true, stderr: true });
    const worker = this.#worker;
    const drawn = await this.#answers(worker, question);
    // After a page that was too much, nobody knows what state the library is in.
    if ('why' in drawn) await this.close();
    return drawn;
  }

  #answers(worker: Worker, question: Omit<PaperQuestion, 'mostMemory'>): Promise<Drawn> {
    const { mostMs, mostMemory } = this.#limits;
    const pages: PagePixels[] = [];
    const cpu = process.cpuUsage();
    let looks = 0;
    return new Promise<Drawn>((resolve, reject) => {
      const end = (settle: () => void): void => {
        clearInterval(looking);
        worker.off('message', hear).off('error', fail).off('exit', gone);
        settle();
      };
      // Both clocks: this process may do other work at the same time, and others may keep it from doing any.
      const looking = setInterval(() => {
        looks += 1;
        const { user, system } = process.cpuUsage(cpu);
        if ((user + system) / 1000 > mostMs && looks * LOOK_MS > mostMs)
          end(() => resolve({ why: 'too-long' }));
      }, LOOK_MS);
      const hear = (answer: PaperAnswer): void => {
        if (answer.kind === 'page') pages.push(answer);
        else if (answer.kind === 'no') end(() => resolve({ why: 'no' }));
        else end(() => resolve({ pages, of: answer.of }));
      };
      const fail = (thrown: NodeJS.ErrnoException): void =>
        end(() => (thrown.code === 'ERR_WORKER_OUT_OF_MEMORY' ? resolve({ why: 'no' }) : reject(thrown)));
      const gone = (): void => end(() => reject(new Error('the thread that draws papers ended by itself')));
      worker.on('message', hear).on('error', fail).on('exit', gone);
      worker.postMessage({ ...question, mostMemory } satisfies PaperQuestion);
    });
  }

  /** Ends the thread, also in the middle of a page. */
  async close(): Promise<void> {
    const worker = this.#worker;
    this.#worker = undefined;
    await worker?.terminate();
  }
}
