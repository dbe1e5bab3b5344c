import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { counted } from '../../model/wording/counted';
import { readFirstControllers } from '../playable/readFirstControllers';
import { ValuesInForce } from '../playable/valuesInForce';
import type { AskedValues } from './askedValues';
import { askedValues } from './askedValues';
import type { Unplain } from './unplain';
import { askedControllers, asksForBend, asksForController, asksForKeys, startsOtherwise } from './unplain';
import type { Variant } from './waysOfPlaying';
import { soundsIn, variantsOf } from './waysOfPlaying';

/** What tells whether regions lie on the same keys, though the target says it. */
const rangeNames: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key']);

/**
 * The regions that would sound whenever a key is struck if what a target cannot say were left out, though they are not meant
 * to, with what they are meant for. Of keyswitches and takes that it cannot choose between, the first sounds. `isSaid`: whether the target says
 * a value of a region, by canonical name.
 */
export function unsaidRegions(
  instrument: Instrument,
  regions: Iterable<number>,
  isSaid: (region: number, name: string) => boolean,
): Map<number, Unplain> {
  const asked = Array.from(regions, (region) => ({
    region,
    values: askedValues(instrument, region, (name) => !rangeNames.has(name) && isSaid(region, name)),
  }));
  const firstControllers = readFirstControllers(new ValuesInForce(instrument));
  const unsaid = new Map<number, Unplain>();
  const plain = asked.filter(({ region, values }) => {
    const reason = unplain(values, firstControllers);
    if (reason) unsaid.set(region, reason);
    return reason === undefined;
  });
  const values = plain.map((one) => one.values);
  const [first] = variantsOf(instrument, values, { keyswitches: 'first', takes: 'first' });
  for (const one of plain)
    if (!soundsIn(one.values, first)) unsaid.set(one.region, otherWay(one.values, first));
  return unsaid;
}

/** Notes on regions that are left out of a target, one for all of a reason. */
export function unsaidNotes(
  instrument: Instrument,
  unsaid: ReadonlyMap<number, Unplain>,
  target: string,
): ConversionNote[] {
  const byReason = new Map<string, { region: number; count: number }>();
  for (const [region, { why, name, said = name }] of unsaid) {
    const reason = `${why} (${said})`;
    const known = byReason.get(reason);
    if (known) known.count++;
    else byReason.set(reason, { region, count: 1 });
  }
  return [...byReason].map(([why, { region, count }]) => ({
    kind: 'dropped',
    ...instrument.headerSpan(region),
    message: `${counted(count, 'region')} ${count === 1 ? 'sounds' : 'sound'} ${why}, which ${target} cannot say, so ${count === 1 ? 'it is' : 'they are'} left out.`,
  }));
}

function unplain(values: AskedValues, firstControllers: Float64Array): Unplain | undefined {
  const reason = startsOtherwise(values) ?? asksForKeys(values) ?? asksForBend(values);
  if (reason) return reason;
  for (const controller of askedControllers(values)) {
    const moved = asksForController(values, controller, firstControllers);
    if (moved) return moved;
  }
  return undefined;
}

/** Why a region sounds in another way of playing than the first. */
function otherWay(values: AskedValues, first: Variant): Unplain {
  const withoutSwitch = {
    ...first,
    keyswitch: Number.isNaN(values.key('sw_last')) ? values.key('sw_lolast') : values.key('sw_last'),
  };
  if (soundsIn(values, withoutSwitch))
    return { name: 'sw_last', why: 'after another keyswitch than the first' };
  return values.has('lorand') || values.has('hirand')
    ? { name: 'lorand', why: 'by chance' }
    : { name: 'seq_position', why: 'in a later turn of a round robin' };
}
