/** A region starts to sound. */
export interface StartEvent {
  kind: 'start';
  /** The voice's number: unlike that of any other voice of the player, rising. */
  voice: number;
  /** The region's position among the regions of the instrument. */
  region: number;
  /** The key that was played, 0..127; the region's root key where a controller started it. */
  key: number;
  /** The velocity that the sound takes, 1..127: that of the note before where `sw_vel=previous` says so. */
  velocity: number;
  /** When it was triggered, in seconds of the player's clock; the region's {@link delaySeconds} come on top. */
  timeSeconds: number;
  /** `delay` with what controllers and chance add to it, in seconds. */
  delaySeconds: number;
  /** To be added to the region's level in dB: what `rt_decay` takes away. */
  gainDb: number;
  /** What random values of this voice are drawn from; see `randomValue`. */
  randomSeed: number;
  /** The number of the note, release or controller message that started it; the layers of one note share it. */
  note: number;
}

/** The note of a voice was let go: its envelopes go to their release, a `loop_sustain` plays on behind its loop. */
export interface ReleaseEvent {
  kind: 'release';
  voice: number;
}

/** How a voice ends before its time: a quick fade, as if its note were let go, or a fade of some seconds. */
export type StopManner = 'fast' | 'normal' | { seconds: number };

/**
 * A voice ends because of another (`off_by`, `polyphony`, `note_polyphony`), by a controller (`stop_loccN`), because its
 * note was let go before its `delay` was over, or because everything is turned off. The player counts it as ended at once.
 */
export interface StopEvent {
  kind: 'stop';
  voice: number;
  how: StopManner;
}

/** What the player asks of the sound, in order. */
export type PlayEvent = StartEvent | ReleaseEvent | StopEvent;
