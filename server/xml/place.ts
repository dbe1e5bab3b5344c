import type { Instrument } from '../model/instrument';
import type { Place } from '../model/notation';
import { ElementKind, elementKindOf } from './elements';
import type { TagPlace } from './scan/tagAt';
import { tagAt } from './scan/tagAt';

/** What stands at an offset of the main file; see `Notation.placeAt`. */
export function placeInXml(instrument: Instrument, offset: number): Place {
  const text = instrument.sources[0]?.text ?? '';
  const inComment = instrument.directives.some(
    ({ kind, source, start, end }) => kind === 'comment' && source === 0 && start < offset && offset < end,
  );
  const tag = inComment ? undefined : tagAt(text, offset);
  if (!tag) return { kind: 'other' };
  const kind = elementKindOf(tag.name);
  if (kind === ElementKind.define || kind === ElementKind.include) return placeInDirective(text, tag, offset);
  const header = headerOf(instrument, tag);
  const { part } = tag;
  switch (part.kind) {
    case 'element':
      return { kind: 'header', start: part.start, end: part.end, header };
    case 'gap':
      return header < 0
        ? { kind: 'other' }
        : { kind: 'name', start: offset, end: offset, header, parameter: -1 };
    case 'attribute':
      if (header < 0) return { kind: 'other' };
      return {
        kind: 'name',
        start: part.start,
        end: part.end,
        header,
        parameter: parameterNamedAt(instrument, part.start),
      };
    case 'value':
      return header < 0
        ? { kind: 'other' }
        : placeInValue(instrument, text, offset, header, part.start, part.end, part.attribute);
    case 'other':
      return { kind: 'other' };
  }
}

/** The header whose tag it is, or −1. The name is not yet read where nothing but `<` is written. */
function headerOf(instrument: Instrument, tag: TagPlace): number {
  const header = instrument.headerAt(0, tag.start);
  return header >= 0 && instrument.headerSpan(header).start === tag.start ? header : -1;
}

function parameterNamedAt(instrument: Instrument, start: number): number {
  const parameter = instrument.parameterAt(0, start);
  return parameter >= 0 && instrument.nameSpan(parameter).start === start ? parameter : -1;
}

function placeInDirective(text: string, tag: TagPlace, offset: number): Place {
  const { part, name } = tag;
  if (part.kind === 'element') return { kind: 'header', start: part.start, end: part.end, header: -1 };
  if (part.kind !== 'value') return { kind: 'other' };
  if (name === 'include' && part.attribute === 'path') {
    return (
      variableAt(text, part.start, part.end, offset) ?? { kind: 'include', start: part.start, end: part.end }
    );
  }
  if (name === 'define' && part.attribute === 'name') {
    const variable = text.slice(part.start, part.end);
    return {
      kind: 'variable',
      start: part.start,
      end: part.end,
      name: variable.startsWith('$') ? variable : `$${variable}`,
    };
  }
  return variableAt(text, part.start, part.end, offset) ?? { kind: 'other' };
}

function placeInValue(
  instrument: Instrument,
  text: string,
  offset: number,
  header: number,
  start: number,
  end: number,
  attribute: string,
): Place {
  const variable = variableAt(text, start, end, offset);
  if (variable) return variable;
  const { names } = instrument;
  const last = instrument.parameterAt(0, start);
  const parameter =
    last >= 0 && instrument.headerOfParameter(last) === header && instrument.nameSpan(last).end < start
      ? last
      : -1;
  const name = names.text(names.canonical(names.idOf(attribute)));
  return { kind: 'value', start, end, header, parameter, name };
}

function variableAt(text: string, start: number, end: number, offset: number): Place | undefined {
  let from = offset;
  while (from > start && /\w/.test(text[from - 1])) from--;
  if (from <= start || text[from - 1] !== '$') return undefined;
  let to = offset;
  while (to < end && /\w/.test(text[to])) to++;
  return { kind: 'variable', start: from - 1, end: to, name: text.slice(from - 1, to) };
}
