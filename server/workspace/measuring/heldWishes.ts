import type { MeasuredFile, Wish } from './measuredFile';

/** What owners still wish for. */
export class HeldWishes {
  /** The one who asked last stands last. */
  readonly #held = new Map<unknown, Set<Wish>>();

  /** Sets what an owner wishes for, in the place of what that owner wished for before. */
  set(owner: unknown, wishes: Set<Wish>): void {
    this.#held.delete(owner);
    this.#held.set(owner, wishes);
  }

  drop(owner: unknown): void {
    this.#held.delete(owner);
  }

  get owners(): unknown[] {
    return [...this.#held.keys()];
  }

  /** How much an owner wishes for. */
  count(owner: unknown): number {
    return this.#held.get(owner)?.size ?? 0;
  }

  get isEmpty(): boolean {
    for (const wishes of this.#held.values()) if (wishes.size > 0) return false;
    return true;
  }

  has(wish: Wish): boolean {
    for (const wishes of this.#held.values()) if (wishes.has(wish)) return true;
    return false;
  }

  /** The files that something is wished of. */
  get files(): Set<MeasuredFile> {
    const files = new Set<MeasuredFile>();
    for (const wishes of this.#held.values()) for (const { file } of wishes) files.add(file);
    return files;
  }

  /** All wishes of one file that nobody is at, by the order of those who asked; they count as running then. */
  take(oldestFirst: boolean): Wish[] {
    const held = [...this.#held.values()];
    for (const wishes of oldestFirst ? held : held.reverse()) {
      for (const { file, isRunning } of wishes) {
        if (isRunning) continue;
        const taken = [...file.wishes.values()].filter((wish) => !wish.isRunning && this.has(wish));
        for (const wish of taken) wish.isRunning = true;
        return taken;
      }
    }
    return [];
  }

  /** Takes a wish that was fulfilled from all who had it; answers them. */
  fulfil(wish: Wish): unknown[] {
    const owners: unknown[] = [];
    for (const [owner, wishes] of this.#held) if (wishes.delete(wish)) owners.push(owner);
    return owners;
  }
}
