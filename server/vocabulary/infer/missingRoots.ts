import type { Assigned } from './assign';
import type { Draft } from './draft';
import { firstValueOf } from './draft';
import { rowKeyNumber } from './ranges/rowKeys';
import type { SampleFiles } from './samples/sampleFiles';
import type { Rows } from './values/rows';

/** The key at which a sample sounds as recorded where nothing says which (open SFZ format, `pitch_keycenter`). */
const usualRoot = 60;

/** Tells that no place gives root keys, where regions play on several keys, so that all samples sound as recorded at one. */
export function missingRoots(assigned: readonly Assigned[], rows: Rows, { facts }: SampleFiles): Draft[] {
  const has = (target: string) => assigned.some((one) => one.target === target);
  if (has('pitch_keycenter') || has('key') || has('pitch_keytrack')) return [];
  const low = assigned.find(({ target }) => target === 'lokey');
  const high = assigned.find(({ target }) => target === 'hikey');
  if (!low || !high) return [];
  const all = Array.from({ length: rows.count }, (_, row) => row);
  const isWide = (row: number) => {
    const [from, to] = [rowKeyNumber(low.texts[row]), rowKeyNumber(high.texts[row])];
    return high.countedFrom !== undefined || (from !== undefined && to !== undefined && from < to);
  };
  const wide = all.filter(isWide);
  if (wide.length === 0) return [];
  const inFiles = wide.filter((row) => typeof facts[row]?.rootKey === 'number').length;
  const evidence =
    inFiles === wide.length
      ? 'The root keys in the sample files are not used.'
      : 'Add a place of root keys where samples were recorded at other ones.';
  return [
    {
      id: 'missingRoots',
      message: `No place gives the root keys, so each sample sounds as if it was recorded at key ${usualRoot}.`,
      confidence: 0.8,
      isGuess: true,
      evidence: [evidence],
      span: firstValueOf(low),
      isAbout: () => false,
      alternatives: [],
    },
  ];
}
