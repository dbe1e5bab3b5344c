import { Envelope, type StageSettings, type StageShapes } from '../modulation/envelope';

/** The fade of a voice that is ended before its time. */
export class Ending {
  readonly #envelope = new Envelope();
  readonly #settings: StageSettings = {
    delay: 0,
    start: 0,
    attack: 0,
    hold: 0,
    decay: 0,
    sustain: 1,
    release: 0,
  };
  readonly #shapes: StageShapes = {
    attack: 0,
    decay: 0,
    release: 0,
    isDecayRate: true,
    isReleaseRate: false,
  };
  #isEnding = false;

  /** No end is in sight. */
  begin(): void {
    this.#isEnding = false;
  }

  /** Fades out in some seconds, unless that is under way. */
  end(seconds: number, shape: number, sampleRate: number): void {
    if (this.#isEnding) return;
    this.#isEnding = true;
    this.#settings.release = seconds;
    this.#shapes.release = shape;
    this.#envelope.begin(this.#settings, this.#shapes, sampleRate);
    this.#envelope.release();
  }

  get isOver(): boolean {
    return this.#isEnding && this.#envelope.isOver;
  }

  /** How many frames of the last call of {@link multiply} came before the end. */
  get framesBeforeEnd(): number {
    return this.#isEnding ? this.#envelope.framesBeforeEnd : Number.POSITIVE_INFINITY;
  }

  multiply(left: Float64Array, right: Float64Array, count: number): void {
    if (this.#isEnding) this.#envelope.multiply(left, right, count);
  }
}
