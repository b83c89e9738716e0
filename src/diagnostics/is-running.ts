import { readFileSync } from 'node:fs';

/** Whether a process of this machine with that number is running, whoever started it. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (thrown) {
    // EPERM: it runs, as somebody else.
    if ((thrown as NodeJS.ErrnoException).code !== 'EPERM') return false;
  }
  return !hasEnded(pid);
}

/** One that was killed keeps its number until whoever started it asks for its end (man 5 proc, state Z); Linux alone tells. */
function hasEnded(pid: number): boolean {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return text.charAt(text.lastIndexOf(')') + 2) === 'Z';
  } catch {
    return false;
  }
}
