import type { PlayableInstrument } from '../../playing/playable/playableInstrument';
import { createPlayer } from '../../playing/player/createPlayer';
import type { Message } from '../../playing/player/playMessage';
import type { Quality } from '../interpolation/interpolator';
import type { SoundProgram } from '../program/program';
import { SampleFeeder } from '../samples/sampleFeeder';
import type { SampleSource } from '../samples/sampleSource';
import { sendMessage } from '../sendMessage';
import { createVoiceEngine, type VoiceEngine } from '../voiceEngine';
import type { MessagePart } from './messages';

/** What is rendered, with what it takes. */
export interface RenderSource {
  program: SoundProgram;
  playable: PlayableInstrument;
  samples: SampleSource;
  /** Files of the program's samples by number, `undefined` for one that is not there. */
  paths: readonly (string | undefined)[];
}

export interface RenderOptions {
  /** Frames a second. */
  sampleRate: number;
  quality: Quality;
  seed: number;
  /** The MIDI channel that is played, from 1, and the tempo, for conditions that ask for them. */
  channel?: number;
  tempoBpm?: number;
  /** Values of controllers before the first note. */
  controllers?: ReadonlyMap<number, number>;
  /** Bytes of decoded audio that are held; 256 MB where not said. */
  mostSampleBytes?: number;
  /** Told now and then how many seconds are done. */
  progress?: (seconds: number) => void | Promise<void>;
}

/** A note that was played, with the positions of the regions that it started, at its end included. */
export interface RenderedNote {
  seconds: number;
  key: number;
  velocity: number;
  regions: number[];
  /** Regions that started when the key was let go. */
  releaseRegions: number[];
}

/** What came of a render besides the sound. */
export interface RenderReport {
  frames: number;
  notes: RenderedNote[];
  /** Regions that a controller started. */
  controllerRegions: number[];
  /** The greatest magnitude of a sample of either channel. */
  peak: number;
  /** Frames beyond full scale. */
  framesOverFullScale: number;
  /** The mean of each channel. */
  mean: [left: number, right: number];
  /** Regions whose numbers ran away, so that they were stopped. */
  brokenRegions: number[];
  /** Numbers of samples that could not be read. */
  unreadableSamples: number[];
  /** Voices that were not played because there were too many at one time. */
  refusedVoices: number;
  /** Whether sounds that did not end by themselves were ended. */
  wasCutOff: boolean;
}

/** Takes the sound as it comes: arrays that are used again, of which the first `count` values count. */
export type TakeSound = (left: Float64Array, right: Float64Array, count: number) => void;

/** Frames between two looks at what samples are wanted. */
const pieceFrames = 1024;
/** What goes on sounding so long after the last message of a part is ended. */
const longestTailSeconds = 120;
const usualSampleBytes = 256 << 20;
const mostVoices = 4096;

/** Renders parts one after the other, each when the one before has died away. The same input gives the same sound, bit for bit. */
export async function renderParts(
  source: RenderSource,
  parts: Iterable<MessagePart>,
  options: RenderOptions,
  take: TakeSound,
): Promise<RenderReport> {
  const render = new Render(source, options, take);
  for (const [number, value] of options.controllers ?? []) render.engine.controller(number, value);
  for (const part of parts) await render.play(part);
  return render.finish();
}

class Render {
  readonly engine: VoiceEngine;
  readonly #feeder: SampleFeeder;
  readonly #options: RenderOptions;
  readonly #take: TakeSound;
  readonly #left = new Float64Array(pieceFrames);
  readonly #right = new Float64Array(pieceFrames);
  readonly #report: RenderReport;
  #sumLeft = 0;
  #sumRight = 0;
  /** The note that each key played last. */
  readonly #lastNotes = new Map<number, RenderedNote>();

  constructor({ program, playable, samples, paths }: RenderSource, options: RenderOptions, take: TakeSound) {
    const { sampleRate, quality, seed, mostSampleBytes = usualSampleBytes } = options;
    const { channel, tempoBpm } = options;
    const player = createPlayer(playable, {
      seed,
      ...(channel !== undefined && { channel }),
      ...(tempoBpm !== undefined && { tempoBpm }),
    });
    this.engine = createVoiceEngine(program, player, { sampleRate, quality, mostVoices });
    this.#feeder = new SampleFeeder(this.engine, samples, paths, { mostBytes: mostSampleBytes });
    this.#options = options;
    this.#take = take;
    this.#report = {
      frames: 0,
      notes: [],
      controllerRegions: [],
      peak: 0,
      framesOverFullScale: 0,
      mean: [0, 0],
      brokenRegions: [],
      unreadableSamples: [],
      refusedVoices: 0,
      wasCutOff: false,
    };
  }

  async play(part: MessagePart): Promise<void> {
    const { sampleRate } = this.#options;
    const start = this.engine.frame;
    for (const { seconds, message } of part) {
      await this.#renderUntil(start + Math.round(seconds * sampleRate));
      await this.#send(message);
    }
    const longest = this.engine.frame + longestTailSeconds * sampleRate;
    while (this.engine.activeVoices > 0) {
      if (this.engine.frame >= longest) {
        this.#report.wasCutOff = true;
        this.engine.allOff();
      }
      await this.#renderPiece(pieceFrames);
    }
  }

  async #send(message: Message): Promise<void> {
    const { engine } = this;
    const note = this.#noteOf(message);
    sendMessage(engine, message);
    const report = engine.takeReport();
    for (const { region } of report.started) {
      if (note) (message.kind === 'noteOn' ? note.regions : note.releaseRegions).push(region);
      else this.#report.controllerRegions.push(region);
    }
    this.#report.refusedVoices += report.refusedVoices;
    for (const id of report.wantedSamples) await this.#feeder.give(id);
  }

  /** The note that a message starts or ends. */
  #noteOf(message: Message): RenderedNote | undefined {
    if (message.kind !== 'noteOn' && message.kind !== 'noteOff') return undefined;
    const { key, velocity } = message;
    if (message.kind === 'noteOff' || velocity === 0) return this.#lastNotes.get(key);
    const seconds = this.engine.frame / this.#options.sampleRate;
    const note: RenderedNote = { seconds, key, velocity, regions: [], releaseRegions: [] };
    this.#report.notes.push(note);
    this.#lastNotes.set(key, note);
    return note;
  }

  async #renderUntil(frame: number): Promise<void> {
    while (this.engine.frame < frame) {
      await this.#renderPiece(Math.min(pieceFrames, frame - this.engine.frame));
    }
  }

  async #renderPiece(count: number): Promise<void> {
    await this.#feeder.givePages(count);
    const left = this.#left.subarray(0, count);
    const right = this.#right.subarray(0, count);
    this.engine.process(left, right);
    const report = this.engine.takeReport();
    this.#report.brokenRegions.push(...report.brokenRegions);
    this.#deliver(left, right, count);
    await this.#options.progress?.(this.engine.frame / this.#options.sampleRate);
  }

  #deliver(left: Float64Array, right: Float64Array, count: number): void {
    for (let frame = 0; frame < count; frame++) {
      const peak = Math.max(Math.abs(left[frame]), Math.abs(right[frame]));
      if (peak > this.#report.peak) this.#report.peak = peak;
      if (peak > 1) this.#report.framesOverFullScale++;
      this.#sumLeft += left[frame];
      this.#sumRight += right[frame];
    }
    this.#take(left, right, count);
  }

  finish(): RenderReport {
    const report = this.#report;
    report.frames = Math.min(this.engine.frame, this.engine.lastSound);
    const frames = Math.max(1, report.frames);
    report.mean = [this.#sumLeft / frames, this.#sumRight / frames];
    report.brokenRegions = [...new Set(report.brokenRegions)];
    report.unreadableSamples = [...this.#feeder.unreadable];
    return report;
  }
}
