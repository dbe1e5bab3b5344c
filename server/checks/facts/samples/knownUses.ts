import type { Instrument } from '../../../model/instrument';
import type { Control } from '../../../model/instrumentParts';
import type { SampleLookup } from '../../../model/samples';
import { ValueTexts } from '../parameters/valueTexts';
import type { SampleUses } from './sampleUse';
import { SampleUse } from './sampleUse';

interface Remembered {
  version: number;
  all: SampleUses;
  numbers: Map<string, number>;
}

/** Numbers of paths to each that is in use; past it all are numbered anew. */
const mostNumbers = 2;
const fewNumbers = 1000;

const remembered = new WeakMap<SampleLookup, Remembered>();

/**
 * Keeps the uses of samples for the next check; those of the check before are forgotten. Answers the latter where they are the
 * same, so that what was worked out from them still holds.
 */
export function rememberUses(
  samples: SampleLookup,
  all: SampleUses,
  numbers: Map<string, number>,
): SampleUses {
  if (samples.version === undefined) return all;
  const last = remembered.get(samples);
  if (last && last.version === samples.version && areSame(last.all, all)) return last.all;
  if (numbers.size > fewNumbers + mostNumbers * all.uses.length) remembered.delete(samples);
  else remembered.set(samples, { version: samples.version, all, numbers });
  return all;
}

function areSame(one: SampleUses, other: SampleUses): boolean {
  return (
    one.paths === other.paths &&
    areAlike(one.uses, other.uses) &&
    areAlike(one.useOfRegion, other.useOfRegion) &&
    areAlike(one.regions, other.regions)
  );
}

function areAlike<T>(one: ArrayLike<T>, other: ArrayLike<T>): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at++) if (one[at] !== other[at]) return false;
  return true;
}

/**
 * The uses of the check before, to be gone through beside those of the present one. From one keystroke to the next
 * nearly all are the same, and finding that out takes less than putting paths together and looking them up.
 */
export class KnownUses {
  readonly #instrument: Instrument;
  readonly #values: ValueTexts;
  readonly #uses: readonly SampleUse[];
  /** Numbers of the paths that were in use, by path; the same object as long as they stay the same. */
  readonly numbers: Map<string, number>;
  #at = 0;
  #control: Control | undefined;
  #defaultPath = '';

  /** Knows none where answers about samples can have changed since. */
  constructor(instrument: Instrument, samples: SampleLookup) {
    this.#instrument = instrument;
    this.#values = new ValueTexts(instrument);
    const last = remembered.get(samples);
    const isCurrent = last !== undefined && last.version === samples.version;
    this.#uses = isCurrent ? last.all.uses : [];
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
    const at = this.#at++;
    // One region more or less shifts all that follow.
    const use =
      this.#useAt(at, parameter) ?? this.#useAt(at + 1, parameter) ?? this.#useAt(at - 1, parameter);
    if (!use || (use.isFile && use.state.kind === 'pending')) return undefined;
    return use.parameter === parameter && use.region === region
      ? use
      : new SampleUse(parameter, region, use.sample);
  }

  #useAt(place: number, parameter: number): SampleUse | undefined {
    const use = this.#uses[place];
    if (!use || use.defaultPath !== this.#defaultPath || !this.#values.is(parameter, use.value))
      return undefined;
    this.#at = place + 1;
    return use;
  }
}
