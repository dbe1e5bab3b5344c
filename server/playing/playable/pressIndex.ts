import { filled } from './filled';
import type { GateTable } from './gateTable';
import { indexByKey, type KeyIndex } from './keyIndex';
import { type Partition, partedBy } from './partition';
import type { RegionSwitches } from './readSwitches';

/**
 * Regions that a pressed key can start, put together so that what many of them ask for is looked at once. Regions of a kind ask
 * for the same in all but chance and the step of their round robin; those of a turn for the same chance too, so that they count
 * steps together.
 */
export interface PressIndex {
  /** By key a region of each kind that answers it; those with the same keyswitches stand together. */
  byKey: KeyIndex;
  /** By place in `byKey.regions`: where the first one with other keyswitches stands, or the end of the key's. */
  nextSwitches: Int32Array;
  /** By region: its kind. */
  kind: Int32Array;
  /** Turns of kind k are `turnStart[k]`..`turnStart[k + 1] − 1`, in the order of their lowest random numbers. */
  turnStart: Int32Array;
  /** By turn: a region of it, and the highest random number that one of its kind up to it asks for. */
  turnRegion: Int32Array;
  highestRandom: Float64Array;
  /** Regions of turn t are `regions[regionStart[t]]`..`regions[regionStart[t + 1] − 1]`, in the order of their steps. */
  regionStart: Int32Array;
  regions: Int32Array;
}

/** What regions ask for before a key starts them, by region. */
export interface Asked extends RegionSwitches {
  /** Keys 0..127, or −1 in both where keys do not trigger; velocities. Both ends belong to the range. */
  lowKey: Int16Array;
  highKey: Int16Array;
  lowVelocity: Float64Array;
  highVelocity: Float64Array;
  /** The position of the word of `trigger`. */
  trigger: Uint8Array;
  sequenceLength: Uint16Array;
  sequencePosition: Uint16Array;
  /** The part of random numbers 0..1 for which the region sounds; the upper end is left out unless it is 1. */
  lowRandom: Float64Array;
  highRandom: Float64Array;
  /** Ranges of controllers, channel and program, then those of tempo, timer, bend and pressure. */
  controllerGates: GateTable;
  otherGates: GateTable;
  /** `group`, 0 where not set. */
  group: Int32Array;
}

/** Makes the index of some regions, and by region the number of the turn that it counts in; each other region counts by itself. */
export function indexPressed(
  pressed: readonly number[],
  asked: Asked,
): { pressed: PressIndex; turn: Int32Array } {
  const switches = switchesOf(asked);
  const kinds = kindsOf(switches, asked);
  const chances = partedBy(partedBy(kinds, asked.lowRandom), asked.highRandom).classOf;
  const kind = kinds.classOf;
  const regions = inOrder(pressed, kinds, asked);
  const turn = new Int32Array(kind.length).fill(-1);
  const turnStart = new Int32Array(kinds.count + 1);
  const turnRegion: number[] = [];
  const regionStart: number[] = [];
  for (let at = 0; at < regions.length; at++) {
    const region = regions[at];
    if (at === 0 || chances[region] !== chances[regions[at - 1]]) {
      turnRegion.push(region);
      regionStart.push(at);
      turnStart[kind[region] + 1]++;
    }
    turn[region] = turnRegion.length - 1;
  }
  let turns = turnRegion.length;
  for (let region = 0; region < turn.length; region++) if (turn[region] < 0) turn[region] = turns++;
  for (let at = 0; at < kinds.count; at++) turnStart[at + 1] += turnStart[at];
  const byKey = indexKinds(turnStart, turnRegion, switches, asked);
  const index = {
    byKey,
    nextSwitches: endsOfRuns(byKey, switches),
    kind,
    turnStart,
    turnRegion: Int32Array.from(turnRegion),
    highestRandom: highestSoFar(turnRegion, kind, asked.highRandom),
    regionStart: Int32Array.from([...regionStart, regions.length]),
    regions,
  };
  return { pressed: index, turn };
}

function switchesOf({ group, ...asked }: Asked): Partition {
  return [
    ...[asked.switchLow, asked.switchHigh, asked.switchDefault, asked.switchDown, asked.switchUp],
    ...[asked.previousKey, asked.switchZone],
  ].reduce(partedBy, { classOf: new Int32Array(group.length), count: 1 });
}

function kindsOf(switches: Partition, asked: Asked): Partition {
  const columns: ArrayLike<number>[] = [
    ...[asked.lowKey, asked.highKey, asked.lowVelocity, asked.highVelocity, asked.trigger],
    asked.sequenceLength,
    ...gateColumns(asked.controllerGates),
    ...gateColumns(asked.otherGates),
  ];
  // The timer is that of a group.
  if (asked.otherGates.subject.length > 0) columns.push(asked.group);
  return columns.reduce(partedBy, switches);
}

/** By key the first region of each kind, in the order of their keyswitches. */
function indexKinds(
  turnStart: Int32Array,
  turnRegion: readonly number[],
  { classOf }: Partition,
  { lowKey, highKey }: Asked,
): KeyIndex {
  const regions: number[] = [];
  for (let kind = 0; kind + 1 < turnStart.length; kind++) {
    const first = turnStart[kind];
    if (first < turnStart[kind + 1]) regions.push(turnRegion[first]);
  }
  return indexByKey(
    regions.sort((a, b) => classOf[a] - classOf[b]),
    lowKey,
    highKey,
  );
}

function endsOfRuns({ start, end, regions }: KeyIndex, { classOf }: Partition): Int32Array {
  const ends = new Int32Array(regions.length);
  for (let key = 0; key < start.length; key++) {
    // Keys that the same regions answer share their list.
    if (key > 0 && start[key] === start[key - 1] && end[key] === end[key - 1]) continue;
    for (let at = end[key] - 1; at >= start[key]; at--) {
      const isLast = at + 1 === end[key] || classOf[regions[at]] !== classOf[regions[at + 1]];
      ends[at] = isLast ? at + 1 : ends[at + 1];
    }
  }
  return ends;
}

/** The first, second and further ranges of each region as columns; what no controller is stands for those that a region has not. */
function gateColumns({ start, subject, low, high }: GateTable): Float64Array[] {
  const regions = start.length - 1;
  let most = 0;
  for (let region = 0; region < regions; region++) most = Math.max(most, start[region + 1] - start[region]);
  return Array.from({ length: most }, (_, nth) =>
    [subject, low, high].map((values) =>
      filled(new Float64Array(regions), (region) => {
        const at = start[region] + nth;
        return at < start[region + 1] ? values[at] : -1e9;
      }),
    ),
  ).flat();
}

/** Regions by kinds, in a kind by their random numbers, then by steps, then as they are. */
function inOrder(pressed: readonly number[], { classOf, count }: Partition, asked: Asked): Int32Array {
  const start = new Int32Array(count + 1);
  for (const region of pressed) start[classOf[region] + 1]++;
  for (let kind = 0; kind < count; kind++) start[kind + 1] += start[kind];
  const next = start.slice();
  const ordered = new Int32Array(pressed.length);
  for (const region of pressed) ordered[next[classOf[region]]++] = region;
  const { lowRandom, highRandom, sequencePosition } = asked;
  const order = (a: number, b: number) =>
    lowRandom[a] - lowRandom[b] ||
    highRandom[a] - highRandom[b] ||
    sequencePosition[a] - sequencePosition[b] ||
    a - b;
  for (let kind = 0; kind < count; kind++) {
    for (let at = start[kind] + 1; at < start[kind + 1]; at++) {
      if (order(ordered[at - 1], ordered[at]) < 0) continue;
      ordered.subarray(start[kind], start[kind + 1]).sort(order);
      break;
    }
  }
  return ordered;
}

function highestSoFar(
  turnRegion: readonly number[],
  kind: Int32Array,
  highRandom: Float64Array,
): Float64Array {
  const highest = new Float64Array(turnRegion.length);
  for (const [turn, region] of turnRegion.entries()) {
    const isFirst = turn === 0 || kind[region] !== kind[turnRegion[turn - 1]];
    highest[turn] = isFirst ? highRandom[region] : Math.max(highest[turn - 1], highRandom[region]);
  }
  return highest;
}
