/** How the audio of a sample file lies in its bytes, so that any frame can be reached without reading those before it. */
export interface FrameLayout {
  encoding: 'pcm' | 'float';
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
