/** Of several that find the same dead lock, only the one whose rename succeeds removes it. */
async function clear(file: string): Promise<void> {
  const aside = `${file}-${process.pid}`;
  try {
    await rename(file, aside);
    // Between looking and renaming, somebody else may have cleared it and taken it: theirs goes back.
    const holder = await readFile(aside, 'utf8');
    if (holder !== '' && isRunning(Number(holder))) await rename(aside, file);
    else await rm(aside, { force: true });
  } catch {
    // Somebody else was first.
  }
}

export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    // EPERM: it runs, as somebody else.
    return (thrown as NodeJS.ErrnoException).code === 'EPERM';
  }
}
