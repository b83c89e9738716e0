/** Photos in the pages, read as HTML: formats, frames, pairs, contact sheets. What a browser makes of them: web-photo-layout. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Block, OutputFile, Packet, Picture, Pictures } from '../../src/packet/packet.js';
import { encodedPath } from '../../src/web/links.js';
import { cutClass, FRAMES_PATH, framesCss } from '../../src/web/photo-frames.js';
import { pageSizesOf } from '../../src/web/photo-sizes.js';
import { renderWeb } from '../../src/web/render-web.js';
import { attributes, htmlOf, textOf } from './rendered-sample.js';
import { ODD_NAMES, photoSheet, samplePacket, samplePictures, wideSheet } from './sample-packet.js';

let pictures: Pictures;
let files: OutputFile[];
let pages: Map<string, string>;

beforeAll(async () => {
  pictures = await samplePictures();
  files = await renderWeb(photoSheet, pictures, undefined);
  pages = htmlOf(files);
});

const page = (name: string): string => pages.get(name) ?? `no page ${name}`;

function pictureOf(id: string): Picture {
  const picture = pictures.get(id);
  if (picture === undefined) throw new Error(`the sample has no photo ${id}`);
  return picture;
}

async function filesOf(packet: Packet): Promise<OutputFile[]> {
  return renderWeb(packet, pictures, undefined);
}

function frames(of: readonly OutputFile[]): string {
  const file = of.find((one) => one.path === FRAMES_PATH);
  return file !== undefined && 'text' in file ? file.text : '';
}

function only(...blocks: Block[]): Packet {
  return { ...photoSheet, sections: [{ id: 'only', title: 'Only', blocks }] };
}

describe('a photo', () => {
  test('is offered as AVIF in every width, with JPEGs of the same widths to fall back on', () => {
    const { sizes } = pictureOf('PANO_4');
    const set = (format: 'avif' | 'jpeg') =>
      sizes.map((size) => `assets/photos/${size[format].name} ${size.width}w`).join(', ');
    const html = /<figure[^>]*id="pano">.*?<\/picture>/s.exec(page('index.html'))?.[0] ?? '';
    expect(attributes(html, 'srcset')).toEqual([set('avif'), set('jpeg')]);
    expect(html).toContain('<picture><source type="image/avif" ');
    expect(sizes.map((size) => size.width)).toEqual([480, 960, 1600]);
  });

  test('leads to its largest JPEG and keeps room in its own shape', () => {
    const html = /<figure[^>]*id="pano">.*?<\/picture>/s.exec(page('index.html'))?.[0] ?? '';
    expect(html).toContain(`href="assets/photos/${pictureOf('PANO_4').sizes.at(-1)?.jpeg.name}"`);
    expect(html).toContain('width="1600" height="400"');
  });

  test('gets the full measure when it is a panorama, and only then', () => {
    const wide = [...page('index.html').matchAll(/<figure class="photo [^"]*panorama" id="([^"]*)"/g)];
    expect(wide.map((match) => match[1])).toEqual(['pano']);
  });
});

describe('the style sheet of the frames', () => {
  test('has a shape and a few pixels for each photo of the edition and a shape for each pair', () => {
    const css = frames(files);
    expect(css.match(/url\("data:image\/png;base64,/g)).toHaveLength(photoSheet.photos.length);
    expect(css).toContain('--ratio: 8;');
    expect(css).toContain(`.${cutClass(1.333)} {\n  --ratio: 1.333;\n}`);
    for (const name of attributes(page('index.html'), 'class').join(' ').split(' '))
      if (/^(shape|tiny|cut)-/.test(name)) expect(css).toContain(`.${name} {`);
  });

  test('names no photo, and holds none that the edition does not show', async () => {
    const one = { ...photoSheet, photos: photoSheet.photos.filter((photo) => photo.id === 'IMG_1107') };
    const css = frames(await filesOf({ ...one, sections: [] }));
    expect(css.match(/url\(/g)).toHaveLength(1);
    expect(css).toContain(pictureOf('IMG_1107').tiny);
    for (const { id } of photoSheet.photos) {
      const names = [id, id.toLowerCase(), id.replace('_', '-'), id.replace(/\D+/, '')];
      for (const name of names) if (name.length > 1) expect(frames(files)).not.toContain(name);
    }
  });

  test('is asked for where a page shows photos, and not made where none does', async () => {
    expect(page('index.html')).toContain(`<link rel="stylesheet" href="${FRAMES_PATH}">`);
    const bare = await filesOf({ ...wideSheet, photos: [] });
    expect(bare.some((file) => file.path.startsWith('assets/photos/'))).toBe(false);
    expect(htmlOf(bare).get('index.html')).not.toContain(FRAMES_PATH);
    const buyer = htmlOf(await filesOf(samplePacket));
    expect(buyer.get('ages.html')).not.toContain(FRAMES_PATH);
  });

  test('refuses what could be read as something else in a style sheet', () => {
    const picture = pictureOf('IMG_1107');
    expect(() => framesCss([{ ...picture, tiny: 'data:image/png;base64,AA"); x{' }], [])).toThrow(
      'no data address',
    );
    const named = (name: string): Picture => ({
      ...picture,
      sizes: picture.sizes.map((size) => ({ ...size, jpeg: { ...size.jpeg, name } })),
    });
    expect(() => framesCss([named('a} b.jpg')], [])).toThrow('not named by a digest');
  });
});

describe('a pair', () => {
  const pair: Block = {
    kind: 'pair',
    id: 'p',
    before: 'IMG_0412',
    after: 'IMG_0988',
    aspect: 0.96,
    caption: [{ text: 'Stair.' }],
  };

  test('says before and after in words, in this order, and is cut to its own shape', async () => {
    const html = htmlOf(await filesOf(only(pair))).get('index.html') ?? '';
    const figure = /<figure class="pair.*?<\/figure>/s.exec(html)?.[0] ?? '';
    expect(textOf(figure)).toMatch(/^Before\s*After\s*Stair\.$/);
    expect(figure).toContain('class="pair cut-0-96"');
    const order = ['>Before<', 'between bare walls, no rail', '>After<', 'with a round handrail'];
    const places = order.map((words) => figure.indexOf(words));
    expect(places[0]).toBeGreaterThan(0);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(figure).not.toMatch(/<button|<input|aria-hidden/);
  });

  test('brings the script along; an edition without one has none', async () => {
    const paths = (await filesOf(only(pair))).map((file) => file.path);
    expect(paths).toContain('assets/pair.js');
    const without = await filesOf(only({ kind: 'photo', id: 'x', photo: 'IMG_1107', caption: [] }));
    expect(without.map((file) => file.path)).not.toContain('assets/pair.js');
    expect(htmlOf(without).get('index.html')).not.toContain('pair.js');
    const onPaper = await filesOf(only({ ...pair, only: 'print' }));
    expect(onPaper.map((file) => file.path)).not.toContain('assets/pair.js');
  });
});

describe('a contact sheet', () => {
  const fields = () =>
    [...page('all-photos.html').matchAll(/<figure[^>]*id="contact-\d+">.*?<\/figure>/gs)].map(
      (match) => match[0],
    );

  test('asks for the smallest file alone, in either format', () => {
    expect(fields()).toHaveLength(60);
    const html = fields()[2] ?? '';
    const [smallest] = pictureOf('PANO_8').sizes;
    expect(attributes(html, 'srcset')).toEqual([`assets/photos/${smallest?.avif.name}`]);
    expect(attributes(html, 'src')).toEqual([`assets/photos/${smallest?.jpeg.name}`]);
    expect(html).not.toContain('sizes=');
  });

  test('leads to each original under its own name, whatever the name holds', () => {
    fields().forEach((html, index) => {
      const name = ODD_NAMES[index % ODD_NAMES.length] ?? '';
      const href = /class="original" href="([^"]*)"/.exec(html)?.[1]?.replaceAll('&#39;', "'") ?? '';
      expect(href).toMatch(/^originals\/\d+\/[\w%.~!*'()-]+$/);
      expect(decodeURIComponent(href)).toBe(`originals/${index}/${name}`);
      expect(textOf(html).endsWith(name), name).toBe(true);
    });
    expect(page('all-photos.html')).toContain('K%C3%BCche%20nachher%20(2).jpg');
  });

  test('has no link where there is no original', async () => {
    const photos = [{ id: 'c1', photo: 'IMG_1107', caption: [{ text: 'Hall.' }] }];
    const html =
      htmlOf(await filesOf(only({ kind: 'photos', form: 'contact', id: 'c', photos }))).get('index.html') ??
      '';
    expect(html).toContain('<figcaption>Hall.</figcaption>');
    expect(html).not.toContain('class="original"');
  });
});

test('a path that leaves the edition’s folder is refused', () => {
  expect(encodedPath('originals/a:b/ü #?%.jpg')).toBe('originals/a%3Ab/%C3%BC%20%23%3F%25.jpg');
  for (const path of ['../x.jpg', 'originals/../../x', '/etc/x', 'a/./b'])
    expect(() => encodedPath(path), path).toThrow('no path beside the pages');
});

test('sizes say the part of a pair’s photo that is cut away, too', () => {
  const same = pageSizesOf({ kind: 'pair', ratio: 1.5 }, 1.5, false);
  const wider = pageSizesOf({ kind: 'pair', ratio: 1.5 }, 3, false);
  expect(same).not.toContain('calc');
  expect(wider).toBe(same.replaceAll('min(', 'calc(2 * min(').replaceAll('),', ')),').replace(/$/, ')'));
  expect(() => pageSizesOf({ kind: 'contact' }, 1, false)).toThrow('contact');
});
