import { renameFix } from './parameterFixes';
import { surveyOf } from './parameterSurvey';
import type { Rule } from './rule';

/** Finds older and alternative spellings of opcodes, upper case included. */
export const opcodeAlias: Rule = {
  code: 'opcode-alias',
  severity: 'hint',
  finds: 'An older or alternative spelling of an opcode.',
  check(context, report) {
    const { instrument } = context;
    for (const parameter of surveyOf(instrument).otherSpellings) {
      const name = instrument.name(parameter);
      const text = instrument.names.text(name);
      const opcode = instrument.names.opcode(name);
      const usual = opcode?.spelling === 'alias' ? opcode.canonical : text.toLowerCase();
      const why =
        opcode?.spelling === 'alias'
          ? 'is another spelling that not every player knows'
          : 'has capital letters, which not every player takes';
      report({
        ...instrument.nameSpan(parameter),
        message: `${text} ${why}. Write ${usual}.`,
        fixes: () => renameFix(context, parameter, usual, true),
      });
    }
  },
};
