import type { PlayableInstrument } from '../../playing/playable/playableInstrument';
import { createPlayer } from '../../playing/player/createPlayer';
import type { TimedMessage } from '../../playing/player/playMessage';
import { playMessage } from '../../playing/player/playMessage';

/** A note of a piece that starts regions. */
export interface ExpectedNote {
  /** Seconds from the start of the piece to its start and to its end. */
  seconds: number;
  endSeconds: number;
  /** When the next note starts, whether it sounds or switches; `Infinity` behind the last. */
  nextSeconds: number;
  key: number;
  velocity: number;
  /** By position, those that its end starts among them. */
  regions: number[];
}

/** The notes of a piece that start regions of an instrument; those that only switch are none. */
export function expectedNotes(playable: PlayableInstrument, part: readonly TimedMessage[]): ExpectedNote[] {
  const player = createPlayer(playable);
  const notes: ExpectedNote[] = [];
  const open = new Map<number, ExpectedNote>();
  const lastSeconds = part.at(-1)?.seconds ?? 0;
  for (const { seconds, message } of part) {
    const started = playMessage(player, message, seconds).flatMap((event) =>
      event.kind === 'start' ? [event.region] : [],
    );
    if (message.kind !== 'noteOn' && message.kind !== 'noteOff') continue;
    if (message.kind === 'noteOff' || message.velocity === 0) {
      const note = open.get(message.key);
      if (note) {
        note.endSeconds = seconds;
        note.regions.push(...started);
      }
      open.delete(message.key);
      continue;
    }
    const before = notes.at(-1);
    if (before && before.nextSeconds > seconds) before.nextSeconds = seconds;
    const { key, velocity } = message;
    const note = {
      seconds,
      endSeconds: lastSeconds,
      nextSeconds: Number.POSITIVE_INFINITY,
      key,
      velocity,
      regions: started,
    };
    open.set(key, note);
    notes.push(note);
  }
  return notes.filter(({ regions }) => regions.length > 0);
}
