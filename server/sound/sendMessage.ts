import type { Message } from '../playing/player/playMessage';
import type { VoiceEngine } from './voiceEngine';

/** Has an engine play what a keyboard or a MIDI file sends. */
export function sendMessage(engine: VoiceEngine, message: Message): void {
  switch (message.kind) {
    case 'noteOn':
      engine.noteOn(message.key, message.velocity);
      break;
    case 'noteOff':
      engine.noteOff(message.key, message.velocity);
      break;
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
