import type { ConversionNote, NoteKind } from '../model/notes';
import type { Source } from '../model/text/source';
import { mainSpan } from '../model/text/span';
import { counted } from '../model/wording/counted';

/** Of notes that say the same of many rows, so many are listed one by one. */
const mostAlike = 100;

/** Collects notes on a table; those that would say the same thousands of times end with a count. */
export class TableNotes {
  /** The row that the next notes are about; see {@link sortByRow}. */
  row = -1;
  readonly #notes: ConversionNote[] = [];
  /** The row of each note. */
  readonly #rows: number[] = [];
  readonly #alike = new Map<string, { count: number; last: ConversionNote }>();

  /** `rows` are the stretches of a table's rows where they say more than lines, as in HTML. */
  constructor(
    readonly source: Source,
    readonly rows?: readonly { start: number; end: number }[],
  ) {}

  /** `alike` names what notes of the same sort have in common. */
  add(kind: NoteKind, span: { start: number; end: number }, message: string, alike?: string): void {
    // Several zones of one row may say the same of a cell that they share.
    const before = this.#notes.at(-1);
    const isSaid = before?.message === message && before.start === span.start && before.kind === kind;
    if (isSaid && this.row >= 0 && this.#rows.at(-1) === this.row) return;
    const note: ConversionNote = { kind, ...mainSpan(span.start, span.end), message };
    if (alike !== undefined) {
      const said = this.#alike.get(alike);
      const count = (said?.count ?? 0) + 1;
      this.#alike.set(alike, { count, last: count <= mostAlike ? note : (said?.last ?? note) });
      if (count > mostAlike) return;
    }
    this.#notes.push(note);
    this.#rows.push(this.row);
  }

  /** The number of notes so far. */
  get count(): number {
    return this.#notes.length;
  }

  /** Puts the notes from number `first` on in the order of their rows; those of one row stay as they are. */
  sortByRow(first: number): void {
    const order = Array.from({ length: this.#notes.length - first }, (_, at) => first + at);
    order.sort((a, b) => this.#rows[a] - this.#rows[b]);
    const sorted = order.map((at) => this.#notes[at]);
    for (const [at, note] of sorted.entries()) this.#notes[first + at] = note;
    this.row = -1;
  }

  /** Where an offset stands, for people: `Line 3`, or `Row 3` of a table in HTML. */
  place(offset: number): string {
    if (!this.rows) return `Line ${this.source.positionAt(offset).line}`;
    let row = 0;
    let beyond = this.rows.length;
    while (beyond - row > 1) {
      const middle = (row + beyond) >> 1;
      if ((this.rows[middle]?.start ?? 0) <= offset) row = middle;
      else beyond = middle;
    }
    return `Row ${row + 1}`;
  }

  finish(): ConversionNote[] {
    for (const { count, last } of this.#alike.values()) {
      if (count > mostAlike)
        last.message += ` (The same holds for ${counted(count - mostAlike, 'more place')}.)`;
    }
    return this.#notes;
  }
}
