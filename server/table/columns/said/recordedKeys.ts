import { readKey } from '../../../trade/readings/keyReading';
import { recordedKeysIn } from '../../../trade/statements/keys/recordedKeys';
import type { TableCells } from '../../cells/cells';
import type { ColumnReading } from '../columnReading';
import { shortened } from '../columnReading';

const mostRows = 500;

/** Keys beside samples that no heading explains are the roots, where the text around says that they were recorded on them. */
export function useRecordedKeys(
  cells: TableCells,
  tables: readonly { data: readonly number[]; columns: readonly ColumnReading[] }[],
  texts: readonly string[],
): void {
  const others = ['lokey', 'hikey', 'key_range', 'pitch_keycenter', 'key_count'];
  for (const { columns, data } of tables) {
    const key = columns.find(({ meaning }) => meaning === 'key');
    if (key?.heading !== '' || columns.some(({ meaning }) => others.includes(meaning))) continue;
    if (!leaveKeys(data.slice(0, mostRows).map((row) => cells.plain(cells.cell(row, key.index))))) continue;
    const said = recordedKeysIn(texts);
    if (said === undefined) return;
    key.meaning = 'pitch_keycenter';
    key.evidence = [`"${shortened(said)}" says that it is the root key.`];
  }
}

/** Whether between the lowest and the highest of some keys are others that none of them is. */
function leaveKeys(texts: readonly string[]): boolean {
  const keys = new Set(texts.map((text) => readKey(text)).flatMap((key) => key?.number ?? key?.named ?? []));
  return keys.size > 1 && Math.max(...keys) - Math.min(...keys) >= keys.size;
}
