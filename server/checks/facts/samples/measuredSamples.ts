import type {
  LoopSeam,
  MeasuredPitch,
  SampleFacts,
  SampleMeasures,
  SampleSurvey,
} from '../../../model/samples';
import type { CheckContext } from '../../rule';
import type { SampleUse } from './sampleUse';
import { sampleUsesOf } from './sampleUses';

/** Something that what was measured in a sample answers. */
export type SampleQuestion = (survey: SampleSurvey, facts: SampleFacts) => boolean;

const [notAsked, no, yes] = [0, 1, 2];

/**
 * What was measured in the files of uses, by the number of the path: from one keystroke to the next all is the same, and
 * looking 10,000 paths up for each measure takes longer than all rules. What is not known yet is asked for each time.
 */
export class MeasuredSamples {
  readonly #measures: SampleMeasures;
  readonly #pitches: (MeasuredPitch | null | undefined)[] = [];
  readonly #surveys: (SampleSurvey | null | undefined)[] = [];
  /** The loops that were asked about last, and their seams where they can be heard. */
  readonly #loopStarts: number[] = [];
  readonly #loopEnds: number[] = [];
  readonly #audibleSeams: (LoopSeam | undefined)[] = [];
  readonly #answers = new WeakMap<SampleQuestion, number[]>();

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
    put(this.#pitches, number, pitch, undefined);
    return pitch;
  }

  /** The survey of a file: `null` where it cannot be decoded, `undefined` while it is not known. */
  survey({ number, path }: SampleUse): SampleSurvey | null | undefined {
    const known = this.#surveys[number];
    if (known !== undefined) return known;
    const survey = this.#measures.survey?.(path);
    put(this.#surveys, number, survey, undefined);
    return survey;
  }

  /** The seam of a loop in a file where it is known that it can be heard. */
  audibleSeam({ number, path }: SampleUse, start: number, end: number): LoopSeam | undefined {
    if (this.#isKnownLoop(number, start, end)) return this.#audibleSeams[number];
    const seam = this.#measures.loopSeam(path, start, end);
    const audible = seam?.isAudible ? seam : undefined;
    if (seam === undefined) return undefined;
    put(this.#loopStarts, number, start, Number.NaN);
    put(this.#loopEnds, number, end, Number.NaN);
    put(this.#audibleSeams, number, audible, undefined);
    return audible;
  }

  /** Whether it is known that the seam of a loop in a file cannot be heard, without asking. */
  isSmooth({ number }: SampleUse, start: number, end: number): boolean {
    return this.#isKnownLoop(number, start, end) && this.#audibleSeams[number] === undefined;
  }

  #isKnownLoop(number: number, start: number, end: number): boolean {
    return this.#loopStarts[number] === start && this.#loopEnds[number] === end;
  }

  /**
   * Those of some samples with some sound of which a question is answered with yes. It may go by what was measured and by
   * the facts of the file alone, so that it is asked once of a file.
   */
  where<Sample extends { use: SampleUse; facts: SampleFacts }>(
    samples: readonly Sample[],
    question: SampleQuestion,
  ): Sample[] {
    let answers = this.#answers.get(question);
    if (!answers) {
      answers = [];
      this.#answers.set(question, answers);
    }
    const found: Sample[] = [];
    for (const sample of samples) {
      const { use } = sample;
      const known = answers[use.number] ?? notAsked;
      if (known === no) continue;
      if (known === notAsked) {
        const survey = this.survey(use);
        if (survey === undefined) continue;
        const hasSound = survey !== null && survey.leadingSilenceFrames < survey.frames;
        const answer = hasSound && question(survey, sample.facts) ? yes : no;
        put(answers, use.number, answer, notAsked);
        if (answer === no) continue;
      }
      found.push(sample);
    }
    return found;
  }
}

/** Sets an entry of a list without holes. */
function put<T>(list: T[], at: number, value: T, filling: T): void {
  while (list.length < at) list.push(filling);
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
