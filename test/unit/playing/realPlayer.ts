import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { createPlayer } from '../../../server/playing/player/createPlayer';
import type { PlayEvent } from '../../../server/playing/player/events';
import type { readSfz } from '../../../server/sfz/read';
import type { Action } from './actions';
import { startText } from './actions';

/** The real player, told of the same actions. */
export class RealPlayer {
  readonly playable;
  readonly player;
  readonly #regionOf = new Map<number, number>();
  #sounding: number[] = [];

  constructor(instrument: ReturnType<typeof readSfz>, seed: number) {
    this.playable = structuredClone(playableInstrument(instrument));
    this.player = createPlayer(this.playable, { seed });
  }

  act(action: Action, seconds: number): string[] {
    const { player } = this;
    switch (action.kind) {
      case 'on':
        return this.#tell(player.noteOn(action.key, action.velocity, seconds));
      case 'off':
        return this.#tell(player.noteOff(action.key, 0, seconds));
      case 'controller':
        return this.#tell(player.controller(action.number, action.value, seconds));
      case 'bend':
        return this.#tell(player.bend(action.value, seconds));
      case 'pressure':
        return this.#tell(player.channelPressure(action.value, seconds));
      case 'ended':
        player.voiceEnded(this.#sounding.shift() ?? -1);
        return [];
    }
  }

  #tell(events: readonly PlayEvent[]): string[] {
    return events.map((event) => {
      if (event.kind === 'start') {
        this.#regionOf.set(event.voice, event.region);
        this.#sounding.push(event.voice);
        const { region, key, velocity, gainDb } = event;
        return startText(region, key, velocity, gainDb);
      }
      const region = this.#regionOf.get(event.voice);
      if (event.kind === 'release') return `release ${region}`;
      this.#sounding = this.#sounding.filter((voice) => voice !== event.voice);
      return `stop ${region} ${typeof event.how === 'string' ? event.how : `${event.how.seconds} s`}`;
    });
  }
}
