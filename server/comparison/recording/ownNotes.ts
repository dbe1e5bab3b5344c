import type { TimedMessage } from '../../playing/player/playMessage';
import type { RenderSource } from '../../sound/render/renderParts';
import { renderParts } from '../../sound/render/renderParts';
import type { ExpectedNote } from './expectedNotes';
import { LevelTrack } from './levelTrack';
import type { NoteMeasures } from './noteMeasures';
import { beforeSeconds, measureNote } from './noteMeasures';

/** Seconds of a note that are looked at. */
const longestSeconds = 12;
/** Seconds before the next note at which one is over. */
const clearSeconds = 0.02;

/** Seconds from a note's start to where the stretch that is measured ends. */
export function stretchEnd({ seconds, endSeconds, nextSeconds }: ExpectedNote, releaseSeconds = 4): number {
  const most = Math.min(longestSeconds, endSeconds - seconds + releaseSeconds);
  return Math.min(most, Math.max(clearSeconds, nextSeconds - seconds - clearSeconds));
}

/** What an instrument makes of a piece. */
export interface OwnNotes {
  measures: NoteMeasures[];
  track: LevelTrack;
}

/** Renders a piece and measures its notes on the way, so that no more than a note is held at one time. */
export async function ownNotes(
  source: RenderSource,
  part: readonly TimedMessage[],
  notes: readonly ExpectedNote[],
  options: { sampleRate: number; progress?: (seconds: number) => void | Promise<void>; signal?: AbortSignal },
): Promise<OwnNotes> {
  const { sampleRate, progress, signal } = options;
  const track = new LevelTrack(sampleRate);
  const windows = new NoteWindows(notes, sampleRate);
  await renderParts(
    source,
    [part],
    { sampleRate, seed: 0, quality: 'reference', ...(progress && { progress }) },
    (left, right, count) => {
      signal?.throwIfAborted();
      track.add(left, right, count);
      windows.add(left, right, count);
    },
  );
  return { measures: windows.finish(), track };
}

/** Cuts a sound that comes piece by piece into its notes. */
class NoteWindows {
  readonly #notes: readonly ExpectedNote[];
  readonly #rate: number;
  readonly #measures: NoteMeasures[] = [];
  /** The sound from the start of the present note's stretch on. */
  #left: Float32Array;
  #right: Float32Array;
  #start = 0;
  #count = 0;

  constructor(notes: readonly ExpectedNote[], sampleRate: number) {
    this.#notes = notes;
    this.#rate = sampleRate;
    const most = Math.ceil((longestSeconds + 2) * sampleRate) + 4096;
    this.#left = new Float32Array(most);
    this.#right = new Float32Array(most);
  }

  add(left: Float64Array, right: Float64Array, count: number): void {
    for (let done = 0; done < count; ) {
      const now = this.#start + this.#count;
      const from = this.#startOf(this.#measures.length);
      if (from === undefined) return;
      if (this.#count === 0) this.#start = now;
      // What comes before the stretch of the next note is not held.
      if (now < from && this.#start < from) {
        const skipped = Math.min(count - done, from - now);
        this.#start = now + skipped;
        this.#count = 0;
        done += skipped;
        continue;
      }
      const note = this.#notes[this.#measures.length];
      const end = Math.min(
        from + this.#left.length,
        Math.round((note.seconds + stretchEnd(note)) * this.#rate),
      );
      const taken = Math.min(count - done, end - now);
      this.#left.set(left.subarray(done, done + taken), this.#count);
      this.#right.set(right.subarray(done, done + taken), this.#count);
      this.#count += taken;
      done += taken;
      if (this.#start + this.#count >= end) this.#close();
    }
  }

  finish(): NoteMeasures[] {
    while (this.#measures.length < this.#notes.length) this.#close();
    return this.#measures;
  }

  #startOf(number: number): number | undefined {
    const note = this.#notes[number] as ExpectedNote | undefined;
    return note && Math.max(0, Math.round((note.seconds - beforeSeconds) * this.#rate));
  }

  #close(): void {
    const note = this.#notes[this.#measures.length];
    // A note at the very start of a piece has less before it.
    const lead = Math.round(beforeSeconds * this.#rate) - Math.round(note.seconds * this.#rate);
    const take = (side: Float32Array) => {
      const from = Math.max(0, lead);
      const whole = new Float32Array(from + this.#count);
      whole.set(side.subarray(0, this.#count), from);
      return whole;
    };
    this.#measures.push(
      measureNote({
        left: take(this.#left),
        right: take(this.#right),
        sampleRate: this.#rate,
        holdSeconds: note.endSeconds - note.seconds,
      }),
    );
    this.#keepOverlap();
  }

  /** The next stretch may begin within the one that is over. */
  #keepOverlap(): void {
    const next = this.#startOf(this.#measures.length) ?? Number.POSITIVE_INFINITY;
    const now = this.#start + this.#count;
    const kept = Math.max(0, Math.min(this.#count, now - next));
    this.#left.copyWithin(0, this.#count - kept, this.#count);
    this.#right.copyWithin(0, this.#count - kept, this.#count);
    this.#start = now - kept;
    this.#count = kept;
  }
}
