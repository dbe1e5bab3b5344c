import type { RegionParameters } from './regionParameters';

/** A gain that depends on a key or a velocity. */
export type Gain = (value: number) => number;

/**
 * The crossfades of a region over keys or velocities as a gain; `undefined` where there are none. A pair of which nothing is
 * set fades nothing; a fade that ends before it starts is a step. (The public documentation of the SFZ format, xfin_lokey and
 * the like; square roots for the curve `power`, common practice.)
 */
export function crossfadeGain(values: RegionParameters, what: 'key' | 'vel', move = 0): Gain | undefined {
  const bound = (name: string) => {
    const value = what === 'key' ? values.key(name) : values.number(name, Number.NaN);
    return value + move;
  };
  const [inLow, inHigh] = [bound(`xfin_lo${what}`), bound(`xfin_hi${what}`)];
  const [outLow, outHigh] = [bound(`xfout_lo${what}`), bound(`xfout_hi${what}`)];
  const fadesIn = !Number.isNaN(inLow) || !Number.isNaN(inHigh);
  const fadesOut = !Number.isNaN(outLow) || !Number.isNaN(outHigh);
  const curve = values.word(`xf_${what}curve`);
  if (!fadesIn && !fadesOut) return undefined;
  const shaped = (part: number) => (curve === 'gain' ? part : Math.sqrt(part));
  return (value) =>
    (fadesIn ? shaped(part(value, inLow || 0, inHigh || 0)) : 1) *
    (fadesOut
      ? shaped(1 - part(value, Number.isNaN(outLow) ? 127 : outLow, Number.isNaN(outHigh) ? 127 : outHigh))
      : 1);
}

function part(value: number, low: number, high: number): number {
  if (high <= low) return value >= high ? 1 : 0;
  return Math.max(0, Math.min(1, (value - low) / (high - low)));
}
