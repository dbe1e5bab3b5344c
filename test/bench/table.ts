import type { Comparison } from './compare';
import { quantile } from './compare';

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

/** Adds a row as soon as it is known. */
export type AddRow = (row: Row) => void;

/** The results as a Markdown table, columns aligned. */
export function tableOf(rows: readonly Row[]): string {
  const all = [
    ['Measured', 'Median', 'Aim', 'From'],
    ...rows.map(({ what, result, aim, remark }) => [what, result, aim, remark]),
  ];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...all.map((cells) => cells[column].length)));
  const line = (cells: string[]) =>
    `| ${cells.map((cell, column) => cell.padEnd(widths[column])).join(' | ')} |`;
  const [heading, ...lines] = all.map(line);
  return [heading, `|${widths.map((width) => '-'.repeat(width + 2)).join('|')}|`, ...lines].join('\n');
}

export function milliseconds(value: number): string {
  return `${value.toFixed(value >= 100 ? 0 : value >= 1 ? 1 : 3)} ms`;
}

/** A row for how many times as long one piece of work takes as another. */
export function ratioRow(what: string, { ratio, firstMs, secondMs }: Comparison, aim: string): Row {
  const remark = `${milliseconds(firstMs)} to ${milliseconds(secondMs)}`;
  return { what, result: `× ${ratio.toFixed(2)}`, aim, remark };
}

/** A row for what a piece of work takes mostly, and what it takes at its slowest but for one time in twenty. */
export function quantilesRow(what: string, times: readonly number[], aim: string): Row {
  const remark = `p95 ${milliseconds(quantile(times, 0.95))}, ${times.length} times`;
  return { what, result: milliseconds(quantile(times)), aim, remark };
}
