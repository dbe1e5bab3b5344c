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
