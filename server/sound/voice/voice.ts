import { LoopMode } from '../../playing/playable/playableInstrument';
import type { StartEvent, StopManner } from '../../playing/player/events';
import { choice } from '../choices';
import type { Walk } from '../interpolation/readRows';
import { InputWindow } from '../kernel/inputWindows';
import type { Sound } from '../kernel/kernel';
import type { MixGains } from '../kernel/mixing';
import { fallingShape } from '../modulation/envelope';
import { generators } from '../program/program';
import type { VoiceRecipe } from '../program/recipe';
import { Slot } from '../program/slots';
import { Ending } from './ending';
import { GeneratorSource } from './generatorSource';
import { Levels } from './levels';
import { Modulators } from './modulators';
import { pathSettings } from './pathSettings';
import { fadeOut } from './sampleFade';
import { SamplePath } from './samplePath';
import type { VoiceContext } from './voiceContext';
import { VoiceFilters } from './voiceFilters';
import type { VoiceNote } from './voiceNote';
import { BendFollower, framesUntil, stepOf } from './voicePitch';
import { pageFrames, type StoredSample, type TellPage } from './voiceSamples';
import { VoiceValues } from './voiceValues';

/** Why a voice is over: by itself, or because its numbers ran away. */
export type VoiceEnd = 'played' | 'not-a-number';

/** One sounding region. Voices are made once and used again and again; nothing is made while they play. */
export class Voice implements VoiceNote {
  isActive = false;
  /** The player's number of the voice. */
  number = -1;
  region = 0;
  key = 60;
  velocity = 100;
  randomSeed = 0;
  /** The sample that is waited for, or −1. */
  waitsFor = -1;
  /** Frames of the last call of {@link render} that came before the end. */
  framesBeforeEnd = 0;
  readonly #context: VoiceContext;
  readonly #values: VoiceValues;
  /** Values with what envelopes and LFOs add. */
  readonly #moved: Float64Array;
  readonly #modulators: Modulators;
  readonly #levels = new Levels();
  readonly #filters = new VoiceFilters();
  readonly #path = new SamplePath();
  readonly #window = new InputWindow();
  readonly #generator = new GeneratorSource();
  readonly #bend = new BendFollower();
  readonly #ending = new Ending();
  readonly #walk: Walk = { position: 0, step: 1, slope: 0 };
  readonly #mix: MixGains = { now: new Float64Array(4), slopes: new Float64Array(4) };
  #recipe: VoiceRecipe;
  #sample: StoredSample | undefined;
  #isMono = true;
  #delayFrames = 0;
  /** Frames after which a generator that nothing lets go is let go. */
  #generatorFrames = 0;
  #gainDb = 0;
  #ratio = 1;
  #targetStep = 1;
  #staticCents = 0;
  #isReleased = false;
  /** Envelopes or LFOs move more than the amplitude. */
  #isMoving = false;
  #isChanged = false;
  #isSourceOver = false;
  /** Frames of the last piece that the source gave. */
  #sourceFrames = 0;

  constructor(context: VoiceContext) {
    const { program } = context;
    this.#context = context;
    this.#values = new VoiceValues(program.slotCount, program.curves);
    this.#moved = new Float64Array(program.slotCount);
    this.#modulators = new Modulators(program.curves);
    this.#recipe = program.recipes[0];
  }

  /** Starts a voice. Where its sample is not there it waits for it. */
  start(event: StartEvent): void {
    const { program, sampleRate, samples } = this.#context;
    this.isActive = true;
    this.number = event.voice;
    this.region = event.region;
    this.key = event.key;
    this.velocity = event.velocity;
    this.randomSeed = event.randomSeed;
    this.#gainDb = event.gainDb;
    this.#recipe = program.recipes[program.recipe[event.region]];
    this.#isReleased = false;
    this.#isSourceOver = false;
    this.#isChanged = false;
    this.#ending.begin();
    this.#delayFrames = Math.round(event.delaySeconds * sampleRate);
    const sample = program.sample[event.region];
    this.#sample = sample < 0 ? undefined : samples.get(sample);
    this.waitsFor = sample >= 0 && !this.#sample ? sample : -1;
    if (this.waitsFor < 0) this.#begin();
  }

  /** The sample that was waited for is there. */
  takeSample(): void {
    this.#sample = this.#context.samples.get(this.waitsFor);
    this.waitsFor = -1;
    this.#begin();
  }

  #begin(): void {
    const { program, sampleRate, state, leastRamp } = this.#context;
    const recipe = this.#recipe;
    this.#values.begin(recipe, this, state);
    this.#bend.begin(recipe, state);
    const { now, first } = this.#values;
    this.#delayFrames += Math.max(0, Math.round(now[Slot.delay_samples]));
    const root = program.rootKey[this.region];
    this.#staticCents = recipe.pitchKeytrack * (this.key - root) + program.tuneCents[this.region];
    this.#walk.position = 0;
    this.#beginSource(root, now);
    this.#levels.begin(program, this.region, recipe, this, this.#gainDb);
    this.#modulators.begin(recipe, now, first, this.randomSeed, sampleRate, leastRamp);
    this.#isMoving = this.#modulators.isMoving || now[Slot.loop_tune] !== 0;
    this.#work();
    this.#walk.step = stepOf(this.#cents(), this.#ratio);
    this.#arrive();
    this.#filters.begin(recipe, this.#moved, this.#filterCents(), sampleRate);
  }

  #beginSource(root: number, values: Float64Array): void {
    const { program, sampleRate, generators: tables } = this.#context;
    if (this.#sample) {
      this.#ratio = this.#sample.rate / sampleRate;
      this.#isMono = this.#sample.isMono;
      this.#window.clear();
      this.#path.begin(pathSettings(program, this.region, this.#recipe, values, this.#sample));
      return;
    }
    this.#ratio = (440 * 2 ** ((root - 69) / 12)) / sampleRate;
    this.#isMono = true;
    this.#generator.begin(generators[-1 - program.sample[this.region]] ?? 'silence', tables, this.randomSeed);
    const playsThrough = program.loopMode[this.region] === LoopMode.oneShot;
    const seconds = playsThrough ? choice.generatorSeconds.value : Number.POSITIVE_INFINITY;
    this.#generatorFrames = seconds * sampleRate;
  }

  /** A controller, pressure or the pitch wheel has moved. */
  change(): void {
    this.#isChanged = true;
  }

  /** The note was let go. */
  release(): void {
    if (this.#isReleased) return;
    this.#isReleased = true;
    if (this.waitsFor >= 0) {
      this.#finish();
      return;
    }
    this.#modulators.release();
    if (this.#sample) {
      // What comes may be another now.
      this.#window.clear();
      this.#path.release(this.#walk.position, this.#context.reader.reach(this.#walk.step));
    }
  }

  /** Ends the voice before its time. */
  stop(how: StopManner): void {
    if (how === 'normal') this.release();
    else if (this.waitsFor >= 0 || this.#delayFrames > 0) this.#finish();
    else {
      const isFast = how === 'fast';
      const seconds = isFast ? choice.fastEndSeconds.value : how.seconds;
      this.#ending.end(seconds, isFast ? fallingShape : this.#recipe.offShape, this.#context.sampleRate);
    }
  }

  #finish(): void {
    this.isActive = false;
    this.waitsFor = -1;
  }

  /** Adds the next `count` frames to the mix from frame `from` on; answers why the voice is over, if it is. */
  render(from: number, count: number): VoiceEnd | undefined {
    if (this.waitsFor >= 0) return undefined;
    const { controlFrames } = this.#context;
    let done = Math.min(this.#delayFrames, count);
    this.#delayFrames -= done;
    while (done < count) {
      const isMoving = this.#isMoving || this.#isChanged;
      const frames = isMoving ? Math.min(controlFrames, count - done) : count - done;
      if (isMoving) this.#move(frames);
      if (!this.#renderPiece(from + done, frames)) {
        this.#finish();
        return 'not-a-number';
      }
      if (isMoving) this.#arrive();
      if (this.#isOver()) {
        this.framesBeforeEnd = done + this.#pieceBeforeEnd(frames);
        this.#finish();
        return 'played';
      }
      done += frames;
    }
    return undefined;
  }

  /** Works out where pitch, gains and filters are some frames on, and goes there in straight lines. */
  #move(frames: number): void {
    const { state, sampleRate, leastRamp } = this.#context;
    const values = this.#values;
    if (this.#isChanged) {
      const seconds = frames / sampleRate;
      values.follow(state, seconds);
      this.#bend.follow(this.#recipe, state, seconds);
      this.#modulators.follow(values.now, leastRamp);
      this.#isChanged = values.isGliding || this.#bend.isGliding;
    }
    this.#modulators.advance(this.#moved, frames);
    this.#work();
    this.#targetStep = stepOf(this.#cents(), this.#ratio);
    this.#walk.slope = (this.#targetStep - this.#walk.step) / frames;
    const { now, slopes } = this.#mix;
    for (let at = 0; at < 4; at++) slopes[at] = (this.#levels.gains[at] - now[at]) / frames;
    this.#filters.moveTo(this.#recipe, this.#moved, this.#filterCents(), sampleRate, frames);
  }

  /** What was headed for is reached. */
  #arrive(): void {
    if (this.#walk.slope !== 0) this.#walk.step = this.#targetStep;
    this.#walk.slope = 0;
    this.#mix.now.set(this.#levels.gains);
    this.#mix.slopes.fill(0);
  }

  #work(): void {
    this.#moved.set(this.#values.now);
    this.#modulators.apply(this.#moved);
    this.#levels.work(this.#recipe, this.#moved, this.#modulators, this.#context.state, this.#isMono);
  }

  #cents(): number {
    const moved = this.#moved;
    const loop = this.#sample && this.#walk.position >= this.#path.loopFrom ? moved[Slot.loop_tune] : 0;
    const own = this.#staticCents + moved[Slot.tune] + this.#bend.cents;
    return own + this.#modulators.pitchAmount(moved) + loop;
  }

  #filterCents(): number {
    return this.#modulators.filterAmount(this.#moved);
  }

  /** Renders frames without a change of direction; `false` where they are no numbers. */
  #renderPiece(from: number, count: number): boolean {
    const { kernel } = this.#context;
    const { left, right } = kernel.sound;
    const other = this.#isMono ? left : right;
    this.#readSource(kernel.sound, count);
    this.#filters.process(left, other, count);
    if (!this.#modulators.ownAmplitude) this.#modulators.amplitude.envelope.multiply(left, other, count);
    this.#ending.multiply(left, other, count);
    const { now } = this.#mix;
    if (!Number.isFinite(now[0] + now[1] + now[2] + now[3])) return false;
    return kernel.mixSound(this.#isMono, this.#mix, from, count);
  }

  #readSource(sound: Sound, count: number): void {
    const { left, right } = sound;
    const walk = this.#walk;
    if (!this.#sample) {
      this.#sourceFrames = count;
      this.#generator.fill(walk.step, walk.slope, left, count);
      walk.step += walk.slope * count;
      this.#generatorFrames -= count;
      if (this.#generatorFrames <= 0) this.release();
      return;
    }
    const frames = Math.max(0, framesUntil(this.#path.length - walk.position, walk, count));
    this.#sourceFrames = frames;
    const { position, step } = walk;
    if (frames > 0) this.#context.reader.read(this.#sample, this.#path, walk, this.#window, sound, frames);
    const fade = this.#recipe.sampleFadeSeconds * this.#sample.rate;
    fadeOut(left, this.#isMono ? left : right, frames, this.#path.length - position, step, fade);
    if (frames === count) return;
    this.#isSourceOver = true;
    left.fill(0, frames, count);
    right.fill(0, frames, count);
  }

  #isOver(): boolean {
    if (this.#ending.isOver || this.#modulators.isSilent) return true;
    if (this.#modulators.ownAmplitude?.isOver && this.#isReleased) this.stop('fast');
    return this.#isSourceOver && this.#filters.isSilent;
  }

  #pieceBeforeEnd(count: number): number {
    const bySource = this.#filters.isEmpty ? this.#sourceFrames : count;
    const { ownAmplitude, amplitude } = this.#modulators;
    const byEnvelope = ownAmplitude ? count : amplitude.envelope.framesBeforeEnd;
    return Math.min(count, bySource, byEnvelope, this.#ending.framesBeforeEnd);
  }

  /** Tells which pages of a long sample the voice reads in the next `frames` frames of output, and whether they are there. */
  pagesAhead(frames: number, tell: TellPage): void {
    const sample = this.#sample;
    const number = this.#context.program.sample[this.region];
    if (!sample || this.waitsFor >= 0 || sample.pageFrames !== pageFrames) return;
    const reach = this.#context.reader.reach(this.#walk.step);
    const last = this.#walk.position + this.#walk.step * frames + reach + pageFrames / 8;
    for (let at = Math.floor(this.#walk.position) - reach; at <= last; at += pageFrames / 8) {
      this.#path.locate(at);
      const { frame, partner } = this.#path;
      if (frame >= 0 && frame < sample.frames) this.#tellPage(sample, number, frame, tell);
      if (partner >= 0) this.#tellPage(sample, number, partner, tell);
    }
  }

  #tellPage(sample: StoredSample, number: number, frame: number, tell: TellPage): void {
    const page = Math.floor(frame / pageFrames);
    tell(number, page, sample.left[page] !== undefined);
  }
}
