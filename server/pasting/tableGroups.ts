import type { ConversionNote } from '../model/notes';
import { mainSpan } from '../model/text/span';
import type { Suggestion } from '../table/zones/suggestions';
import { dynamicOf } from '../trade/dynamics';
import { velocitiesOfLayer } from '../trade/layerVelocities';
import type { ZoneRegion, ZoneSection, ZoneValue } from './tableZones';
import { liftShared } from './tableZones';

/** A way to group regions that a table does not state itself, which a person has chosen. */
type Grouping = Pick<Suggestion, 'kind' | 'parts'>;

/** The outer part of a group's name comes first. */
const outermostFirst = ['sections', 'articulations', 'microphones', 'layers', 'releases'] as const;

/** What stands in no cell. */
const nowhere = { start: 0, end: 0 };

/**
 * Arranges regions in groups as a person has chosen. Layers share the velocities 1..127 in equal parts where the table
 * gives none, release samples get `trigger=release`, and round robins their position and length. The order of regions
 * within a group stays.
 */
export function groupSections(
  sections: readonly ZoneSection[],
  groupings: readonly Grouping[],
): { sections: ZoneSection[]; notes: ConversionNote[] } {
  if (groupings.length === 0) return { sections: [...sections], notes: [] };
  const labels = new Map(groupings.map((one) => [one.kind, labelsOf(one)]));
  const velocities = velocitiesOf(labels.get('layers'));
  const grouped = new Map<string, ZoneSection>();
  let number = 0;
  let parted = false;
  for (const section of sections) {
    for (const region of section.regions) {
      const label = (kind: Grouping['kind']) => labels.get(kind)?.get(number);
      const values = [...section.values.filter(({ name }) => name !== 'group_label'), ...region.values];
      const velocity = velocities.get(label('layers') ?? '');
      if (velocity && !values.some(({ name }) => name === 'lovel' || name === 'hivel')) {
        values.push(made('lovel', velocity.low), made('hivel', velocity.high));
        parted = true;
      }
      if (label('releases') !== undefined) values.push(made('trigger', 'release'));
      const position = /^rr(\d+)$/.exec(label('round_robins') ?? '')?.[1];
      if (position !== undefined && !values.some(({ name }) => name === 'seq_position'))
        values.push(made('seq_position', position));
      const given = section.values.find(({ name }) => name === 'group_label');
      const names = [given?.value, ...outermostFirst.map(label)].filter((one) => one !== undefined);
      const name = [...new Set(names)].join(' ');
      let into = grouped.get(name);
      if (!into) {
        const span = given ? { start: given.start, end: given.end } : nowhere;
        into = { values: name === '' ? [] : [{ name: 'group_label', value: name, ...span }], regions: [] };
        grouped.set(name, into);
      }
      into.regions.push({ ...region, values });
      number++;
    }
  }
  const result = [...grouped.values()];
  if (labels.has('round_robins')) for (const section of result) countRoundRobins(section.regions);
  for (const section of result) if (section.values.length > 0) liftShared(section);
  const parts = [...velocities].map(([label, { low, high }]) => `${label} ${low} to ${high}`).join(', ');
  const message = `The table gives no velocities; the layers share them in equal parts: ${parts}.`;
  return {
    sections: result,
    notes: parted ? [{ kind: 'assumed', ...mainSpan(0, 0), message }] : [],
  };
}

function labelsOf({ parts }: Grouping): Map<number, string> {
  const labels = new Map<number, string>();
  for (const { label, regions } of parts) for (const region of regions) labels.set(region, label);
  return labels;
}

function made(name: string, value: string | number): ZoneValue {
  return { name, value: String(value), ...nowhere };
}

/** The velocities of each layer: equal parts of 1..127, the softest lowest. */
function velocitiesOf(
  labels: ReadonlyMap<number, string> | undefined,
): Map<string, { low: number; high: number }> {
  const present = new Set(labels?.values());
  const layers = [...present].filter((label) => dynamicOf(label) >= 0);
  layers.sort((a, b) => dynamicOf(a) - dynamicOf(b));
  if (layers.length < 2) return new Map();
  return new Map(layers.map((label, at) => [label, velocitiesOfLayer(at, layers.length)]));
}

/** Gives round robins of the same keys and velocities their common length. */
function countRoundRobins(regions: readonly ZoneRegion[]): void {
  const turns = new Map<string, ZoneRegion[]>();
  const valueIn = ({ values }: ZoneRegion, name: string) =>
    values.find((one) => one.name === name)?.value ?? '';
  for (const region of regions) {
    if (valueIn(region, 'seq_position') === '') continue;
    const place = ['key', 'lokey', 'hikey', 'lovel', 'hivel'].map((name) => valueIn(region, name)).join(' ');
    const others = turns.get(place);
    if (others) others.push(region);
    else turns.set(place, [region]);
  }
  for (const members of turns.values()) {
    const length = Math.max(...members.map((one) => Number(valueIn(one, 'seq_position'))));
    for (const region of members) {
      if (members.length === 1) region.values = region.values.filter(({ name }) => name !== 'seq_position');
      else if (valueIn(region, 'seq_length') === '') {
        const at = region.values.findIndex(({ name }) => name === 'seq_position');
        region.values.splice(at, 0, made('seq_length', length));
      }
    }
  }
}
