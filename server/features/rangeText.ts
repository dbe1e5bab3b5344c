import type { Instrument } from '../model/instrument';
import { noteNamesText, velocityText } from '../model/wording/rangeWords';

/** The keys and velocities of headers in short; many regions have the same. */
export class RangeTexts {
  readonly #instrument: Instrument;
  readonly #texts = new Map<number, string>();

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  /**
   * `C3 to E3, velocity 1 to 63`; only what is limited is named. In ASCII: one other character makes an outline of thousands
   * of regions half as slow again to send.
   */
  of(header: number): string {
    const { lowKey, highKey, lowVelocity, highVelocity } = this.#instrument;
    const low = lowKey[header];
    const high = highKey[header];
    const lowest = Math.max(1, lowVelocity[header]);
    const highest = highVelocity[header];
    // Keys are −1 to 127, and so are velocities.
    const code = (((low + 1) * 256 + high + 1) * 256 + lowest) * 256 + highest + 1;
    let text = this.#texts.get(code);
    if (text === undefined) {
      text = rangeText(low, high, lowest, highest);
      this.#texts.set(code, text);
    }
    return text;
  }
}

function rangeText(lowKey: number, highKey: number, lowVelocity: number, highVelocity: number): string {
  const keys =
    lowKey < 0 || highKey < 0
      ? 'no keys'
      : lowKey === 0 && highKey === 127
        ? ''
        : noteNamesText(lowKey, highKey);
  const velocities = lowVelocity === 1 && highVelocity === 127 ? '' : velocityText(lowVelocity, highVelocity);
  if (keys !== '' && velocities !== '') return `${keys}, ${velocities}`;
  return keys || velocities || 'all keys';
}
