import type { TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Change, Edited } from '../model/notation';
import type { Span } from '../model/text/span';
import { lineEndOf, wholeLine } from '../model/text/textLines';
import { defineInSfz, groupInSfz, inlineInSfz, moveOutOfSfz, reviseSfz } from './restructure';
import { writeSfz } from './write';

/** The text edits that make a change in SFZ text, in the style of the text around; see `Notation.edit`. */
export function editSfz(instrument: Instrument, change: Change): Edited {
  switch (change.kind) {
    case 'set':
      return { edits: [setValue(instrument, change.header, change.name, change.value)], notes: [] };
    case 'remove':
      return { edits: [removal(instrument, instrument.parameterSpan(change.parameter))], notes: [] };
    case 'rename':
      return { edits: [{ ...instrument.nameSpan(change.parameter), newText: change.name }], notes: [] };
    case 'removeHeader':
      return { edits: [removal(instrument, instrument.bodySpan(change.header))], notes: [] };
    case 'insert':
      return insert(instrument, change.offset, change.instrument);
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
  if (own >= 0) return { ...instrument.valueSpan(own), newText: value };
  const first = instrument.firstParameter(header);
  const last = instrument.endParameter(header) - 1;
  const tag = instrument.headerSpan(header);
  if (last < first || instrument.parameterSource(last) !== tag.source) {
    return { source: tag.source, start: tag.end, end: tag.end, newText: ` ${name}=${value}` };
  }
  const text = textOf(instrument, tag.source);
  const { start, end } = instrument.parameterSpan(last);
  // The new opcode goes on a line of its own where the last one has one.
  const lead = /(^|[\r\n])([ \t]*)$/.exec(text.slice(Math.max(0, start - 200), start));
  const before = lead ? lineEndOf(text) + lead[2] : ' ';
  return { source: tag.source, start: end, end, newText: `${before}${name}=${value}` };
}

/** Takes a stretch of text out with its line, where nothing else stands there, or with one of the blanks around it. */
function removal(instrument: Instrument, span: Span): TextEdit {
  const text = textOf(instrument, span.source);
  const line = wholeLine(text, span);
  if (line.start !== span.start || line.end !== span.end) return { ...line, newText: '' };
  let { start, end } = span;
  while (start > 0 && /[ \t]/.test(text[start - 1])) start--;
  // Without the blank before it, one behind it must stay between its neighbours.
  if (start === span.start || text[start - 1] === '\n' || text[start - 1] === '\r' || start === 0) {
    start = span.start;
    while (end < text.length && /[ \t]/.test(text[end])) end++;
  }
  return { source: span.source, start, end, newText: '' };
}

function insert(instrument: Instrument, offset: number, inserted: Instrument): Edited {
  const text = textOf(instrument, 0);
  const lineEnd = lineEndOf(text);
  const written = writeSfz(inserted, { lineEnd });
  const before = /[^\r\n]*$/.exec(text.slice(0, offset))?.[0] ?? '';
  const after = /^[^\r\n]*/.exec(text.slice(offset))?.[0] ?? '';
  let newText = written.text.startsWith(lineEnd) ? written.text.slice(lineEnd.length) : written.text;
  if (before.trim() !== '') newText = lineEnd + newText;
  if (after.trim() === '' && newText.endsWith(lineEnd) && offset + after.length < text.length)
    newText = newText.slice(0, -lineEnd.length);
  return { edits: [{ source: 0, start: offset, end: offset, newText }], notes: written.notes };
}
