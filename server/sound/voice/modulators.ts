import { Envelope, type StageSettings } from '../modulation/envelope';
import { type Curves, curveValue, FlexibleEnvelope } from '../modulation/flexibleEnvelope';
import { LfoClock, LfoWave, waveValue } from '../modulation/lfo';
import type { EnvelopeRecipe, FirstLfoRecipe, LfoRecipe, Route, VoiceRecipe } from '../program/recipe';
import { RouteKind } from '../program/recipe';
import { Slot } from '../program/slots';

/** An envelope of fixed stages, or none, with the settings that it reads. */
class Stages {
  readonly envelope = new Envelope();
  readonly settings: StageSettings = {
    delay: 0,
    start: 0,
    attack: 0,
    hold: 0,
    decay: 0,
    sustain: 1,
    release: 0,
  };
  recipe: EnvelopeRecipe | null = null;

  begin(recipe: EnvelopeRecipe | null, values: Float64Array, sampleRate: number, leastRamp: number): void {
    this.recipe = recipe;
    if (!recipe) return;
    this.take(values, leastRamp);
    this.envelope.begin(this.settings, recipe.shapes, sampleRate);
  }

  follow(values: Float64Array, leastRamp: number): void {
    if (!this.recipe?.isDynamic) return;
    this.take(values, leastRamp);
    this.envelope.followSustain();
  }

  /** Reads times and levels from the values of a voice. */
  take(values: Float64Array, leastRamp: number): void {
    const at = this.recipe?.firstSlot ?? 0;
    const { settings } = this;
    settings.delay = values[at];
    settings.start = level(values[at + 1]);
    settings.attack = Math.max(leastRamp, values[at + 2]);
    settings.hold = values[at + 3];
    settings.decay = values[at + 4];
    settings.sustain = level(values[at + 5]);
    settings.release = Math.max(leastRamp, values[at + 6]);
  }
}

function level(percent: number): number {
  return Math.max(0, Math.min(1, percent / 100));
}

/** One of the LFOs with a fixed target, or none. */
class FirstLfo {
  readonly clock = new LfoClock();
  recipe: FirstLfoRecipe | null = null;

  begin(recipe: FirstLfoRecipe | null, values: Float64Array, sampleRate: number): void {
    this.recipe = recipe;
    if (recipe) this.clock.begin(values[recipe.delay], values[recipe.fade], 0, sampleRate);
  }

  advance(values: Float64Array, frames: number, sampleRate: number): void {
    if (this.recipe) this.clock.advance(frames, values[this.recipe.frequency] / sampleRate);
  }

  /** What it adds to its target. */
  amount(values: Float64Array): number {
    if (!this.recipe) return 0;
    return values[this.recipe.depth] * this.clock.depth * waveValue(LfoWave.sine, this.clock.phase, 0);
  }
}

/** All envelopes and LFOs of a voice; what they add to its values. */
export class Modulators {
  readonly amplitude = new Stages();
  readonly filter = new Stages();
  readonly pitch = new Stages();
  readonly amplitudeLfo = new FirstLfo();
  readonly filterLfo = new FirstLfo();
  readonly pitchLfo = new FirstLfo();
  /** The gain of numbered envelopes and LFOs on the amplitude. */
  gain = 1;
  /** The numbered envelope that stands for the amplitude envelope, if one does. */
  ownAmplitude: FlexibleEnvelope | undefined;
  readonly #curves: Curves;
  readonly #envelopes: FlexibleEnvelope[] = [];
  readonly #clocks: LfoClock[] = [];
  #waves = new Float64Array(8);
  #depths = new Float64Array(8);
  #recipe: VoiceRecipe | undefined;
  #seed = 0;
  #sampleRate = 1;

  constructor(curves: Curves) {
    this.#curves = curves;
  }

  /**
   * Begins with the values of a voice; envelopes that are not dynamic keep to `first`, as they were then. `leastRamp` is
   * the shortest attack and release of the amplitude in seconds.
   */
  begin(
    recipe: VoiceRecipe,
    values: Float64Array,
    first: Float64Array,
    seed: number,
    sampleRate: number,
    leastRamp: number,
  ): void {
    this.#recipe = recipe;
    this.#seed = seed;
    this.#sampleRate = sampleRate;
    this.amplitude.begin(recipe.amplitudeEnvelope, values, sampleRate, leastRamp);
    this.filter.begin(recipe.filterEnvelope, values, sampleRate, 0);
    this.pitch.begin(recipe.pitchEnvelope, values, sampleRate, 0);
    this.amplitudeLfo.begin(recipe.amplitudeLfo, values, sampleRate);
    this.filterLfo.begin(recipe.filterLfo, values, sampleRate);
    this.pitchLfo.begin(recipe.pitchLfo, values, sampleRate);
    this.gain = 1;
    this.ownAmplitude = undefined;
    for (let at = 0; at < recipe.envelopes.length; at++) {
      const envelope = this.#envelopeAt(at);
      const own = recipe.envelopes[at];
      envelope.begin(own, own.isDynamic ? values : first, sampleRate);
      if (own.isAmplitude) this.ownAmplitude = envelope;
    }
    this.#beginLfos(recipe.lfos, values);
  }

  #envelopeAt(at: number): FlexibleEnvelope {
    if (at === this.#envelopes.length) this.#envelopes.push(new FlexibleEnvelope(this.#curves));
    return this.#envelopes[at];
  }

  #beginLfos(lfos: readonly LfoRecipe[], values: Float64Array): void {
    if (lfos.length > this.#waves.length) {
      this.#waves = new Float64Array(lfos.length * 2);
      this.#depths = new Float64Array(lfos.length * 2);
    }
    for (let at = 0; at < lfos.length; at++) {
      if (at === this.#clocks.length) this.#clocks.push(new LfoClock());
      const { delay, fade, phase } = lfos[at];
      this.#clocks[at].begin(values[delay], values[fade], values[phase], this.#sampleRate);
    }
    this.#depths.fill(1);
  }

  /** Whether anything besides the amplitude envelope moves. */
  get isMoving(): boolean {
    const recipe = this.#recipe as VoiceRecipe;
    const { filterEnvelope, pitchEnvelope, amplitudeLfo, filterLfo, pitchLfo, envelopes, lfos } = recipe;
    const first = filterEnvelope ?? pitchEnvelope ?? amplitudeLfo ?? filterLfo ?? pitchLfo;
    return first !== null || envelopes.length + lfos.length > 0;
  }

  /** Whether nothing comes any more: the amplitude has come to nothing and no setting can raise it again. */
  get isSilent(): boolean {
    if (this.ownAmplitude) return this.ownAmplitude.isOver && this.ownAmplitude.level === 0;
    const { envelope, recipe } = this.amplitude;
    return envelope.isOver || (envelope.isResting && envelope.level === 0 && recipe?.isDynamic === false);
  }

  /** Takes in settings that controllers have moved, where an envelope is dynamic. */
  follow(values: Float64Array, leastRamp: number): void {
    this.amplitude.follow(values, leastRamp);
    this.filter.follow(values, 0);
    this.pitch.follow(values, 0);
  }

  /** What the pitch envelope and the pitch LFO add, in cents. */
  pitchAmount(values: Float64Array): number {
    const envelope = this.pitch.recipe ? values[Slot.pitcheg_depth] * this.pitch.envelope.level : 0;
    return envelope + this.pitchLfo.amount(values);
  }

  /** What the filter envelope and the filter LFO add to the cutoff of the first filter, in cents. */
  filterAmount(values: Float64Array): number {
    const envelope = this.filter.recipe ? values[Slot.fileg_depth] * this.filter.envelope.level : 0;
    return envelope + this.filterLfo.amount(values);
  }

  release(): void {
    this.amplitude.envelope.release();
    this.filter.envelope.release();
    this.pitch.envelope.release();
    const count = this.#recipe?.envelopes.length ?? 0;
    for (let at = 0; at < count; at++) this.#envelopes[at].release();
  }

  /** Moves on by some frames, except for the amplitude envelope, which moves with the sound. */
  advance(values: Float64Array, frames: number): void {
    const recipe = this.#recipe as VoiceRecipe;
    if (this.filter.recipe) this.filter.envelope.advance(frames);
    if (this.pitch.recipe) this.pitch.envelope.advance(frames);
    this.amplitudeLfo.advance(values, frames, this.#sampleRate);
    this.filterLfo.advance(values, frames, this.#sampleRate);
    this.pitchLfo.advance(values, frames, this.#sampleRate);
    for (let at = 0; at < recipe.envelopes.length; at++) this.#envelopes[at].advance(frames);
    for (let at = 0; at < recipe.lfos.length; at++) {
      this.#clocks[at].advance(frames, values[recipe.lfos[at].frequency] / this.#sampleRate);
    }
  }

  /** Adds to the values of a voice what numbered envelopes and LFOs do at the present frame, and works out {@link gain}. */
  apply(values: Float64Array): void {
    const { routes, lfos } = this.#recipe as VoiceRecipe;
    this.gain = this.ownAmplitude?.level ?? 1;
    if (routes.length === 0) return;
    this.#depths.fill(1, 0, lfos.length);
    for (const route of routes) {
      if (!route.isLfo) this.#send(route, this.#envelopes[route.source].level, values);
    }
    for (let at = 0; at < lfos.length; at++) this.#waves[at] = this.#waveOf(lfos[at], this.#clocks[at]);
    // What scales an LFO comes before what the LFO does.
    for (const route of routes)
      if (route.isLfo && route.kind === RouteKind.lfoDepth) this.#sendLfo(route, values);
    for (const route of routes)
      if (route.isLfo && route.kind !== RouteKind.lfoDepth) this.#sendLfo(route, values);
  }

  #sendLfo(route: Route, values: Float64Array): void {
    this.#send(route, this.#waves[route.source] * this.#depths[route.source], values);
  }

  #send({ kind, target, depth, curve, isLfo }: Route, value: number, values: Float64Array): void {
    const points = curve >= 0 ? this.#curves.get(curve) : undefined;
    const amount = values[depth] * (points ? curveValue(points, value * 127) : value);
    if (kind === RouteKind.add) values[target] += amount;
    else {
      const factor = isLfo ? 1 + amount / 100 : amount / 100;
      if (kind === RouteKind.amplitude) this.gain *= factor;
      else if (target >= 0) this.#depths[target] *= factor;
    }
  }

  #waveOf({ waves, steps, count }: LfoRecipe, clock: LfoClock): number {
    if (clock.depth === 0 || clock.phase >= count) return 0;
    if (steps.length > 0) {
      const place = clock.phase - Math.floor(clock.phase);
      return clock.depth * steps[Math.min(steps.length - 1, Math.floor(place * steps.length))];
    }
    let sum = 0;
    for (const { wave, offset, ratio, scale } of waves) {
      sum += scale * (waveValue(wave, clock.phase * ratio, this.#seed) + offset);
    }
    return sum * clock.depth;
  }
}
