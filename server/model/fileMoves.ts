/** A file or folder that goes to another path; both absolute with `/`. */
export interface FileMove {
  from: string;
  to: string;
}

/** Where things are after some moves. */
export class FileMoves {
  readonly #moves: readonly FileMove[];

  constructor(moves: readonly FileMove[]) {
    // The innermost of moved folders within one another counts.
    this.#moves = [...moves].sort((a, b) => b.from.length - a.from.length);
  }

  /** The path of a file or folder after the moves. */
  after(path: string): string {
    for (const { from, to } of this.#moves) {
      if (path === from) return to;
      if (path.startsWith(`${from}/`)) return to + path.slice(from.length);
    }
    return path;
  }

  /** Whether a path would be moved if letter case did not count, yet is not as it is written. */
  isNearlyMoved(path: string): boolean {
    const lower = path.toLowerCase();
    return this.#moves.some(({ from }) => {
      const other = from.toLowerCase();
      return (
        (lower === other || lower.startsWith(`${other}/`)) && path !== from && !path.startsWith(`${from}/`)
      );
    });
  }
}
