import type { ArrangedName, Arrangement, RegionValues } from '../../gestures/arrangement';
import { arrangedNames } from '../../gestures/arrangement';
import { effectiveValues } from '../../model/effectiveValues';
import type { Instrument } from '../../model/instrument';

/**
 * Whether an instrument is what an arrangement makes of an earlier one: each region has the values that were wanted, and
 * all others that it had; copies stand behind the regions that they are of.
 */
export function isAsArranged(before: Instrument, after: Instrument, arrangement: Arrangement): boolean {
  const wanted = wantedRegions(before, arrangement);
  return (
    wanted.length === after.regions.length &&
    wanted.every(({ header, values }, at) => isAs(before, header, values, after, after.regions[at]))
  );
}

/** The regions that there are to be, each as one that there was and the values in which it differs. */
function wantedRegions(
  { regions }: Instrument,
  { values, copies, removed }: Arrangement,
): { header: number; values: RegionValues | undefined }[] {
  const gone = new Set(removed);
  const changed = new Map(values.map((one) => [one.header, one]));
  const copied = new Map(copies.map((one) => [one.header, one]));
  return [...regions].flatMap((header) => {
    const copy = copied.get(header);
    return [
      ...(gone.has(header) ? [] : [{ header, values: changed.get(header) }]),
      ...(copy ? [{ header, values: copy }] : []),
    ];
  });
}

function isAs(
  before: Instrument,
  old: number,
  values: RegionValues | undefined,
  after: Instrument,
  region: number,
): boolean {
  const [had, has] = [rangesOf(before, old), rangesOf(after, region)];
  if (arrangedNames.some((name) => has[name] !== (values?.[name] ?? had[name]))) return false;
  const one = effectiveValues(before, old);
  const other = effectiveValues(after, region);
  return isSame(one, other) && isSame(other, one);
}

function rangesOf(instrument: Instrument, region: number): Record<ArrangedName, number> {
  return {
    lokey: instrument.lowKey[region],
    hikey: instrument.highKey[region],
    lovel: instrument.lowVelocity[region],
    hivel: instrument.highVelocity[region],
    pitch_keycenter: instrument.rootKey(region),
  };
}

const arranged: ReadonlySet<string> = new Set(arrangedNames);

function isSame(one: Record<string, number | string>, other: Record<string, number | string>): boolean {
  for (const name in one) if (!arranged.has(name) && one[name] !== other[name]) return false;
  return true;
}
