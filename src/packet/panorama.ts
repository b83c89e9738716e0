/** Which photos are too wide for a text column, on pages and sheets alike. */

/** Width over height from which on a photo takes the full measure: in the text column it would be a strip. */
const PANORAMA = 2.2;

/** Whether a photo of this size, in any unit, takes the full measure where it stands in the text column. */
export function isPanorama(size: { readonly width: number; readonly height: number }): boolean {
  return size.width / size.height > PANORAMA;
}
