/** The one place of the program that knows Eleventy. */
import { configureOnePacket, type EleventyConfiguration, type SiteEntry } from './configure-site.js';
import { templatesFolder } from './site-assets.js';

/** One rendered page, as Eleventy hands it back. */
interface RenderedPage {
  readonly url: string;
  readonly content: string;
}

/**
 * Renders one packet's pages: path inside the edition's folder, and HTML. Writes nothing.
 *
 * Every packet gets an Eleventy of its own and no configuration file is read, so one edition's pages can't
 * come to lie among another's. Rejects with Eleventy's error when a template is at fault.
 */
export async function runEleventy(
  entry: SiteEntry,
  templates = templatesFolder,
): Promise<Map<string, string>> {
  // Loaded when pages are made: a quarter of a second that `check`, `photos` and `verify` need not wait.
  // @ts-expect-error Eleventy comes without types.
  const { default: Eleventy } = await import('@11ty/eleventy');
  const eleventy = new Eleventy(templates, 'out', {
    quietMode: true,
    configPath: false,
    source: 'script',
    runMode: 'build',
    config: (config: EleventyConfiguration) => configureOnePacket(config, entry),
  });
  eleventy.disableLogger();
  const pages: RenderedPage[] = await eleventy.toJSON();
  return new Map(pages.map((page) => [pathOf(page.url), page.content]));
}

/** Eleventy shortens `/index.html` to `/`. */
function pathOf(url: string): string {
  return url.endsWith('/') ? `${url.slice(1)}index.html` : url.slice(1);
}
