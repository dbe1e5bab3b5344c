import { byCount } from '../../model/wording/counted';

/** Most different sentences that are kept; a file of nonsense would give thousands. */
const mostProblems = 100;

/** Collects sentences, each told once with how often it holds. */
export class Problems {
  readonly #counts = new Map<string, number>();

  /** Notes a sentence, again where it was noted before. */
  add(sentence: string): void {
    const count = this.#counts.get(sentence);
    if (count !== undefined || this.#counts.size < mostProblems) this.#counts.set(sentence, (count ?? 0) + 1);
  }

  /** The sentences in the order in which they were first noted. */
  list(): string[] {
    return [...this.#counts].map(([sentence, count]) =>
      byCount(count, sentence, `${sentence} The same holds in ${count} places.`),
    );
  }
}
