import type { SampleLoop, SampleProblem } from '../../model/samples';

/** A problem for each loop that ends behind the last of `frames` frames; none where the length is not known. */
export function loopsPastEnd(loops: readonly SampleLoop[], frames: number): SampleProblem[] {
  const problems: SampleProblem[] = [];
  loops.forEach((loop, number) => {
    if (frames > 0 && loop.end >= frames) {
      problems.push({
        kind: 'value-absurd',
        message: `Loop ${number + 1} of the file ends at frame ${loop.end}; the last frame is ${frames - 1}.`,
      });
    }
  });
  return problems;
}
