import { joinEdits } from '../model/edits';
import type { TextEdit } from '../model/finding';
import type { Directive, Instrument } from '../model/instrument';
import type { Edited, NewParameter } from '../model/notation';
import type { Span } from '../model/text/span';
import { lineEndAt, lineStartAt } from '../model/text/textLayout';
import { lineEndOf } from '../model/text/textLines';

/** Takes opcodes out of a header and adds others behind those that stay. */
export function reviseSfz(
  instrument: Instrument,
  header: number,
  remove: readonly number[],
  add: readonly NewParameter[],
  removal: (span: Span) => TextEdit,
): TextEdit[] {
  const gone = new Set(remove);
  const tag = instrument.headerSpan(header);
  const text = instrument.sources[tag.source]?.text ?? '';
  const edits: TextEdit[] = [];
  let anchor = -1;
  let run: Span | undefined;
  const first = instrument.firstParameter(header);
  const end = instrument.endParameter(header);
  for (let parameter = first; parameter < end; parameter++) {
    const span = instrument.parameterSpan(parameter);
    if (!gone.has(parameter)) {
      if (span.source === tag.source) anchor = parameter;
      continue;
    }
    const goesOn = run && parameter > first && gone.has(parameter - 1) && span.source === run.source;
    if (run && goesOn && text.slice(run.end, span.start).trim() === '') run.end = span.end;
    else {
      if (run) edits.push(removal(run));
      run = span;
    }
  }
  if (run) edits.push(removal(run));
  if (add.length > 0) edits.push(addition(instrument, header, anchor, add, text));
  return joinEdits(edits);
}

function addition(
  instrument: Instrument,
  header: number,
  anchor: number,
  add: readonly NewParameter[],
  text: string,
): TextEdit {
  const tag = instrument.headerSpan(header);
  const after = anchor < 0 ? tag : instrument.parameterSpan(anchor);
  const before = anchor < 0 ? '' : text.slice(lineStartAt(text, after.start), after.start);
  // New opcodes go on lines of their own where the one before has one.
  const ownLine = anchor >= 0 && before.trim() === '';
  const lead = ownLine ? lineEndOf(text) + before : ' ';
  const newText = add.map(({ name, value }) => `${lead}${name}=${value}`).join('');
  return { source: tag.source, start: after.end, end: after.end, newText };
}

/** Defines a variable before everything that could use it. */
export function defineInSfz(instrument: Instrument, name: string, value: string): Edited {
  const text = instrument.sources[0]?.text ?? '';
  const lineEnd = lineEndOf(text);
  const define = `#define ${name} ${value}`;
  const first = firstHeader(instrument);
  const before = instrument.directives.findLast(
    (one) =>
      one.kind === 'define' &&
      one.source === 0 &&
      one.end <= first &&
      text.slice(one.end, lineEndAt(text, one.end)).trim() === '',
  );
  if (before) return made([{ source: 0, start: before.end, end: before.end, newText: lineEnd + define }]);
  return made([insertedLine(text, first, define + lineEnd)]);
}

function firstHeader(instrument: Instrument): number {
  for (let header = 0; header < instrument.headers.count; header++) {
    const { source, start } = instrument.headerSpan(header);
    if (source === 0) return start;
  }
  return instrument.sources[0]?.text.length ?? 0;
}

/** Puts regions that follow one another into a group of their own; those behind them go on in another like theirs. */
export function groupInSfz(
  instrument: Instrument,
  first: number,
  last: number,
  sets: readonly NewParameter[],
): Edited {
  const text = instrument.sources[0]?.text ?? '';
  const lineEnd = lineEndOf(text);
  const parent = instrument.parent(first);
  const lines = ['<group>', ...sets.map(({ name, value }) => `${name}=${value}`)];
  const tag = lines.map((line) => line + lineEnd).join('');
  const edits = [insertedLine(text, instrument.headerSpan(first).start, tag)];
  if (instrument.regions.some((region) => region > last && instrument.parent(region) === parent)) {
    const { source, start } = instrument.headerSpan(last + 1);
    const { end } = instrument.bodySpan(last);
    edits.push(
      source === 0
        ? insertedLine(text, start, tag)
        : // What follows stands in an included file, so the group has to come before that.
          { source: 0, start: end, end, newText: lineEnd + lines.join(lineEnd) },
    );
  }
  return made(edits);
}

/** Text that starts a line, put before an offset. */
function insertedLine(text: string, offset: number, newText: string): TextEdit {
  const isFirst = text.slice(lineStartAt(text, offset), offset).trim() === '';
  return { source: 0, start: offset, end: offset, newText: (isFirst ? '' : lineEndOf(text)) + newText };
}

/** Puts an include in the place of regions that follow one another; answers their text for the new file. */
export function moveOutOfSfz(instrument: Instrument, first: number, last: number, path: string): Edited {
  const text = instrument.sources[0]?.text ?? '';
  const lineEnd = lineEndOf(text);
  const { start } = instrument.headerSpan(first);
  let { end } = instrument.bodySpan(last);
  const remark = instrument.directives.find(
    (one) =>
      one.kind === 'comment' && one.source === 0 && one.start >= end && one.start < lineEndAt(text, end),
  );
  if (remark && text.slice(end, remark.start).trim() === '') end = remark.end;
  const newText = `#include "${path}"`;
  return {
    ...made([onOwnLine(text, start, end, newText)]),
    newFile: text.slice(start, end).trimEnd() + lineEnd,
  };
}

function onOwnLine(text: string, start: number, end: number, newText: string): TextEdit {
  const lineEnd = lineEndOf(text);
  const before = text.slice(lineStartAt(text, start), start).trim() === '' ? '' : lineEnd;
  const after = text.slice(end, lineEndAt(text, end)).trim() === '' ? '' : lineEnd;
  return { source: 0, start, end, newText: before + newText + after };
}

/** Puts the text of an included file in the place of its include; nothing where that text has faults. */
export function inlineInSfz(instrument: Instrument, directive: Directive): Edited {
  const at = instrument.sources.findIndex(({ path }) => path === directive.value);
  const faulty = instrument.findings.some(({ code, source }) => code === 'syntax-error' && source === at);
  if (at <= 0 || faulty || directive.kind !== 'include' || directive.source !== 0) return made([]);
  const text = instrument.sources[0]?.text ?? '';
  const included = (instrument.sources[at]?.text ?? '').replace(/^\ufeff/, '').replace(/[\0- ]+$/, '');
  return made([onOwnLine(text, directive.start, directive.end, included)]);
}

function made(edits: TextEdit[]): Edited {
  return { edits, notes: [] };
}
