import type { GateTable } from '../playable/gateTable';
import type { PlayableInstrument } from '../playable/playableInstrument';
import { controllerCount } from './playState';

/** Which regions controllers start and stop. */
export class ControllerTriggers {
  /** The regions that some controller starts, in the order of the text. */
  readonly starting: readonly number[];
  readonly #starts: GateTable;
  readonly #stops: GateTable;
  readonly #used = new Uint8Array(controllerCount);

  constructor({ startGates, stopGates, regionCount }: PlayableInstrument) {
    this.#starts = startGates;
    this.#stops = stopGates;
    const starting: number[] = [];
    for (let region = 0; startGates.subject.length > 0 && region < regionCount; region++) {
      if (startGates.start[region] < startGates.start[region + 1]) starting.push(region);
    }
    this.starting = starting;
    for (const { subject } of [startGates, stopGates])
      for (const controller of subject) this.#used[controller] = 1;
  }

  /** Whether a controller starts or stops some region. */
  has(controller: number): boolean {
    return this.#used[controller] === 1;
  }

  /** Whether a controller that moves from one value to another starts a region. */
  starts(region: number, controller: number, before: number, after: number): boolean {
    return enters(this.#starts, region, controller, before, after);
  }

  /** Whether a controller that moves from one value to another stops a region. */
  stops(region: number, controller: number, before: number, after: number): boolean {
    return enters(this.#stops, region, controller, before, after);
  }
}

function enters(
  gates: GateTable,
  region: number,
  controller: number,
  before: number,
  after: number,
): boolean {
  for (let gate = gates.start[region]; gate < gates.start[region + 1]; gate++) {
    if (gates.subject[gate] !== controller) continue;
    const low = gates.low[gate];
    const high = gates.high[gate];
    if (after >= low && after <= high && !(before >= low && before <= high)) return true;
  }
  return false;
}
