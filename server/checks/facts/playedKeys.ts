import type { Fix, TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { conditionsOf } from '../../model/overlaps/conditions';
import type { PlayedRectangle } from '../../model/overlaps/gaps';
import { playedRectangles } from '../../model/overlaps/gaps';
import { Parameter } from '../../model/parameterNames';
import type { Span } from '../../model/text/span';
import type { CheckContext } from '../rule';
import { fixOfParts, valueEdits } from './parameters/parameterFixes';

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

/**
 * A fix that gives the upper or lower ends of some regions' ranges another value, each where it is written; none
 * where one of them is not written as such, since `key` sets more than one end.
 */
export function rangeEndFix(
  context: CheckContext,
  regions: readonly number[],
  name: number,
  value: number,
  title: string,
): Fix[] {
  const { instrument } = context;
  const parts: TextEdit[][] = [];
  const changed = new Set<number>();
  for (const region of regions) {
    const parameter = instrument.effective(region, name);
    if (parameter < 0 || instrument.canonicalName(parameter) === Parameter.key) return [];
    if (changed.has(parameter)) continue;
    changed.add(parameter);
    const isKey = name === Parameter.lokey || name === Parameter.hikey;
    const written = value - (isKey ? instrument.control(region).keyOffset : 0);
    if (written < 0 || written > 127) return [];
    parts.push(valueEdits(context, parameter, String(written)));
  }
  return fixOfParts(title, parts, false);
}
