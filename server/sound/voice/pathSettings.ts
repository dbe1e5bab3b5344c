import type { SoundProgram } from '../program/program';
import type { VoiceRecipe } from '../program/recipe';
import { Slot } from '../program/slots';
import type { PathSettings } from './samplePath';
import type { StoredSample } from './voiceSamples';

/**
 * What of a sample a region plays. Loop points and ends behind the last frame are taken for the last frame; a loop that
 * ends before it starts is none.
 */
export function pathSettings(
  program: SoundProgram,
  region: number,
  recipe: VoiceRecipe,
  values: Float64Array,
  { frames, rate }: StoredSample,
): PathSettings {
  const last = frames - 1;
  const offset = program.offset[region] + values[Slot.offset];
  const start = recipe.isPercentOffset ? (offset / 100) * frames : offset;
  const end = program.end[region];
  const loopStart = Math.max(0, program.loopStart[region]) + values[Slot.loop_start];
  const loopEnd = program.loopEnd[region] < 0 ? last : program.loopEnd[region];
  return {
    offset: Math.max(0, Math.floor(start)),
    end: end < 0 ? last : Math.min(last, Math.floor(end)),
    loopMode: program.loopMode[region],
    loopType: program.loopType[region],
    loopStart: Math.max(0, Math.floor(loopStart)),
    loopEnd: Math.min(last, Math.floor(loopEnd + values[Slot.loop_end])),
    loopCount: recipe.loopCount,
    crossfadeFrames: recipe.loopCrossfadeSeconds * rate,
    sampleCount: Math.floor(recipe.sampleCount),
    isReverse: recipe.isReverse,
  };
}
