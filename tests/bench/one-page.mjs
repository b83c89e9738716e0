/**
 * The web packet of one edition as one page, for programs that print HTML.
 *
 * The texts of all its sections stand in it, in order, under the packet's own style sheet. Each photo is the JPEG that
 * our PDF holds, so that every program is given the same bytes; links lead within the page, as they do in our PDF.
 */
import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** @typedef {import('../../dist/packet/packet.js').OutputFile} OutputFile */
/** @typedef {import('../../dist/packet/packet.js').Pictures} Pictures */

/**
 * @param {readonly OutputFile[]} files what renderPages made
 * @param {Pictures} pictures
 * @param {string} folder receives the files
 * @returns {Promise<{ one: string, pages: string[] }>} paths of the one page and of the packet's own
 */
export async function writeOnePage(files, pictures, folder) {
  for (const file of files) await put(file, path.join(folder, file.path));
  const texts = files.flatMap((file) => ('text' in file && file.path.endsWith('.html') ? [file] : []));
  const one = path.join(folder, 'one-page.html');
  const joined = joinedMains(texts.map(({ text }) => text));
  await writeFile(one, await withPrintPhotos(joined, pictures, folder));
  return { one, pages: texts.map((file) => path.join(folder, file.path)) };
}

/**
 * @param {OutputFile} file
 * @param {string} to
 */
async function put(file, to) {
  await mkdir(path.dirname(to), { recursive: true });
  if ('copyOf' in file) await copyFile(file.copyOf, to);
  else await writeFile(to, 'text' in file ? file.text : file.bytes);
}

/** @param {readonly string[]} pages */
function joinedMains(pages) {
  const mains = pages.map((text) => /<main[^>]*>([\s\S]*)<\/main>/.exec(text)?.[1]);
  if (mains.length === 0 || mains.includes(undefined)) throw new Error('a page has no main part to print');
  const first = pages[0] ?? '';
  const head = /<header[\s\S]*?<\/header>/.exec(first)?.[0] ?? '';
  const footer = /<footer>[\s\S]*<\/footer>/.exec(first)?.[0] ?? '';
  const body = `${head}<main>${mains.join('\n')}</main>${footer}`;
  return (
    first
      .replace(/(<body[^>]*>)[\s\S]*(<\/body>)/, (_, open, close) => open + body + close)
      // It would keep a page opened as a file from its own style sheet in some programs.
      .replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')
      .replace(/<script[\s\S]*?<\/script>/g, '')
      .replace(/<head>/, '<head><style>@page { size: letter }</style>')
      .replace(/href="[a-z0-9-]+\.html#/g, 'href="#')
  );
}

/**
 * @param {string} html
 * @param {Pictures} pictures
 * @param {string} folder
 */
async function withPrintPhotos(html, pictures, folder) {
  const bySize = new Map(
    [...pictures.values()].flatMap((picture) =>
      picture.sizes.map(({ jpeg }) => [jpeg.name, picture.print.file]),
    ),
  );
  /** @type {Map<string, string>} */
  const used = new Map();
  const one = html.replace(/<picture>[\s\S]*?(<img [^>]*>)<\/picture>/g, (_, /** @type {string} */ image) => {
    const name = path.posix.basename(/ src="([^"]+)"/.exec(image)?.[1] ?? '');
    const file = bySize.get(name);
    if (file === undefined) throw new Error(`no picture for paper behind ${name}`);
    const to = `assets/print/${path.basename(file)}`;
    used.set(to, file);
    return image
      .replace(/ (srcset|sizes|loading|decoding)="[^"]*"/g, '')
      .replace(/ src="[^"]*"/, ` src="${to}"`);
  });
  await mkdir(path.join(folder, 'assets/print'), { recursive: true });
  for (const [to, file] of used) await copyFile(file, path.join(folder, to));
  return one;
}
