import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import type { SampleFacts } from '../../model/samples';
import { nameNumber } from '../readDocument';
import type { PlayedPart } from './waveformPicture';

/** What a header's values in force play and loop of a sample, as the open SFZ format says it; frames count from 0. */
export function playedPart(instrument: Instrument, header: number, facts: SampleFacts): PlayedPart {
  const { frames } = facts;
  const number = (name: number) => {
    const parameter = instrument.effective(header, name);
    const value = parameter < 0 ? Number.NaN : instrument.number(parameter);
    return value >= 0 ? value : undefined;
  };
  const text = (name: number) => {
    const parameter = instrument.effective(header, name);
    return parameter < 0 ? '' : instrument.valueText(parameter).toLowerCase();
  };
  const isPercent = text(nameNumber(instrument, 'offset_mode')) === 'percent';
  const offset = number(Parameter.offset) ?? 0;
  const start = Math.min(frames - 1, isPercent ? Math.floor((offset / 100) * frames) : offset);
  const end = Math.min(frames - 1, number(Parameter.end) ?? frames - 1);
  const ofFile = facts.loops[0];
  const mode = text(Parameter.loop_mode);
  // Without a mode, a file that carries a loop is looped and any other is not.
  const loops = mode === '' ? ofFile !== undefined : mode.startsWith('loop_');
  if (!loops) return { start, end };
  const loopStart = number(Parameter.loop_start) ?? ofFile?.start ?? 0;
  const loopEnd = Math.min(frames - 1, number(Parameter.loop_end) ?? ofFile?.end ?? frames - 1);
  return loopStart < loopEnd ? { start, end, loop: { start: loopStart, end: loopEnd } } : { start, end };
}

/** The same in words: `Plays frames 100 to 9000, loops 200 to 800`. */
export function playedPartText({ start, end, loop }: PlayedPart): string {
  return `Plays frames ${start} to ${end}${loop ? `, loops ${loop.start} to ${loop.end}` : ', without a loop'}.`;
}
