import type { PlayableInstrument } from '../playable/playableInstrument';
import { defaultTempoBpm, noteControllers } from '../playingChoices';
import type { PlayerOptions } from './playerOptions';
import type { PlayState } from './playState';
import { controllerCount } from './playState';
import { RandomUse, randomValue, voiceSeed } from './randomValues';

/** What a player remembers of what was played, and the strike, release or message that it looks at just now. */
export class PlayMemory implements PlayState {
  readonly controllers = new Float64Array(controllerCount);
  readonly polyPressure = new Float64Array(128);
  readonly keysDown = new Uint8Array(128);
  keysDownCount = 0;
  bend = 0;
  channelPressure = 0;
  program = 0;
  readonly channel: number;
  readonly tempoBpm: number;
  /** By zone of `PlayableInstrument.switchZones`: the keyswitch pressed last, or −1 before any. */
  readonly lastSwitch: Int16Array;
  /** By `PlayableInstrument.turn`: how many steps of the round robin have gone by, below its length. */
  readonly stepsGone: Uint16Array;
  /** When a region of a group started last, by group number. */
  readonly groupStartSeconds = new Map<number, number>();

  /** The number of the strike, release or message; its key, velocity, time and random number 0..1. */
  note = 0;
  key = 0;
  velocity = 0;
  seconds = 0;
  random = 0;
  /** Key and velocity of the note struck before the last one; −1 before there is one. */
  previousKey = -1;
  previousVelocity = -1;
  lastKey = -1;
  lastVelocity = -1;
  /** 1 or 0 in turns, from note to note. */
  alternate = 0;

  readonly #playable: PlayableInstrument;
  readonly #seed: number;

  constructor(
    playable: PlayableInstrument,
    { seed = 0, channel = 1, tempoBpm = defaultTempoBpm }: PlayerOptions,
  ) {
    this.#playable = playable;
    this.#seed = seed;
    this.channel = channel;
    this.tempoBpm = tempoBpm;
    this.controllers.set(playable.firstControllers);
    this.lastSwitch = new Int16Array(playable.switchZones.length / 128).fill(-1);
    this.stepsGone = new Uint16Array(playable.regionCount);
  }

  /** Turns to the next strike, release or message, with a random number of its own. */
  turnTo(key: number, velocity: number, seconds: number): void {
    this.note++;
    this.key = key;
    this.velocity = velocity;
    this.seconds = seconds;
    this.random = randomValue(this.seedOf(-1), RandomUse.condition);
  }

  /** The step, from 0, that the round robin of a region comes to; it is counted. */
  takeStep(region: number): number {
    const turn = this.#playable.turn[region];
    const length = this.#playable.sequenceLength[region];
    const gone = this.stepsGone[turn];
    if (length > 1) this.stepsGone[turn] = gone + 1 === length ? 0 : gone + 1;
    return gone;
  }

  /** The seed of the random values of a region for the present strike, release or message. */
  seedOf(region: number): number {
    return voiceSeed(this.#seed, this.note, region);
  }

  /** Turns to a struck key: it is down, may be a keyswitch, and the note before becomes the previous one. */
  strike(key: number, velocity: number, seconds: number): void {
    this.turnTo(key, velocity, seconds);
    this.previousKey = this.lastKey;
    this.previousVelocity = this.lastVelocity;
    this.lastKey = key;
    this.lastVelocity = velocity;
    this.press(key);
    const { switchZones } = this.#playable;
    for (let zone = 0; zone < this.lastSwitch.length; zone++) {
      if (switchZones[zone * 128 + key] === 1) this.lastSwitch[zone] = key;
    }
    const { controllers } = this;
    controllers[noteControllers.velocity] = velocity;
    controllers[noteControllers.key] = key;
    controllers[noteControllers.gate] = 127;
    controllers[noteControllers.random] = 127 * randomValue(this.seedOf(-1), RandomUse.controller);
    controllers[noteControllers.alternate] = 127 * this.alternate;
    this.alternate = 1 - this.alternate;
  }

  press(key: number): void {
    if (this.keysDown[key] === 0) this.keysDownCount++;
    this.keysDown[key] = 1;
  }

  lift(key: number): void {
    if (this.keysDown[key] === 1) this.keysDownCount--;
    this.keysDown[key] = 0;
    if (this.keysDownCount === 0) this.controllers[noteControllers.gate] = 0;
  }

  /** Does some work and puts back all that a strike changes. */
  withoutTrace(work: () => void): void {
    const { note, key, velocity, seconds, random, alternate, keysDownCount } = this;
    const { previousKey, previousVelocity, lastKey, lastVelocity } = this;
    const keysDown = this.keysDown.slice();
    const lastSwitch = this.lastSwitch.slice();
    const controllers = this.controllers.slice();
    work();
    Object.assign(this, { note, key, velocity, seconds, random, alternate, keysDownCount });
    Object.assign(this, { previousKey, previousVelocity, lastKey, lastVelocity });
    this.keysDown.set(keysDown);
    this.lastSwitch.set(lastSwitch);
    this.controllers.set(controllers);
  }
}
