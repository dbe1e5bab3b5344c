import type { ValueName, ZoneList } from '../zoneList';

/** Values that differ by less than a thousandth are told apart by comparison alone. */
const thousand = 1000;

/**
 * For each zone from `first` to before `end`, which zone is the first of the same group that agrees with it in the values of some
 * names, counted from `first`.
 */
export function firstAlike(
  zones: ZoneList,
  names: readonly ValueName[],
  first: number,
  end: number,
): Int32Array {
  const columns = names.map((name) => zones.values(name)).filter((column) => column !== undefined);
  const agree = (zone: number, other: number) => {
    if (zones.groups[zone] !== zones.groups[other]) return false;
    for (const column of columns) if (column.oneMore(zone) !== column.oneMore(other)) return false;
    return true;
  };
  const count = Math.max(0, end - first);
  const found = new Int32Array(count);
  /** One more than the place of each first zone, found by hashes; 0 where a slot is free. */
  const slots = new Int32Array(2 << Math.ceil(Math.log2(count + 1)));
  const mask = slots.length - 1;
  for (let place = 0; place < count; place++) {
    const zone = first + place;
    let hash = zones.groups[zone];
    for (const column of columns) hash = (Math.imul(hash, 31) + column.oneMore(zone) * thousand) | 0;
    let slot = (hash ^ (hash >>> 15)) & mask;
    while (slots[slot] !== 0 && !agree(first + slots[slot] - 1, zone)) slot = (slot + 1) & mask;
    if (slots[slot] === 0) slots[slot] = place + 1;
    found[place] = slots[slot] - 1;
  }
  return found;
}
