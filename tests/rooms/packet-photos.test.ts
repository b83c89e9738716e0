import { describe, expect, it } from 'vitest';
import { composePacket } from '../../src/packet/compose.js';
import type { PhotoOnDisk } from '../../src/packet/context.js';
import type { Block, EditionName, Packet, PhotosBlock } from '../../src/packet/packet.js';
import { pairAspect } from '../../src/packet/pair-crop.js';
import { wordsOf } from '../../src/packet/words-of.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const onDisk = (id: string, takenAt?: string): PhotoOnDisk => ({
  id,
  name: `${id}.heic`,
  width: 4032,
  height: 3024,
  takenAt,
  content: id,
});

const SPEC: PartialSpec = {
  levels: [{ id: 'main', name: 'Main floor', grade: 'above', ceiling: "8'" }],
  rooms: [
    { id: 'kitchen', level: 'main', use: 'kitchen', size: "10' x 12'" },
    { id: 'bath', level: 'main', use: 'bath', size: "6' x 8'" },
  ],
  work: [
    {
      id: 'tile',
      what: 'wall tile',
      did: 'new',
      where: ['bath'],
      done: '2026-05-01',
      photos: { before: 'OLD', after: 'NEW' },
    },
  ],
  photos: {
    LATE: { shows: 'kitchen', where: 'kitchen', alt: 'A kitchen.' },
    EARLY: { shows: 'kitchen wall', where: 'kitchen', alt: 'A wall.', hide: [[0, 0, 0.5, 0.5]] },
    OLD: { shows: 'bath', when: 'before', alt: 'A bath.' },
    NEW: { shows: 'bath', when: 'after', alt: 'The bath, tiled.' },
    GARDEN: { shows: 'garden', alt: 'A garden.' },
    SECRET: { shows: 'safe', alt: 'A safe.', where: 'kitchen', private: true },
    HELD: { shows: 'bed', alt: 'A bed.', 'not-before': '2027-01-05' },
    WORDLESS: { shows: 'shed' },
  },
};

const PHOTOS = new Map(
  [
    onDisk('LATE', '2026-05-03T10:00:00'),
    onDisk('EARLY', '2026-02-01T10:00:00'),
    onDisk('OLD', '2026-02-02T10:00:00'),
    { ...onDisk('NEW', '2026-05-02T10:00:00'), width: 3024, height: 4032 },
    onDisk('GARDEN'),
    onDisk('SECRET', '2026-03-01T10:00:00'),
    onDisk('HELD', '2026-04-01T10:00:00'),
    onDisk('WORDLESS', '2026-04-02T10:00:00'),
  ].map((photo) => [photo.id, photo]),
);

function packetOf(edition: EditionName, unnamed: readonly PhotoOnDisk[] = []): Packet {
  const house = houseFrom(SPEC);
  const { tally } = deriveTally(house, '2026-06-30');
  return composePacket({ folder: 'test-house', house, tally, edition, photos: PHOTOS, unnamed });
}

const section = (packet: Packet, id: string): readonly Block[] =>
  packet.sections.find((one) => one.id === id)?.blocks ?? [];
const grids = (blocks: readonly Block[]): PhotosBlock[] => blocks.filter((block) => block.kind === 'photos');

describe('photos by room', () => {
  const blocks = section(packetOf('buyer'), 'photos');

  it('stand room by room in the order they were taken; a pair’s where its work was', () => {
    expect(blocks.flatMap(wordsOf)).toEqual([
      'Kitchen. Kitchen wall, 1 February 2026, part covered',
      'Kitchen. 3 May 2026',
      'Bath. Before, 2 February 2026',
      'Bath. After, 2 May 2026',
      'Garden',
    ]);
    expect(grids(blocks).map((grid) => grid.photos.map((one) => one.photo))).toEqual([
      ['EARLY', 'LATE', 'OLD', 'NEW', 'GARDEN'],
    ]);
  });

  it('hold every photo that may leave the house file and has words, and no other', () => {
    const shown = grids(blocks).flatMap((grid) => grid.photos.map((one) => one.photo));
    expect(shown.sort()).toEqual(['EARLY', 'GARDEN', 'LATE', 'NEW', 'OLD']);
    expect(
      packetOf('buyer')
        .photos.map((one) => one.id)
        .sort(),
    ).toEqual(shown);
  });
});

describe('the contact sheet', () => {
  const packet = packetOf('file', [{ ...onDisk('*/IMG_7.heic', '2026-01-01T08:00:00'), name: 'IMG_7.heic' }]);
  const [grid] = grids(section(packet, 'contact-sheet'));

  it('shows all photos in the order they were taken, those without a time last', () => {
    const order = ['*/IMG_7.heic', 'EARLY', 'OLD', 'SECRET', 'HELD', 'WORDLESS', 'NEW', 'LATE', 'GARDEN'];
    expect(grid?.photos.map((one) => one.photo)).toEqual(order);
  });

  it('says of each what becomes of it', () => {
    const [first, early, , secret, held, wordless] = wordsOf(grid as Block).filter((_, i) => i % 2 === 0);
    expect(wordsOf(grid as Block)[1]).toBe('IMG_7.heic');
    expect(first).toBe('1 January 2026, 08:00, named by no fact');
    expect(early).toBe('Kitchen wall. 1 February 2026, 10:00, part covered');
    expect(secret).toBe('Safe. 1 March 2026, 10:00, private');
    expect(held).toBe('Bed. 1 April 2026, 10:00, held until 5 January 2027');
    expect(wordless).toBe('Shed. 2 April 2026, 10:00, no alt text');
  });

  it('leads to the originals, which lie in the house file alone', () => {
    expect(packet.originals).toContainEqual({ photo: '*/IMG_7.heic', path: 'originals/IMG_7.heic' });
    expect(packet.originals).toHaveLength(PHOTOS.size + 1);
    for (const edition of ['agent', 'visit', 'buyer', 'care'] as const) {
      const published = packetOf(edition, [onDisk('*/IMG_7.heic')]);
      expect(published.originals).toEqual([]);
      expect(section(published, 'contact-sheet')).toEqual([]);
      expect(published.photos.map((one) => one.id)).not.toContain('*/IMG_7.heic');
    }
  });

  it('asks for small pictures of what is shown nowhere else', () => {
    const uses = new Map(packet.photos.map((one) => [one.id, one.use]));
    expect(uses.get('*/IMG_7.heic')).toBe('contact');
    expect(uses.get('NEW')).toBe('full');
    expect(packet.photos.every((one) => one.alt !== '')).toBe(true);
  });

  it('of many photos is told apart by month', () => {
    const many = Array.from({ length: 30 }, (_, i) => onDisk(`*/${i}`, `2026-0${1 + (i % 3)}-05T10:00:00`));
    const blocks = section(packetOf('file', many), 'contact-sheet');
    const headings = blocks.flatMap((block) => (block.kind === 'heading' ? [block.text] : []));
    expect(headings).toEqual([
      'January 2026',
      'February 2026',
      'March 2026',
      'April 2026',
      'May 2026',
      'Without a time',
    ]);
    expect(grids(blocks).flatMap((one) => one.photos)).toHaveLength(30 + PHOTOS.size);
  });
});

describe('a photo whose entry says when it was taken', () => {
  const packetWith = (
    taken: string | undefined,
    takenAt: string | undefined,
    edition: EditionName = 'file',
    more: readonly PhotoOnDisk[] = [],
  ) => {
    const house = houseFrom({
      photos: {
        NEW: { shows: 'yard', alt: 'A yard.' },
        SCAN: { shows: 'front', alt: 'A front.', taken },
      },
    });
    return composePacket({
      folder: 'test-house',
      house,
      tally: deriveTally(house, '2026-06-30').tally,
      edition,
      photos: new Map([
        ['NEW', onDisk('NEW', '2012-05-03T10:00:00')],
        ['SCAN', onDisk('SCAN', takenAt)],
      ]),
      unnamed: more,
    });
  };
  const captionOf = (packet: Packet, id: string) =>
    grids(section(packet, id))
      .flatMap((grid) => grid.photos)
      .find(({ photo }) => photo === 'SCAN')
      ?.caption.map(({ text }) => text)
      .join('');

  it.each([
    ['../2010', '2026-02-21T11:26:00', 'Front. 2010 or before'],
    ['../2010', undefined, 'Front. 2010 or before'],
    ['2025/..', '2026-02-21T11:26:00', 'Front. 2025 or after'],
    ['2019', '2026-02-21T11:26:00', 'Front. 2019'],
    ['2026-02-20', '2026-02-21T11:26:00', 'Front. 20 February 2026'],
    ['2026-02-21', '2026-02-21T11:26:00', 'Front. 21 February 2026, 11:26'],
    ['2026-02-21?', '2026-02-21T11:26:00', 'Front. 21 February 2026 (not certain)'],
    [undefined, '2026-02-21T11:26:00', 'Front. 21 February 2026, 11:26'],
    [undefined, undefined, 'Front. No time'],
  ])('taken: %s with a camera’s %s', (taken, takenAt, words) => {
    expect(captionOf(packetWith(taken, takenAt), 'contact-sheet')).toBe(words);
  });

  it('stands alike in both lists of photos, in words and in order', () => {
    for (const takenAt of ['2026-02-21T11:26:00', undefined]) {
      const packet = packetWith('../2010', takenAt);
      expect(captionOf(packetWith('../2010', takenAt, 'buyer'), 'photos')).toContain('2010 or before');
      const [sheet] = grids(section(packet, 'contact-sheet'));
      expect(sheet?.photos.map(({ photo }) => photo)).toEqual(['SCAN', 'NEW']);
    }
  });

  it.each([
    ['2019', '2019'],
    ['199X', 'The 1990s'],
    ['../2010', '2010 or before'],
    ['2011-04~', 'About April 2011'],
    ['2011-04', 'April 2011'],
    ['2011-04-09', 'April 2011'],
    ['2011-24', 'Winter 2011–12'],
  ])('of many, %s stands under “%s”', (taken, heading) => {
    const many = Array.from({ length: 25 }, (_, i) => onDisk(`*/${i}`, '2026-05-05T10:00:00'));
    const blocks = section(packetWith(taken, '2026-05-01T10:00:00', 'file', many), 'contact-sheet');
    const headings = blocks.flatMap((block) => (block.kind === 'heading' ? [block.text] : []));
    const early = taken < '2012' && taken !== '2019';
    expect(headings).toEqual(early ? [heading, 'May 2012', 'May 2026'] : ['May 2012', heading, 'May 2026']);
    const under = blocks[blocks.findIndex((block) => block.kind === 'heading' && block.text === heading) + 1];
    expect(under?.kind === 'photos' && under.photos.map(({ photo }) => photo)).toEqual(['SCAN']);
    const ids = blocks.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => /^[a-z0-9-]+$/.test(id))).toBe(true);
  });
});

describe('the crop of a pair', () => {
  it.each([
    ['two level photos of one shape keep it', [4, 3], [4, 3], 1.333],
    ['two upright ones are cut to ten by thirteen', [3, 4], [3, 4], 0.769],
    ['a level and an upright one meet between', [4, 3], [3, 4], 0.96],
    ['two panoramas are cut to eight by five', [6, 1], [6, 1], 1.6],
  ] as const)('%s', (_what, [w1, h1], [w2, h2], aspect) => {
    expect(pairAspect({ width: w1, height: h1 }, { width: w2, height: h2 })).toBe(aspect);
  });
});
