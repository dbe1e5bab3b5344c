import type { PlayableInstrument } from '../playable/playableInstrument';
import { createPlayer } from '../player/createPlayer';
import type { Player } from '../player/player';
import type { Message, TimedMessage } from '../player/playMessage';
import { playMessage } from '../player/playMessage';
import { defaultTempoBpm } from '../playingChoices';

/** What is set and held before a key is struck; what is missing is as at the start. */
export interface PlayedState {
  channel?: number;
  tempoBpm?: number;
  program?: number;
  /** Controllers that are moved, in order. */
  controllers?: readonly { controller: number; value: number }[];
  bend?: number;
  channelPressure?: number;
  /** Aftertouch of the struck key. */
  polyPressure?: number;
  /** Keys that stay down. */
  heldKeys?: readonly number[];
  /** A keyswitch that is pressed and let go. */
  keyswitch?: number;
  /** A key that is pressed and let go right before each strike. */
  previousKey?: number;
}

/** How a note is played: the key is struck, or a controller comes from one value to another in its place. */
export type PlayedBy = 'strike' | { controller: number; from: number; to: number };

/** A note in a state that is reached by playing. */
export interface PlayedNote extends PlayedState {
  key: number;
  velocity: number;
  by?: PlayedBy;
  /** The how manyth time it is played, from 1. */
  strike?: number;
  /** Seconds from one strike to the next, and for which the key is held; see {@link usualTimes}. */
  everySeconds?: number;
  holdSeconds?: number;
  /** Keys that are struck one after the other while it is held, and held with it. */
  followedBy?: readonly { key: number; velocity: number }[];
}

/** Times of playing that nothing but timers asks for (our choice). */
export const usualTimes = { everySeconds: 1, holdSeconds: 0.5 } as const;

/** For how long a key is pressed that switches. */
export const tapSeconds = 0.05;

/** From one strike of a phrase to the next, where the note is held long enough for all of them (our choice). */
const nextStrikeSeconds = 0.1;

/** The velocity of keys that are pressed for what they switch. */
const switchingVelocity = 100;
/** That of keyboards that do not measure it (MIDI 1.0). */
const releaseVelocity = 64;
/** From the note before to the strike. */
const previousShare = 0.5;

/** The messages that lead to the state of a note. */
function stateMessages(note: PlayedNote): Message[] {
  const messages: Message[] = [];
  if (note.program !== undefined) messages.push({ kind: 'program', number: note.program });
  for (const { controller, value } of note.controllers ?? [])
    messages.push({ kind: 'controller', number: controller, value });
  if (note.bend !== undefined) messages.push({ kind: 'bend', value: note.bend });
  if (note.channelPressure !== undefined)
    messages.push({ kind: 'channelPressure', value: note.channelPressure });
  if (note.polyPressure !== undefined)
    messages.push({ kind: 'polyPressure', key: note.key, value: note.polyPressure });
  for (const key of note.heldKeys ?? []) messages.push({ kind: 'noteOn', key, velocity: switchingVelocity });
  if (note.keyswitch !== undefined) messages.push(...tap(note.keyswitch));
  return messages;
}

function tap(key: number): Message[] {
  return [
    { kind: 'noteOn', key, velocity: switchingVelocity },
    { kind: 'noteOff', key, velocity: releaseVelocity },
  ];
}

/** How one strike is played. */
export interface Strike {
  /** The messages, the key let go again, with seconds from its start on. */
  messages: TimedMessage[];
  /** The positions of the message that strikes, or moves the controller, and of the last one. */
  start: number;
  end: number;
  /** The seconds that it takes. */
  seconds: number;
}

/** The messages of one strike of a note. */
export function strikeOf(note: PlayedNote): Strike {
  const every = note.everySeconds ?? usualTimes.everySeconds;
  const hold = note.holdSeconds ?? usualTimes.holdSeconds;
  const messages: TimedMessage[] = [];
  const { previousKey, by = 'strike' } = note;
  let seconds = 0;
  if (previousKey !== undefined) {
    const pressed = tap(previousKey).slice(0, note.heldKeys?.includes(previousKey) ? 1 : 2);
    // A controller strikes no key, so that the note before the last one is the previous one.
    for (const message of by === 'strike' ? pressed : [...pressed, ...pressed]) {
      messages.push({ seconds, message });
      seconds += Math.min(tapSeconds, every / 20);
    }
    seconds = every * previousShare;
  }
  const start = by === 'strike' ? messages.length : messages.length + 1;
  if (by === 'strike') messages.push(...struckAndHeld(note, seconds, hold));
  else {
    const { controller, from, to } = by;
    messages.push({ seconds, message: { kind: 'controller', number: controller, value: from } });
    messages.push({ seconds, message: { kind: 'controller', number: controller, value: to } });
  }
  return { messages, start, end: messages.length - 1, seconds: Math.max(every, seconds + hold) };
}

/** A key, those that follow it, and all of them let go again. */
function struckAndHeld(
  { key, velocity, followedBy = [] }: PlayedNote,
  seconds: number,
  hold: number,
): TimedMessage[] {
  const struck = [{ key, velocity }, ...followedBy];
  const gap = Math.min(nextStrikeSeconds, hold / struck.length);
  const strikes = struck.map((one, at): TimedMessage => {
    return { seconds: seconds + at * gap, message: { kind: 'noteOn', ...one } };
  });
  const keys = new Set(struck.map((one) => one.key));
  const offs = [...keys].map((one): TimedMessage => {
    return {
      seconds: seconds + hold,
      message: { kind: 'noteOff', key: one, velocity: releaseVelocity },
    };
  });
  return [...strikes, ...offs];
}

/**
 * A player that is about to play a note for the time that is said: it is in the state of the note and has played it as
 * often as comes before. Gives the time of the strike to come.
 */
export function playUpTo(
  playable: PlayableInstrument,
  note: PlayedNote,
  seed = 0,
): { player: Player; timeSeconds: number } {
  const { channel = 1, tempoBpm = defaultTempoBpm } = note;
  const player = createPlayer(playable, { seed, channel, tempoBpm });
  for (const message of stateMessages(note)) playMessage(player, message, 0);
  let timeSeconds: number = usualTimes.everySeconds;
  const { messages, seconds } = strikeOf(note);
  for (let strike = 1; strike < (note.strike ?? 1); strike++) {
    for (const { seconds, message } of messages) playMessage(player, message, timeSeconds + seconds);
    timeSeconds += seconds;
  }
  return { player, timeSeconds };
}

/** How a key is pressed to switch: it stays down where a region asks for that. */
export function keyswitchState(playable: PlayableInstrument, key: number): PlayedState {
  return playable.switchDown.includes(key) ? { heldKeys: [key] } : { keyswitch: key };
}

/** All messages of a note from a fresh start: the state that leads to it, and its strikes. */
export function messagesOf(note: PlayedNote): TimedMessage[] {
  const messages: TimedMessage[] = stateMessages(note).map((message) => ({ seconds: 0, message }));
  const strike = strikeOf(note);
  // What is held before the strike needs time to be over where it is let go.
  let start = messages.length === 0 ? 0 : tapSeconds;
  for (let number = 1; number <= (note.strike ?? 1); number++) {
    for (const { seconds, message } of strike.messages) messages.push({ seconds: start + seconds, message });
    start += strike.seconds;
  }
  return messages;
}
