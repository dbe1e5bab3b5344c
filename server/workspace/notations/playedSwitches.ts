import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { conditionsOf } from '../../model/overlaps/conditions';
import { mainSpan } from '../../model/text/span';
import { keyText } from '../../model/wording/rangeWords';

/** More switches than this are notes that are played (our choice). */
const mostSwitches = 24;

/**
 * A note on key switches that stand among the keys that their own articulations play: such a key chooses one and sounds too, which is
 * seldom meant. Nothing where they lie outside.
 */
export function playedSwitches(instrument: Instrument): ConversionNote[] {
  const conditions = conditionsOf(instrument);
  const switches = new Map<number, number>();
  const switched: number[] = [];
  for (const region of instrument.regions) {
    const key = Number(conditions.set(conditions.ofHeader[region]).switches.get('sw_last') ?? Number.NaN);
    if (Number.isNaN(key)) continue;
    switched.push(region);
    if (!switches.has(key)) switches.set(key, region);
  }
  if (switches.size > mostSwitches) return [];
  const { lowKey, highKey } = instrument;
  const plays = (region: number, key: number) =>
    lowKey[region] <= key && key <= highKey[region] && !(lowKey[region] === 0 && highKey[region] === 127);
  const played = [...switches].filter(([key]) => switched.some((region) => plays(region, key)));
  const [example] = played;
  if (example === undefined) return [];
  const [key, region] = example;
  const { start, end } = instrument.headerSpan(region);
  const which =
    played.length === 1
      ? `Key switch ${keyText(key)} stands`
      : `${played.length} key switches, such as ${keyText(key)}, stand`;
  const message = `${which} among the keys that are played, so pressing one chooses an articulation and sounds too. Check the key switches.`;
  return [{ kind: 'assumed', ...mainSpan(start, end), message }];
}
