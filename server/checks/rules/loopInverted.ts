import type { Fix } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { nameOf } from '../../model/paths';
import { fixOf, removeFix, valueEdits } from '../facts/parameters/parameterFixes';
import type { PlayedFrames, PlayedFramesTable } from '../facts/samples/playedFrames';
import { playedFramesOf } from '../facts/samples/playedFrames';
import type { CheckContext, Rule } from '../rule';

/** Finds loops that start at or after their end. */
export const loopInverted: Rule = {
  code: 'loop-inverted',
  severity: 'error',
  finds: 'A loop whose start is at or after its end.',
  check(context, report) {
    const { instrument } = context;
    const seen = new Set<string>();
    const frames = playedFramesOf(context);
    for (let at = 0; at < frames.count; at++) {
      if (isInOrder(instrument, frames, at)) continue;
      const played = frames.at(at);
      const loop = loopOf(context, played);
      if (!loop || loop.start < loop.end) continue;
      const { loopStart, loopEnd, use } = played;
      const isOfFile = loopStart < 0 || loopEnd < 0;
      const key = `${loopStart} ${loopEnd} ${isOfFile ? use.path : ''}`;
      if (seen.has(key)) continue;
      seen.add(key);
      const place = Math.max(loopStart, loopEnd);
      const other = isOfFile ? -1 : Math.min(loopStart, loopEnd);
      const source = isOfFile
        ? ` (the ${loopStart < 0 ? 'start' : 'end'} is that of "${nameOf(use.path)}")`
        : '';
      report({
        ...instrument.valueSpan(place),
        message: `The loop starts at frame ${loop.start}, ${loop.start === loop.end ? 'which is also its end' : `after its end at ${loop.end}`}${source}. Put loop_start before loop_end.`,
        ...(other >= 0 && {
          related: [
            {
              ...instrument.valueSpan(other),
              message: other === loopStart ? 'The loop starts here.' : 'The loop ends here.',
            },
          ],
        }),
        fixes: () => fixesOf(context, played),
      });
    }
  },
};

/** A quick answer for regions without a loop and those that set both of its ends. */
function isInOrder(instrument: Instrument, { loopStart, loopEnd }: PlayedFramesTable, at: number): boolean {
  const start = loopStart[at];
  const end = loopEnd[at];
  return start < 0 ? end < 0 : end >= 0 && instrument.number(start) < instrument.number(end);
}

/** The loop in force where a parameter has a say in it; `undefined` where it is not known or plainly not meant. */
function loopOf(
  { instrument }: CheckContext,
  { loopStart, loopEnd, loopMode, facts }: PlayedFrames,
): { start: number; end: number } | undefined {
  if (loopStart < 0 && loopEnd < 0) return undefined;
  const ofFile = facts?.loops[0];
  if (loopStart < 0 && !facts) return undefined;
  const start = loopStart >= 0 ? instrument.number(loopStart) : (ofFile?.start ?? 0);
  const end =
    loopEnd >= 0 ? instrument.number(loopEnd) : (ofFile?.end ?? (facts ? facts.frames - 1 : Number.NaN));
  if (!(start >= 0) || !(end >= 0)) return undefined;
  // A loop start past the end of the file has a finding of its own.
  if (loopEnd < 0 && facts && start > facts.frames - 1) return undefined;
  // Programs that write all values out give 0 for a loop that is not there (common practice).
  const mode = loopMode >= 0 ? instrument.valueText(loopMode).toLowerCase() : '';
  if (end === 0 && !mode.startsWith('loop_')) return undefined;
  return { start, end };
}

function fixesOf(context: CheckContext, { loopStart, loopEnd }: PlayedFrames): Fix[] {
  const { instrument } = context;
  if (loopStart < 0 || loopEnd < 0)
    return removeFix(context, Math.max(loopStart, loopEnd), 'Use the loop of the file');
  if (instrument.number(loopStart) === instrument.number(loopEnd)) return [];
  return fixOf(
    'Swap loop start and end',
    [
      ...valueEdits(context, loopStart, instrument.valueText(loopEnd)),
      ...valueEdits(context, loopEnd, instrument.valueText(loopStart)),
    ],
    false,
  );
}
