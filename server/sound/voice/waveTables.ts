/** Frames of one wave in a table. */
const waveFrames = 8192;
/** The most harmonics that a table holds: 20 Hz up to half of 40 kHz. */
const mostHarmonics = 1024;

export type TableWave = 'saw' | 'square' | 'triangle';

/** One wave with so many harmonics, and three more frames, of those around its seam. */
interface WaveTable {
  harmonics: number;
  values: Float64Array;
}

/**
 * Waves made of as many harmonics as fit below half of the sample rate, so that nothing folds back. The series are those of
 * Fourier for full waves between −1 and 1.
 */
export class WaveTables {
  readonly #tables: WaveTable[];

  constructor(wave: TableWave) {
    this.#tables = makeTables(wave);
  }

  /** Fills `output` with the wave from a phase on, in waves; answers the phase behind it. */
  fill(phase: number, wavesPerFrame: number, slope: number, output: Float64Array, count: number): number {
    const values = this.#tableFor(Math.max(wavesPerFrame, wavesPerFrame + slope * count));
    let at = phase;
    let step = wavesPerFrame;
    for (let frame = 0; frame < count; frame++) {
      at -= Math.floor(at);
      const place = at * waveFrames;
      const whole = place | 0;
      const x = place - whole;
      // Four-point Hermite: at eight frames a wave of the highest harmonic its error is far below that harmonic.
      const a = values[whole];
      const b = values[whole + 1];
      const c = values[whole + 2];
      const d = values[whole + 3];
      const c1 = (c - a) / 2;
      const c2 = a - 2.5 * b + 2 * c - d / 2;
      const c3 = (d - a) / 2 + 1.5 * (b - c);
      output[frame] = ((c3 * x + c2) * x + c1) * x + b;
      at += step;
      step += slope;
    }
    return at;
  }

  #tableFor(wavesPerFrame: number): Float64Array {
    const allowed = 0.5 / Math.max(1e-9, wavesPerFrame);
    let found = 0;
    while (found + 1 < this.#tables.length && this.#tables[found + 1].harmonics <= allowed) found++;
    return this.#tables[found].values;
  }
}

function makeTables(wave: TableWave): WaveTable[] {
  const sine = Float64Array.from({ length: waveFrames }, (_, at) =>
    Math.sin((2 * Math.PI * at) / waveFrames),
  );
  const sum = new Float64Array(waveFrames);
  const tables: WaveTable[] = [];
  let next = 1;
  for (let harmonic = 1; harmonic <= mostHarmonics; harmonic++) {
    const share = shareOf(wave, harmonic);
    if (share !== 0) {
      for (let at = 0; at < waveFrames; at++) sum[at] += share * sine[(at * harmonic) % waveFrames];
    }
    if (harmonic < next) continue;
    next = Math.ceil(harmonic * Math.SQRT2);
    const values = new Float64Array(waveFrames + 3);
    for (let at = 0; at < values.length; at++) values[at] = sum[(at + waveFrames - 1) % waveFrames];
    tables.push({ harmonics: harmonic, values });
  }
  return tables;
}

/** The share of a sine of this harmonic, all of them rising from 0. */
function shareOf(wave: TableWave, harmonic: number): number {
  if (wave === 'saw') return (harmonic % 2 === 1 ? 2 : -2) / (Math.PI * harmonic);
  if (harmonic % 2 === 0) return 0;
  if (wave === 'square') return 4 / (Math.PI * harmonic);
  return (harmonic % 4 === 1 ? 8 : -8) / (Math.PI * Math.PI * harmonic * harmonic);
}
