import type { AuditionStrip } from '../../audition/page/auditionStrip';
import type { Plot } from './plot/plot';

/** Plays notes while sound is on: on a shape as hard as the place is high, on the keyboard at a middle velocity. */
export class PointerNotes {
  readonly #audition: AuditionStrip;
  readonly #plot: () => Plot | undefined;
  /** The key that the pointer holds down. */
  #held: number | undefined;

  constructor(audition: AuditionStrip, plot: () => Plot | undefined) {
    this.#audition = audition;
    this.#plot = plot;
  }

  press(event: PointerEvent): void {
    const place = this.#audition.isOn ? this.#plot()?.noteAt(event) : undefined;
    if (!place) return;
    this.release();
    this.#held = place.key;
    this.#audition.press(place.key, place.velocity);
  }

  release(): void {
    if (this.#held !== undefined) this.#audition.release(this.#held);
    this.#held = undefined;
  }

  /** Says what would sound where the pointer is. */
  look(event: PointerEvent): void {
    const place = this.#audition.isOn ? this.#plot()?.noteAt(event) : undefined;
    if (place) this.#audition.look(place.key, place.velocity);
  }
}
