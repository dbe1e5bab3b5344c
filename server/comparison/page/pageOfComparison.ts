import type { ComparedInstrument, NoteDifference } from '../compareInstruments';
import { soundOfNote } from '../measureNotes';
import { comparisonPage, type ShownDifference } from './comparisonPage';
import type { WordedComparison } from './comparisonWords';
import { cellsOf, comparisonColumns, summaryOf } from './comparisonWords';
import type { MappedDifference } from './differenceMap';

/** Differences that can be seen as waveforms and heard. */
const mostHeard = 10;

/** What a page of a comparison is made from. */
export interface PageSource {
  worded: WordedComparison;
  names: readonly [a: string, b: string];
  sides: readonly [ComparedInstrument, ComparedInstrument];
  sampleRate: number;
  /** Bytes in base 64. */
  base64(bytes: Uint8Array): string;
}

/** A comparison as one HTML page, its worst differences rendered once more to be heard. */
export async function pageOfComparison(source: PageSource): Promise<string> {
  const { worded, names, sides, sampleRate, base64 } = source;
  const differences: ShownDifference[] = [];
  for (const [at, one] of worded.comparison.differences.entries()) {
    const shown = { cells: cellsOf(worded, one), map: mapped(one, sides) };
    if (at >= mostHeard) {
      differences.push(shown);
      continue;
    }
    const options = { sampleRate, seed: 0 };
    const a = await soundOfNote(sides[0], one.note, options);
    const b = await soundOfNote(sides[1], one.note, options);
    differences.push({ ...shown, sounds: { a, b } });
  }
  const columns = comparisonColumns;
  return comparisonPage({ names, summary: summaryOf(worded), columns, differences, sampleRate, base64 });
}

function mapped(
  one: NoteDifference,
  sides: readonly [ComparedInstrument, ComparedInstrument],
): MappedDifference {
  const { playable } = one.a === undefined ? sides[1] : sides[0];
  const region = one.a ?? one.b ?? 0;
  const { key, velocity } = one.note;
  const hasKeys = playable.lowKey[region] >= 0;
  return {
    lowKey: hasKeys ? playable.lowKey[region] : key,
    highKey: hasKeys ? playable.highKey[region] : key,
    lowVelocity: Math.max(1, playable.lowVelocity[region]),
    highVelocity: Math.min(127, playable.highVelocity[region]),
    key,
    velocity,
    peakDb: one.peakDb ?? -144,
    words: one.cause.message,
  };
}
