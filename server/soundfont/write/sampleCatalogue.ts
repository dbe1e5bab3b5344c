import type { AudioSource } from '../../audio/decode/audioSource';
import { openAudio } from '../../audio/decode/openAudio';
import { readSampleFacts } from '../../audio/readSampleFacts';
import type { Files } from '../../model/files';
import { folderOf, joinPath, nameOf } from '../../model/paths';

/** What has to be known of a sample file to write it into a SoundFont. */
export interface KnownSample {
  /** The path of the file as it is spelt on the disk. */
  path: string;
  /** Frames a second. */
  rate: number;
  channels: number;
  frames: number;
  /** Bits that its values need: 24 for what has no fixed depth of 16 or less. */
  bits: number;
  /** First and last frame of its first loop. */
  loop: { start: number; end: number } | undefined;
  rootKey: number | undefined;
  /** The greatest value, full scale 1, where values above full scale are possible; else 1. */
  peak: number;
}

/** Files that are opened at one time. */
const atOnce = 8;
/** A file that does not say how long it is says this or more. */
const unknownLength = 2 ** 40;

/** The sample files of instruments: what is known of each, and their audio. */
export class SampleCatalogue {
  readonly #files: Files;
  readonly #known = new Map<string, KnownSample | undefined>();
  readonly #names = new Map<string, Promise<ReadonlyMap<string, string> | undefined>>();

  constructor(files: Files) {
    this.#files = files;
  }

  /** Looks at files that were not looked at yet. */
  async load(paths: Iterable<string>): Promise<void> {
    const unknown = [...new Set(paths)].filter((path) => !this.#known.has(path));
    let next = 0;
    const work = async () => {
      while (next < unknown.length) {
        const path = unknown[next++] as string;
        this.#known.set(path, await this.#look(path));
      }
    };
    await Promise.all(Array.from({ length: atOnce }, work));
  }

  /** What was found out of a file that was looked at; `undefined` where it cannot be read. */
  get(path: string): KnownSample | undefined {
    return this.#known.get(path);
  }

  /** The audio of a file; the caller closes both. Fails where the file is gone. */
  async open(path: string): Promise<{ source: AudioSource; close(): Promise<void> }> {
    const reader = await this.#files.open(path);
    const source = reader && (await openAudio(reader));
    if (!source) {
      await reader?.close();
      throw new Error(`${path}: the sample cannot be read any more`);
    }
    return {
      source,
      close: async () => {
        await source.close();
        await reader.close();
      },
    };
  }

  async #look(path: string): Promise<KnownSample | undefined> {
    const actual = await this.#actualPath(path);
    const reader = actual === undefined ? undefined : await this.#files.open(actual);
    if (!reader || actual === undefined) return undefined;
    try {
      const reading = await readSampleFacts(reader);
      const source = await openAudio(reader);
      if (reading.kind !== 'facts' || !source) return undefined;
      const { facts } = reading;
      const isLoud = facts.encoding === 'float';
      const measured = isLoud || source.frames > unknownLength ? await measure(source) : undefined;
      await source.close();
      const frames = measured?.frames ?? source.frames;
      if (frames === 0) return undefined;
      const isCoarse = facts.bitsPerSample > 0 && facts.bitsPerSample <= 16;
      const isLossy = facts.container === 'ogg' && facts.encoding !== 'flac';
      const loop = facts.loops[0];
      return {
        path: actual,
        rate: source.sampleRate,
        channels: source.channels,
        frames,
        bits: isCoarse || isLossy ? 16 : facts.bitsPerSample,
        loop: loop && { start: loop.start, end: loop.end },
        rootKey: facts.rootKey ?? undefined,
        peak: isLoud ? Math.max(1, measured?.peak ?? 1) : 1,
      };
    } catch {
      return undefined;
    } finally {
      await reader.close();
    }
  }

  /** The path as it is, or with its name in the letter case of the disk. */
  async #actualPath(path: string): Promise<string | undefined> {
    if ((await this.#files.stat(path))?.kind === 'file') return path;
    const folder = folderOf(path);
    let names = this.#names.get(folder);
    if (!names) {
      names = this.#files
        .list(folder)
        .then((entries) => entries && new Map(entries.map(({ name }) => [name.toLowerCase(), name])));
      this.#names.set(folder, names);
    }
    const name = (await names)?.get(nameOf(path).toLowerCase());
    return name === undefined ? undefined : joinPath(folder, name);
  }
}

async function measure(source: AudioSource): Promise<{ frames: number; peak: number }> {
  let frames = 0;
  let peak = 0;
  for await (const block of source.blocks()) {
    frames += block[0]?.length ?? 0;
    for (const channel of block) for (const value of channel) peak = Math.max(peak, Math.abs(value));
  }
  return { frames, peak };
}
