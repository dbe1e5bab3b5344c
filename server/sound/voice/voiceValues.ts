import type { PlayState } from '../../playing/player/playState';
import { RandomUse, randomValue } from '../../playing/player/randomValues';
import { type Curves, curveValue } from '../modulation/flexibleEnvelope';
import type { Move, VoiceRecipe } from '../program/recipe';
import { MoveSource } from '../program/recipe';
import { Slot } from '../program/slots';
import type { VoiceNote } from './voiceNote';

/** Below this a value that is smoothed has arrived. */
const arrived = 1e-6;

/** The values of a voice: what the text says, moved by velocity, key, chance and controllers. */
export class VoiceValues {
  /** By slot. */
  readonly now: Float64Array;
  /** As they were at the start. */
  readonly first: Float64Array;
  /** Whether something still moves towards the value of its controller. */
  isGliding = false;
  readonly #curves: Curves;
  /** What each move takes in, 0..1, or as its source gives it. */
  #inputs: Float64Array;
  #recipe: VoiceRecipe | undefined;
  #note: VoiceNote | undefined;

  constructor(slotCount: number, curves: Curves) {
    this.now = new Float64Array(slotCount);
    this.first = new Float64Array(slotCount);
    this.#curves = curves;
    this.#inputs = new Float64Array(64);
  }

  begin(recipe: VoiceRecipe, note: VoiceNote, state: PlayState): void {
    this.#recipe = recipe;
    this.#note = note;
    const { moves } = recipe;
    if (moves.length > this.#inputs.length) this.#inputs = new Float64Array(moves.length * 2);
    for (let at = 0; at < moves.length; at++) this.#inputs[at] = firstInput(moves[at], note, state);
    this.isGliding = false;
    this.#sum();
    this.first.set(this.now);
  }

  /** Takes in controllers as they are; what is smoothed moves on by some seconds. */
  follow(state: PlayState, seconds: number): void {
    const moves = this.#recipe?.moves ?? [];
    const key = this.#note?.key ?? 0;
    this.isGliding = false;
    for (let at = 0; at < moves.length; at++) {
      const { source, smoothMs } = moves[at];
      if (source > MoveSource.polyPressure) continue;
      const target =
        (source === MoveSource.polyPressure ? state.polyPressure[key] : state.controllers[source]) / 127;
      if (smoothMs <= 0) {
        this.#inputs[at] = target;
        continue;
      }
      const left = (this.#inputs[at] - target) * Math.exp(-seconds / (smoothMs / 1000));
      this.#inputs[at] = Math.abs(left) < arrived ? target : target + left;
      if (this.#inputs[at] !== target) this.isGliding = true;
    }
    this.#sum();
  }

  #sum(): void {
    const recipe = this.#recipe as VoiceRecipe;
    const { now } = this;
    now.set(recipe.base);
    const { moves } = recipe;
    for (let at = 0; at < moves.length; at++) {
      const move = moves[at];
      const amount = this.#amount(move, this.#inputs[at]);
      if (move.multiplies) now[move.slot] *= amount / 100;
      else now[move.slot] += move.slot === Slot.amplitude ? amount / 100 : amount;
    }
  }

  #amount({ source, depth, curve, step }: Move, input: number): number {
    if (source >= MoveSource.ownVelocity) return depth * input;
    const points = curve >= 0 ? this.#curves.get(curve) : undefined;
    const amount = depth * (points ? curveValue(points, input * 127) : input);
    return step > 0 ? Math.trunc(amount / step + 1e-9 * Math.sign(amount)) * step : amount;
  }
}

function firstInput({ source, curve, centre }: Move, note: VoiceNote, state: PlayState): number {
  switch (source) {
    case MoveSource.ownVelocity:
      return note.velocity / 127;
    case MoveSource.keyDistance:
      return note.key - centre;
    case MoveSource.randomUp:
      return randomValue(note.randomSeed, curve);
    case MoveSource.randomBoth:
      return 2 * randomValue(note.randomSeed, curve) - 1;
    case MoveSource.polyPressure:
      return state.polyPressure[note.key] / 127;
    case MoveSource.velocity:
      return note.velocity / 127;
    case MoveSource.key:
      return note.key / 127;
    case MoveSource.random:
      return randomValue(note.randomSeed, RandomUse.controller);
    default:
      return state.controllers[source] / 127;
  }
}
