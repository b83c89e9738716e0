/**
 * Fills in what README.md and DEVELOPERS.md take from elsewhere, between their markers: the fields and the messages from
 * the program, the licences from package-lock.json. Run `npm run compile` first. `tests/docs.test.ts` fails where they have fallen behind.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { licencesTable, runtimePackages } from './runtime-packages.mjs';

const at = (file) => fileURLToPath(new URL(`../../${file}`, import.meta.url));

let compiled;
try {
  const [{ fieldTable }, { CODES }] = await Promise.all([
    import('../../dist/facts/field-table.js'),
    import('../../dist/diagnostics/codes.js'),
  ]);
  compiled = { fieldTable, CODES };
} catch (error) {
  if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
  process.stderr.write('dist/ is missing: run npm run compile first\n');
  process.exit(1);
}

/** The table of messages: code and meaning, in the order of the list. */
export function codesTable(codes) {
  const rows = Object.entries(codes).map(([code, meaning]) => `| \`${code}\` | ${meaning} |`);
  return `${['| code | meaning |', '|---|---|', ...rows].join('\n')}\n`;
}

function fillIn(file, name, text) {
  const old = readFileSync(at(file), 'utf8');
  const form = new RegExp(`(<!-- ${name}:begin -->\n)[\\s\\S]*?(<!-- ${name}:end -->)`);
  if (!form.test(old)) throw new Error(`${file} has no markers ${name}:begin and ${name}:end`);
  const filled = old.replace(form, (_, begin, end) => `${begin}${text}${end}`);
  if (filled === old) return process.stdout.write(`${file}: ${name} as it was\n`);
  writeFileSync(at(file), filled);
  return process.stdout.write(`${file}: ${name} written\n`);
}

fillIn('README.md', 'fields', compiled.fieldTable());
fillIn('DEVELOPERS.md', 'codes', codesTable(compiled.CODES));
fillIn('DEVELOPERS.md', 'licences', licencesTable(runtimePackages()));
