import { choice } from '../choices';

/** The settings of an envelope of fixed stages: times in seconds, levels from 0 to 1. */
export interface StageSettings {
  delay: number;
  start: number;
  attack: number;
  hold: number;
  decay: number;
  sustain: number;
  release: number;
}

/** What an envelope of fixed stages keeps to for its whole life. */
export interface StageShapes {
  attack: number;
  decay: number;
  release: number;
  /** Decay is a rate from full to nothing that stops at the sustain level; else its time is that to the sustain level. */
  isDecayRate: boolean;
  /** Release is a rate from full to nothing; else its time is that from whatever level. */
  isReleaseRate: boolean;
}

/** The shape that falls by 90 dB; it is computed as a pure exponential that ends at nothing. */
export const fallingShape = -10.3616;
const fallExponent = (choice.envelopeFallDb.value / 20) * Math.LN10;
const lowestLevel = Math.exp(-fallExponent);

const Stage = { delay: 0, attack: 1, hold: 2, decay: 3, sustain: 4, release: 5, over: 6 } as const;

/**
 * An envelope of delay, attack, hold, decay, sustain and release (public SFZ documentation, envelope generators), exact to
 * the frame. Settings are looked at when their stage begins, so that they can be moved meanwhile.
 */
export class Envelope {
  /** The level at the present frame. */
  level = 0;
  /** How many values of the last call of {@link multiply} came before the end; all where it has not ended. */
  framesBeforeEnd = 0;
  #stage: number = Stage.over;
  /** Frames of the stage that are left; `Infinity` for one that waits. */
  #left = 0;
  /** The level is `base + scale · power`; each frame multiplies the power and adds to the base. */
  #base = 0;
  #scale = 0;
  #power = 1;
  #factor = 1;
  #rise = 0;
  #settings: StageSettings;
  #shapes: StageShapes;
  #sampleRate = 1;

  constructor() {
    this.#settings = { delay: 0, start: 0, attack: 0, hold: 0, decay: 0, sustain: 1, release: 0 };
    this.#shapes = { attack: 0, decay: 0, release: 0, isDecayRate: true, isReleaseRate: false };
  }

  /** Begins. `settings` is held and read again as stages begin. */
  begin(settings: StageSettings, shapes: StageShapes, sampleRate: number): void {
    this.#settings = settings;
    this.#shapes = shapes;
    this.#sampleRate = sampleRate;
    this.#stage = Stage.delay;
    this.#stay(0, this.#frames(settings.delay));
    this.#passEndedStages();
  }

  /** Whether nothing comes any more. */
  get isOver(): boolean {
    return this.#stage === Stage.over;
  }

  /** Whether the level stays as it is until the envelope is released or moved. */
  get isResting(): boolean {
    return this.#stage === Stage.sustain || this.#stage === Stage.over;
  }

  /** Lets go: falls from the present level, whatever the stage. */
  release(): void {
    if (this.#stage >= Stage.release) return;
    const { level } = this;
    this.#stage = Stage.release;
    if (level <= 0) {
      this.#end();
      return;
    }
    const { release: shape, isReleaseRate } = this.#shapes;
    this.#move(level, 0, this.#frames(this.#settings.release), shape, isReleaseRate ? 1 : level);
    this.#passEndedStages();
  }

  /** Follows a sustain level that was moved while it is held. */
  followSustain(): void {
    if (this.#stage === Stage.sustain) {
      this.level = this.#settings.sustain;
      this.#base = this.level;
    }
  }

  /** Multiplies `count` values of two channels by the level, frame by frame; of one where both are the same. */
  multiply(values: Float64Array, other: Float64Array, count: number): void {
    const isMono = values === other;
    this.framesBeforeEnd = this.isOver ? 0 : count;
    for (let at = 0; at < count; ) {
      const steps = Math.min(count - at, this.#left);
      const end = at + steps;
      if (this.#factor === 1 && this.#rise === 0) {
        const { level } = this;
        if (level !== 1) {
          for (let frame = at; frame < end; frame++) values[frame] *= level;
          if (!isMono) for (let frame = at; frame < end; frame++) other[frame] *= level;
        }
      } else this.#multiplyMoving(values, other, at, end);
      at = end;
      const wasOver = this.isOver;
      this.#pass(steps);
      if (this.isOver && !wasOver) this.framesBeforeEnd = at;
    }
  }

  #multiplyMoving(values: Float64Array, other: Float64Array, from: number, end: number): void {
    const scale = this.#scale;
    const factor = this.#factor;
    const rise = this.#rise;
    const isMono = values === other;
    let base = this.#base;
    let power = this.#power;
    for (let frame = from; frame < end; frame++) {
      const level = base + scale * power;
      values[frame] *= level;
      if (!isMono) other[frame] *= level;
      power *= factor;
      base += rise;
    }
    this.#base = base;
    this.#power = power;
  }

  /** Moves on by some frames without sound. */
  advance(count: number): void {
    for (let rest = count; rest > 0; ) {
      const steps = Math.min(rest, this.#left);
      this.#power *= this.#factor ** steps;
      this.#base += this.#rise * steps;
      rest -= steps;
      this.#pass(steps);
    }
  }

  #pass(steps: number): void {
    this.#left -= steps;
    this.level = this.#base + this.#scale * this.#power;
    if (this.#left <= 0) this.#passEndedStages();
  }

  #passEndedStages(): void {
    while (this.#left <= 0) this.#next();
  }

  #next(): void {
    const settings = this.#settings;
    const shapes = this.#shapes;
    switch (this.#stage) {
      case Stage.delay:
        this.#stage = Stage.attack;
        this.#move(settings.start, 1, this.#frames(settings.attack), shapes.attack, -1);
        break;
      case Stage.attack:
        this.#stage = Stage.hold;
        this.#stay(1, this.#frames(settings.hold));
        break;
      case Stage.hold:
        this.#stage = Stage.decay;
        if (settings.sustain >= 1) this.#stay(1, 0);
        else {
          const frames = this.#frames(settings.decay);
          this.#move(1, settings.sustain, frames, shapes.decay, shapes.isDecayRate ? 1 : -1);
        }
        break;
      case Stage.decay:
        this.#stage = Stage.sustain;
        this.#stay(settings.sustain, Number.POSITIVE_INFINITY);
        break;
      default:
        this.#end();
    }
  }

  #end(): void {
    this.#stage = Stage.over;
    this.#stay(0, Number.POSITIVE_INFINITY);
  }

  #frames(seconds: number): number {
    return seconds > 0 ? Math.round(seconds * this.#sampleRate) : 0;
  }

  #stay(level: number, frames: number): void {
    this.level = level;
    this.#base = level;
    this.#scale = 0;
    this.#power = 1;
    this.#factor = 1;
    this.#rise = 0;
    this.#left = frames;
  }

  /**
   * Moves from one level to another. `frames` is the time of the whole way from `full` to 0, of which this is a part; for
   * `full` below 0 it is the time of this way.
   */
  #move(from: number, to: number, frames: number, shape: number, full: number): void {
    if (frames === 0 || from === to) {
      this.#stay(to, 0);
      return;
    }
    this.#stay(from, 0);
    if (shape === 0) {
      this.#left = Math.round(full < 0 ? frames : (frames * (from - to)) / full);
      if (this.#left > 0) this.#rise = (to - from) / this.#left;
    } else if (shape === fallingShape && full >= 0) {
      const least = full * lowestLevel;
      this.#left = Math.round((frames * Math.log(from / Math.max(to, least))) / fallExponent);
      this.#base = 0;
      this.#scale = from;
      this.#factor = Math.exp(-fallExponent / frames);
    } else this.#bend(from, to, frames, shape, full);
  }

  /** `a + (b − a) · (e^(kx) − 1) / (e^k − 1)`, from x = 0 for this way, else the part of the way from `full` to 0. */
  #bend(from: number, to: number, frames: number, shape: number, full: number): void {
    const start = full < 0 ? from : full;
    const end = full < 0 ? to : 0;
    const last = Math.exp(shape) - 1;
    const placeOf = (level: number) => Math.log(1 + ((level - start) / (end - start)) * last) / shape;
    const first = full < 0 ? 0 : placeOf(from);
    this.#left = Math.round(frames * ((full < 0 ? 1 : placeOf(to)) - first));
    this.#scale = (end - start) / last;
    this.#base = start - this.#scale;
    this.#power = Math.exp(shape * first);
    this.#factor = Math.exp(shape / frames);
  }
}
