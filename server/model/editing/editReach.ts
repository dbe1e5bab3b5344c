import { effectiveValues } from '../effectiveValues';
import type { TextEdit } from '../finding';
import { HeaderKind } from '../headerKinds';
import type { Instrument } from '../instrument';
import type { Notation } from '../notation';
import { editedText } from './changedInstrument';

/** What an edit may change of regions: nothing, their order, or what stands in the text that it touches. */
export type Keeps = 'all' | 'all but order' | 'what it does not touch';

/**
 * Whether edits keep what regions sound like, found by reading the edited text again. `newFiles` are texts by path that
 * come with the edits. Takes a few passes over the text.
 */
export function keepsRegions(
  notation: Pick<Notation, 'read' | 'parameters'>,
  read: Instrument,
  edits: readonly TextEdit[],
  keeps: Keeps,
  newFiles: Readonly<Record<string, string>> = {},
): boolean {
  // What a notation of its own forms makes of a value can take what is known of samples, so it is read anew for both.
  const instrument = notation.parameters ? readChanged(notation, read, [], {}) : read;
  const inOrder = new EditsInOrder(edits);
  if (inOrder.overlap) return false;
  const after = readChanged(notation, instrument, edits, newFiles);
  const now = Array.from(after.regions, (region) => valuesText(after, region));
  const touched = keeps === 'what it does not touch' ? touchedHeaders(instrument, inOrder) : undefined;
  const left = [...instrument.regions].filter(
    (region) => !(touched && isTakenOut(instrument, region, inOrder)),
  );
  if (now.length !== left.length) return false;
  const before = left.map((region) => valuesText(instrument, region));
  if (keeps === 'all but order') {
    now.sort();
    before.sort();
  }
  return before.every((values, at) => values === now[at] || touched?.[left[at]] === 1);
}

function readChanged(
  notation: Pick<Notation, 'read' | 'parameters'>,
  { sources }: Instrument,
  edits: readonly TextEdit[],
  newFiles: Readonly<Record<string, string>>,
): Instrument {
  const texts = new Map<string, string>(Object.entries(newFiles));
  for (const [source, { path, text }] of sources.entries()) {
    const own = edits.filter((edit) => edit.source === source);
    if (own.length > 0 || !texts.has(path)) texts.set(path, editedText(text, own));
  }
  const path = sources[0]?.path ?? '';
  return notation.read(texts.get(path) ?? '', {
    path,
    include: (included) => {
      const text = texts.get(included);
      return text === undefined ? { kind: 'missing' } : { kind: 'text', text };
    },
  });
}

function valuesText(instrument: Instrument, region: number): string {
  return JSON.stringify(
    Object.entries(effectiveValues(instrument, region)).sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

/** By header 1 where its tag or a parameter, or those of one that it inherits from, is in the text that edits touch. */
function touchedHeaders(instrument: Instrument, edits: EditsInOrder): Uint8Array {
  const { count } = instrument.headers;
  const touched = new Uint8Array(count);
  for (let header = 0; header < count; header++) {
    const parent = instrument.parent(header);
    touched[header] = touched[parent] === 1 || isTouched(instrument, header, edits) ? 1 : 0;
    // What stands under a control header counts for all that follows.
    if (touched[header] === 1 && instrument.kind(header) === HeaderKind.control) return touched.fill(1);
  }
  return touched;
}

function isTouched(instrument: Instrument, header: number, edits: EditsInOrder): boolean {
  const tag = instrument.headerSpan(header);
  const last = instrument.endParameter(header) - 1;
  const body = last >= instrument.firstParameter(header) ? instrument.parameterSpan(last) : tag;
  const end = body.source === tag.source ? Math.max(tag.end, body.end) : tag.end;
  // What is put behind the quote that a value ends with is about it too.
  const text = instrument.sources[tag.source]?.text ?? '';
  let after = end;
  while (/\s/.test(text[after] ?? '')) after++;
  const reach = /["']/.test(text[after] ?? '') ? after + 1 : end;
  return edits.within(tag.source, tag.start, reach).length > 0;
}

function isTakenOut(instrument: Instrument, header: number, edits: EditsInOrder): boolean {
  const { source, start, end } = instrument.headerSpan(header);
  return edits
    .within(source, start, end)
    .some((edit) => edit.start <= start && edit.end >= end && edit.newText === '');
}

/** Edits by file and place. */
class EditsInOrder {
  readonly #ofSource = new Map<number, TextEdit[]>();
  /** Whether two of them touch the same text, so that nobody can make both. */
  readonly overlap: boolean;

  constructor(edits: readonly TextEdit[]) {
    for (const edit of [...edits].sort((a, b) => a.start - b.start || a.end - b.end)) {
      const list = this.#ofSource.get(edit.source);
      if (list) list.push(edit);
      else this.#ofSource.set(edit.source, [edit]);
    }
    this.overlap = [...this.#ofSource.values()].some((list) =>
      list.some((edit, at) => at > 0 && edit.start < list[at - 1].end),
    );
  }

  /** Those that touch a stretch of a file, its two ends included. */
  within(source: number, start: number, end: number): TextEdit[] {
    const list = this.#ofSource.get(source) ?? [];
    let low = 0;
    let high = list.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (list[middle].end < start) low = middle + 1;
      else high = middle;
    }
    let after = low;
    while (after < list.length && list[after].start <= end) after++;
    return list.slice(low, after);
  }
}
