import { pathFix, placeOf } from '../facts/samplePaths';
import { sampleUsesOf } from '../facts/sampleUses';
import type { Rule } from '../rule';

const nearestCount = 3;

/** Finds samples whose file does not exist. */
export const sampleMissing: Rule = {
  code: 'sample-missing',
  severity: 'error',
  finds: 'A sample whose file does not exist; the nearest files by name are offered.',
  check(context, report) {
    const { instrument, samples } = context;
    for (const use of sampleUsesOf(context).doubtful) {
      if (use.path === '' || (use.path.endsWith('/') && use.isFile && use.state.kind !== 'pending')) {
        if (instrument.valueText(use.parameter) !== '') continue;
        report({
          ...placeOf(instrument, use),
          message: 'sample names no file. Give it the path of an audio file, or take it out.',
        });
        continue;
      }
      if (!use.isFile || use.state.kind !== 'missing' || use.path.includes('\0')) continue;
      report(() => ({
        ...placeOf(instrument, use),
        message: `There is no file "${use.path}". The path is looked up from the folder of the instrument file; correct it or put the file there.`,
        fixes: () =>
          samples
            .nearest(use.path, nearestCount)
            .flatMap((path) => pathFix(context, use, path, `Use "${path}"`, false)),
      }));
    }
  },
};
