/** Endings of the names of audio files, in small letters. */
export const audioEndings: ReadonlySet<string> = new Set(
  'wav wave bwf rf64 w64 aif aiff aifc flac ogg oga opus mp3 snd au'.split(' '),
);

/** Whether a text ends like the name of an audio file. */
export function isAudioFileName(text: string): boolean {
  const dot = text.lastIndexOf('.');
  return dot > 0 && text.length - dot <= 5 && audioEndings.has(text.slice(dot + 1).toLowerCase());
}
