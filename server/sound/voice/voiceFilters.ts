import { bandValues, filterValues, stagesOf } from '../modulation/filterValues';
import { type FilterValues, StateVariableFilter } from '../modulation/stateVariableFilter';
import type { VoiceRecipe } from '../program/recipe';

/** The filters and equaliser bands of a voice, one behind the other. */
export class VoiceFilters {
  readonly #filters: StateVariableFilter[] = [];
  readonly #values: FilterValues = { g: 0, k: 1, input: 1, band: 0, low: 0 };
  #count = 0;

  get isEmpty(): boolean {
    return this.#count === 0;
  }

  /** Begins with filters as the values say; `cents` are added to the cutoff of the first filter. */
  begin(recipe: VoiceRecipe, values: Float64Array, cents: number, sampleRate: number): void {
    this.#set(recipe, values, cents, sampleRate, 0);
  }

  /** Moves all to what the values say over some frames. */
  moveTo(recipe: VoiceRecipe, values: Float64Array, cents: number, sampleRate: number, frames: number): void {
    this.#set(recipe, values, cents, sampleRate, frames);
  }

  /** Sets all filters to what the values say: afresh for no frames, else over so many. */
  #set(
    { filters, bands }: VoiceRecipe,
    values: Float64Array,
    cents: number,
    sampleRate: number,
    frames: number,
  ): void {
    this.#count = 0;
    for (let at = 0; at < filters.length; at++) {
      const { type, hertz, cents: moved, resonance, gain } = filters[at];
      const cutoff = hertz * 2 ** ((values[moved] + (at === 0 ? cents : 0)) / 1200);
      for (let stage = 0; stage < stagesOf(type); stage++) {
        filterValues(type, stage, cutoff, values[resonance], values[gain], sampleRate, this.#values);
        this.#setNext(frames);
      }
    }
    for (const { type, hertz, bandwidth, gain } of bands) {
      bandValues(type, values[hertz], values[bandwidth], values[gain], sampleRate, this.#values);
      this.#setNext(frames);
    }
  }

  #setNext(frames: number): void {
    if (this.#count === this.#filters.length) this.#filters.push(new StateVariableFilter());
    const filter = this.#filters[this.#count++];
    if (frames === 0) filter.begin(this.#values);
    else filter.moveTo(this.#values, frames);
  }

  /** Filters two channels in place; one where both are the same. */
  process(left: Float64Array, right: Float64Array, count: number): void {
    for (let at = 0; at < this.#count; at++) this.#filters[at].process(left, right, count);
  }

  /** Whether all have died away to nothing that is heard. */
  get isSilent(): boolean {
    for (let at = 0; at < this.#count; at++) if (this.#filters[at].held > silent) return false;
    return true;
  }
}

/** −140 dB. */
const silent = 1e-7;
