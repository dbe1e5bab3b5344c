import type { Column } from './column';

/** From memory. */
const defaultWords: ReadonlySet<string> = new Set(
  'default defaults usual usually standard standards vorgabe vorgaben'.split(' '),
);

/** Whether a value stands in an element that is named after defaults, which hold where there is no other. */
export function standsInDefaults(column: Column): boolean {
  return column.around.some((words) => words.some((word) => defaultWords.has(word)));
}
