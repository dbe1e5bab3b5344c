import type { FileStat } from '../model/files';
import type { LoopSeam, MeasuredPitch, SampleSurvey } from '../model/samples';
import type { MeasureRequest, MeasureResult } from './measureRequest';
import { measureKey } from './measureRequest';

/** Something that somebody wants to have measured in a file. */
export interface Wish {
  readonly file: MeasuredFile;
  readonly request: MeasureRequest;
  readonly key: string;
  isRunning: boolean;
}

const pitchKey = measureKey({ what: 'pitch' });
const surveyKey = measureKey({ what: 'survey' });

/** A file with what was measured in it; `undefined` stands for what was not measured yet. */
export class MeasuredFile {
  /** Absolute, with `/`. */
  readonly path: string;
  /** The state of the file that the results are about. */
  stat: FileStat | undefined;
  /** By the names that `measureKey` gives. */
  readonly results = new Map<string, MeasureResult>();
  readonly wishes = new Map<string, Wish>();
  /** The loop that was asked about last, and its name. */
  #loopStart = Number.NaN;
  #loopEnd = Number.NaN;
  #loopKey = '';

  constructor(path: string) {
    this.path = path;
  }

  get pitch(): MeasuredPitch | null | undefined {
    return this.results.get(pitchKey) as MeasuredPitch | null | undefined;
  }

  get survey(): SampleSurvey | null | undefined {
    return this.results.get(surveyKey) as SampleSurvey | null | undefined;
  }

  loopSeam(start: number, end: number): LoopSeam | null | undefined {
    // Checks ask for the same loop at each keystroke.
    if (start !== this.#loopStart || end !== this.#loopEnd) {
      this.#loopStart = start;
      this.#loopEnd = end;
      this.#loopKey = measureKey({ what: 'loopSeam', start, end });
    }
    return this.results.get(this.#loopKey) as LoopSeam | null | undefined;
  }

  /** The wish for something; made where it is new. */
  wish(request: MeasureRequest): Wish {
    const key = measureKey(request);
    let wish = this.wishes.get(key);
    if (!wish) {
      wish = { file: this, request, key, isRunning: false };
      this.wishes.set(key, wish);
    }
    return wish;
  }
}
