import { describe, expect, it } from 'vitest';
import { progressLine } from '../../src/progress-line.js';

const line = (done: number, all: number, elapsed: number, photo = 'IMG_0412.jpg'): string =>
  progressLine({ house: 'quarry-road', photo, done, all, elapsed });

describe('the line that follows the photos', () => {
  it('has a bar, the count and the photo’s name', () => {
    expect(line(5, 20, 500)).toBe('quarry-road █████░░░░░░░░░░░░░░░ 5 of 20 photos  IMG_0412.jpg');
    expect(line(0, 0, 0)).toContain('0 of 0');
  });

  it.each([
    [2, 100, 9000, ''],
    [10, 100, 1500, ''],
    [10, 100, 5000, ', about 45 s left'],
    [10, 400, 10_000, ', about 7 min left'],
    [99, 100, 9900, ', a moment left'],
    [100, 100, 9900, ''],
  ])('after %i of %i photos in %i ms says%s', (done, all, elapsed, left) => {
    expect(line(done, all, elapsed)).toContain(`of ${all} photos${left}  IMG`);
  });

  it('lets no name run off the line or speak to the terminal', () => {
    expect(line(1, 2, 0, `${'a'.repeat(80)}.jpg`).length).toBeLessThan(90);
    expect(line(1, 2, 0, '\u001b[2Jx.jpg')).not.toContain('\u001b');
  });
});
