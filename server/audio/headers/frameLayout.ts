/** Encodings of numbers that take the same whole number of bytes each, by their names in `SampleFacts`. */
export function isLaidOut(encoding: string): encoding is FrameLayout['encoding'] {
  return encoding === 'pcm' || encoding === 'float' || encoding === 'alaw' || encoding === 'mulaw';
}

/** How the audio of a sample file lies in its bytes, so that any frame can be reached without reading those before it. */
export interface FrameLayout {
  encoding: 'pcm' | 'float' | 'alaw' | 'mulaw';
  littleEndian: boolean;
  /** Whether numbers of one byte count from 0 with silence at 128, as they do in WAV files. */
  unsignedBytes: boolean;
  channels: number;
  /** Frames a second. */
  sampleRate: number;
  bytesPerSample: number;
  /** The byte of the file at which frame 0 starts. */
  dataStart: number;
  frames: number;
}
