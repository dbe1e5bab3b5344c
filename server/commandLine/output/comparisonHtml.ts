import { Buffer } from 'node:buffer';
import type { ComparedInstrument, NoteDifference } from '../../comparison/compareInstruments';
import { soundOfNote } from '../../comparison/measureNotes';
import type { ShownDifference } from '../../comparison/page/comparisonPage';
import { comparisonPage } from '../../comparison/page/comparisonPage';
import type { MappedDifference } from '../../comparison/page/differenceMap';
import type { ComparisonTold } from './comparisonOutput';
import { cellsOf, comparisonColumns, summaryOf } from './comparisonOutput';

/** Differences that can be seen as waveforms and heard. */
const mostHeard = 10;

/** The comparison as one HTML page. */
export async function comparisonHtml(
  told: ComparisonTold,
  sides: readonly [ComparedInstrument, ComparedInstrument],
  sampleRate: number,
): Promise<string> {
  const differences: ShownDifference[] = [];
  for (const [at, one] of told.comparison.differences.entries()) {
    const cells = cellsOf(told, one);
    const shown = { cells, map: mapped(one, sides) };
    if (at >= mostHeard) {
      differences.push(shown);
      continue;
    }
    const options = { sampleRate, seed: 0 };
    const a = await soundOfNote(sides[0], one.note, options);
    const b = await soundOfNote(sides[1], one.note, options);
    differences.push({ ...shown, sounds: { a, b } });
  }
  return comparisonPage({
    names: told.names,
    summary: summaryOf(told),
    columns: comparisonColumns,
    differences,
    sampleRate,
    base64: (bytes) => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('base64'),
  });
}

function mapped(
  one: NoteDifference,
  sides: readonly [ComparedInstrument, ComparedInstrument],
): MappedDifference {
  const side = one.a === undefined ? sides[1] : sides[0];
  const region = one.a ?? one.b ?? 0;
  const { playable } = side;
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
