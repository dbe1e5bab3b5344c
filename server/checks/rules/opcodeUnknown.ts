import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { nearestOpcodes } from '../../model/opcodes/nearest';
import type { ParameterNames } from '../../model/parameterNames';
import { listText } from '../../model/wording/listText';
import { renameFix } from '../facts/parameters/parameterFixes';
import { parameterSurveyOf } from '../facts/parameters/parameterSurvey';
import type { Rule } from '../rule';

/** Different names in one check for which near ones are looked up; a text with more is hardly an instrument. */
const mostLookUps = 40;
const suggestionCount = 3;

const suggestionsOf = new WeakMap<ParameterNames, Map<number, readonly string[]>>();

/** Finds opcode names that the format does not know. */
export const opcodeUnknown: Rule = {
  code: 'opcode-unknown',
  severity: 'warning',
  finds: 'An opcode that is not in the format. The nearest known names are offered.',
  check(context, report) {
    const { instrument } = context;
    let suggestions = suggestionsOf.get(instrument.names);
    if (!suggestions) {
      suggestions = new Map();
      suggestionsOf.set(instrument.names, suggestions);
    }
    let lookUps = 0;
    for (const parameter of parameterSurveyOf(instrument).unknown) {
      const name = instrument.name(parameter);
      const text = instrument.names.text(name);
      // An empty name is a syntax error; a variable that is not defined has a finding of its own.
      if (text === '' || text.includes('$')) continue;
      if (isOutsideTheFormat(instrument, instrument.headerOfParameter(parameter))) continue;
      let near = suggestions.get(name);
      if (!near && lookUps++ < mostLookUps) {
        near = nearestOpcodes(text, suggestionCount);
        suggestions.set(name, near);
      }
      const names = near ?? [];
      report(() => ({
        ...instrument.nameSpan(parameter),
        message: `${shorten(text)} is not an opcode of the format. ${advice(names)}`,
        fixes: () => names.flatMap((one) => renameFix(context, parameter, one, false)),
      }));
    }
  },
};

/** Under a header that the format does not know, which has a finding of its own, and in `<midi>`, anything goes. */
function isOutsideTheFormat(instrument: Instrument, header: number): boolean {
  const kind = instrument.kind(header);
  return kind === HeaderKind.midi || (kind === HeaderKind.unknown && instrument.headerName(header) !== '');
}

function advice(names: readonly string[]): string {
  if (names.length === 0) return 'Players ignore it. Correct the name or remove it.';
  return `Did you mean ${listText(names, 'or')}?`;
}

function shorten(text: string): string {
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}
