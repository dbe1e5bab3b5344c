import type { Instrument } from '../instrument';
import type { Conditions } from './conditions';
import type { KeyGap, PlayedRectangle } from './gaps';
import { findKeyGapsBeside, playedRectangles } from './gaps';

/** Keys of a hit or a noise at the most; what is wider is played as notes (our choice). */
const widestHit = 2;

/**
 * Keys between played ones that nothing answers, where that is hardly meant. Keys of a hit, of a sound at one pitch and of silence
 * (a choke button) stand where they please: they fill a gap and make none. Takes the keys that switch and the rectangles of all regions.
 */
export function findLikelyKeyGaps(
  instrument: Instrument,
  conditions: Conditions,
  switching: ReadonlySet<number>,
  rectangles: readonly PlayedRectangle[],
): KeyGap[] {
  // Mostly there are none, and nothing more is asked.
  if (findKeyGapsBeside(switching, rectangles).length === 0) return [];
  const standing = new StandingKeys(instrument);
  let notes = playedRectangles(instrument, conditions, (region) => !standing.isAlone(region));
  if (notes.length === 0)
    notes = playedRectangles(instrument, conditions, (region) => standing.isFixedRange(region));
  const taken = new Set(switching);
  for (const { lowKey, highKey } of rectangles) for (let key = lowKey; key <= highKey; key++) taken.add(key);
  return findKeyGapsBeside(taken, notes);
}

/** Which regions stand on keys of their own. */
class StandingKeys {
  readonly #instrument: Instrument;
  readonly #tracking: number;
  readonly #mode: number;
  readonly #end: number;

  constructor(instrument: Instrument) {
    const { names } = instrument;
    const number = (name: string) => names.canonical(names.idOf(name));
    this.#instrument = instrument;
    this.#tracking = number('pitch_keytrack');
    this.#mode = number('loop_mode');
    this.#end = number('end');
  }

  isAlone(region: number): boolean {
    if (this.#isSilent(region) || this.#isFixed(region)) return true;
    if (this.#width(region) > widestHit) return false;
    const mode = this.#instrument.effective(region, this.#mode);
    return mode >= 0 && this.#instrument.valueText(mode).toLowerCase() === 'one_shot';
  }

  /** Whether a region plays one pitch on more keys than a hit has. */
  isFixedRange(region: number): boolean {
    return this.#width(region) > widestHit && this.#isFixed(region) && !this.#isSilent(region);
  }

  #width(region: number): number {
    return this.#instrument.highKey[region] - this.#instrument.lowKey[region] + 1;
  }

  #isFixed(region: number): boolean {
    const tracking = this.#instrument.effective(region, this.#tracking);
    return tracking >= 0 && this.#instrument.number(tracking) === 0;
  }

  #isSilent(region: number): boolean {
    const end = this.#instrument.effective(region, this.#end);
    if (end >= 0 && this.#instrument.number(end) < 0) return true;
    return this.#instrument.samplePath(region)?.toLowerCase() === '*silence';
  }
}
