/** A photo as a phone leaves it, with what must never be published in its metadata. Made, not taken. */
import sharp from 'sharp';

/** Written into every original; none may be found in any output. */
export const SECRETS = ['QZSERIALXJ4471', 'QZOWNERXJ', 'QZCAMERAXJ', '39.123437', '12.4068'] as const;

/** A JPEG of 320 by 240 stored pixels with GPS position, serial number, names and a thumbnail-free EXIF block. */
export async function photoWithSecrets(id: string, orientation = 1): Promise<Buffer> {
  const shade = [...id].reduce((sum, sign) => sum + sign.charCodeAt(0), 0) % 200;
  const pixels = Buffer.alloc(320 * 240 * 3);
  for (let y = 0; y < 240; y++)
    for (let x = 0; x < 320; x++) {
      const at = (y * 320 + x) * 3;
      pixels[at] = (x + shade) % 256;
      pixels[at + 1] = (y * 2 + shade) % 256;
      pixels[at + 2] = (shade + ((x * y) >> 7)) % 256;
    }
  return sharp(pixels, { raw: { width: 320, height: 240, channels: 3 } })
    .withExif({
      IFD0: {
        Make: 'QZCAMERAXJ',
        Artist: 'QZOWNERXJ',
        ImageDescription: 'QZOWNERXJ at home',
      },
      IFD2: { BodySerialNumber: 'QZSERIALXJ4471', DateTimeOriginal: '2026:02:21 09:14:02' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '39/1 7/1 243724/10000',
        GPSLongitudeRef: 'W',
        GPSLongitude: '84/1 30/1 124068/10000',
      },
    })
    .withMetadata({ orientation })
    .jpeg({ quality: 90 })
    .toBuffer();
}
