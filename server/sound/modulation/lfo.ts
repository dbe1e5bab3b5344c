import { randomValue } from '../../playing/player/randomValues';

/** Numbers of the waves of numbered LFOs (public SFZ documentation, lfoN_wave). */
export const LfoWave = {
  triangle: 0,
  sine: 1,
  pulse75: 2,
  square: 3,
  pulse25: 4,
  pulse12: 5,
  sawUp: 6,
  sawDown: 7,
  randomSteps: 12,
} as const;

/** Whether a number stands for a wave that is known. */
export function isLfoWave(wave: number): boolean {
  return Object.values(LfoWave).some((known) => known === wave);
}

/** The value of a wave, −1..1, at a phase that counts whole waves; `seed` is that of the random steps. */
export function waveValue(wave: number, phase: number, seed: number): number {
  const whole = Math.floor(phase);
  const at = phase - whole;
  switch (wave) {
    case LfoWave.triangle:
      return at < 0.25 ? 4 * at : at < 0.75 ? 2 - 4 * at : 4 * at - 4;
    case LfoWave.pulse75:
      return at < 0.75 ? 1 : -1;
    case LfoWave.square:
      return at < 0.5 ? 1 : -1;
    case LfoWave.pulse25:
      return at < 0.25 ? 1 : -1;
    case LfoWave.pulse12:
      return at < 0.125 ? 1 : -1;
    case LfoWave.sawUp:
      return 2 * at - 1;
    case LfoWave.sawDown:
      return 1 - 2 * at;
    case LfoWave.randomSteps:
      return 2 * randomValue(seed, whole) - 1;
    default:
      return Math.sin(2 * Math.PI * at);
  }
}

/** Where an LFO stands: it waits for its delay, grows over its fade and counts its waves. */
export class LfoClock {
  /** Waves so far, the starting phase counted in. */
  phase = 0;
  /** From 0 in the delay to 1 behind the fade. */
  depth = 0;
  #delayFrames = 0;
  #fadeFrames = 0;
  #frame = 0;

  begin(delaySeconds: number, fadeSeconds: number, startPhase: number, sampleRate: number): void {
    this.#delayFrames = Math.max(0, Math.round(delaySeconds * sampleRate));
    this.#fadeFrames = Math.max(0, Math.round(fadeSeconds * sampleRate));
    this.#frame = 0;
    this.phase = startPhase;
    this.#grow();
  }

  /** Moves on by some frames at a frequency in waves a frame. */
  advance(frames: number, wavesPerFrame: number): void {
    const before = this.#frame;
    this.#frame += frames;
    const running = Math.max(0, this.#frame - Math.max(before, this.#delayFrames));
    this.phase += running * wavesPerFrame;
    this.#grow();
  }

  #grow(): void {
    const since = this.#frame - this.#delayFrames;
    this.depth = since < 0 ? 0 : this.#fadeFrames === 0 ? 1 : Math.min(1, since / this.#fadeFrames);
  }
}
