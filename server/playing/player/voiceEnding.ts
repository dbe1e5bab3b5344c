import type { PlayableInstrument } from '../playable/playableInstrument';
import { OffMode } from '../playable/playableInstrument';
import type { PlayEvent, StopManner } from './events';
import type { VoiceTable } from './voiceTable';

/** Ends voices because others start; all ends are by the `off_mode` of the voice that ends. */
export class VoiceEnding {
  readonly #playable: PlayableInstrument;
  readonly #voices: VoiceTable;

  constructor(playable: PlayableInstrument, voices: VoiceTable) {
    this.#playable = playable;
    this.#voices = voices;
  }

  /** Ends what the group of a region that starts silences: voices of other notes whose `off_by` is its number. */
  silence(region: number, note: number, events: PlayEvent[]): void {
    const { group, offBy, silencesOthers } = this.#playable;
    if (silencesOthers[region] === 0) return;
    const voices = this.#voices;
    for (let at = 0; at < voices.count; ) {
      if (voices.note[at] !== note && offBy[voices.region[at]] === group[region]) this.stop(at, events);
      else at++;
    }
  }

  /** Ends the oldest voices of other notes, so that one more voice of a region keeps to its `polyphony`. */
  keepPolyphony(region: number, note: number, events: PlayEvent[]): void {
    const scope = this.#playable.polyphonyScope[region];
    if (scope < 0) return;
    const voices = this.#voices;
    let excess = 1 - this.#playable.polyphony[region];
    for (let at = 0; at < voices.count; at++) if (this.#isInScope(voices.region[at], scope)) excess++;
    for (let at = 0; at < voices.count && excess > 0; ) {
      if (voices.note[at] !== note && this.#isInScope(voices.region[at], scope)) {
        this.stop(at, events);
        excess--;
      } else at++;
    }
  }

  #isInScope(region: number, scope: number): boolean {
    const { regions, number } = this.#playable.polyphonyScopes[scope];
    return regions === 'group'
      ? this.#playable.group[region] === number
      : this.#playable.polyphonyScope[region] === scope;
  }

  /**
   * Ends the oldest voices of other strikes of a key within the region's group, so that one more voice keeps to its
   * `note_polyphony`: those of no greater velocity, or any where `note_selfmask` is off.
   */
  keepNotePolyphony(region: number, key: number, velocity: number, note: number, events: PlayEvent[]): void {
    const limit = this.#playable.notePolyphony[region];
    if (limit <= 0) return;
    const voices = this.#voices;
    const keepsLouder = this.#playable.isSelfMasking[region] === 1;
    let excess = 1 - limit;
    for (let at = 0; at < voices.count; at++) if (this.#isSameNote(at, region, key)) excess++;
    for (let at = 0; at < voices.count && excess > 0; ) {
      const isOlder = voices.note[at] !== note && this.#isSameNote(at, region, key);
      if (isOlder && !(keepsLouder && voices.velocity[at] > velocity)) {
        this.stop(at, events);
        excess--;
      } else at++;
    }
  }

  #isSameNote(at: number, region: number, key: number): boolean {
    const { group, releasesOnly } = this.#playable;
    const other = this.#voices.region[at];
    return this.#voices.key[at] === key && group[other] === group[region] && releasesOnly[other] === 0;
  }

  /** Ends the voice at a position of the table by its `off_mode`. */
  stop(at: number, events: PlayEvent[]): void {
    this.stopBy(at, this.#mannerOf(this.#voices.region[at]), events);
  }

  /** Ends the voice at a position of the table in a manner of one's own. */
  stopBy(at: number, how: StopManner, events: PlayEvent[]): void {
    events.push({ kind: 'stop', voice: this.#voices.voice[at], how });
    this.#voices.removeAt(at);
  }

  #mannerOf(region: number): StopManner {
    switch (this.#playable.offMode[region]) {
      case OffMode.normal:
        return 'normal';
      case OffMode.time:
        return { seconds: this.#playable.offTimeSeconds[region] };
      default:
        return 'fast';
    }
  }
}
