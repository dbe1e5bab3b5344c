/** A loop of a sample file; frames count from 0 and `end` is the last frame that is played. */
export interface SampleLoop {
  start: number;
  end: number;
  type: 'forward' | 'alternating' | 'backward';
}

/** Something odd in a sample file that does not keep it from being read. */
export interface SampleProblem {
  /** `cut-short`: the file promises clearly more audio than it holds. */
  kind: 'cut-short' | 'size-wrong' | 'value-absurd' | 'chunk-broken';
  message: string;
}

/** What the header of a sample file says. */
export interface SampleFacts {
  container: 'wav' | 'aiff' | 'flac' | 'ogg';
  /** `pcm`, `float`, `alaw`, …; `flac`, `vorbis`, `opus`. */
  encoding: string;
  /** Frames a second. */
  sampleRate: number;
  channels: number;
  /** 0 where the encoding has no fixed depth, as Vorbis. */
  bitsPerSample: number;
  /** 0 where the file does not say; a problem then does. */
  frames: number;
  lengthSeconds: number;
  loops: SampleLoop[];
  /** MIDI key number at which the sample sounds as recorded, where the file says so. */
  rootKey: number | null;
  fineTuneCents: number | null;
  problems: SampleProblem[];
}

/** What came of looking into a sample file. */
export type SampleReading = { kind: 'facts'; facts: SampleFacts } | { kind: 'unreadable'; reason: string };

/** What is known of the path of a sample. */
export type SampleState =
  /** Not looked at yet. */
  | { kind: 'pending' }
  | { kind: 'missing' }
  /** Names a folder. */
  | { kind: 'folder' }
  /** There only when letter case is ignored, under the path `actual`. */
  | { kind: 'otherCase'; actual: string; reading?: SampleReading }
  /** `reading` is missing until the file was opened. */
  | { kind: 'file'; reading?: SampleReading };

/** How a sample looks: the lowest and highest value, full scale from −1 to 1, in equal parts of its length. */
export interface SampleOutline {
  frames: number;
  lowest: readonly number[];
  highest: readonly number[];
}

/** The pitch of a sample as it was measured in its audio. */
export interface MeasuredPitch {
  /** Frequency of the fundamental. */
  hertz: number;
  /** The nearest key, with A4 = key 69 = 440 Hz. */
  key: number;
  /** How far the pitch lies above this key. */
  cents: number;
  /** From 0 for noise to 1 for a sound that repeats itself exactly. */
  confidence: number;
}

/** How a loop closes, as it was measured in the audio. */
export interface LoopSeam {
  /** Whether closing the loop makes a jump, a bend or a change of sound that the sound itself does not have nearby. */
  isAudible: boolean;
  /** The step from the last frame of the loop to its first, full scale 1, and the greatest between frames nearby. */
  step: number;
  greatestStep: number;
  /** The bend (second difference) where the loop closes, and the greatest nearby. */
  bend: number;
  greatestBend: number;
  /**
   * How much the short-time spectrum changes where the loop closes, and the most that it does nearby by itself: from 0
   * for the same to 1 for nothing in common. 0 for loops too short to have one at each end.
   */
  spectrumChange: number;
  greatestSpectrumChange: number;
  /** Points of the loop near the present ones that close it smoothly, whole periods apart, where it is audible. */
  better?: { start: number; end: number };
  /** Frames over which a crossfade makes the loop close smoothly, where it is audible. */
  crossfadeFrames?: number;
}

/** What one pass through the whole audio of a sample tells. Levels are of full scale 1 unless another unit is named. */
export interface SampleSurvey {
  /** Frames that were decoded. */
  frames: number;
  /**
   * Whether that was all of the file; of a very long one the start is looked at, and what is said of its end and of equal
   * channels is as if nothing stood out.
   */
  isWhole: boolean;
  /** The greatest magnitude of any channel. */
  peak: number;
  /** The mean of each channel: 0 for a sound that swings around silence. */
  dcOffset: readonly number[];
  /** Frames before the sound starts and behind its end; all frames where there is no sound. */
  leadingSilenceFrames: number;
  trailingSilenceFrames: number;
  /** The level of the last hundredth of a second below the loudest such stretch, in dB, 0 or less; −Infinity for silence. */
  endLevelDb: number;
  /** The step from the last frame to silence, and the greatest between frames just before it. */
  endStep: number;
  greatestEndStep: number;
  /** Stretches of three frames or more that stay at the limit of full scale: how many, their frames in all, and the first one. */
  clipping: { runs: number; frames: number; firstFrame: number } | null;
  /** The correlation of the first two channels, −1 for opposite phase to 1; `null` for one channel or silence. */
  channelCorrelation: number | null;
  /** Whether all channels hold the same. */
  hasEqualChannels: boolean;
  /** Integrated loudness in LUFS (ITU-R BS.1770-5); `null` where nothing passes its gate. */
  loudness: number | null;
  /** The greatest momentary loudness in LUFS, over 400 ms or the whole of a shorter sound; `null` for silence. */
  momentaryLoudness: number | null;
}

/** What was measured in the audio of samples: `undefined` while it is not known, `null` where it cannot be measured. */
export interface SampleMeasures {
  pitch(path: string): MeasuredPitch | null | undefined;
  /** The seam of a loop from its first to its last frame. */
  loopSeam(path: string, startFrame: number, endFrame: number): LoopSeam | null | undefined;
  /** Missing where the host measures pitch and loops only. */
  survey?(path: string): SampleSurvey | null | undefined;
  /** Another number after answers that were known may have changed; missing where they can change at any time. */
  readonly version?: number;
}

/** Answers, without waiting, what is known of sample files. Paths are those of `Instrument.samplePath`. */
export interface SampleLookup {
  state(path: string): SampleState;
  /**
   * Another number after answers of {@link state} may have changed, those that were pending aside; missing where
   * they can change at any time.
   */
  readonly version?: number;
  /** Paths of audio files that are named most like a missing one, the nearest first, in the form of the given path. */
  nearest(path: string, count: number): string[];
  /** Missing where the host does not measure. */
  measures?: SampleMeasures;
}
