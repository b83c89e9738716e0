/** Reads what a camera wrote into a photo: when, by its own clock, and where. */
import ExifReader from 'exifreader';
import type { CameraFacts, Spot } from '../facts/camera.js';
import { readDate } from '../facts/date.js';

const NOTHING: CameraFacts = { takenAt: undefined, spot: undefined };

/** Takes a photo's bytes, of any format; gives nothing where its tags can't be read: it is still a photo. */
export function readCamera(bytes: Buffer): CameraFacts {
  try {
    const tags = ExifReader.load(bytes, { expanded: true });
    const { exif, gps } = tags;
    // The other two times are when a print was scanned and when the file was last changed: no day of a photo.
    return {
      takenAt: moment(exif?.DateTimeOriginal?.description),
      spot: spot(gps?.Latitude, gps?.Longitude),
    };
  } catch {
    return NOTHING;
  }
}

/** EXIF writes `2026:02:21 09:14:02`, or blanks and zeros for not known. */
function moment(written: string | undefined): string | undefined {
  const match = /^(\d{4}):(\d{2}):(\d{2})[ T](\d{2}):(\d{2}):(\d{2})/.exec(written ?? '');
  if (match === null) return undefined;
  const [, year, month, day, hour = '', minute = '', second = ''] = match;
  const date = `${year}-${month}-${day}`;
  const isTime = Number(hour) < 24 && Number(minute) < 60 && Number(second) < 60;
  return isTime && readDate(date).ok ? `${date}T${hour}:${minute}:${second}` : undefined;
}

/** A receiver without a fix writes zeros or nothing. */
function spot(north: number | undefined, east: number | undefined): Spot | undefined {
  if (north === undefined || east === undefined) return undefined;
  if (!Number.isFinite(north) || !Number.isFinite(east)) return undefined;
  if (Math.abs(north) > 90 || Math.abs(east) > 180 || (north === 0 && east === 0)) return undefined;
  return { north, east };
}
