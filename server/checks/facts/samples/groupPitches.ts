import type { Instrument } from '../../../model/instrument';
import type { PitchClaims } from './pitchClaims';

/** The samples of a group agree where they are off by amounts within so many cents (our choice). */
const agreeingCents = 50;
/** So many samples that are off by the same make a stop or a layer of its own (our choice). */
const fewest = 2;

/** What the samples of one header share: all of them are off by about the same. */
export interface GroupPitch {
  header: number;
  /** How far they sound above their root keys. */
  cents: number;
  /** The samples in it whose pitch is sure. */
  samples: number;
  /** The claims among those asked for, in order. */
  claims: number[];
}

interface Span {
  low: number;
  high: number;
  claims: number;
  paths: Set<number>;
}

/**
 * Groups whose samples all are off by the same, while others are not: stops of an organ of another length, harmonics, a course an
 * octave away. Of groups in one another the outermost is given. Takes claims that are off, and how sure a pitch has to be.
 */
export function groupPitches(
  instrument: Instrument,
  claims: PitchClaims,
  off: readonly number[],
  surely: number,
): GroupPitch[] {
  const spans = new Map<number, Span>();
  let sure = 0;
  for (let at = 0; at < claims.count; at++) {
    if (claims.confidence[at] < surely) continue;
    sure++;
    const cents = claims.deviationCents[at];
    for (let header = parentOf(instrument, claims, at); header >= 0; header = instrument.parent(header)) {
      const known = spans.get(header);
      if (known) {
        known.low = Math.min(known.low, cents);
        known.high = Math.max(known.high, cents);
        known.claims++;
        known.paths.add(claims.path[at]);
      } else spans.set(header, { low: cents, high: cents, claims: 1, paths: new Set([claims.path[at]]) });
    }
  }
  const found = new Map<number, GroupPitch>();
  for (const at of off) {
    let outermost = -1;
    for (let header = parentOf(instrument, claims, at); header >= 0; header = instrument.parent(header)) {
      const span = spans.get(header);
      if (!span || span.claims === sure || span.high - span.low > agreeingCents) break;
      if (span.paths.size >= fewest) outermost = header;
    }
    const span = spans.get(outermost);
    if (!span) continue;
    const known = found.get(outermost);
    if (known) known.claims.push(at);
    else
      found.set(outermost, {
        header: outermost,
        cents: (span.low + span.high) / 2,
        samples: span.paths.size,
        claims: [at],
      });
  }
  return [...found.values()];
}

function parentOf(instrument: Instrument, claims: PitchClaims, at: number): number {
  return instrument.parent(claims.regionOf(at));
}
