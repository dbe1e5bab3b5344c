import { bareWord } from '../../trade/languages/spelling';
import { keyNumber, readKey } from '../../trade/readings/keyReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { MergedRows } from './mergedRows';

/** Reads the keys that switch to zones, the range that these keys lie in, and the one that the text takes at the start. */
export function readKeySwitchColumn(table: ZoneCells, { switchRows }: MergedRows): void {
  const column = table.column('keyswitch');
  if (!column) return;
  const { zones, cells, options } = table;
  const switches = zones.column('sw_last');
  const readings = new CellReadings(cells, (text) => readKey(text, options.naming));
  let [least, most] = [128, -1];
  const read = (zone: number, cell: number) => {
    const reading = table.reading(readings, cell, column);
    const key = keyNumber(reading, options.keyShift);
    if (!(key >= 0 && key <= 127)) {
      table.drop(cell, column, 'is no key');
      return;
    }
    switches.set(zone, cell, key);
    [least, most] = [Math.min(least, key), Math.max(most, key)];
  };
  table.each(column, read, switchRows);
  if (most < 0) return;
  writeRange(table, column, least, most);
}

/** The keys of a range switch, whether they have zones or not: without it, each key that is played would. */
function writeRange(table: ZoneCells, column: ColumnReading, least: number, most: number): void {
  const { zones, options } = table;
  const { switches: stated } = options.statements;
  const isStated = stated.range !== undefined && stated.range.low <= least && stated.range.high >= most;
  const [low, high] = isStated && stated.range ? [stated.range.low, stated.range.high] : [least, most];
  const first = defaultOf(table);
  const columns = [zones.column('sw_last'), zones.column('sw_lokey'), zones.column('sw_hikey')] as const;
  const [keys, lows, highs] = columns;
  for (let zone = table.first; zone < table.end; zone++) {
    const cell = keys.cells[zone];
    if (cell < 0) continue;
    lows.set(zone, cell, low);
    highs.set(zone, cell, high);
    if (first !== undefined) zones.column('sw_default').set(zone, cell, first.key);
  }
  const range = isStated ? '' : ` The key switches are taken to be ${low} to ${high}.`;
  const start =
    first === undefined
      ? ' The text names none to start with, so nothing sounds before one is pressed; add sw_default to choose one.'
      : ` "${shortened(first.text)}" names the one to start with.`;
  table.noteColumn(column, `${columnName(column)} gives key switches.${range}${start}`);
}

/** The key switch that the text takes at the start: by its key, or by the name of its group. */
function defaultOf(table: ZoneCells): { key: number; text: string } | undefined {
  const { zones, options } = table;
  const stated = options.statements.switches.start;
  if (!stated) return undefined;
  const keys = zones.column('sw_last');
  const key = readKey(stated.name, options.naming);
  const said = bareWord(stated.name);
  for (let zone = table.first; zone < table.end; zone++) {
    if (keys.cells[zone] < 0) continue;
    const own = keys.numbers[zone];
    const isNamed = bareWord(zones.groupNames[zones.groups[zone]] ?? '') === said;
    if (isNamed || own === keyNumber(key, options.keyShift)) return { key: own, text: stated.text };
  }
  return undefined;
}
