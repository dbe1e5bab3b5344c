import type { Column } from './column';

/** From memory. */
const defaultWords: ReadonlySet<string> = new Set(
  'default defaults usual usually standard standards vorgabe vorgaben'.split(' '),
);

/** Whether words name defaults: `Defaults`, `preset-values`. */
export function namesDefaults(words: readonly string[]): boolean {
  const isPreset =
    words.some((word) => /^presets?$/.test(word)) && words.some((word) => /^values?$/.test(word));
  return isPreset || words.some((word) => defaultWords.has(word));
}

/** Whether a value stands in an element that is named after defaults, which hold where there is no other. */
export function standsInDefaults(column: Column): boolean {
  return column.around.some(namesDefaults);
}
