/** What a template needs to place one photo: addresses in both formats, sizes, alternative text and its classes. */
import type { Packet, Picture, Pictures } from '../packet/packet.js';
import { isPanorama } from '../packet/panorama.js';
import { shapeClass, tinyClass } from './photo-frames.js';
import { type PhotoPlace, pageSizesOf, ratioOf } from './photo-sizes.js';
import type { RunView } from './rich-view.js';

export interface PhotoView {
  /** Address of the largest JPEG; following it shows the photo alone. */
  readonly full: string;
  /** `srcset` of the AVIF source. */
  readonly avif: string;
  /** Address for browsers that can't choose. */
  readonly src: string;
  /** `srcset` of the JPEGs; empty where there is nothing to choose. */
  readonly srcset: string;
  /** How wide the photo will be shown, in the words of the `sizes` attribute; empty where there is nothing to choose. */
  readonly sizes: string;
  /** Of the upright picture, in pixels: the browser keeps room in this shape. */
  readonly width: number;
  readonly height: number;
  readonly alt: string;
  readonly loading: 'eager' | 'lazy';
  /** Class that knows the picture's shape, so that photos side by side come out equally high. */
  readonly shape: string;
  /** Class that shows the picture's few pixels until it is there. */
  readonly tiny: string;
  /** Class of a figure that takes the full measure, or empty. */
  readonly breadth: string;
}

/** A photo with its caption, and the way to its original. */
export interface ShownView {
  readonly id: string;
  readonly photo: PhotoView;
  readonly caption: readonly RunView[];
  readonly original: { readonly href: string; readonly name: string } | null;
}

/** Path of the script for pairs inside the edition's folder. */
export const PAIR_SCRIPT_PATH = 'assets/pair.js';

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

  /** Whether a photo was given out: then the page needs the style sheet of the frames. */
  get isUsed(): boolean {
    return this.#given > 0;
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
    // A contact sheet has no use for more than the smallest: no choice, no larger file.
    const choice = place.kind !== 'contact';
    const panorama = place.kind === 'column' && isPanorama(picture);
    const at: PhotoPlace = panorama ? { kind: 'full' } : place;
    return {
      full: photoPath(largest.jpeg.name),
      avif: choice ? srcsetOf(picture, 'avif') : photoPath(smallest.avif.name),
      src: photoPath(smallest.jpeg.name),
      srcset: choice ? srcsetOf(picture, 'jpeg') : '',
      sizes: choice ? pageSizesOf(at, ratioOf(picture), this.#packet.edition.name === 'agent') : '',
      width: picture.width,
      height: picture.height,
      alt,
      loading: this.#given <= EAGER_PHOTOS ? 'eager' : 'lazy',
      shape: shapeClass(picture),
      tiny: tinyClass(picture),
      breadth: panorama ? 'panorama' : '',
    };
  }
}

/** Address of a photo's file inside the edition's folder. */
export function photoPath(name: string): string {
  return `assets/photos/${name}`;
}

function srcsetOf(picture: Picture, format: 'jpeg' | 'avif'): string {
  return picture.sizes.map((size) => `${photoPath(size[format].name)} ${size.width}w`).join(', ');
}
