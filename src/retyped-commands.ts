/**
 * Commands that messages name are named as they work where somebody is: behind `npx` if the program was started by it, with
 * the folder of the houses if another than `content/` was given.
 *
 * Messages set a command off by two blanks before and behind it, or by the end of the line. What is printed for a program
 * stays as it is.
 */
import type { Terminal } from './terminal.js';

/** How the running command was typed. */
export interface Called {
  readonly npx: boolean;
  /** The folder with the houses, as one word of a shell; undefined if it is the usual one or the command has none. */
  readonly content: string | undefined;
}

const OF_A_HOUSE =
  'check|photos|build|serve|ask|remarks|costs import|compare|deliver|deliveries|archive|verify';
const TOLD = new RegExp(
  `(?<=^| {2})sillplate (?:(?:new|${OF_A_HOUSE})(?= |$)|--help)[^\\n\\u001b]*?(?= {2}| ;|\\u001b|$)`,
  'gmu',
);
const TAKES_CONTENT = new RegExp(`^sillplate (?:${OF_A_HOUSE})(?: |$)(?!.*--(?:content|help))`, 'u');

export function retyped(text: string, { npx, content }: Called): string {
  return text.replace(TOLD, (command) => {
    // A house outside content/ is typed with its path, which says the folder too.
    const says = content === undefined || command.includes(`${content}/`) || !TAKES_CONTENT.test(command);
    return `${npx ? 'npx ' : ''}${command}${says ? '' : ` --content ${content}`}`;
  });
}

/** The same terminal. `called` is asked anew for each text: it is known only when the command line has been read. */
export const retypedTerminal = (terminal: Terminal, called: () => Called | undefined): Terminal => {
  const change = (text: string): string => {
    const how = called();
    return how === undefined ? text : retyped(text, how);
  };
  return {
    ...terminal,
    out: (text) => terminal.out(change(text)),
    error: (text) => terminal.error(change(text)),
  };
};
