import type { ArrangedName, RegionValues } from '../../gestures/arrangement';
import { arrangedNames } from '../../gestures/arrangement';
import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import { isOpcode } from '../../model/style/keyParameters';

/** The values that headers are to get of their own, as written: without note and octave offset. */
export type ValuesByHeader = ReadonlyMap<number, ReadonlyMap<ArrangedName, number>>;

/**
 * Where new values of regions belong: in the outer header that a value is inherited from, where all regions that inherit it
 * get the same new one, else in the region itself. With `isOwn` all go into the regions.
 */
export function valuePlaces(
  instrument: Instrument,
  values: readonly RegionValues[],
  isOwn: boolean,
): ValuesByHeader {
  const byHeader = new Map<number, Map<ArrangedName, number>>();
  const put = (header: number, name: ArrangedName, value: number) => {
    const known = byHeader.get(header);
    if (known) known.set(name, value);
    else byHeader.set(header, new Map([[name, value]]));
  };
  for (const name of arrangedNames) {
    const changes = values.flatMap(({ header, [name]: value }) =>
      value === undefined ? [] : [{ header, value: written(instrument, header, name, value) }],
    );
    if (changes.length === 0) continue;
    const outer = isOwn ? new Map<number, number>() : outerPlaces(instrument, name, changes);
    for (const { header, value } of changes) {
      const parameter = instrument.effective(header, Parameter[name]);
      put(outer.get(parameter) ?? header, name, value);
    }
  }
  return byHeader;
}

/** The value as it stands in the text of a region: keys without what `<control>` adds to them. */
function written(instrument: Instrument, header: number, name: ArrangedName, value: number): number {
  const isKey = name !== 'lovel' && name !== 'hivel';
  return isKey ? value - instrument.control(header).keyOffset : value;
}

interface Change {
  header: number;
  value: number;
}

/** By parameter, the outer header that it stands in, for those that all regions which inherit them change to the same value. */
function outerPlaces(
  instrument: Instrument,
  name: ArrangedName,
  changes: readonly Change[],
): Map<number, number> {
  const wanted = new Map<number, { value: number; count: number } | undefined>();
  for (const { header, value } of changes) {
    const parameter = instrument.effective(header, Parameter[name]);
    if (parameter < 0 || parameter >= instrument.firstParameter(header)) continue;
    const known = wanted.get(parameter);
    if (!wanted.has(parameter)) wanted.set(parameter, { value, count: 1 });
    else if (known?.value === value) known.count++;
    else wanted.set(parameter, undefined);
  }
  if (wanted.size === 0) return new Map();
  const inheritors = new Map<number, number>();
  for (const region of instrument.regions) {
    const parameter = instrument.effective(region, Parameter[name]);
    if (wanted.has(parameter)) inheritors.set(parameter, (inheritors.get(parameter) ?? 0) + 1);
  }
  const places = new Map<number, number>();
  for (const [parameter, one] of wanted) {
    if (one && one.count === inheritors.get(parameter) && !isOpcode(instrument, parameter))
      places.set(parameter, instrument.headerOfParameter(parameter));
  }
  return places;
}
