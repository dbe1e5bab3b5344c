import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { Stretch } from '../model/text/stretch';
import type { ReadDocument } from './readDocument';
import { mainSource } from './readDocument';

/**
 * What can be selected around an offset, the smallest first, each inside the next: a variable, its value, the opcode, the
 * region, its group, master and global with all that is in them, the file.
 */
export function selectionsAt(document: ReadDocument, offset: number): Stretch[] {
  const { instrument, notation } = document;
  const { text } = mainSource(document);
  const around: Stretch[] = [];
  const place = notation.placeAt(instrument, offset);
  if (place.kind !== 'other' && place.end > place.start) around.push({ start: place.start, end: place.end });
  const directive = instrument.directives.find(
    (one) => one.source === 0 && one.start <= offset && offset <= one.end,
  );
  if (directive) around.push({ start: directive.start, end: directive.end });
  const parameter = directive ? -1 : instrument.parameterAt(0, offset);
  if (parameter >= 0) {
    const value = instrument.valueSpan(parameter);
    const quoted = withQuotes(text, value);
    if (offset >= value.start && offset <= value.end) around.push(value, quoted);
    around.push({ start: instrument.nameSpan(parameter).start, end: quoted.end });
  }
  for (let header = instrument.headerAt(0, offset); header >= 0; header = outerOf(instrument, header)) {
    around.push(instrument.headerSpan(header), instrument.bodySpan(header), wholeOf(instrument, header));
  }
  around.push({ start: 0, end: text.length });
  return nested(around, offset);
}

/** The header around one; behind the last region of a group, that of what was asked about can be another's. */
function outerOf(instrument: Instrument, header: number): number {
  let at = instrument.parent(header);
  while (at >= 0 && instrument.headerSource(at) !== 0) at = instrument.parent(at);
  return at;
}

/** A header with the headers that inherit from it, as far as they stand in the document itself. */
function wholeOf(instrument: Instrument, header: number): Stretch {
  const { start, end } = instrument.bodySpan(header);
  const kind = instrument.kind(header);
  let last = end;
  if (kind >= HeaderKind.global && kind <= HeaderKind.group) {
    for (let inner = header + 1; inner < instrument.headers.count; inner++) {
      const innerKind = instrument.kind(inner);
      if (innerKind >= HeaderKind.global && innerKind <= kind) break;
      if (innerKind > HeaderKind.region || instrument.headerSource(inner) !== 0) continue;
      last = Math.max(last, instrument.bodySpan(inner).end);
    }
  }
  return { start, end: last };
}

/** A value with the quotes around it, where it has any. */
function withQuotes(text: string, { start, end }: Stretch): Stretch {
  const quote = text[start - 1];
  return (quote === '"' || quote === "'") && text[end] === quote
    ? { start: start - 1, end: end + 1 }
    : { start, end };
}

/** Those that hold the offset, each larger than the one before and around it. */
function nested(stretches: readonly Stretch[], offset: number): Stretch[] {
  const chain: Stretch[] = [];
  const holding = stretches
    .filter(({ start, end }) => start <= offset && offset <= end)
    .sort((a, b) => a.end - a.start - (b.end - b.start));
  for (const { start, end } of holding) {
    const last = chain[chain.length - 1];
    if (last && (start > last.start || end < last.end || (start === last.start && end === last.end)))
      continue;
    chain.push({ start, end });
  }
  return chain;
}
