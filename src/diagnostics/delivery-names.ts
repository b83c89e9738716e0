/** How files of deliveries are called, for the room that reads them and the one that writes them. */

/** In a house folder. */
export const DELIVERIES = 'deliveries';
/** In a delivery: one line a file, in the form of BagIt (RFC 8493, 2.1.3). */
export const MANIFEST = 'manifest-sha256.txt';
/** Bytes; larger than any packet's list of files. */
export const LARGEST_MANIFEST = 8_000_000;
