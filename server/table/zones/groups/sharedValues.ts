import type { ValueName, ZoneList } from '../zoneList';

/** Values that a group can state once for all its regions, in the order in which it states them. */
export const shareable: readonly ValueName[] = ['lovel', 'hivel', 'seq_length', 'volume', 'pan', 'loop_mode'];

/** The zones of a text in their groups, of which regions are made. */
export interface GroupedZones {
  zones: ZoneList;
  /** Zones in none of them become no regions. */
  groups: readonly ZoneGroup[];
}

/** Zones of one group, with the values that stand at the group. */
export interface ZoneGroup {
  /** Empty for zones without a group; these share nothing. */
  name: string;
  /** The cell that names the group; −1 for none. */
  cell: number;
  /** What the group states for all its zones, with the value of the first. */
  shared: readonly ValueName[];
  /** In the order of the text. */
  zones: Int32Array;
}

/**
 * Puts zones into groups, zones without one first, then the groups in order of first appearance, and finds what all
 * zones of a group have alike, so that it stands at the group: velocities, the length of round robins, level, pan and
 * loop mode, or other values that are given.
 */
export function groupZones(zones: ZoneList, names: readonly ValueName[] = shareable): ZoneGroup[] {
  const { groupNames } = zones;
  const ends = new Int32Array(groupNames.length + 1);
  for (let zone = 0; zone < zones.count; zone++) ends[zones.groups[zone] + 1]++;
  for (let group = 1; group < ends.length; group++) ends[group] += ends[group - 1];
  const starts = ends.slice();
  const order = new Int32Array(zones.count);
  for (let zone = 0; zone < zones.count; zone++) order[starts[zones.groups[zone]]++] = zone;
  const groups: ZoneGroup[] = [];
  for (const [group, name] of groupNames.entries()) {
    const members = order.subarray(ends[group], ends[group + 1]);
    if (members.length === 0) continue;
    const shared = group > 0 && members.length > 1 ? sharedBy(zones, members, names) : [];
    groups.push({ name, cell: zones.groupCells[members[0]], shared, zones: members });
  }
  return groups;
}

/** The zones of all groups, group by group. */
export function inGroupOrder(groups: readonly ZoneGroup[]): Int32Array {
  const order = new Int32Array(groups.reduce((sum, { zones }) => sum + zones.length, 0));
  let filled = 0;
  for (const { zones } of groups) {
    order.set(zones, filled);
    filled += zones.length;
  }
  return order;
}

function sharedBy(zones: ZoneList, members: Int32Array, names: readonly ValueName[]): ValueName[] {
  return names.filter((name) => {
    const column = zones.values(name);
    if (!column) return false;
    const { cells, numbers } = column;
    const value = numbers[members[0]];
    for (let at = 0; at < members.length; at++) {
      const zone = members[at];
      if (cells[zone] < 0 || numbers[zone] !== value) return false;
    }
    return true;
  });
}
