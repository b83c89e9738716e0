/** Where the front door speaks: standard output for what was asked, standard error for what happened on the way. */
import yoctoSpinner from 'yocto-spinner';

export interface Terminal {
  readonly out: (text: string) => void;
  readonly error: (text: string) => void;
  readonly colour: boolean;
  /** A line that follows work which takes over a second; nothing when piped. */
  readonly progress: (title: string) => Progress;
}

export interface Progress {
  readonly step: (text: string) => void;
  readonly stop: () => void;
}

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
    progress: spinner,
  };
}

function spinner(title: string): Progress {
  if (!process.stderr.isTTY) return { step: () => undefined, stop: () => undefined };
  const line = yoctoSpinner({ text: title });
  const late = setTimeout(() => line.start(), 1000);
  return {
    step: (text) => {
      line.text = `${title}: ${text}`;
    },
    stop: () => {
      clearTimeout(late);
      line.stop();
    },
  };
}
