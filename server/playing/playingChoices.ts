/** A place where documents leave open what a player does, or disagree, with what is done here and why. */
export interface PlayingChoice {
  /** Opcodes or messages that it is about. */
  about: string;
  /** What is done, as a sentence. */
  choice: string;
  reason: string;
}

/** Least value of a pedal's controller at which it is down, where `sustain_lo` or `sostenuto_lo` do not say. */
export const pedalDownFrom = 64;

/** Controllers that do not start at 0: volume, pan and expression. */
export const controllerDefaults: Readonly<Record<number, number>> = { 7: 100, 10: 64, 11: 127 };

/** Controllers beyond those of MIDI that notes set, by what they hold. */
export const noteControllers = {
  bend: 128,
  channelPressure: 129,
  polyPressure: 130,
  velocity: 131,
  releaseVelocity: 132,
  key: 133,
  gate: 134,
  random: 135,
  alternate: 137,
} as const;

/** Channel mode messages (MIDI 1.0): all sound off, all notes off. */
export const allSoundOff = 120;
export const allNotesOff = 123;

/** The velocity of regions that a controller starts. */
export const controllerVelocity = 127;
