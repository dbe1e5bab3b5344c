/** Numbers of controllers that a player knows: those of MIDI and the further ones that the format counts on from 128. */
export const controllerCount = 512;

/** What conditions and the sound read while playing. */
export interface PlayState {
  /** The value of each controller, 0..127, with fractions where they are set finely. */
  readonly controllers: Float64Array;
  /** The pitch wheel, −8192..8191. */
  readonly bend: number;
  /** Channel aftertouch, 0..127. */
  readonly channelPressure: number;
  /** Aftertouch of each key, 0..127. */
  readonly polyPressure: Float64Array;
  /** MIDI program 0..127 and channel 1..16. */
  readonly program: number;
  readonly channel: number;
  readonly tempoBpm: number;
  /** 1 for each key that is down. */
  readonly keysDown: Uint8Array;
}
