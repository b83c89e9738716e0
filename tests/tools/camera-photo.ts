/** A small plain photo with what a camera writes into it: when, and how far north, as EXIF has them. */
import sharp from 'sharp';

export const cameraPhoto = (when?: string, north?: string): Promise<Buffer> =>
  sharp({ create: { width: 40, height: 30, channels: 3, background: '#94a3a8' } })
    .withExif({
      ...(when === undefined ? {} : { IFD2: { DateTimeOriginal: when } }),
      ...(north === undefined
        ? {}
        : {
            IFD3: {
              GPSLatitudeRef: 'N',
              GPSLatitude: north,
              GPSLongitudeRef: 'W',
              GPSLongitude: '84/1 30/1 124068/10000',
            },
          }),
    })
    .jpeg()
    .toBuffer();
