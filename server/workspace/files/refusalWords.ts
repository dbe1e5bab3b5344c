import type { Refusal } from '../../model/files';

/** Why something is not read, as the end of a sentence without a full stop. */
export function refusalWords(refusal: Refusal): string {
  switch (refusal) {
    case 'permission':
      return 'cannot be read: permission';
    case 'trust':
      return 'is not read before you trust the open folder';
    case 'special':
      return 'is no file but a pipe, a socket or a device';
  }
}
