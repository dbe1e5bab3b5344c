import type { Modulator } from '../font';

/** A sample as a region wants it played. */
export interface SampleRequest {
  /** Absolute path of the file. */
  path: string;
  /** Frames left out at the start. */
  offset: number;
  /** The last frame that is played; `undefined` for the last of the file. */
  end: number | undefined;
  /** First and last frame of the loop. */
  loop: { start: number; end: number } | undefined;
  mode: 'none' | 'loop' | 'untilRelease';
}

/** How loud a region is at each velocity, split into stretches where one formula holds. */
export interface VelocityBand {
  low: number;
  high: number;
  /** Attenuation that is added throughout, in centibels. */
  attenuation: number;
  /** The amount of the modulator from velocity to level. */
  amount: number;
}

/** Keys of a region for which one level holds. */
export interface KeyBand {
  low: number;
  high: number;
  levelDb: number;
}

/** A region on its way to be one zone or several. */
export interface ZoneDraft {
  /** The region's header in its instrument. */
  region: number;
  keys: KeyBand[];
  velocities: VelocityBand[];
  generators: Map<number, number>;
  modulators: Modulator[];
  /** Whether it has a filter: without one, what moves a filter does nothing. */
  hasFilter: boolean;
  /** Level at the greatest velocity, above or below that of the sample. */
  levelDb: number;
  /** dB a key, and the key at which nothing is added, where a modulator says so. */
  keyTrack: { perKeyDb: number; center: number } | undefined;
  rootKey: number;
  /** Tuning in cents. */
  cents: number;
  sample: SampleRequest;
  /** −100 to 100. */
  pan: number;
  width: number;
  position: number;
}
