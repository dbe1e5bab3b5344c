import type { Zone, ZoneValue } from './zone';

/**
 * Gives zones with a round robin position the length of their cycle: the largest position among the zones of the
 * same keys and velocities, within the group where the group holds several positions, else over all groups, as
 * where each position is a group of its own. A cycle of one is no round robin.
 */
export function completeRoundRobins(zones: readonly Zone[]): void {
  const largest = new Map<string, { position: number; several: boolean }>();
  const places: { zone: Zone; position: ZoneValue; keys: string }[] = [];
  for (const zone of zones) {
    const position = zone.values.find(({ name }) => name === 'seq_position');
    if (!position) continue;
    const keys = keysOf(zone);
    places.push({ zone, position, keys });
    for (const key of [keys, `${keys} ${zone.group}`]) {
      const number = Number(position.text);
      const before = largest.get(key);
      largest.set(key, {
        position: Math.max(number, before?.position ?? 0),
        several: before !== undefined && (before.several || before.position !== number),
      });
    }
  }
  for (const { zone, position, keys } of places) {
    if (zone.values.some(({ name }) => name === 'seq_length')) continue;
    const own = largest.get(`${keys} ${zone.group}`);
    const length = (own?.several ? own : largest.get(keys))?.position ?? 1;
    if (length > 1) zone.values.push({ name: 'seq_length', cell: position.cell, text: String(length) });
    else zone.values = zone.values.filter((value) => value !== position);
  }
}

/** The keys and velocities of a zone as one text. */
function keysOf({ values }: Zone): string {
  let [key, low, high, lowVelocity, highVelocity] = ['', '', '', '', ''];
  for (const { name, text } of values) {
    if (name === 'key') key = text;
    else if (name === 'lokey') low = text;
    else if (name === 'hikey') high = text;
    else if (name === 'lovel') lowVelocity = text;
    else if (name === 'hivel') highVelocity = text;
  }
  return `${key} ${low} ${high} ${lowVelocity} ${highVelocity}`;
}
