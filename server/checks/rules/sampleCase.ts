import { ofKind } from '../facts/parameters/parameterFixes';
import { pathFix, sampleSpan } from '../facts/samples/samplePaths';
import { sampleUsesOf } from '../facts/samples/sampleUses';
import type { Rule } from '../rule';

/** Finds samples whose file is there only when letter case is ignored. */
export const sampleCase: Rule = {
  code: 'sample-case',
  severity: 'warning',
  finds: 'A sample whose file is found only when letter case is ignored.',
  check(context, report) {
    const { instrument } = context;
    for (const use of sampleUsesOf(context).doubtful) {
      if (use.state.kind !== 'otherCase') continue;
      const { actual } = use.state;
      report({
        ...sampleSpan(instrument, use),
        message: `The file is "${actual}", with other capital letters than "${use.path}". Write it as the file is named, or the sample is silent on systems that tell them apart.`,
        fixes: () =>
          ofKind(
            'Write paths as the files are spelled',
            pathFix(context, use, actual, `Write "${actual}"`, true),
          ),
      });
    }
  },
};
