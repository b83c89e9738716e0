/** Size, lot, old materials, dues, what comes with the house, and what only the owner can say. */
import { printDate } from '../../facts/date.js';
import { groupThousands } from '../../facts/written-number.js';
import type { Context } from '../context.js';
import { isoDate, onDate } from '../date-words.js';
import { evidenceOf, markOf, markOfFact, promisedBy } from '../marks.js';
import { fullStop, link, lowerFirst, rich, say, upperFirst } from '../rich.js';
import { conveyedThings, dueWords } from '../sections/conveys-and-dues.js';
import { countRooms, sizeMark } from '../sections/in-short.js';
import { squareMetres } from '../square-metres.js';
import {
  type Answer,
  type AnswerOf,
  about,
  answerOf,
  fewOf,
  inShort,
  markOfNamed,
  type Named,
} from './answer.js';
import { conditionsLike, mentioned, onlyTheOwner, papersLike } from './mentioned.js';

function size(context: Context): Answer | undefined {
  const { byClass, estimate, record } = context.tally.areas;
  const above = byClass['above-finished'];
  const official =
    record === undefined ? '' : ` The public record says ${groupThousands(record.squareFeet)}.`;
  if (above.area === 0n) return undefined;
  return {
    text: rich(
      link(`${groupThousands(above.squareFeet)} square feet${squareMetres(above)}`, 'size'),
      ` finished above grade${estimate ? ', an estimate' : ''}.${official}`,
    ),
    mark: sizeMark(context),
  };
}

const METHODS = {
  'ansi-z765-2021': 'by the rules of ANSI Z765-2021',
  'inside-only': 'from the inside only',
  plans: 'from plans',
} as const;

function measuredBy(context: Context): Answer | undefined {
  const { measured, people } = context.house;
  if (measured === undefined) return undefined;
  const named = people.find(({ id }) => id === measured.by)?.name;
  const hired = context.whole.people.some(({ id }) => id === measured.by);
  const who =
    named ?? (hired ? 'a person who was hired' : measured.by === 'owner' ? 'the owner' : measured.by);
  const how = (METHODS as Record<string, string>)[measured.method ?? ''];
  const parts = [who, measured.date && onDate(measured.date), how].filter(Boolean).join(', ');
  return {
    text: rich('By ', `${parts}. `, link('The sums', 'size'), ' show every step.'),
    mark: markOf(context, measured),
  };
}

function bedroomsBaths(context: Context): Answer | undefined {
  const { bedrooms, fullBaths, threeQuarterBaths, halfBaths } = countRooms(context.house);
  const parts = [
    bedrooms > 0 && `bedrooms: ${bedrooms}`,
    fullBaths > 0 && `full baths: ${fullBaths}`,
    threeQuarterBaths > 0 && `three-quarter baths: ${threeQuarterBaths}`,
    halfBaths > 0 && `half baths: ${halfBaths}`,
  ].filter((part) => part !== false);
  if (parts.length === 0) return undefined;
  return {
    text: rich(
      `${upperFirst(parts.join(', '))}. Counted from the `,
      link('rooms', 'rooms'),
      ' of this record.',
    ),
    mark: markOf(context, { evidence: [] }),
  };
}

function lotSize(context: Context): Answer | undefined {
  const { lot } = context.house.house;
  if (lot?.value === undefined) return undefined;
  const before = lot.was === undefined ? '' : ` An earlier figure, ${lot.was}, was corrected.`;
  return { text: rich(`${upperFirst(lot.value.written)}.${before}`), mark: markOfFact(context, lot) };
}

const lotCorners: AnswerOf = (context) => answerOf(context, papersLike(context, /\b(survey|plat)\b/i));

function lead(context: Context): Answer | undefined {
  const { because } = context.tally.lead;
  const { lead: told } = context.house;
  const known = told?.known;
  if (known?.value === undefined)
    return {
      text: rich(
        `Not known. ${because}`,
        known?.note === undefined ? undefined : ` ${fullStop(upperFirst(known.note))}`,
      ),
      mark: markOf(context, { evidence: [], from: known?.from }, false),
    };
  return {
    text: rich(fullStop(upperFirst(known.value)), ` ${because}`),
    mark: markOf(context, { from: known.from, evidence: [...known.evidence, ...(told?.reports ?? [])] }),
  };
}

/** What may hold it and is there, and what was taken out without a test. */
function asbestos(context: Context): Answer | undefined {
  const there = context.tally.lead.asbestos.map(
    (caution): Named => ({
      words: about(upperFirst(caution.words), `asbestos-${caution.id}`, ''),
      known: { evidence: caution.evidence },
    }),
  );
  const out = context.tally.improvements.flatMap((one): Named[] => {
    if (one.source.kind !== 'work') return [];
    const { what, how, note } = one.source.item;
    const untested = [note, how].find((words) => words !== undefined && UNTESTED.test(words));
    return untested === undefined
      ? []
      : [
          {
            words: about(upperFirst(what), `done-${one.id}`, untested),
            known: evidenceOf(context, one.source.item),
          },
        ];
  });
  const left = answerOf(context, there, { before: 'Materials that may hold it:', between: '. ' });
  const gone = answerOf(context, out, { before: 'Taken out without a test:', between: '. ' });
  if (left === undefined || gone === undefined) return left ?? gone;
  return { text: rich(...left.text, ' ', ...gone.text), mark: markOfNamed(context, [...there, ...out]) };
}

/** Of old layers, boards or tiles that somebody took out. Lead has its own question. */
const UNTESTED =
  /^(?!.*\blead\b).*\b(nobody tested|untested|(not|never|without) (been |being )?(a )?test(ed)?)\b/i;

function conveys(context: Context): Answer | undefined {
  const all = conveyedThings(context);
  const words = (stays: string): string =>
    all
      .filter((one) => one.stays === stays)
      .map(({ what }) => lowerFirst(what))
      .join('; ');
  const parts = [
    ['Stays', words('yes')],
    ['Goes', words('no')],
    ['Not settled', words('not known')],
  ].filter(([, list]) => list !== '');
  if (parts.length === 0) return undefined;
  const answer = {
    text: rich(
      ...parts.flatMap(([word = '', list = '']) => [link(word, 'conveys'), say(`: ${list}. `)]),
      'The contract decides.',
    ),
    mark: markOfNamed(
      context,
      all.map(({ known, stays }) => ({ words: [], known, isKnown: stays !== 'not known' })),
    ),
  };
  return inShort(answer, `${all.length} things`, 'What stays and what goes', 'conveys');
}

const warranties: AnswerOf = (context) =>
  inShort(
    answerOf(
      context,
      context.tally.warranties.map((end, index): Named => {
        const name = end.on.kind === 'system' ? (end.on.item.name ?? end.on.item.is) : end.on.item.what;
        const of = end.warranty.of === undefined ? '' : `, ${end.warranty.of}`;
        const until = end.stated === undefined ? end.lastDay && isoDate(end.lastDay) : printDate(end.stated);
        const over = end.running === false ? ' (over)' : '';
        const moves = { yes: 'moves', no: 'does not move', 'not known': 'whether it moves is not known' };
        return {
          words: about(
            `${upperFirst(name)}${of}`,
            `warranty-${index + 1}`,
            `${moves[end.warranty['moves-to-buyer']]}${until === undefined ? '' : `, runs to ${until}`}${over}`,
          ),
          known: promisedBy(context, end.on.item),
          isKnown: end.warranty['moves-to-buyer'] !== 'not known' || until !== undefined,
        };
      }),
      { between: '. ' },
    ),
    `${context.tally.warranties.length} on record, each with whether it moves`,
    'Papers',
    'warranties',
  );

/** Rooms and their paint; what is left of it first. */
function paintLeft(context: Context): Answer | undefined {
  const painted = context.house.rooms.flatMap((room) =>
    room.finishes.flatMap((finish, index) =>
      /\b(paint|stain)(?!less)/i.test(finish.what) ? [{ room, finish, index }] : [],
    ),
  );
  if (painted.length === 0) return undefined;
  const left = painted.filter(({ finish }) => finish.left !== undefined);
  const { few, more } = fewOf(left, 8);
  const named = few.map(({ room, finish, index }): Named => {
    const at = finish['left-at'] === undefined ? '' : ` (${finish['left-at']})`;
    return {
      words: about(
        `${upperFirst(room.name ?? room.id)}, ${finish.on}`,
        `finish-${room.id}-${index}`,
        `${finish.colour}, ${finish.left}${at}`,
      ),
      known: finish,
    };
  });
  const colours = [...new Set(painted.flatMap(({ finish }) => finish.colour ?? []))];
  const answer = answerOf(context, named, { before: 'Left:', ...(more === '' ? {} : { after: more }) });
  const bare = painted.filter(({ finish }) => finish.colour === undefined);
  const places = bare.map(({ room, finish }) => `${lowerFirst(room.name ?? room.id)} (${finish.on})`);
  const used = rich(
    colours.length === 0 ? 'By room under ' : `Colours used: ${colours.join(', ')}; by room under `,
    link('Rooms and finishes', 'rooms'),
    `.${places.length === 0 ? '' : ` Colour not known: ${places.join(', ')}.`}`,
  );
  return {
    text: answer === undefined ? used : rich(...used, ' ', ...answer.text),
    mark: markOfNamed(
      context,
      painted.map(({ finish }) => ({
        words: [],
        known: evidenceOf(context, finish),
        isKnown: finish.colour !== undefined,
      })),
    ),
  };
}

const manuals: AnswerOf = (context) =>
  answerOf(
    context,
    context.house.documents
      .filter(({ kind }) => kind === 'manual')
      .map(({ id, what }) => ({ words: [link(lowerFirst(what), `paper-${id}`)], known: { evidence: [id] } })),
    { before: 'On file:', between: ', ' },
  );

const dues: AnswerOf = (context) =>
  answerOf(
    context,
    context.house.dues.map((due, index) => ({
      words: about(
        due.to,
        `dues-${index + 1}`,
        `${dueWords(due)}${due.covers === undefined ? '' : `, ${due.covers}`}`,
      ),
      known: due,
    })),
    { between: '. ' },
  );

export const SALE_ANSWERED = {
  size,
  'measured-by': measuredBy,
  'bedrooms-baths': bedroomsBaths,
  'lot-size': lotSize,
  'lot-corners': lotCorners,
  lead,
  asbestos,
  pests: mentioned(/\b(termites?|pests?|rodents?|mice|rats|carpenter ants|powderpost)\b/i),
  mould: mentioned(/\b(mou?ld|mildew)\b/i),
  radon: mentioned(/\bradon\b/i),
  movement: (context) =>
    answerOf(
      context,
      conditionsLike(
        context,
        /^(?!.*\b(flue|chimney|tub|tile|sash|window|pane|shower)\b).*\b(cracks?|cracked|settl(ed|ing|ement)|lean(s|ing)?|bow(s|ed|ing))\b/i,
      ),
      { between: '. ' },
    ),
  'oil-tank': mentioned(/\b(oil|fuel) tank\b/i),
  'flood-zone': mentioned(/\bflood (zone|map|certificate|insurance)\b/i),
  'sewer-line': mentioned(/\b(sewer|septic)\b/i),
  insulation: mentioned(/\binsulat/i),
  conveys,
  warranties,
  'home-warranty': mentioned(/\bhome warranty\b/i),
  'paint-left': paintLeft,
  manuals,
  dues,
  claims: onlyTheOwner,
  'title-liens': mentioned(/\b(liens?|title (report|search|policy|commitment))\b/i),
  easements: mentioned(/\b(easements?|rights? of way|encroach\w*)\b/i),
  'boundary-disputes': onlyTheOwner,
  violations: mentioned(/\bviolations?\b/i),
  assessments: onlyTheOwner,
  bills: onlyTheOwner,
  taxes: onlyTheOwner,
  noise: onlyTheOwner,
  internet: onlyTheOwner,
  letting: onlyTheOwner,
  'who-lived': onlyTheOwner,
  'pets-smoke': onlyTheOwner,
} satisfies Record<string, AnswerOf>;
