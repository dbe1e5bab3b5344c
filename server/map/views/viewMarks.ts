import type { MapLayout } from '../layout';
import { keyLeft, px, velocityTicks } from '../layout';
import type { Mark } from '../marks';
import { toneClass } from '../textures';
import type { ChartLine, ViewChart } from './viewChart';

/** Signs of groups around the point 0, 0, so that tones are not all that tells them apart. */
const signs = [
  'm-3 0a3 3 0 1 0 6 0a3 3 0 1 0 -6 0z',
  'm-2.8 -2.8h5.6v5.6h-5.6z',
  'm0 -4l4 4l-4 4l-4 -4z',
  'm-3.6 2.6h7.2l-3.6 -6.2z',
  'm-3.6 -2.6h7.2l-3.6 6.2z',
  'm-3 -3l6 6m0 -6l-6 6',
];

/** The sign of a group around the point that a path is at. */
export function curveSign(layer: number): string {
  return signs[layer % signs.length];
}

/** A chart in the place of the shapes of a map: lines over keys, with a mark at each root; or steps over velocities. */
export function viewMarks(chart: ViewChart, layout: MapLayout): Mark[] {
  const marks = gridOf(chart, layout);
  if (chart.name === 'velocity') {
    const known = stepsOf(chart, layout, false);
    const assumed = stepsOf(chart, layout, true);
    if (known !== '') marks.push({ kind: 'path', className: 'curve tone-0', data: known });
    if (assumed !== '') marks.push({ kind: 'path', className: 'curve assumed tone-0', data: assumed });
    return marks;
  }
  for (const line of chart.lines) {
    const tone = toneClass(line.layer);
    const left = keyLeft(layout, line.from);
    const right = keyLeft(layout, line.to + 1);
    const isSlope = line.first !== line.last;
    // A slope goes through the middles of its keys.
    const half = isSlope ? layout.keyWidth / 2 : 0;
    const data = `M${px(left + half)} ${px(yOf(chart, layout, line.first))}L${px(right - half)} ${px(yOf(chart, layout, line.last))}`;
    marks.push({ kind: 'path', className: `curve ${tone}`, data });
    const { x, y } = markPlace(chart, layout, line);
    marks.push({
      kind: 'path',
      className: `curve-mark ${tone}`,
      data: `M${px(x)} ${px(y)}${curveSign(line.layer)}`,
    });
  }
  return marks;
}

/** The axis of a chart's values; its right side is at 0. */
export function viewAxis(chart: ViewChart, layout: MapLayout): Mark[] {
  const marks: Mark[] = chart.ticks.flatMap((value): Mark[] => {
    const y = yOf(chart, layout, value);
    const text = `${value > 0 && chart.low < 0 && chart.name !== 'velocity' ? '+' : ''}${Number(value.toFixed(2))}`;
    return [
      { kind: 'path', className: 'tick', data: `M-5 ${px(y)}h5` },
      {
        kind: 'text',
        className: 'tick-name',
        x: -8,
        y: y + 3.5,
        text: text.replace('-', '−'),
        anchor: 'end',
      },
    ];
  });
  return [
    ...marks,
    {
      kind: 'text',
      className: 'axis-name',
      x: -36,
      y: layout.plotHeight / 2,
      text: chart.unit,
      anchor: 'middle',
      isUpright: true,
    },
  ];
}

/** Velocities below a chart over velocities, where a keyboard stands below others. */
export function velocityMarks(layout: MapLayout): Mark[] {
  const y = layout.plotHeight;
  return [...velocityTicks]
    .flatMap((velocity): Mark[] => {
      const x = velocityX(layout, velocity);
      return [
        { kind: 'path', className: 'tick', data: `M${px(x)} ${px(y)}v5` },
        {
          kind: 'text',
          className: 'tick-name',
          x,
          y: y + 17,
          text: String(velocity),
          anchor: velocity === 127 ? 'end' : 'middle',
        },
      ];
    })
    .concat([
      {
        kind: 'text',
        className: 'axis-name',
        x: layout.plotWidth / 2,
        y: y + 33,
        text: 'velocity',
        anchor: 'middle',
      },
    ]);
}

/** The shape of the line nearest to a point of the plot, within a few pixels. */
export function shapeOfLineAt(chart: ViewChart, layout: MapLayout, x: number, y: number): number | undefined {
  let nearest: number | undefined;
  let least = 10;
  for (const line of chart.lines) {
    const isOver =
      chart.name === 'velocity'
        ? Math.abs(velocityX(layout, line.from) - x) <= layout.plotWidth / 127
        : x >= keyLeft(layout, line.from) && x < keyLeft(layout, line.to + 1);
    if (!isOver) continue;
    const share =
      line.to === line.from
        ? 0
        : (x / layout.keyWidth + layout.lowKey - line.from) / (line.to + 1 - line.from);
    const distance = Math.abs(yOf(chart, layout, line.first + share * (line.last - line.first)) - y);
    if (distance < least) {
      least = distance;
      nearest = line.shape;
    }
  }
  return nearest;
}

function markPlace(chart: ViewChart, layout: MapLayout, { from, to, first, last, mark }: ChartLine) {
  const value = to === from ? first : first + ((mark - from) / (to - from)) * (last - first);
  return { x: keyLeft(layout, mark) + layout.keyWidth / 2, y: yOf(chart, layout, value) };
}

function gridOf(chart: ViewChart, layout: MapLayout): Mark[] {
  const { plotWidth, plotHeight } = layout;
  let lines = '';
  for (const value of chart.ticks) lines += `M0 ${px(yOf(chart, layout, value))}h${px(plotWidth)}`;
  if (chart.name === 'velocity')
    for (const velocity of velocityTicks) lines += `M${px(velocityX(layout, velocity))} 0v${px(plotHeight)}`;
  else
    for (let key = layout.lowKey; key <= layout.highKey; key++)
      if (key % 12 === 0) lines += `M${px(keyLeft(layout, key))} 0v${px(plotHeight)}`;
  const marks: Mark[] = [
    { kind: 'box', className: 'plot', box: { x: 0, y: 0, width: plotWidth, height: plotHeight } },
    { kind: 'path', className: 'grid', data: lines },
  ];
  if (chart.low < 0 && chart.high > 0)
    marks.push({ kind: 'path', className: 'zero', data: `M0 ${px(yOf(chart, layout, 0))}h${px(plotWidth)}` });
  return marks;
}

/** One line of steps that are known, or that count what is not measured; broken where nothing of that kind sounds. */
function stepsOf(chart: ViewChart, layout: MapLayout, isOfAssumed: boolean): string {
  const half = layout.plotWidth / 254;
  let data = '';
  let before = -1;
  for (const { from, first, isAssumed = false } of chart.lines) {
    if (isAssumed !== isOfAssumed) continue;
    const [x, y] = [velocityX(layout, from), yOf(chart, layout, first)];
    data += `${from === before + 1 ? 'L' : 'M'}${px(x - half)} ${px(y)}h${px(2 * half)}`;
    before = from;
  }
  return data;
}

function velocityX({ plotWidth }: MapLayout, velocity: number): number {
  return ((velocity - 0.5) * plotWidth) / 127;
}

function yOf({ low, high }: ViewChart, { plotHeight }: MapLayout, value: number): number {
  return ((high - value) / (high - low)) * plotHeight;
}
