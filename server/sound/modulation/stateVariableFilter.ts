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
  #framesLeft = 0;
  readonly #state = new Float64Array(4);

  /** Forgets what it heard and starts with values. */
  begin(values: Readonly<FilterValues>): void {
    Object.assign(this.#now, values);
    Object.assign(this.#next, values);
    this.#framesLeft = 0;
    this.#state.fill(0);
  }

  /** Moves in a straight line to other values over some frames. */
  moveTo(values: Readonly<FilterValues>, frames: number): void {
    Object.assign(this.#next, values);
    this.#framesLeft = frames;
  }

  /** Filters two channels in place; one where both are the same. */
  process(left: Float64Array, right: Float64Array, count: number): void {
    if (this.#framesLeft > 0) this.#glide(left, right, count);
    else {
      this.#hold(left, 0, count);
      if (left !== right) this.#hold(right, 2, count);
    }
    for (let at = 0; at < 4; at++) if (Math.abs(this.#state[at]) < nothing) this.#state[at] = 0;
  }

  #hold(values: Float64Array, at: number, count: number): void {
    const { g, k, input, band, low } = this.#now;
    const a1 = 1 / (1 + g * (g + k));
    const a2 = g * a1;
    const a3 = g * a2;
    let s1 = this.#state[at];
    let s2 = this.#state[at + 1];
    for (let frame = 0; frame < count; frame++) {
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

  #glide(left: Float64Array, right: Float64Array, count: number): void {
    const now = this.#now;
    const next = this.#next;
    const state = this.#state;
    const isMono = left === right;
    for (let frame = 0; frame < count; frame++) {
      if (this.#framesLeft > 0) {
        const share = 1 / this.#framesLeft--;
        now.g += (next.g - now.g) * share;
        now.k += (next.k - now.k) * share;
        now.input += (next.input - now.input) * share;
        now.band += (next.band - now.band) * share;
        now.low += (next.low - now.low) * share;
      }
      const a1 = 1 / (1 + now.g * (now.g + now.k));
      left[frame] = this.#tick(left[frame], 0, a1, state);
      if (!isMono) right[frame] = this.#tick(right[frame], 2, a1, state);
    }
  }

  #tick(x: number, at: number, a1: number, state: Float64Array): number {
    const { g, input, band, low } = this.#now;
    const s1 = state[at];
    const s2 = state[at + 1];
    const v1 = a1 * (s1 + g * (x - s2));
    const v2 = s2 + g * v1;
    state[at] = 2 * v1 - s1;
    state[at + 1] = 2 * v2 - s2;
    return input * x + band * v1 + low * v2;
  }

  /** The greatest magnitude of what it still holds. */
  get held(): number {
    const [a, b, c, d] = this.#state;
    return Math.max(Math.abs(a), Math.abs(b), Math.abs(c), Math.abs(d));
  }
}
