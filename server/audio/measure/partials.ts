import type { Fundamental } from './fundamental';

/** One partial of a sound, near a whole multiple of its fundamental. */
export interface Partial {
  /** Which multiple: 1 is the fundamental. */
  number: number;
  hertz: number;
  /** Its amplitude squared. */
  power: number;
}

/** Complex amplitude at a frequency. */
interface Amplitude {
  real: number;
  imaginary: number;
}

/** A stretch of a sound: `length` frames from `start`, and the same again `hop` frames later. */
export interface PartialWindow {
  start: number;
  length: number;
  hop: number;
}

/**
 * The partials of a sound near multiples of a fundamental, stretched as it is, in a window and the same some frames
 * later: how far the phase of each has turned between the two says how high it is (the phase vocoder: Flanagan and
 * Golden, Bell System Technical Journal 45(9), 1966). The window is a raised cosine; where it is a whole number of
 * periods long, and at least two, each partial falls on zeros of the spectra of all others. The hop has to be short
 * enough for the error of the fundamental not to turn the highest partial by half a round.
 */
export function partialsNear(
  samples: Float32Array,
  sampleRate: number,
  { hertz, inharmonicity }: Fundamental,
  numbers: readonly number[],
  { start, length, hop }: PartialWindow,
): Partial[] {
  const atZero = hertz / Math.sqrt(1 + inharmonicity);
  return numbers.map((number) => {
    const near = number * atZero * Math.sqrt(1 + inharmonicity * number * number);
    const expected = (2 * Math.PI * near) / sampleRate;
    const before = amplitudeAt(samples, start, length, expected);
    const after = amplitudeAt(samples, start + hop, length, expected);
    const real = after.real * before.real + after.imaginary * before.imaginary;
    const imaginary = after.imaginary * before.real - after.real * before.imaginary;
    // Both amplitudes count phase from their own start, so a partial of just this frequency turns by its whole hop.
    const turned = Math.atan2(imaginary, real) - expected * hop;
    const excess = turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI));
    return {
      number,
      hertz: near + (excess / hop) * (sampleRate / (2 * Math.PI)),
      power: (powerOf(before) + powerOf(after)) / 2,
    };
  });
}

/** The amplitude squared at a frequency in hertz, under the same window. */
export function powerAt(
  samples: Float32Array,
  sampleRate: number,
  hertz: number,
  start: number,
  length: number,
): number {
  return powerOf(amplitudeAt(samples, start, length, (2 * Math.PI * hertz) / sampleRate));
}

function powerOf({ real, imaginary }: Amplitude): number {
  return real * real + imaginary * imaginary;
}

/** The amplitude of the sine at a frequency (radians a frame) under a raised-cosine window. */
function amplitudeAt(samples: Float32Array, start: number, length: number, frequency: number): Amplitude {
  // Two turning pointers, one for the sine and one for the window, spare a cosine for every frame.
  const stepReal = Math.cos(frequency);
  const stepImaginary = -Math.sin(frequency);
  const windowStep = (2 * Math.PI) / length;
  const windowReal = Math.cos(windowStep);
  const windowImaginary = Math.sin(windowStep);
  let pointerReal = 1;
  let pointerImaginary = 0;
  let cosine = Math.cos(windowStep / 2);
  let sine = Math.sin(windowStep / 2);
  let real = 0;
  let imaginary = 0;
  for (let at = start; at < start + length; at++) {
    const value = (samples[at] as number) * (1 - cosine);
    real += value * pointerReal;
    imaginary += value * pointerImaginary;
    const turned = pointerReal * stepReal - pointerImaginary * stepImaginary;
    pointerImaginary = pointerReal * stepImaginary + pointerImaginary * stepReal;
    pointerReal = turned;
    const next = cosine * windowReal - sine * windowImaginary;
    sine = cosine * windowImaginary + sine * windowReal;
    cosine = next;
  }
  // A sine of amplitude a gives a·length/2 under this window, whose mean is 1.
  return { real: (2 * real) / length, imaginary: (2 * imaginary) / length };
}
