import { readNumber } from '../../trade/readings/numberReading';
import type { ZoneCells } from '../zones/zoneCells';

/** Rates below are in kHz. */
const leastHertz = 4000;

/** The sample rates that a table gives by zone, 0 for none, to count times in frames where the files are not known. */
export function readRateColumn(table: ZoneCells): Float64Array | undefined {
  const column = table.column('sample_rate');
  if (!column) return undefined;
  const rates = new Float64Array(table.zones.most);
  table.each(column, (zone, cell) => {
    const text = table.cells.plain(cell).replace(/k$/i, ' kHz');
    const reading = readNumber(text);
    if (!reading || !(reading.number > 0)) return;
    rates[zone] = Math.round(reading.number * (reading.number < leastHertz ? 1000 : 1));
  });
  return rates;
}
