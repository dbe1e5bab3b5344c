import type { PlayableInstrument } from '../playable/playableInstrument';
import { isItsChance, isPressTrigger, meetsConditions, meetsSwitches } from './conditions';
import { grownTo } from './growing';
import type { PlayMemory } from './playMemory';

/** The regions that a strike, release or message starts: their conditions are met and it is their turn. */
export class ChosenRegions {
  /** The first {@link count} are chosen. */
  regions = new Int32Array(64);
  count = 0;
  readonly #playable: PlayableInstrument;
  readonly #memory: PlayMemory;

  constructor(playable: PlayableInstrument, memory: PlayMemory) {
    this.#playable = playable;
    this.#memory = memory;
  }

  clear(): void {
    this.count = 0;
  }

  /** Chooses a region whose key, velocity and trigger are met where the rest is, and counts its turn. */
  takeIfMet(region: number): void {
    const playable = this.#playable;
    const memory = this.#memory;
    if (!meetsConditions(playable, memory, region) || !isItsChance(playable, memory, region)) return;
    if (memory.takeStep(region) === playable.sequencePosition[region] - 1) this.#add(region);
  }

  /** Chooses, in the order of the text, what the strike starts that the memory has turned to, and counts turns. */
  takePressed(): void {
    const playable = this.#playable;
    const memory = this.#memory;
    const { key, velocity } = memory;
    const { lowVelocity, highVelocity } = playable;
    const { byKey, nextSwitches, kind } = playable.pressed;
    this.clear();
    for (let at = byKey.start[key]; at < byKey.end[key]; at++) {
      const region = byKey.regions[at];
      if (!meetsSwitches(playable, memory, region)) {
        at = nextSwitches[at] - 1;
        continue;
      }
      if (velocity < lowVelocity[region] || velocity > highVelocity[region]) continue;
      if (isPressTrigger(playable, memory, region) && meetsConditions(playable, memory, region))
        this.#takeOfKind(kind[region]);
    }
    this.#order();
  }

  /** Chooses among the turns of a kind: those that begin at the random number or below, as far back as one may reach up to it. */
  #takeOfKind(kind: number): void {
    const { turnStart, turnRegion, highestRandom } = this.#playable.pressed;
    const { lowRandom } = this.#playable;
    const { random } = this.#memory;
    const first = turnStart[kind];
    let low = first;
    let high = turnStart[kind + 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (lowRandom[turnRegion[middle]] <= random) low = middle + 1;
      else high = middle;
    }
    for (let turn = low - 1; turn >= first; turn--) {
      if (random >= highestRandom[turn]) break;
      if (isItsChance(this.#playable, this.#memory, turnRegion[turn])) this.#takeStep(turn);
    }
  }

  /** Chooses the regions of a turn that stand at the step that it comes to. */
  #takeStep(turn: number): void {
    const { regionStart, regions, turnRegion } = this.#playable.pressed;
    const { sequencePosition } = this.#playable;
    const position = this.#memory.takeStep(turnRegion[turn]) + 1;
    const end = regionStart[turn + 1];
    let low = regionStart[turn];
    let high = end;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sequencePosition[regions[middle]] < position) low = middle + 1;
      else high = middle;
    }
    for (let at = low; at < end && sequencePosition[regions[at]] === position; at++) this.#add(regions[at]);
  }

  #add(region: number): void {
    if (this.count === this.regions.length) this.regions = grownTo(this.count * 2, this.regions, Int32Array);
    this.regions[this.count++] = region;
  }

  /** Puts the chosen ones into the order of the text; most often they stand in it. */
  #order(): void {
    const { regions, count } = this;
    for (let at = 1; at < count; at++) {
      if (regions[at] > regions[at - 1]) continue;
      regions.subarray(0, count).sort();
      return;
    }
  }
}
