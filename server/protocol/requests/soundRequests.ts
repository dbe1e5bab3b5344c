import { RequestType } from 'vscode-languageserver-protocol';
import type { UsedController } from '../../features/usedControllers';
import type { PlayableInstrument } from '../../playing/playable/playableInstrument';
import type { SoundProgram } from '../../sound/program/program';
import type { Packed } from '../conversion/packedData';
import type { InstrumentPlace } from './requests';

/** All that is needed to play an instrument but the audio of its samples. */
export interface AudibleInstrument {
  playable: PlayableInstrument;
  program: SoundProgram;
  /** For each of the program's samples what changes with the file. */
  sampleStates: string[];
  /** By number, those that conditions and sounds ask for. */
  controllers: UsedController[];
}

export interface SoundResult {
  /** An {@link AudibleInstrument}, packed; `null` where there is none. */
  instrument: Packed;
  /** Why there is none, as a sentence. */
  reason?: string;
}

export interface SoundParams extends InstrumentPlace {
  /** Not the instrument, but the sample of this region alone, by the number of its header: as recorded, on its key 60. */
  sampleOf?: number;
}

/** Asks for what is needed to play a preset, or the instrument that a document belongs to, as it is now. */
export const SoundRequest = {
  type: new RequestType<SoundParams, SoundResult, void>('zonewright/sound'),
} as const;

export interface SampleAudioParams extends InstrumentPlace {
  /** The path as {@link SoundProgram.samples} of the answer to the sound request gives it. */
  sample: string;
  startFrame: number;
  /** Frames that are wanted; fewer are answered at the end. */
  frames: number;
}

export interface SampleAudioResult {
  /** Frames a second. */
  rate: number;
  /** Frames of the whole sample; 0 where it is not there or cannot be read. */
  totalFrames: number;
  /** The first two channels at the most: 32-bit floats, little-endian, in base 64. */
  channels: string[];
}

/** Asks for a stretch of the audio of a sample of an instrument that sound was asked for. Only samples that its instrument names are read. */
export const SampleAudioRequest = {
  type: new RequestType<SampleAudioParams, SampleAudioResult, void>('zonewright/sampleAudio'),
} as const;
