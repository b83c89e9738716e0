/** How much of a bag is taken in before it is refused: a bag may come from anywhere. */

/** Files and folders of one bag. A house has a few thousand; looking into a ZIP takes a few seconds for as many as this. */
export const MOST_ENTRIES = 100_000;
/** All their names together, in characters. */
export const MOST_NAMES = 128 * 2 ** 20;
/** Characters of one path; longer than any system opens. */
export const LONGEST_PATH = 4096;
/** One manifest or other tag file that is read, in bytes; a manifest of a house takes a thousandth of that. */
export const LARGEST_TAG = 128 * 2 ** 20;
/** All tag files that are read, in bytes. */
export const MOST_TAGS = 256 * 2 ** 20;
/** How many times larger than the ZIP what is in it may be; zip's own format can do a thousand. */
export const MOST_SWELLING = 200;
/** Up to this many bytes, a ZIP may swell as it likes. */
export const FREE_SWELLING = 2 ** 30;
/** A sealed ZIP is opened in memory, since ZIP is read from its end. In bytes. */
export const LARGEST_SEALED_ZIP = 256 * 2 ** 20;
/** An age header, in bytes; each key takes about a hundred, the largest kind two thousand. */
export const LARGEST_AGE_HEADER = 64 * 1024;
