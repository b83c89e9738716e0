/**
 * Keeps the included template compiled for the whole process: compiling it took half the time of a packet's pages.
 *
 * What is kept is code alone. A compiled template is a function of environment, data and output, so what one
 * packet's pages hold can't reach another's; and it is looked up by its text, so an edited one is compiled anew.
 */

/** As much of Nunjucks as is used here. */
export interface NunjucksEngine {
  readonly nunjucks: { readonly Template: new (...about: TemplateArguments) => CompiledTemplate };
  readonly environment: { globals: Record<string, unknown>; readonly loaders: readonly TemplateLoader[] };
}

type TemplateArguments = [source: string, environment: unknown, path: string, compileNow: boolean];

interface CompiledTemplate {
  readonly rootRenderFunc: unknown;
  /** Functions of `{% block %}` parts, by name. */
  readonly blocks: Readonly<Record<string, unknown>>;
}

interface TemplateLoader {
  getSource(name: string): TemplateSource | null;
}

interface TemplateSource {
  /** The text, or functions made from it. */
  readonly src: string | { readonly type: 'code'; readonly obj: { readonly root: unknown } };
  readonly path: string;
}

interface Kept {
  readonly text: string;
  readonly root: unknown;
}

/** By path; the last text only. */
const kept = new Map<string, Kept>();

/** Makes an environment's loaders answer with compiled code. Throws what the compiler throws, on first use. */
export function compileOnce(engine: NunjucksEngine): void {
  for (const loader of engine.environment.loaders) {
    const read = loader.getSource.bind(loader);
    loader.getSource = (name) => {
      const source = read(name);
      return source === null ? null : withCode(source, engine);
    };
  }
}

function withCode(source: TemplateSource, engine: NunjucksEngine): TemplateSource {
  const { src: text, path } = source;
  if (typeof text !== 'string') return source;
  const known = kept.get(path);
  if (known?.text === text) return asCode(source, known.root);
  const template = new engine.nunjucks.Template(text, engine.environment, path, true);
  // Blocks would have to be kept by name as well; an included template has no use for them.
  if (Object.keys(template.blocks).length > 0) return source;
  kept.set(path, { text, root: template.rootRenderFunc });
  return asCode(source, template.rootRenderFunc);
}

function asCode(source: TemplateSource, root: unknown): TemplateSource {
  return { ...source, src: { type: 'code', obj: { root } } };
}
