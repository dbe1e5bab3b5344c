import type { Instrument } from '../model/instrument';
import type { GateTable } from '../playing/playable/gateTable';
import { GateSubject } from '../playing/playable/gateTable';
import { Trigger, triggerWords } from '../playing/playable/playableInstrument';
import { readGates } from '../playing/playable/readGates';
import { readSwitches } from '../playing/playable/readSwitches';
import { ValuesInForce } from '../playing/playable/valuesInForce';
import type { MapRegion } from './mapScene';

/** What must be so for regions to sound, as far as a map tells it, read as a player reads it. */
export class RegionConditions {
  readonly #triggers: Uint8Array;
  readonly #switchLow: Int16Array;
  readonly #switchHigh: Int16Array;
  readonly #gates: GateTable;
  readonly #positions: Int32Array;
  readonly #lengths: Int32Array;

  constructor(instrument: Instrument) {
    const values = new ValuesInForce(instrument);
    const { switchLow, switchHigh } = readSwitches(values);
    const triggers = new Uint8Array(instrument.regions.length);
    this.#triggers = values.words('trigger', triggerWords, triggers, Trigger.attack);
    this.#switchLow = switchLow;
    this.#switchHigh = switchHigh;
    this.#gates = readGates(values).controllers;
    const count = instrument.regions.length;
    this.#positions = values.numbers('seq_position', new Int32Array(count), 1);
    this.#lengths = values.numbers('seq_length', new Int32Array(count), 1);
  }

  /** The conditions of a region by its position among the regions. */
  of(position: number): Pick<MapRegion, 'trigger' | 'switchedBy' | 'turn' | 'controllers'> {
    const trigger = this.#triggers[position];
    const low = this.#switchLow[position];
    const length = this.#lengths[position];
    const controllers = this.#controllersOf(position);
    return {
      ...(trigger !== Trigger.attack && { trigger: triggerWords[trigger] }),
      ...(low >= 0 && { switchedBy: [low, this.#switchHigh[position]] }),
      ...(length > 1 && { turn: [this.#positions[position], length] }),
      ...(controllers.length > 0 && { controllers }),
    };
  }

  #controllersOf(position: number): [number: number, low: number, high: number][] {
    const { start, subject, low, high } = this.#gates;
    const found: [number: number, low: number, high: number][] = [];
    for (let at = start[position]; at < start[position + 1]; at++)
      if (subject[at] < GateSubject.channel) found.push([subject[at], low[at], high[at]]);
    return found;
  }
}
