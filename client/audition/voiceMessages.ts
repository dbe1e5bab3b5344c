import type { PlayableInstrument } from '../../server/playing/playable/playableInstrument';
import type { SilentReason } from '../../server/playing/player/conditions';
import type { Message } from '../../server/playing/player/playMessage';
import type { SoundProgram } from '../../server/sound/program/program';

/** What the page tells the audio thread. */
export type ToVoice =
  /** From now on notes are played by this instrument; those that sound go on by the one before. */
  | { type: 'instrument'; playable: PlayableInstrument; program: SoundProgram }
  /** A stretch of a sample, its first two channels at the most; `totalFrames` 0 for one that cannot be read. */
  | {
      type: 'audio';
      sample: string;
      rate: number;
      totalFrames: number;
      startFrame: number;
      channels: Float32Array[];
    }
  /** A sample whose file is another one: what is held of it counts no more. */
  | { type: 'forget'; sample: string }
  /** What a keyboard does. */
  | { type: 'message'; message: Message }
  /** Ends everything at once. */
  | { type: 'stop' }
  | { type: 'level'; db: number }
  /** Asks which regions a note would start now and why the others stay silent. */
  | { type: 'look'; key: number; velocity: number };

/** A reason for which regions stay silent, with how many do. */
export interface SilentCount {
  reason: SilentReason;
  count: number;
  /** Why the first of them does, as a sentence. */
  message: string;
}

/** What the audio thread tells the page. */
export type FromVoice =
  /** Regions with voices that sound, by their positions, and the keys that play them, whenever that changes. */
  | { type: 'sounding'; regions: number[]; keys: number[] }
  /** Audio that voices wait for: `frames` from `startFrame` on. */
  | { type: 'want'; sample: string; startFrame: number; frames: number }
  /** The answer to `look`. */
  | { type: 'looked'; key: number; velocity: number; sounds: number[]; silent: SilentCount[] }
  /** Something went wrong that a person should know, as a sentence. */
  | { type: 'trouble'; message: string };
