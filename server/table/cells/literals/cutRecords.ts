import type { CutEnd } from '../cutPlace';
import type { LiteralRecord } from './literalRecords';

/** Zones that are whole, and those that the text ends in the middle of. */
export interface CutRecords {
  whole: LiteralRecord[];
  cut: LiteralRecord[];
  cutEnd: CutEnd | undefined;
}

/** Parts the zones that stand inside brackets that the text leaves open from the others. `open` are the places of these brackets. */
export function partCutRecords(
  text: string,
  records: readonly LiteralRecord[],
  open: readonly number[],
): CutRecords {
  const isIn = ({ start, end }: LiteralRecord) => open.some((at) => at >= start && at < end);
  const cut = open.length === 0 ? [] : records.filter(isIn);
  const whole = cut.length === 0 ? [...records] : records.filter((one) => !cut.includes(one));
  const isZone = cut.length > 0;
  const start = isZone ? Math.min(...cut.map((one) => one.start)) : Math.max(...open);
  const cutEnd = open.length === 0 ? undefined : { start, end: text.trimEnd().length, isZone };
  return { whole, cut, cutEnd };
}
