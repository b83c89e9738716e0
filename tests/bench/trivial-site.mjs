/** Something to compare with: plain Eleventy, one list of texts, one template of a few lines, any number of pages. */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';

const TEMPLATE = `---
pagination: { data: texts, size: 1, alias: item }
permalink: "/{{ pagination.pageNumber }}/index.html"
---
<!doctype html>
<html lang="en">
<title>{{ item.title }}</title>
<h1>{{ item.title }}</h1>
{% for line in item.lines %}<p>{{ line }}</p>
{% endfor %}</html>
`;

/**
 * Writes the site's template and data into a folder that is there.
 * @param {string} folder
 * @param {number} pages
 * @returns {Promise<{ template: string, data: string, dataText: (title: string) => string }>}
 */
export async function writeTrivialSite(folder, pages) {
  const template = path.join(folder, 'page.njk');
  const data = path.join(folder, '_data.json');
  const dataText = (/** @type {string} */ title) => JSON.stringify(trivialTexts(pages, title));
  await writeFile(template, TEMPLATE);
  await writeFile(path.join(folder, '.gitignore'), '_site\n');
  await writeFile(
    path.join(folder, '.eleventy.js'),
    `const { readFileSync } = require('node:fs');
module.exports = (config) => {
  config.addWatchTarget('./_data.json');
  config.addGlobalData('texts', () => JSON.parse(readFileSync(${JSON.stringify(data)}, 'utf8')));
};
`,
  );
  await writeFile(data, dataText('first'));
  return { template, data, dataText };
}

/**
 * The same pages for Hugo, in its own way: a content file for each page and one template. Writes into a folder that is there.
 * @param {string} folder
 * @param {number} pages
 */
export async function writeTrivialHugo(folder, pages) {
  await mkdir(path.join(folder, 'content'), { recursive: true });
  await mkdir(path.join(folder, 'layouts/_default'), { recursive: true });
  await writeFile(
    path.join(folder, 'config.toml'),
    "baseURL = '/'\ndisableKinds = ['taxonomy', 'term', 'RSS', 'sitemap', 'home', 'section', '404']\n",
  );
  await writeFile(
    path.join(folder, 'layouts/_default/single.html'),
    `<!doctype html>
<html lang="en">
<title>{{ .Title }}</title>
<h1>{{ .Title }}</h1>
{{ range .Params.lines }}<p>{{ . }}</p>
{{ end }}</html>
`,
  );
  for (const [index, text] of trivialTexts(pages, 'first').entries())
    await writeFile(path.join(folder, 'content', `${index}.md`), `${JSON.stringify(text)}\n`);
}

/**
 * @param {number} pages
 * @param {string} title of the first page
 */
export function trivialTexts(pages, title) {
  return Array.from({ length: pages }, (_, index) => ({
    title: index === 0 ? title : `Page ${index}`,
    lines: Array.from({ length: 10 }, (_, line) => `Line ${line} of page ${index}.`),
  }));
}
