/** Runs between a compile and `npm pack`: takes away what no user of the package can reach. A compile brings it back. */
import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { innerFiles } from './inner-files.mjs';

for (const file of innerFiles()) rmSync(fileURLToPath(new URL(`../../${file}`, import.meta.url)));
