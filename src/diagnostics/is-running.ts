/** Whether a process of this machine with that number is running, whoever started it. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    // EPERM: it runs, as somebody else.
    return (thrown as NodeJS.ErrnoException).code === 'EPERM';
  }
}
