import { isSampleFileName } from '../model/fileNames';
import type { Instrument } from '../model/instrument';
import type { Place } from '../model/notation';

const word = /[\w$]*$/;

/** A sound that players make without a file, such as `*sine` (public documentation of the open SFZ format). */
const generator = /^\*[a-z]+$/;

/** What stands at an offset of the main file; see `Notation.placeAt`. */
export function placeInSfz(instrument: Instrument, offset: number): Place {
  const text = instrument.sources[0]?.text ?? '';
  const inDirective = placeInDirective(instrument, offset);
  if (inDirective) return inDirective;

  const line = text.slice(lineStart(text, offset), offset);
  const tag = /<(\w*)$/.exec(line);
  if (tag) return tagPlace(instrument, text, offset - tag[1].length, offset);

  // What is typed right before a tag belongs to the header before it.
  const header = instrument.headerAt(0, offset - 1);
  const parameter = instrument.parameterAt(0, offset);
  if (parameter >= 0) {
    const name = instrument.nameSpan(parameter);
    if (offset <= name.end) return { kind: 'name', start: name.start, end: name.end, header, parameter };
    const value = instrument.valueSpan(parameter);
    if (offset <= value.end || isBlankUpTo(text, text.indexOf('=', name.end) + 1, offset)) {
      return placeInValue(instrument, text, offset, header, parameter);
    }
  }
  const start = offset - (word.exec(line)?.[0].length ?? 0);
  return { kind: 'name', start, end: wordEnd(text, offset), header, parameter: -1 };
}

function placeInDirective(instrument: Instrument, offset: number): Place | undefined {
  const directive = instrument.directives.find(
    (one) => one.source === 0 && one.start < offset && offset <= one.end,
  );
  if (!directive) return undefined;
  if (directive.kind === 'comment') {
    const text = instrument.sources[0]?.text ?? '';
    const block = text[directive.start + 1] === '*';
    return block && offset === directive.end ? undefined : { kind: 'other' };
  }
  const { nameStart, nameEnd, name } = directive;
  if (offset < nameStart || offset > nameEnd) return { kind: 'other' };
  return directive.kind === 'include'
    ? { kind: 'include', start: nameStart, end: nameEnd }
    : { kind: 'variable', start: nameStart, end: nameEnd, name };
}

function tagPlace(instrument: Instrument, text: string, start: number, offset: number): Place {
  const end = wordEnd(text, offset);
  const isWhole = text[end] === '>';
  return { kind: 'header', start, end, header: isWhole ? instrument.headerAt(0, offset - 1) : -1 };
}

function placeInValue(
  instrument: Instrument,
  text: string,
  offset: number,
  header: number,
  parameter: number,
): Place {
  const value = instrument.valueSpan(parameter);
  const variable = variableAt(text, value.start, value.end, offset);
  if (variable) return variable;
  const before = text.slice(value.start, offset).trimStart();
  const blank = Math.max(before.lastIndexOf(' '), before.lastIndexOf('\t'));
  const facts = instrument.names.opcode(instrument.name(parameter))?.facts;
  if (blank >= 0) {
    // A word behind a finished value is the next opcode, still without its "=".
    const holdsBlanks =
      facts === undefined || facts.kind === 'text' || facts.kind === 'path' || facts.kind === 'any';
    const first = before.slice(0, blank).trimEnd();
    if (!holdsBlanks || isSampleFileName(first) || generator.test(first)) {
      return {
        kind: 'name',
        start: offset - before.length + blank + 1,
        end: wordEnd(text, offset),
        header,
        parameter: -1,
      };
    }
  }
  return {
    kind: 'value',
    start: value.end > value.start ? Math.min(value.start, offset) : offset,
    end: Math.max(value.end, offset),
    header,
    parameter,
    name: instrument.names.text(instrument.canonicalName(parameter)),
  };
}

function variableAt(text: string, start: number, end: number, offset: number): Place | undefined {
  let from = offset;
  while (from > start && /\w/.test(text[from - 1])) from--;
  if (from <= start || text[from - 1] !== '$') return undefined;
  const to = Math.min(end, wordEnd(text, offset));
  return { kind: 'variable', start: from - 1, end: to, name: text.slice(from - 1, to) };
}

function lineStart(text: string, offset: number): number {
  let at = offset;
  while (at > 0 && text[at - 1] !== '\n' && text[at - 1] !== '\r') at--;
  return at;
}

function wordEnd(text: string, offset: number): number {
  let at = offset;
  while (at < text.length && /\w/.test(text[at])) at++;
  return at;
}

function isBlankUpTo(text: string, start: number, end: number): boolean {
  return start > 0 && start <= end && /^[ \t]*$/.test(text.slice(start, end));
}
