import type { PlayEvent, StartEvent } from '../playing/player/events';
import type { Player } from '../playing/player/player';
import { choice } from './choices';
import { interpolatorOf, type Quality } from './interpolation/interpolator';
import { blockFrames } from './kernel/kernel';
import type { SoundProgram } from './program/program';
import { generatorTables } from './voice/generatorSource';
import { SampleReader } from './voice/sampleReader';
import { Voice } from './voice/voice';
import type { VoiceContext } from './voice/voiceContext';
import { type SampleStretch, type TellPage, VoiceSamples } from './voice/voiceSamples';

/** How an engine plays. */
export interface VoiceEngineOptions {
  /** Frames a second of the output. */
  sampleRate: number;
  quality: Quality;
  /** Most voices at a time; those beyond are not played and counted in the report. 512 where not said. */
  mostVoices?: number;
  /** Makes all voices at once, so that nothing is made while it plays. */
  makesVoicesFirst?: boolean;
  /** Whether voices are made before they are needed, a few in each block, so that neither the start nor a chord waits for it. */
  makesVoicesAhead?: boolean;
  /** Whether live quality may compile its inner loops, as it does where that is not refused; else it keeps to JavaScript. */
  mayCompile?: boolean | undefined;
}

/** What happened since the last report, by the positions of regions and the numbers of samples in the program. */
export interface EngineReport {
  started: { voice: number; region: number; key: number }[];
  ended: { voice: number; region: number }[];
  /** Samples that voices wait for. */
  wantedSamples: number[];
  /** Regions whose numbers ran away, so that their voices were stopped. */
  brokenRegions: number[];
  /** Voices that were not played because there were too many. */
  refusedVoices: number;
  /** Frames that were read as silence because their stretch of a long sample was not there. */
  missingFrames: number;
}

/**
 * Plays an instrument: takes what a keyboard sends and gives sound. It knows neither files nor text, so that it runs on the audio
 * thread of a page, in a worker and on the command line.
 */
export interface VoiceEngine {
  /** Adds a sample by its number in `SoundProgram.samples`, full scale −1..1; see `VoiceSamples.add` for stretches. */
  addSample(id: number, channels: readonly Float32Array[], rate: number, stretch?: SampleStretch): void;
  /** Forgets a sample that no voice plays; answers whether it did. */
  removeSample(id: number): boolean;
  /** Forgets a page of a sample that came in stretches. */
  removePage(id: number, page: number): void;
  noteOn(key: number, velocity: number): void;
  noteOff(key: number, releaseVelocity?: number): void;
  controller(number: number, value: number): void;
  bend(value: number): void;
  channelPressure(value: number): void;
  polyPressure(key: number, value: number): void;
  programChange(number: number): void;
  /** Ends all voices fast. */
  allOff(): void;
  /** Writes the next frames, `left.length` of them; both have one length. */
  process(left: Float32Array | Float64Array, right: Float32Array | Float64Array): void;
  /** Tells which pages of long samples are read within some frames, and whether they are there. */
  pagesAhead(frames: number, tell: TellPage): void;
  /** What happened since it was last asked. */
  takeReport(): EngineReport;
  readonly activeVoices: number;
  /** Whether its inner loops are compiled. */
  readonly isCompiled: boolean;
  /** Frames since the start. */
  readonly frame: number;
  /** The frame behind the last one that a voice which is over has played. */
  readonly lastSound: number;
}

const usualVoices = 512;
/** Voices that are made in a block where they are made ahead. */
const voicesABlock = 2;

/** Makes an engine that plays a program with the player of the same instrument. */
export function createVoiceEngine(
  program: SoundProgram,
  player: Player,
  options: VoiceEngineOptions,
): VoiceEngine {
  return new Engine(program, player, options);
}

class Engine implements VoiceEngine {
  frame = 0;
  lastSound = 0;
  readonly #player: Player;
  readonly #context: VoiceContext;
  readonly #mostVoices: number;
  readonly #makesAhead: boolean;
  readonly #free: Voice[] = [];
  readonly #active: Voice[] = [];
  readonly #byNumber = new Map<number, Voice>();
  #report: EngineReport = emptyReport();

  constructor(program: SoundProgram, player: Player, options: VoiceEngineOptions) {
    const { sampleRate, quality, mostVoices = usualVoices } = options;
    const isLive = quality === 'live';
    this.#player = player;
    this.#mostVoices = mostVoices;
    this.#makesAhead = options.makesVoicesAhead === true && program.regionCount > 0;
    const interpolator = interpolatorOf(quality, options.mayCompile);
    this.#context = {
      program,
      sampleRate,
      state: player.state,
      samples: new VoiceSamples(),
      reader: new SampleReader(interpolator),
      kernel: interpolator.kernel,
      generators: generatorTables(program.sample),
      controlFrames: isLive ? choice.controlFramesLive.value : choice.controlFramesReference.value,
      leastRamp: isLive ? choice.declickSeconds.value : 0,
    };
    if (options.makesVoicesFirst && program.regionCount > 0) {
      for (let at = 0; at < mostVoices; at++) this.#free.push(new Voice(this.#context));
    }
  }

  get activeVoices(): number {
    return this.#active.length;
  }

  get isCompiled(): boolean {
    return this.#context.kernel.windows !== undefined;
  }

  addSample(id: number, channels: readonly Float32Array[], rate: number, stretch?: SampleStretch): void {
    this.#context.samples.add(id, channels, rate, stretch);
    for (const voice of this.#active) if (voice.waitsFor === id) voice.takeSample();
  }

  removeSample(id: number): boolean {
    const { sample } = this.#context.program;
    if (this.#active.some(({ region }) => sample[region] === id)) return false;
    this.#context.samples.remove(id);
    return true;
  }

  removePage(id: number, page: number): void {
    this.#context.samples.removePage(id, page);
  }

  noteOn(key: number, velocity: number): void {
    this.#take(this.#player.noteOn(key, velocity, this.#seconds));
  }

  noteOff(key: number, releaseVelocity = 64): void {
    this.#take(this.#player.noteOff(key, releaseVelocity, this.#seconds));
  }

  controller(number: number, value: number): void {
    this.#take(this.#player.controller(number, value, this.#seconds));
    this.#changeAll();
  }

  bend(value: number): void {
    this.#take(this.#player.bend(value, this.#seconds));
    this.#changeAll();
  }

  channelPressure(value: number): void {
    this.#take(this.#player.channelPressure(value, this.#seconds));
    this.#changeAll();
  }

  polyPressure(key: number, value: number): void {
    this.#take(this.#player.polyPressure(key, value, this.#seconds));
    this.#changeAll();
  }

  programChange(number: number): void {
    this.#take(this.#player.program(number, this.#seconds));
  }

  allOff(): void {
    this.#take(this.#player.allOff(this.#seconds));
  }

  get #seconds(): number {
    return this.frame / this.#context.sampleRate;
  }

  #changeAll(): void {
    for (const voice of this.#active) voice.change();
  }

  #take(events: readonly PlayEvent[]): void {
    for (const event of events) {
      if (event.kind === 'start') this.#start(event);
      else {
        const voice = this.#byNumber.get(event.voice);
        if (event.kind === 'release') voice?.release();
        else voice?.stop(event.how);
      }
    }
    this.#clearEnded();
  }

  #start(event: StartEvent): void {
    if (this.#active.length >= this.#mostVoices) {
      this.#report.refusedVoices++;
      this.#player.voiceEnded(event.voice);
      return;
    }
    const voice = this.#free.pop() ?? new Voice(this.#context);
    voice.start(event);
    this.#active.push(voice);
    this.#byNumber.set(event.voice, voice);
    this.#report.started.push({ voice: event.voice, region: event.region, key: event.key });
    if (voice.waitsFor >= 0 && !this.#report.wantedSamples.includes(voice.waitsFor)) {
      this.#report.wantedSamples.push(voice.waitsFor);
    }
  }

  /** Takes voices out that are not active any more. */
  #clearEnded(): void {
    const active = this.#active;
    let kept = 0;
    for (let at = 0; at < active.length; at++) {
      const voice = active[at];
      if (voice.isActive) active[kept++] = voice;
      else this.#end(voice);
    }
    active.length = kept;
  }

  #end(voice: Voice): void {
    this.#byNumber.delete(voice.number);
    this.#free.push(voice);
    this.#player.voiceEnded(voice.number);
    this.#report.ended.push({ voice: voice.number, region: voice.region });
  }

  process(left: Float32Array | Float64Array, right: Float32Array | Float64Array): void {
    for (let from = 0; from < left.length; from += blockFrames) {
      this.#processBlock(left, right, from, Math.min(blockFrames, left.length - from));
    }
  }

  #processBlock(
    left: Float32Array | Float64Array,
    right: Float32Array | Float64Array,
    from: number,
    count: number,
  ): void {
    const { kernel, reader } = this.#context;
    const { mix } = kernel;
    mix.left.fill(0);
    mix.right.fill(0);
    let hasEnded = false;
    for (const voice of this.#active) {
      const end = voice.render(0, count);
      if (!end) continue;
      hasEnded = true;
      if (end === 'not-a-number') this.#tellBroken(voice);
      else this.lastSound = Math.max(this.lastSound, this.frame + voice.framesBeforeEnd);
    }
    if (hasEnded) this.#clearEnded();
    if (reader.missing > 0) {
      this.#report.missingFrames += reader.missing;
      reader.missing = 0;
    }
    for (let frame = 0; frame < count; frame++) {
      left[from + frame] = mix.left[frame];
      right[from + frame] = mix.right[frame];
    }
    this.frame += count;
    if (this.#makesAhead && this.#free.length + this.#active.length < this.#mostVoices) this.#makeSome();
  }

  #makeSome(): void {
    for (let made = 0; made < voicesABlock; made++) this.#free.push(new Voice(this.#context));
  }

  #tellBroken({ region }: Voice): void {
    if (!this.#report.brokenRegions.includes(region)) this.#report.brokenRegions.push(region);
  }

  pagesAhead(frames: number, tell: TellPage): void {
    for (const voice of this.#active) voice.pagesAhead(frames, tell);
  }

  takeReport(): EngineReport {
    const report = this.#report;
    this.#report = emptyReport();
    return report;
  }
}

function emptyReport(): EngineReport {
  return {
    started: [],
    ended: [],
    wantedSamples: [],
    brokenRegions: [],
    refusedVoices: 0,
    missingFrames: 0,
  };
}
