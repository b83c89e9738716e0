/** What a template needs to place one photo: addresses, sizes, alternative text and the shape of its frame. */
import type { Packet, Picture, Pictures } from '../packet/packet.js';

export interface PhotoView {
  /** Address of the largest size; following it shows the photo alone. */
  readonly full: string;
  /** Address for browsers that can't choose. */
  readonly src: string;
  readonly srcset: string;
  /** How wide the photo will be shown, in the words of the `sizes` attribute. */
  readonly sizes: string;
  /** Of the `src` file, in pixels. */
  readonly width: number;
  readonly height: number;
  readonly alt: string;
  readonly loading: 'eager' | 'lazy';
  /** Class for the nearest common shape, so that photos side by side come out equally high. */
  readonly shape: string;
}

/** Where a photo stands, which says how wide it gets. */
export type PhotoPlace = 'column' | 'half' | 'row';

const SIZES: Record<PhotoPlace, string> = {
  column: '(max-width: 46rem) 92vw, 36rem',
  half: '(max-width: 46rem) 46vw, 28rem',
  row: '(max-width: 46rem) 92vw, 28rem',
};

/** Width to height of the frames that the style sheet knows. */
const SHAPES: readonly (readonly [string, number])[] = [
  ['9-16', 9 / 16],
  ['2-3', 2 / 3],
  ['3-4', 3 / 4],
  ['1-1', 1],
  ['4-3', 4 / 3],
  ['3-2', 3 / 2],
  ['16-9', 16 / 9],
  ['2-1', 2],
  ['3-1', 3],
];

/** Photos near the top of a page are fetched at once; later ones when they come near the window. */
const EAGER_PHOTOS = 2;

/** Gives out photo views for one page, in page order. Throws on a photo that was not made ready. */
export class PhotoDesk {
  readonly #packet: Packet;
  readonly #pictures: Pictures;
  #given = 0;

  constructor(packet: Packet, pictures: Pictures) {
    this.#packet = packet;
    this.#pictures = pictures;
  }

  view(id: string, place: PhotoPlace): PhotoView {
    const picture = this.#pictures.get(id);
    const alt = this.#packet.photos.find((photo) => photo.id === id)?.alt;
    const largest = picture?.sizes.at(-1);
    const smallest = picture?.sizes[0];
    if (picture === undefined || alt === undefined || largest === undefined || smallest === undefined) {
      throw new Error(`photo "${id}" is shown but was not made ready`);
    }
    this.#given += 1;
    return {
      full: photoPath(largest.name),
      src: photoPath(smallest.name),
      srcset: picture.sizes.map((size) => `${photoPath(size.name)} ${size.width}w`).join(', '),
      sizes: SIZES[place],
      width: smallest.width,
      height: smallest.height,
      alt,
      loading: this.#given <= EAGER_PHOTOS ? 'eager' : 'lazy',
      shape: shapeOf(picture),
    };
  }
}

/** Address of a photo's file inside the edition's folder. */
export function photoPath(name: string): string {
  return `assets/photos/${name}`;
}

function shapeOf(picture: Picture): string {
  const ratio = picture.width / picture.height;
  const distance = (known: number): number => Math.abs(Math.log(known / ratio));
  const nearest = SHAPES.reduce((best, next) => (distance(next[1]) < distance(best[1]) ? next : best));
  return `shape-${nearest[0]}`;
}
