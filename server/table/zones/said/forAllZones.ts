import { transposeBounds, tuneBounds, volumeBounds } from '../../../trade/bounds';
import { rounded } from '../../../trade/decimal';
import { shortened } from '../../columns/columnReading';
import type { ZoneCells } from '../zoneCells';
import type { ValueWord } from '../zoneList';
import { valueWords } from '../zoneList';

const bounds: Readonly<Record<string, { least: number; most: number }>> = {
  volume: volumeBounds,
  transpose: transposeBounds,
  tune: tuneBounds,
  pan: { least: -100, most: 100 },
};

/** Gives all zones what the text around says of all of them, where no column gives it. */
export function giveToAll(table: ZoneCells): void {
  const { zones, notes, options } = table;
  for (const { values, text } of options.statements.forAll) {
    for (const [name, value] of values) {
      const written = typeof value === 'number' ? value : valueWords.indexOf(value as ValueWord);
      const bound = bounds[name];
      if (written < 0 && typeof value === 'string') continue;
      const isIn = !bound || (written >= bound.least && written <= bound.most);
      const column = zones.column(name);
      const isGiven = hasOwn(table, column.cells);
      const samples = zones.column('sample').cells;
      if (isIn && !isGiven)
        for (let zone = table.first; zone < table.end; zone++)
          column.set(zone, samples[zone], typeof value === 'number' ? rounded(written) : written);
      const cell = samples[table.first] ?? 0;
      notes.row = -2;
      notes.add(
        'assumed',
        { start: zones.cells.starts[cell], end: zones.cells.ends[cell] },
        isIn && !isGiven
          ? `"${shortened(text)}": ${name}=${value} is written for all zones.`
          : `"${shortened(text)}" is not written: ${isGiven ? `a column gives ${name} already` : `${name}=${value} is out of bounds`}.`,
      );
    }
  }
}

function hasOwn({ first, end }: ZoneCells, cells: Int32Array): boolean {
  for (let zone = first; zone < end; zone++) if (cells[zone] >= 0) return true;
  return false;
}
