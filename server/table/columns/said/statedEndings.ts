import { isAudioFileName } from '../../../model/fileNames';
import { statedEndingIn } from '../../../trade/statements/statedEnding';
import type { TableCells } from '../../cells/cells';
import type { ColumnReading } from '../columnReading';

const mostRows = 2000;

/** Takes the ending that the texts around give for all files, where most samples of tables are named without one. */
export function useStatedEnding(
  cells: TableCells,
  tables: readonly { data: readonly number[]; columns: readonly ColumnReading[] }[],
  texts: readonly string[],
): void {
  const names = new Set<string>();
  let files = 0;
  for (const { data, columns } of tables)
    for (const { meaning, index } of columns)
      if (meaning === 'sample')
        for (const row of data.slice(0, mostRows)) {
          const name = cells.value(cells.cell(row, index));
          if (isAudioFileName(name)) files++;
          else if (name !== '' && cells.filled(row) > 1) names.add(name.toLowerCase());
        }
  if (names.size <= files) return;
  cells.statedEnding = statedEndingIn(texts, (text) => names.has(text.toLowerCase()));
}
