/** A passphrase is typed where nobody sees it: never a word of the command line, never shown, never kept. */

/** Asks on the terminal. Undefined where nobody sits at one, or the question was broken off with Ctrl+C or Ctrl+D. */
export type AskPassphrase = (question: string) => Promise<string | undefined>;

const KEYS = { enter: ['\r', '\n'], end: ['\u0003', '\u0004'], back: ['\u007f', '\b'] };

export const askPassphrase: AskPassphrase = (question) => {
  const { stdin, stderr } = process;
  if (!stdin.isTTY) return Promise.resolve(undefined);
  return new Promise((resolve) => {
    let typed: string[] = [];
    const finish = (answer: string | undefined): void => {
      stdin.off('data', take);
      stdin.setRawMode(false);
      stdin.pause();
      stderr.write('\n');
      resolve(answer);
    };
    const take = (text: string): void => {
      for (const key of text) {
        if (KEYS.enter.includes(key) || KEYS.end.includes(key)) {
          finish(KEYS.enter.includes(key) ? typed.join('') : undefined);
          return;
        }
        if (KEYS.back.includes(key)) typed = typed.slice(0, -1);
        else typed.push(key);
      }
    };
    // First the terminal is told to show nothing: whoever types fast must not be seen either.
    stdin.setRawMode(true);
    stderr.write(question);
    stdin.setEncoding('utf8');
    stdin.on('data', take);
    stdin.resume();
  });
};
