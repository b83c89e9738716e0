/**
 * Decodes one HEIC picture, in a thread of its own: it takes most of a second, and a broken file may take for ever.
 * Answers with the main picture's pixels, upright (the container's own turning is applied by the decoder).
 */
import { createRequire } from 'node:module';
import { Tinypool } from 'tinypool';
import type { HeicPixels } from './decode-heic.js';

interface HeifImage {
  get_width(): number;
  get_height(): number;
  is_primary(): boolean;
  display(
    target: { data: Uint8ClampedArray; width: number; height: number },
    done: (data: unknown) => void,
  ): void;
  free(): void;
}

interface Heif {
  readonly ready: Promise<unknown>;
  readonly HeifDecoder: new () => {
    decode(bytes: Uint8Array): HeifImage[];
    readonly decoder: { delete(): void };
  };
}

// The decoder says on the console what it then answers with; messages about photos are printed in one place only.
for (const word of ['log', 'warn', 'error'] as const) globalThis.console[word] = () => undefined;
const load = createRequire(import.meta.url);

/** Answers with `HeicPixels`, whose bytes move to the asking thread instead of being copied. */
export default async function decodeHeic(bytes: Uint8Array): Promise<unknown> {
  // Loaded here and not above: a thread that fails while it starts takes the whole program with it.
  const heif = load('libheif-js/wasm-bundle.js') as Heif;
  await heif.ready;
  const decoder = new heif.HeifDecoder();
  const images = decoder.decode(bytes);
  try {
    // A burst holds several; the one the phone chose is marked.
    const image = images.find((one) => one.is_primary()) ?? images[0];
    if (image === undefined) throw new Error('no picture inside');
    const [width, height] = [image.get_width(), image.get_height()];
    const data = new Uint8ClampedArray(width * height * 4);
    await new Promise<void>((resolve, reject) => {
      image.display({ data, width, height }, (answer) =>
        answer === null || answer === undefined ? reject(new Error('not decoded')) : resolve(),
      );
    });
    const pixels: HeicPixels = { width, height, data: new Uint8Array(data.buffer) };
    return Tinypool.move({
      [Tinypool.transferableSymbol]: [data.buffer],
      [Tinypool.valueSymbol]: pixels,
    } as unknown as ArrayBuffer);
  } finally {
    for (const image of images) image.free();
    decoder.decoder.delete();
  }
}
