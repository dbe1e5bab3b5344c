import type { Instrument } from '../instrument';

/** Keys and velocities, both ends included. */
export interface Rectangle {
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
}

/** The keys and velocities that a region answers; `undefined` where no key triggers it or a range is inverted. */
export function rectangleOf(instrument: Instrument, region: number): Rectangle | undefined {
  const lowKey = instrument.lowKey[region];
  const highKey = instrument.highKey[region];
  const lowVelocity = Math.max(0, instrument.lowVelocity[region]);
  const highVelocity = instrument.highVelocity[region];
  if (lowKey < 0 || highKey < lowKey || highVelocity < lowVelocity) return undefined;
  return { lowKey, highKey, lowVelocity, highVelocity };
}

/** What two rectangles share; `undefined` where they do not meet. */
export function intersectionOf(a: Rectangle, b: Rectangle): Rectangle | undefined {
  const lowKey = Math.max(a.lowKey, b.lowKey);
  const highKey = Math.min(a.highKey, b.highKey);
  const lowVelocity = Math.max(a.lowVelocity, b.lowVelocity);
  const highVelocity = Math.min(a.highVelocity, b.highVelocity);
  return lowKey > highKey || lowVelocity > highVelocity
    ? undefined
    : { lowKey, highKey, lowVelocity, highVelocity };
}

const codesOfInstrument = new WeakMap<Instrument, Int32Array>();

/** The {@link rectangleCode} of each region, in the order of `Instrument.regions`; worked out when first asked for. */
export function rectangleCodesOf(instrument: Instrument): Int32Array {
  let codes = codesOfInstrument.get(instrument);
  if (!codes) {
    codes = instrument.regions.map((region) => rectangleCode(instrument, region));
    codesOfInstrument.set(instrument, codes);
  }
  return codes;
}

/** The rectangle of a region in 28 bits, or −1; see {@link rectangleOf}. */
export function rectangleCode(instrument: Instrument, region: number): number {
  const lowKey = instrument.lowKey[region];
  const highKey = instrument.highKey[region];
  const lowVelocity = Math.max(0, instrument.lowVelocity[region]);
  const highVelocity = instrument.highVelocity[region];
  if (lowKey < 0 || highKey < lowKey || highVelocity < lowVelocity) return -1;
  return (lowKey << 21) | (highKey << 14) | (lowVelocity << 7) | highVelocity;
}

/** The sides of a rectangle by its code. */
export function lowKeyIn(code: number): number {
  return code >> 21;
}

export function highKeyIn(code: number): number {
  return (code >> 14) & 127;
}

export function lowVelocityIn(code: number): number {
  return (code >> 7) & 127;
}

export function highVelocityIn(code: number): number {
  return code & 127;
}
