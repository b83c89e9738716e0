/** What a camera wrote into a photo, as far as it is used. Read by `intake`; where a photo was taken is printed nowhere. */

export interface CameraFacts {
  /** When the photo was taken, by the camera's own clock: `2026-02-21T09:14:02`. Never turned into an instant. */
  readonly takenAt: string | undefined;
  /** Where it was taken, in degrees north and east. Compared with the other photos' places, and never handed on. */
  readonly spot: Spot | undefined;
}

export interface Spot {
  readonly north: number;
  readonly east: number;
}

/** By the photo's id in the facts. */
export type Cameras = ReadonlyMap<string, CameraFacts>;
