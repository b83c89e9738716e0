/** Houses kept ready for looking at: composed in memory; an edition's pages and its PDF are made when they are asked for. */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { type ComposedHouse, composeHouse, PUBLISHED, pdfNameOf, renderPages, renderPdf } from './build.js';
import type { Located } from './diagnostics/report.js';
import type { HouseFolder } from './find-houses.js';
import type { EditionName, OutputFile, Packet } from './packet/packet.js';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.jpg': 'image/jpeg',
  '.avif': 'image/avif',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
  '.json': 'application/json',
  '.csv': 'text/csv; charset=utf-8',
  '.ics': 'text/calendar; charset=utf-8',
  '.pdf': 'application/pdf',
};

const FOLLOW_PATH = '/-/follow.js';
const FOLLOW = 'new EventSource("/-/changes").onmessage = () => location.reload();\n';

const LIST_STYLE =
  ':root{color-scheme:light dark}body{font:17px/1.7 Georgia,serif;max-width:44rem;margin:3rem auto;padding:0 1rem}';

/**
 * What a page of the preview may do: as the page's own policy says, and ask this server for changes. It is sent with every
 * page, so that one that is made without a policy of its own has one here.
 */
export const PREVIEW_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "connect-src 'self'",
  `style-src 'self' 'sha256-${createHash('sha256').update(LIST_STYLE).digest('base64')}'`,
  "img-src 'self' data:",
  "font-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

interface Shown {
  readonly composed: ComposedHouse;
  /** Files of the editions that were looked at, by the edition's name. */
  readonly files: Map<EditionName, Promise<ReadonlyMap<string, OutputFile>>>;
}

export class Preview {
  readonly #options: { readonly asOf: string; readonly out: string; readonly outShown: string };
  readonly #houses = new Map<string, Shown>();

  constructor(options: { readonly asOf: string; readonly out: string; readonly outShown: string }) {
    this.#options = options;
  }

  /** Reads a house again. If an error stands, what was shown before stays. */
  async refresh({ folder, shown }: HouseFolder): Promise<{ name: string; located: readonly Located[] }> {
    const name = path.basename(path.resolve(folder));
    const composed = await composeHouse({
      ...this.#options,
      folder,
      shown,
      editions: PUBLISHED,
      paper: 'letter',
    });
    const located = composed.locate();
    if (composed.failed) return { name, located };
    this.#houses.set(name, { composed, files: new Map() });
    return { name, located };
  }

  async find(pathname: string): Promise<{ type: string; body: string | Uint8Array } | undefined> {
    if (pathname === '/') return { type: TYPES['.html'] as string, body: this.#list() };
    if (pathname === FOLLOW_PATH) return { type: TYPES['.js'] as string, body: FOLLOW };
    const [house, ...rest] = decoded(pathname).slice(1).split('/');
    const shown = this.#houses.get(house ?? '');
    if (shown === undefined) return undefined;
    const [edition, ...within] = rest;
    const packet = shown.composed.packets.find((one) => one.edition.name === edition);
    if (packet === undefined || within.length === 0) return undefined;
    const inside = within.join('/').replace(/\/$/, '/index.html') || 'index.html';
    const type = TYPES[path.extname(inside)] ?? 'application/octet-stream';
    if (inside === pdfNameOf(packet))
      return { type, body: (await renderPdf(packet, shown.composed.picturesOf(packet), 'letter')).bytes };
    const file = (await filesOf(shown, packet)).get(inside);
    if (file === undefined) return undefined;
    if ('copyOf' in file) return { type, body: await readFile(file.copyOf) };
    if ('bytes' in file) return { type, body: file.bytes };
    return { type, body: inside.endsWith('.html') ? following(file.text) : file.text };
  }

  #list(): string {
    const items = [...this.#houses].map(([name, { composed }]) => {
      const links = composed.packets.map((packet) => {
        const folder = `/${name}/${packet.edition.name}`;
        return `<a href="${folder}/index.html">${escapeHtml(packet.edition.title)}</a> (<a href="${folder}/${pdfNameOf(packet)}">PDF</a>)`;
      });
      return `<li>${escapeHtml(composed.packets[0]?.house.name ?? name)}: ${links.join(' · ')}</li>`;
    });
    return following(
      `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Houses</title><style>${LIST_STYLE}</style></head><body><h1>Houses</h1><ul>${items.join('')}</ul></body></html>`,
    );
  }
}

/** Most edits are looked at in one edition, so only that one is rendered: once, whoever asks meanwhile. */
function filesOf(shown: Shown, packet: Packet): Promise<ReadonlyMap<string, OutputFile>> {
  const { name } = packet.edition;
  const made = shown.files.get(name) ?? makeFiles(shown.composed, packet);
  shown.files.set(name, made);
  // What failed for a moment is tried again when it is asked for again.
  made.catch(() => shown.files.delete(name));
  return made;
}

async function makeFiles(composed: ComposedHouse, packet: Packet): Promise<ReadonlyMap<string, OutputFile>> {
  // The number of sheets is known only once the PDF is made; the preview makes it when it is asked for.
  const pages = await renderPages(packet, composed.picturesOf(packet), undefined);
  const files = new Map(pages.map((file) => [file.path, file]));
  // A workbook belongs to the house file, which is not previewed.
  for (const one of packet.exports)
    if ('text' in one) files.set(one.file, { path: one.file, text: one.text });
  return files;
}

/** A path that is no valid percent-encoding names no page. */
function decoded(pathname: string): string {
  try {
    return decodeURIComponent(pathname);
  } catch {
    return '';
  }
}

/** The preview adds one script to each page, which loads it again after an edit. Its own policy takes the place of the page's. */
const following = (html: string): string =>
  html
    .replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/i, '')
    .replace('</body>', `<script src="${FOLLOW_PATH}"></script></body>`);

export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
