import type { Message } from '../../server/playing/player/playMessage';
import type { Packed } from '../../server/protocol/conversion/packedData';

/** What is played in turn: the regions, all keys of the instrument, or the velocity layers on the root key of the first region. */
export type PlayedInTurn = 'regions' | 'keys' | 'layers';

/** The same, or the sample of the first region as it was recorded. */
export type Played = PlayedInTurn | 'sample';

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
  /** An `AudibleInstrument` of a sample alone, packed, whose key 60 plays that. */
  | { type: 'sampleSound'; instrument: Packed }
  /** Plays notes one after another, from regions given by their headers. */
  | { type: 'play'; headers: number[]; what: Played }
  /** What a MIDI keyboard sends. */
  | { type: 'midi'; message: Message }
  /** Ends all sound: the window lost the focus, or somebody asked for it. */
  | { type: 'silence' };

/** What such a page tells its host. */
export type AuditionFromPage =
  /** Wants what is needed to play the instrument, and to be told when it changes. */
  | { type: 'wantSound' }
  /** Wants to play the sample of a region, by its header. */
  | { type: 'wantSample'; header: number }
  | { type: 'wantAudio'; sample: string; startFrame: number; frames: number }
  /** Regions that sound, by their headers. */
  | { type: 'sounding'; headers: number[] }
  /** No sound is wanted any more. */
  | { type: 'soundOff' };
