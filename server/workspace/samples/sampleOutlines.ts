import { openAudio } from '../../audio/decode/openAudio';
import { readFrameLayout } from '../../audio/decode/readFrameLayout';
import { mixToMono, readFrames } from '../../audio/decode/readFrames';
import type { FileReader, Files } from '../../model/files';
import type { SampleOutline } from '../../model/samples';

/** Steps in which an outline is drawn. */
const steps = 96;
/** Frames that are looked at in each step of a long sample; what lies between them is not read. */
const framesInStep = 512;
/** Seconds of compressed audio, and values over all channels, that are decoded for an outline at the most. */
const longestDecoded = 60;
const mostDecodedValues = 1 << 23;
/** Outlines that are remembered. */
const mostKnown = 50;

/** How samples look, read from parts of their files when somebody asks and remembered while the files stay the same. */
export class SampleOutlines {
  readonly #files: Files;
  readonly #known = new Map<string, Promise<SampleOutline | undefined>>();

  constructor(files: Files) {
    this.#files = files;
  }

  /** The outline of a sample file by its absolute path; `undefined` where its audio cannot be read or is not decoded. */
  async outline(path: string): Promise<SampleOutline | undefined> {
    const stat = await this.#files.stat(path);
    if (stat?.kind !== 'file') return undefined;
    const key = `${path} ${stat.size} ${stat.modified}`;
    let outline = this.#known.get(key);
    if (!outline) {
      outline = this.#read(path);
      this.#known.set(key, outline);
      const [oldest] = this.#known.keys();
      if (this.#known.size > mostKnown && oldest !== undefined) this.#known.delete(oldest);
    }
    return outline;
  }

  async #read(path: string): Promise<SampleOutline | undefined> {
    const reader = await this.#files.open(path);
    if (!reader) return undefined;
    try {
      return await readOutline(reader);
    } catch {
      return undefined;
    } finally {
      await reader.close();
    }
  }
}

/**
 * The outline of an open sample file: lowest and highest value in each of some equal parts of its length. Of a long file
 * only the first frames of each part are read; one whose audio is compressed has to be decoded from its start, and has no
 * outline where that would take long.
 */
export async function readOutline(reader: FileReader): Promise<SampleOutline | undefined> {
  const layout = await readFrameLayout(reader);
  if (!layout) return decodedOutline(reader);
  const { frames } = layout;
  if (!(frames > 0)) return undefined;
  const count = Math.min(steps, frames);
  const startOf = (step: number) => Math.floor((step * frames) / count);
  const isShort = frames <= count * framesInStep;
  const whole = isShort ? mixToMono(await readFrames(reader, layout, 0, frames)) : undefined;
  const parts = await Promise.all(
    Array.from({ length: count }, async (_, step) => {
      const start = startOf(step);
      const length = Math.min(framesInStep, startOf(step + 1) - start);
      return whole
        ? whole.subarray(start, startOf(step + 1))
        : mixToMono(await readFrames(reader, layout, start, length));
    }),
  );
  if (parts.every((part) => part.length === 0)) return undefined;
  const outline = new Outline(count);
  for (const [step, part] of parts.entries()) {
    outline.add(step, part[0] ?? 0);
    for (const value of part) outline.add(step, value);
  }
  return { frames, ...outline };
}

/** The outline of audio that is decoded from its first frame to its last. */
async function decodedOutline(reader: FileReader): Promise<SampleOutline | undefined> {
  const audio = await openAudio(reader);
  if (!audio) return undefined;
  try {
    const { frames, sampleRate, channels } = audio;
    const most = Math.min(longestDecoded * sampleRate, mostDecodedValues / channels);
    if (!(frames > 0) || frames > most) return undefined;
    const count = Math.min(steps, frames);
    const outline = new Outline(count);
    let frame = 0;
    for await (const block of audio.blocks()) {
      // A file can hold more than it says.
      if (frame >= frames) break;
      for (const value of mixToMono(block)) outline.add(Math.floor((frame++ * count) / frames), value);
    }
    return frame === 0 ? undefined : { frames, ...outline };
  } finally {
    await audio.close();
  }
}

/** The lowest and highest value of each step; 0 for one that got none. */
class Outline {
  readonly lowest: number[];
  readonly highest: number[];
  readonly #isBegun: boolean[];

  constructor(count: number) {
    this.lowest = new Array<number>(count).fill(0);
    this.highest = new Array<number>(count).fill(0);
    this.#isBegun = new Array<boolean>(count).fill(false);
  }

  add(step: number, value: number): void {
    if (step >= this.lowest.length) return;
    if (!this.#isBegun[step] || value < this.lowest[step]) this.lowest[step] = value;
    if (!this.#isBegun[step] || value > this.highest[step]) this.highest[step] = value;
    this.#isBegun[step] = true;
  }
}
