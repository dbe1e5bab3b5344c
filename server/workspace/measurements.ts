import { measureLoopSeam } from '../audio/measure/loopSeam';
import { measureSamplePitch } from '../audio/measure/measureSample';
import type { FileReader, Files } from '../model/files';
import type { LoopSeam, MeasuredPitch } from '../model/samples';

/** Something to be measured in a file, and what came of it; `undefined` until it was measured. */
interface Measurement<T> {
  path: string;
  measure: (reader: FileReader) => Promise<T | null>;
  result?: T | null;
}

/**
 * What was measured in the audio of sample files, by absolute path. Answers never wait; what they lacked is measured by
 * {@link loadWanted} and remembered until {@link forget} says that a file changed.
 */
export class Measurements {
  readonly #files: Files;
  readonly #pitches = new Map<string, Measurement<MeasuredPitch>>();
  readonly #seams = new Map<string, Measurement<LoopSeam>>();
  readonly #wanted = new Set<Measurement<unknown>>();

  constructor(files: Files) {
    this.#files = files;
  }

  /** The pitch of a file: `null` where it has none, `undefined` while it is not known. */
  pitch(path: string): MeasuredPitch | null | undefined {
    return this.#known(this.#pitches, path, path, measureSamplePitch);
  }

  /** The seam of a loop in a file: `null` where it cannot be measured, `undefined` while it is not known. */
  loopSeam(path: string, start: number, end: number): LoopSeam | null | undefined {
    const key = `${start} ${end} ${path}`;
    return this.#known(this.#seams, key, path, (reader) => measureLoopSeam(reader, start, end));
  }

  /** Whether answers lacked something that {@link loadWanted} can measure. */
  get wants(): boolean {
    return this.#wanted.size > 0;
  }

  /** Measures what answers lacked, one file after the other. `stopped` ends it early. */
  async loadWanted(stopped: () => boolean = () => false): Promise<void> {
    for (const wanted of this.#wanted) {
      if (stopped()) return;
      wanted.result = await this.#measure(wanted);
      this.#wanted.delete(wanted);
    }
  }

  /** Says that a file or folder came, went or changed. */
  forget(path: string): void {
    for (const all of [this.#pitches, this.#seams]) {
      for (const [key, one] of all) {
        if (one.path === path || one.path.startsWith(`${path}/`)) all.delete(key);
      }
    }
  }

  forgetAll(): void {
    this.#pitches.clear();
    this.#seams.clear();
  }

  #known<T>(
    all: Map<string, Measurement<T>>,
    key: string,
    path: string,
    measure: Measurement<T>['measure'],
  ): T | null | undefined {
    let one = all.get(key);
    if (!one) {
      one = { path, measure };
      all.set(key, one);
    }
    if (one.result === undefined) this.#wanted.add(one);
    return one.result;
  }

  async #measure<T>({ path, measure }: Measurement<T>): Promise<T | null> {
    const reader = await this.#files.open(path);
    if (!reader) return null;
    try {
      return await measure(reader);
    } finally {
      await reader.close();
    }
  }
}
