/** What an installed sillplate stands on: the packages of package-lock.json that are not for its developers alone. */
import { readFileSync } from 'node:fs';

/** Every package, with its folder below the project; those of other kinds of machines are among them. */
export function runtimePackages(lock = JSON.parse(readFileSync('package-lock.json', 'utf8'))) {
  return Object.entries(lock.packages)
    .filter(([folder, { dev }]) => folder !== '' && dev !== true)
    .map(([folder, entry]) => ({
      folder,
      name: entry.name ?? folder.replace(/^.*node_modules\//, ''),
      ...entry,
    }));
}

/** The table of DEVELOPERS.md: which licence has which packages, the most usual first. */
export function licencesTable(packages) {
  const named = new Map();
  for (const { name, license } of packages) named.set(license, (named.get(license) ?? new Set()).add(name));
  const rows = [...named]
    .map(([license, names]) => [license, [...names].sort()])
    .sort(([one, some], [other, more]) => more.length - some.length || (one < other ? -1 : 1))
    .map(
      ([license, names]) =>
        `| ${license} | ${names.length} | ${names.map((name) => `\`${name}\``).join(', ')} |`,
    );
  return `${['| licence | packages | which |', '|---|---|---|', ...rows].join('\n')}\n`;
}
