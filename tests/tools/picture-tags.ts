/** What ExifTool finds in pictures that are given away: what belongs to a picture, and what lies beside it. */
import { mkdtempSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { filesBelow } from './built-houses.js';
import { run, type Tags, tagsOf } from './outside-programs.js';

/** What a picture is made of: its format, size and coding, and what ExifTool works out from those. */
const OF_THE_PICTURE =
  /^(SourceFile$|ExifTool:|System:|File:(?!Comment)|JFIF:|Composite:(ImageSize|Megapixels)$|ICC[_-])/u;
/** The same in AVIF (ISO/IEC 23008-12 and AV1-ISOBMFF 1.2), one by one: the container could hold anything. */
const OF_AN_AVIF = new Set(
  [
    ...[
      'MajorBrand',
      'MinorVersion',
      'CompatibleBrands',
      'HandlerType',
      'AV1ConfigurationVersion',
      'SeqProfile',
    ],
    ...['SeqLevelIdx0', 'SeqTier0', 'HighBitDepth', 'TwelveBit', 'ChromaFormat', 'ChromaSamplePosition'],
    ...['InitialDelaySamples', 'ImageSpatialExtent', 'ImagePixelDepth', 'MediaDataSize', 'MediaDataOffset'],
    'MediaData',
  ]
    .map((name) => `QuickTime:${name}`)
    .concat('Meta:PrimaryItemReference'),
);

/** Every tag, unknown ones and those of inner files included. */
export const everyTag = (files: readonly string[]): Tags[] => tagsOf(files, '-u', '-ee');

/** Names of what is in a picture's file beside the picture. */
export const beside = (tags: Tags): string[] =>
  Object.keys(tags).filter(
    (name) => !OF_THE_PICTURE.test(name) && !(tags.SourceFile.endsWith('.avif') && OF_AN_AVIF.has(name)),
  );

export const isPicture = (name: string): boolean => /\.(jpe?g|png|webp|avif|heic|tiff?)$/u.test(name);

/** The pictures of every sheet of a folder, taken out of it. */
export function takenOut(folder: string, to: string): string[] {
  return filesBelow(folder)
    .filter((name) => name.endsWith('.pdf'))
    .flatMap((name) => {
      const taken = mkdtempSync(path.join(to, 'taken-out-'));
      run('pdfimages', '-all', path.join(folder, name), path.join(taken, 'p'));
      return readdirSync(taken).map((file) => path.join(taken, file));
    });
}
