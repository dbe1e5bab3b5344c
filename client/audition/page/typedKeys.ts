/**
 * The computer's keyboard as two rows of piano keys, by the places of keys (UI Events KeyboardEvent code values), so that it
 * is the same in every layout: semitones above the lowest one.
 */
const rows = [
  ['KeyZ', 'KeyS', 'KeyX', 'KeyD', 'KeyC', 'KeyV', 'KeyG', 'KeyB', 'KeyH', 'KeyN', 'KeyJ', 'KeyM'],
  ['KeyQ', 'Digit2', 'KeyW', 'Digit3', 'KeyE', 'KeyR', 'Digit5', 'KeyT', 'Digit6', 'KeyY', 'Digit7', 'KeyU'],
];
const furtherLow = ['Comma', 'KeyL', 'Period', 'Semicolon', 'Slash'];
const furtherHigh = ['KeyI', 'Digit9', 'KeyO', 'Digit0', 'KeyP'];

const semitones = new Map<string, number>();
for (const [row, further] of [
  [0, furtherLow],
  [1, furtherHigh],
] as const) {
  for (const [at, code] of [...rows[row], ...further].entries()) semitones.set(code, 12 * row + at);
}

const lowestStart = 0;
const highestStart = 108;

/** What typing plays: the key that the lower row begins with, and how hard. */
export class TypedKeys {
  /** MIDI key number of the C that the lower row begins with. */
  start = 48;
  /** 1..127. */
  velocity = 96;
  readonly #down = new Map<string, number>();

  /** The MIDI key that a key of the computer begins to play; `undefined` for another one or one that is down. */
  press(code: string): number | undefined {
    const semitone = semitones.get(code);
    if (semitone === undefined || this.#down.has(code)) return undefined;
    const key = this.start + semitone;
    if (key > 127) return undefined;
    this.#down.set(code, key);
    return key;
  }

  /** The MIDI key that a key of the computer has played. */
  release(code: string): number | undefined {
    const key = this.#down.get(code);
    this.#down.delete(code);
    return key;
  }

  /** All MIDI keys that are down, which are then forgotten. */
  releaseAll(): number[] {
    const keys = [...this.#down.values()];
    this.#down.clear();
    return keys;
  }

  /** Moves by what a key of the computer stands for: octaves by Page Up and Page Down, velocity by the arrows. */
  adjust(code: string): boolean {
    const { start, velocity } = this;
    if (code === 'PageUp') this.start = Math.min(highestStart, start + 12);
    else if (code === 'PageDown') this.start = Math.max(lowestStart, start - 12);
    else if (code === 'ArrowUp') this.velocity = Math.min(127, velocity + 8);
    else if (code === 'ArrowDown') this.velocity = Math.max(1, velocity - 8);
    else return false;
    return true;
  }
}
