import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { createPlayer } from '../../../server/playing/player/createPlayer';
import type { PlayEvent, StartEvent } from '../../../server/playing/player/events';
import type { Player } from '../../../server/playing/player/player';
import type { PlayerOptions } from '../../../server/playing/player/playerOptions';
import { readSfz } from '../../../server/sfz/read';

/** A player of SFZ text that tells events in words: `start 2`, `release 2`, `stop 2 fast`, by position of the region. */
export class Playing {
  readonly player: Player;
  /** The clock: goes on by a second with each message unless told otherwise. */
  seconds = 0;
  /** The start events of the last message. */
  started: StartEvent[] = [];
  readonly #regionOf = new Map<number, number>();
  readonly #voicesOf = new Map<number, number>();

  constructor(text: string, options: PlayerOptions = { seed: 7 }) {
    const instrument = readSfz(withSamples(text), { path: 'a.sfz' });
    // A worker gets a copy, so every test plays one.
    this.player = createPlayer(structuredClone(playableInstrument(instrument)), options);
  }

  on(key: number, velocity = 100): string[] {
    return this.#told(this.player.noteOn(key, velocity, this.#tick()));
  }

  off(key: number): string[] {
    return this.#told(this.player.noteOff(key, 0, this.#tick()));
  }

  /** Presses a key and lets it go; what the pressing started. */
  tap(key: number, velocity = 100): string[] {
    const told = this.on(key, velocity);
    const { started } = this;
    this.off(key);
    this.started = started;
    return told;
  }

  controller(number: number, value: number): string[] {
    return this.#told(this.player.controller(number, value, this.#tick()));
  }

  allOff(): string[] {
    return this.#told(this.player.allOff(this.#tick()));
  }

  /** Says that the newest voice of a region has ended by itself. */
  ended(region: number): void {
    this.player.voiceEnded(this.#voicesOf.get(region) ?? -1);
  }

  #tick(): number {
    return this.seconds++;
  }

  #told(events: readonly PlayEvent[]): string[] {
    this.started = [];
    return events.map((event) => {
      if (event.kind === 'start') {
        this.started.push(event);
        this.#regionOf.set(event.voice, event.region);
        this.#voicesOf.set(event.region, event.voice);
        return `start ${event.region}`;
      }
      const region = this.#regionOf.get(event.voice);
      if (event.kind === 'release') return `release ${region}`;
      return `stop ${region} ${typeof event.how === 'string' ? event.how : `${event.how.seconds} s`}`;
    });
  }
}

/** Text whose regions have a sample where none is set for all. */
function withSamples(text: string): string {
  return text.includes('sample=') ? text : `<global> sample=*sine\n${text.replace(/<global>/, '')}`;
}
