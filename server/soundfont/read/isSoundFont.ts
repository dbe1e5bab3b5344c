import { lettersAt } from './chunks';

/** Bytes of a file that tell whether it is a SoundFont. */
export const headerBytes = 12;
export const formStart = 8;

/** Whether the first twelve bytes of a file are those of a SoundFont. */
export function isSoundFont(head: Uint8Array): boolean {
  return head.length >= headerBytes && lettersAt(head, 0) === 'RIFF' && lettersAt(head, formStart) === 'sfbk';
}
