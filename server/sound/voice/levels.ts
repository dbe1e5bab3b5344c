import type { PlayState } from '../../playing/player/playState';
import type { SoundProgram } from '../program/program';
import type { VoiceRecipe } from '../program/recipe';
import { Slot } from '../program/slots';
import { fadeGain, stereoGains, velocityCurveGain, velocityGain } from './gains';
import type { Modulators } from './modulators';
import type { PlayedNote } from './playedNote';

/** The gains of a voice from all that sets its level and place. */
export class Levels {
  /** Left from left and right, right from left and right. */
  readonly gains = new Float64Array(4);
  #staticDb = 0;
  #pan = 0;
  #curveGain = 1;
  #noteGain = 1;
  #hasControllerFades = false;

  begin(program: SoundProgram, region: number, recipe: VoiceRecipe, note: PlayedNote, gainDb: number): void {
    this.#staticDb = gainDb + program.volumeDb[region];
    this.#pan = program.panPercent[region];
    this.#curveGain = velocityCurveGain(note.velocity, recipe.velocityCurve);
    this.#noteGain = recipe.isInverted ? -1 : 1;
    this.#hasControllerFades = false;
    for (const fade of recipe.fades) {
      if (fade.subject >= 0) this.#hasControllerFades = true;
      else this.#noteGain *= fadeGain(fade, fade.subject === -1 ? note.key : note.velocity);
    }
  }

  /** Works out {@link gains} from the values of a voice. */
  work(
    recipe: VoiceRecipe,
    values: Float64Array,
    modulators: Modulators,
    state: PlayState,
    isMono: boolean,
  ): void {
    const db = this.#staticDb + values[Slot.volume] + modulators.amplitudeLfo.amount(values);
    let gain = this.#noteGain * 10 ** (db / 20) * values[Slot.amplitude] * modulators.gain;
    gain *= velocityGain(this.#curveGain, values[Slot.amp_veltrack]);
    if (this.#hasControllerFades) {
      for (const fade of recipe.fades) {
        if (fade.subject >= 0) gain *= fadeGain(fade, state.controllers[fade.subject]);
      }
    }
    const { gains } = this;
    const pan = this.#pan + values[Slot.pan];
    stereoGains(isMono, recipe.isBalanceLaw, pan, values[Slot.width], values[Slot.position], gains);
    for (let at = 0; at < 4; at++) gains[at] *= gain;
  }
}
