import { PairNumbers } from '../../model/overlaps/pairNumbers';
import { rounded } from '../../trade/decimal';
import { rangeWords } from '../../trade/rangeWords';
import { readSequence } from '../../trade/readings/numberReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { MergedRows } from './mergedRows';

const range = new RegExp(
  String.raw`^(\d+(?:[.,]\d+)?)\s?(%?)\s?(?:-|\u2013|\.\.+|${rangeWords})\s?(\d+(?:[.,]\d+)?)\s?(%?)$`,
  'iu',
);
const most = 64;

/**
 * Reads alternatives that are chosen by chance: `1`, `2`, `3`, each an even share of 0..1 beside those of the same keys and
 * velocities, or ranges of 0..1 or percent.
 */
export function readRandomColumn(table: ZoneCells, merged: MergedRows): void {
  const column = table.column('random');
  if (!column) return;
  const ranges = new CellReadings(table.cells, rangeIn);
  const [lows, highs] = [table.zones.column('lorand'), table.zones.column('hirand')];
  const counted = new Map<number, { cell: number; position: number; length: number | undefined }>();
  table.each(column, (zone, cell) => {
    const between = ranges.of(cell);
    if (between) {
      lows.set(zone, cell, between.low);
      highs.set(zone, cell, between.high);
      return;
    }
    const reading = readSequence(table.cells.plain(cell));
    if (reading && reading.position >= 1 && reading.position <= most) counted.set(zone, { cell, ...reading });
    else table.drop(cell, column, 'is neither an alternative nor a range from 0 to 1');
  });
  if (counted.size > 0) shareOut(table, column, counted, merged);
}

function shareOut(
  table: ZoneCells,
  column: ColumnReading,
  counted: ReadonlyMap<number, { cell: number; position: number; length: number | undefined }>,
  { keyRows, velocityRows }: MergedRows,
): void {
  const { zones } = table;
  const numbers = new PairNumbers();
  const alike = (zone: number) => {
    const value = (name: 'key' | 'lokey' | 'hikey' | 'lovel' | 'hivel') =>
      zones.values(name)?.oneMore(zone) ?? 0;
    const keys = (value('key') * 129 + value('lokey')) * 129 + value('hikey');
    return numbers.numberOf(keys, value('lovel') * 129 + value('hivel'));
  };
  void keyRows;
  void velocityRows;
  const lengths = new Map<number, number>();
  for (const [zone, { position, length }] of counted)
    lengths.set(alike(zone), Math.max(lengths.get(alike(zone)) ?? 0, position, length ?? 0));
  const [lows, highs] = [zones.column('lorand'), zones.column('hirand')];
  for (const [zone, { cell, position }] of counted) {
    const length = lengths.get(alike(zone)) ?? 1;
    if (length < 2) continue;
    lows.set(zone, cell, rounded((position - 1) / length));
    highs.set(zone, cell, rounded(position / length));
  }
  table.noteColumn(column, `The alternatives in ${columnName(column)} are taken to be equally likely.`);
}

function rangeIn(text: string): { low: number; high: number } | undefined {
  const [all, low = '', percent, high = '', end] = range.exec(text.trim()) ?? [];
  if (all === undefined) return undefined;
  const full = percent || end || Number(high.replace(',', '.')) > 1 ? 100 : 1;
  const [from, to] = [low, high].map((one) => rounded(Number(one.replace(',', '.')) / full));
  return from < to && to <= 1 ? { low: from, high: to } : undefined;
}
