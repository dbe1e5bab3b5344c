import { moveOf, saysUsual } from '../../trade/readings/keyMoves';
import { triggerIn, triggerInShort } from '../../trade/readings/triggers';
import { CellReadings } from '../cells/cellReadings';
import type { ZoneCells } from '../zones/zoneCells';
import { valueWords } from '../zones/zoneList';

/** Reads the column that says what starts the zones, if there is one. */
export function readTriggerColumn(table: ZoneCells): void {
  const column = table.column('trigger');
  if (!column) return;
  const triggers = table.zones.column('trigger');
  const startOf = (text: string) =>
    triggerIn(text, column.heading) ??
    moveOf(text) ??
    triggerInShort(text) ??
    (saysUsual(text) ? 'attack' : undefined);
  const readings = new CellReadings(table.cells, startOf);
  table.each(column, (zone, cell) => {
    const trigger = table.reading(readings, cell, column);
    if (trigger === undefined) table.drop(cell, column, 'does not say what starts the region');
    else if (trigger !== 'attack') triggers.set(zone, cell, valueWords.indexOf(trigger));
  });
}
