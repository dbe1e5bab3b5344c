import { ofKind } from '../facts/parameters/parameterFixes';
import { pathFix, sampleSpan } from '../facts/samples/samplePaths';
import { sampleUsesOf } from '../facts/samples/sampleUses';
import type { Rule } from '../rule';

/** Finds samples whose file is there only when letter case is ignored. */
export const sampleCase: Rule = {
  code: 'sample-case',
  severity: 'warning',
  finds: 'A sample whose path has other capital letters than the file.',
  check(context, report) {
    const { instrument } = context;
    for (const use of sampleUsesOf(context).doubtful) {
      if (use.state.kind !== 'otherCase') continue;
      const { actual } = use.state;
      report({
        ...sampleSpan(instrument, use),
        message: `The file is named "${actual}", not "${use.path}". Systems that tell capital letters apart don't find it. Write it as the file is named.`,
        fixes: () =>
          ofKind(
            'Write paths as the files are spelled',
            pathFix(context, use, actual, `Write "${actual}"`, true),
          ),
      });
    }
  },
};
