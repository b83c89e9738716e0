/** Units put together into sentences, and sentences into a text. */
import {
  type DraftUnit,
  joining,
  type Piece,
  SENTENCES,
  type SentenceId,
  wordsOfPieces,
} from './draft-unit.js';

/** The text of some units as pieces, in reading order. */
export function piecesOf(units: readonly DraftUnit[]): Piece[] {
  const sentences = SENTENCES.flatMap((id) => {
    const own = units.filter((unit) => unit.sentence === id);
    return own.length === 0 ? [] : [sentence(id, own)];
  });
  return sentences.flatMap((pieces, index) => (index === 0 ? pieces : [joining(' '), ...pieces]));
}

function sentence(id: SentenceId, units: readonly DraftUnit[]): Piece[] {
  return [...capitalised(bodyOf(id, units)), joining('.')];
}

function bodyOf(id: SentenceId, units: readonly DraftUnit[]): Piece[] {
  switch (id) {
    case 'house':
      return houseBody(units);
    case 'kitchen':
    case 'baths':
      return partsBody(units);
    case 'grounds':
      return [joining('outside: '), ...listOf(units.map(({ pieces }) => pieces))];
    case 'stays':
      return [joining('included: '), ...listOf(units.map(({ pieces }) => pieces))];
    case 'systems':
      return joined(units, '; ');
    case 'utilities':
      return joined(units, ', ');
    default:
      return clausesOf(units);
  }
}

/** "Story-and-a-half house built in 1948 on a 0.21-acre lot, with 3 bedrooms and 1 full bath, plus a garage" */
function houseBody(units: readonly DraftUnit[]): Piece[] {
  const of = (part: string): Piece[] =>
    units.filter((unit) => unit.part === part).flatMap(({ pieces }) => pieces);
  const rooms = units.filter((unit) => unit.part === 'rooms').map(({ pieces }) => pieces);
  const besides = units.filter((unit) => unit.part === 'besides').map(({ pieces }) => pieces);
  const [storeys, built, lot] = [of('storeys'), of('built'), of('lot')];
  const bare = built.length + lot.length === 0;
  return [
    ...(storeys.length === 0 ? [] : [...storeys, joining(' ')]),
    joining('house'),
    ...(built.length === 0 ? [] : [joining(' '), ...built]),
    ...(lot.length === 0 ? [] : [joining(` on ${articleFor(wordsOfPieces(lot))} `), ...lot]),
    ...(rooms.length === 0 ? [] : [joining(bare ? ' with ' : ', with '), ...listOf(rooms)]),
    ...(besides.length === 0
      ? []
      : [joining(rooms.length > 0 ? ', plus ' : bare ? ' with ' : ', with '), ...listOf(besides)]),
  ];
}

/** "an 8,712 sq ft lot": eight, eleven and eighteen begin with a vowel when they are read out. */
const articleFor = (words: string): string =>
  /^8/.test(words) || /^(11|18)(\D|,|$)/.test(words) ? 'an' : 'a';

/** Room by room: "Kitchen: quartz counters and tile backsplash new in 2026; cabinets refinished in 2026". */
function partsBody(units: readonly DraftUnit[]): Piece[] {
  const parts = [...new Set(units.map(({ part }) => part ?? ''))];
  return parts.flatMap((part, index) => {
    const own = units.filter((unit) => (unit.part ?? '') === part);
    const asides = distinct(own.flatMap(({ aside }) => aside ?? []));
    return [
      ...(index === 0 ? [] : [joining('. ')]),
      joining(`${part.charAt(0).toUpperCase()}${part.slice(1)}: `),
      ...clausesOf(own.map(({ aside: _told, ...unit }) => unit)),
      ...inBrackets(asides),
    ];
  });
}

/** "Kitchen circuits added in 2026; bath fan and pool light new in 2026 (permit closed)": alike ends are told once. */
function clausesOf(units: readonly DraftUnit[]): Piece[] {
  // What has no end of its own, or is a list already, is a clause of its own.
  const keyed = units.map((unit, index) => {
    const end = `${unit.tail ?? ''}|${wordsOfPieces(unit.aside ?? [])}`;
    const alone = end === '|' || /,| and /.test(wordsOfPieces(unit.pieces));
    return { unit, key: alone ? `${index}` : end };
  });
  return [...new Set(keyed.map(({ key }) => key))].flatMap((key, index) => {
    const own = keyed.filter((one) => one.key === key).map(({ unit }) => unit);
    return [...(index === 0 ? [] : [joining('; ')]), ...withTail(own), ...inBrackets(own[0]?.aside ?? [])];
  });
}

/** The list with its end. What was done and when is a statement too, and rests on the papers of all that it ends. */
function withTail(units: readonly DraftUnit[]): Piece[] {
  const list = listOf(units.map(({ pieces }) => pieces));
  const [last, tail] = [list.at(-1), units[0]?.tail];
  if (last === undefined || tail === undefined) return list;
  if (units.length === 1) return [...list.slice(0, -1), { ...last, text: `${last.text} ${tail}` }];
  const backings = units.flatMap(({ pieces }) => pieces.flatMap(({ backing }) => backing ?? []));
  const [first] = backings;
  if (first === undefined) return [...list, joining(` ${tail}`)];
  const evidence = [...new Set(backings.flatMap((one) => one.evidence))];
  return [...list, joining(' '), { text: tail, backing: { ...first, evidence } }];
}

const inBrackets = (pieces: readonly Piece[]): Piece[] =>
  pieces.length === 0
    ? []
    : [joining(' ('), ...pieces.flatMap((one, i) => (i === 0 ? [one] : [joining('; '), one])), joining(')')];

const distinct = (pieces: readonly Piece[]): Piece[] => [
  ...new Map(pieces.map((piece) => [piece.text, piece])).values(),
];

const joined = (units: readonly DraftUnit[], between: string): Piece[] =>
  units.flatMap(({ pieces }, index) => (index === 0 ? pieces : [joining(between), ...pieces]));

/** "a", "a and b", "a, b and c". */
const listOf = (list: readonly (readonly Piece[])[]): Piece[] =>
  list.flatMap((pieces, index) =>
    index === 0 ? pieces : [joining(index === list.length - 1 ? ' and ' : ', '), ...pieces],
  );

function capitalised(pieces: readonly Piece[]): Piece[] {
  const [first, ...rest] = pieces.filter(({ text }) => text !== '');
  if (first === undefined) return [];
  return [{ ...first, text: first.text.charAt(0).toUpperCase() + first.text.slice(1) }, ...rest];
}
