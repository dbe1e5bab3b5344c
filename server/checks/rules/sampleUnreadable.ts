import { sampleFactsOf } from '../facts/samples/sampleFacts';
import { sampleSpan } from '../facts/samples/samplePaths';
import type { SampleUse } from '../facts/samples/sampleUse';
import { sampleUsesOf } from '../facts/samples/sampleUses';
import type { Rule } from '../rule';

/** Finds samples that are there but cannot be played: no audio, cut short, a folder, or of a kind that the format does not list. */
export const sampleUnreadable: Rule = {
  code: 'sample-unreadable',
  severity: 'error',
  finds: 'A sample that is not audio, is cut short or is of a kind that the format does not list.',
  check(context, report) {
    for (const use of sampleUsesOf(context).doubtful) {
      const message = use.isFile ? problemOf(use) : undefined;
      if (message !== undefined) report({ ...sampleSpan(context.instrument, use), message });
    }
  },
};

function problemOf({ path, state }: SampleUse): string | undefined {
  if (path.includes('\0')) {
    return 'This path holds a NUL character, which no file name can have. Type the path again.';
  }
  if (state.kind === 'folder') {
    // An empty `sample` behind a folder in `default_path` has a finding of its own.
    return path.endsWith('/') ? undefined : `"${path}" is a folder. Name an audio file in it.`;
  }
  if (state.kind !== 'file' && state.kind !== 'otherCase') return undefined;
  if (state.reading?.kind === 'unreadable') {
    return `"${path}" cannot be played. ${sentence(state.reading.reason)} Replace the file or correct the path.`;
  }
  const cut = sampleFactsOf(state)?.problems.find((problem) => problem.kind === 'cut-short');
  return cut && `"${path}" is cut short. ${sentence(cut.message)} Copy or export it again.`;
}

function sentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
