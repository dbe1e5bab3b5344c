import { PairNumbers } from '../../../model/overlaps/pairNumbers';
import type { ZoneList } from '../zoneList';

/**
 * Gives zones with a round robin position the length of their cycle: the largest position among the zones of the
 * same keys and velocities, within the group where the group holds several positions, else over all groups, as
 * where each position is a group of its own; with `inGroupsAlone` not over others. A cycle of one is no round robin.
 */
export function completeRoundRobins(zones: ZoneList, inGroupsAlone = false): void {
  const positions = zones.values('seq_position');
  if (!positions) return;
  const inAll = new Cycles();
  const inGroups = new Cycles();
  const conditions = new Int32Array(zones.count);
  const cycles = new Int32Array(zones.count);
  const conditionsOf = conditionsReader(zones);
  const numbers = new PairNumbers();
  for (let zone = 0; zone < zones.count; zone++) {
    if (positions.cells[zone] < 0) continue;
    conditions[zone] = conditionsOf(zone);
    cycles[zone] = numbers.numberOf(conditions[zone], zones.groups[zone]);
    inAll.add(conditions[zone], positions.numbers[zone]);
    inGroups.add(cycles[zone], positions.numbers[zone]);
  }
  const lengths = zones.column('seq_length');
  for (let zone = 0; zone < zones.count; zone++) {
    const cell = positions.cells[zone];
    if (cell < 0 || lengths.cells[zone] >= 0) continue;
    const length = inGroups.lengthOf(cycles[zone]) ?? (inGroupsAlone ? 1 : inAll.longest(conditions[zone]));
    if (length > 1) lengths.set(zone, cell, length);
    else positions.cells[zone] = -1;
  }
}

/** Cycles by number; a new one has the next number. */
class Cycles {
  readonly #longest: number[] = [];
  /** Whether several positions occur. */
  readonly #several: boolean[] = [];

  add(cycle: number, position: number): void {
    if (cycle === this.#longest.length) {
      this.#longest.push(position);
      this.#several.push(false);
    } else if (this.#longest[cycle] !== position) {
      this.#longest[cycle] = Math.max(this.#longest[cycle], position);
      this.#several[cycle] = true;
    }
  }

  longest(cycle: number): number {
    return this.#longest[cycle];
  }

  /** The length of a cycle of several positions; `undefined` for others. */
  lengthOf(cycle: number): number | undefined {
    return this.#several[cycle] ? this.#longest[cycle] : undefined;
  }
}

/** Gives zones of the same keys and velocities the same number. */
function conditionsReader(zones: ZoneList): (zone: number) => number {
  const numbers = new PairNumbers();
  const [key, low, high] = [zones.values('key'), zones.values('lokey'), zones.values('hikey')];
  const [lowVelocity, highVelocity] = [zones.values('lovel'), zones.values('hivel')];
  return (zone) => {
    const keys = ((key?.oneMore(zone) ?? 0) * 129 + (low?.oneMore(zone) ?? 0)) * 129;
    const velocities = (lowVelocity?.oneMore(zone) ?? 0) * 129 + (highVelocity?.oneMore(zone) ?? 0);
    return numbers.numberOf(keys + (high?.oneMore(zone) ?? 0), velocities);
  };
}
