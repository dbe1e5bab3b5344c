import { readKeyRange } from '../../../trade/readings/keyReading';
import { readLinedKey } from '../../../trade/readings/linedKeys';

const looked = 1 << 16;
const fewest = 3;
/** Two words around a dash, of which blanks part the first from it so that the dashes stand below one another. */
const spread = /(?<=^|[ ])(\S{1,6})([ ]{1,6})([-\u2013\u2014])([ ])(\S{1,6})(?=[ ]|$)/gmu;

/**
 * A text in which ranges of keys are written so that their dashes stand below one another, as `C   - E` below `Fis - A`, with the
 * first end moved to its dash, so that no blanks part the two; `undefined` where there are none.
 */
export function withAlignedRanges(text: string): string | undefined {
  const start = text.slice(0, looked);
  const found = Array.from(start.matchAll(spread)).filter(
    ([, low = '', , , , high = '']) => isKey(low) && isKey(high),
  );
  const byColumn = new Map<number, typeof found>();
  for (const one of found) {
    const [, low = '', blanks = ''] = one;
    const at = one.index + low.length + blanks.length - (start.lastIndexOf('\n', one.index) + 1);
    byColumn.set(at, [...(byColumn.get(at) ?? []), one]);
  }
  let changed = text;
  for (const ranges of byColumn.values()) {
    const isSpread = ({ 2: blanks = '' }: RegExpExecArray) => blanks.length > 1;
    // Where all stand alike, the dash may be a cell of its own.
    if (ranges.length < fewest || !ranges.some(isSpread) || ranges.every(isSpread)) continue;
    for (const one of ranges.filter(isSpread)) {
      const { 0: all, 1: low = '', 2: blanks = '', index } = one;
      const closed = `${blanks.slice(1)}${low} ${all.slice(low.length + blanks.length)}`;
      changed = changed.slice(0, index) + closed + changed.slice(index + all.length);
    }
  }
  return changed === text ? undefined : changed;
}

function isKey(text: string): boolean {
  return readLinedKey(text, 'german') !== undefined || readKeyRange(text)?.single === true;
}
