import { kaiser, sinc } from '../interpolation/windowedSinc';

/** Values in between that are looked at for each frame (ITU-R BS.1770-5, Annex 2: at least 4 at 48 kHz). */
const oversampling = 4;
const taps = 48;
const beta = 7;
/** As many frames come out later as the filter looks ahead. */
export const truePeakDelay = taps / 2;

/** Finds the greatest magnitude of a signal between its frames, of two channels together, frame by frame. */
export class TruePeak {
  /** Taps of each phase between two frames, the first phase being the frame itself. */
  readonly #filters = Array.from({ length: oversampling - 1 }, (_, phase) =>
    phaseTaps((phase + 1) / oversampling),
  );
  /** The last frames of each channel, twice, so that a stretch of them lies in one piece. */
  readonly #left = new Float64Array(2 * taps);
  readonly #right = new Float64Array(2 * taps);
  #at = 0;

  /** Takes in one frame; gives the peak around the frame {@link truePeakDelay} frames before it. */
  next(left: number, right: number): number {
    const at = this.#at;
    this.#left[at] = left;
    this.#left[at + taps] = left;
    this.#right[at] = right;
    this.#right[at + taps] = right;
    this.#at = (at + 1) % taps;
    const first = this.#at;
    const middle = first + taps - 1 - truePeakDelay;
    let peak = Math.max(Math.abs(this.#left[middle]), Math.abs(this.#right[middle]));
    for (const filter of this.#filters) {
      let sumLeft = 0;
      let sumRight = 0;
      for (let tap = 0; tap < taps; tap++) {
        sumLeft += filter[tap] * this.#left[first + tap];
        sumRight += filter[tap] * this.#right[first + tap];
      }
      peak = Math.max(peak, Math.abs(sumLeft), Math.abs(sumRight));
    }
    return peak;
  }
}

/** A windowed sinc for a place between the frames in the middle. */
function phaseTaps(phase: number): Float64Array {
  const half = taps / 2;
  const values = Float64Array.from({ length: taps }, (_, tap) => {
    const distance = tap - (half - 1) - phase;
    return sinc(distance) * kaiser(distance / half, beta);
  });
  const sum = values.reduce((all, value) => all + value, 0);
  return values.map((value) => value / sum);
}
