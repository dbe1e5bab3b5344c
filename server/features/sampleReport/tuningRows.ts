import type { PitchClaim } from '../../checks/facts/samples/pitchClaims';
import { frequencyOfKey } from '../../model/keys';
import { median } from '../../model/median';
import { nameOf } from '../../model/paths';
import { pitchDistance } from './pitchDistance';

/** What sounds where a key says that it is the root of samples. */
export interface TuningRow {
  key: number;
  /** How many samples have it as their root, and of how many of these a pitch is sure. */
  samples: number;
  sure: number;
  /** The frequency of the key in equal temperament, and what sounds there, tuning included: the median of the samples. */
  claimedHertz: number;
  measuredHertz: number | undefined;
  /** How far that lies above the key. */
  cents: number | undefined;
  /** Samples that are off by half a semitone or more, in words. */
  remark: string;
}

/** A pitch measured with less confidence is not sure. */
const surely = 0.8;

/** The tuning of an instrument over the root keys of its samples, the lowest first. */
export function tuningRows(claims: readonly PitchClaim[]): TuningRow[] {
  const byKey = new Map<number, Map<string, PitchClaim>>();
  for (const claim of claims) {
    const samples = byKey.get(claim.rootKey) ?? new Map<string, PitchClaim>();
    byKey.set(claim.rootKey, samples);
    samples.set(`${claim.tuneCents} ${claim.use.path}`, claim);
  }
  return [...byKey]
    .sort(([a], [b]) => a - b)
    .map(([key, samples]) => {
      const sure = [...samples.values()].filter(({ pitch }) => pitch.confidence >= surely);
      const cents = sure.length === 0 ? undefined : median(sure.map(({ deviationCents }) => deviationCents));
      const claimedHertz = frequencyOfKey(key);
      return {
        key,
        samples: samples.size,
        sure: sure.length,
        claimedHertz,
        measuredHertz: cents === undefined ? undefined : claimedHertz * 2 ** (cents / 1200),
        cents,
        remark: remarkOf(sure),
      };
    });
}

/** One distance for all samples of a key is said once; else each sample is named that is off. */
function remarkOf(sure: readonly PitchClaim[]): string {
  const distances = sure.map(({ deviationCents }) => pitchDistance(deviationCents));
  const [first] = distances;
  if (first !== undefined && distances.every((one) => one === first)) return first;
  return sure
    .flatMap(({ use }, at) => (distances[at] === undefined ? [] : `${nameOf(use.path)}: ${distances[at]}`))
    .join('; ');
}
