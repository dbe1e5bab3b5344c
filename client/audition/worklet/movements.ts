import type { Message } from '../../../server/playing/player/playMessage';
import type { VoiceEngine } from '../../../server/sound/voiceEngine';

/** A message that moves something, which stays where it is until it is moved again. */
export type Movement = Exclude<Message, { kind: 'noteOn' | 'noteOff' }>;

/** What a message moves: two with one name move the same. */
export function nameOfMoved(message: Movement): string {
  if (message.kind === 'controller') return `controller ${message.number}`;
  return message.kind === 'polyPressure' ? `pressure ${message.key}` : message.kind;
}

/** Has an engine follow a movement. */
export function move(engine: VoiceEngine, message: Movement): void {
  switch (message.kind) {
    case 'controller':
      engine.controller(message.number, message.value);
      break;
    case 'bend':
      engine.bend(message.value);
      break;
    case 'channelPressure':
      engine.channelPressure(message.value);
      break;
    case 'polyPressure':
      engine.polyPressure(message.key, message.value);
      break;
    case 'program':
      engine.programChange(message.number);
  }
}
