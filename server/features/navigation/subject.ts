import type { Instrument } from '../../model/instrument';
import type { ParameterNames } from '../../model/parameterNames';
import { Parameter } from '../../model/parameterNames';
import { joinPath } from '../../model/paths';
import type { VariablePlace } from '../../model/variables/variableUses';
import { variablePlaces } from '../../model/variables/variableUses';
import type { ReadDocument } from '../readDocument';
import { nameNumber } from '../readDocument';

/** A document in the instrument that it belongs to: its own, or one that includes it. */
export interface DocumentInContext {
  /** The document by itself. */
  document: ReadDocument;
  /** The instrument, and the folder that its paths lead from. */
  instrument: Instrument;
  folder: string | undefined;
  /** The position of the document's file in the sources of that instrument. */
  source: number;
}

/** What several places of an instrument can be about. */
export type Subject =
  /** A variable, without its `$`. */
  | { kind: 'variable'; name: string }
  /** A sample file; the path with `/`, from the folder of the instrument unless it is absolute. */
  | { kind: 'sample'; path: string }
  | { kind: 'controller'; number: number }
  /** The number that `group` and `off_by` share. */
  | { kind: 'group'; value: string }
  /** A text shown to the player, by the number of the opcode's canonical name. */
  | { kind: 'label'; name: number; text: string }
  /** An included file; its path as the instrument reaches it. */
  | { kind: 'include'; path: string };

/** What was found at an offset: the subject, and the stretch of the document that stands for it. */
export interface SubjectAt {
  start: number;
  end: number;
  subject: Subject;
  /** The parameter of the instrument that the offset is in, or −1. */
  parameter: number;
}

/** What the place at an offset of a document is about; `undefined` where it is about nothing that other places share. */
export function subjectAt(context: DocumentInContext, offset: number): SubjectAt | undefined {
  const { document, instrument, source } = context;
  const variable = variableAt(instrument, source, offset);
  if (variable) {
    const { start, end, name } = variable;
    return { start, end, subject: { kind: 'variable', name }, parameter: -1 };
  }
  const place = document.notation.placeAt(document.instrument, offset);
  if (place.kind === 'include') {
    const include = instrument.directives.find(
      (one) =>
        one.kind === 'include' &&
        one.source === source &&
        one.nameStart <= place.start &&
        place.start <= one.nameEnd,
    );
    if (!include) return undefined;
    return {
      start: place.start,
      end: place.end,
      subject: { kind: 'include', path: include.value },
      parameter: -1,
    };
  }
  if ((place.kind !== 'name' && place.kind !== 'value') || place.parameter < 0) return undefined;
  const parameter = parameterInContext(context, place.parameter);
  if (parameter < 0) return undefined;
  const subject = place.kind === 'name' ? ofName(instrument, parameter) : ofValue(instrument, parameter);
  return subject && { start: place.start, end: place.end, subject, parameter };
}

/** The variable that is defined or used at an offset of a file. */
export function variableAt(
  instrument: Instrument,
  source: number,
  offset: number,
): VariablePlace | undefined {
  return variablePlaces(instrument).findLast(
    (place) => place.source === source && place.start <= offset && offset <= place.end,
  );
}

/** A parameter of a document as one of the instrument that the document belongs to, or −1. */
export function parameterInContext(
  { document, instrument, source }: DocumentInContext,
  parameter: number,
): number {
  if (document.instrument === instrument) return parameter;
  const { start } = document.instrument.nameSpan(parameter);
  const found = instrument.parameterAt(source, start);
  return found >= 0 && instrument.nameSpan(found).start === start ? found : -1;
}

function ofName(instrument: Instrument, parameter: number): Subject | undefined {
  const number = controllerOf(instrument.names, instrument.name(parameter));
  if (number !== undefined) return { kind: 'controller', number };
  return groupOf(instrument, parameter);
}

function ofValue(instrument: Instrument, parameter: number): Subject | undefined {
  const canonical = instrument.canonicalName(parameter);
  const text = instrument.valueText(parameter);
  if (canonical === Parameter.sample) {
    const path = samplePathOf(instrument, parameter);
    return path === undefined ? undefined : { kind: 'sample', path };
  }
  const number = controllerOf(instrument.names, canonical);
  if (isLabel(instrument.names.text(canonical)) && number === undefined)
    return { kind: 'label', name: canonical, text };
  const pedal = pedalController(instrument, parameter);
  if (pedal !== undefined) return { kind: 'controller', number: pedal };
  if (number !== undefined) return { kind: 'controller', number };
  return groupOf(instrument, parameter);
}

function groupOf(instrument: Instrument, parameter: number): Subject | undefined {
  const canonical = instrument.canonicalName(parameter);
  if (canonical !== nameNumber(instrument, 'group') && canonical !== nameNumber(instrument, 'off_by'))
    return undefined;
  return { kind: 'group', value: groupValue(instrument, parameter) };
}

/** The value of a `group` or `off_by`; `01` and `1` are the same group. */
export function groupValue(instrument: Instrument, parameter: number): string {
  const number = instrument.number(parameter);
  return Number.isNaN(number) ? instrument.valueText(parameter) : String(number);
}

/** The controller that an opcode reacts to, labels or sets: the number behind `cc` at the end of its name. */
export function controllerOf(names: ParameterNames, name: number): number | undefined {
  const opcode = names.opcode(name);
  return opcode && /cc(N+|[XYZ])$/.test(opcode.facts.pattern) ? opcode.indexes.at(-1) : undefined;
}

/** The controller that a parameter names by its value, as that of a pedal. */
export function pedalController(instrument: Instrument, parameter: number): number | undefined {
  const canonical = instrument.canonicalName(parameter);
  const isPedal =
    canonical === nameNumber(instrument, 'sustain_cc') ||
    canonical === nameNumber(instrument, 'sostenuto_cc');
  const value = instrument.number(parameter);
  return isPedal && Number.isInteger(value) ? value : undefined;
}

/** Whether an opcode holds a text of the writer's own that is shown to the player. */
export function isLabel(name: string): boolean {
  return /(^|_)label(_|$)/.test(name);
}

/** The sample that a parameter names, as it is found where the parameter stands; `undefined` for none and generators. */
export function samplePathOf(instrument: Instrument, parameter: number): string | undefined {
  const value = instrument.valueText(parameter);
  if (value === '' || value.startsWith('*')) return undefined;
  const { defaultPath } = instrument.control(instrument.headerOfParameter(parameter));
  return joinPath('', defaultPath + value);
}
