import type { PlayState } from '../../playing/player/playState';
import { choice } from '../choices';
import type { Walk } from '../interpolation/readRows';
import type { VoiceRecipe } from '../program/recipe';

/** What the pitch wheel adds to the pitch, in cents; `bend` is −8192..8191 (public SFZ documentation, bend_up). */
function bendCents({ bend }: VoiceRecipe, wheel: number): number {
  const cents = wheel >= 0 ? (bend.up * wheel) / 8191 : (bend.down * -wheel) / 8192;
  const step = wheel >= 0 ? bend.stepUp : bend.stepDown;
  return step > 1 ? Math.trunc(cents / step + 1e-9 * Math.sign(cents)) * step : cents;
}

/** The pitch wheel as a voice follows it: at once, or smoothed. */
export class BendFollower {
  cents = 0;
  isGliding = false;

  begin(recipe: VoiceRecipe, { bend }: PlayState): void {
    this.cents = bendCents(recipe, bend);
    this.isGliding = false;
  }

  follow(recipe: VoiceRecipe, { bend }: PlayState, seconds: number): void {
    const target = bendCents(recipe, bend);
    const { smoothMs } = recipe.bend;
    const left = smoothMs > 0 ? (this.cents - target) * Math.exp(-seconds / (smoothMs / 1000)) : 0;
    this.isGliding = Math.abs(left) > 1e-4;
    this.cents = this.isGliding ? target + left : target;
  }
}

/** Frames of a sample a frame of output; `ratio` is that of the sample rates. */
export function stepOf(cents: number, ratio: number): number {
  return Math.min(choice.mostRatioUp.value, ratio * 2 ** (cents / 1200));
}

/** Frames of output, `most` at most, before a moving position has come `distance` frames on. */
export function framesUntil(distance: number, { step, slope }: Walk, most: number): number {
  if (distance > most * Math.max(step, step + slope * most)) return most;
  if (slope === 0) return Math.max(0, Math.min(most, Math.ceil(distance / step)));
  let frames = 0;
  for (let left = distance, at = step; left > 0 && frames < most; frames++, at += slope) left -= at;
  return frames;
}
