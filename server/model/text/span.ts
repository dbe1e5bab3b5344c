declare const madeWithSource: unique symbol;

/**
 * A stretch of text: `source` is the position of the file in `Instrument.sources`, `start` and `end` are UTF-16 offsets in
 * that file. An offset means nothing without its file, so a span cannot be put together from bare numbers: it comes from an
 * instrument, from other spans, or from {@link spanIn} and {@link mainSpan}, which ask for the file.
 */
export interface Span {
  readonly [madeWithSource]: true;
  source: number;
  start: number;
  end: number;
}

/** Something with a span while it is not said yet which file it stands in. */
export type InSomeFile<Spanned extends Span> = Omit<Spanned, 'source' | typeof madeWithSource>;

/** A stretch of the file at a position of `Instrument.sources`. */
export function spanIn(source: number, start: number, end: number): Span {
  return { source, start, end } as Span;
}

/** A stretch of the main file, which is the first source of an instrument. */
export function mainSpan(start: number, end: number): Span {
  return spanIn(0, start, end);
}

/** Says which file something stands in whose offsets were read there. */
export function standingIn<Spanned extends Span>(source: number, what: InSomeFile<Spanned>): Spanned {
  return { ...what, source } as unknown as Spanned;
}

/** The empty stretch before a span. */
export function startOf({ source, start }: Span): Span {
  return spanIn(source, start, start);
}

/** The empty stretch behind a span. */
export function endOf({ source, end }: Span): Span {
  return spanIn(source, end, end);
}

/**
 * From the start of one span to the end of another with all that stands between them; `undefined` where they stand in two
 * files or the second does not end behind the start of the first, so that there is no such stretch.
 */
export function spanOver(first: Span, last: Span): Span | undefined {
  if (first.source !== last.source || last.end < first.start) return undefined;
  return spanIn(first.source, first.start, last.end);
}

/** The stretch behind one span and before another; `undefined` where there is none. */
export function spanBetween(before: Span, behind: Span): Span | undefined {
  return spanOver(endOf(before), startOf(behind));
}
