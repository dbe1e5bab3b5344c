import { readNumberText } from '../../forms/numberText';
import type { Column } from './column';

/** The path of the element that a place belongs to; of the element around it where the place is an element's text. */
export function elementOf({ at }: Column): string {
  if (at === '.') return '';
  return at.slice(0, Math.max(0, lastSlash(at)));
}

/** The last slash of a place that stands outside of what elements are told apart by. */
export function lastSlash(at: string): number {
  let depth = 0;
  for (let position = at.length - 1; position >= 0; position--) {
    const sign = at[position];
    if (sign === ']') depth++;
    else if (sign === '[') depth--;
    else if (sign === '/' && depth === 0) return position;
  }
  return -1;
}

/** Columns by the element that they belong to. */
export function groupsOf(columns: readonly Column[]): Map<string, Column[]> {
  const groups = new Map<string, Column[]>();
  for (const column of columns) {
    const id = `${column.level} ${elementOf(column)}`;
    const group = groups.get(id);
    if (group) group.push(column);
    else groups.set(id, [column]);
  }
  return groups;
}

/** Columns with some of them in place of others. */
export function changed(
  columns: readonly Column[],
  changes: ReadonlyMap<Column, readonly Column[]>,
): readonly Column[] {
  if (changes.size === 0) return columns;
  return columns.flatMap((column) => changes.get(column) ?? [column]);
}

/** Whether all that stands in a place are numbers. */
export function holdsNumbers({ cells }: Column): boolean {
  return (
    cells.some((cell) => cell) &&
    cells.every((cell) => !cell || readNumberText(cell.text) !== undefined || /^\s*-?inf/i.test(cell.text))
  );
}
