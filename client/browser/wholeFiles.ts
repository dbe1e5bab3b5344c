/** A file in a certain state. */
export interface FileState {
  /** Its URI. */
  file: string;
  /** Bytes, and the last change in milliseconds since 1970. */
  size: number;
  modified: number;
}

interface Held {
  content: Promise<Uint8Array>;
  bytes: number;
  isRead: boolean;
}

/** Bytes that are held at one time, unless one file alone is larger. */
const mostHeld = 128 * 1024 * 1024;
/** Milliseconds without use after which nothing is held. */
const idleTime = 20_000;

/**
 * Stretches of files from an editor that gives files as a whole only. What was read last is held for a while; a file
 * waits for its turn where there is no room for it.
 */
export class WholeFiles {
  readonly #read: (file: string) => PromiseLike<Uint8Array>;
  readonly #limit: number;
  /** The order of the map is that of their use. */
  readonly #held = new Map<string, Held>();
  #bytes = 0;
  #waiting: (() => void)[] = [];
  #idle: ReturnType<typeof setTimeout> | undefined;

  constructor(read: (file: string) => PromiseLike<Uint8Array>, limit = mostHeld) {
    this.#read = read;
    this.#limit = limit;
  }

  /** Bytes of all that is held or on its way. */
  get bytes(): number {
    return this.#bytes;
  }

  /** A copy of up to `length` bytes from `start`; fewer at the end of the file. Rejects where it cannot be read. */
  async range(state: FileState, start: number, length: number): Promise<Uint8Array> {
    const content = await this.#content(state);
    this.#endWhenIdle();
    return content.slice(start, start + length);
  }

  async #content({ file, size, modified }: FileState): Promise<Uint8Array> {
    const key = `${size} ${modified} ${file}`;
    for (;;) {
      const held = this.#held.get(key);
      if (held) {
        this.#held.delete(key);
        this.#held.set(key, held);
        return held.content;
      }
      this.#makeRoom(size);
      if (this.#held.size === 0 || this.#bytes + size <= this.#limit) return this.#hold(key, file, size);
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    }
  }

  async #hold(key: string, file: string, size: number): Promise<Uint8Array> {
    const held: Held = { content: Promise.resolve(this.#read(file)), bytes: size, isRead: false };
    this.#held.set(key, held);
    this.#bytes += size;
    try {
      const content = await held.content;
      this.#bytes += content.byteLength - held.bytes;
      held.bytes = content.byteLength;
      held.isRead = true;
      return content;
    } catch (error) {
      this.#drop(key, held);
      throw error;
    } finally {
      for (const resolve of this.#waiting.splice(0)) resolve();
    }
  }

  #makeRoom(size: number): void {
    for (const [key, held] of this.#held) {
      if (this.#bytes + size <= this.#limit) return;
      if (held.isRead) this.#drop(key, held);
    }
  }

  #drop(key: string, { bytes }: Held): void {
    this.#held.delete(key);
    this.#bytes -= bytes;
  }

  #endWhenIdle(): void {
    clearTimeout(this.#idle);
    this.#idle = setTimeout(() => {
      for (const [key, held] of this.#held) if (held.isRead) this.#drop(key, held);
    }, idleTime);
  }
}
