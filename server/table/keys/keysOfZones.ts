import type { ZoneList } from '../zones/zoneList';

/** Tells the keys that zones sound on, by a range or by one key; `undefined` for zones whose keys, or one end of them, are not given. */
export function keysOfZones(zones: ZoneList): (zone: number) => { low: number; high: number } | undefined {
  const [key, lows, highs] = [zones.values('key'), zones.values('lokey'), zones.values('hikey')];
  return (zone) => {
    const low = lows && lows.cells[zone] >= 0 ? lows : key;
    const high = highs && highs.cells[zone] >= 0 ? highs : key;
    if (!low || !high || low.cells[zone] < 0 || high.cells[zone] < 0) return undefined;
    return { low: low.numbers[zone], high: high.numbers[zone] };
  };
}
