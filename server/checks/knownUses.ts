import type { Control, Instrument } from '../model/instrument';
import type { SampleLookup } from '../model/samples';
import type { SampleUse } from './sampleUses';

interface Remembered {
  version: number;
  uses: readonly SampleUse[];
  numbers: Map<string, number>;
}

/** Numbers of paths to each that is in use; past it all are numbered anew. */
const mostNumbers = 2;
const fewNumbers = 1000;

const remembered = new WeakMap<SampleLookup, Remembered>();

/** Keeps the uses of samples for the next check; those of the check before are forgotten. */
export function rememberUses(
  samples: SampleLookup,
  uses: readonly SampleUse[],
  numbers: Map<string, number>,
): void {
  if (samples.version === undefined) return;
  if (numbers.size > fewNumbers + mostNumbers * uses.length) remembered.delete(samples);
  else remembered.set(samples, { version: samples.version, uses, numbers });
}

/**
 * The uses of the check before, to be gone through beside those of the present one. From one keystroke to the next
 * nearly all are the same, and finding that out takes less than putting paths together and looking them up.
 */
export class KnownUses {
  readonly #instrument: Instrument;
  readonly #uses: readonly SampleUse[];
  /** Numbers of the paths that were in use, by path; the same object as long as they stay the same. */
  readonly numbers: Map<string, number>;
  #at = 0;
  #control: Control | undefined;
  #defaultPath = '';

  /** Knows none where answers about samples can have changed since. */
  constructor(instrument: Instrument, samples: SampleLookup) {
    this.#instrument = instrument;
    const last = remembered.get(samples);
    const isCurrent = last !== undefined && last.version === samples.version;
    this.#uses = isCurrent ? last.uses : [];
    this.numbers = isCurrent ? last.numbers : new Map();
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
