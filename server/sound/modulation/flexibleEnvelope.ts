import type { FlexibleEnvelopeRecipe } from '../program/recipe';

/** The curves of a program by number, 128 values each; see `curveValue`. */
export type Curves = ReadonlyMap<number, Float64Array>;

/** Loops that an envelope may go round in one step of time; more would be for nothing. */
const mostPoints = 4096;

/**
 * A numbered envelope (`egN_…`): it goes from point to point, waits at its sustain point until it is released, goes round a
 * loop before that where it has one, and stays at its last point.
 */
export class FlexibleEnvelope {
  level = 0;
  #recipe: FlexibleEnvelopeRecipe | undefined;
  #values: Float64Array;
  #curves: Curves;
  #sampleRate = 1;
  /** The point that is gone to, and the level and the frame on the way to it. */
  #point = 0;
  #from = 0;
  #frame = 0;
  #frames = 0;
  #loopsLeft = 0;
  #isReleased = false;

  constructor(curves: Curves) {
    this.#curves = curves;
    this.#values = new Float64Array(0);
  }

  /** Begins. `values` holds times and levels in the slots that the recipe names; it is read again at each point. */
  begin(recipe: FlexibleEnvelopeRecipe, values: Float64Array, sampleRate: number): void {
    this.#recipe = recipe;
    this.#values = values;
    this.#sampleRate = sampleRate;
    this.#isReleased = false;
    this.#loopsLeft = recipe.loopCount < 0 ? Number.POSITIVE_INFINITY : recipe.loopCount;
    this.#point = 0;
    this.#frame = 0;
    this.#from = 0;
    this.level = 0;
    this.#enter();
    this.advance(0);
  }

  /** Whether the last point is reached and nothing moves any more. */
  get isOver(): boolean {
    return this.#recipe === undefined || this.#point >= this.#recipe.points.length;
  }

  release(): void {
    this.#isReleased = true;
  }

  /** Moves on by some frames. */
  advance(count: number): void {
    const recipe = this.#recipe;
    if (!recipe) return;
    let rest = count;
    for (let passed = 0; passed < mostPoints && this.#point < recipe.points.length; passed++) {
      const steps = Math.min(rest, this.#frames - this.#frame);
      this.#frame += steps;
      rest -= steps;
      if (this.#frame < this.#frames) break;
      this.level = this.#values[recipe.points[this.#point].level];
      if (this.#mustWait(recipe)) break;
      this.#goOn(recipe);
    }
    if (this.#point < recipe.points.length) this.level = this.#onTheWay(recipe);
  }

  #mustWait(recipe: FlexibleEnvelopeRecipe): boolean {
    return this.#point === recipe.sustain && !this.#isReleased && !(recipe.loop >= 0 && this.#loopsLeft > 0);
  }

  #goOn(recipe: FlexibleEnvelopeRecipe): void {
    this.#from = this.level;
    const goesRound = this.#point === recipe.sustain && !this.#isReleased && recipe.loop >= 0;
    if (goesRound) {
      this.#loopsLeft--;
      this.#point = recipe.loop;
    } else this.#point++;
    this.#enter();
  }

  #enter(): void {
    const point = this.#recipe?.points[this.#point];
    this.#frame = 0;
    this.#frames = point ? Math.max(0, Math.round(this.#values[point.time] * this.#sampleRate)) : 0;
  }

  #onTheWay(recipe: FlexibleEnvelopeRecipe): number {
    const { level, shape, curve } = recipe.points[this.#point];
    const to = this.#values[level];
    const x = this.#frames > 0 ? this.#frame / this.#frames : 1;
    const points = curve < 0 ? undefined : this.#curves.get(curve);
    const share = points
      ? curveValue(points, x * 127)
      : shape === 0
        ? x
        : Math.expm1(shape * x) / Math.expm1(shape);
    return this.#from + (to - this.#from) * share;
  }
}

/** The value of a curve at 0..127, on the straight line between its points. */
export function curveValue(points: Float64Array, at: number): number {
  const clamped = Math.max(0, Math.min(127, at));
  const low = Math.min(126, Math.floor(clamped));
  return points[low] + (clamped - low) * (points[low + 1] - points[low]);
}
