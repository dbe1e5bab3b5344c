import type { PlayEvent } from './events';
import type { Player } from './player';

/** What a keyboard sends. */
export type PlayMessage =
  | { kind: 'on'; key: number; velocity: number }
  | { kind: 'off'; key: number }
  | { kind: 'controller'; controller: number; value: number }
  | { kind: 'bend'; value: number }
  | { kind: 'channelPressure'; value: number }
  | { kind: 'polyPressure'; key: number; value: number }
  | { kind: 'program'; number: number };

/** A message with its time, in seconds from the start. */
export interface TimedMessage {
  seconds: number;
  message: PlayMessage;
}

/** Gives a message to a player; what it asks of the sound. */
export function playMessage(player: Player, message: PlayMessage, seconds: number): readonly PlayEvent[] {
  switch (message.kind) {
    case 'on':
      return player.noteOn(message.key, message.velocity, seconds);
    case 'off':
      return player.noteOff(message.key, 0, seconds);
    case 'controller':
      return player.controller(message.controller, message.value, seconds);
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
