import { noteNameOf } from '../../model/keys';
import { noteNamesText } from '../../model/wording/rangeWords';
import type { ChartLine, ViewChart } from './viewChart';

/** What a chart shows, one line for each stretch, from the lowest key or velocity; those that say the same once. */
export function viewInWords(chart: ViewChart, names: readonly string[]): string[] {
  if (chart.name === 'velocity') return stepsInWords(chart);
  const lines = [...chart.lines].sort((one, other) => one.from - other.from || one.layer - other.layer);
  return lines.map(
    (line) => `${noteNamesText(line.from, line.to)}, ${names[line.layer]}: ${valuesText(chart, line)}`,
  );
}

/** What a chart shows of a shape. */
export function shapeInWords(chart: ViewChart, shape: number): string {
  return [
    ...new Set(chart.lines.filter((one) => one.shape === shape).map((one) => valuesText(chart, one))),
  ].join('; ');
}

function valuesText({ unit }: ViewChart, { first, last, mark }: ChartLine): string {
  const text = first === last ? valueText(first) : `${valueText(first)} to ${valueText(last)}`;
  return `${text} ${unit}${unit === 'cents' ? ` at ${noteNameOf(mark)}` : ''}`;
}

function valueText(value: number): string {
  const rounded = Number(value.toFixed(1));
  return `${rounded > 0 ? '+' : rounded < 0 ? '−' : ''}${Math.abs(rounded)}`;
}

/** Every tenth velocity and the last, which tell the course of a curve. */
function stepsInWords({ lines, unit }: ViewChart): string[] {
  return lines
    .filter(({ from }) => from % 10 === 0 || from === 1 || from === 127)
    .map(
      ({ from, first, isAssumed }) =>
        `velocity ${from}: ${valueText(first)} ${unit}${isAssumed ? ', a sample is not measured and counts as full scale' : ''}`,
    );
}
