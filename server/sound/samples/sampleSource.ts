import type { AudioSource } from '../../audio/decode/audioSource';
import { openAudio } from '../../audio/decode/openAudio';
import type { FileReader, Files } from '../../model/files';

/** What is known of the audio of a sample file once it is open. */
export interface SampleShape {
  /** Frames a second. */
  rate: number;
  /** As the file says; damaged files can give fewer. */
  frames: number;
  channels: number;
}

/** An open file with what decodes it. */
interface OpenSample {
  reader: FileReader;
  audio: AudioSource;
}

/** Files that are open at one time. */
const mostOpen = 32;
/** Frames after which a file that does not say its length is taken to end: an hour at 48 kHz. */
const mostUnknownFrames = 48000 * 3600;

/** Reads the audio of sample files, stretch by stretch; keeps the files that were read last open. */
export class SampleSource {
  readonly #files: Files;
  /** By path, the one that was used last at the end. */
  readonly #open = new Map<string, Promise<OpenSample | undefined>>();
  /** Size and time of files that are open, as they were when their shape was asked for. */
  readonly #states = new Map<string, string>();

  constructor(files: Files) {
    this.#files = files;
  }

  /**
   * The shape of a file's audio; `undefined` where it is not there or cannot be decoded. A file that was replaced since is
   * opened anew, for what is read after this too.
   */
  async shape(path: string): Promise<SampleShape | undefined> {
    const stat = await this.#files.stat(path);
    const state = stat ? `${stat.size} ${stat.modified}` : '';
    if (this.#open.has(path) && this.#states.get(path) !== state) await this.#closeOne(path);
    this.#states.set(path, state);
    const sample = await this.#sampleAt(path);
    if (!sample) return undefined;
    const { sampleRate, frames, channels } = sample.audio;
    const isKnown = frames < Number.MAX_SAFE_INTEGER;
    return { rate: sampleRate, frames: isKnown ? frames : mostUnknownFrames, channels };
  }

  /**
   * Frames of a file, the first two channels at the most; shorter where the file has no more, and empty where it cannot be
   * read.
   */
  async read(path: string, startFrame: number, count: number): Promise<Float32Array[]> {
    const sample = await this.#sampleAt(path);
    if (!sample) return [new Float32Array(0)];
    try {
      const parts: Float32Array[][] = [];
      let done = 0;
      // One read gives no more than so many values.
      while (done < count) {
        const part = await sample.audio.read(startFrame + done, count - done);
        const length = part[0]?.length ?? 0;
        if (length === 0) break;
        parts.push(part.slice(0, 2));
        done += length;
      }
      return joined(parts, done);
    } catch {
      return [new Float32Array(0)];
    }
  }

  /** Closes all files. */
  async close(): Promise<void> {
    const paths = [...this.#open.keys()];
    for (const path of paths) await this.#closeOne(path);
  }

  async #sampleAt(path: string): Promise<OpenSample | undefined> {
    let sample = this.#open.get(path);
    this.#open.delete(path);
    sample ??= this.#openOne(path);
    this.#open.set(path, sample);
    if (this.#open.size > mostOpen) {
      const oldest = this.#open.keys().next().value;
      if (oldest !== undefined) await this.#closeOne(oldest);
    }
    return sample;
  }

  async #openOne(path: string): Promise<OpenSample | undefined> {
    const reader = await this.#files.open(path);
    if (!reader) return undefined;
    const audio = await openAudio(reader).catch(() => undefined);
    if (audio) return { reader, audio };
    await reader.close();
    return undefined;
  }

  async #closeOne(path: string): Promise<void> {
    const sample = await this.#open.get(path);
    this.#open.delete(path);
    this.#states.delete(path);
    await sample?.audio.close();
    await sample?.reader.close();
  }
}

function joined(parts: readonly Float32Array[][], length: number): Float32Array[] {
  if (parts.length === 1) return parts[0];
  const channels = Math.max(1, parts[0]?.length ?? 1);
  return Array.from({ length: channels }, (_, channel) => {
    const whole = new Float32Array(length);
    let at = 0;
    for (const part of parts) {
      whole.set(part[channel], at);
      at += part[channel].length;
    }
    return whole;
  });
}
