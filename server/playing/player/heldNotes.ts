import { grownTo } from './growing';

/** Notes whose keys are up while a pedal holds them, in the order in which the keys were let go. */
export class HeldNotes {
  count = 0;
  key = new Int16Array(16);
  velocity = new Float64Array(16);
  note = new Int32Array(16);
  /** When the note was struck. */
  startSeconds = new Float64Array(16);
  /** 1 where the note started a voice. */
  hasStarted = new Uint8Array(16);

  /** Adds a note behind all others. */
  add(key: number, velocity: number, note: number, startSeconds: number, hasStarted: number): void {
    const at = this.count++;
    if (at === this.key.length) {
      const size = at * 2;
      this.key = grownTo(size, this.key, Int16Array);
      this.velocity = grownTo(size, this.velocity, Float64Array);
      this.note = grownTo(size, this.note, Int32Array);
      this.startSeconds = grownTo(size, this.startSeconds, Float64Array);
      this.hasStarted = grownTo(size, this.hasStarted, Uint8Array);
    }
    this.key[at] = key;
    this.velocity[at] = velocity;
    this.note[at] = note;
    this.startSeconds[at] = startSeconds;
    this.hasStarted[at] = hasStarted;
  }

  /** Takes out the note at a position; those behind it move up. */
  removeAt(at: number): void {
    const { count } = this;
    this.key.copyWithin(at, at + 1, count);
    this.velocity.copyWithin(at, at + 1, count);
    this.note.copyWithin(at, at + 1, count);
    this.startSeconds.copyWithin(at, at + 1, count);
    this.hasStarted.copyWithin(at, at + 1, count);
    this.count--;
  }
}
