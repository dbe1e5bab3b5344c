import { piecesInStep } from '../../model/steps';
import { counted } from '../../model/wording/counted';
import { absentFolders } from '../facts/samples/absentFolders';
import { pathFix, sampleSpan } from '../facts/samples/samplePaths';
import type { SampleUse } from '../facts/samples/sampleUse';
import { sampleUsesInSteps } from '../facts/samples/sampleUses';
import type { CheckContext, Report, Rule, RuleFinding } from '../rule';

const nearestCount = 3;

/** Other places that are listed with a finding about a whole folder. */
const mostPlaces = 50;

/** Finds samples whose file does not exist. */
export const sampleMissing: Rule = {
  code: 'sample-missing',
  severity: 'error',
  finds:
    'A sample whose file does not exist. The nearest files by name are offered. A missing folder is one finding. A region without any sample, beside others that have one, is a warning.',
  *check(context, report) {
    const { instrument, samples } = context;
    const missing: SampleUse[] = [];
    const { doubtful, paths } = yield* sampleUsesInSteps(context);
    for (const use of doubtful) {
      if (use.path === '' || (use.path.endsWith('/') && use.isFile && use.state.kind !== 'pending')) {
        if (instrument.valueText(use.parameter) !== '') continue;
        report({
          ...sampleSpan(instrument, use),
          message: 'sample names no file. Give it the path of an audio file, or remove it.',
        });
      } else if (use.isFile && use.state.kind === 'missing' && !use.path.includes('\0')) missing.push(use);
    }
    const sourceOf = (use: SampleUse) => instrument.parameterSource(use.parameter);
    reportSampleless(context, report);
    const { folders, isTold } = yield* absentFolders(missing, paths.size, samples, sourceOf);
    for (const { path, uses } of folders) report(() => absentFolder(context, path, uses));
    for (let at = 0; at < missing.length; at++) {
      const use = missing[at];
      if (!isTold(at)) report(() => missingFile(context, use));
      if (at % piecesInStep === piecesInStep - 1) yield at / missing.length;
    }
  },
};

/**
 * Tells once of regions that name no sample while most others do. Where a file or a variable is missing, what is not there may name it; a
 * text of a few regions without any is a part of another.
 */
function reportSampleless({ instrument }: CheckContext, report: Report): void {
  const { regions } = instrument;
  const without: number[] = [];
  for (const region of regions) {
    // A header with nothing in it is one that is being written.
    const isEmpty = instrument.firstParameter(region) === instrument.endParameter(region);
    if (!isEmpty && instrument.samplePath(region) === undefined) without.push(region);
  }
  const [first] = without;
  if (first === undefined || without.length * 2 > regions.length) return;
  if (instrument.findings.some(({ code }) => notThere.has(code))) return;
  const more =
    without.length === 1
      ? ''
      : ` ${counted(without.length - 1, 'more region has', 'more regions have')} none.`;
  report({
    ...instrument.headerSpan(first),
    severity: 'warning',
    message: `This region has no sample, so it is silent.${more} Give it one, or sample=*silence if that is meant.`,
  });
}

/** Findings of a text of which something is not there, or not understood. */
const notThere = new Set([
  'include-missing',
  'include-cycle',
  'include-refused',
  'define-unknown',
  'syntax-error',
]);

function absentFolder({ instrument }: CheckContext, path: string, uses: readonly SampleUse[]): RuleFinding {
  const [first] = uses;
  return {
    ...sampleSpan(instrument, first as SampleUse),
    message: `There is no folder "${path}"; ${counted(uses.length, 'sample')} should be in it. Put the folder there, or change the paths to where it is now.`,
    related: uses
      .slice(1, 1 + mostPlaces)
      .map((use) => ({ ...sampleSpan(instrument, use), message: `"${use.path}" should be there too.` })),
    absentFolder: {
      path,
      count: uses.length,
      files: () => uses.map((use) => use.path.slice(path.length + 1)),
    },
  };
}

function missingFile(context: CheckContext, use: SampleUse): RuleFinding {
  return {
    ...sampleSpan(context.instrument, use),
    message: `There is no file "${use.path}". Paths start at the folder of the instrument file. Correct the path or put the file there.`,
    fixes: () =>
      context.samples
        .nearest(use.path, nearestCount)
        .flatMap((path) => pathFix(context, use, path, `Use "${path}"`, false)),
  };
}
