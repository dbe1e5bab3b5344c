import type { Instrument } from '../model/instrument';
import { Trigger, triggerWords } from '../playing/playable/playableInstrument';
import { readSwitches } from '../playing/playable/readSwitches';
import { ValuesInForce } from '../playing/playable/valuesInForce';
import type { MapRegion } from './mapScene';

/** What must be so for regions to sound, as far as a map tells it, read as a player reads it. */
export class RegionConditions {
  readonly #triggers: Uint8Array;
  readonly #switchLow: Int16Array;
  readonly #switchHigh: Int16Array;

  constructor(instrument: Instrument) {
    const values = new ValuesInForce(instrument);
    const { switchLow, switchHigh } = readSwitches(values);
    const triggers = new Uint8Array(instrument.regions.length);
    this.#triggers = values.words('trigger', triggerWords, triggers, Trigger.attack);
    this.#switchLow = switchLow;
    this.#switchHigh = switchHigh;
  }

  /** The conditions of a region by its position among the regions. */
  of(position: number): Pick<MapRegion, 'trigger' | 'switchedBy'> {
    const trigger = this.#triggers[position];
    const low = this.#switchLow[position];
    return {
      ...(trigger !== Trigger.attack && { trigger: triggerWords[trigger] }),
      ...(low >= 0 && { switchedBy: [low, this.#switchHigh[position]] }),
    };
  }
}
