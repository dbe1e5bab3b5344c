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
  for (const { values, text, except } of options.statements.forAll) {
    const left = except ? zonesOf(table, except.names) : new Set<number>();
    // Files that no zone has are others than are meant.
    if (except && left.size === 0) continue;
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
          if (!left.has(zone))
            column.set(zone, samples[zone], typeof value === 'number' ? rounded(written) : written);
          else giveOwn(column, zone, samples[zone], except?.values.get(name));
      const cell = samples[table.first] ?? 0;
      notes.row = -2;
      notes.add(
        'assumed',
        { start: zones.cells.starts[cell], end: zones.cells.ends[cell] },
        isIn && !isGiven
          ? `"${shortened(text)}": ${name}=${value} is written for all zones${left.size > 0 ? ' but those of the files that it leaves out' : ''}.`
          : `"${shortened(text)}" is not written: ${isGiven ? `a column gives ${name} already` : `${name}=${value} is out of bounds`}.`,
      );
    }
  }
}

/** Gives a zone that is left out the value that goes for it instead, if any. */
function giveOwn(
  column: ReturnType<ZoneCells['zones']['column']>,
  zone: number,
  cell: number,
  value: number | string | undefined,
): void {
  if (typeof value === 'number') column.set(zone, cell, rounded(value));
}

/** The zones of some files, by their names without folders. */
function zonesOf({ zones, first, end }: ZoneCells, names: readonly string[]): ReadonlySet<number> {
  const bare = (name: string) => name.replace(/^.*[/\\]/, '').toLowerCase();
  const those = new Set(names.map(bare));
  const found = new Set<number>();
  for (let zone = first; zone < end; zone++) if (those.has(bare(zones.sample(zone)))) found.add(zone);
  return found;
}

function hasOwn({ first, end }: ZoneCells, cells: Int32Array): boolean {
  for (let zone = first; zone < end; zone++) if (cells[zone] >= 0) return true;
  return false;
}
