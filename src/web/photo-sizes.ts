/**
 * How wide a photo stands in a page, in the words of the `sizes` attribute, so that a browser can choose a file
 * before it has read the style sheet. The lengths are those of `templates/assets/style.css`, written once more;
 * a test in a real browser holds the two together.
 */

/** Where a photo stands. `ratio` is the width over height that it is cut to. */
export type PhotoPlace =
  /** Alone in the text column. */
  | { readonly kind: 'column' }
  /** Alone over text and margin. */
  | { readonly kind: 'full' }
  /** One of a pair. */
  | { readonly kind: 'pair'; readonly ratio: number }
  /** One of several beside each other; `alone`: the only one. */
  | { readonly kind: 'row'; readonly alone: boolean }
  /** Small, among many. */
  | { readonly kind: 'contact' };

/** A page's rem in the em of a media condition, which is the reader's own letter size: `html` is set to 106.25 %. */
const REM = 1.0625;

/** Text and margin together: the page without its air at the sides, 58rem at most. */
const FULL = [`${em(58)}`, `100vw - ${em(4)}`];
/** The text column: 62 % of it. */
const TEXT = [`${em(35.96)}`, `62vw - ${em(2.48)}`];
const PHONE = `100vw - ${em(2.2)}`;

/** Heights that photos are held to, in rem: alone, alone in a row, in a row, of a pair. The agent's sheet is smaller. */
const COLUMN = { wide: 27, agent: 15 };
const ALONE = 20;
const ROW = 12.5;
const PAIR = { wide: 27, agent: 16 };
/** Share of the window's width that a row is high on a phone, over the ratio: as in the style sheet. */
const ROW_ON_PHONE = 32.2;

/** Width over height of an upright picture. */
export function ratioOf(picture: { readonly width: number; readonly height: number }): number {
  return picture.width / picture.height;
}

/** The `sizes` attribute for a picture of this width over height. Has no answer for contact sheets, which don't choose. */
export function pageSizesOf(place: PhotoPlace, ratio: number, agent: boolean): string {
  const measure = agent ? 'agent' : 'wide';
  switch (place.kind) {
    case 'column':
      return either(least(em(ratio * COLUMN[measure]), PHONE), least(em(ratio * COLUMN[measure]), ...TEXT));
    case 'full':
      return either(least(em(ratio * COLUMN[measure]), PHONE), least(em(ratio * COLUMN[measure]), ...FULL));
    case 'pair': {
      // What covers a shape of another ratio is larger than it.
      const cover = Math.max(1, ratio / place.ratio);
      const tallest = em(place.ratio * PAIR[measure]);
      return either(times(cover, tallest, PHONE), times(cover, tallest, ...TEXT));
    }
    case 'row':
      return place.alone
        ? either(least(`${round(ratio * 92)}vw`, PHONE), least(em(ratio * ALONE), ...TEXT))
        : either(least(`${round(ratio * ROW_ON_PHONE)}vw`, PHONE), least(em(ratio * ROW), ...FULL));
    case 'contact':
      throw new Error('a contact sheet has no sizes to choose from');
  }
}

function either(onPhone: string, otherwise: string): string {
  return `(max-width: 46rem) ${onPhone}, ${otherwise}`;
}

function least(...lengths: readonly string[]): string {
  return `min(${lengths.join(', ')})`;
}

function times(factor: number, ...lengths: readonly string[]): string {
  const all = least(...lengths);
  return round(factor) === 1 ? all : `calc(${round(factor)} * ${all})`;
}

function em(rem: number): string {
  return `${round(rem * REM)}em`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
