/** What a player is made with. */
export interface PlayerOptions {
  /** The start of all random streams; the same seed and the same playing give the same events. */
  seed?: number;
  channel?: number;
  tempoBpm?: number;
}
