/**
 * Draws the pages of PDF files, in a thread of its own: the program that does it does whatever a page asks for, and has no
 * limit of its own. It is asked with a file, and answers page by page.
 */
import { parentPort } from 'node:worker_threads';
import type { PaperAnswer, PaperQuestion } from './draw-pages.js';
import { unfoldsTooFar } from './pdf-unfolds.js';

type Library = Awaited<ReturnType<typeof import('@hyzyla/pdfium')['PDFiumLibrary']['init']>>;
type Page = ReturnType<Awaited<ReturnType<Library['loadDocument']>>['getPage']>;

let library: Library | undefined;

/** As far as it is asked; the types of this project know no browser, where it is described. */
interface Memory {
  readonly buffer: ArrayBuffer;
  grow(this: Memory, pages: number): number;
}

const PAGE_BYTES = 65_536;

/** Before the library is loaded: what it asks for beyond this it does not get, and gives up. */
function limitMemory(most: number): void {
  const { prototype } = (
    globalThis as unknown as { readonly WebAssembly: { readonly Memory: { readonly prototype: Memory } } }
  ).WebAssembly.Memory;
  const { grow } = prototype;
  prototype.grow = function (pages) {
    if (this.buffer.byteLength + pages * PAGE_BYTES > most)
      throw new RangeError('a page asks for too much memory');
    return grow.call(this, pages);
  };
}

async function draw({ bytes, mostPages, mostPixels, mostMemory, dpi }: PaperQuestion): Promise<void> {
  // Asked in this thread, so that its limits hold for a file that makes even this take long.
  if (unfoldsTooFar(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength))) {
    answer({ kind: 'no' });
    return;
  }
  if (library === undefined) {
    limitMemory(mostMemory);
    const { PDFiumLibrary } = await import('@hyzyla/pdfium');
    library = await PDFiumLibrary.init();
  }
  const document = await library.loadDocument(bytes);
  try {
    const of = document.getPageCount();
    for (let index = 0; index < Math.min(of, mostPages); index += 1)
      await drawPage(document.getPage(index), dpi, mostPixels);
    answer({ kind: 'end', of });
  } finally {
    document.destroy();
  }
}

async function drawPage(page: Page, dpi: number, mostPixels: number): Promise<void> {
  const { originalWidth, originalHeight } = page.getOriginalSize();
  const scale = Math.min(dpi / 72, Math.sqrt(mostPixels / (originalWidth * originalHeight)));
  await page.render({
    scale,
    render: async ({ data, width, height }) => {
      // A copy: what the library gives is a part of its own memory.
      const pixels = new Uint8Array(data);
      answer({ kind: 'page', width, height, pixels }, [pixels.buffer]);
      return new Uint8Array();
    },
  });
}

function answer(one: PaperAnswer, moved: readonly ArrayBuffer[] = []): void {
  parentPort?.postMessage(one, [...moved]);
}

parentPort?.on('message', (question: PaperQuestion) => {
  draw(question).catch(() => answer({ kind: 'no' }));
});
