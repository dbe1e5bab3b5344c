import type { LoopSeam, MeasuredPitch, SampleMeasures, SampleSurvey } from '../model/samples';
import type { CheckContext } from './rule';
import type { SampleUse } from './sampleUses';
import { sampleUsesOf } from './sampleUses';

/**
 * What was measured in the files of uses, by the number of the path: from one keystroke to the next all is the same, and
 * looking 10,000 paths up for each measure takes longer than all rules. What is not known yet is asked for each time.
 */
export class MeasuredSamples {
  readonly #measures: SampleMeasures;
  readonly #pitches: (MeasuredPitch | null | undefined)[] = [];
  readonly #surveys: (SampleSurvey | null | undefined)[] = [];
  readonly #loops: ({ start: number; end: number; seam: LoopSeam | null } | undefined)[] = [];

  constructor(measures: SampleMeasures) {
    this.#measures = measures;
  }

  /** Whether anything but pitch and loops is measured. */
  get givesSurveys(): boolean {
    return this.#measures.survey !== undefined;
  }

  /** The pitch of a file: `null` where it has none, `undefined` while it is not known. */
  pitch({ number, path }: SampleUse): MeasuredPitch | null | undefined {
    const known = this.#pitches[number];
    if (known !== undefined) return known;
    const pitch = this.#measures.pitch(path);
    put(this.#pitches, number, pitch);
    return pitch;
  }

  /** The survey of a file: `null` where it cannot be decoded, `undefined` while it is not known. */
  survey({ number, path }: SampleUse): SampleSurvey | null | undefined {
    const known = this.#surveys[number];
    if (known !== undefined) return known;
    const survey = this.#measures.survey?.(path);
    put(this.#surveys, number, survey);
    return survey;
  }

  /** The seam of a loop in a file: `null` where it cannot be measured, `undefined` while it is not known. */
  loopSeam({ number, path }: SampleUse, start: number, end: number): LoopSeam | null | undefined {
    const known = this.#loops[number];
    if (known?.start === start && known.end === end) return known.seam;
    const seam = this.#measures.loopSeam(path, start, end);
    if (seam !== undefined) put(this.#loops, number, { start, end, seam });
    return seam;
  }
}

/** Sets an entry of a list without holes. */
function put<T>(list: (T | undefined)[], at: number, value: T): void {
  while (list.length < at) list.push(undefined);
  list[at] = value;
}

interface Known {
  measures: SampleMeasures;
  version: number;
  samples: MeasuredSamples;
}

const known = new WeakMap<ReadonlyMap<string, number>, Known>();

/** What is measured in the samples of an instrument, remembered between checks; `undefined` where nothing is measured. */
export function measuredSamplesOf(context: CheckContext): MeasuredSamples | undefined {
  const { measures } = context.samples;
  if (!measures) return undefined;
  const { version } = measures;
  const { paths } = sampleUsesOf(context);
  const last = known.get(paths);
  if (last && last.measures === measures && last.version === version) return last.samples;
  const samples = new MeasuredSamples(measures);
  if (version !== undefined) known.set(paths, { measures, version, samples });
  return samples;
}
