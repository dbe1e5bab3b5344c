import type { Instrument } from '../../model/instrument';
import type { Place } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { joinPath } from '../../model/paths';
import type { Span } from '../../model/text/span';
import { variablePlaces } from '../../model/variables/variableUses';
import type { ReadDocument } from '../readDocument';
import { nameNumber } from '../readDocument';
import type { DocumentInContext } from './subject';
import { groupValue, parameterInContext, samplePathOf, variableAt } from './subject';

/** Where something comes from: a file as a whole, or a stretch of one of the instrument's sources. */
export type DefinitionTarget =
  | { kind: 'file'; path: string }
  | { kind: 'text'; source: number; start: number; end: number };

/** What was asked about and where it comes from. */
export interface Definition {
  start: number;
  end: number;
  targets: DefinitionTarget[];
}

/**
 * Where what stands at an offset of a document comes from; `undefined` where it comes from nowhere or from no file that
 * is there. A sample and an include lead to their file, a variable to its definition, `off_by` to the headers of that
 * `group`, the name of an opcode to the header whose value counts instead or would count without it, the tag of a
 * header to the one around it.
 */
export async function definitionAt(
  context: DocumentInContext,
  samples: ReadDocument['samples'],
  offset: number,
): Promise<Definition | undefined> {
  const { document, instrument, source } = context;
  const variable = variableAt(instrument, source, offset);
  if (variable) return found(variable, textTarget(definitionOf(instrument, source, offset)));
  const place = document.notation.placeAt(document.instrument, offset);
  switch (place.kind) {
    case 'include':
      return found(place, includeTarget(context, place));
    case 'header': {
      const own = place.header < 0 ? -1 : headerInContext(context, place.header);
      const outer = own < 0 ? -1 : instrument.parent(own);
      return found(place, textTarget(outer < 0 ? undefined : instrument.headerSpan(outer)));
    }
    case 'name':
    case 'value': {
      const parameter = place.parameter < 0 ? -1 : parameterInContext(context, place.parameter);
      if (parameter < 0) return undefined;
      if (place.kind === 'name') return found(place, inheritedFrom(instrument, parameter));
      const canonical = instrument.canonicalName(parameter);
      if (canonical === Parameter.sample)
        return found(place, await sampleTarget(context, samples, parameter));
      if (canonical === nameNumber(instrument, 'off_by'))
        return found(place, groupTargets(instrument, parameter));
      return undefined;
    }
    default:
      return undefined;
  }
}

function found(
  { start, end }: { start: number; end: number },
  targets: DefinitionTarget[],
): Definition | undefined {
  return targets.length === 0 ? undefined : { start, end, targets };
}

function textTarget(span: Span | undefined): DefinitionTarget[] {
  if (!span) return [];
  const { source, start, end } = span;
  return [{ kind: 'text', source, start, end }];
}

/** The definition that gave the variable at an offset the value that it has there. */
function definitionOf(instrument: Instrument, source: number, offset: number): Span | undefined {
  const places = variablePlaces(instrument);
  const at = places.findLastIndex(
    (place) => place.source === source && place.start <= offset && offset <= place.end,
  );
  const name = places[at]?.name;
  return places.slice(0, at + 1).findLast((place) => place.kind === 'define' && place.name === name);
}

function includeTarget({ instrument, source }: DocumentInContext, place: Place & { kind: 'include' }) {
  const include = instrument.directives.find(
    (one) =>
      one.kind === 'include' &&
      one.source === source &&
      one.nameStart <= place.start &&
      place.start <= one.nameEnd,
  );
  const isThere = include && instrument.sources.some(({ path }) => path === include.value);
  return isThere ? [{ kind: 'file' as const, path: include.value }] : [];
}

function headerInContext({ document, instrument, source }: DocumentInContext, header: number): number {
  if (document.instrument === instrument) return header;
  const { start } = document.instrument.headerSpan(header);
  const there = instrument.headerAt(source, start);
  return there >= 0 && instrument.headerSpan(there).start === start ? there : -1;
}

/** The parameter that counts instead of one, as it is written later, or that counts further out; with its header. */
function inheritedFrom(instrument: Instrument, parameter: number): DefinitionTarget[] {
  const header = instrument.headerOfParameter(parameter);
  const canonical = instrument.canonicalName(parameter);
  const effective = instrument.effective(header, canonical);
  if (effective >= 0 && effective !== parameter) return textTarget(instrument.parameterSpan(effective));
  const parent = instrument.parent(header);
  const outer = parent < 0 ? -1 : instrument.effective(parent, canonical);
  return outer < 0 ? [] : textTarget(headerWith(instrument, outer));
}

/** The tag of a parameter's header; a header without a tag, for opcodes that stand before any, leads to the opcode. */
function headerWith(instrument: Instrument, parameter: number): Span {
  const tag = instrument.headerSpan(instrument.headerOfParameter(parameter));
  return tag.end > tag.start ? tag : instrument.parameterSpan(parameter);
}

/** The tags of the headers that belong to the group which an `off_by` names. */
function groupTargets(instrument: Instrument, offBy: number): DefinitionTarget[] {
  const group = nameNumber(instrument, 'group');
  const value = groupValue(instrument, offBy);
  const targets: DefinitionTarget[] = [];
  for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
    if (instrument.canonicalName(parameter) !== group || groupValue(instrument, parameter) !== value)
      continue;
    targets.push(...textTarget(headerWith(instrument, parameter)));
  }
  return targets;
}

async function sampleTarget(
  { instrument, folder }: DocumentInContext,
  samples: ReadDocument['samples'],
  parameter: number,
): Promise<DefinitionTarget[]> {
  const path = samplePathOf(instrument, parameter);
  if (path === undefined || folder === undefined) return [];
  const state = await samples.fetchState(folder, path);
  if (state.kind !== 'file' && state.kind !== 'otherCase') return [];
  return [{ kind: 'file', path: joinPath(folder, state.kind === 'file' ? path : state.actual) }];
}
