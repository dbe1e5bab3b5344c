import type { Zone, ZoneValue } from './zone';

/** Values that a group can state once for all its regions, in the order in which it states them. */
const shareable = ['lovel', 'hivel', 'seq_length', 'volume', 'pan', 'loop_mode'] as const;

/** Zones of one group, with the values that stand at the group. */
export interface ZoneGroup {
  /** Empty for zones without a group; these share nothing. */
  name: string;
  /** The cell that names the group; −1 for none. */
  cell: number;
  shared: ZoneValue[];
  zones: Zone[];
}

/**
 * Puts zones into groups, zones without one first, then the groups in order of first appearance, and lifts what all
 * zones of a group have alike to the group: velocities, the length of round robins, level, pan and loop mode. The
 * zones keep their order and what differs; they are changed in place.
 */
export function groupZones(zones: readonly Zone[]): ZoneGroup[] {
  const groups = new Map<string, ZoneGroup>([['', { name: '', cell: -1, shared: [], zones: [] }]]);
  for (const zone of zones) {
    const group = groups.get(zone.group);
    if (group) group.zones.push(zone);
    else groups.set(zone.group, { name: zone.group, cell: zone.groupCell, shared: [], zones: [zone] });
  }
  for (const group of groups.values()) if (group.name !== '' && group.zones.length > 1) lift(group);
  return [...groups.values()].filter(({ zones: members }) => members.length > 0);
}

function lift(group: ZoneGroup): void {
  const [first, ...others] = group.zones;
  for (const name of shareable) {
    const value = first?.values.find((one) => one.name === name);
    if (!value) continue;
    const alike = (zone: Zone) => zone.values.some((one) => one.name === name && one.text === value.text);
    if (others.every(alike)) group.shared.push(value);
  }
  if (group.shared.length === 0) return;
  const lifted = new Set(group.shared.map(({ name }) => name));
  for (const zone of group.zones) zone.values = zone.values.filter(({ name }) => !lifted.has(name));
}
