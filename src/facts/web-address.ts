/** The address at which an owner's pages stand on the web: one that a stranger's phone can open. */
import { bad, good, type Read } from './read.js';

/**
 * Longest address, in characters. Printed as a code, a longer one would need more than 45 modules a side: at a
 * millimetre each with their white border no room would be left for the words beside the photo.
 */
export const LONGEST_ADDRESS = 120;

const HINT = 'copy it from the browser’s address bar, for example  web: https://quarry-road.example/packet/';

/** Scheme, host, port, and what follows: all that a phone needs, nothing that it would read otherwise. */
const FORM = /^https?:\/\/([a-z0-9-]+(?:\.[a-z0-9-]+)*)(?::\d{1,5})?(?:[/?#][!-~]*)?$/i;

/**
 * Reads a web address. It stays as it was written, since it is printed and scanned as it stands.
 *
 * Refuses other schemes than http and https, a user name or password, blanks and signs that an address can't hold as
 * they are (the browser's address bar writes them in another way), and hosts that no other machine can open.
 */
export function readWebAddress(text: string): Read<string> {
  const written = text.trim();
  if (written === '') return bad('there is no address', HINT);
  if (written.length > LONGEST_ADDRESS)
    return bad(
      `this address has ${written.length} characters, and its printed code can’t hold more than ${LONGEST_ADDRESS}`,
      'give the pages a shorter one, for example  web: https://quarry-road.example/',
    );
  const scheme = /^([a-z][a-z0-9+.-]*):(?!\d)/i.exec(written)?.[1]?.toLowerCase();
  if (scheme === undefined) return bad('a web address begins with https:// or http://', HINT);
  if (scheme !== 'https' && scheme !== 'http')
    return bad(`an address with “${scheme}:” is none of the web`, HINT);
  if (/[^!-~]|["<>\\^`{|}]/.test(written))
    return bad('the address holds a blank or a sign that a web address can’t hold as it is', HINT);
  if (/^https?:\/\/[^/?#]*@/i.test(written))
    return bad(
      'the address holds a user name or a password, and it will be printed',
      'take out all up to the  @',
    );
  const host = FORM.exec(written)?.[1];
  if (host === undefined || !URL.canParse(written)) return bad(`“${written}” is no whole web address`, HINT);
  if (!host.includes('.') || /\.\d+$/.test(host) || /\.(local|localhost|internal|home|lan)$/i.test(host))
    return bad(`“${host}” is no address that a visitor’s phone can open`, HINT);
  return good(written);
}
