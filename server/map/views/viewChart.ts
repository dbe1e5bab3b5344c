import type { MapScene, MapShape } from '../mapScene';
import type { RegionMeasure, VelocityLevel } from './mapMeasures';

/** What a map shows over its keyboard: its shapes, or one of the curves. */
export const viewNames = ['map', 'tuning', 'loudness', 'stretch', 'velocity'] as const;
export type ViewName = (typeof viewNames)[number];

/** A stretch of a chart: a value at its first key or velocity and one at its last. */
export interface ChartLine {
  from: number;
  to: number;
  first: number;
  last: number;
  /** The key that a mark stands at. */
  mark: number;
  /** The layer whose tone it has, and the shape that it is of. */
  layer: number;
  shape: number;
  /** Whether it counts a sample that is not measured as full scale. */
  isAssumed?: boolean;
}

/** A chart over keys, or over velocities. */
export interface ViewChart {
  name: Exclude<ViewName, 'map'>;
  lines: ChartLine[];
  /** The ends of the axis of values, and the values that it names. */
  low: number;
  high: number;
  ticks: number[];
  unit: string;
}

/** The chart of a view over keys, of the shapes that are shown; without any line where nothing is known. */
export function keyChart(
  name: 'tuning' | 'loudness' | 'stretch',
  scene: Pick<MapScene, 'shapes'>,
  shown: readonly number[],
  measures: readonly RegionMeasure[],
): ViewChart {
  const known = new Map(measures.map((one) => [one.header, one]));
  const lines = shown.flatMap((index) => linesOf(name, scene.shapes[index], index, known));
  const units = { tuning: 'cents', loudness: 'LUFS', stretch: 'semitones' };
  const least = { tuning: 20, loudness: 12, stretch: 6 };
  return { name, lines, unit: units[name], ...axisOf(lines, least[name], name !== 'loudness') };
}

/** The chart of what a note's level does from velocity 1 to 127, one line a step. */
export function velocityChart(
  velocities: readonly VelocityLevel[],
  shapeOf: (header: number) => number,
): ViewChart {
  const heard = velocities.filter(({ levelDb }) => levelDb !== undefined);
  const lines = heard.map(({ velocity, levelDb = 0, regions, unmeasured = 0 }) => ({
    from: velocity,
    to: velocity,
    first: levelDb,
    last: levelDb,
    mark: velocity,
    layer: 0,
    shape: shapeOf(regions[0]),
    ...(unmeasured > 0 && { isAssumed: true }),
  }));
  return { name: 'velocity', lines, unit: 'dB', ...axisOf(lines, 24, false) };
}

function linesOf(
  name: 'tuning' | 'loudness' | 'stretch',
  shape: MapShape,
  index: number,
  known: ReadonlyMap<number, RegionMeasure>,
): ChartLine[] {
  const { lowKey: from, highKey: to, layer } = shape;
  const seen = new Set<string>();
  return shape.regions.flatMap(({ header, rootKey }) => {
    const measure = known.get(header);
    const value = name === 'tuning' ? measure?.cents : measure?.levelDb;
    const [first, last] = name === 'stretch' ? [from - rootKey, to - rootKey] : [value, value];
    if (first === undefined || last === undefined || seen.has(`${first} ${rootKey}`)) return [];
    seen.add(`${first} ${rootKey}`);
    return [{ from, to, first, last, mark: Math.max(from, Math.min(to, rootKey)), layer, shape: index }];
  });
}

/** An axis that holds all values, at least so long, with round steps; around zero where that is meant. */
function axisOf(
  lines: readonly ChartLine[],
  least: number,
  isAroundZero: boolean,
): Pick<ViewChart, 'low' | 'high' | 'ticks'> {
  let low = isAroundZero ? 0 : Number.POSITIVE_INFINITY;
  let high = isAroundZero ? 0 : Number.NEGATIVE_INFINITY;
  for (const { first, last } of lines) {
    low = Math.min(low, first, last);
    high = Math.max(high, first, last);
  }
  if (low > high) [low, high] = [-least, 0];
  const lacking = Math.max(0, least - (high - low)) / 2;
  [low, high] = [low - lacking, high + lacking];
  const step = roundStep((high - low) / 5);
  // No value lies on the edge of the plot.
  low = (Math.ceil(low / step) - 1) * step;
  high = (Math.floor(high / step) + 1) * step;
  const ticks = Array.from({ length: Math.round((high - low) / step) + 1 }, (_, at) => low + at * step);
  return { low, high, ticks };
}

/** 1, 2 or 5 by a power of ten, not below a wanted step. */
function roundStep(wanted: number): number {
  const power = 10 ** Math.floor(Math.log10(wanted));
  return ([1, 2, 5, 10].find((one) => one * power >= wanted) ?? 10) * power;
}
