import { conditionsOf } from '../model/conditions';
import type { PlayedRectangle } from '../model/gaps';
import { playedRectangles } from '../model/gaps';
import type { Instrument } from '../model/instrument';
import type { Span } from '../model/span';
import type { CheckContext } from './rule';

const known = new WeakMap<CheckContext, readonly PlayedRectangle[]>();

/** The keys and velocities that regions answer, worked out once in a check. */
export function playedKeysOf(context: CheckContext): readonly PlayedRectangle[] {
  let played = known.get(context);
  if (!played) {
    played = playedRectangles(context.instrument, conditionsOf(context.instrument));
    known.set(context, played);
  }
  return played;
}

/** Where one end of a region's range is written: the value in force, else the region's header. */
export function rangeEndPlace(instrument: Instrument, region: number, name: number): Span {
  const parameter = instrument.effective(region, name);
  return parameter >= 0 ? instrument.valueSpan(parameter) : instrument.headerSpan(region);
}
