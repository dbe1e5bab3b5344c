import { silentMessage } from '../../../server/playing/explaining/silentMessage';
import type { PlayableInstrument } from '../../../server/playing/playable/playableInstrument';
import type { SilentReason } from '../../../server/playing/player/conditions';
import { createPlayer } from '../../../server/playing/player/createPlayer';
import type { Player } from '../../../server/playing/player/player';
import type { Message } from '../../../server/playing/player/playMessage';
import { OutputStage } from '../../../server/sound/output/outputStage';
import type { SoundProgram } from '../../../server/sound/program/program';
import { sendMessage } from '../../../server/sound/sendMessage';
import { pageFrames } from '../../../server/sound/voice/voiceSamples';
import type { VoiceEngine } from '../../../server/sound/voiceEngine';
import { createVoiceEngine } from '../../../server/sound/voiceEngine';
import type { FromVoice, SilentCount, ToVoice } from '../voiceMessages';
import type { Movement } from './movements';
import { nameOfMoved } from './movements';
import { firstFrames, SampleMemory } from './sampleMemory';

/** Voices at one time; live quality plays that many on one core (see the benches). */
const mostVoices = 256;
/** Seconds of long samples that are fetched before they are heard. */
const secondsAhead = 2;
/** Blocks between two reports, some 25 ms. */
const blocksBetweenReports = 8;

/** An instrument that plays, or one whose last notes go on. */
interface Playing {
  playable: PlayableInstrument;
  program: SoundProgram;
  player: Player;
  engine: VoiceEngine;
  /** Regions and keys of voices that sound, by voice. */
  sounding: Map<number, { region: number; key: number }>;
}

/** What plays on the audio thread: engines, the samples that they were given, and the way to the ear. */
export class Audition {
  readonly #sampleRate: number;
  readonly #tell: (message: FromVoice) => void;
  readonly #memory: SampleMemory;
  readonly #output: OutputStage;
  #now: Playing | undefined;
  /** Instruments before this one with notes that go on. */
  #before: Playing[] = [];
  /** What was asked for and has not come. */
  readonly #asked = new Set<string>();
  /** What was moved since the start, each as it is now. */
  readonly #moved = new Map<string, Movement>();
  #blocks = 0;
  #hasChanged = false;
  #left = new Float32Array(128);
  #right = new Float32Array(128);

  constructor(sampleRate: number, mostBytes: number, tell: (message: FromVoice) => void) {
    this.#sampleRate = sampleRate;
    this.#tell = tell;
    this.#memory = new SampleMemory(mostBytes);
    this.#output = new OutputStage(sampleRate);
  }

  take(message: ToVoice): void {
    switch (message.type) {
      case 'instrument':
        this.#play(message.playable, message.program);
        break;
      case 'audio':
        this.#takeAudio(message);
        break;
      case 'forget':
        this.#memory.forget(message.sample);
        break;
      case 'message':
        this.#takeMessage(message.message);
        break;
      case 'stop':
        for (const { engine } of this.#all()) engine.allOff();
        break;
      case 'level':
        this.#output.setGainDb(message.db);
        break;
      case 'look':
        this.#look(message.key, message.velocity);
    }
  }

  #takeMessage(message: Message): void {
    switch (message.kind) {
      case 'noteOn':
        if (this.#output.isMuted) this.#output.fadeIn();
        this.#now?.engine.noteOn(message.key, message.velocity);
        this.#blocks = 0;
        return;
      case 'noteOff':
        for (const { engine } of this.#all()) engine.noteOff(message.key, message.velocity);
        return;
      default:
        this.#moved.set(nameOfMoved(message), message);
        for (const { engine } of this.#all()) sendMessage(engine, message);
    }
  }

  /** Writes the next frames. */
  process(left: Float32Array, right: Float32Array): void {
    left.fill(0);
    right.fill(0);
    if (this.#left.length < left.length) {
      this.#left = new Float32Array(left.length);
      this.#right = new Float32Array(left.length);
    }
    const partLeft = this.#left.subarray(0, left.length);
    const partRight = this.#right.subarray(0, left.length);
    for (const { engine } of this.#all()) {
      engine.process(partLeft, partRight);
      for (let frame = 0; frame < left.length; frame++) {
        left[frame] += partLeft[frame];
        right[frame] += partRight[frame];
      }
    }
    const wasMuted = this.#output.isMuted;
    this.#output.process(left, right);
    if (this.#output.isMuted && !wasMuted) {
      for (const { engine } of this.#all()) engine.allOff();
      this.#tell({ type: 'trouble', message: 'The sound was stopped, because its values ran out of range.' });
    }
    if (this.#blocks++ % blocksBetweenReports === 0) this.#report();
  }

  #all(): Playing[] {
    return this.#now ? [this.#now, ...this.#before] : this.#before;
  }

  #play(playable: PlayableInstrument, program: SoundProgram): void {
    if (this.#now && this.#now.engine.activeVoices > 0) this.#before.push(this.#now);
    const player = createPlayer(playable);
    const engine = createVoiceEngine(program, player, {
      sampleRate: this.#sampleRate,
      quality: 'live',
      mostVoices,
      makesVoicesAhead: true,
    });
    this.#now = { playable, program, player, engine, sounding: new Map() };
    for (const movement of this.#moved.values()) sendMessage(engine, movement);
    this.#hasChanged = true;
  }

  #takeAudio(audio: Extract<ToVoice, { type: 'audio' }>): void {
    const { sample, startFrame } = audio;
    this.#asked.delete(nameOf(sample, startFrame));
    this.#memory.add(sample, audio);
    for (const playing of this.#all()) {
      const id = playing.program.samples.indexOf(sample);
      if (id >= 0) this.#hand(playing, id, startFrame);
    }
    this.#memory.shrink((path) => this.#all().every((playing) => forget(playing, path)));
    if (this.#memory.isFull) this.#forgetPlayed();
  }

  /** Forgets stretches of samples that sound which no voice comes to soon: many long notes at once would hold all they have played. */
  #forgetPlayed(): void {
    const ahead = new Set<string>();
    for (const { engine, program } of this.#all()) {
      engine.pagesAhead(secondsAhead * this.#sampleRate, (id, page) =>
        ahead.add(nameOf(program.samples[id], page * pageFrames)),
      );
    }
    this.#memory.shrinkStretches(
      (path, startFrame) => ahead.has(nameOf(path, startFrame)),
      (path, startFrame) => {
        for (const { engine, program } of this.#all()) {
          const id = program.samples.indexOf(path);
          if (id >= 0) engine.removePage(id, startFrame / pageFrames);
        }
      },
    );
  }

  /** Hands an engine what is held of a sample; answers whether that is its beginning at least. */
  #hand({ engine, program }: Playing, id: number, only?: number): boolean {
    const held = this.#memory.get(program.samples[id]);
    if (!held?.stretches.has(0)) return false;
    const { rate, totalFrames, stretches } = held;
    for (const [startFrame, channels] of stretches) {
      if (only !== undefined && startFrame !== only) continue;
      if (totalFrames <= firstFrames) engine.addSample(id, channels, rate);
      else engine.addSample(id, channels, rate, { startFrame, totalFrames });
    }
    return true;
  }

  #ask(sample: string, startFrame: number, frames: number): void {
    const name = nameOf(sample, startFrame);
    if (this.#asked.has(name)) return;
    this.#asked.add(name);
    this.#tell({ type: 'want', sample, startFrame, frames });
  }

  #report(): void {
    for (const playing of this.#all()) this.#reportOf(playing);
    const over = this.#before.length;
    this.#before = this.#before.filter(({ engine }) => engine.activeVoices > 0);
    if (over !== this.#before.length) this.#hasChanged = true;
    if (!this.#hasChanged) return;
    this.#hasChanged = false;
    const sounding = [...(this.#now?.sounding.values() ?? [])];
    const regions = [...new Set(sounding.map(({ region }) => region))].sort((a, b) => a - b);
    this.#tell({ type: 'sounding', regions, keys: [...new Set(sounding.map(({ key }) => key))] });
  }

  #reportOf(playing: Playing): void {
    const { engine, program, sounding } = playing;
    const { started, ended, wantedSamples, brokenRegions, refusedVoices } = engine.takeReport();
    for (const { voice, region, key } of started) sounding.set(voice, { region, key });
    for (const { voice } of ended) sounding.delete(voice);
    if (started.length > 0 || ended.length > 0) this.#hasChanged = true;
    for (const id of wantedSamples) {
      if (!this.#hand(playing, id)) this.#ask(program.samples[id], 0, firstFrames);
    }
    engine.pagesAhead(secondsAhead * this.#sampleRate, (id, page, isThere) => {
      if (isThere) return;
      const startFrame = page * pageFrames;
      const held = this.#memory.get(program.samples[id]);
      if (!held || held.totalFrames <= firstFrames || startFrame < firstFrames) return;
      if (held.stretches.has(startFrame)) this.#hand(playing, id, startFrame);
      else this.#ask(program.samples[id], startFrame, pageFrames);
    });
    if (brokenRegions.length > 0)
      this.#tell({ type: 'trouble', message: 'A region was stopped, because its values ran out of range.' });
    if (refusedVoices > 0)
      this.#tell({ type: 'trouble', message: `More than ${mostVoices} voices: some are left out.` });
  }

  #look(key: number, velocity: number): void {
    if (!this.#now) return;
    const { player, playable, engine } = this.#now;
    const timeSeconds = engine.frame / this.#sampleRate;
    const sounds: number[] = [];
    const silent = new Map<SilentReason, SilentCount>();
    player.lookAt({ key, velocity, timeSeconds }, (region, reason, memory) => {
      if (reason === undefined) sounds.push(region);
      else if (reason !== 'key') {
        const known = silent.get(reason);
        if (known) known.count++;
        else
          silent.set(reason, { reason, count: 1, message: silentMessage(playable, memory, region, reason) });
      }
    });
    this.#tell({ type: 'looked', key, velocity, sounds, silent: [...silent.values()] });
  }
}

function nameOf(sample: string, startFrame: number): string {
  return `${startFrame} ${sample}`;
}

/** Takes a sample back from an engine; answers whether it was free. */
function forget({ engine, program }: Playing, path: string): boolean {
  const id = program.samples.indexOf(path);
  return id < 0 || engine.removeSample(id);
}
