import type { PlayingChoice } from './playingChoices';

/** Choices as a Markdown table, for documentation and reports. */
export function choicesTable(choices: readonly PlayingChoice[]): string {
  const rows = choices.map(({ about, choice, reason, source }) => [about, choice, reason, source]);
  const lines = [['About', 'Choice', 'Reason', 'Source'], ['---', '---', '---', '---'], ...rows];
  return lines
    .map((cells) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |\n`)
    .join('');
}
