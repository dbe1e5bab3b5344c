import type { FileReader, Files } from '../model/files';
import type { Instrument } from '../model/instrument';
import { createPlayer } from '../playing/player/createPlayer';
import { playMessage } from '../playing/player/playMessage';
import { coveringStrikes } from '../playing/sweep/coveringStrikes';
import type { PlayedNote } from '../playing/sweep/playedNote';
import { messagesOf } from '../playing/sweep/playedNote';
import type { RenderSource } from '../sound/render/renderParts';
import { renderParts } from '../sound/render/renderParts';
import type { Cause } from './cause';
import type { SoundingRegion } from './causes';
import { causeOf, saysTheSame } from './causes';
import { heldLongEnough } from './heldLongEnough';
import type { SoundDifference, StereoSound } from './soundDifference';
import { louder, soundDifference } from './soundDifference';
import { SpokenValues } from './spokenValues';

/** One of two instruments that are compared, with what is needed to play it. */
export interface ComparedInstrument extends RenderSource {
  instrument: Instrument;
}

interface Side extends ComparedInstrument {
  spoken: SpokenValues;
}

/** A note that two instruments do not play alike. */
export interface NoteDifference extends SoundDifference {
  note: PlayedNote;
  /** The regions in which they first differ, by position; `undefined` where one side plays none. */
  a: number | undefined;
  b: number | undefined;
  cause: Cause;
}

export interface Comparison {
  /** Notes that were played on both sides. */
  notes: number;
  /** Of these, those that were rendered because what the texts say was not the same. */
  rendered: number;
  /** The greatest difference of a sample in dB to full scale; `null` for none at all. */
  worstDb: number | null;
  /** Those above the tolerance, the worst first. */
  differences: NoteDifference[];
}

export interface CompareOptions {
  /** Differences of up to so many dB to full scale do not count. */
  toleranceDb: number;
  sampleRate: number;
  seed: number;
  progress?: (done: number, all: number) => void;
  signal?: AbortSignal;
}

/** Plays notes on two instruments, such that every region of both that can sound does so, and measures how they differ. */
export async function compareInstruments(
  first: ComparedInstrument,
  second: ComparedInstrument,
  options: CompareOptions,
  files: Files,
): Promise<Comparison> {
  const a = { ...first, spoken: new SpokenValues(first.instrument) };
  const b = { ...second, spoken: new SpokenValues(second.instrument) };
  const samples = new SameSamples(files);
  const notes = notesFor(a, b);
  const comparison: Comparison = { notes: notes.length, rendered: 0, worstDb: null, differences: [] };
  for (const [at, short] of notes.entries()) {
    options.signal?.throwIfAborted();
    options.progress?.(at, notes.length);
    const started = [regionsOf(a, short), regionsOf(b, short)];
    const found = await firstDifference(a, b, started, samples);
    if (!found) continue;
    comparison.rendered++;
    const note = await heldLongEnough(short, [
      { source: a, regions: started[0] },
      { source: b, regions: started[1] },
    ]);
    const [one, other] = [await soundOfNote(a, note, options), await soundOfNote(b, note, options)];
    const measured = soundDifference(one, other, options.sampleRate);
    comparison.worstDb = louder(comparison.worstDb, measured.peakDb);
    if (measured.peakDb === null || measured.peakDb <= options.toleranceDb) continue;
    comparison.differences.push({ note, ...measured, ...found.regions, cause: found.cause(measured) });
  }
  comparison.differences.sort((one, other) => (other.peakDb ?? 0) - (one.peakDb ?? 0));
  return comparison;
}

/** Notes that let all regions of either side sound, each once. */
function notesFor(a: RenderSource, b: RenderSource): PlayedNote[] {
  const notes = new Map<string, PlayedNote>();
  for (const { playable } of [a, b]) {
    for (const { note } of coveringStrikes(playable).strikes) notes.set(JSON.stringify(note), note);
  }
  return [...notes.values()];
}

/** The regions that a note starts, in order. */
function regionsOf({ playable }: RenderSource, note: PlayedNote): number[] {
  const player = createPlayer(playable);
  const regions: number[] = [];
  for (const { seconds, message } of messagesOf(note)) {
    for (const event of playMessage(player, message, seconds))
      if (event.kind === 'start') regions.push(event.region);
  }
  return regions;
}

interface FirstDifference {
  regions: Pick<NoteDifference, 'a' | 'b'>;
  cause: (measured: SoundDifference) => Cause;
}

async function firstDifference(
  a: Side,
  b: Side,
  [ofA, ofB]: readonly number[][],
  samples: SameSamples,
): Promise<FirstDifference | undefined> {
  for (let at = 0; at < Math.max(ofA.length, ofB.length); at++) {
    const [one, other] = [ofA[at], ofB[at]] as [number | undefined, number | undefined];
    const regions = { a: one, b: other };
    if (one === undefined || other === undefined) {
      const side = one === undefined ? 'first' : 'second';
      const message = `The ${side} plays ${Math.min(ofA.length, ofB.length)} regions here, the other ${Math.max(ofA.length, ofB.length)}.`;
      return { regions, cause: () => ({ kind: 'missing', message }) };
    }
    const hasSame = await samples.areSame(sampleOf(a, one), sampleOf(b, other));
    const pair: [SoundingRegion, SoundingRegion] = [
      { program: a.program, playable: a.playable, region: one, spoken: a.spoken },
      { program: b.program, playable: b.playable, region: other, spoken: b.spoken },
    ];
    if (!saysTheSame(...pair, hasSame))
      return { regions, cause: (measured) => causeOf(...pair, hasSame, measured) };
  }
  return undefined;
}

/** The path of a region's sample; the number of a generator; `undefined` for a file that is not there. */
function sampleOf({ program, paths }: RenderSource, region: number): string | number | undefined {
  const sample = program.sample[region];
  return sample < 0 ? sample : paths[sample];
}

async function soundOfNote(
  source: RenderSource,
  note: PlayedNote,
  options: CompareOptions,
): Promise<StereoSound> {
  const parts: [Float64Array, Float64Array][] = [];
  const { sampleRate, seed } = options;
  const { frames } = await renderParts(
    source,
    [messagesOf(note)],
    { sampleRate, seed, quality: 'reference' },
    (left, right, count) => parts.push([left.slice(0, count), right.slice(0, count)]),
  );
  const sound = { left: new Float32Array(frames), right: new Float32Array(frames) };
  let at = 0;
  for (const [left, right] of parts) {
    const count = Math.min(left.length, frames - at);
    if (count <= 0) break;
    sound.left.set(left.subarray(0, count), at);
    sound.right.set(right.subarray(0, count), at);
    at += count;
  }
  return sound;
}

const comparedAtOnce = 1 << 20;

/** Which sample files hold the same bytes; each pair is read once. */
class SameSamples {
  readonly #files: Files;
  readonly #known = new Map<string, boolean>();

  constructor(files: Files) {
    this.#files = files;
  }

  async areSame(a: string | number | undefined, b: string | number | undefined): Promise<boolean> {
    if (a === b || typeof a !== 'string' || typeof b !== 'string') return a === b;
    const pair = `${a}\n${b}`;
    let answer = this.#known.get(pair);
    if (answer === undefined) {
      answer = await this.#haveSameBytes(a, b);
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
}

async function sameBytes(one: FileReader, other: FileReader): Promise<boolean> {
  if (one.size !== other.size) return false;
  for (let start = 0; start < one.size; start += comparedAtOnce) {
    const [a, b] = [await one.read(start, comparedAtOnce), await other.read(start, comparedAtOnce)];
    if (a.length !== b.length || a.some((value, at) => value !== b[at])) return false;
  }
  return true;
}
