import { generators, type ToneGenerator } from '../program/program';
import { type TableWave, WaveTables } from './waveTables';

/** The waves that a program needs tables for, made once. */
export type GeneratorTables = ReadonlyMap<ToneGenerator, WaveTables>;

/** Makes the tables for the generators among samples; see `SoundProgram.sample`. */
export function generatorTables(samples: Int32Array): GeneratorTables {
  const tables = new Map<ToneGenerator, WaveTables>();
  for (const [number, generator] of generators.entries()) {
    const isTable = generator === 'saw' || generator === 'square' || generator === 'triangle';
    if (isTable && samples.includes(-1 - number))
      tables.set(generator, new WaveTables(generator as TableWave));
  }
  return tables;
}

/** The sound of a generator in one voice. */
export class GeneratorSource {
  #generator: ToneGenerator = 'silence';
  #table: WaveTables | undefined;
  #phase = 0;
  #noise = 1;

  begin(generator: ToneGenerator, tables: GeneratorTables, seed: number): void {
    this.#generator = generator;
    this.#table = tables.get(generator);
    this.#phase = 0;
    this.#noise = (seed ^ 0x9e3779b9) | 1;
  }

  /** Fills one channel; `wavesPerFrame` is the frequency, to which `slope` is added each frame. */
  fill(wavesPerFrame: number, slope: number, output: Float64Array, count: number): void {
    if (this.#table) this.#phase = this.#table.fill(this.#phase, wavesPerFrame, slope, output, count);
    else if (this.#generator === 'sine') this.#fillSine(wavesPerFrame, slope, output, count);
    else if (this.#generator === 'noise') this.#fillNoise(output, count);
    else output.fill(0, 0, count);
  }

  #fillSine(wavesPerFrame: number, slope: number, output: Float64Array, count: number): void {
    let phase = this.#phase;
    let step = wavesPerFrame;
    for (let frame = 0; frame < count; frame++) {
      output[frame] = step < 0.5 ? Math.sin(2 * Math.PI * phase) : 0;
      phase += step;
      phase -= Math.floor(phase);
      step += slope;
    }
    this.#phase = phase;
  }

  /** Marsaglia's xorshift with 32 bits (Journal of Statistical Software 8(14), 2003). */
  #fillNoise(output: Float64Array, count: number): void {
    let x = this.#noise;
    for (let frame = 0; frame < count; frame++) {
      x ^= x << 13;
      x ^= x >>> 17;
      x ^= x << 5;
      output[frame] = x / 2 ** 31;
    }
    this.#noise = x;
  }
}
