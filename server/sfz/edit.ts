import { puttingBehind, replacing } from '../model/editing/edits';
import { sharedTextRefusal } from '../model/editing/sharedText';
import type { TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Directive } from '../model/instrumentParts';
import type { Change, Edited } from '../model/notation';
import type { Steps } from '../model/steps';
import { finish } from '../model/steps';
import type { Span } from '../model/text/span';
import { spanIn, spanOver } from '../model/text/span';
import { lineStartAt } from '../model/text/textLayout';
import { lineEndOf, wholeLine } from '../model/text/textLines';
import { insertPlace } from './insertPlace';
import { breakBehindValue } from './lineRest';
import { defineInSfz, groupInSfz, inlineInSfz, moveOutOfSfz, reviseSfz } from './restructure';
import { writeSfzInSteps } from './write';

/** The text edits that make a change in SFZ text, in the style of the text around; see `Notation.edit`. */
export function editSfz(instrument: Instrument, change: Change): Edited {
  const refusal = sharedTextRefusal(instrument, change);
  if (refusal) return refusal;
  switch (change.kind) {
    case 'set':
      return { edits: [setValue(instrument, change.header, change.name, change.value)], notes: [] };
    case 'remove':
      return { edits: [removal(instrument, instrument.parameterSpan(change.parameter))], notes: [] };
    case 'rename':
      return { edits: [replacing(instrument.nameSpan(change.parameter), change.name)], notes: [] };
    case 'removeHeader':
      return {
        edits: headerPieces(instrument, change.header).map((span) => removal(instrument, span)),
        notes: [],
      };
    case 'insert':
      return finish(insertInSfz(instrument, change.offset, change.instrument));
    case 'revise': {
      const { header, remove, add } = change;
      const edits = reviseSfz(instrument, header, remove, add, (span) => removal(instrument, span));
      return { edits, notes: [] };
    }
    case 'define':
      return defineInSfz(instrument, change.name, change.value);
    case 'group':
      return groupInSfz(instrument, change.first, change.last, change.sets);
    case 'moveOut':
      return moveOutOfSfz(instrument, change.first, change.last, change.path);
    case 'inline':
      return inlineInSfz(instrument, change.directive);
  }
}

function textOf(instrument: Instrument, source: number): string {
  return instrument.sources[source]?.text ?? '';
}

function setValue(instrument: Instrument, header: number, name: string, value: string): TextEdit {
  const own = instrument.own(header, instrument.names.canonical(instrument.names.idOf(name)));
  if (own >= 0) return replacing(instrument.valueSpan(own), value);
  const tag = instrument.headerSpan(header);
  const first = instrument.firstParameter(header);
  let last = instrument.endParameter(header) - 1;
  while (last >= first && instrument.parameterSource(last) !== tag.source) last--;
  if (last < first) return puttingBehind(tag, ` ${name}=${value}${breakBehindValue(instrument, tag)}`);
  const span = instrument.parameterSpan(last);
  const { start } = span;
  const text = textOf(instrument, span.source);
  // The new opcode goes on a line of its own where the last one has one.
  const lead = /(^|[\r\n])([ \t]*)$/.exec(text.slice(Math.max(0, start - 200), start));
  const before = lead ? lineEndOf(text) + lead[2] : ' ';
  return puttingBehind(span, `${before}${name}=${value}${breakBehindValue(instrument, span)}`);
}

/**
 * A header with its opcodes without the directives in between, on which others may rely: the stretches of its own file that
 * say nothing else. The header stands in one file.
 */
function headerPieces(instrument: Instrument, header: number): Span[] {
  const body = instrument.bodySpan(header);
  const directives = directivesWithin(instrument, body);
  if (directives.length === 0) return [body];
  const pieces: Span[] = [];
  let piece = instrument.headerSpan(header);
  let next = 0;
  for (let one = instrument.firstParameter(header); one < instrument.endParameter(header); one++) {
    const span = instrument.parameterSpan(one);
    const goesOn = (directives[next]?.start ?? body.end) >= span.start;
    while ((directives[next]?.start ?? body.end) < span.start) next++;
    const joined = goesOn ? spanOver(piece, span) : undefined;
    if (!joined) pieces.push(piece);
    piece = joined ?? span;
  }
  return [...pieces, piece];
}

const directivesInOrder = new WeakMap<Instrument, readonly (readonly Directive[])[]>();

/** The definitions and includes that stand within a stretch, in the order of the text. */
function directivesWithin(instrument: Instrument, { source, start, end }: Span): Directive[] {
  let bySource = directivesInOrder.get(instrument);
  if (!bySource) {
    const lists: Directive[][] = instrument.sources.map(() => []);
    for (const directive of instrument.directives)
      if (directive.kind !== 'comment') lists[directive.source]?.push(directive);
    // What a file says is there again where it is included again.
    for (const list of lists) list.sort((a, b) => a.start - b.start);
    bySource = lists;
    directivesInOrder.set(instrument, bySource);
  }
  const list = bySource[source] ?? [];
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle].start <= start) low = middle + 1;
    else high = middle;
  }
  let after = low;
  while (after < list.length && list[after].start < end) after++;
  return list.slice(low, after);
}

/** Takes a stretch of text out with its line, where nothing else stands there, or with one of the blanks around it. */
function removal(instrument: Instrument, span: Span): TextEdit {
  const text = textOf(instrument, span.source);
  const line = wholeLine(text, span);
  if (line.start !== span.start || line.end !== span.end) return replacing(line, '');
  let { start, end } = span;
  while (start > 0 && /[ \t]/.test(text[start - 1])) start--;
  // Without the blank before it, one behind it must stay between its neighbours.
  if (start === span.start || text[start - 1] === '\n' || text[start - 1] === '\r' || start === 0) {
    start = span.start;
    while (end < text.length && /[ \t]/.test(text[end])) end++;
  }
  const gone = spanIn(span.source, start, end);
  const isFirst = text.slice(lineStartAt(text, start), start).trim() === '';
  return replacing(gone, isFirst ? '' : breakBehindValue(instrument, gone));
}

/** Writes the headers of another instrument at an offset, in the style of the text around; see `Notation.insertInSteps`. */
export function* insertInSfz(instrument: Instrument, wanted: number, inserted: Instrument): Steps<Edited> {
  const text = textOf(instrument, 0);
  const lineEnd = lineEndOf(text);
  const written = yield* writeSfzInSteps(inserted, { lineEnd });
  const at = insertPlace(instrument, wanted, inserted);
  const before = /[^\r\n]*$/.exec(text.slice(0, at.start))?.[0] ?? '';
  const after = /^[^\r\n]*/.exec(text.slice(at.start))?.[0] ?? '';
  let newText = written.text.startsWith(lineEnd) ? written.text.slice(lineEnd.length) : written.text;
  if (before.trim() !== '') newText = lineEnd + newText;
  if (after.trim() === '' && newText.endsWith(lineEnd) && at.start + after.length < text.length)
    newText = newText.slice(0, -lineEnd.length);
  return { edits: [replacing(at, newText)], notes: written.notes };
}
