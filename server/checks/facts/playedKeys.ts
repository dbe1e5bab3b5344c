import type { Fix, TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { conditionsOf } from '../../model/overlaps/conditions';
import type { PlayedRectangle } from '../../model/overlaps/gaps';
import { playedRectangles } from '../../model/overlaps/gaps';
import { Parameter } from '../../model/parameterNames';
import { KeySpeller } from '../../model/style/keySpeller';
import type { Span } from '../../model/text/span';
import type { CheckContext } from '../rule';
import { fixOfParts, rangeEdits, valueEdits } from './parameters/parameterFixes';

/** The end of a range of keys or velocities. */
type RangeEnd = 'lokey' | 'hikey' | 'lovel' | 'hivel';

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
 * where one of them comes from a `key` further out, which sets more than one end.
 */
export function rangeEndFix(
  context: CheckContext,
  regions: readonly number[],
  name: RangeEnd,
  value: number,
  title: string,
): Fix[] {
  const { instrument } = context;
  const speller = new KeySpeller(instrument);
  const parts: TextEdit[][] = [];
  const changed = new Set<number>();
  for (const region of regions) {
    const parameter = instrument.effective(region, Parameter[name]);
    if (parameter < 0) return [];
    if (changed.has(parameter)) continue;
    changed.add(parameter);
    const isKey = name === 'lokey' || name === 'hikey';
    const written = value - (isKey ? instrument.control(region).keyOffset : 0);
    if (written < 0 || written > 127) return [];
    if (instrument.canonicalName(parameter) !== Parameter.key)
      parts.push(valueEdits(context, parameter, isKey ? speller.like(parameter, written) : String(written)));
    else if (instrument.own(region, Parameter.key) === parameter)
      parts.push(rangeEdits(context, region, name, written));
    else return [];
  }
  return fixOfParts(title, parts, false);
}
