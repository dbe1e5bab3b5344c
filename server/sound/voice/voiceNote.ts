/** What is known of the note of a voice for its whole life. */
export interface VoiceNote {
  key: number;
  velocity: number;
  /** What random values of the voice are drawn from. */
  randomSeed: number;
}
