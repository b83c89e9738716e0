/**
 * Tells an Eleventy configuration how packets become pages. Used by `run-eleventy.ts` for the program and by
 * `.eleventy.js` for people who run Eleventy by hand; it imports nothing from Eleventy.
 */
import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Packet, Pictures } from '../packet/packet.js';
import { compileOnce, type NunjucksEngine } from './compile-once.js';
import { type PageView, type Paper, pagesOf } from './page-view.js';
import { assetsOf } from './site-assets.js';
import { strictGlobals, strictView } from './strict-view.js';

/** One packet with what its pages need. */
export interface SiteEntry {
  readonly packet: Packet;
  readonly pictures: Pictures;
  readonly paper: Paper | undefined;
}

/** As much of Eleventy's configuration as is used here. */
export interface EleventyConfiguration {
  setNunjucksEnvironmentOptions(options: Record<string, unknown>): void;
  setTemplateFormats(formats: string[]): void;
  setUseTemplateCache(use: boolean): void;
  setUseGitIgnore(use: boolean): void;
  readonly ignores: Set<string>;
  addGlobalData(name: string, data: unknown): void;
  on(event: 'eleventy.engine.njk', listener: (engine: NunjucksEngine) => void): void;
  on(event: 'eleventy.after', listener: (build: FinishedBuild) => Promise<void>): void;
}

interface FinishedBuild {
  readonly directories: { readonly output: string };
  /** `fs` when pages were written, `json` when they were handed back. */
  readonly outputMode: string;
}

/** A page as the template sees it: its view, strict, and where it goes below the output folder. */
interface PlacedPage {
  readonly path: string;
  readonly view: PageView;
}

/**
 * Sets the pages of one packet at the top of the output. Assets are left to the caller.
 * Throws when the packet links to nowhere or shows a photo that was not made ready.
 */
export function configureOnePacket(config: EleventyConfiguration, entry: SiteEntry): void {
  configure(config, placedPages(entry, ''));
}

/** Sets the pages of many packets, with their assets and exports, below `<house>/<edition>/`. */
export function configureSite(config: EleventyConfiguration, entries: readonly SiteEntry[]): void {
  configure(
    config,
    entries.flatMap((entry) => placedPages(entry, folderOf(entry.packet))),
  );
  // Eleventy's own copying keeps one target a source, and editions share the style sheet and photos.
  config.on('eleventy.after', async ({ directories, outputMode }) => {
    if (outputMode === 'fs') for (const entry of entries) await layBeside(entry, directories.output);
  });
}

/** What the pages ask for or lead to. */
async function layBeside({ packet, pictures }: SiteEntry, output: string): Promise<void> {
  const folder = join(output, folderOf(packet));
  for (const file of assetsOf(packet, pictures)) {
    const to = join(folder, file.path);
    await mkdir(dirname(to), { recursive: true });
    if ('copyOf' in file) await copyFile(file.copyOf, to);
    else await writeFile(to, file.text);
  }
  // A workbook belongs to the house file, which is not among the pages that are published.
  for (const one of packet.exports) if ('text' in one) await writeFile(join(folder, one.file), one.text);
}

function folderOf(packet: Packet): string {
  return `${packet.house.folder}/${packet.edition.name}/`;
}

function placedPages(entry: SiteEntry, folder: string): PlacedPage[] {
  return pagesOf(entry.packet, entry.pictures, entry.paper).map((view) => ({
    path: folder + view.file,
    view: strictView(view, 'sheet'),
  }));
}

function configure(config: EleventyConfiguration, pages: readonly PlacedPage[]): void {
  config.setNunjucksEnvironmentOptions({ dev: true, autoescape: true, throwOnUndefined: true });
  config.setTemplateFormats(['njk']);
  // Compiled templates are kept by path for the whole process: one edited in between would come out stale.
  config.setUseTemplateCache(false);
  // Once installed, the templates lie below node_modules, which Eleventy passes over by default.
  config.ignores.delete('**/node_modules/**');
  config.setUseGitIgnore(false);
  config.on('eleventy.engine.njk', (engine) => {
    engine.environment.globals = strictGlobals(engine.environment.globals);
    compileOnce(engine);
  });
  config.addGlobalData('places', pages);
  config.addGlobalData('permalink', () => (data: { place: PlacedPage }) => data.place.path);
}
