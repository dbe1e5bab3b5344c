import type { Fix } from '../../../model/finding';
import { nameOf } from '../../../model/paths';
import type { CheckContext, Report } from '../../rule';
import { ofKind, removeFix, valueFix } from '../parameters/parameterFixes';
import type { PlayedFrames, PlayedFramesTable } from './playedFrames';
import { isOwn, playedFramesOf } from './playedFrames';

/** Reports frame positions of the given parameters that lie past the last frame of the sample. */
export function reportPastEnd(
  context: CheckContext,
  report: Report,
  columnsOf: (frames: PlayedFramesTable) => readonly Int32Array[],
): void {
  const { instrument } = context;
  const { numbers } = instrument.parameters;
  const frames = playedFramesOf(context);
  const columns = columnsOf(frames);
  const seen = new Set<string>();
  for (let at = 0; at < frames.count; at++) {
    const last = frames.lastFrame[at];
    for (let column = 0; column < columns.length; column++) {
      const parameter = columns[column]?.[at];
      // False for NaN, where the value is no number or the file is not known.
      if (parameter < 0 || !(numbers[parameter] > last)) continue;
      const played = frames.at(at);
      const key = `${parameter} ${played.use.path}`;
      if (seen.has(key)) continue;
      seen.add(key);
      reportOne(context, report, played, parameter, last);
    }
  }
}

function reportOne(
  context: CheckContext,
  report: Report,
  played: PlayedFrames,
  parameter: number,
  last: number,
): void {
  const { instrument } = context;
  const value = instrument.number(parameter);
  const name = instrument.names.text(instrument.name(parameter));
  const isOnePast = value === last + 1;
  report({
    ...instrument.valueSpan(parameter),
    message: `${name}=${value} is past the end of "${nameOf(played.use.path)}", whose last frame is ${last}. ${
      isOnePast
        ? `It is one frame too far, so its source counted frames from 1. Write ${last}.`
        : `Write ${last} or less.`
    }`,
    fixes: () => fixesOf(context, played, parameter, last, isOnePast),
  });
}

function fixesOf(
  context: CheckContext,
  { region, offset, loopStart }: PlayedFrames,
  parameter: number,
  lastFrame: number,
  isOnePast: boolean,
): Fix[] {
  const name = context.instrument.names.text(context.instrument.name(parameter));
  // A start on the last frame would play next to nothing.
  if (parameter === offset || parameter === loopStart) {
    return ofKind('Remove the starts', removeFix(context, parameter, `Remove ${name}`));
  }
  const last = String(lastFrame);
  const title = isOnePast ? `Count from 0: ${last}` : `Change to the last frame, ${last}`;
  const isSafe = isOnePast && isOwn(context.instrument, parameter, region);
  return ofKind('Change to the last frame', valueFix(context, parameter, last, title, isSafe));
}
