import type { Assigned } from '../assign';
import type { SampleFiles } from './sampleFiles';

/**
 * Without lengths that are those of the files and cut nothing off: where no place says from where a sample is played, a length in
 * frames beside its name tells of the file, unless the files prove that it is another one.
 */
export function withoutFileLengths(assigned: readonly Assigned[], { facts }: SampleFiles): Assigned[] {
  if (assigned.some(({ target }) => target === 'offset')) return [...assigned];
  return assigned.filter(({ target, facts: column, unit }) => {
    if (target !== 'sample_length' && target !== 'end') return true;
    const known = [...column.numbers].flatMap((number, row) => {
      const file = facts[row];
      return file && file.frames > 0 && !Number.isNaN(number) ? [{ number, file }] : [];
    });
    if (known.length > 0) return !known.every(({ number, file }) => isWhole(number, file));
    return target === 'end' || unit !== undefined || column.unit !== undefined;
  });
}

/** Whether a number is the length of a file in frames, seconds or milliseconds. */
function isWhole(number: number, { frames, sampleRate }: { frames: number; sampleRate: number }): boolean {
  if (number === frames) return true;
  const seconds = frames / sampleRate;
  return [number, number / 1000].some((one) => Math.abs(one - seconds) < 0.0006 && !Number.isInteger(number));
}
