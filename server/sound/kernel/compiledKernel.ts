import type { RowTable } from '../interpolation/windowedSinc';
import { moduleBytes } from './assembly/moduleBytes';
import { InputWindows, inputWithWindows } from './inputWindows';
import { blockFrames, type Channels, type Kernel, type Sound } from './kernel';
import type { MixGains } from './mixing';
import { mixingFunction } from './mixingCode';
import { readingFunction } from './readingCode';

/** The functions of the module: see `readingFunction` and `mixingFunction`. */
interface Functions {
  read8: Reading;
  read16: Reading;
  readStereo8: Reading;
  readStereo16: Reading;
  mix1(sound: number, end: number, mix: number, ...gainsAndSlopes: [number, number, number, number]): number;
  mix2(
    sound: number,
    end: number,
    mix: number,
    ...gainsAndSlopes: [number, number, number, number, number, number, number, number]
  ): number;
}

type Reading = (
  rows: number,
  input: number,
  fraction: number,
  step: number,
  slope: number,
  output: number,
  end: number,
) => void;

// WebAssembly JavaScript Interface 2.0, sections 5.1, 5.2 and 5.3: what the types of a program without pages leave out.
declare const WebAssembly: {
  Memory: new (size: { initial: number }) => { readonly buffer: ArrayBuffer };
  Module: new (bytes: Uint8Array) => object;
  Instance: new (module: object, imports: object) => { readonly exports: Functions };
};

const memoryPage = 65536;
/** What stands behind an array for what is read or written in whole vectors behind its end, in bytes. */
const spare = 256;
const soundBytes = blockFrames * 8 + spare;
const inputBytes = inputWithWindows * 4 + spare;
const arraysBytes = 2 * inputBytes + 4 * soundBytes;

/** The kernel compiled; throws where compiled code or vectors are refused. */
export class CompiledKernel implements Kernel {
  readonly windows = new InputWindows();
  readonly input: Channels;
  readonly sound: Sound;
  readonly mix: Sound;
  readonly tables: readonly RowTable[];
  readonly #functions: Functions;

  constructor(tables: readonly RowTable[]) {
    const right = { input: inputBytes, sound: soundBytes };
    const bytes = moduleBytes([
      readingFunction('read8', 8),
      readingFunction('read16', 16),
      readingFunction('readStereo8', 8, right),
      readingFunction('readStereo16', 16, right),
      mixingFunction('mix1', 1, soundBytes),
      mixingFunction('mix2', 2, soundBytes),
    ]);
    const tablesBytes = tables.reduce((sum, { rows }) => sum + rows.byteLength, 0);
    const memory = new WebAssembly.Memory({ initial: Math.ceil((arraysBytes + tablesBytes) / memoryPage) });
    this.#functions = new WebAssembly.Instance(new WebAssembly.Module(bytes), { host: { memory } }).exports;
    const { buffer } = memory;
    const floats = (at: number) => new Float32Array(buffer, at, inputWithWindows);
    const doubles = (at: number) => new Float64Array(buffer, 2 * inputBytes + at * soundBytes, blockFrames);
    this.input = { left: floats(0), right: floats(inputBytes) };
    this.sound = { left: doubles(0), right: doubles(1) };
    this.mix = { left: doubles(2), right: doubles(3) };
    let at = arraysBytes;
    this.tables = tables.map(({ taps, rows }) => {
      const held = new Float32Array(buffer, at, rows.length);
      held.set(rows);
      at += rows.byteLength;
      return { taps, rows: held };
    });
  }

  readTaps(
    { taps, rows }: RowTable,
    { left, right }: Channels,
    first: number,
    fraction: number,
    step: number,
    slope: number,
    output: Sound,
    from: number,
    count: number,
  ): void {
    const { read8, read16, readStereo8, readStereo16 } = this.#functions;
    const isMono = left === right;
    const input = left.byteOffset + first * 4;
    const sound = output.left.byteOffset + from * 8;
    const end = sound + count * 8;
    const row = rows.byteOffset;
    if (taps === 8) {
      if (isMono) read8(row, input, fraction, step, slope, sound, end);
      else readStereo8(row, input, fraction, step, slope, sound, end);
    } else if (isMono) read16(row, input, fraction, step, slope, sound, end);
    else readStereo16(row, input, fraction, step, slope, sound, end);
  }

  mixSound(isMono: boolean, { now, slopes }: MixGains, from: number, count: number): boolean {
    const { mix1, mix2 } = this.#functions;
    const sound = this.sound.left.byteOffset;
    const end = sound + count * 8;
    const mix = this.mix.left.byteOffset + from * 8;
    if (isMono) return mix1(sound, end, mix, now[0], slopes[0], now[2], slopes[2]) === 1;
    const ll = now[0];
    const lr = now[1];
    const rl = now[2];
    const rr = now[3];
    return mix2(sound, end, mix, ll, slopes[0], lr, slopes[1], rl, slopes[2], rr, slopes[3]) === 1;
  }
}
