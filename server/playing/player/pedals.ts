import type { PlayableInstrument } from '../playable/playableInstrument';
import { HeldNotes } from './heldNotes';

/** The pedals of a player: which notes each pedal setting of the instrument holds after their keys are up. */
export class Pedals {
  readonly #playable: PlayableInstrument;
  readonly #controllers: Float64Array;
  /** By pedal setting: notes that wait for the pedal. */
  readonly held: readonly HeldNotes[];
  /** By pedal setting and key: the note that the sostenuto pedal has caught, or −1. */
  readonly #caught: Int32Array;

  constructor(playable: PlayableInstrument, controllers: Float64Array) {
    this.#playable = playable;
    this.#controllers = controllers;
    this.held = playable.pedals.map(() => new HeldNotes());
    this.#caught = new Int32Array(playable.pedals.length * 128).fill(-1);
  }

  /** Whether a pedal setting holds a note whose key is up. */
  holds(pedal: number, key: number, note: number): boolean {
    const { sustainController, sustainFrom } = this.#playable.pedals[pedal];
    return this.#controllers[sustainController] >= sustainFrom || this.#caught[pedal * 128 + key] === note;
  }

  /**
   * Takes in that a controller has moved: the sostenuto pedal catches the notes of the keys that are down as it goes down, and
   * lets them go as it comes up. `noteOfKey` has the note of each key.
   */
  move(controller: number, before: number, after: number, keysDown: Uint8Array, noteOfKey: Int32Array): void {
    const { pedals } = this.#playable;
    for (let pedal = 0; pedal < pedals.length; pedal++) {
      const { sostenutoController, sostenutoFrom } = pedals[pedal];
      if (sostenutoController !== controller) continue;
      if (before >= sostenutoFrom === after >= sostenutoFrom) continue;
      for (let key = 0; key < 128; key++) {
        const isCaught = after >= sostenutoFrom && keysDown[key] === 1;
        this.#caught[pedal * 128 + key] = isCaught ? noteOfKey[key] : -1;
      }
    }
  }

  /** Forgets all notes. */
  clear(): void {
    for (const notes of this.held) notes.count = 0;
    this.#caught.fill(-1);
  }
}
