import type { Fix } from '../model/finding';
import { nameOf } from '../model/paths';
import { removeFix, valueFix } from './parameterFixes';
import type { PlayedFrames } from './playedFrames';
import { isOwn, playedFramesOf } from './playedFrames';
import type { CheckContext, Report } from './rule';

/** Reports frame positions of the given parameters that lie past the last frame of the sample. */
export function reportPastEnd(
  context: CheckContext,
  report: Report,
  parametersOf: (played: PlayedFrames) => readonly number[],
): void {
  const { instrument } = context;
  const seen = new Set<string>();
  for (const played of playedFramesOf(context)) {
    if (!played.facts) continue;
    const { frames } = played.facts;
    for (const parameter of parametersOf(played)) {
      if (parameter < 0 || !(instrument.number(parameter) > frames - 1)) continue;
      const key = `${parameter} ${played.use.path}`;
      if (seen.has(key)) continue;
      seen.add(key);
      const value = instrument.number(parameter);
      const name = instrument.names.text(instrument.name(parameter));
      const isOnePast = value === frames;
      report({
        ...instrument.valueSpan(parameter),
        message: `${name}=${value} is past the end of "${nameOf(played.use.path)}", whose last frame is ${frames - 1}. ${
          isOnePast
            ? `It is one frame past, so its source counted frames from 1: write ${frames - 1}.`
            : `Write ${frames - 1} or less.`
        }`,
        fixes: () => fixesOf(context, played, parameter, frames, isOnePast),
      });
    }
  }
}

function fixesOf(
  context: CheckContext,
  { region, offset, loopStart }: PlayedFrames,
  parameter: number,
  frames: number,
  isOnePast: boolean,
): Fix[] {
  const name = context.instrument.names.text(context.instrument.name(parameter));
  // A start on the last frame would play next to nothing.
  if (parameter === offset || parameter === loopStart) {
    return removeFix(context, parameter, `Take ${name} out`);
  }
  const last = String(frames - 1);
  const title = isOnePast ? `Count from 0: ${last}` : `Change to the last frame, ${last}`;
  return valueFix(context, parameter, last, title, isOnePast && isOwn(context.instrument, parameter, region));
}
