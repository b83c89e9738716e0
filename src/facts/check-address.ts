/** A street that is withheld must not stand in the name that every page bears. */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { House } from './house.js';

/** Words that many streets share. */
const COMMON =
  /^(street|road|lane|court|avenue|drive|place|way|circle|boulevard|terrace|trail|north|south|east|west|old|new|st|rd|ln|ct|ave|dr|blvd)$/;

/** `folder` is the house folder's name: it becomes a part of file names. */
export function checkAddress({ house }: House, folder: string): Diagnostic[] {
  const { street, show } = house.address;
  if (street === undefined || show === 'full') return [];
  const tells = streetTeller({ street, show });
  const warning = (path: string[], name: string, hint: string): Diagnostic => ({
    code: 'facts.street-told',
    severity: 'warning',
    path,
    message: `the street is withheld, and ${name} tells it`,
    hints: [hint, 'or print the street:  show: full'],
  });
  return [
    ...(tells(house.name)
      ? [
          warning(
            ['house', 'name'],
            `the name “${house.name}”`,
            'choose another name, for example  name: The Yellow House',
          ),
        ]
      : []),
    ...(house.web !== undefined && tells(house.web)
      ? [
          warning(
            ['house', 'web'],
            'the web address, which is printed,',
            'put the pages under another name, for example  web: https://yellow-house.example/',
          ),
        ]
      : []),
    ...(tells(folder)
      ? [
          warning(
            ['house', 'address', 'show'],
            `the folder name “${folder}”, which stands in file names,`,
            'rename the folder, for example  yellow-house',
          ),
        ]
      : []),
  ];
}

/** Whether a text tells a street that is withheld, also without its number; nothing does where it is printed or not known. */
export function streetTeller({
  street,
  show,
}: Pick<House['house']['address'], 'street' | 'show'>): (text: string) => boolean {
  if (street === undefined || show === 'full') return () => false;
  const telling = wordsOf(street).filter((word) => word.length > 2 && !COMMON.test(word));
  return (text) => {
    const words = new Set(wordsOf(text));
    return telling.length > 0 && telling.every((word) => words.has(word));
  };
}

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '');
