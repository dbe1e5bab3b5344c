import type { ConversionNote } from '../model/notes';
import { mainSpan } from '../model/text/span';
import type { GroupedZones } from '../table/zones/groups/sharedValues';
import { groupZones, shareable } from '../table/zones/groups/sharedValues';
import type { Suggestion } from '../table/zones/groups/suggestions';
import { completeRoundRobins } from '../table/zones/layers/roundRobin';
import type { ZoneList } from '../table/zones/zoneList';
import { valueNames, valueWords } from '../table/zones/zoneList';
import { dynamicOf } from '../trade/dynamics';
import { velocitiesOfLayers } from '../trade/layerVelocities';

/** A way to group regions that a table does not state itself, which a person has chosen. */
type Grouping = Pick<Suggestion, 'kind' | 'parts'>;

/** The outer part of a group's name comes first. */
const outermostFirst = ['sections', 'articulations', 'microphones', 'layers', 'releases'] as const;

/**
 * Arranges zones in groups as a person has chosen. Layers share the velocities 1..127 in equal parts where the table
 * gives none, release samples get `trigger=release`, and round robins their position and length; these stand behind what
 * the row gives. The zones are changed in place; their order within a group stays.
 */
export function arrangeInGroups(
  grouped: GroupedZones,
  groupings: readonly Grouping[],
): { grouped: GroupedZones; notes: ConversionNote[] } {
  if (groupings.length === 0) return { grouped, notes: [] };
  const { zones } = grouped;
  const labels = new Map(groupings.map((one) => [one.kind, labelsOf(one)]));
  const velocities = velocitiesOf(labels.get('layers'));
  let region = 0;
  let parted = false;
  zones.clearGroups();
  for (const { name: given, zones: members } of grouped.groups) {
    for (const zone of members) {
      const label = (kind: Grouping['kind']) => labels.get(kind)?.get(region);
      const cell = lastCell(zones, zone);
      const velocity = velocities.get(label('layers') ?? '');
      if (velocity && !zones.has('lovel', zone) && !zones.has('hivel', zone)) {
        zones.column('lovel').set(zone, cell, velocity.low);
        zones.column('hivel').set(zone, cell, velocity.high);
        parted = true;
      }
      if (label('releases') !== undefined)
        zones.column('trigger').set(zone, cell, valueWords.indexOf('release'));
      const position = /^rr(\d+)$/.exec(label('round_robins') ?? '')?.[1];
      if (position !== undefined && !zones.has('seq_position', zone))
        zones.column('seq_position').set(zone, cell, Number(position));
      const names = [given, ...outermostFirst.map(label)].filter((one) => one !== undefined && one !== '');
      zones.groups[zone] = zones.groupOf([...new Set(names)].join(' '));
      if (given === '') zones.groupCells[zone] = zones.column('sample').cells[zone];
      region++;
    }
  }
  if (labels.has('round_robins')) completeRoundRobins(zones, true);
  const parts = [...velocities].map(([label, { low, high }]) => `${label} ${low} to ${high}`).join(', ');
  const message = `The table gives no velocities; the layers share them in equal parts: ${parts}.`;
  return {
    grouped: { zones, groups: groupZones(zones, ['trigger', ...shareable]) },
    notes: parted ? [{ kind: 'assumed', ...mainSpan(0, 0), message }] : [],
  };
}

/** The last of the cells that give a zone something. */
function lastCell(zones: ZoneList, zone: number): number {
  return Math.max(...valueNames.map((name) => zones.values(name)?.cells[zone] ?? -1));
}

function labelsOf({ parts }: Grouping): Map<number, string> {
  const labels = new Map<number, string>();
  for (const { label, regions } of parts) for (const region of regions) labels.set(region, label);
  return labels;
}

/** The velocities of each layer: equal parts of 1..127, the softest lowest. */
function velocitiesOf(
  labels: ReadonlyMap<number, string> | undefined,
): ReadonlyMap<string, { low: number; high: number }> {
  const present = new Set(labels?.values());
  const layers = [...present].filter((label) => dynamicOf(label) >= 0);
  layers.sort((a, b) => dynamicOf(a) - dynamicOf(b));
  return layers.length < 2 ? new Map() : velocitiesOfLayers(layers);
}
