import type { Message } from '../../server/playing/player/playMessage';

const firstStatus = 0x80;
const firstSystem = 0xf0;
const firstRealTime = 0xf8;
/** How hard a key is let go where the keyboard does not say (MIDI 1.0, table II and the text on note-off). */
const usualReleaseVelocity = 64;
/** A bend wheel at rest, of 14 bits. */
const bendCentre = 8192;
/** Data bytes of channel messages, by the four high bits of their status from 8 on (MIDI 1.0 Detailed Specification 4.2, table II). */
const dataBytes = [2, 2, 2, 2, 1, 1, 2] as const;

/**
 * Reads what a keyboard sends, byte by byte (MIDI 1.0 Detailed Specification 4.2, "Data format" and tables I to VI): channel
 * messages of all channels as one. Running status holds over messages; a byte of real time may stand anywhere; system
 * messages end running status, and they and their data are passed over. Data that belongs to nothing is ignored.
 */
export class MidiBytes {
  /** The status that data belongs to; 0 for none. */
  #status = 0;
  #first = -1;

  /** Takes the next bytes; the messages that are whole with them. */
  take(bytes: Iterable<number>): Message[] {
    const messages: Message[] = [];
    for (const byte of bytes) {
      if (byte >= firstRealTime) continue;
      if (byte >= firstStatus) {
        this.#status = byte < firstSystem ? byte : 0;
        this.#first = -1;
      } else if (this.#status !== 0) this.#takeData(byte, messages);
    }
    return messages;
  }

  #takeData(byte: number, messages: Message[]): void {
    const kind = this.#status >> 4;
    if (dataBytes[kind - 8] === 2 && this.#first < 0) {
      this.#first = byte;
      return;
    }
    messages.push(messageOf(kind, this.#first < 0 ? byte : this.#first, byte));
    this.#first = -1;
  }
}

function messageOf(kind: number, first: number, second: number): Message {
  switch (kind) {
    case 0x8:
      return { kind: 'noteOff', key: first, velocity: second };
    case 0x9:
      return second === 0
        ? { kind: 'noteOff', key: first, velocity: usualReleaseVelocity }
        : { kind: 'noteOn', key: first, velocity: second };
    case 0xa:
      return { kind: 'polyPressure', key: first, value: second };
    case 0xb:
      return { kind: 'controller', number: first, value: second };
    case 0xc:
      return { kind: 'program', number: first };
    case 0xd:
      return { kind: 'channelPressure', value: first };
    default:
      return { kind: 'bend', value: first + 128 * second - bendCentre };
  }
}
