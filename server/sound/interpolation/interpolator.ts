import type { Channels, Kernel, Sound } from '../kernel/kernel';
import { kernelWith } from '../kernel/kernels';
import { readNearest } from './readNearest';
import type { Walk } from './readRows';
import { readRowsMono, readRowsStereo } from './readRows';
import { readWide } from './readWide';
import type { SideTable } from './windowedSinc';
import { cutoffFor, filterRows, lookedUpKaiser, nearestPhases, sideTable } from './windowedSinc';

/** `reference` is better than 16 bits, `live` is quick enough to play. */
export type Quality = 'live' | 'reference';

/** Reads between the frames of a sample. Where it plays faster than recorded, what would fold back is kept out. */
export interface Interpolator {
  readonly kernel: Kernel;
  /** The most frames before and behind a position that are read. */
  reach(step: number): number;
  /**
   * Reads `count` values from an input that begins at the whole position `origin`; see {@link readRowsMono}. `step` is the greatest
   * step on the way. Mono fills the left output.
   */
  read(input: Channels, origin: number, walk: Walk, step: number, output: Sound, count: number): void;
}

/** Greatest stretch of the window of the reference quality; beyond it only the cutoff goes on falling. */
const mostStretch = 8;

/** Taps and Kaiser β: at 32 taps a residual of −100 dB up to 15 kHz at 48 kHz, at 8 taps −43 dB. */
const reference = { taps: 32, beta: 10 };
const live = { taps: 8, mostTaps: 16, wideFrom: 1.25, beta: 5 };

/** Tables of the live quality for each semitone up; beyond these the last one is used. */
const liveTablesAnOctave = 12;
const liveOctaves = 4;

const made = new Map<string, Interpolator>();

/**
 * The interpolator of a quality with all its tables, made when first asked for: nothing is made while it plays. Without
 * `mayCompile` it keeps to JavaScript, as the reference quality always does.
 */
export function interpolatorOf(quality: Quality, mayCompile = true): Interpolator {
  const name = quality === 'live' && mayCompile ? 'compiled' : quality;
  let interpolator = made.get(name);
  if (!interpolator) {
    interpolator = quality === 'reference' ? makeReference() : makeLive(mayCompile);
    made.set(name, interpolator);
  }
  return interpolator;
}

function makeReference(): Interpolator {
  const table = filterRows(reference.taps, reference.beta, 1);
  const lobes = reference.taps / 2;
  // By hundredths of the bandwidth that is given up; see cutoffFor.
  const sides: SideTable[] = Array.from({ length: 11 }, (_, given) =>
    sideTable(lobes, reference.beta, 1 - given / 100),
  );
  const stretchOf = (step: number) => Math.min(mostStretch, step);
  // Beyond the greatest stretch the lobes themselves have to be wider.
  const beyond = new Map<number, SideTable>();
  for (let octave = 0; octave <= 7; octave++) {
    beyond.set(octave, sideTable(lobes, reference.beta, 0.9 * 2 ** -octave));
  }
  const sideOf = (step: number) => {
    if (step > mostStretch) return beyond.get(Math.min(7, Math.ceil(Math.log2(step / mostStretch))));
    return sides[Math.round((1 - step * cutoffFor(step)) * 100)];
  };
  return {
    kernel: kernelWith([], false),
    reach: (step) => (step > 1 ? Math.ceil(lobes * stretchOf(step)) + 1 : lobes),
    read({ left, right }, origin, walk, step, output, count) {
      walk.position -= origin;
      if (step > 1) {
        const side = sideOf(step) as SideTable;
        readWide(side, stretchOf(step), left, right, walk, output.left, output.right, count);
      } else if (left === right) readRowsMono(table, left, walk, output.left, count);
      else readRowsStereo(table, left, right, walk, output.left, output.right, count);
      walk.position += origin;
    },
  };
}

function makeLive(mayCompile: boolean): Interpolator {
  const count = liveTablesAnOctave * liveOctaves;
  const window = lookedUpKaiser(live.beta);
  const tables = Array.from({ length: count + 1 }, (_, number) => {
    const ratio = 2 ** (number / liveTablesAnOctave);
    const taps = ratio < live.wideFrom ? live.taps : live.mostTaps;
    return filterRows(taps, live.beta, cutoffFor(ratio), nearestPhases, window);
  });
  const kernel = kernelWith(tables, mayCompile);
  const tableOf = (step: number) =>
    kernel.tables[step > 1 ? Math.min(count, Math.ceil(Math.log2(step) * liveTablesAnOctave - 1e-9)) : 0];
  return {
    kernel,
    reach: (step) => tableOf(step).taps / 2,
    read: (input, origin, walk, step, output, frames) =>
      readNearest(kernel, tableOf(step), input, origin, walk, output, frames),
  };
}
