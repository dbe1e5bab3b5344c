import type { Zone, ZoneValue } from './zone';

/**
 * Gives zones with a round robin position the length of their cycle: the largest position among the zones of the
 * same keys and velocities, within the group where the group holds several positions, else over all groups, as
 * where each position is a group of its own. A cycle of one is no round robin.
 */
export function completeRoundRobins(zones: readonly Zone[]): void {
  const places: { zone: Zone; position: ZoneValue; keys: number }[] = [];
  const inAll: Cycles = new Map();
  const inGroups = new Map<string, Cycles>();
  for (const zone of zones) {
    const position = zone.values.find(({ name }) => name === 'seq_position');
    if (!position) continue;
    const keys = keysOf(zone);
    places.push({ zone, position, keys });
    const inGroup: Cycles = inGroups.get(zone.group) ?? new Map();
    inGroups.set(zone.group, inGroup);
    for (const cycles of [inAll, inGroup]) {
      const number = Number(position.text);
      const cycle = cycles.get(keys);
      if (!cycle) cycles.set(keys, { largest: number, several: false });
      else if (cycle.largest !== number) {
        cycle.largest = Math.max(cycle.largest, number);
        cycle.several = true;
      }
    }
  }
  for (const { zone, position, keys } of places) {
    if (zone.values.some(({ name }) => name === 'seq_length')) continue;
    const own = inGroups.get(zone.group)?.get(keys);
    const length = (own?.several ? own : inAll.get(keys))?.largest ?? 1;
    if (length > 1) zone.values.push({ name: 'seq_length', cell: position.cell, text: String(length) });
    else zone.values = zone.values.filter((value) => value !== position);
  }
}

/** The largest round robin position of zones by their keys and velocities, and whether several positions occur. */
type Cycles = Map<number, { largest: number; several: boolean }>;

/** The keys and velocities of a zone as one number, each from 0 (not given) to 128. */
function keysOf({ values }: Zone): number {
  let [key, low, high, lowVelocity, highVelocity] = [0, 0, 0, 0, 0];
  for (const { name, text } of values) {
    if (name === 'key') key = Number(text) + 1;
    else if (name === 'lokey') low = Number(text) + 1;
    else if (name === 'hikey') high = Number(text) + 1;
    else if (name === 'lovel') lowVelocity = Number(text) + 1;
    else if (name === 'hivel') highVelocity = Number(text) + 1;
  }
  return (((key * 129 + low) * 129 + high) * 129 + lowVelocity) * 129 + highVelocity;
}
