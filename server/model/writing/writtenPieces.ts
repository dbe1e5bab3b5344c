import type { Written } from '../notation';

/** What was written, its text in pieces that are joined when it is asked for as a whole, which takes as much memory again. */
export function writtenInPieces(pieces: readonly string[], rest: Omit<Written, 'text' | 'pieces'>): Written {
  let text: string | undefined;
  return {
    ...rest,
    pieces,
    get text() {
      text ??= pieces.join('');
      return text;
    },
  };
}
