import { describe, expect, it } from 'vitest';
import { composePacket } from '../../src/packet/compose.js';
import { inTimeOrder, type PhotoOnDisk, takenWhen } from '../../src/packet/context.js';
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
  takenOn: takenAt?.slice(0, 10),
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
    for (const edition of ['agent', 'buyer', 'care'] as const) {
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

describe('when a photo was taken', () => {
  const taken = houseFrom({ photos: { A: { shows: 'x', taken: '2026-02-21' } } }).photos.A?.taken;

  it('is what was written, and on that day the camera’s time', () => {
    expect(takenWhen({ ...onDisk('A', '2026-02-21T09:14:02'), taken })).toBe('2026-02-21T09:14:02');
    expect(takenWhen({ ...onDisk('A', '2019-01-01T00:00:00'), taken })).toBe('2026-02-21');
    expect(takenWhen(onDisk('A'))).toBeUndefined();
  });

  it('leaves photos of one moment as they were written', () => {
    const same = ['C', 'A', 'B'].map((id) => onDisk(id, '2026-02-21T09:14:02'));
    expect(inTimeOrder(same).map((photo) => photo.id)).toEqual(['C', 'A', 'B']);
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
