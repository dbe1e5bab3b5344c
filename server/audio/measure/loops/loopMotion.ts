import type { LoopSeam } from '../../../model/samples';
import { spectrumChange } from './loopSpectrum';
import type { LoopSurroundings } from './loopSurroundings';

/** What a closed loop looks like at its seam; see {@link LoopSeam}. */
export type Seam = Omit<LoopSeam, 'better' | 'crossfadeFrames'>;

/** So much of the loop at each of its ends says how the sound moves by itself (our choice). */
export const motionSeconds = 0.05;
/** A step or bend counts as a jump when it is this many times the greatest that the sound makes itself nearby (our choice). */
const stepTimes = 2;
const bendTimes = 3;
/** Jumps below this share of the greatest value nearby are masked by the sound (our choice). */
const audibleShare = 0.03;
/** The spectrum jumps where it changes this many times as much as nearby, and by this much: a level by some 3 dB (our choice). */
const spectrumTimes = 2;
export const leastSpectrumChange = 0.25;
/** Below this, about −60 dB, nothing is heard (our choice). */
const silence = 1e-3;

/** How the loop from `start` to `end` closes, judged by how the sound itself moves at both ends of the present loop. */
export function seamAt(around: LoopSurroundings, start: number, end: number): Seam {
  const { sampleRate, near } = around;
  const reach = Math.round(motionSeconds * sampleRate);
  const motion = { greatestStep: 0, greatestBend: 0, peak: 0 };
  addMotion(motion, near.start, start, Math.min(around.end, start + reach));
  addMotion(motion, near.end, Math.max(start, around.end - reach), Math.min(around.end, end));
  const [beforeLast, last] = [near.end(end - 1), near.end(end)];
  const [first, second] = [near.start(start), near.start(start + 1)];
  const step = Math.abs(first - last);
  const bend = Math.max(Math.abs(beforeLast - 2 * last + first), Math.abs(last - 2 * first + second));
  const { greatestStep, greatestBend, peak } = motion;
  const least = audibleShare * peak;
  const { atSeam, greatest } = spectrumChange(around, start, end);
  const isAudible =
    peak > silence &&
    ((step > least && step > stepTimes * greatestStep) ||
      (bend > least && bend > bendTimes * greatestBend) ||
      (atSeam > leastSpectrumChange && atSeam > spectrumTimes * greatest));
  return {
    isAudible,
    step,
    greatestStep,
    bend,
    greatestBend,
    spectrumChange: atSeam,
    greatestSpectrumChange: greatest,
  };
}

function addMotion(
  motion: { greatestStep: number; greatestBend: number; peak: number },
  at: (frame: number) => number,
  from: number,
  to: number,
): void {
  for (let frame = from; frame <= to; frame++) {
    const here = at(frame);
    motion.peak = Math.max(motion.peak, Math.abs(here));
    if (frame + 1 > to) continue;
    const next = at(frame + 1);
    motion.greatestStep = Math.max(motion.greatestStep, Math.abs(next - here));
    if (frame + 2 > to) continue;
    motion.greatestBend = Math.max(motion.greatestBend, Math.abs(here - 2 * next + at(frame + 2)));
  }
}
