/** Where the front door speaks: standard output for what was asked, standard error for what happened on the way. */
import yoctoSpinner from 'yocto-spinner';
import { progressLine } from './progress-line.js';

export interface Terminal {
  readonly out: (text: string) => void;
  readonly error: (text: string) => void;
  readonly colour: boolean;
  /** Whether `npx` or `npm start` started the program, so that its name alone is perhaps no command of the shell. */
  readonly npx?: boolean;
  /** Columns of its lines; left out where nobody knows, as behind a pipe. */
  readonly columns?: number | undefined;
  /** A line that follows work which takes over a second; nothing when piped. */
  readonly progress: (title: string) => Progress;
}

export interface Progress {
  readonly step: (text: string) => void;
  /** A photo of a house was begun or finished; makes the line a bar. */
  readonly photo: (house: string, photo: string, done: number, all: number) => void;
  readonly stop: () => void;
}

/** Colours that this program writes. */
const COLOUR = '\u001b\\[(?:0|1|2|31;1|33;1|36)m';

/**
 * Whatever could act on a terminal or turn its lines about, but for a line feed, a tab, our own colours, and the joiners and
 * soft hyphens of words.
 */
const ACTS = new RegExp(
  `(${COLOUR})|[^\\P{Cc}\\n\\t]|[^\\P{Cf}\\u00ad\\u200c\\u200d]|[\\p{Zl}\\p{Zp}]`,
  'gu',
);

/**
 * The same terminal, which no text of a house folder, a file name or a word of the command line can steer. Messages have
 * made such signs visible already; what is left are answers as data, where the sign's escape is the same text to a program.
 */
export const inertTerminal = (terminal: Terminal): Terminal => {
  const inert = (text: string): string =>
    text.replace(ACTS, (sign, colour: string | undefined) => colour ?? escaped(sign));
  return {
    ...terminal,
    out: (text) => terminal.out(inert(text)),
    error: (text) => terminal.error(inert(text)),
  };
};

/** As JSON writes it: `\u202e`. */
const escaped = (sign: string): string =>
  sign
    .split('')
    .map((unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`)
    .join('');

export function realTerminal(): Terminal {
  // `sillplate check | head` closes the pipe early; what nobody reads need not be written.
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  return {
    out: (text) => void process.stdout.write(text),
    error: (text) => void process.stderr.write(text),
    // https://no-color.org: present and not empty.
    colour: process.stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb',
    npx: ['npx', 'start'].includes(process.env.npm_lifecycle_event ?? ''),
    columns: columnsOf(process.env.COLUMNS) ?? (process.stdout.isTTY ? process.stdout.columns : undefined),
    progress: spinner,
  };
}

/** What the shell says, where it says a count. */
const columnsOf = (said: string | undefined): number | undefined =>
  said !== undefined && /^[1-9]\d{0,3}$/.test(said) ? Number(said) : undefined;

function spinner(title: string): Progress {
  if (!process.stderr.isTTY) return { step: () => undefined, photo: () => undefined, stop: () => undefined };
  const line = yoctoSpinner({ text: title });
  const late = setTimeout(() => line.start(), 1000);
  let began = 0;
  return {
    photo: (house, photo, done, all) => {
      if (done === 0) began = performance.now();
      const elapsed = performance.now() - began;
      line.text = `${title}: ${progressLine({ house, photo, done, all, elapsed })}`;
    },
    step: (text) => {
      line.text = `${title}: ${text}`;
    },
    stop: () => {
      clearTimeout(late);
      line.stop();
    },
  };
}
