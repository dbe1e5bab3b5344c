/** What a filter computes with: the prewarped frequency, the damping, and how input, band and low are mixed. */
export interface FilterValues {
  g: number;
  k: number;
  input: number;
  band: number;
  low: number;
}

/** States below this are taken for 0: numbers near the smallest that a processor knows slow it down. */
const nothing = 1e-20;

/**
 * A filter of second order in state-variable form, by trapezoidal integration, for two channels. Its frequency response is that
 * of the bilinear transform, and its values can move without a click (Zavalishin, The Art of VA Filter Design, 2018, chapter 4).
 */
export class StateVariableFilter {
  readonly #now: FilterValues = { g: 0, k: 1, input: 1, band: 0, low: 0 };
  readonly #next: FilterValues = { g: 0, k: 1, input: 1, band: 0, low: 0 };
  /** What is added to each a frame on the way. */
  readonly #slopes: FilterValues = { g: 0, k: 0, input: 0, band: 0, low: 0 };
  #framesLeft = 0;
  readonly #state = new Float64Array(4);

  /** Forgets what it heard and starts with values. */
  begin(values: Readonly<FilterValues>): void {
    set(this.#now, values);
    set(this.#next, values);
    this.#framesLeft = 0;
    this.#state.fill(0);
  }

  /** Moves in a straight line to other values over some frames. */
  moveTo(values: Readonly<FilterValues>, frames: number): void {
    set(this.#next, values);
    this.#framesLeft = frames;
  }

  /** Filters two channels in place; one where both are the same. */
  process(left: Float64Array, right: Float64Array, count: number): void {
    if (this.#framesLeft > 0) this.#glide(left, right, count);
    else {
      this.#hold(left, 0, count);
      if (left !== right) this.#hold(right, 2, count);
    }
    const state = this.#state;
    for (let at = 0; at < 4; at++) if (Math.abs(state[at]) < nothing) state[at] = 0;
  }

  #hold(values: Float64Array, at: number, count: number, from = 0): void {
    const { g, k, input, band, low } = this.#now;
    const a1 = 1 / (1 + g * (g + k));
    const a2 = g * a1;
    const a3 = g * a2;
    let s1 = this.#state[at];
    let s2 = this.#state[at + 1];
    for (let frame = from; frame < count; frame++) {
      const x = values[frame];
      const v3 = x - s2;
      const v1 = a1 * s1 + a2 * v3;
      const v2 = s2 + a2 * s1 + a3 * v3;
      s1 = 2 * v1 - s1;
      s2 = 2 * v2 - s2;
      values[frame] = input * x + band * v1 + low * v2;
    }
    this.#state[at] = s1;
    this.#state[at + 1] = s2;
  }

  /** Filters up to the end of the way to other values, and on with these. */
  #glide(left: Float64Array, right: Float64Array, count: number): void {
    const now = this.#now;
    const next = this.#next;
    const frames = Math.min(count, this.#framesLeft);
    const share = 1 / this.#framesLeft;
    const slopes = this.#slopes;
    slopes.g = (next.g - now.g) * share;
    slopes.k = (next.k - now.k) * share;
    slopes.input = (next.input - now.input) * share;
    slopes.band = (next.band - now.band) * share;
    slopes.low = (next.low - now.low) * share;
    this.#glideChannel(left, 0, frames);
    if (left !== right) this.#glideChannel(right, 2, frames);
    this.#framesLeft -= frames;
    if (this.#framesLeft === 0) set(now, next);
    else add(now, slopes, frames);
    if (frames === count) return;
    this.#hold(left, 0, count, frames);
    if (left !== right) this.#hold(right, 2, count, frames);
  }

  #glideChannel(values: Float64Array, at: number, count: number): void {
    let { g, k, input, band, low } = this.#now;
    const { g: gSlope, k: kSlope, input: inputSlope, band: bandSlope, low: lowSlope } = this.#slopes;
    let s1 = this.#state[at];
    let s2 = this.#state[at + 1];
    for (let frame = 0; frame < count; frame++) {
      g += gSlope;
      k += kSlope;
      input += inputSlope;
      band += bandSlope;
      low += lowSlope;
      const x = values[frame];
      const v1 = (s1 + g * (x - s2)) / (1 + g * (g + k));
      const v2 = s2 + g * v1;
      s1 = 2 * v1 - s1;
      s2 = 2 * v2 - s2;
      values[frame] = input * x + band * v1 + low * v2;
    }
    this.#state[at] = s1;
    this.#state[at + 1] = s2;
  }

  /** The greatest magnitude of what it still holds. */
  get held(): number {
    const state = this.#state;
    return Math.max(Math.abs(state[0]), Math.abs(state[1]), Math.abs(state[2]), Math.abs(state[3]));
  }
}

function set(into: FilterValues, { g, k, input, band, low }: Readonly<FilterValues>): void {
  into.g = g;
  into.k = k;
  into.input = input;
  into.band = band;
  into.low = low;
}

function add(into: FilterValues, slopes: Readonly<FilterValues>, frames: number): void {
  into.g += slopes.g * frames;
  into.k += slopes.k * frames;
  into.input += slopes.input * frames;
  into.band += slopes.band * frames;
  into.low += slopes.low * frames;
}
