/**
 * The search box of the pages: a script that makes it, and, fetched when someone first goes to it, the search itself
 * and what there is to be found. All three are plain scripts, since pages are read from a disk, where nothing else loads.
 */
import type { SearchEntry } from '../packet/answers/find-entries.js';
import { OPEN_QUESTIONS, searchDataOf } from '../packet/answers/search-entries.js';
import type { Packet } from '../packet/packet.js';
import { anchorsOf } from '../packet/words-of.js';
import { linkBookOf } from './links.js';

export const SEARCH_SCRIPT_PATH = 'assets/search.js';
export const SEARCH_ENGINE_PATH = 'assets/search-engine.js';
export const SEARCH_DATA_PATH = 'search-data.js';

/** A packet on one page is searched by the browser's own means. */
export const hasSearch = ({ arrangement }: Pick<Packet, 'arrangement'>): boolean =>
  arrangement === 'page-per-section';

/** What is found leads to its page, from whichever page it was asked. */
type PlacedEntry = SearchEntry & { readonly href: string };

/** A script that hands over everything there is to be found. */
export function searchDataScript(packet: Packet): string {
  const { words, entries } = searchDataOf(packet);
  const links = linkBookOf(packet);
  const notKnown = anchorsOf(packet).has(OPEN_QUESTIONS) ? links.hrefOf(OPEN_QUESTIONS) : '';
  const placed = entries.map((entry): PlacedEntry => ({ ...entry, href: links.hrefOf(entry.id) }));
  return `globalThis.sillplateSearchData = ${inert({ words, notKnown, entries: placed })};\n`;
}

/** JSON that can't end a script element or a line of a script, whatever a fact's words are. */
const inert = (data: unknown): string =>
  JSON.stringify(data).replace(
    /[<>&\u2028\u2029]/gu,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
