/** Frames of input that are gathered at once where they do not lie one behind the other; all voices share them. */
export const inputFrames = 16384;

/** Frames of a window, and how many windows there are. */
export const windowFrames = 1024;
const windows = 512;

/** Frames of the input with the windows behind it. */
export const inputWithWindows = inputFrames + windows * windowFrames;

/** Frames as played that were gathered ahead for one voice, so that a block after it finds them there. */
export class InputWindow {
  /** The first of them, and the one behind the last. */
  first = 0;
  end = 0;
  /** Where they stand in the input of the kernel. */
  place = inputFrames;

  /** Forgets what was gathered. */
  clear(): void {
    this.end = this.first;
  }
}

/** The places of windows behind what all voices share of the input; who needs one takes the place that was taken longest ago. */
export class InputWindows {
  readonly #owners: (InputWindow | undefined)[] = new Array<InputWindow | undefined>(windows).fill(undefined);
  #next = 0;

  /** Gives a window a place, unless it has one that nobody took since. */
  claim(window: InputWindow): void {
    const own = (window.place - inputFrames) / windowFrames;
    if (this.#owners[own] === window) return;
    this.#owners[this.#next]?.clear();
    this.#owners[this.#next] = window;
    window.place = inputFrames + this.#next * windowFrames;
    this.#next = (this.#next + 1) % windows;
  }
}
