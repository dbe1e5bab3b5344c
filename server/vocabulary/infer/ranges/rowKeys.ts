import { conventions, octaveShifts } from '../../../trade/middleC';
import { readKey as readTableKey } from '../../../trade/readings/keyReading';
import { lacksLines, readLinedKey } from '../../../trade/readings/linedKeys';
import { readKeyForm } from '../../forms/keys';
import { isNoteName } from '../values/columnFacts';

/** A key as a row gives it. */
export interface RowKey {
  number?: number;
  /** With middle C = C4; may lie outside the keys. */
  named?: number;
}

/** The key in a text; `undefined` where it is none. */
export function rowKey(text: string | undefined): RowKey | undefined {
  if (text === undefined) return undefined;
  if (!isNoteName(text)) {
    if (text.length < 6 && lacksLines(text)) return { number: readLinedKey(text, 'german') as number };
    const number = Number(text);
    return Number.isInteger(number) && text.trim() !== '' ? { number } : undefined;
  }
  const both = readTableKey(text);
  if (both?.number !== undefined && both.named !== undefined)
    return { number: both.number, named: both.named };
  for (const middleC of conventions) {
    const key = readKeyForm({ kind: 'key', written: 'name', middleC }, text);
    if (key !== undefined) return { named: key - octaveShifts[middleC] };
  }
  const named = readTableKey(text)?.named;
  return named === undefined ? undefined : { named };
}

/** The number of a key, note names as if C4 were key 60; `undefined` for other texts. */
export function rowKeyNumber(text: string | undefined): number | undefined {
  const key = rowKey(text);
  return key && (key.number ?? key.named);
}
