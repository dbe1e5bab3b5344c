import { parametersNamed, usedName } from '../facts/parameters/parameterUses';
import type { Rule } from '../rule';

/** Finds `off_by` with the number of a group that no region is in. */
export const offByUnknown: Rule = {
  code: 'off-by-unknown',
  severity: 'warning',
  finds: 'An off_by with the number of a group that no region is in.',
  check(context, report) {
    const offBy = usedName(context, 'off_by');
    if (offBy < 0) return;
    const { instrument } = context;
    const group = usedName(context, 'group');
    const groups = new Set<number>();
    for (const parameter of parametersNamed(context, group)) groups.add(instrument.number(parameter));
    for (const parameter of parametersNamed(context, offBy)) {
      const number = instrument.number(parameter);
      // 0 is the default and means none.
      if (Number.isNaN(number) || number === 0 || groups.has(number)) continue;
      const list = [...groups].filter((one) => !Number.isNaN(one)).sort((a, b) => a - b);
      const there =
        list.length === 0
          ? 'No region has a group, so nothing silences this.'
          : `No region is in group ${number}, so nothing silences this. Groups in use: ${list.slice(0, 8).join(', ')}${list.length > 8 ? ', …' : ''}.`;
      report({
        ...instrument.valueSpan(parameter),
        message: `${there} Correct the number or remove off_by.`,
      });
    }
  },
};
