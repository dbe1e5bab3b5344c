import { chunk, format, sampler, wave } from '../../unit/audio/byteFiles';

/** What is heard in a recording, and what its file says. */
export interface Heard {
  path: string;
  /** The lowest partial; `null` for noise. */
  hertz: number | null;
  /** In dB of full scale. */
  level: number;
  rate: number;
  frames: number;
  channels?: number;
  decays?: true;
  fileRoot?: number;
  loop?: [start: number, end: number];
}

/** The second and third partial to the first, by amplitude. */
const partials = [1, 0.35, 0.2];
/** No two recordings are the same: noise this far below full scale is in each. */
const floor = 10 ** (-80 / 20);
const attackSeconds = 0.004;

/** A WAV file of 16 bits with three partials or noise; the same number gives the same bytes. */
export function recordingWave(heard: Heard, number: number): Uint8Array {
  const { hertz, rate, frames, channels = 1, fileRoot, loop } = heard;
  const gain = 10 ** (heard.level / 20);
  const noise = noiseFrom(number);
  const tone = hertz === null ? undefined : toneOf(hertz, rate);
  const decay = heard.decays || hertz === null ? Math.exp(-3 / frames) : 1;
  const data = new DataView(new ArrayBuffer(frames * channels * 2));
  let fall = 1;
  for (let frame = 0; frame < frames; frame++) {
    const rise = Math.min(1, frame / (attackSeconds * rate));
    const value = (tone ? tone() : noise()) * gain * fall * rise + noise() * floor;
    const number16 = Math.round(Math.max(-1, Math.min(1, value)) * 32767);
    for (let channel = 0; channel < channels; channel++)
      data.setInt16((frame * channels + channel) * 2, number16, true);
    fall *= decay;
  }
  const loops: [number, number, number][] = loop ? [[0, ...loop]] : [];
  const own = fileRoot !== undefined || loop ? [chunk('smpl', sampler(fileRoot ?? 60, 0, loops))] : [];
  // A list of so many bytes would take seven times as long as to make and to measure the sound.
  const head = wave(chunk('fmt ', format(1, channels, rate, 16)), ...own, chunk('data', [], data.byteLength));
  const file = new Uint8Array(head.length + data.byteLength);
  file.set(head);
  file.set(new Uint8Array(data.buffer), head.length);
  new DataView(file.buffer).setUint32(4, file.length - 8, true);
  return file;
}

/** The next values of a tone: partials as points that are turned from frame to frame. */
function toneOf(hertz: number, rate: number): () => number {
  const audible = partials.flatMap((share, at) => {
    const turn = (2 * Math.PI * hertz * (at + 1)) / rate;
    return turn < Math.PI * 0.9 ? [{ share, cos: Math.cos(turn), sin: Math.sin(turn), x: 1, y: 0 }] : [];
  });
  const whole = partials.reduce((sum, share) => sum + share, 0);
  return () => {
    let value = 0;
    for (const one of audible) {
      value += one.y * one.share;
      const x = one.x * one.cos - one.y * one.sin;
      one.y = one.x * one.sin + one.y * one.cos;
      one.x = x;
    }
    return value / whole;
  };
}

/** Even noise from −1 to 1 (a linear congruential generator, Numerical Recipes' constants). */
function noiseFrom(number: number): () => number {
  let state = Math.imul(number + 1, 2654435761) >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}
