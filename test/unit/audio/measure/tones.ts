import { frequencyOfKey } from '../../../../server/model/keys';

/** How a test tone sounds; what is left out is a steady, exactly harmonic tone of two seconds without noise. */
export interface ToneKind {
  sampleRate?: number;
  seconds?: number;
  /** Amplitude of a partial by its number; 1/n where nothing is said. */
  amplitude?: (number: number) => number;
  /** B in f(n) = n·f0·√(1 + B·n²) (Fletcher, Journal of the Acoustical Society of America 36(1), 1964). */
  inharmonicity?: number;
  vibratoCents?: number;
  /** How much louder the tone is than white noise, in dB. */
  noiseDb?: number;
  /** Whether partials die away, the higher the faster. */
  decays?: boolean;
  /** A burst of noise as the sound begins, as loud as the tone at first and gone after some 30 ms. */
  hasAttackNoise?: boolean;
  /** How much louder than the tone noise below some 100 Hz is, in dB. */
  rumbleDb?: number;
  seed?: number;
}

export interface Tone {
  samples: Float32Array;
  sampleRate: number;
  /** The frequency of the first partial. */
  hertz: number;
}

const mostPartials = 30;
const vibratoHertz = 5.5;

/** Numbers from −1 to 1 that are the same for the same seed (a linear congruential generator modulo 2^32). */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 0x80000000 - 1;
  };
}

/** A tone at a key, which may be a fraction: a sum of sines in random phases, made one by one. */
export function toneAt(key: number, kind: ToneKind = {}): Tone {
  const { sampleRate = 44100, seconds = 2, amplitude = (number) => 1 / number, inharmonicity = 0 } = kind;
  const { vibratoCents = 0, noiseDb, decays = false, seed = Math.round(key * 100) } = kind;
  const random = randomNumbers(seed);
  const base = frequencyOfKey(key);
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  const phases = new Float64Array(vibratoCents === 0 ? 0 : samples.length);
  let phase = 0;
  for (let frame = 0; frame < phases.length; frame++) {
    phases[frame] = phase;
    const bend = vibratoCents * Math.sin((2 * Math.PI * vibratoHertz * frame) / sampleRate);
    phase += (2 * Math.PI * base * 2 ** (bend / 1200)) / sampleRate;
  }
  for (let number = 1; number <= mostPartials; number++) {
    const multiple = number * Math.sqrt(1 + inharmonicity * number * number);
    if (multiple * base > 0.45 * sampleRate) break;
    const start = Math.PI * random();
    const level = amplitude(number);
    const decay = decays ? (0.8 + 0.4 * number) / sampleRate : 0;
    if (vibratoCents === 0) {
      addSine(samples, level, (2 * Math.PI * base * multiple) / sampleRate, start, decay);
      continue;
    }
    for (let frame = 0; frame < samples.length; frame++) {
      samples[frame] =
        samples[frame] + level * Math.exp(-decay * frame) * Math.sin(multiple * phases[frame] + start);
    }
  }
  addNoise(samples, noiseDb, random);
  if (kind.hasAttackNoise) addAttackNoise(samples, sampleRate, random);
  if (kind.rumbleDb !== undefined) addRumble(samples, sampleRate, kind.rumbleDb, random);
  return { samples: scaled(samples), sampleRate, hertz: base * Math.sqrt(1 + inharmonicity) };
}

/**
 * Adds a sine of one frequency, in radians a frame, that dies away: a point that is turned and drawn in by the same amount at
 * each frame, which takes a tenth of the time of asking for a sine and an exponential each.
 */
function addSine(samples: Float32Array, level: number, turn: number, start: number, decay: number): void {
  const shrink = Math.exp(-decay);
  const [along, across] = [shrink * Math.cos(turn), shrink * Math.sin(turn)];
  let [x, y] = [level * Math.cos(start), level * Math.sin(start)];
  for (let frame = 0; frame < samples.length; frame++) {
    samples[frame] = samples[frame] + y;
    const next = x * along - y * across;
    y = x * across + y * along;
    x = next;
  }
}

function addNoise(samples: Float32Array, noiseDb: number | undefined, random: () => number): void {
  if (noiseDb === undefined) return;
  let energy = 0;
  for (const value of samples) energy += value * value;
  // Even noise from −1 to 1 has a mean square of 1/3.
  const level = Math.sqrt((3 * energy) / samples.length) * 10 ** (-noiseDb / 20);
  for (let frame = 0; frame < samples.length; frame++) {
    samples[frame] = samples[frame] + level * random();
  }
}

function addAttackNoise(samples: Float32Array, sampleRate: number, random: () => number): void {
  let peak = 0;
  for (const value of samples) peak = Math.max(peak, Math.abs(value));
  for (let frame = 0; frame < samples.length; frame++) {
    const noise = peak * Math.exp(-frame / (0.01 * sampleRate)) * random();
    samples[frame] = samples[frame] + noise;
  }
}

/** Noise that falls by 12 dB an octave above 100 Hz: two simple low-passes one after the other. */
function addRumble(samples: Float32Array, sampleRate: number, rumbleDb: number, random: () => number): void {
  const share = 1 - Math.exp((-2 * Math.PI * 100) / sampleRate);
  const rumble = new Float32Array(samples.length);
  let [once, twice, noiseEnergy, energy] = [0, 0, 0, 0];
  for (let frame = 0; frame < samples.length; frame++) {
    once += share * (random() - once);
    twice += share * (once - twice);
    rumble[frame] = twice;
    noiseEnergy += twice * twice;
    energy += samples[frame] ** 2;
  }
  const level = Math.sqrt(energy / noiseEnergy) * 10 ** (rumbleDb / 20);
  for (let frame = 0; frame < samples.length; frame++) {
    samples[frame] = samples[frame] + level * rumble[frame];
  }
}

function scaled(samples: Float32Array): Float32Array {
  let highest = 0;
  for (const value of samples) highest = Math.max(highest, Math.abs(value));
  return samples.map((value) => (0.7 * value) / highest);
}

/** Struck things: sines at multiples of a frequency that need not be whole, each dying away faster than the one before. */
export function struck(
  hertz: number,
  multiples: readonly number[],
  ratio: number,
  decay: number,
): Float32Array {
  const samples = new Float32Array(44100);
  multiples.forEach((multiple, number) => {
    for (let frame = 0; frame < samples.length; frame++) {
      const seconds = frame / 44100;
      samples[frame] =
        samples[frame] +
        0.2 *
          ratio ** number *
          Math.exp(-decay * (1 + number) * seconds) *
          Math.sin(2 * Math.PI * hertz * multiple * seconds);
    }
  });
  return samples;
}

/** How far a frequency lies above another, in cents (1200 in an octave). */
export function centsAbove(hertz: number, other: number): number {
  return 1200 * Math.log2(hertz / other);
}
