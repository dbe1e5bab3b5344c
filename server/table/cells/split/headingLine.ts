import { readHeading } from '../../../trade/headings/headings';
import type { Word } from './lineWords';
import { isBlankLine, longestLine, wordsIn } from './lineWords';

const mostWords = 40;

/** The best way to part the words before a place: how many headings are known, and where the last one starts. */
interface Best {
  score: number;
  from: number;
}

/** A line of words that is parted into headings, any of which may have more than one word. */
export class HeadingLine {
  readonly #text: string;
  readonly #line: Word;
  readonly #all: readonly Word[];
  /** Signs among headings, as in `# file = keys`, are none. */
  readonly #telling: readonly Word[];
  /** The ways to part the telling words, by the number of headings and by the words that they take. */
  readonly #best: Best[][] = [[{ score: 0, from: 0 }]];
  readonly #worths: (number | undefined)[] = [];

  constructor(text: string, line: Word) {
    this.#text = text;
    this.#line = line;
    this.#all = wordsIn(text, line.start, Math.min(line.end, line.start + longestLine)).slice(0, mostWords);
    this.#telling = this.#all.filter((one) => !isBlankLine(text, one));
  }

  /** Parts the line into so many headings that most of them are known; into fewer where it has fewer words. */
  into(width: number): readonly Word[] {
    const { start } = this.#line;
    const words = this.#all.length > width ? this.#telling : this.#all;
    // Nothing stands above the numbers of the rows.
    if (words.length === width - 1) return [{ start, end: start }, ...words];
    if (words.length <= width) return words;
    while (this.#best.length <= width) this.#best.push(this.#partedOnce());
    const headings: Word[] = [];
    let to = words.length;
    for (let parts = width; parts > 0; parts--) {
      const from = this.#best[parts]?.[to]?.from ?? 0;
      headings.unshift({ start: words[from]?.start ?? start, end: words[to - 1]?.end ?? start });
      to = from;
    }
    return headings;
  }

  /** The best ways to have one heading more than so far. */
  #partedOnce(): Best[] {
    const parts = this.#best.length;
    const before = this.#best[parts - 1];
    const row: Best[] = [];
    for (let to = parts; to <= this.#telling.length; to++) {
      for (let from = parts - 1; from < to; from++) {
        const first = before?.[from];
        if (!first) continue;
        const score = first.score + this.#worth(from, to);
        if (score > (row[to]?.score ?? Number.NEGATIVE_INFINITY)) row[to] = { score, from };
      }
    }
    return row;
  }

  /** What a stretch of words is worth as a heading; words that stand further apart seldom are one. */
  #worth(from: number, to: number): number {
    const place = from * (mostWords + 1) + to;
    const known = this.#worths[place];
    if (known !== undefined) return known;
    const span = this.#text.slice(this.#telling[from]?.start, this.#telling[to - 1]?.end);
    const worth = (readHeading(span) ? 1 : 0) - (/[ \t\u00a0]{2}/.test(span) ? 1 : 0);
    this.#worths[place] = worth;
    return worth;
  }
}

const fewestHeadings = 4;

/** The headings of a line all of whose parts but the first are known; `undefined` for any other line. */
export function knownHeadings(text: string, line: Word): readonly Word[] | undefined {
  const { length } = wordsIn(text, line.start, Math.min(line.end, line.start + longestLine));
  if (length < fewestHeadings || length > mostWords) return undefined;
  const isKnown = ({ start, end }: Word) => readHeading(text.slice(start, end)) !== undefined;
  const headings = new HeadingLine(text, line);
  for (let count = length; count >= fewestHeadings; count--) {
    const parts = headings.into(count);
    if (parts.length === count && parts.slice(1).every(isKnown)) return parts;
  }
  return undefined;
}
