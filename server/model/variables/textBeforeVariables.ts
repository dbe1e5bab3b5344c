import type { Instrument } from '../instrument';
import type { Directive } from '../instrumentParts';
import { directiveName } from '../instrumentParts';
import type { Span } from '../text/span';
import type { VariableText } from './variableText';
import { literalText } from './variableText';

/** A parameter's value before variables were put in; `undefined` where none stands in it. */
export function valueWithVariables(instrument: Instrument, parameter: number): VariableText | undefined {
  const { withVariables, values, translated } = instrument.parameters;
  const known = withVariables?.get(parameter);
  if (known) return known;
  if (translated || !values.has(parameter)) return undefined;
  const value = instrument.valueSpan(parameter);
  // A variable that stands for a whole opcode is its name and its value in one.
  if (value.start < instrument.nameSpan(parameter).end) return undefined;
  const text = textAt(instrument, value);
  return text.includes('$') ? [{ text, literal: false }] : undefined;
}

/** Whether a parameter's name is written by means of a variable, or stands with its value in one. */
export function hasVariableInName(instrument: Instrument, parameter: number): boolean {
  return (
    instrument.parameters.nameEnds.has(parameter) ||
    (instrument.parameters.values.has(parameter) &&
      textAt(instrument, instrument.nameSpan(parameter)).includes('$'))
  );
}

/** The value of a define, or the path of an include, before variables were put in. */
export function directiveText(instrument: Instrument, directive: Directive): VariableText {
  if (directive.withVariables) return directive.withVariables;
  const { kind, name, value } = directive;
  if (kind === 'define') return [{ text: value, literal: false }];
  const text = textAt(instrument, directiveName(directive));
  return text.includes('$') ? [{ text, literal: false }] : literalText(name);
}

function textAt(instrument: Instrument, { source, start, end }: Span): string {
  return instrument.sources[source]?.text.slice(start, end) ?? '';
}
