import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { canReadHeic, HEIC_PACKAGE, heicVersion } from '../../src/intake/decode-heic.js';

describe('the decoder of HEIC', () => {
  it('is there, in the version that messages name and the package asks for', () => {
    const { optionalDependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      optionalDependencies: Record<string, string>;
    };
    expect(canReadHeic()).toBe(true);
    expect(HEIC_PACKAGE).toBe(`libheif-js@${optionalDependencies['libheif-js']}`);
    expect(heicVersion()).toBe(optionalDependencies['libheif-js']);
  });

  it('may be missing, and then a HEIC photo is told with what to type', async () => {
    expect(canReadHeic('no-such-decoder/bundle.js')).toBe(false);
    vi.resetModules();
    vi.doMock('../../src/intake/decode-heic.js', async (original) => ({
      ...(await original<object>()),
      canReadHeic: () => false,
    }));
    const { lookAtPhoto } = await import('../../src/intake/look-at-photo.js');
    const name = 'IMG_0690.heic';
    const original = `content/quarry-road/photos/${name}`;
    const looked = await lookAtPhoto({ id: name, name, original, huge: false });
    expect(looked).toEqual({
      trouble: {
        message: `photos/${name} is a HEIC picture, and the part that reads those is not installed`,
        hints: [
          `type  npm install ${HEIC_PACKAGE}  and build again`,
          'or save it as JPEG on the phone or in a picture program',
        ],
      },
    });
    vi.doUnmock('../../src/intake/decode-heic.js');
  });
});
