import { readHeading } from '../../trade/headings/headings';
import type { ColumnMeaning } from '../../trade/meaning';
import { roughKeyIn } from '../../trade/readings/roughKey';
import { findHeading } from '../headings/headingRows';
import type { TableCells } from './cells';

const looked = 60;
const mostRows = 5000;
const mostColumns = 60;
const ofOneKey: ReadonlySet<ColumnMeaning> = new Set(['pitch_keycenter', 'key', 'lokey', 'hikey']);

/** Reads cells under headings of keys that are not certain, as `about 45`, as the key that they name; each is told. */
export function readRoughKeys(cells: TableCells): void {
  const first = Array.from({ length: Math.min(cells.rowCount, looked) }, (_, row) => row).filter(
    (row) => cells.filled(row) > 0,
  );
  const heading = findHeading(cells, first);
  if (heading < 0) return;
  const told: TableCells['assumptions'][number][] = [];
  for (let column = 0; column < Math.min(cells.width(heading), mostColumns); column++) {
    const name = cells.value(cells.cell(heading, column));
    if (!ofOneKey.has(readHeading(name)?.meaning ?? 'unknown')) continue;
    for (let row = heading + 1; row < Math.min(cells.rowCount, mostRows); row++) {
      const cell = cells.cell(row, column);
      if (cell < 0 || cells.starts[cell] === cells.ends[cell]) continue;
      const written = cells.value(cell);
      const key = roughKeyIn(written);
      if (key === undefined) continue;
      cells.rewritten.set(cell, key);
      const text = `Column "${name.slice(0, 40)}": "${written}" is not certain of its key; ${key} is taken.`;
      told.push({ text, start: cells.starts[cell], end: cells.ends[cell] });
    }
  }
  cells.assumptions = [...cells.assumptions, ...told];
}
