import type { Instrument } from '../model/instrument';
import { noteNameOf } from '../model/keys';

/** The keys and velocities of a header in short: `C3–E3, velocity 1–63`; only what is limited is named. */
export function rangeText(instrument: Instrument, header: number): string {
  const lowKey = instrument.lowKey[header] as number;
  const highKey = instrument.highKey[header] as number;
  const lowVelocity = Math.max(1, instrument.lowVelocity[header] as number);
  const highVelocity = instrument.highVelocity[header] as number;
  const keys =
    lowKey < 0 || highKey < 0
      ? 'no keys'
      : lowKey === 0 && highKey === 127
        ? ''
        : between(noteNameOf(lowKey), noteNameOf(highKey));
  const velocities =
    lowVelocity === 1 && highVelocity === 127 ? '' : `velocity ${between(lowVelocity, highVelocity)}`;
  if (keys !== '' && velocities !== '') return `${keys}, ${velocities}`;
  return keys || velocities || 'all keys';
}

function between(low: number | string, high: number | string): string {
  return low === high ? `${low}` : `${low}–${high}`;
}

/** `key 60 (C4)` or `keys 60 (C4) to 64 (E4)`. */
export function keySpanText(low: number, high: number): string {
  return low === high ? `key ${keyText(low)}` : `keys ${keyText(low)} to ${keyText(high)}`;
}

/** A key number with its note name: `60 (C4)`. */
export function keyText(key: number): string {
  return `${key} (${noteNameOf(key)})`;
}
