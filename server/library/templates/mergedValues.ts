import { HeaderKind } from '../../model/headerKinds';
import { plainNumber } from '../../model/instrumentBuilder';
import type { Notation } from '../../model/notation';
import { decimalText } from '../../model/text/decimalText';

/** A value that can be said by another one that it adds to, for want of a place of its own. */
interface Merge {
  from: string;
  into: 'tune' | 'volume';
  /** What it adds there; NaN where that cannot be said. */
  adds(number: number): number;
}

/** The least level that the open SFZ format documents for `volume`; it stands for silence. */
const silenceDb = -144;

/** A semitone is 100 cents; a share of the amplitude is 20 · log10(share) dB (IEC 60027-3: levels of field quantities). */
const merges: readonly Merge[] = [
  { from: 'transpose', into: 'tune', adds: (semitones) => 100 * semitones },
  { from: 'amplitude', into: 'volume', adds: decibelsOf },
];

function decibelsOf(percent: number): number {
  return percent === 0 ? silenceDb : 20 * Math.log10(percent / 100);
}

/** By the name of a value of the source, what it is written in. */
export type MergedValues = ReadonlyMap<string, string>;

/** The values for which a notation has no place, while it has one for what they add to in its regions. */
export function mergedIn({ parameters }: Notation): MergedValues {
  const places = parameters?.(HeaderKind.region) ?? [];
  const all = new Set([...places, ...(parameters?.(HeaderKind.group) ?? [])]);
  return new Map(
    merges
      .filter(({ from, into }) => places.includes(into) && !all.has(from))
      .map(({ from, into }) => [from, into]),
  );
}

/** Puts values into those that say them as well; answers by the latter the parameters of the former. */
export function mergeValues(
  merged: MergedValues,
  values: Map<string, string>,
  parameters: Map<string, number>,
): ReadonlyMap<string, number> {
  const from = new Map<string, number>();
  for (const merge of merges) {
    const parameter = parameters.get(merge.from);
    if (parameter === undefined || !merged.has(merge.from)) continue;
    const before = plainNumber(values.get(merge.into) ?? '0');
    const sum = before + merge.adds(plainNumber(values.get(merge.from) ?? ''));
    if (Number.isNaN(sum)) continue;
    values.delete(merge.from);
    values.set(merge.into, decimalText(rounded(merge, sum)));
    if (!parameters.has(merge.into)) parameters.set(merge.into, parameter);
    from.set(merge.into, parameter);
  }
  return from;
}

/** Levels to a millionth of a dB, as forms read them, and none below silence. */
function rounded({ into }: Merge, sum: number): number {
  return into === 'volume' ? Math.max(silenceDb, Math.round(sum * 1e6) / 1e6) : sum;
}
