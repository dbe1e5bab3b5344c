import type { PlayableInstrument } from '../../playing/playable/playableInstrument';
import type { TimedMessage } from '../../playing/player/playMessage';
import { sweepOf, usualSweep } from '../../playing/sweep/sweep';

/** What a recording plays where nothing else is said: the sweep that is written for its instrument where nothing else is asked for. */
export function usualPiece(playable: PlayableInstrument): TimedMessage[] {
  return sweepOf(playable, usualSweep).messages.flatMap(({ seconds, message }) =>
    message.kind === 'tempo' ? [] : [{ seconds, message }],
  );
}
