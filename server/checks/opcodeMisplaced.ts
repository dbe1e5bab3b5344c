import { HeaderKind, headerNames } from '../model/headerKinds';
import { parameterFactsOf } from './parameterFacts';
import { fixOf } from './parameterFixes';
import type { Rule } from './rule';

/** Finds opcodes under a header that does not take them, and opcodes before any header. */
export const opcodeMisplaced: Rule = {
  code: 'opcode-misplaced',
  severity: 'warning',
  finds: 'An opcode under a header that does not take it, or before any header.',
  check({ instrument, notation }, report) {
    const { headers: masks } = parameterFactsOf(instrument.names);
    for (let header = 0; header < instrument.headers.count; header++) {
      const kind = instrument.kind(header);
      const isBeforeAny = kind === HeaderKind.unknown && instrument.headerName(header) === '';
      const bit = 1 << kind;
      const end = instrument.endParameter(header);
      for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
        const name = instrument.name(parameter);
        const mask = masks[name] as number;
        if (!isBeforeAny && (mask & bit) !== 0) continue;
        const text = instrument.names.text(name);
        if (text === '') continue;
        const takers = headerNames.filter(
          (_, at) => mask !== 0xffff && at !== HeaderKind.midi && mask & (1 << at),
        );
        const advice = takers.length > 0 ? ` It belongs under ${list(takers)}.` : '';
        report({
          ...instrument.nameSpan(parameter),
          message: isBeforeAny
            ? `${text} stands before any header, where it has no effect.${advice}`
            : `${text} has no effect under the header ${instrument.headerName(header)}.${advice}`,
          fixes: () =>
            fixOf(`Take ${text} out`, notation.edit(instrument, { kind: 'remove', parameter }).edits, false),
        });
      }
    }
  },
};

function list(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
