import { keyOfFrequency } from '../../../model/keys';
import type { MeasuredPitch } from '../../../model/samples';
import type { CoarsePitch } from './coarsePitch';
import { coarsePitch } from './coarsePitch';
import { finePitch } from './finePitch';
import { withoutRumble } from './rumble';
import { thinned } from './thinned';

/** Sound above this rate is thinned out first: fundamentals lie far lower (our choice). */
const highestRate = 64_000;
/** A fundamental that is less sure is looked for again without the rumble that may hide it (our choice). */
const sureEnough = 0.9;
/** How sure such a fundamental is at the most (our choice). */
const clearedSureness = 0.75;

/**
 * The pitch of a recorded note, after its attack, from windows spread over the sound; `null` for silence, for very
 * short sounds and where nothing repeats. A period is looked for in the mean likeness of the sound to itself; its
 * fundamental is then measured from the phases of its partials. `samples` is one channel, a second or two of it. The
 * confidence is high where the sound repeats itself exactly and all windows agree; noise, and bars and drums whose
 * partials are no multiples, answer with a low one.
 */
export function measurePitch(samples: Float32Array, sampleRate: number): MeasuredPitch | null {
  if (!(sampleRate >= 2000)) return null;
  const step = Math.ceil(sampleRate / highestRate);
  const rate = sampleRate / step;
  const sound = centred(thinned(samples, step));
  const coarse = surestOf(sound, rate);
  const fine = coarse && finePitch(coarse, rate);
  if (!coarse || !fine) return null;
  return pitchOf(fine.hertz, Math.min(1, coarse.sureness * fine.agreement));
}

function surestOf(sound: Float32Array, rate: number): CoarsePitch | undefined {
  const whole = coarsePitch(sound, softened(sound, rate), rate);
  if (!whole || whole.sureness >= sureEnough) return whole;
  const clear = withoutRumble(sound, rate);
  const cleared = coarsePitch(clear, clear, rate);
  if (!cleared || cleared.sureness <= whole.sureness) return whole;
  // What was taken away may have been the note: the lowest tone of a bar or a drum.
  return { ...cleared, sureness: clearedSureness * cleared.sureness };
}

/** A pitch with its nearest key and the cents above it (equal temperament, A4 = key 69 = 440 Hz, ISO 16). */
export function pitchOf(hertz: number, confidence: number): MeasuredPitch {
  const place = keyOfFrequency(hertz);
  const key = Math.max(0, Math.min(127, Math.round(place)));
  return { hertz, key, cents: 100 * (place - key), confidence };
}

function centred(samples: Float32Array): Float32Array {
  let sum = 0;
  for (let frame = 0; frame < samples.length; frame++) sum += samples[frame];
  const mean = sum / Math.max(1, samples.length);
  const centred = new Float32Array(samples.length);
  for (let frame = 0; frame < samples.length; frame++) centred[frame] = samples[frame] - mean;
  return centred;
}

/** Below this frequency a sound is taken whole when a period is looked for; above it falls by 6 dB an octave (our choice). */
const softenedAbove = 1500;

/** High partials are the least harmonic, and noise lies high, so they get less say in what repeats. */
function softened(samples: Float32Array, rate: number): Float32Array {
  const share = 1 - Math.exp((-2 * Math.PI * softenedAbove) / rate);
  const soft = new Float32Array(samples.length);
  let value = 0;
  for (let frame = 0; frame < samples.length; frame++) {
    value += share * (samples[frame] - value);
    soft[frame] = value;
  }
  return soft;
}
