import type { FileStat } from '../../model/files';
import type { LoopSeam, MeasuredPitch, SampleSurvey } from '../../model/samples';
import type { RememberedFile } from './measureCache';
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
  // Of most files nothing is asked but these, and there are thousands of them.
  #pitch: MeasureResult | undefined;
  #survey: MeasureResult | undefined;
  /** The others, by the names that `measureKey` gives. */
  #others: Map<string, MeasureResult> | undefined;
  #wishes: Map<string, Wish> | undefined;
  #remembered: RememberedFile | undefined;
  /** The loop that was asked about last, and its name. */
  #loopStart = Number.NaN;
  #loopEnd = Number.NaN;
  #loopKey = '';

  constructor(path: string) {
    this.path = path;
  }

  /** By the names that `measureKey` gives. */
  get wishes(): Map<string, Wish> {
    this.#wishes ??= new Map();
    return this.#wishes;
  }

  /** Whether anything may be known. */
  get hasResults(): boolean {
    return (
      this.#remembered !== undefined ||
      this.#pitch !== undefined ||
      this.#survey !== undefined ||
      this.#others !== undefined
    );
  }

  /** Takes in what is remembered of the file in its present state; it is looked into when it is asked for. */
  remember(remembered: RememberedFile): void {
    this.#remembered = remembered;
  }

  /** Forgets what was measured. */
  forget(): void {
    this.#remembered = undefined;
    this.#pitch = undefined;
    this.#survey = undefined;
    this.#others = undefined;
  }

  /** What came of a measure, by the name that `measureKey` gives. */
  result(key: string): MeasureResult | undefined {
    switch (key) {
      case pitchKey:
        return this.pitch;
      case surveyKey:
        return this.survey;
      default: {
        const known = this.#others?.get(key);
        if (known !== undefined) return known;
        const result = this.#remembered?.measure(key);
        if (result !== undefined) this.take(key, result);
        return result;
      }
    }
  }

  /** Takes in what came of a measure. */
  take(key: string, result: MeasureResult): void {
    switch (key) {
      case pitchKey:
        this.#pitch = result;
        break;
      case surveyKey:
        this.#survey = result;
        break;
      default:
        this.#others ??= new Map();
        this.#others.set(key, result);
    }
  }

  get pitch(): MeasuredPitch | null | undefined {
    if (this.#pitch === undefined) this.#pitch = this.#remembered?.measure(pitchKey);
    return this.#pitch as MeasuredPitch | null | undefined;
  }

  get survey(): SampleSurvey | null | undefined {
    if (this.#survey === undefined) this.#survey = this.#remembered?.measure(surveyKey);
    return this.#survey as SampleSurvey | null | undefined;
  }

  loopSeam(start: number, end: number): LoopSeam | null | undefined {
    // Checks ask for the same loop at each keystroke.
    if (start !== this.#loopStart || end !== this.#loopEnd) {
      this.#loopStart = start;
      this.#loopEnd = end;
      this.#loopKey = measureKey({ what: 'loopSeam', start, end });
    }
    return this.result(this.#loopKey) as LoopSeam | null | undefined;
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
