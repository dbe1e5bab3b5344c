import type { PlayableInstrument } from '../playable/playableInstrument';
import { createPlayer } from '../player/createPlayer';
import type { Player } from '../player/player';
import type { PlayerOptions } from '../player/playerOptions';
import type { Message } from '../player/playMessage';
import { playMessage } from '../player/playMessage';
import { allSoundOff } from '../playingChoices';
import type { PlayedNote } from './playedNote';
import { tapSeconds } from './playedNote';

/** Seconds that controllers and switches are given before what they are for. */
const settleSeconds = 0.05;
const switchingVelocity = 100;
const releaseVelocity = 64;

/** Whether MIDI can send what the state of a note asks for: whole values, and controllers that are none of its modes. */
export function canReach({ controllers = [], by, bend = 0, velocity }: PlayedNote): boolean {
  const isSendable = (controller: number, value: number) =>
    controller < allSoundOff && Number.isInteger(value);
  const isMoved =
    typeof by !== 'object' || (isSendable(by.controller, by.from) && isSendable(by.controller, by.to));
  return (
    isMoved &&
    controllers.every(({ controller, value }) => isSendable(controller, value)) &&
    Number.isInteger(bend) &&
    Number.isInteger(velocity)
  );
}

/** What receives the messages of a sweep on one channel: a player that tells what sounds, and a list that is written on. */
export class SweepReceiver {
  readonly #player: Player;
  readonly #playable: PlayableInstrument;
  readonly #write: (seconds: number, message: Message) => void;
  /** Controllers that some region looks at. */
  readonly #controllers: readonly number[];
  #held: readonly number[] = [];
  #isFresh = true;

  constructor(
    playable: PlayableInstrument,
    options: PlayerOptions,
    write: (seconds: number, message: Message) => void,
  ) {
    this.#playable = playable;
    this.#player = createPlayer(playable, options);
    this.#write = write;
    this.#controllers = controllersOf(playable);
  }

  /** Sends a message; the regions that it starts. */
  send(seconds: number, message: Message): number[] {
    this.#write(seconds, message);
    const started: number[] = [];
    for (const event of playMessage(this.#player, message, seconds)) {
      if (event.kind === 'start') started.push(event.region);
    }
    return started;
  }

  /** Brings about the state of a note for a region, sending what differs from the present one; when that is done. */
  reach(note: PlayedNote, region: number, from: number): number {
    let seconds = from;
    for (const message of this.#changes(note)) {
      this.send(from, message);
      seconds = from + settleSeconds;
    }
    this.#isFresh = false;
    this.#held = note.heldKeys ?? [];
    for (const key of this.#held) {
      this.send(seconds, { kind: 'noteOn', key, velocity: switchingVelocity });
      seconds += settleSeconds;
    }
    const { keyswitch } = note;
    if (keyswitch === undefined || !this.#lacksSwitch(note, region, seconds)) return seconds;
    this.send(seconds, { kind: 'noteOn', key: keyswitch, velocity: switchingVelocity });
    this.send(seconds + tapSeconds, { kind: 'noteOff', key: keyswitch, velocity: releaseVelocity });
    return seconds + tapSeconds + settleSeconds;
  }

  #lacksSwitch({ key, velocity, previousKey }: PlayedNote, region: number, timeSeconds: number): boolean {
    // Without the note before it the look would find a keyswitch lacking in any case.
    let lacks = previousKey !== undefined;
    const by = this.#playable.releasesOnly[region] === 1 ? 'release' : 'strike';
    this.#player.lookAt({ key, velocity, timeSeconds, by, region }, (_, reason) => {
      if (reason === 'keyswitch') lacks = true;
    });
    return lacks;
  }

  #changes(note: PlayedNote): Message[] {
    const { state } = this.#player;
    const changes: Message[] = [];
    const program = note.program ?? 0;
    if (state.program !== program) changes.push({ kind: 'program', number: program });
    const wanted = new Map(note.controllers?.map(({ controller, value }) => [controller, value]));
    for (const number of this.#controllers) {
      const value = wanted.get(number) ?? this.#playable.firstControllers[number];
      // What another program starts with is not known, so all are sent once.
      const isDue = this.#isFresh || state.controllers[number] !== value;
      if (isDue && Number.isInteger(value)) changes.push({ kind: 'controller', number, value });
    }
    const { bend = 0, channelPressure = 0, polyPressure = 0, key } = note;
    if (state.bend !== bend) changes.push({ kind: 'bend', value: bend });
    if (state.channelPressure !== channelPressure)
      changes.push({ kind: 'channelPressure', value: channelPressure });
    if (state.polyPressure[key] !== polyPressure)
      changes.push({ kind: 'polyPressure', key, value: polyPressure });
    return changes;
  }

  /** Lets the keys go that were held for the last state; when that is done. */
  letHeldGo(seconds: number): number {
    for (const key of this.#held) this.send(seconds, { kind: 'noteOff', key, velocity: releaseVelocity });
    const isHeld = this.#held.length > 0;
    this.#held = [];
    return isHeld ? seconds + settleSeconds : seconds;
  }
}

/** The controllers of MIDI that regions and pedals look at, ascending. */
function controllersOf({ controllerGates, startGates, stopGates, pedals }: PlayableInstrument): number[] {
  const found = new Set<number>();
  for (const gates of [controllerGates, startGates, stopGates])
    for (const subject of gates.subject) found.add(subject);
  for (const { sustainController, sostenutoController } of pedals)
    found.add(sustainController).add(sostenutoController);
  return [...found].filter((controller) => controller < allSoundOff).sort((a, b) => a - b);
}
