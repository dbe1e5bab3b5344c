/** What a build does with an instrument beside converting and checking it. */
export interface BuildSteps {
  /** Measures the audio: pitch, loudness, seams. */
  measures: boolean;
  /** Plays each conversion against its source. */
  proves: boolean;
  /** Packs it to be shared. */
  packs: boolean;
}

/** The steps that either asks for. */
export function allSteps(one: BuildSteps, other: BuildSteps): BuildSteps {
  return {
    measures: one.measures || other.measures,
    proves: one.proves || other.proves,
    packs: one.packs || other.packs,
  };
}
