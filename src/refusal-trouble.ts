/** What a disk refuses a command that writes into a house folder, in the words of that command. */
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { diskTrouble } from './diagnostics/disk-trouble.js';

/** By the system's code: what is so, and what to do about it. */
export type Reasons = Readonly<Record<string, readonly [what: string, hint: string]>>;

/** `tell` puts what is so into a sentence on `shown`. Anything that is not a refusal of the system is thrown on. */
export function refusalTrouble(
  thrown: unknown,
  shown: string,
  reasons: Reasons,
  tell: (what: string) => string,
): Diagnostic {
  const general = diskTrouble(thrown, shown);
  const { code = '' } = thrown as { readonly code?: string };
  const [what, hint] = reasons[code] ?? [
    `the system says ${code}`,
    'check the folder, and type the same command again',
  ];
  return { ...general, message: tell(what), hints: [hint] };
}
