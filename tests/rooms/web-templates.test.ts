import { cp, mkdtemp, readdir, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import type { Packet, Pictures } from '../../src/packet/packet.js';
import { renderWeb } from '../../src/web/render-web.js';
import { runEleventy } from '../../src/web/run-eleventy.js';
import { templatesFolder } from '../../src/web/site-assets.js';
import { strictGlobals, strictView } from '../../src/web/strict-view.js';
import { attributes, decoded, htmlOf } from './rendered-sample.js';
import { samplePacket, samplePictures, sampleSheet, wideSheet } from './sample-packet.js';

const NO_PICTURES: Pictures = new Map();
const small: Packet = {
  ...samplePacket,
  sections: samplePacket.sections.slice(0, 1).map((s) => ({ ...s, blocks: [] })),
};

/** A copy of the templates with one piece of text replaced. */
async function templatesWith(file: string, from: string, to: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'templates-'));
  await cp(templatesFolder, folder, { recursive: true });
  const source = await readFile(join(folder, file), 'utf8');
  expect(source).toContain(from);
  await writeFile(join(folder, file), source.replace(from, to));
  return folder;
}

/** Eleventy wraps errors in errors: all messages, outermost first. */
function messagesOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const inner = 'originalError' in error ? messagesOf(error.originalError) : '';
  return [error.message, inner, error.cause === undefined ? '' : messagesOf(error.cause)].join('\n');
}

async function failureWith(file: string, from: string, to: string, packet = small): Promise<string> {
  const templates = await templatesWith(file, from, to);
  const pictures = packet === small ? NO_PICTURES : await samplePictures();
  return runEleventy({ packet, pictures, paper: undefined }, templates).then(() => 'no failure', messagesOf);
}

describe('a misspelt name in a template stops the build and is named', () => {
  const HERE = '<main id="page-text">';
  test.each([
    ['output', '{{ sheet.hoose }}', 'unknown field "hoose" of sheet'],
    ['if', '{% if sheet.fronnt %}x{% endif %}', 'unknown field "fronnt" of sheet'],
    ['for', '{% for x in sheet.sektions %}x{% endfor %}', 'unknown field "sektions" of sheet'],
    ['output, deeper', '{{ sheet.words.skipp }}', 'unknown field "skipp" of sheet.words'],
    [
      'for, inside',
      '{% for s in sheet.sections %}{{ s.titel }}{% endfor %}',
      'unknown field "titel" of sheet.sections',
    ],
    ['output, bare', '{{ sheeet }}', 'unknown name "sheeet"'],
    ['if, bare', '{% if sheeet %}x{% endif %}', 'unknown name "sheeet"'],
    ['for, bare', '{% for x in sheeet.sections %}x{% endfor %}', 'unknown name "sheeet"'],
  ])('%s', async (_, typo, message) => {
    expect(await failureWith('_includes/sheet.njk', HERE, HERE + typo)).toContain(message);
  });

  test('in a macro', async () => {
    const message = await failureWith('_includes/blocks.njk', 'mark.word', 'mark.wurd', samplePacket);
    expect(message).toContain('unknown field "wurd"');
  });

  test('a kind of block without a template', async () => {
    const message = await failureWith('_includes/blocks.njk', "== 'question'", "== 'quest'", samplePacket);
    expect(message).toContain('unknown field "noTemplateForThisKind"');
  });
});

describe('strict views', () => {
  test('give what is there, also null and lengths, and iterate', () => {
    const view = strictView({ a: null, list: [{ b: 1 }] }, 'v');
    expect(view.a).toBeNull();
    expect(view.list.length).toBe(1);
    expect([...view.list].map((one) => one.b)).toEqual([1]);
  });

  test('are not plain objects, which Eleventy would copy without their wrapping', () => {
    expect(Object.getPrototypeOf(strictView({ a: 1 }, 'v'))).not.toBe(Object.prototype);
  });

  test('globals that exist are found, others throw', () => {
    const globals = strictGlobals({ range: 1 });
    expect(globals.range).toBe(1);
    expect(() => globals.rangee).toThrow('unknown name "rangee"');
  });
});

describe('an edited template is not served from a cache', () => {
  test.each([
    ['page.njk', '{% include "sheet.njk"', '<i>1</i>{% include "sheet.njk"', '<i>1</i>', '<i>2</i>'],
    ['_includes/sheet.njk', '<body ', '<body data-v="1" ', 'data-v="1"', 'data-v="2"'],
  ])('%s', async (name, from, to, first, second) => {
    const templates = await templatesWith(name, from, to);
    const entry = { packet: small, pictures: NO_PICTURES, paper: undefined };
    expect((await runEleventy(entry, templates)).get('index.html')).toContain(first);
    const file = join(templates, name);
    await writeFile(file, (await readFile(file, 'utf8')).replace(first, second));
    expect((await runEleventy(entry, templates)).get('index.html')).toContain(second);
  });
});

describe('a compiled template', () => {
  const entry = { packet: small, pictures: NO_PICTURES, paper: undefined };

  test('is kept for the process, and an error of grammar is not', async () => {
    const templates = await templatesWith('_includes/sheet.njk', '<main', '{% endif %}<main');
    await expect(runEleventy(entry, templates).catch(messagesOf)).resolves.toContain('endif');
    const file = join(templates, '_includes/sheet.njk');
    await writeFile(file, (await readFile(file, 'utf8')).replace('{% endif %}', ''));
    expect((await runEleventy(entry, templates)).get('index.html')).toContain('<main');
  });

  test('carries nothing from one packet to the next: any order gives what a fresh process gives', async () => {
    const pictures = await samplePictures();
    const packets = [samplePacket, sampleSheet, wideSheet];
    const rendered = async (order: readonly Packet[], render = renderWeb) => {
      const pages = new Map<Packet, unknown>();
      for (const packet of order) pages.set(packet, await render(packet, pictures, undefined));
      return packets.map((packet) => pages.get(packet));
    };
    const forwards = await rendered(packets);
    expect(await rendered([...packets].reverse())).toEqual(forwards);
    for (const [index, packet] of packets.entries()) {
      vi.resetModules();
      const fresh = await import('../../src/web/render-web.js');
      expect(await fresh.renderWeb(packet, pictures, undefined), packet.edition.title).toEqual(
        forwards[index],
      );
    }
  });
});

const NASTY = `<script>alert(1)</script>{{ 7*191 }}{% raw %}x{% endraw %}\${x}"'\`><img src=x onerror=alert(2)>&amp;{# c #}`;

/** Every text of a packet made nasty; ids, names of files and choices stay. */
function nastyCopy<T>(value: T, key = ''): T {
  if (Array.isArray(value)) return value.map((one) => nastyCopy(one, key)) as T;
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, nastyCopy(v, k)])) as T;
  }
  return typeof value === 'string' && TEXTS.has(key) ? (`${NASTY}${value}` as T) : value;
}
const TEXTS = new Set([
  'text',
  'title',
  'caption',
  'alt',
  'ask',
  'label',
  'value',
  'word',
  'standing_',
  'place',
  'reader',
  'asOfText',
  'digest',
]);

test('markup and template syntax in any text come out inert', async () => {
  const nasty = nastyCopy({ ...samplePacket, house: { ...samplePacket.house } });
  const packet = { ...nasty, standing: NASTY, house: { ...nasty.house, name: NASTY } };
  const pages = htmlOf(await renderWeb(packet, await samplePictures(), { file: `${NASTY}.pdf`, pages: 1 }));
  let seen = 0;
  for (const [name, html] of pages) {
    // Quotes inside text are escaped, so whatever stands between quotes is the value of an attribute.
    // The scripts of a pair and of the search box.
    const bare = html.replace(/"[^"]*"/g, '""').replaceAll('\n<script src="" defer></script>', '');
    expect(bare.match(/<script|<img src=x|<[^>]*\sonerror/gi), name).toBeNull();
    expect(html.includes('1337'), name).toBe(false);
    seen += decoded(html.replace(/<[^>]*>/g, '')).split(NASTY).length - 1;
    for (const label of attributes(html, 'alt')) expect(label.startsWith(NASTY)).toBe(true);
  }
  expect(seen).toBeGreaterThan(400);
});

test('templates quote every attribute, do no sums and choose the unescaped in one place only', async () => {
  const names = [
    ...(await readdir(templatesFolder)),
    ...(await readdir(join(templatesFolder, '_includes'))).map((n) => `_includes/${n}`),
  ];
  const sources = await Promise.all(
    names
      .filter((name) => name.endsWith('.njk'))
      .map((name) => readFile(join(templatesFolder, name), 'utf8')),
  );
  expect(sources).toHaveLength(3);
  const all = sources.join('\n');
  expect(all).not.toMatch(/=\{\{/);
  expect(all).not.toMatch(/\{\{[^}]*[+*/][^}]*\}\}/);
  expect(all.match(/\| *safe/g)).toEqual(['| safe']);
});

test('one file of the room knows Eleventy', async () => {
  const room = new URL('../../src/web/', import.meta.url);
  const names = (await readdir(room)).filter((name) => name.endsWith('.ts'));
  expect(names.length).toBeGreaterThan(5);
  const knowing = [];
  for (const name of names) {
    if (/'@11ty/.test(await readFile(new URL(name, room), 'utf8'))) knowing.push(name);
  }
  expect(knowing).toEqual(['run-eleventy.ts']);
});
