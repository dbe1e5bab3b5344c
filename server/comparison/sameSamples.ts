import type { FileReader, Files } from '../model/files';
import type { SampleSource } from '../sound/samples/sampleSource';

/** A sample of a side: the path of a file, the number of a generator, `undefined` for a file that is not there. */
export type SampleOfRegion = string | number | undefined;

const comparedBytes = 1 << 20;
const comparedFrames = 1 << 18;

/** Which sample files hold the same audio: the same bytes, or other ones that decode to the same. Each pair is read once. */
export class SameSamples {
  readonly #files: Files;
  readonly #sources: readonly [SampleSource, SampleSource];
  readonly #known = new Map<string, Promise<boolean>>();

  constructor(files: Files, sources: readonly [SampleSource, SampleSource]) {
    this.#files = files;
    this.#sources = sources;
  }

  areSame(a: SampleOfRegion, b: SampleOfRegion): Promise<boolean> | boolean {
    if (a === b || typeof a !== 'string' || typeof b !== 'string') return a === b;
    const pair = `${a}\n${b}`;
    let answer = this.#known.get(pair);
    if (answer === undefined) {
      answer = this.#haveSameBytes(a, b).then((same) => same || this.#haveSameAudio(a, b));
      this.#known.set(pair, answer);
    }
    return answer;
  }

  async #haveSameBytes(a: string, b: string): Promise<boolean> {
    const [one, other] = [await this.#files.open(a), await this.#files.open(b)];
    try {
      return one !== undefined && other !== undefined && (await sameBytes(one, other));
    } finally {
      await one?.close();
      await other?.close();
    }
  }

  async #haveSameAudio(a: string, b: string): Promise<boolean> {
    const [ofA, ofB] = this.#sources;
    const [one, other] = [await ofA.shape(a), await ofB.shape(b)];
    if (!one || !other || one.rate !== other.rate || one.frames !== other.frames) return false;
    if (one.channels !== other.channels) return false;
    for (let start = 0; start < one.frames; start += comparedFrames) {
      const [left, right] = [
        await ofA.read(a, start, comparedFrames),
        await ofB.read(b, start, comparedFrames),
      ];
      const length = left[0].length;
      if (length !== right[0].length) return false;
      for (const [channel, values] of left.entries()) {
        const others = right[channel];
        for (let at = 0; at < length; at++) if (values[at] !== others[at]) return false;
      }
      if (length === 0) break;
    }
    return true;
  }
}

async function sameBytes(one: FileReader, other: FileReader): Promise<boolean> {
  if (one.size !== other.size) return false;
  for (let start = 0; start < one.size; start += comparedBytes) {
    const [a, b] = [await one.read(start, comparedBytes), await other.read(start, comparedBytes)];
    if (a.length !== b.length) return false;
    for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  }
  return true;
}
