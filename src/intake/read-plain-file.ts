import { constants } from 'node:fs';
import { open } from 'node:fs/promises';

/**
 * All of a plain file. Throws the system's error; of what is no file by now, a pipe or a folder that was put in its
 * place, one with the code `ENOTFILE`. A pipe is not waited for.
 */
export async function readPlainFile(file: string): Promise<Buffer> {
  const handle = await open(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    if (!(await handle.stat()).isFile())
      throw Object.assign(new Error(`${file} is no plain file`), {
        code: 'ENOTFILE',
        syscall: 'read',
        path: file,
      });
    return await handle.readFile();
  } finally {
    await handle.close();
  }
}
