/** The words that lists of words share: those at their starts and ends, or at any place where all are equally long. */
export class SharedWords {
  #first: readonly string[] | undefined;
  #isEven = true;
  /** How many words are the same at the start and at the end of all lists so far. */
  #start = 0;
  #end = 0;
  #same: boolean[] = [];

  add(words: readonly string[]): void {
    if (!this.#first) {
      this.#first = words;
      this.#start = words.length;
      this.#end = words.length;
      this.#same = words.map(() => true);
      return;
    }
    const first = this.#first;
    this.#isEven &&= words.length === first.length;
    if (this.#isEven)
      for (let at = 0; at < first.length; at++) this.#same[at] &&= isSameWord(words[at], first[at]);
    this.#start = Math.min(this.#start, words.length);
    for (let at = 0; at < this.#start; at++) if (!isSameWord(words[at], first[at])) this.#start = at;
    this.#end = Math.min(this.#end, words.length - this.#start);
    for (let at = 1; at <= this.#end; at++) if (!isSameWord(words.at(-at), first.at(-at))) this.#end = at - 1;
  }

  get words(): string[] {
    const first = this.#first ?? [];
    if (this.#isEven) return first.filter((_, at) => this.#same[at]);
    return first.filter((_, at) => at < this.#start || at >= first.length - this.#end);
  }
}

/** Whether two words are the same but for letter case. */
export function isSameWord(one: string | undefined, other: string | undefined): boolean {
  return one === other || one?.toLowerCase() === other?.toLowerCase();
}

/**
 * The words of the name of a sample (common practice): parted by spaces, `_`, `-` and `.`, by a capital after a small letter, and
 * between a word of three letters or more and a number. `v1`, `rr2` and note names stay whole.
 */
export function wordsOfName(name: string): string[] {
  return name
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{L}{3})(\d)/gu, '$1 $2')
    .split(/[\s_.-]+/)
    .filter((word) => word !== '');
}
