import { GateSubject } from '../playable/gateTable';
import type { PlayableInstrument } from '../playable/playableInstrument';
import { Silence, Trigger } from '../playable/playableInstrument';
import { allNotesOff, allSoundOff, controllerVelocity, noteControllers } from '../playingChoices';
import { ChosenRegions } from './chosenRegions';
import type { SilentReason } from './conditions';
import { silentReason } from './conditions';
import { ControllerTriggers } from './controllerTriggers';
import type { PlayEvent } from './events';
import { Pedals } from './pedals';
import type { Look, Player } from './player';
import type { PlayerOptions } from './playerOptions';
import { PlayMemory } from './playMemory';
import { controllerCount } from './playState';
import { RandomUse, randomValue } from './randomValues';
import { releaseGainDb } from './releaseGain';
import { VoiceEnding } from './voiceEnding';
import { VoiceTable } from './voiceTable';

const nothing: readonly PlayEvent[] = Object.freeze([]);

/** The player of an instrument; see {@link Player}. */
export class RegionPlayer implements Player {
  readonly state: PlayMemory;
  readonly #playable: PlayableInstrument;
  readonly #voices = new VoiceTable();
  readonly #ending: VoiceEnding;
  readonly #pedals: Pedals;
  readonly #triggers: ControllerTriggers;
  readonly #usesTimer: boolean;
  #nextVoice = 1;
  readonly #chosen: ChosenRegions;
  /** By key: the number of its last note, that note's velocity and time, and whether it started a voice. */
  readonly #note = new Int32Array(128).fill(-1);
  readonly #velocity = new Float64Array(128);
  readonly #strikeSeconds = new Float64Array(128);
  readonly #hasStarted = new Uint8Array(128);

  constructor(playable: PlayableInstrument, options: PlayerOptions) {
    this.#playable = playable;
    this.state = new PlayMemory(playable, options);
    this.#chosen = new ChosenRegions(playable, this.state);
    this.#ending = new VoiceEnding(playable, this.#voices);
    this.#pedals = new Pedals(playable, this.state.controllers);
    this.#triggers = new ControllerTriggers(playable);
    this.#usesTimer = playable.otherGates.subject.includes(GateSubject.timer);
  }

  noteOn(key: number, velocity: number, timeSeconds: number): readonly PlayEvent[] {
    if (!isKey(key) || !(velocity <= 127)) return nothing;
    if (velocity <= 0) return this.noteOff(key, 0, timeSeconds);
    const { state } = this;
    state.strike(key, velocity, timeSeconds);
    this.#chosen.takePressed();
    const events: PlayEvent[] = [];
    const started = this.#startChosen(key, velocity, timeSeconds, -1, events);
    this.#note[key] = state.note;
    this.#velocity[key] = velocity;
    this.#strikeSeconds[key] = timeSeconds;
    this.#hasStarted[key] = started;
    return events;
  }

  noteOff(key: number, releaseVelocity: number, timeSeconds: number): readonly PlayEvent[] {
    if (!isKey(key) || this.state.keysDown[key] === 0) return nothing;
    this.state.lift(key);
    this.state.controllers[noteControllers.releaseVelocity] = releaseVelocity;
    const note = this.#note[key];
    const velocity = this.#velocity[key];
    const since = this.#strikeSeconds[key];
    const events: PlayEvent[] = [];
    const { held } = this.#pedals;
    for (let pedal = 0; pedal < held.length; pedal++) {
      if (this.#pedals.holds(pedal, key, note))
        held[pedal].add(key, velocity, note, since, this.#hasStarted[key]);
    }
    this.#letGo(key, note, velocity, since, this.#hasStarted[key], -1, timeSeconds, events);
    return events;
  }

  /**
   * Lets a note go: its voices that no pedal holds, and starts its release regions. `pedal` is −1 for the key, or the
   * pedal setting that has held it until now, and then only what follows that pedal is meant.
   */
  #letGo(
    key: number,
    note: number,
    velocity: number,
    since: number,
    hasStarted: number,
    pedal: number,
    timeSeconds: number,
    events: PlayEvent[],
  ): void {
    const { released, lowVelocity, highVelocity, trigger, pedal: pedalOf, playsDead } = this.#playable;
    const isDead = hasStarted === 1 && !this.#isSounding(note);
    this.#releaseVoices(key, note, pedal, timeSeconds, events);
    this.state.turnTo(key, velocity, timeSeconds);
    this.#chosen.clear();
    for (let at = released.start[key]; at < released.end[key]; at++) {
      const region = released.regions[at];
      if (velocity < lowVelocity[region] || velocity > highVelocity[region]) continue;
      if (isDead && playsDead[region] === 0) continue;
      const own = pedalOf[region];
      const isMeant =
        trigger[region] === Trigger.releaseKey
          ? pedal < 0
          : pedal < 0
            ? !this.#pedals.holds(own, key, note)
            : own === pedal;
      if (isMeant) this.#chosen.takeIfMet(region);
    }
    this.#startChosen(key, velocity, timeSeconds, timeSeconds - since, events);
  }

  #releaseVoices(key: number, note: number, pedal: number, timeSeconds: number, events: PlayEvent[]): void {
    const voices = this.#voices;
    const pedalOf = this.#playable.pedal;
    for (let at = 0; at < voices.count; ) {
      const own = pedalOf[voices.region[at]];
      const isMeant =
        voices.endsWithNote[at] === 1 &&
        voices.key[at] === key &&
        voices.note[at] <= note &&
        (pedal < 0 ? !this.#pedals.holds(own, key, note) : own === pedal) &&
        !this.#pedals.holds(own, key, voices.note[at]);
      if (isMeant && voices.startSeconds[at] > timeSeconds) {
        this.#ending.stopBy(at, 'fast', events);
        continue;
      }
      if (isMeant) {
        voices.endsWithNote[at] = 0;
        events.push({ kind: 'release', voice: voices.voice[at] });
      }
      at++;
    }
  }

  #isSounding(note: number): boolean {
    for (let at = 0; at < this.#voices.count; at++) if (this.#voices.note[at] === note) return true;
    return false;
  }

  controller(number: number, value: number, timeSeconds: number): readonly PlayEvent[] {
    const isKnown = Number.isInteger(number) && number >= 0 && number < controllerCount;
    if (!isKnown || !(value >= 0 && value <= 127)) return nothing;
    if (number === allSoundOff) return this.allOff(timeSeconds);
    if (number === allNotesOff) return this.#allNotesOff(timeSeconds);
    const { controllers, keysDown } = this.state;
    const before = controllers[number];
    controllers[number] = value;
    const events: PlayEvent[] = [];
    this.#pedals.move(number, before, value, keysDown, this.#note);
    this.#letHeldGo(number, timeSeconds, events);
    if (this.#triggers.has(number)) this.#triggerBy(number, before, value, timeSeconds, events);
    return events;
  }

  /** Lets those notes go, in order, that pedals of a controller held and hold no more. */
  #letHeldGo(controller: number, timeSeconds: number, events: PlayEvent[]): void {
    const { pedals } = this.#playable;
    for (let pedal = 0; pedal < pedals.length; pedal++) {
      const { sustainController, sostenutoController } = pedals[pedal];
      if (controller !== sustainController && controller !== sostenutoController) continue;
      const held = this.#pedals.held[pedal];
      for (let at = 0; at < held.count; ) {
        const key = held.key[at];
        const note = held.note[at];
        if (this.#pedals.holds(pedal, key, note)) {
          at++;
          continue;
        }
        const velocity = held.velocity[at];
        const since = held.startSeconds[at];
        const hasStarted = held.hasStarted[at];
        held.removeAt(at);
        this.#letGo(key, note, velocity, since, hasStarted, pedal, timeSeconds, events);
      }
    }
  }

  /** Stops and starts the regions whose ranges of a controller its new value has entered. */
  #triggerBy(number: number, before: number, value: number, timeSeconds: number, events: PlayEvent[]): void {
    const { state } = this;
    for (let at = 0; at < this.#voices.count; ) {
      if (this.#triggers.stops(this.#voices.region[at], number, before, value)) {
        this.#ending.stopBy(at, 'normal', events);
      } else at++;
    }
    state.turnTo(Math.max(state.lastKey, 0), controllerVelocity, timeSeconds);
    this.#chosen.clear();
    for (const region of this.#triggers.starting) {
      if (this.#triggers.starts(region, number, before, value)) this.#chosen.takeIfMet(region);
    }
    this.#startChosen(-1, controllerVelocity, timeSeconds, -1, events);
  }

  /**
   * Starts the chosen regions: on the key, or on the root key of each for −1. `heldSeconds` is −1 except where a note was let go.
   * Gives 1 where a voice started, else 0.
   */
  #startChosen(
    key: number,
    velocity: number,
    timeSeconds: number,
    heldSeconds: number,
    events: PlayEvent[],
  ): number {
    const playable = this.#playable;
    const { note, previousVelocity } = this.state;
    let started = 0;
    const { regions, count } = this.#chosen;
    for (let at = 0; at < count; at++) {
      const region = regions[at];
      this.#ending.silence(region, note, events);
      if (this.#usesTimer) this.state.groupStartSeconds.set(playable.group[region], timeSeconds);
      if (playable.silence[region] !== Silence.none) continue;
      const ownKey = key < 0 ? playable.rootKey[region] : key;
      this.#ending.keepPolyphony(region, note, events);
      if (heldSeconds < 0) this.#ending.keepNotePolyphony(region, ownKey, velocity, note, events);
      const usesPrevious = playable.usesPreviousVelocity[region] === 1 && previousVelocity >= 0;
      const randomSeed = this.state.seedOf(region);
      const delaySeconds = this.#delayOf(region, randomSeed);
      const voice = this.#nextVoice++;
      const endsWithNote = key < 0 || playable.ignoresNoteOff[region] === 1 ? 0 : 1;
      this.#voices.add(voice, region, ownKey, velocity, note, timeSeconds + delaySeconds, endsWithNote);
      started = 1;
      events.push({
        kind: 'start',
        voice,
        region,
        key: ownKey,
        velocity: usesPrevious ? previousVelocity : velocity,
        timeSeconds,
        delaySeconds,
        gainDb: heldSeconds < 0 ? 0 : releaseGainDb(playable, region, heldSeconds),
        randomSeed,
        note,
      });
    }
    return started;
  }

  #delayOf(region: number, randomSeed: number): number {
    const { delaySeconds, delayRandomSeconds, delayControllers } = this.#playable;
    let delay = delaySeconds[region];
    const random = delayRandomSeconds[region];
    if (random !== 0) delay += random * randomValue(randomSeed, RandomUse.delay);
    for (let at = delayControllers.start[region]; at < delayControllers.start[region + 1]; at++) {
      delay += (delayControllers.depth[at] * this.state.controllers[delayControllers.controller[at]]) / 127;
    }
    return Math.max(0, delay);
  }

  bend(value: number, _timeSeconds: number): readonly PlayEvent[] {
    if (!(value >= -8192 && value <= 8191)) return nothing;
    this.state.bend = value;
    this.state.controllers[noteControllers.bend] = ((value + 8192) * 127) / 16383;
    return nothing;
  }

  channelPressure(value: number, _timeSeconds: number): readonly PlayEvent[] {
    if (!(value >= 0 && value <= 127)) return nothing;
    this.state.channelPressure = value;
    this.state.controllers[noteControllers.channelPressure] = value;
    return nothing;
  }

  polyPressure(key: number, value: number, _timeSeconds: number): readonly PlayEvent[] {
    if (!isKey(key) || !(value >= 0 && value <= 127)) return nothing;
    this.state.polyPressure[key] = value;
    this.state.controllers[noteControllers.polyPressure] = value;
    return nothing;
  }

  program(number: number, _timeSeconds: number): readonly PlayEvent[] {
    if (isKey(number)) this.state.program = number;
    return nothing;
  }

  #allNotesOff(timeSeconds: number): readonly PlayEvent[] {
    const events: PlayEvent[] = [];
    for (let key = 0; key < 128; key++) {
      if (this.state.keysDown[key] === 1) events.push(...this.noteOff(key, 0, timeSeconds));
    }
    return events;
  }

  allOff(_timeSeconds: number): readonly PlayEvent[] {
    const events: PlayEvent[] = [];
    const voices = this.#voices;
    for (let at = 0; at < voices.count; at++) {
      events.push({ kind: 'stop', voice: voices.voice[at], how: 'fast' });
    }
    voices.count = 0;
    for (let key = 0; key < 128; key++) this.state.lift(key);
    this.#pedals.clear();
    return events;
  }

  voiceEnded(voice: number): void {
    const at = this.#voices.positionOf(voice);
    if (at >= 0) this.#voices.removeAt(at);
  }

  lookAt(
    { key, velocity, timeSeconds, by = 'strike', region }: Look,
    see: (region: number, reason: SilentReason | undefined, memory: PlayMemory) => void,
  ): void {
    const { state } = this;
    state.withoutTrace(() => {
      if (by === 'strike') state.strike(key, velocity, timeSeconds);
      else state.turnTo(key, velocity, timeSeconds);
      if (by === 'release') state.lift(key);
      if (typeof by === 'object') state.controllers[by.controller] = by.value;
      const what = typeof by === 'object' ? 'controller' : by;
      const [first, end] = region === undefined ? [0, this.#playable.regionCount] : [region, region + 1];
      for (let one = first; one < end; one++) see(one, silentReason(this.#playable, state, one, what), state);
    });
  }
}

/** Whether a number is one of a MIDI key. */
function isKey(key: number): boolean {
  return Number.isInteger(key) && key >= 0 && key <= 127;
}
