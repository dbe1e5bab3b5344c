/** One line of the table of results. */
export interface Row {
  what: string;
  /** The measured value with its unit. */
  result: string;
  /** What it should be; empty where there is no aim. */
  aim: string;
  /** How the result came about, such as the two times behind a ratio. */
  remark: string;
}

/** The results as a Markdown table, columns aligned. */
export function tableOf(rows: readonly Row[]): string {
  const all = [
    ['Measured', 'Result', 'Aim', 'From'],
    ...rows.map((row) => [row.what, row.result, row.aim, row.remark]),
  ];
  const widths = [0, 1, 2, 3].map((column) =>
    Math.max(...all.map((cells) => (cells[column] as string).length)),
  );
  const line = (cells: string[]) =>
    `| ${cells.map((cell, column) => cell.padEnd(widths[column] as number)).join(' | ')} |`;
  const [heading, ...lines] = all.map(line);
  return [heading, `|${widths.map((width) => '-'.repeat(width + 2)).join('|')}|`, ...lines].join('\n');
}

export function milliseconds(value: number): string {
  return value >= 100
    ? `${value.toFixed(0)} ms`
    : value >= 1
      ? `${value.toFixed(1)} ms`
      : `${value.toFixed(3)} ms`;
}

/** Adds a row as soon as it is known. */
export type AddRow = (row: Row) => void;
