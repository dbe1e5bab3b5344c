import type { PlayState } from '../../playing/player/playState';
import type { Kernel } from '../kernel/kernel';
import type { SoundProgram } from '../program/program';
import type { GeneratorTables } from './generatorSource';
import type { SampleReader } from './sampleReader';
import type { VoiceSamples } from './voiceSamples';

/** What all voices of an engine share. */
export interface VoiceContext {
  readonly program: SoundProgram;
  readonly sampleRate: number;
  readonly state: PlayState;
  readonly samples: VoiceSamples;
  readonly reader: SampleReader;
  readonly generators: GeneratorTables;
  /** Frames between two values of LFOs and of envelopes other than that of the amplitude. */
  readonly controlFrames: number;
  /** Shortest attack and release in seconds. */
  readonly leastRamp: number;
  readonly kernel: Kernel;
}
