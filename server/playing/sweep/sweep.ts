import type { SilentRegion } from '../explaining/explain';
import type { PlayableInstrument } from '../playable/playableInstrument';
import type { Message } from '../player/playMessage';
import { defaultTempoBpm } from '../playingChoices';
import { coveringStrikes } from './coveringStrikes';
import type { PlayedNote } from './playedNote';
import { strikeOf } from './playedNote';
import { noteFor, strikesFor } from './regionNote';
import { canReach, SweepReceiver } from './sweepReceiver';

/** A message of a sweep, or a new tempo. */
export interface SweepMessage {
  seconds: number;
  /** 1..16. */
  channel: number;
  message: Message | { kind: 'tempo'; bpm: number };
}

/** A strike of a sweep that lets regions sound which have not sounded before. */
export interface SweepStrike {
  seconds: number;
  /** The key that is struck; `null` where a controller starts the regions. */
  key: number | null;
  velocity: number;
  /** The regions that sound for the first time, by position; those that its release starts are among them. */
  regions: number[];
}

/** One piece of playing that lets the regions of an instrument sound one after the other. */
export interface Sweep {
  /** In the order of time. */
  messages: SweepMessage[];
  strikes: SweepStrike[];
  /** Regions that can never sound. */
  never: SilentRegion[];
  /** Regions that would sound in a state that MIDI cannot reach, or not on the way of this piece, by position. */
  missed: number[];
  /** How long it lasts, with the silence at its end. */
  lengthSeconds: number;
}

export interface SweepOptions {
  /** How long each key is held, and the silence after it. */
  holdSeconds: number;
  gapSeconds: number;
  seed?: number;
}

/** How a sweep is played where nothing else is asked for (our choice). */
export const usualSweep = { holdSeconds: 1, gapSeconds: 1 } as const;

/** Seconds of silence before the first strike. */
const leadSeconds = 1;

/**
 * Plays an instrument from beginning to end without a fresh start in between, as a person needs it who records a
 * player: region by region, each that has not sounded yet is struck in the state that it asks for until it sounds. Round
 * robins go on from strike to strike.
 */
export function sweepOf(playable: PlayableInstrument, options: SweepOptions): Sweep {
  const { never } = coveringStrikes(playable, options.seed);
  const piece = new Piece(playable, options);
  const isNever = new Set(never.map(({ region }) => region));
  for (const region of inOrder(playable)) if (!isNever.has(region)) piece.play(region);
  return { ...piece.sweep, never };
}

/** Regions that sound while a default keyswitch counts come first, before a keyswitch is pressed. */
function inOrder({ regionCount, switchLow, switchHigh, switchDefault }: PlayableInstrument): number[] {
  const isByDefault = (region: number) =>
    switchLow[region] >= 0 &&
    switchDefault[region] >= switchLow[region] &&
    switchDefault[region] <= switchHigh[region];
  const all = Array.from({ length: regionCount }, (_, region) => region);
  return [...all.filter(isByDefault), ...all.filter((region) => !isByDefault(region))];
}

class Piece {
  readonly sweep: Omit<Sweep, 'never'> = {
    messages: [],
    strikes: [],
    missed: [],
    lengthSeconds: leadSeconds,
  };
  readonly #playable: PlayableInstrument;
  readonly #options: SweepOptions;
  readonly #hasSounded: Uint8Array;
  readonly #receivers = new Map<string, SweepReceiver>();
  #tempoBpm: number = defaultTempoBpm;

  constructor(playable: PlayableInstrument, options: SweepOptions) {
    this.#playable = playable;
    this.#options = options;
    this.#hasSounded = new Uint8Array(playable.regionCount);
  }

  /** Plays a region until it has sounded, where it has not. */
  play(region: number): void {
    if (this.#hasSounded[region] === 1) return;
    const note = this.#noteOf(region);
    if (canReach(note)) {
      const receiver = this.#receiverOf(note);
      const most = strikesFor(this.#playable, region);
      this.#reach(note, region, receiver);
      for (let strike = 0; strike < most && this.#hasSounded[region] === 0; strike++) {
        this.#strike(note, receiver);
      }
      this.sweep.lengthSeconds = receiver.letHeldGo(this.sweep.lengthSeconds);
    }
    if (this.#hasSounded[region] === 0) this.sweep.missed.push(region);
  }

  #noteOf(region: number): PlayedNote {
    const note = noteFor(this.#playable, region);
    const { holdSeconds, gapSeconds } = this.#options;
    // A timer that asks for quick strikes has times of its own.
    if (note.holdSeconds !== undefined) return note;
    return { ...note, holdSeconds, everySeconds: Math.max(note.everySeconds ?? 0, holdSeconds + gapSeconds) };
  }

  /** Players know one channel and one tempo. */
  #receiverOf({ channel = 1, tempoBpm = defaultTempoBpm }: PlayedNote): SweepReceiver {
    const key = `${channel} ${tempoBpm}`;
    let receiver = this.#receivers.get(key);
    if (!receiver) {
      const { seed = 0 } = this.#options;
      receiver = new SweepReceiver(this.#playable, { seed, channel, tempoBpm }, (seconds, message) =>
        this.sweep.messages.push({ seconds, channel, message }),
      );
      this.#receivers.set(key, receiver);
    }
    return receiver;
  }

  #reach(note: PlayedNote, region: number, receiver: SweepReceiver): void {
    const { channel = 1, tempoBpm = defaultTempoBpm } = note;
    if (tempoBpm !== this.#tempoBpm) {
      this.#tempoBpm = tempoBpm;
      const message = { kind: 'tempo', bpm: tempoBpm } as const;
      this.sweep.messages.push({ seconds: this.sweep.lengthSeconds, channel, message });
    }
    this.sweep.lengthSeconds = receiver.reach(note, region, this.sweep.lengthSeconds);
  }

  #strike(note: PlayedNote, receiver: SweepReceiver): void {
    const { messages, start, seconds: length } = strikeOf(note);
    const from = this.sweep.lengthSeconds;
    const regions: number[] = [];
    for (const { seconds, message } of messages) {
      for (const region of receiver.send(from + seconds, message)) {
        if (this.#hasSounded[region] === 0) regions.push(region);
        this.#hasSounded[region] = 1;
      }
    }
    const key = typeof note.by === 'object' ? null : note.key;
    if (regions.length > 0) {
      const seconds = from + messages[start].seconds;
      this.sweep.strikes.push({ seconds, key, velocity: note.velocity, regions });
    }
    this.sweep.lengthSeconds = from + length;
  }
}
