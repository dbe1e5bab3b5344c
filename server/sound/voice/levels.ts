import type { PlayState } from '../../playing/player/playState';
import type { SoundProgram } from '../program/program';
import type { VoiceRecipe } from '../program/recipe';
import { Slot } from '../program/slots';
import { fadeGain, stereoGains, velocityCurveGain, velocityGain } from './gains';
import type { Modulators } from './modulators';
import type { VoiceNote } from './voiceNote';

/** The gains of a voice from all that sets its level and place. */
export class Levels {
  /** Left from left and right, right from left and right. */
  readonly gains = new Float64Array(4);
  #staticDb = 0;
  #pan = 0;
  #curveGain = 1;
  #noteGain = 1;
  #hasControllerFades = false;
  /** Gains by pan, width and position alone, and what these were then. */
  readonly #places = new Float64Array(4);
  #placed = Number.NaN;
  #placedWidth = 0;
  #placedPosition = 0;
  #db = Number.NaN;
  #dbGain = 1;

  begin(program: SoundProgram, region: number, recipe: VoiceRecipe, note: VoiceNote, gainDb: number): void {
    this.#staticDb = gainDb + program.volumeDb[region];
    this.#pan = program.panPercent[region];
    this.#curveGain = velocityCurveGain(note.velocity, recipe.velocityCurve);
    this.#noteGain = recipe.isInverted ? -1 : 1;
    this.#hasControllerFades = false;
    this.#placed = Number.NaN;
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
    if (db !== this.#db) {
      this.#db = db;
      this.#dbGain = 10 ** (db / 20);
    }
    let gain = this.#noteGain * this.#dbGain * values[Slot.amplitude] * modulators.gain;
    gain *= velocityGain(this.#curveGain, values[Slot.amp_veltrack]);
    if (this.#hasControllerFades) {
      for (const fade of recipe.fades) {
        if (fade.subject >= 0) gain *= fadeGain(fade, state.controllers[fade.subject]);
      }
    }
    this.#place(recipe, this.#pan + values[Slot.pan], values[Slot.width], values[Slot.position], isMono);
    for (let at = 0; at < 4; at++) this.gains[at] = this.#places[at] * gain;
  }

  /** Works out the gains of a place, where it is another one. */
  #place(recipe: VoiceRecipe, pan: number, width: number, position: number, isMono: boolean): void {
    if (pan === this.#placed && width === this.#placedWidth && position === this.#placedPosition) return;
    this.#placed = pan;
    this.#placedWidth = width;
    this.#placedPosition = position;
    stereoGains(isMono, recipe.isBalanceLaw, pan, width, position, this.#places);
  }
}
