import type { Message } from '../../../server/playing/player/playMessage';

/** A message that moves something, which stays where it is until it is moved again. */
export type Movement = Exclude<Message, { kind: 'noteOn' | 'noteOff' }>;

/** What a message moves: two with one name move the same. */
export function nameOfMoved(message: Movement): string {
  if (message.kind === 'controller') return `controller ${message.number}`;
  return message.kind === 'polyPressure' ? `pressure ${message.key}` : message.kind;
}
