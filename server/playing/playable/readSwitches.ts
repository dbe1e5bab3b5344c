import { keyswitchOffsets } from '../../model/inForce/keyswitchOffsets';
import type { ValuesInForce } from './valuesInForce';

/** Keyswitches of all regions. */
export interface RegionSwitches {
  /** Keyswitches, −1 where there is no such condition. `switchLow`..`switchHigh` is one key for `sw_last`. */
  switchLow: Int16Array;
  switchHigh: Int16Array;
  switchDefault: Int16Array;
  switchDown: Int16Array;
  switchUp: Int16Array;
  previousKey: Int16Array;
  /** Which of {@link switchZones} the region's last keyswitch is looked for in. */
  switchZone: Uint16Array;
  /** By zone and key, 128 a zone: 1 for keys that count as keyswitches there. */
  switchZones: Uint8Array;
}

/** Zones beyond this one are taken for the last; instruments have one or two. */
const mostZones = 4096;

/** Reads the keyswitches of all regions and the zones of keys that they are looked for in. */
export function readSwitches(values: ValuesInForce): RegionSwitches {
  const { instrument } = values;
  const count = instrument.regions.length;
  const offset = keyswitchOffsets(values.instrument);
  const keys = (name: string) => values.keys(name, new Int16Array(count), offset);
  const last = keys('sw_last');
  const lowest = keys('sw_lolast');
  const highest = keys('sw_hilast');
  const switchLow = new Int16Array(count).fill(-1);
  const switchHigh = new Int16Array(count).fill(-1);
  for (let region = 0; region < count; region++) {
    const one = last[region];
    const low = lowest[region];
    const high = highest[region];
    if (one < 0 && low < 0 && high < 0) continue;
    switchLow[region] = one >= 0 ? one : Math.max(0, low);
    switchHigh[region] = one >= 0 ? one : high >= 0 ? high : 127;
  }
  return {
    switchLow,
    switchHigh,
    switchDefault: keys('sw_default'),
    switchDown: keys('sw_down'),
    switchUp: keys('sw_up'),
    previousKey: values.keys(
      'sw_previous',
      new Int16Array(count),
      (region) => instrument.control(region).keyOffset,
    ),
    ...readZones(switchLow, switchHigh, keys('sw_lokey'), keys('sw_hikey')),
  };
}

function readZones(
  switchLow: Int16Array,
  switchHigh: Int16Array,
  from: Int16Array,
  to: Int16Array,
): Pick<RegionSwitches, 'switchZone' | 'switchZones'> {
  const count = switchLow.length;
  const switchZone = new Uint16Array(count);
  const zones = new Map<number, number>();
  const bounds: [low: number, high: number][] = [];
  for (let region = 0; region < count; region++) {
    if (switchLow[region] < 0) continue;
    const low = from[region];
    const high = to[region];
    const key = (low + 1) * 256 + high + 1;
    let zone = zones.get(key);
    if (zone === undefined) {
      zone = Math.min(zones.size, mostZones);
      zones.set(key, zone);
      bounds[zone] = [low, high];
    }
    switchZone[region] = zone;
  }
  const switchZones = new Uint8Array(bounds.length * 128);
  for (const [zone, [low, high]] of bounds.entries()) {
    if (low >= 0 || high >= 0) {
      switchZones.fill(1, zone * 128 + Math.max(0, low), zone * 128 + (high < 0 ? 127 : high) + 1);
      continue;
    }
    for (let region = 0; region < count; region++) {
      if (switchLow[region] < 0 || switchZone[region] !== zone) continue;
      switchZones.fill(1, zone * 128 + switchLow[region], zone * 128 + switchHigh[region] + 1);
    }
  }
  return { switchZone, switchZones };
}
