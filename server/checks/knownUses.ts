import type { Control, Instrument } from '../model/instrument';
import type { SampleLookup } from '../model/samples';
import type { SampleUse } from './sampleUses';

interface Remembered {
  version: number;
  uses: readonly SampleUse[];
}

const remembered = new WeakMap<SampleLookup, Remembered>();

/** Keeps the uses of samples for the next check; those of the check before are forgotten. */
export function rememberUses(samples: SampleLookup, uses: readonly SampleUse[]): void {
  if (samples.version !== undefined) remembered.set(samples, { version: samples.version, uses });
}

/**
 * The uses of the check before, to be gone through beside those of the present one. From one keystroke to the next
 * nearly all are the same, and finding that out takes less than putting paths together and looking them up.
 */
export class KnownUses {
  readonly #instrument: Instrument;
  readonly #uses: readonly SampleUse[];
  #at = 0;
  #control: Control | undefined;
  #defaultPath = '';

  /** Knows none where answers about samples can have changed since. */
  constructor(instrument: Instrument, samples: SampleLookup) {
    this.#instrument = instrument;
    const last = remembered.get(samples);
    this.#uses = last && last.version === samples.version ? last.uses : [];
  }

  /** The use that the next parameter makes in a region, where it is the one before at this place or beside it. */
  next(parameter: number, region: number): SampleUse | undefined {
    if (this.#uses.length === 0) return undefined;
    const control = this.#instrument.control(region);
    if (control !== this.#control) {
      this.#control = control;
      this.#defaultPath = control.defaultPath;
    }
    const value = this.#instrument.valueText(parameter);
    const at = this.#at++;
    // One region more or less shifts all that follow.
    const use = this.#useAt(at, value) ?? this.#useAt(at + 1, value) ?? this.#useAt(at - 1, value);
    if (!use || (use.isFile && use.state.kind === 'pending')) return undefined;
    return use.parameter === parameter && use.region === region ? use : { ...use, parameter, region };
  }

  #useAt(place: number, value: string): SampleUse | undefined {
    const use = this.#uses[place];
    if (!use || use.value !== value || use.defaultPath !== this.#defaultPath) return undefined;
    this.#at = place + 1;
    return use;
  }
}
