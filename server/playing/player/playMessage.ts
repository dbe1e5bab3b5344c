import type { PlayEvent } from './events';
import type { Player } from './player';

/** What a keyboard sends. */
export type Message =
  | { kind: 'noteOn'; key: number; velocity: number }
  | { kind: 'noteOff'; key: number; velocity: number }
  | { kind: 'controller'; number: number; value: number }
  | { kind: 'bend'; value: number }
  | { kind: 'channelPressure'; value: number }
  | { kind: 'polyPressure'; key: number; value: number }
  | { kind: 'program'; number: number };

/** A message at its time in seconds. */
export interface TimedMessage {
  seconds: number;
  message: Message;
}

/** Gives a message to a player; what it asks of the sound. */
export function playMessage(player: Player, message: Message, seconds: number): readonly PlayEvent[] {
  switch (message.kind) {
    case 'noteOn':
      return player.noteOn(message.key, message.velocity, seconds);
    case 'noteOff':
      return player.noteOff(message.key, message.velocity, seconds);
    case 'controller':
      return player.controller(message.number, message.value, seconds);
    case 'bend':
      return player.bend(message.value, seconds);
    case 'channelPressure':
      return player.channelPressure(message.value, seconds);
    case 'polyPressure':
      return player.polyPressure(message.key, message.value, seconds);
    case 'program':
      return player.program(message.number, seconds);
  }
}
