/** What a person or a program does to an instrument. */
export type Action =
  | { kind: 'on'; key: number; velocity: number }
  | { kind: 'off'; key: number }
  | { kind: 'controller'; number: number; value: number }
  | { kind: 'bend'; value: number }
  | { kind: 'pressure'; value: number }
  /** The oldest voice that sounds ends by itself. */
  | { kind: 'ended' };

/** How both players tell a start. */
export function startText(region: number, key: number, velocity: number, gainDb: number): string {
  return `start ${region} on ${key} at ${velocity}, ${gainDb} dB`;
}

/** The regions that start in what a player tells. */
export function startedIn(told: readonly string[]): number[] {
  return told.flatMap((one) => (one.startsWith('start') ? [Number(one.split(' ')[1])] : []));
}
