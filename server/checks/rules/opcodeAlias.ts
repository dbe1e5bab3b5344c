import type { ParameterNames } from '../../model/parameterNames';
import { ofKind, renameFix } from '../facts/parameters/parameterFixes';
import { parameterSurveyOf } from '../facts/parameters/parameterSurvey';
import type { Rule } from '../rule';

/** Finds older and alternative spellings of opcodes, upper case included. */
export const opcodeAlias: Rule = {
  code: 'opcode-alias',
  severity: 'hint',
  finds: 'An older or alternative spelling of an opcode.',
  check(context, report) {
    const { instrument } = context;
    const spellings = new Map<number, UsualSpelling>();
    for (const parameter of parameterSurveyOf(instrument).otherSpellings) {
      const name = instrument.name(parameter);
      let spelling = spellings.get(name);
      if (!spelling) {
        spelling = usualSpelling(instrument.names, name);
        spellings.set(name, spelling);
      }
      const { usual, message } = spelling;
      const span = instrument.nameSpan(parameter);
      report({
        ...span,
        message,
        fixes: () => ofKind('Write the usual names', renameFix(context, parameter, usual, true)),
      });
    }
  },
};

interface UsualSpelling {
  usual: string;
  message: string;
}

function usualSpelling(names: ParameterNames, name: number): UsualSpelling {
  const text = names.text(name);
  const opcode = names.opcode(name);
  const usual = opcode?.spelling === 'alias' ? opcode.canonical : text.toLowerCase();
  const why =
    opcode?.spelling === 'alias'
      ? 'is another spelling that not every player knows'
      : 'has capital letters, which not every player takes';
  return { usual, message: `${text} ${why}. Write ${usual}.` };
}
