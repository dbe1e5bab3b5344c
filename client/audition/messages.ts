import type { Packed } from '../../server/protocol/conversion/packedData';

/** What is played in turn: the regions, all keys of the instrument, or the velocity layers on the root key of the first region. */
export type PlayedInTurn = 'regions' | 'keys' | 'layers';

/** What a host tells a page that plays sound. */
export type AuditionToPage =
  /** An `AudibleInstrument`, packed; `null` where there is none, with the reason. */
  | { type: 'sound'; instrument: Packed; reason?: string }
  /** Audio that the page wanted: bytes of 32-bit floats a channel, base 64. */
  | {
      type: 'audio';
      sample: string;
      startFrame: number;
      rate: number;
      totalFrames: number;
      channels: string[];
    }
  /** Plays notes one after another, from regions given by their headers. */
  | { type: 'play'; headers: number[]; what: PlayedInTurn }
  /** Ends all sound: the window lost the focus, or somebody asked for it. */
  | { type: 'silence' };

/** What such a page tells its host. */
export type AuditionFromPage =
  /** Wants what is needed to play the instrument, and to be told when it changes. */
  | { type: 'wantSound' }
  | { type: 'wantAudio'; sample: string; startFrame: number; frames: number }
  /** Regions that sound, by their headers. */
  | { type: 'sounding'; headers: number[] }
  /** No sound is wanted any more. */
  | { type: 'soundOff' };
