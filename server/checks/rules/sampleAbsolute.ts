import { Parameter } from '../../model/parameterNames';
import { isAbsolutePath } from '../../model/paths';
import { sampleSpan } from '../facts/samples/samplePaths';
import { sampleUsesOf } from '../facts/samples/sampleUses';
import type { Rule } from '../rule';

/** Finds sample paths that start at a root or a drive and so lead to a file on one machine alone. */
export const sampleAbsolute: Rule = {
  code: 'sample-absolute',
  severity: 'warning',
  finds: 'A sample path that starts at a root or a drive, so it works on one computer only.',
  check(context, report) {
    const { instrument } = context;
    const message =
      'This path starts at a root or a drive, so the sample is found on this computer only. Write it relative to the folder of the instrument file.';
    for (const { header, defaultPath } of instrument.controls) {
      if (header < 0 || !isAbsolutePath(defaultPath)) continue;
      report({ ...instrument.valueSpan(instrument.own(header, Parameter.default_path)), message });
    }
    for (const use of sampleUsesOf(context).doubtful) {
      if (!use.isFile || !isAbsolutePath(use.path)) continue;
      if (!isAbsolutePath(instrument.control(use.region).defaultPath)) {
        report({ ...sampleSpan(instrument, use), message });
      }
    }
  },
};
