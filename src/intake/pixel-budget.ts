/**
 * Lets so many pixels be worked on at once, so that memory stays the same however many photos there are.
 *
 * A photo larger than the whole budget is worked on alone. First come, first served.
 */
export class PixelBudget {
  #free: number;
  readonly #all: number;
  readonly #waiting: { readonly pixels: number; readonly go: () => void }[] = [];

  constructor(pixels: number) {
    this.#all = pixels;
    this.#free = pixels;
  }

  /** Waits for its turn, does the work, and gives the pixels back whatever comes of it. */
  async within<T>(pixels: number, work: () => Promise<T>): Promise<T> {
    const asked = Math.min(pixels, this.#all);
    await new Promise<void>((go) => {
      this.#waiting.push({ pixels: asked, go });
      this.#admit();
    });
    try {
      return await work();
    } finally {
      this.#free += asked;
      this.#admit();
    }
  }

  #admit(): void {
    for (
      let first = this.#waiting[0];
      first !== undefined && first.pixels <= this.#free;
      first = this.#waiting[0]
    ) {
      this.#waiting.shift();
      this.#free -= first.pixels;
      first.go();
    }
  }
}
