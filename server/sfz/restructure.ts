import { joinEdits, puttingBefore, puttingBehind, replacing } from '../model/editing/edits';
import type { TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Directive } from '../model/instrumentParts';
import type { Edited, NewParameter } from '../model/notation';
import type { Span } from '../model/text/span';
import { mainSpan, spanBetween, spanOver } from '../model/text/span';
import { lineEndAt, lineStartAt } from '../model/text/textLayout';
import { lineEndOf } from '../model/text/textLines';
import { breakBehindValue } from './lineRest';

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
    const between = run && parameter > first && gone.has(parameter - 1) ? spanBetween(run, span) : undefined;
    const joined = run && between && textOf(instrument, between).trim() === '' && spanOver(run, span);
    if (run && !joined) edits.push(removal(run));
    run = joined || span;
  }
  if (run) edits.push(removal(run));
  if (add.length > 0) edits.push(addition(instrument, header, anchor, add));
  return joinEdits(edits);
}

function textOf(instrument: Instrument, { source, start, end }: Span): string {
  return instrument.sources[source]?.text.slice(start, end) ?? '';
}

function addition(
  instrument: Instrument,
  header: number,
  anchor: number,
  add: readonly NewParameter[],
): TextEdit {
  const after = anchor < 0 ? instrument.headerSpan(header) : instrument.parameterSpan(anchor);
  const text = instrument.sources[after.source]?.text ?? '';
  const before = anchor < 0 ? '' : text.slice(lineStartAt(text, after.start), after.start);
  // New opcodes go on lines of their own where the one before has one.
  const ownLine = anchor >= 0 && before.trim() === '';
  const lead = ownLine ? lineEndOf(text) + before : ' ';
  const newText = add.map(({ name, value }) => `${lead}${name}=${value}`).join('');
  return puttingBehind(after, newText + breakBehindValue(instrument, after));
}

/** Defines a variable before everything that could use it. */
export function defineInSfz(instrument: Instrument, name: string, value: string): Edited {
  const text = instrument.sources[0]?.text ?? '';
  const lineEnd = lineEndOf(text);
  const define = `#define ${name} ${value}`;
  const first = firstRead(instrument);
  const before = instrument.directives.findLast(
    (one) =>
      one.kind === 'define' &&
      one.source === 0 &&
      one.end <= first &&
      text.slice(one.end, lineEndAt(text, one.end)).trim() === '',
  );
  if (before) return made([puttingBehind(before, lineEnd + define)]);
  return made([insertedLine(text, mainSpan(first, first), define + lineEnd)]);
}

/** Where the first header or opcode of the main file stands; opcodes can go on in a header of an included file. */
function firstRead(instrument: Instrument): number {
  let first = instrument.sources[0]?.text.length ?? 0;
  const { headers, parameters } = instrument;
  let header = 0;
  while (header < headers.count && instrument.headerSource(header) !== 0) header++;
  if (header < headers.count) first = instrument.headerSpan(header).start;
  let parameter = 0;
  while (parameter < parameters.count && instrument.parameterSource(parameter) !== 0) parameter++;
  if (parameter < parameters.count) first = Math.min(first, instrument.parameterSpan(parameter).start);
  return first;
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
  const edits = [insertedLine(text, instrument.headerSpan(first), tag)];
  if (instrument.regions.some((region) => region > last && instrument.parent(region) === parent)) {
    const next = instrument.headerSpan(last + 1);
    const end = instrument.bodySpan(last);
    edits.push(
      next.source === 0
        ? insertedLine(text, next, tag)
        : // What follows stands in an included file, so the group has to come before that.
          puttingBehind(end, lineEnd + lines.join(lineEnd) + breakBehindValue(instrument, end)),
    );
  }
  return made(edits);
}

/** Text that starts a line, put before a span of the main file. */
function insertedLine(text: string, before: Span, newText: string): TextEdit {
  const isFirst = text.slice(lineStartAt(text, before.start), before.start).trim() === '';
  return puttingBefore(before, (isFirst ? '' : lineEndOf(text)) + newText);
}

/** Puts an include in the place of regions that follow one another; answers their text for the new file. */
export function moveOutOfSfz(instrument: Instrument, first: number, last: number, path: string): Edited {
  const text = instrument.sources[0]?.text ?? '';
  const lineEnd = lineEndOf(text);
  const whole = spanOver(instrument.headerSpan(first), instrument.bodySpan(last));
  if (whole?.source !== 0) return made([]);
  const { start } = whole;
  let { end } = whole;
  const remark = instrument.directives.find(
    (one) =>
      one.kind === 'comment' && one.source === 0 && one.start >= end && one.start < lineEndAt(text, end),
  );
  if (remark && text.slice(end, remark.start).trim() === '') end = remark.end;
  const newText = `#include "${path}"`;
  return {
    ...made([onOwnLine(text, mainSpan(start, end), newText)]),
    newFile: text.slice(start, end).trimEnd() + lineEnd,
  };
}

function onOwnLine(text: string, span: Span, newText: string): TextEdit {
  const { start, end } = span;
  const lineEnd = lineEndOf(text);
  const before = text.slice(lineStartAt(text, start), start).trim() === '' ? '' : lineEnd;
  const after = text.slice(end, lineEndAt(text, end)).trim() === '' ? '' : lineEnd;
  return replacing(span, before + newText + after);
}

/** Puts the text of an included file in the place of its include; nothing where that text has faults. */
export function inlineInSfz(instrument: Instrument, directive: Directive): Edited {
  const at = instrument.sources.findIndex(({ path }) => path === directive.value);
  const faulty = instrument.findings.some(({ code, source }) => code === 'syntax-error' && source === at);
  if (at <= 0 || faulty || directive.kind !== 'include' || directive.source !== 0) return made([]);
  const text = instrument.sources[0]?.text ?? '';
  const included = (instrument.sources[at]?.text ?? '').replace(/^\ufeff/, '').replace(/[\0- ]+$/, '');
  return made([onOwnLine(text, directive, included)]);
}

function made(edits: TextEdit[]): Edited {
  return { edits, notes: [] };
}
