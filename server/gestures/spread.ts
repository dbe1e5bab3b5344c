import type { MapShape } from '../map/mapScene';
import { counted } from '../model/wording/counted';
import type { KeySpan } from '../trade/keySpread';
import { spreadKeys } from '../trade/keySpread';
import { velocitiesOfLayer } from '../trade/layerVelocities';
import type { Arrangement, GestureRefusal, RegionValues } from './arrangement';
import { valuesOnly } from './arrangement';
import type { Axis, BorderSide } from './borders';
import { highOf, lowOf } from './borders';

/** Shapes of a row that share its keys out among them, each key to the nearest root. */
export interface Spread {
  kind: 'spread';
  shapes: readonly number[];
}

/** Shapes of a column that share its velocities out among them. */
export interface Layers {
  kind: 'layers';
  shapes: readonly number[];
  /** The level of each region in dB by its header, where layers go by loudness; without it all are equally high. */
  levels?: ReadonlyMap<number, number>;
}

/**
 * Shares keys out among shapes by their root keys. Shapes of one group and velocity layer are a row; each row keeps its
 * lowest and highest key, widened to its roots. A key halfway between two roots goes to the lower one.
 */
export function shareKeys(
  shapes: readonly MapShape[],
  { shapes: chosen }: Spread,
): Arrangement | GestureRefusal {
  const values: RegionValues[] = [];
  let rows = 0;
  const rowOf = ({ layer, lowVelocity, highVelocity }: MapShape) => `${layer} ${lowVelocity} ${highVelocity}`;
  for (const row of grouped(shapes, chosen, rowOf)) {
    const roots = row.map(({ rootKeys }) => rootKeys[0]);
    const keys = spreadKeys(roots, {
      low: Math.min(...roots, ...row.map(({ lowKey }) => lowKey)),
      high: Math.max(...roots, ...row.map(({ highKey }) => highKey)),
    });
    if (keys.size < 2) continue;
    rows++;
    for (const shape of row) {
      const { low, high } = keys.get(shape.rootKeys[0]) as KeySpan;
      values.push(...placed(shape, 'keys', low, high));
    }
  }
  if (rows === 0) return { refusal: 'Choose two or more shapes of one group with different root keys.' };
  return valuesOnly(values);
}

/**
 * Shares velocities out among shapes on the same keys, which are a column; a column keeps its lowest and highest velocity.
 * By loudness, a border lies where a voice that follows the square of velocity (the format's usual curve: the level in dB
 * is 40·log10(velocity / 127)) is halfway between the levels of the two layers.
 */
export function spreadVelocities(
  shapes: readonly MapShape[],
  { shapes: chosen, levels }: Layers,
): Arrangement | GestureRefusal {
  const values: RegionValues[] = [];
  let columns = 0;
  for (const column of grouped(shapes, chosen, ({ lowKey, highKey }) => `${lowKey} ${highKey}`)) {
    const bands = bandsOf(column);
    if (bands.length < 2) continue;
    if (bands.some(({ low }, at) => at > 0 && low <= bands[at - 1].high))
      return { refusal: 'Velocity layers that overlap cannot be spread. Separate them first.' };
    columns++;
    const starts = levels ? startsByLevel(bands, levels) : evenStarts(bands);
    if ('refusal' in starts) return starts;
    bands.forEach((band, at) => {
      const high = at + 1 < starts.length ? starts[at + 1] - 1 : bands[bands.length - 1].high;
      for (const shape of band.shapes) values.push(...placed(shape, 'velocities', starts[at], high));
    });
  }
  if (columns === 0) return { refusal: 'Choose two or more velocity layers on the same keys.' };
  return valuesOnly(values);
}

/** One velocity layer of a column. */
interface Band {
  low: number;
  high: number;
  shapes: MapShape[];
}

function bandsOf(column: readonly MapShape[]): Band[] {
  const bands = new Map<string, Band>();
  for (const shape of column) {
    const { lowVelocity: low, highVelocity: high } = shape;
    const known = bands.get(`${low} ${high}`);
    if (known) known.shapes.push(shape);
    else bands.set(`${low} ${high}`, { low, high, shapes: [shape] });
  }
  return [...bands.values()].sort((one, other) => one.low - other.low);
}

function evenStarts(bands: readonly Band[]): number[] {
  const all = { low: bands[0].low, high: bands[bands.length - 1].high };
  return bands.map((_, at) => velocitiesOfLayer(at, bands.length, all).low);
}

function startsByLevel(
  bands: readonly Band[],
  levels: ReadonlyMap<number, number>,
): number[] | GestureRefusal {
  const known = bands.map(({ shapes }) => {
    const all = shapes.flatMap(({ regions }) => regions.map(({ header }) => levels.get(header)));
    const heard = all.filter((level) => level !== undefined);
    return heard.length === 0 ? undefined : heard.reduce((sum, one) => sum + one, 0) / heard.length;
  });
  const silent = known.filter((level) => level === undefined).length;
  if (silent > 0)
    return { refusal: `The loudness of ${counted(silent, 'layer')} is not known, so nothing was moved.` };
  const heard = known.filter((level) => level !== undefined);
  if (heard.some((level, at) => at > 0 && level <= heard[at - 1]))
    return {
      refusal: 'The layers do not get louder from the lowest to the highest. Correct their order first.',
    };
  const top = heard[heard.length - 1];
  const { low } = bands[0];
  const { high } = bands[bands.length - 1];
  const starts = [low];
  for (let at = 1; at < heard.length; at++) {
    const halfway = (heard[at - 1] + heard[at]) / 2 - top;
    const wanted = Math.round(high * 10 ** (halfway / 40));
    // Each layer keeps a velocity, those above it as well.
    const most = high - (heard.length - 1 - at);
    starts.push(Math.max(starts[at - 1] + 1, Math.min(most, wanted)));
  }
  return starts;
}

function grouped(
  shapes: readonly MapShape[],
  chosen: readonly number[],
  keyOf: (shape: MapShape) => string,
): MapShape[][] {
  const groups = new Map<string, MapShape[]>();
  for (const index of chosen) {
    const shape = shapes[index];
    const key = keyOf(shape);
    const known = groups.get(key);
    if (known) known.push(shape);
    else groups.set(key, [shape]);
  }
  return [...groups.values()];
}

const names: Readonly<Record<Axis, Record<BorderSide, 'lokey' | 'hikey' | 'lovel' | 'hivel'>>> = {
  keys: { low: 'lokey', high: 'hikey' },
  velocities: { low: 'lovel', high: 'hivel' },
};

/** What changes where a shape is to lie from one place to another. */
function placed(shape: MapShape, axis: Axis, low: number, high: number): RegionValues[] {
  const isLow = low !== lowOf(shape, axis);
  const isHigh = high !== highOf(shape, axis);
  if (!isLow && !isHigh) return [];
  return shape.regions.map(({ header }) => ({
    header,
    ...(isLow && { [names[axis].low]: low }),
    ...(isHigh && { [names[axis].high]: high }),
  }));
}
