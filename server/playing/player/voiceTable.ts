import { grownTo } from './growing';

/** The voices that sound, oldest first, in flat buffers with an entry a voice. */
export class VoiceTable {
  count = 0;
  voice = new Int32Array(64);
  region = new Int32Array(64);
  key = new Int16Array(64);
  velocity = new Float64Array(64);
  /** The number of what triggered it; the layers of a note share it. */
  note = new Int32Array(64);
  /** When its sample starts, `delay` included. */
  startSeconds = new Float64Array(64);
  /** 1 while letting its note go would end it. */
  endsWithNote = new Uint8Array(64);

  /** Adds a voice behind all others. */
  add(
    voice: number,
    region: number,
    key: number,
    velocity: number,
    note: number,
    startSeconds: number,
    endsWithNote: number,
  ): void {
    const at = this.count++;
    if (at === this.voice.length) this.#grow();
    this.voice[at] = voice;
    this.region[at] = region;
    this.key[at] = key;
    this.velocity[at] = velocity;
    this.note[at] = note;
    this.startSeconds[at] = startSeconds;
    this.endsWithNote[at] = endsWithNote;
  }

  /** Takes out the voice at a position; those behind it move up. */
  removeAt(at: number): void {
    const { count } = this;
    this.voice.copyWithin(at, at + 1, count);
    this.region.copyWithin(at, at + 1, count);
    this.key.copyWithin(at, at + 1, count);
    this.velocity.copyWithin(at, at + 1, count);
    this.note.copyWithin(at, at + 1, count);
    this.startSeconds.copyWithin(at, at + 1, count);
    this.endsWithNote.copyWithin(at, at + 1, count);
    this.count--;
  }

  /** The position of a voice, or −1. Voices rise from the oldest to the newest. */
  positionOf(voice: number): number {
    let low = 0;
    let high = this.count - 1;
    while (low <= high) {
      const middle = (low + high) >> 1;
      const found = this.voice[middle];
      if (found === voice) return middle;
      if (found < voice) low = middle + 1;
      else high = middle - 1;
    }
    return -1;
  }

  #grow(): void {
    const size = this.count * 2;
    this.voice = grownTo(size, this.voice, Int32Array);
    this.region = grownTo(size, this.region, Int32Array);
    this.key = grownTo(size, this.key, Int16Array);
    this.velocity = grownTo(size, this.velocity, Float64Array);
    this.note = grownTo(size, this.note, Int32Array);
    this.startSeconds = grownTo(size, this.startSeconds, Float64Array);
    this.endsWithNote = grownTo(size, this.endsWithNote, Uint8Array);
  }
}
