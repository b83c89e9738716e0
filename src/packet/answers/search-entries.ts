/** Everything of a packet that can be found by words: its questions and answers, statements, rows and records. */
import { askedQuestions, isAskedBy } from '../../tally/tables/questions.js';
import { type SearchWords, searchWords } from '../../tally/tables/search-words.js';
import { CHANGES_SECTION, DELIVERIES_SECTION } from '../changes-since.js';
import type { Block, EvidenceMark, Packet, Rich, Section } from '../packet.js';
import { plainText } from '../rich.js';
import type { SearchEntry } from './find-entries.js';

/** What the search needs, in the pages and in the terminal. */
export interface SearchData {
  readonly words: SearchWords;
  readonly entries: readonly SearchEntry[];
}

/** Anchor of the table of what is not known. */
export const OPEN_QUESTIONS = 'questions-open';

/** Anchor of the table of what no packet says, whoever asks. */
export const REFUSED_QUESTIONS = 'questions-refused';

/** What is on paper only has no place in the pages, and is left out. */
export const searchDataOf = (packet: Packet): SearchData => ({
  words: searchWords(),
  entries: packet.sections.filter(({ id }) => !TELLS_OLD_WORDS.has(id)).flatMap(entriesOf),
});

/** What was told once and is told otherwise now is no answer. */
const TELLS_OLD_WORDS: ReadonlySet<string> = new Set([CHANGES_SECTION, DELIVERIES_SECTION]);

function entriesOf({ title: section, blocks }: Section): SearchEntry[] {
  let under = section;
  return blocks
    .filter((block) => block.only !== 'print')
    .flatMap((block) => {
      if (block.kind === 'heading') under = block.text;
      return entriesIn(block, under).map((entry) => ({ ...entry, section }));
    });
}

type Placed = Omit<SearchEntry, 'section'>;

function entriesIn(block: Block, under: string): Placed[] {
  switch (block.kind) {
    case 'question':
      return [
        {
          id: block.id,
          kind: 'question',
          title: block.ask,
          text: plainText(block.answer),
          asks: questionIds(block.ask),
          known: markWords(block.mark),
          words: otherWords(block.ask),
        },
      ];
    case 'statement':
      return [
        {
          id: block.id,
          kind: 'fact',
          title: strongWords(block.text) ?? under,
          text: plainText(block.text),
          known: markWords(block.mark),
          words: under,
        },
      ];
    case 'list':
      return block.items.map(({ id, text, mark }) => ({
        id,
        kind: 'fact',
        title: under,
        text: plainText(text),
        known: markWords(mark),
        words: '',
      }));
    case 'table':
      return block.rows.map(({ id, cells, mark }) => {
        const [first = [], ...rest] = cells.map(plainText);
        const text = rest.filter((cell) => cell !== '').join(' · ');
        const words = otherWords(String(first));
        if (block.id === OPEN_QUESTIONS)
          return {
            id,
            kind: 'open',
            title: String(first),
            text,
            known: 'Not known',
            words,
            asks: questionIds(String(first)),
          };
        return block.id === REFUSED_QUESTIONS
          ? { id, kind: 'open', title: String(first), text, known: '', words }
          : { id, kind: 'fact', title: String(first), text, known: markWords(mark), words: block.caption };
      });
    case 'record':
      return [
        {
          id: block.id,
          kind: 'fact',
          title: plainText(block.title),
          text: block.entries.map(({ label, value }) => `${label}: ${plainText(value)}`).join(' · '),
          known: markWords(block.mark),
          words: under,
        },
      ];
    case 'notice':
      return [
        {
          id: block.id,
          kind: 'fact',
          title: block.title,
          text: block.paragraphs.map(plainText).join(' '),
          known: '',
          words: under,
        },
      ];
    default:
      // Headings, connecting text, pictures and lines to be filled in state nothing.
      return [];
  }
}

const markWords = (mark: EvidenceMark | undefined): string =>
  mark === undefined ? '' : [mark.word, plainText(mark.detail)].filter((part) => part !== '').join(' · ');

/** "Furnace, serviced." at the head of a statement names what it is about. */
function strongWords(text: Rich): string | undefined {
  const [first] = text;
  return first?.manner === 'strong' ? first.text.replace(/[.:]\s*$/, '') : undefined;
}

/** The table's question that it is, word for word. */
const questionIds = (ask: string): readonly string[] =>
  askedQuestions().flatMap((question) => (question.ask === ask ? [question.id] : []));

/** Other ways to ask the same, by the table; an owner's question has those of all that it is. */
function otherWords(ask: string): string {
  const known = looked.get(ask);
  if (known !== undefined) return known;
  const words = lookForOtherWords(ask);
  // Rows of tables are asked as well; they are much the same from one edition to the next.
  if (looked.size >= MOST_LOOKED) looked.clear();
  looked.set(ask, words);
  return words;
}

const MOST_LOOKED = 2_000;
const looked = new Map<string, string>();

function lookForOtherWords(ask: string): string {
  const all = askedQuestions();
  const itself = all.filter((question) => question.ask === ask);
  const meant = itself.length > 0 ? itself : all.filter((question) => isAskedBy(question, ask));
  return meant.map((question) => `${question.ask} ${question.words}`).join(' ');
}
