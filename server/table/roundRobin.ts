import { PairNumbers } from '../model/pairNumbers';
import type { ZoneList } from './zoneList';

/**
 * Gives zones with a round robin position the length of their cycle: the largest position among the zones of the
 * same keys and velocities, within the group where the group holds several positions, else over all groups, as
 * where each position is a group of its own. A cycle of one is no round robin.
 */
export function completeRoundRobins(zones: ZoneList): void {
  const positions = zones.values('seq_position');
  if (!positions) return;
  const inAll = new Cycles();
  const inGroups = new Cycles();
  const conditions = new Int32Array(zones.count);
  const conditionsOf = conditionsReader(zones);
  for (let zone = 0; zone < zones.count; zone++) {
    if (positions.cells[zone] < 0) continue;
    conditions[zone] = conditionsOf(zone);
    inAll.add(conditions[zone], 0, positions.numbers[zone]);
    inGroups.add(conditions[zone], zones.groups[zone], positions.numbers[zone]);
  }
  const lengths = zones.column('seq_length');
  for (let zone = 0; zone < zones.count; zone++) {
    const cell = positions.cells[zone];
    if (cell < 0 || lengths.cells[zone] >= 0) continue;
    const length =
      inGroups.lengthOf(conditions[zone], zones.groups[zone]) ?? inAll.longest(conditions[zone], 0);
    if (length > 1) lengths.set(zone, cell, length);
    else positions.cells[zone] = -1;
  }
}

/** The cycles of zones by their conditions and group. */
class Cycles {
  readonly #numbers = new PairNumbers();
  readonly #longest: number[] = [];
  /** Whether several positions occur. */
  readonly #several: boolean[] = [];

  add(conditions: number, group: number, position: number): void {
    const cycle = this.#numbers.numberOf(conditions, group);
    if (cycle === this.#longest.length) {
      this.#longest.push(position);
      this.#several.push(false);
    } else if (this.#longest[cycle] !== position) {
      this.#longest[cycle] = Math.max(this.#longest[cycle], position);
      this.#several[cycle] = true;
    }
  }

  longest(conditions: number, group: number): number {
    return this.#longest[this.#numbers.numberOf(conditions, group)];
  }

  /** The length of a cycle of several positions; `undefined` for others. */
  lengthOf(conditions: number, group: number): number | undefined {
    const cycle = this.#numbers.numberOf(conditions, group);
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
