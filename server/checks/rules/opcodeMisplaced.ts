import { HeaderKind, headerNames } from '../../model/headerKinds';
import { listText } from '../../model/wording/listText';
import { fixOf, ofKind } from '../facts/parameters/parameterFixes';
import { parameterSurveyOf } from '../facts/parameters/parameterSurvey';
import type { Rule } from '../rule';

/** The mark of an opcode that stands under any header. */
const everyHeader = 0xffff;

/** Finds opcodes under a header that does not take them, and opcodes before any header. */
export const opcodeMisplaced: Rule = {
  code: 'opcode-misplaced',
  severity: 'warning',
  finds: 'An opcode under a header that does not take it, or before any header.',
  check({ instrument, notation }, report) {
    for (const parameter of parameterSurveyOf(instrument).misplaced) {
      const name = instrument.name(parameter);
      const text = instrument.names.text(name);
      if (text === '') continue;
      report(() => {
        const mask = instrument.names.opcode(name)?.facts.headers ?? everyHeader;
        const takers = headerNames.filter(
          (_, at) => mask !== everyHeader && at !== HeaderKind.midi && mask & (1 << at),
        );
        const advice = takers.length > 0 ? ` It belongs under ${listText(takers, 'or')}.` : '';
        const header = instrument.headerName(instrument.headerOfParameter(parameter));
        return {
          ...instrument.nameSpan(parameter),
          message:
            header === ''
              ? `${text} stands before any header, where it has no effect.${advice}`
              : `${text} has no effect under the header ${header}.${advice}`,
          fixes: () =>
            ofKind(
              'Remove what is misplaced',
              fixOf(`Remove ${text}`, notation.edit(instrument, { kind: 'remove', parameter }).edits, false),
            ),
        };
      });
    }
  },
};
